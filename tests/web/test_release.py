"""Release: the evidence that settles a piece, its verdict with reasons, and taking it down."""

import attrs
import pytest

from core.daybook.batch import fold
from core.daybook.evidence import evidence_for
from core.daybook.facts.batch import PieceInspected
from core.release.readiness import EDITION, SIGNS, judge
from core.verdict import Verdict
from tests.web.conftest import Visitor


def verdict_at(visitor: Visitor, batch: str, piece: str) -> Verdict:
    folded = fold(visitor.book, batch.split("/")[-1])
    assert folded is not None
    return judge(evidence_for(folded, folded.piece(piece.split("/")[-1]), visitor.now))


def test_a_piece_just_hung_is_held(visitor: Visitor):
    assert visitor.get(visitor.hang(visitor.cured_and_acid())).verdicts == ["hold"]


def test_every_reason_says_whether_it_is_met(visitor: Visitor):
    page = visitor.get(visitor.hang(visitor.cured_and_acid()))
    assert set(page.texts("span", "mark")) == {"yes", "not known"}


def test_every_reason_names_its_source(visitor: Visitor):
    _, piece = visitor.dried()
    page = visitor.get(piece)
    reasons = [each for each in page.all("li") if {"met", "missing", "unmet"} & set(each.classes)]
    assert all(any(source.inside(reason) for source in page.all("small", "source")) for reason in reasons)


def test_a_sound_piece_is_ready(visitor: Visitor):
    _, piece = visitor.dried()
    assert visitor.fill(f"{piece}/inspect", found="sound").verdicts == ["ready"]


def test_a_piece_too_wet_is_held(visitor: Visitor):
    _, piece = visitor.dried(activity="0.96")
    assert visitor.fill(f"{piece}/inspect", found="sound").verdicts == ["hold"]


@pytest.mark.parametrize("sign", SIGNS)
def test_any_sign_of_spoilage_is_thrown_away(visitor: Visitor, sign: str):
    _, piece = visitor.dried()
    assert visitor.fill(f"{piece}/inspect", signs=sign).verdicts == ["discard"]


def test_several_signs_are_kept(visitor: Visitor):
    _, piece = visitor.dried()
    form = visitor.get(f"{piece}/inspect", found="sound").form("/inspect")
    page = visitor.post(form.action, **form.values | {"signs": ["smell", "slime"], "note": "at the string"})
    assert visitor.fact(page.saved) == PieceInspected(("smell", "slime"), "at the string")


def test_a_sign_that_is_not_listed_is_never_taken_for_none(visitor: Visitor):
    _, piece = visitor.dried()
    before = len(visitor.book)
    page = visitor.fill(f"{piece}/inspect", signs="rancid")
    assert (page.status, len(visitor.book)) == (422, before)


def test_a_later_sound_look_does_not_make_it_ready(visitor: Visitor):
    _, piece = visitor.dried()
    visitor.fill(f"{piece}/inspect", signs="slime")
    assert visitor.fill(f"{piece}/inspect", found="sound").verdicts == ["discard"]


def test_a_mates_sample_counts_and_says_so(visitor: Visitor):
    batch, _ = visitor.dried()
    mate = visitor.hang(batch, "J-2", "1250")
    visitor.wait(days=20)
    visitor.fill(f"{mate}/weigh", mass_kg="790")
    page = visitor.fill(f"{mate}/inspect", found="sound")
    assert page.verdicts == ["ready"]
    assert "of a batch-mate" in page.text


def test_taking_down_keeps_the_verdict_of_the_moment(visitor: Visitor):
    _, piece = visitor.dried()
    visitor.fill(f"{piece}/inspect", found="sound")
    page = visitor.fill(f"{piece}/take-down", note="to the table")
    kept = visitor.fact(page.saved)
    assert (kept.verdict, kept.note, kept.edition) == ("ready", "to the table", EDITION)


def test_what_the_verdict_rested_on_is_kept_with_its_values_and_told_again(visitor: Visitor):
    batch, piece = visitor.dried()
    visitor.fill(f"{piece}/inspect", found="sound")
    judged = [(each.key, each.met) for each in verdict_at(visitor, batch, piece).reasons]
    page = visitor.fill(f"{piece}/take-down")
    kept = visitor.fact(page.saved)
    assert [(each.key, each.met) for each in kept.reasons] == judged
    lost = next(each for each in kept.reasons if each.key == "loss").amounts[0]
    assert (lost.name, lost.quantity) == ("lost", "loss")
    assert lost.value == pytest.approx(0.36)
    assert "weight lost: lost 36" in page.text


def test_a_later_finding_changes_nothing_of_what_an_old_verdict_says(visitor: Visitor):
    batch, piece = visitor.dried()
    visitor.fill(f"{piece}/inspect", found="sound")
    before = visitor.fill(f"{piece}/take-down").texts("ul", "reasons")
    visitor.fill(f"{batch}/reading", ph="6.6", temperature_c="22")
    assert visitor.get(piece).texts("ul", "reasons") == before


def test_a_note_corrected_leaves_the_verdict_and_its_reasons(visitor: Visitor):
    _, piece = visitor.dried()
    key = visitor.fill(f"{piece}/take-down").saved
    before = visitor.fact(key)
    visitor.wait(days=90)
    visitor.fill(f"/entries/{key}/correct", note="to the dog")
    assert visitor.fact(key) == attrs.evolve(before, note="to the dog")


