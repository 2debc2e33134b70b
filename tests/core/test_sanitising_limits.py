"""How strong a solution may be: what may stay on, what sanitises, and whose word counts, rule or label."""

import pytest

from core.chamber.sanitising import DRAIN, NO_LIMIT_KNOWN, RINSE, RINSE_ALL, dilute
from core.chamber.sanitising_agents import AGENTS
from core.quantities import METRIC
from core.sources import CFR_178_1010, CFR_180_940, PRODUCT_LABEL, Source
from tests.core.solutions import LEAST, LIMITS, LITRE, STOCK, figure, refused
from tests.core.telling import in_words


@pytest.mark.parametrize(("agent", "limit_ppm"), LIMITS.items())
def test_the_limit_itself_may_stay_on(agent: str, limit_ppm: float):
    assert DRAIN in in_words(dilute(agent, STOCK[agent], limit_ppm, LITRE)[0].cautions)


@pytest.mark.parametrize(("agent", "limit_ppm"), LIMITS.items())
def test_a_hair_over_the_limit_is_refused_where_it_is_to_stay_on(agent: str, limit_ppm: float):
    said = refused(agent, STOCK[agent], limit_ppm * 1.0001, LITRE)
    assert said.field == "target"
    assert f"{limit_ppm} ppm" in said.sentence


@pytest.mark.parametrize(("agent", "limit_ppm"), LIMITS.items())
def test_a_hair_over_the_limit_is_rinsed_where_one_chose_to(agent: str, limit_ppm: float):
    assert RINSE_ALL in in_words(dilute(agent, STOCK[agent], limit_ppm, LITRE, after="rinse")[0].cautions)
    assert RINSE in in_words(dilute(agent, STOCK[agent], limit_ppm * 1.0001, LITRE, after="rinse")[0].cautions)


@pytest.mark.parametrize("label_ppm", [200.0, 1000.0])
@pytest.mark.parametrize("agent", ["chlorine", "calcium", "isocyanurate", "iodine"])
def test_no_label_raises_chlorine_or_iodine(agent: str, label_ppm: float):
    assert figure(dilute(agent, STOCK[agent], 25.0, LITRE, label_ppm=label_ppm), "limit").value == pytest.approx(
        LIMITS[agent] * 1e-6
    )


def test_a_label_may_lower_iodine():
    made = dilute("iodine", 0.0175, 15.0, LITRE, label_ppm=15.0)
    assert figure(made, "limit").show(METRIC) == "15 ppm"
    assert "label’s own" in figure(made, "limit").working[0].say(METRIC)
    assert refused("iodine", 0.0175, 15.01, LITRE, label_ppm=15.0).field == "target"


def test_over_the_limit_is_made_where_it_is_rinsed_and_told_to():
    assert RINSE in in_words(dilute("chlorine", 0.0525, 400.0, LITRE, after="rinse")[0].cautions)


def test_a_label_may_raise_the_limit_of_quats_to_400_ppm_and_no_further():
    assert figure(dilute("quat", 0.1, 400.0, LITRE, label_ppm=500.0), "limit").show(METRIC) == "400 ppm"
    assert refused("quat", 0.1, 401.0, LITRE, label_ppm=500.0).field == "target"


def test_a_label_may_lower_every_limit():
    assert refused("chlorine", 0.0525, 150.0, LITRE, label_ppm=100.0).field == "target"


def test_a_label_cannot_raise_chlorine():
    assert refused("chlorine", 0.0525, 201.0, LITRE, label_ppm=800.0).field == "target"


def test_a_product_without_a_known_limit_is_rinsed():
    assert NO_LIMIT_KNOWN in in_words(dilute("label", 0.1, 300.0, LITRE)[0].cautions)


@pytest.mark.parametrize(("agent", "least_ppm"), LEAST.items())
def test_the_least_strength_sanitises_and_a_hair_less_does_not(agent: str, least_ppm: float):
    assert dilute(agent, STOCK[agent], least_ppm, LITRE)
    said = refused(agent, STOCK[agent], least_ppm * 0.9999, LITRE)
    assert said.field == "target"
    assert said.sentence.startswith(f"Too weak: less than {least_ppm} ppm of {AGENTS[agent].active} does not sanitise")


@pytest.mark.parametrize(("agent", "ppm"), [("quat", 5.0), ("quat", 20.0), ("peracetic", 1.0), ("peracetic", 10.0)])
def test_a_rule_that_leaves_it_to_the_label_still_says_too_weak_and_where_else_to_go(agent: str, ppm: float):
    said = refused(agent, STOCK[agent], ppm, LITRE).sentence
    assert "21 CFR 178.1010(c)" in said
    assert "choose another product, by its label" in said


def test_of_another_product_only_the_label_knows_and_that_is_said():
    assert any("only its label says" in each for each in in_words(dilute("label", 0.1, 5.0, LITRE)[0].cautions))


def test_a_label_may_raise_peracetic_acid_to_315_ppm_and_not_a_hair_further():
    """40 CFR 180.940(b) and (c)."""
    assert dilute("peracetic", 0.15, 315.0, LITRE, label_ppm=315.0)
    assert refused("peracetic", 0.15, 315.03, LITRE, label_ppm=500.0).field == "target"


@pytest.mark.parametrize(
    ("agent", "label_ppm", "source"),
    [
        ("quat", 400.0, PRODUCT_LABEL),
        ("quat", None, CFR_180_940),
        ("chlorine", 100.0, PRODUCT_LABEL),
        ("chlorine", 201.0, CFR_178_1010),
        ("chlorine", None, CFR_178_1010),
    ],
)
def test_a_limit_names_the_label_or_the_rule_it_comes_from(agent: str, label_ppm: float | None, source: Source):
    made = dilute(agent, STOCK[agent], LEAST[agent], LITRE, label_ppm=label_ppm)
    assert figure(made, "limit").source is source


def test_a_strength_a_hair_over_its_limit_is_not_told_in_the_same_figures():
    said = refused("chlorine", 0.0525, 200.01, LITRE).sentence
    assert said.startswith("200.01 ppm of available chlorine may not stay on: the limit without a rinse is 200 ppm.")


def test_a_stock_a_hair_weaker_than_wanted_is_not_told_in_the_same_figures():
    assert refused("quat", 1.9999e-4, 200.0, LITRE).sentence.endswith("it holds 199.99 ppm.")
