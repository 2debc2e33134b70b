"""What became of a fermentation, and of one that went over its limit: what release asks, with the reason it gives."""

from __future__ import annotations

from typing import Literal

from attrs import frozen

from core.ferment.rules import RULES, RuleKey
from core.meat import ACID_PH
from core.quantities import DEGREE_HOURS, PH, Amount
from core.sentence import Message, Sentence, Value
from core.sources import DEGREE_HOURS_US, GD_2023_STAPHYLOCOCCI, Source
from core.verdict import Reason

Word = Literal["passed", "over", "running", "not shown", "unknown"]
"""over: the limit was reached first. not shown: it may have crossed in time, but the reading that shows it came later.
unknown: too little was read."""
Result = Literal["clean", "found", "not-tested"]

TOXIN = (
    "The toxin that staphylococci leave behind survives cooking, drying and acid, and cannot be seen, smelt or tasted."
)
ASK = Sentence(
    "Hold it: keep it cold and apart, and let nobody taste it. Ask a food-safety authority or a licensed processor, "
    "who can have it tested for staphylococcal toxin. Then note what was decided."
)
_ASK_FOR_TOXIN = Sentence("{ask} {why}", {"ask": ASK, "why": Sentence(TOXIN)})

MEASURE_AGAIN = Sentence(
    "Hold it, and measure the pH again now, in the middle of a piece, with a meter checked in buffers. Two readings, "
    "one after the other, at {target} or below settle it. Correct a reading that was only typed wrongly.",
    {"target": Amount(ACID_PH, PH)},
)


@frozen
class Deviation:
    """What was decided of a batch that missed its limit. kept: to go on with it; else it is thrown away."""

    kept: bool
    result: Result
    decided_by: str = ""
    test: str = ""

    @property
    def clears(self) -> bool:
        return self.kept and self.result == "clean"

    @property
    def condemns(self) -> bool:
        return not self.kept or self.result == "found"


@frozen
class Outcome:
    """sum_ks: degree-hours, in kelvin-seconds, to pH 5.3 or until now; None where none can be told.

    limit_ks: what it had to stay below. why: what is missing. deviation: what was decided, if it was.
    contradiction: the two readings of the pH that speak against each other, and what does not count for that.
    """

    word: Word
    rule: RuleKey = "us"
    sum_ks: float | None = None
    limit_ks: float | None = None
    why: tuple[Sentence, ...] = ()
    deviation: Deviation | None = None
    contradiction: Sentence | None = None

    @property
    def source(self) -> Source:
        return RULES[self.rule].source


def reason(outcome: Outcome | None) -> Reason:
    """Why a batch that is meant to sour may go on, or may not. None: nobody kept the hours."""
    if outcome is None:
        return Reason("degree-hours", Sentence("Its degree-hours to pH 5.3 are not known."), None, DEGREE_HOURS_US, ASK)
    if outcome.deviation is not None and (outcome.word != "passed" or outcome.deviation.condemns):
        return _decided(outcome, outcome.deviation)  # what a test found, no sum takes back
    return Reason("degree-hours", _text(outcome), _MET[outcome.word], outcome.source, _settle(outcome))


_MET: dict[Word, bool | None] = {"passed": True, "over": False, "running": None, "not shown": None, "unknown": None}


def _text(outcome: Outcome) -> Sentence:
    told, contradiction = _told(outcome), outcome.contradiction
    if contradiction is None or outcome.word in ("passed", "unknown"):
        return told
    return Sentence("{told} {contradiction}", {"told": told, "contradiction": contradiction})


def _told(outcome: Outcome) -> Sentence:
    amounts = {"target": Amount(ACID_PH, PH)}
    if outcome.word == "unknown":
        why = outcome.contradiction or (outcome.why[0] if outcome.why else Sentence("Too little was read."))
        return Sentence("Its degree-hours to pH {target} are not known. {why}", {**amounts, "why": why})
    if outcome.sum_ks is None or outcome.limit_ks is None:
        return Sentence(_BARE[outcome.word], amounts)
    amounts |= {"sum": Amount(outcome.sum_ks, DEGREE_HOURS), "limit": Amount(outcome.limit_ks, DEGREE_HOURS)}
    return Sentence(_TOLD[outcome.word], amounts)


_TOLD: dict[Word, Message] = {
    "passed": "It took {sum} to come down to pH {target}, fewer than the limit of {limit}.",
    "over": "Its degree-hours, {sum}, reached the limit of {limit} before its pH was known to be {target}.",
    "running": "It is not yet at pH {target}; {sum} of at most {limit} used.",
    "not shown": "The reading that shows pH {target} came at {sum}, not fewer than {limit}; whether it was there in "
    "time is a guess between two readings.",
}
_BARE: dict[Word, Message] = {
    "passed": "It came down to pH {target} in fewer degree-hours than the limit.",
    "over": "Its degree-hours reached the limit before it came down to pH {target}.",
    "running": "It is not yet at pH {target}.",
    "not shown": "No reading shows that it came down to pH {target} in time.",
}


