"""Every rule set of the cure as it stands here, with its source; and the house's own limits."""

from __future__ import annotations

from attrs import frozen
from flask import render_template, url_for

from core.daybook.facts.cure import RULES, HouseRule
from core.daybook.facts.fields import boxes
from core.mix.ions import Counted
from core.mix.limits import within
from core.mix.rule import EVERY, WHOLES, Limited, Method, Rule, RuleSet
from core.mix.rules import RULE_SETS, rule_sets
from core.quantities import PARTS_PER_MILLION, Amount, Reader
from core.refusals import Missing, OutOfRange
from core.sentence import Message, Sentence, Value, each_said, listed, said
from core.sources import KNOWN_HOW, Verified
from core.working import Figure
from core.worksheet import Choice
from web.entry_forms import EntryForm, Subject, declare, noted, say, write
from web.forms import Words
from web.journal import book
from web.screens.mix.blueprint import screen
from web.visitor import reader

COUNTED: dict[Counted, Message] = {
    "weighed": "each salt as weighed",
    "sodium": "as the sodium salt",
    "ion": "as the ion",
}
SUBSTANCES: dict[Limited, Message] = {
    "nitrite": "nitrite",
    "nitrate": "nitrate",
    "both": "both together",
    "accelerator": "ascorbate",
}
SHORT: dict[Method, Message] = {
    "comminuted": "ground",
    "dry-rub": "rubbed",
    "dry-salting": "dry salted",
    "immersion": "in brine",
    "pick-up": "by pick-up",
    "pump": "pumped",
}
PPM = 1e-6
NO_LIMIT: Message = "Enter the most nitrite or the most nitrate that you allow, for example {example}."
ONLY_STRICTER: Message = (
    "A house rule may only be stricter: the law's loosest row allows {most}. What a licence allows beyond the law is "
    "recorded with its batch."
)


@frozen
class Row:
    """The rules of one product cured one way: nitrite and nitrate side by side."""

    what: Sentence
    methods: Value
    going_in: tuple[Sentence, ...]
    left: tuple[Sentence, ...]
    sources: tuple[tuple[Sentence, Verified], ...]
    notes: tuple[Sentence, ...]


@frozen
class Table:
    """The rows of one set that were in force together. key: its place on the page."""

    key: str
    name: Sentence
    about: Sentence
    source: Sentence | None
    counted: Value
    rows: tuple[Row, ...]


@screen.get("/rules")
def rules():
    lines = [(line, say(line, reader())) for line in reversed(book().about(RULES))]
    tables = [table for each in rule_sets() for table in _tables(each)]
    return render_template("mix/rules.html", tables=tables, log=lines, known_how=KNOWN_HOW)


def _tables(rule_set: RuleSet) -> list[Table]:
    now_ = tuple(rule for rule in rule_set.rules if rule.until is None)
    before = tuple(rule for rule in rule_set.rules if rule.until is not None)
    name = said(rule_set.name)
    found = [_table(rule_set.key, name, said(rule_set.about), now_)]
    if before:
        until = before[0].until
        when = Sentence("{rules}, until {day}", {"rules": name, "day": until}) if until else None
        name = when or Sentence("{rules}, before", {"rules": name})
        found.append(_table(f"{rule_set.key}-before", name, Sentence("What held before."), before))
    return found


def _table(key: str, name: Sentence, about: Sentence, rules: tuple[Rule, ...]) -> Table:
    titles = {(rule.source.title, rule.as_of, rule.since): _title(rule) for rule in rules}
    common = next(iter(titles.values())) if len(titles) == 1 else None
    grouped: dict[tuple[str, tuple[Method, ...]], list[Rule]] = {}
    for rule in rules:
        grouped.setdefault((rule.what, rule.methods), []).append(rule)
    rows = tuple(_row(group, common is not None) for group in grouped.values())
    counted = {(rule.counted, rule.on): _counted(rule) for rule in rules}
    return Table(key, name, about, common, listed(tuple(counted.values()), "or"), rows)


def _row(rules: list[Rule], short: bool) -> Row:
    return Row(
        said(rules[0].what),
        _methods(rules[0]),
        tuple(_of_substance(rule, _most(rule)) for rule in rules),
        tuple(_of_substance(rule, _left(rule, rule.left_ppm)) for rule in rules if rule.left_ppm is not None),
        _sources(rules, short),
        each_said(dict.fromkeys(rule.note for rule in rules if rule.note)),
    )


def _title(rule: Rule) -> Sentence:
    told: dict[str, Value] = {"title": rule.source.title, "edition": said(rule.as_of)}
    if rule.since is None:
        return Sentence("{title}, text of {edition}", told)
    return Sentence("{title}, text of {edition}, in force from {day}", {**told, "day": rule.since})


