"""The register of rule sets, and what they say of one product, cured one way, on a day."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date

from attrs import evolve, field, frozen

from core.mix.rule import METHODS, Method, Rule, RuleSet
from core.mix.rules_ca import CANADA
from core.mix.rules_eu import EU
from core.mix.rules_us import US
from core.quantities import PARTS_PER_MILLION, Amount
from core.refusals import OutOfRange
from core.sentence import Message, Sentence, said
from core.sources import Source

RULE_SETS: dict[str, RuleSet] = {each.key: each for each in (US, EU, CANADA)}
GENERAL_EU = "not-heated"
NO_SUCH_PRODUCT: Message = "Choose a product of the rules of {rules}."
NO_ROW: Message = "The rules have no row for {product}, cured like this, on that day. Choose another."
HELD_TO_GENERAL: Message = "held to the general row 08.3.1"
BEFORE_2025 = date(2025, 10, 8)
LAWS = {
    "us": ("us", "meat"),
    "us-bacon": ("us", "bacon"),
    "us-bacon-rind": ("us", "bacon-rind"),
    "us-home": ("us", "home-mix"),
    "eu": ("eu", "not-heated"),
    "eu-old": ("eu", "not-heated"),
    "ca": ("ca", "meat"),
    "ca-bacon": ("ca", "bacon"),
}
LAW_NAMES: Mapping[str, Message] = {
    "us": "United States, cured meat",
    "us-bacon": "United States, bacon without its skin",
    "us-bacon-rind": "United States, bacon in its skin",
    "us-home": "United States, home-curing mix",
    "eu": "European Union, meat not heat-treated",
    "eu-old": "European Union until 9 October 2025",
    "ca": "Canada, cured meat",
    "ca-bacon": "Canada, side bacon",
}
"""What a single sum may be held to, by the name it is chosen by."""
HOUSE = Source(Sentence("The rules of this house"), "as written in its entry", "seen")


@frozen
class HouseLimit:
    """The maker's own limit under a rule set, counted as that set counts; it only ever makes a row stricter.

    nitrite_ppm: of both together where the set counts both together.
    """

    rules: str
    nitrite_ppm: float | None = None
    nitrate_ppm: float | None = None


@frozen
class Curing:
    """By whose rules, which of their products, cured how, on which day (None: by the newest text).

    house: the maker's own limits, which hold besides. Raises OutOfRange on "rules", "product" or "method".
    """

    rules: str = "us"
    product: str = "meat"
    method: Method = "comminuted"
    on: date | None = None
    house: tuple[HouseLimit, ...] = field(default=(), converter=tuple[HouseLimit, ...])

    def __attrs_post_init__(self) -> None:
        if self.rules not in RULE_SETS:
            raise OutOfRange("rules", "Choose the rules: those of the United States, the European Union or Canada.")
        if self.method not in METHODS:
            raise OutOfRange("method", "Choose how it is cured.")
        if self.product not in self.rule_set.products:
            raise OutOfRange("product", Sentence(NO_SUCH_PRODUCT, {"rules": Sentence(self.rule_set.name)}))
        if not self.law:
            raise OutOfRange("product", Sentence(NO_ROW, {"product": Sentence(self.rule_set.products[self.product])}))

    @property
    def rule_set(self) -> RuleSet:
        return RULE_SETS[self.rules]

    @property
    def law(self) -> tuple[Rule, ...]:
        """The rows as printed."""
        return rules_for(self.rules, self.product, self.method, self.on)

    @property
    def held(self) -> tuple[Rule, ...]:
        """The rows that what goes in is held to: a row that limits only what is left is filled up from the general row,
        and the house's own limit comes on top."""
        return tuple(self._by_house(self._filled(rule)) for rule in (*self.law, *self._unnamed()))

    def _filled(self, rule: Rule) -> Rule:
        if rule.most_ppm is not None or self.rules != "eu":
            return rule
        general = self._general(rule.substance)
        more = Sentence("Its row limits only what is left; what goes in is held here to the general row, 08.3.1.")
        note = Sentence("{note} {more}", {"note": said(rule.note), "more": more}) if rule.note else more
        return evolve(rule, most_ppm=general.most_ppm, printed=HELD_TO_GENERAL, note=note)

    def _unnamed(self) -> tuple[Rule, ...]:
        """A substance that no row of the product names is held to the general row: silence is no leave."""
        if self.rules != "eu":
            return ()
        named = {each for rule in self.law for each in rule.substances}
        note = Sentence("Its row does not name it; it is held here to the general row, 08.3.1.")
        rows = (self._general(each) for each in ("nitrite", "nitrate") if each not in named)
        what = self.law[0].what
        return tuple(evolve(each, what=what, printed=HELD_TO_GENERAL, left_ppm=None, note=note) for each in rows)

    def _general(self, substance: str) -> Rule:
        rows = rules_for("eu", GENERAL_EU, self.method, self.on)
        return next(each for each in rows if each.substance == substance)

    def _by_house(self, rule: Rule) -> Rule:
        for own in self.house:
            if own.rules != self.rules:
                continue
            most = own.nitrate_ppm if rule.substance == "nitrate" else own.nitrite_ppm
            if rule.substance == "accelerator" or most is None or (rule.most_ppm is not None and rule.most_ppm <= most):
                continue
            by_law = Sentence("the law: {most}", {"most": Amount((rule.most_ppm or 0.0) / 1e6, PARTS_PER_MILLION)})
            rule = evolve(rule, most_ppm=most, printed=by_law, cite="rule of the house", source=HOUSE)
        return rule


def rule_sets() -> tuple[RuleSet, ...]:
    return tuple(RULE_SETS.values())


def rules_for(rules: str, product: str, method: Method, on: date | None = None) -> tuple[Rule, ...]:
    """The rows in force; none where the set has no row for the product cured this way."""
    rows = RULE_SETS[rules].rules
    return tuple(row for row in rows if row.product == product and method in row.methods and row.in_force(on))


def products_for(rules: str, method: Method, on: date | None = None) -> dict[str, Message]:
    """The products that may be cured this way: key → name, the usual one first."""
    products = RULE_SETS[rules].products
    return {key: name for key, name in products.items() if rules_for(rules, key, method, on)}


def curing(law: str, method: Method) -> Curing:
    rules, product = LAWS[law]
    return Curing(rules, product, method, on=BEFORE_2025 if law == "eu-old" else None)
