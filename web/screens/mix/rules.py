"""Every rule set of the cure as it stands here, with its source; and the house's own limits."""

from __future__ import annotations

from attrs import frozen
from flask import render_template, url_for

from core.daybook.facts import RULES, HouseRule
from core.mix.limits import within
from core.mix.rule import EVERY, WHOLES, Method, Rule, RuleSet
from core.mix.rules import RULE_SETS, rule_sets
from core.quantities import PARTS_PER_MILLION, Amount, Reader
from core.refusals import Missing, OutOfRange
from core.sentence import Sentence, listed, said
from core.sources import KNOWN_HOW, Verified
from core.working import Figure
from core.worksheet import Choice, Number
from web.entry_forms import EntryForm, Subject, declare, noted, say, write
from web.forms import Words
from web.journal import book
from web.screens.mix.blueprint import screen
from web.visitor import reader

COUNTED = {"weighed": "each salt as weighed", "sodium": "as the sodium salt", "ion": "as the ion"}
SUBSTANCES = {"nitrite": "nitrite", "nitrate": "nitrate", "both": "both together", "accelerator": "ascorbate"}
SHORT: dict[Method, str] = {
    "comminuted": "ground",
    "dry-rub": "rubbed",
    "dry-salting": "dry salted",
    "immersion": "in brine",
    "pick-up": "by pick-up",
    "pump": "pumped",
}
PPM = 1e-6


@frozen
class Row:
    """The rules of one product cured one way: nitrite and nitrate side by side."""

    what: str
    methods: str
    going_in: tuple[str, ...]
    left: tuple[str, ...]
    sources: tuple[tuple[str, Verified], ...]
    notes: tuple[str, ...]


@frozen
class Table:
    """The rows of one set that were in force together. key: its place on the page."""

    key: str
    name: str
    about: str
    source: str
    counted: str
    rows: tuple[Row, ...]


@screen.get("/rules")
def rules():
    lines = [(line, say(line, reader())) for line in reversed(book().about(RULES))]
    tables = [table for each in rule_sets() for table in _tables(each)]
    return render_template("mix/rules.html", tables=tables, log=lines, known_how=KNOWN_HOW)


def _tables(rule_set: RuleSet) -> list[Table]:
    now_ = tuple(rule for rule in rule_set.rules if rule.until is None)
    before = tuple(rule for rule in rule_set.rules if rule.until is not None)
    found = [_table(rule_set.key, rule_set.name, rule_set.about, now_)]
    if before:
        until = before[0].until
        words = f"until {until.day} {until:%B %Y}" if until else "before"
        found.append(_table(f"{rule_set.key}-before", f"{rule_set.name}, {words}", "What held before.", before))
    return found


def _table(key: str, name: str, about: str, rules: tuple[Rule, ...]) -> Table:
    titles = list(dict.fromkeys(f"{rule.source.title}, text of {rule.as_of}{_since(rule)}" for rule in rules))
    common = titles[0] if len(titles) == 1 else ""
    grouped: dict[tuple[str, str], list[Rule]] = {}
    for rule in rules:
        grouped.setdefault((rule.what, _methods(rule)), []).append(rule)
    rows = tuple(_row(what, methods, group, bool(common)) for (what, methods), group in grouped.items())
    counted = dict.fromkeys(f"{COUNTED[rule.counted]}, {WHOLES[rule.on]}" for rule in rules)
    return Table(key, name, about, common, " or ".join(counted), rows)


def _row(what: str, methods: str, rules: list[Rule], short: bool) -> Row:
    return Row(
        what,
        methods,
        tuple(f"{SUBSTANCES[rule.substance]}: {_most(rule)}" for rule in rules),
        tuple(f"{SUBSTANCES[rule.substance]}: {_left(rule)}" for rule in rules if rule.left_ppm is not None),
        tuple(dict.fromkeys((_source(rule, short), rule.source.verified) for rule in rules)),
        tuple(dict.fromkeys(rule.note for rule in rules if rule.note)),
    )


def _source(rule: Rule, short: bool) -> str:
    """short: where what all rows share stands above the table."""
    if short:
        return f"{rule.cite}, {rule.source.section}"
    return f"{rule.source.title}, {rule.source.section}; text of {rule.as_of}"


def _since(rule: Rule) -> str:
    return f", in force from {rule.since.day} {rule.since:%B %Y}" if rule.since else ""


def _methods(rule: Rule) -> str:
    if rule.methods == EVERY:
        return "however cured"
    return ", ".join(SHORT[method] for method in rule.methods)


def _most(rule: Rule) -> str:
    if rule.most_ppm is None:
        return "no limit of its own"
    if rule.most_ppm == 0:
        return "none"
    shown = Amount(rule.most_ppm * PPM, PARTS_PER_MILLION).show_exact(reader())
    least = f"at least {rule.least_ppm:g}, " if rule.least_ppm else ""
    printed = f" ({rule.printed})" if rule.printed else ""
    return f"{least}at most {shown}{printed}"


def _left(rule: Rule) -> str:
    if rule.left_ppm is None:
        return ""
    words = "at most" if rule.left_is == "most" else "look into more than"
    return f"{words} {Amount(rule.left_ppm * PPM, PARTS_PER_MILLION).show_exact(reader())}"


def _house_figures(fact: HouseRule, _: Subject) -> tuple[Figure, ...]:
    """Guard: a house rule is stricter than the law or it is none."""
    if fact.nitrite is None and fact.nitrate is None:
        raise Missing("nitrite", "Enter the most nitrite or the most nitrate that you allow, for example 120 ppm.")
    for key, substances in (("nitrite", ("nitrite", "both")), ("nitrate", ("nitrate",))):
        own: float | None = getattr(fact, key)
        most = max(
            (each.most_ppm or 0.0 for each in RULE_SETS[fact.rules].rules if each.substance in substances), default=0.0
        )
        if own is not None and most and not within(own / PPM, most):
            raise OutOfRange(
                key,
                f"A house rule may only be stricter: the law's loosest row allows {most:g} ppm. What a licence allows "
                "beyond the law is recorded with its batch.",
            )
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
            Number(
                "nitrite",
                "Most nitrite",
                PARTS_PER_MILLION,
                PPM,
                0.002,
                optional=True,
                help="Counted as that set counts; in Canada nitrite and nitrate together.",
                or_zero=True,
            ),
            Number("nitrate", "Most nitrate", PARTS_PER_MILLION, PPM, 0.003, optional=True, or_zero=True),
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