def test_a_piece_taken_down_offers_no_more_to_do(visitor: Visitor):
    _, piece = visitor.dried()
    page = visitor.fill(f"{piece}/take-down")
    assert "Weigh it" not in page.texts("a")


def test_a_least_time_not_over_holds_it(visitor: Visitor):
    batch = visitor.start_batch(least_s="40")
    visitor.cure(batch)
    visitor.fill(f"{batch}/reading", ph="5.0", temperature_c="22")
    piece = visitor.hang(batch)
    visitor.meat(piece)
    visitor.wait(days=30)
    visitor.fill(f"{piece}/weigh", mass_kg="800")
    visitor.fill(f"{piece}/activity", water_activity="0.89")
    assert visitor.fill(f"{piece}/inspect", found="sound").verdicts == ["hold"]
    visitor.wait(days=10)
    assert visitor.get(piece).verdicts == ["ready"]


def test_a_piece_that_is_down_is_not_taken_down_again(visitor: Visitor):
    _, piece = visitor.dried()
    first = visitor.fill(f"{piece}/take-down", note="to the table").saved
    assert visitor.get(f"{piece}/take-down").path == f"/entries/{first}/correct"


def inspected(visitor: Visitor) -> str:
    return f"{visitor.dried()[1]}/inspect"


@pytest.mark.parametrize("sent", [{"found": "wrong"}, {"found": ""}, {"found": "sound", "signs": "slime"}])
def test_a_look_that_says_nothing_or_two_things_records_nothing(visitor: Visitor, sent: dict[str, str]):
    path = inspected(visitor)
    before = len(visitor.book)
    page = visitor.fill(path, **sent)
    assert (page.status, len(visitor.book)) == (422, before)


def test_the_key_enter_presses_the_button_that_asks_for_a_sign(visitor: Visitor):
    """A browser takes the form's first button (HTML, 4.10.21.2, implicit submission; from memory)."""
    page = visitor.get(inspected(visitor))
    assert [each.text for each in page.all("button") if each["name"] == "found"] == ["Something is wrong", "Sound"]


def test_a_sound_piece_is_a_tap(visitor: Visitor):
    assert visitor.fact(visitor.fill(inspected(visitor), found="sound").saved) == PieceInspected()


@pytest.mark.parametrize(
    ("evidence", "main"), [((), "Look, smell, squeeze"), (("sound",), "Take it down"), (("wrong",), "Take it down")]
)
def test_the_main_button_is_what_settles_it(visitor: Visitor, evidence: tuple[str, ...], main: str):
    _, piece = visitor.dried()
    for found in evidence:
        visitor.fill(f"{piece}/inspect", found=found, signs="slime" if found == "wrong" else "")
    assert visitor.get(piece).texts("a", "main") == [main]


def test_what_is_met_is_folded_and_what_is_not_stands_open(visitor: Visitor):
    page = visitor.get(visitor.hang(visitor.cured_and_acid()))
    folded = page.all("details", "met-reasons")[0]
    assert folded.all("summary")[0].text.endswith("reasons met")
    assert {each.text for each in folded.all(".mark")} == {"yes"}
    assert {each.text for each in page.all("span", "mark") if not each.inside(folded)} == {"not known"}


def test_without_a_meter_it_is_no_dead_end(visitor: Visitor):
    piece = visitor.hang(visitor.cured_and_acid())
    for path in (piece, f"{piece}/activity"):
        said = visitor.get(path).texts("details", "no-meter")
        assert len(said) == 1
        assert "A laboratory that tests food measures it." in said[0]
        assert "the piece ends at hold" in said[0]


def test_with_its_water_activity_known_nothing_is_said_of_a_meter(visitor: Visitor):
    _, piece = visitor.dried()
    assert visitor.get(piece).texts("details", "no-meter") == []


def test_what_two_rules_want_alike_is_said_once_with_both_sources(visitor: Visitor):
    page = visitor.get(visitor.hang(visitor.start_batch(), start="1260"))
    said = "No usable water activity yet, from this piece or a wetter one of its batch."
    assert [each.text.count(said) for each in page.all("li") if said in each.text] == [1]
    assert [each.text.count("2073/2005") for each in page.all("li", "missing") if said in each.text] == [1]


def test_what_decides_nothing_stands_apart_from_what_does(visitor: Visitor):
    _, piece = visitor.dried()
    page = visitor.fill(f"{piece}/inspect", found="sound")
    assert page.verdicts == ["ready"]
    assert {"By whose rules it keeps", "What may still grow", "What was killed"} <= set(page.texts("h2", "group"))


def test_pork_without_a_proof_is_held_and_its_button_stands_first(visitor: Visitor):
    _, piece = visitor.dried()
    visitor.fill(f"{piece}/inspect", found="sound")
    noted = visitor.get(f"{piece}/meat").path
    assert noted.endswith("/correct")
    visitor.fill(noted, kind="pork", proof="none")
    page = visitor.get(piece)
    assert page.verdicts == ["hold"]
    assert page.texts("a", "main") == ["Meat and trichinella"]


def test_game_is_refused_any_proof_but_a_test(visitor: Visitor):
    piece = visitor.hang(visitor.cured_and_acid())
    refused = visitor.fill(f"{piece}/meat", kind="game", proof="frozen")
    assert refused.status == 422
    assert "only a test is" in refused.text