def _counted(rule: Rule) -> Sentence:
    return Sentence("{counted}, {whole}", {"counted": said(COUNTED[rule.counted]), "whole": said(WHOLES[rule.on])})


def _of_substance(rule: Rule, limit: Sentence) -> Sentence:
    return Sentence("{substance}: {limit}", {"substance": said(SUBSTANCES[rule.substance]), "limit": limit})


def _sources(rules: list[Rule], short: bool) -> tuple[tuple[Sentence, Verified], ...]:
    """Each once. short: where what all rows share stands above the table."""
    return tuple(dict.fromkeys((_cited(rule, short), rule.source.verified) for rule in rules))


def _cited(rule: Rule, short: bool) -> Sentence:
    if short:
        return Sentence("{cite}, {section}", {"cite": rule.cite, "section": said(rule.source.section)})
    return Sentence("{where}; text of {edition}", {"where": rule.source.where, "edition": said(rule.as_of)})


def _methods(rule: Rule) -> Value:
    if rule.methods == EVERY:
        return Sentence("however cured")
    return listed([Sentence(SHORT[method]) for method in rule.methods], "or")


def _most(rule: Rule) -> Sentence:
    if rule.most_ppm is None:
        return Sentence("no limit of its own")
    if rule.most_ppm == 0:
        return Sentence("none")
    told = Sentence("at most {most}", {"most": _ppm(rule.most_ppm)})
    if rule.least_ppm:
        told = Sentence("at least {least}, {most}", {"least": _ppm(rule.least_ppm), "most": told})
    return Sentence("{limit} ({printed})", {"limit": told, "printed": said(rule.printed)}) if rule.printed else told


def _left(rule: Rule, left_ppm: float) -> Sentence:
    left = {"left": _ppm(left_ppm)}
    return Sentence("at most {left}" if rule.left_is == "most" else "look into more than {left}", left)


def _ppm(ppm: float) -> Amount:
    return Amount(ppm * PPM, PARTS_PER_MILLION)


def _house_figures(fact: HouseRule, _: Subject) -> tuple[Figure, ...]:
    """Guard: a house rule is stricter than the law or it is none."""
    if fact.nitrite is None and fact.nitrate is None:
        raise Missing("nitrite", Sentence(NO_LIMIT, {"example": _ppm(120)}))
    for key, substances in (("nitrite", ("nitrite", "both")), ("nitrate", ("nitrate",))):
        own: float | None = getattr(fact, key)
        most = max(
            (each.most_ppm or 0.0 for each in RULE_SETS[fact.rules].rules if each.substance in substances), default=0.0
        )
        if own is not None and most and not within(own / PPM, most):
            raise OutOfRange(key, Sentence(ONLY_STRICTER, {"most": _ppm(most)}))
    return ()


def _house_said(fact: HouseRule) -> Sentence:
    most: list[Sentence] = []
    if fact.nitrite is not None:
        most.append(Sentence("{most} of nitrite", {"most": Amount(fact.nitrite, PARTS_PER_MILLION)}))
    if fact.nitrate is not None:
        most.append(Sentence("{most} of nitrate", {"most": Amount(fact.nitrate, PARTS_PER_MILLION)}))
    rules = said(RULE_SETS[fact.rules].name) if fact.rules in RULE_SETS else fact.rules
    told = Sentence("House rule under the rules of {rules}", {"rules": rules})
    if most:
        told = Sentence("{told}: at most {most}", {"told": told, "most": listed(most)})
    return noted(told, fact.why)


def _texts(fact: HouseRule, how: Reader) -> dict[str, str]:
    limits = {
        key: "" if most is None else Amount(most, PARTS_PER_MILLION).show_exact(how)
        for key, most in (("nitrite", fact.nitrite), ("nitrate", fact.nitrate))
    }
    return {"rules": fact.rules, "why": fact.why, **limits}


HOUSE = declare(
    EntryForm(
        HouseRule,
        "A house rule",
        (
            Choice("rules", "Stricter than", {key: each.name for key, each in RULE_SETS.items()}, default="us"),
            *boxes(HouseRule),
            Words("why", "Why", 200, optional=True),
        ),
        _house_said,
        digits=6,
        figures=_house_figures,
        texts=_texts,
        save="Hold to it from now on",
        hint="It holds for every product of that set, until a later one takes its place or it is deleted.",
        correct="Correct this house rule",
    )
)


@screen.route("/rules/house", methods=["GET", "POST"])
def house_rule():
    back = url_for("mix.rules")
    return write(HOUSE, Subject(), about=RULES, back=back, back_to=back)