def slow_reason(outcome: Outcome | None) -> Reason:
    """The same of a style that is not meant to sour: its warm days."""
    if outcome is not None and outcome.deviation is not None and outcome.deviation.condemns:
        return _decided(outcome, outcome.deviation, "warm-days")  # whatever is known of its warm days
    if outcome is None or outcome.word == "unknown":
        why = outcome.why[0] if outcome is not None and outcome.why else Sentence("No temperature was noted.")
        text = Sentence("How warm it was in its first days is not known. {why}", {"why": why})
        return Reason("warm-days", text, None, GD_2023_STAPHYLOCOCCI, _NOTE_WARMTH)
    if outcome.deviation is not None and outcome.word == "over":
        return _decided(outcome, outcome.deviation, "warm-days")
    if outcome.sum_ks is None or outcome.limit_ks is None:
        text = Sentence(_SLOW_BARE.get(outcome.word, _SLOW_BARE["over"]))
    else:
        amounts = {"sum": Amount(outcome.sum_ks, DEGREE_HOURS), "limit": Amount(outcome.limit_ks, DEGREE_HOURS)}
        # nothing is "not shown" of a style without a crossing
        text = Sentence(_SLOW.get(outcome.word, _SLOW["over"]), amounts)
    if outcome.word == "running" and outcome.why:
        text = Sentence("{why} {text}", {"why": outcome.why[0], "text": text})
    settle = _NOTE_WARMTH if outcome.word == "running" else _ASK_FOR_TOXIN
    return Reason("warm-days", text, _MET[outcome.word], GD_2023_STAPHYLOCOCCI, settle)


_NOTE_WARMTH = Sentence(
    "Enter the temperatures of its first three days at least, and on until it was at 15.6 °C (60 °F) or less, or a "
    "logger's file."
)
_SLOW: dict[Word, Message] = {
    "passed": "Its warm days made {sum}, fewer than {limit}; then it was kept cool.",
    "over": "Its warm days made {sum}, not fewer than {limit}, without the acid that would have stopped what grows.",
    "running": "It is not known to be cool for good yet; {sum} of at most {limit} used.",
}
_SLOW_BARE: dict[Word, Message] = {
    "passed": "It was never warm for long, and then it was kept cool.",
    "over": "Its warm days were too many.",
    "running": "It is not known to be cool for good yet.",
}


def _settle(outcome: Outcome) -> Sentence:
    if outcome.contradiction is not None and outcome.word in ("running", "unknown"):
        return MEASURE_AGAIN
    if outcome.word == "running":
        return Sentence("Read the pH and the temperature before the time is up.")
    if outcome.word == "unknown":
        return Sentence(
            "Enter the temperatures that were read, or the logger's file. If there are none: {ask}", {"ask": ASK}
        )
    return _ASK_FOR_TOXIN


def _decided(outcome: Outcome, deviation: Deviation, key: str = "degree-hours") -> Reason:
    values: dict[str, Value] = {"name": deviation.decided_by, "test": deviation.test}
    is_signed, is_told = bool(deviation.decided_by), bool(deviation.test)
    if deviation.condemns:
        decided = Sentence(_DECIDED[outcome.word == "passed", is_signed], values)
        found = Sentence(_CONDEMNED[deviation.result == "found", is_told], values)
        text = Sentence("{decided}: {found}.", {"decided": decided, "found": found})
        throw = Sentence("Throw the whole batch away, well wrapped, so that neither people nor animals eat it.")
        return Reason(key, text, False, outcome.source, throw, True)
    if deviation.clears:
        return Reason(key, Sentence(_CLEARED[is_told, is_signed], values), True, outcome.source, ASK)
    return Reason(key, Sentence(_KEPT_UNTESTED[is_signed], values), False, outcome.source, _ASK_FOR_TOXIN)


_DECIDED: dict[tuple[bool, bool], Message] = {
    (True, True): "It was decided by {name}",
    (True, False): "It was decided",
    (False, True): "It missed its degree-hours, and it was decided by {name}",
    (False, False): "It missed its degree-hours, and it was decided",
}
"""By whether it had come down in time, and whether somebody signed."""
_CONDEMNED: dict[tuple[bool, bool], Message] = {
    (True, True): "the test found what must not be there ({test})",
    (True, False): "the test found what must not be there",
    (False, True): "it is not to be eaten ({test})",
    (False, False): "it is not to be eaten",
}
"""By whether a test found it, and whether the test is named."""
_CLEARED: dict[tuple[bool, bool], Message] = {
    (
        True,
        True,
    ): "It missed its degree-hours; it was tested ({test}), nothing was found, and it was cleared by {name}.",
    (True, False): "It missed its degree-hours; it was tested ({test}), nothing was found, and it was cleared.",
    (False, True): "It missed its degree-hours; it was tested, nothing was found, and it was cleared by {name}.",
    (False, False): "It missed its degree-hours; it was tested, nothing was found, and it was cleared.",
}
"""By whether the test is named, and whether somebody signed."""
_KEPT_UNTESTED: dict[bool, Message] = {
    True: "It missed its degree-hours; it was decided by {name} to keep it, but no test is noted that found it clean.",
    False: "It missed its degree-hours; it was decided to keep it, but no test is noted that found it clean.",
}
