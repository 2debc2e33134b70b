"""Hanging and drying: tag, weigh one after the other, see what is lost."""

import pytest

from core.daybook.facts.batch import PieceHung, PieceWeighed
from tests.web.conftest import Visitor, alike
from tests.web.reading import Page


@pytest.fixture
def batch(visitor: Visitor) -> str:
    return visitor.cured_and_acid()


def weights_to_go(visitor: Visitor, batch: str) -> str:
    return visitor.get(f"{batch}/weigh").path


def test_a_piece_is_kept_as_typed(visitor: Visitor, batch: str):
    piece = visitor.hang(batch, "J-1", "2 lb 12 oz")
    assert alike(visitor.fact(piece.split("/")[-1]), PieceHung("J-1", 2.75 * 0.45359237))


def test_after_a_piece_comes_the_next_one(visitor: Visitor, batch: str):
    page = visitor.fill(f"{batch}/hang", tag="J-1", start_kg="1250")
    assert page.path.startswith(f"{batch}/hang")
    assert "Hanging already: J-1" in page.text


def test_the_next_form_goes_on_with_the_series_and_waits_for_the_weight(visitor: Visitor, batch: str):
    page = visitor.fill(f"{batch}/hang", tag="J-1", start_kg="1250")
    assert (page.typed("tag"), page.typed("start_kg")) == ("J-2", "")
    assert [each["name"] for each in page.all("input") if "data-focus" in each.attributes] == ["start_kg"]


def test_after_a_tag_of_no_series_the_next_is_typed(visitor: Visitor, batch: str):
    page = visitor.fill(f"{batch}/hang", tag="loin", start_kg="1250")
    assert [each["name"] for each in page.all("input") if "data-focus" in each.attributes] == ["tag"]


def test_a_scale_that_passed_leaves_a_weight_as_it_was_read(visitor: Visitor, batch: str):
    added = visitor.fill("/chamber/instruments/add", name="Table", kind="scale").path.partition("?")[0]
    checked = {"mass_kg": "1000", "reading_kg": "1000.4", "division_kg": "1"}
    visitor.fill(f"{added}/check/weights", **checked)
    piece = visitor.hang(batch, start="1000")
    page = visitor.get(f"{piece}/weigh", figures="1", mass_kg="788", scale=added.rpartition("/")[2])
    assert page.figures == {"loss": "21.2 %", "remaining": "138 g"}
    saved = visitor.fill(f"{piece}/weigh", mass_kg="788", scale=added.rpartition("/")[2])
    assert "788 g" in visitor.get(piece).text
    assert visitor.fact(saved.path.partition("saved=")[2]).mass_kg == 0.788


def test_a_scale_to_be_adjusted_says_the_loss_first_and_the_correction_after(visitor: Visitor, batch: str):
    added = visitor.fill("/chamber/instruments/add", name="Table", kind="scale").path.partition("?")[0]
    visitor.fill(f"{added}/check/weights", mass_kg="1000", reading_kg="1010", division_kg="1")
    piece = visitor.hang(batch, start="1000")
    page = visitor.get(f"{piece}/weigh", figures="1", mass_kg="808", scale=added.rpartition("/")[2])
    assert list(page.figures) == ["loss", "remaining", "mass_corrected"]


def test_weighing_says_how_many_are_done(visitor: Visitor, batch: str):
    visitor.hang(batch, "J-1"), visitor.hang(batch, "J-2")
    page = visitor.get(f"{batch}/weigh")
    assert "0 of 2 weighed" in page.text
    assert "1 of 2 weighed" in visitor.fill(page.path, mass_kg="900").text


def test_the_next_form_has_an_id_of_its_own(visitor: Visitor, batch: str):
    first = visitor.get(f"{batch}/hang").form("/hang").values["entry"]
    assert visitor.fill(f"{batch}/hang", tag="J-1", start_kg="1250").form("/hang").values["entry"] != first


@pytest.mark.parametrize("tag", ["J-1", "j-1", " J-1 "])
def test_a_tag_that_hangs_already_is_refused(visitor: Visitor, batch: str, tag: str):
    visitor.hang(batch, "J-1")
    page = visitor.fill(f"{batch}/hang", tag=tag, start_kg="900")
    assert "Give this one another tag" in page.beside("tag")


def test_the_target_weight_is_figured_while_one_types(visitor: Visitor, batch: str):
    page = visitor.get(f"{batch}/hang", figures="1", tag="J-1", start_kg="1000")
    assert page.figures == {"target_weight": "650 g"}


def test_loss_is_figured_while_one_types(visitor: Visitor, batch: str):
    piece = visitor.hang(batch, start="1000")
    page = visitor.get(f"{piece}/weigh", figures="1", mass_kg="800")
    assert page.figures == {"loss": "20.0 %", "remaining": "150 g"}


def test_a_gain_is_told_while_one_types(visitor: Visitor, batch: str):
    piece = visitor.hang(batch, start="1000")
    page = visitor.get(f"{piece}/weigh", figures="1", mass_kg="1100")
    assert "weighs more than at the start" in page.text


def test_weighing_goes_from_piece_to_piece_and_back_to_the_batch(visitor: Visitor, batch: str):
    pieces = [visitor.hang(batch, f"J-{number}") for number in (1, 2, 3)]
    path = weights_to_go(visitor, batch)
    walked = []
    while path.startswith("/pieces/"):
        walked.append(path.partition("?")[0].removesuffix("/weigh"))
        path = visitor.fill(path.partition("?")[0], mass_kg="1000").path
    assert walked == pieces
    assert path.startswith(batch)


def test_the_piece_that_waited_longest_comes_first(visitor: Visitor, batch: str):
    first, second = visitor.hang(batch, "J-1"), visitor.hang(batch, "J-2")
    visitor.wait(days=1)
    visitor.fill(f"{first}/weigh", mass_kg="1200")
    visitor.wait(days=1)
    assert weights_to_go(visitor, batch) == f"{second}/weigh"


def test_all_weighed_today_can_be_weighed_again(visitor: Visitor, batch: str):
    piece = visitor.hang(batch)
    visitor.fill(f"{piece}/weigh", mass_kg="1200")
    assert weights_to_go(visitor, batch) == f"{piece}/weigh"


def test_without_pieces_weighing_leads_back_to_the_batch(visitor: Visitor, batch: str):
    assert weights_to_go(visitor, batch) == batch


def test_a_piece_weighed_in_pounds_is_kept_in_kilograms(visitor: Visitor, batch: str):
    piece = visitor.hang(batch)
    visitor.settings(units="us")
    page = visitor.fill(f"{piece}/weigh", mass_kg="2")
    assert alike(visitor.fact(page.saved), PieceWeighed(0.90718474))


def test_a_piece_of_a_batch_taken_back_has_no_page(visitor: Visitor, batch: str):
    piece = visitor.hang(batch)
    visitor.post(f"/entries/{batch.split('/')[-1]}/withdraw")
    assert visitor.get(f"{piece}/weigh").status == 404


@pytest.mark.parametrize("path", ["/pieces/nothing/weigh", "/pieces/01a2138b-1620-7c23-a1d4-5ab52d4a3d83/weigh"])
def test_there_is_no_page_for_an_unknown_piece(visitor: Visitor, path: str):
    assert visitor.get(path).status == 404


def test_what_was_said_of_the_last_piece_is_offered_for_the_next(visitor: Visitor, batch: str):
    said = {"diameter_m": "55", "casing": "collagen", "place": "upper rail", "counted_from": "filled"}
    page = visitor.fill(f"{batch}/hang", tag="J-1", start_kg="1250", **said)
    assert page.typed("place") == "upper rail"
    assert "55" in page.typed("diameter_m")
    assert (page.typed("casing"), page.typed("counted_from")) == ("collagen", "filled")


def test_a_piece_says_what_was_said_of_it(visitor: Visitor, batch: str):
    said = {"diameter_m": "55 mm", "casing": "collagen", "place": "upper rail", "counted_from": "filled"}
    piece = visitor.fill(f"{batch}/hang", tag="J-1", start_kg="1250", **said).saved
    assert "55 mm, collagen casing, weighed when it was filled, upper rail" in visitor.get(f"/pieces/{piece}").text


def test_what_nobody_said_of_a_piece_is_not_known(visitor: Visitor, batch: str):
    fact = visitor.fact(visitor.fill(f"{batch}/hang", tag="J-1", start_kg="1250").saved)
    assert (fact.diameter_m, fact.casing, fact.counted_from, fact.place) == (None, None, None, "")


def test_a_cut_says_from_what_the_loss_is_counted_now(visitor: Visitor, batch: str):
    piece = visitor.hang(batch, start="1000")
    page = visitor.get(f"{piece}/cut", figures="1", before_kg="900", after_kg="450")
    assert page.figures == {"loss": "10.0 %", "start_of_rest": "500 g"}


def test_a_piece_that_was_cut_says_so(visitor: Visitor, batch: str):
    piece = visitor.hang(batch, start="1000")
    visitor.fill(f"{piece}/cut", before_kg="900", after_kg="450")
    assert "Its loss is counted from 500 g" in visitor.get(piece).text


def test_what_hangs_on_cannot_weigh_more(visitor: Visitor, batch: str):
    piece = visitor.hang(batch, start="1000")
    page = visitor.fill(f"{piece}/cut", before_kg="900", after_kg="950")
    assert page.beside("after_kg") == "What hangs on must weigh less than the piece before the cut."


def focused(page: Page) -> list[str]:
    return [each["name"] for each in page.all("input") if "data-focus" in each.attributes]


def test_after_a_saved_piece_the_next_digits_go_into_the_weight_of_the_next(visitor: Visitor):
    batch = visitor.cured_and_acid()
    assert focused(visitor.get(f"{batch}/hang")) == ["tag"]
    page = visitor.fill(f"{batch}/hang", tag="J-1", start_kg="1250")
    assert (focused(page), page.typed("tag")) == (["start_kg"], "J-2")


def test_where_the_box_has_the_focus_at_once_the_form_is_called_by_what_is_weighed(visitor: Visitor):
    piece = visitor.hang(visitor.cured_and_acid(), "J-1")
    page = visitor.get(f"{piece}/weigh")
    (form,) = page.all("form", "entry")
    assert page.by_id(form["aria-labelledby"]).text == "Weigh J-1"


def test_after_a_saved_weighing_the_next_digits_go_into_the_next_weight(visitor: Visitor):
    batch = visitor.cured_and_acid()
    for tag in ("J-1", "J-2"):
        visitor.hang(batch, tag)
    visitor.wait(days=10)
    page = visitor.get(f"{batch}/weigh")
    assert focused(page) == ["mass_kg"]
    assert focused(visitor.send(page.form("/weigh"), mass_kg="1100")) == ["mass_kg"]


def test_a_piece_that_is_skipped_comes_up_again_at_the_end(visitor: Visitor):
    batch = visitor.cured_and_acid()
    pieces = {tag: visitor.hang(batch, tag) for tag in ("J-1", "J-2", "J-3")}
    visitor.wait(days=10)
    assert visitor.fill(f"{pieces['J-2']}/weigh", mass_kg="1100").texts("h1") == ["Weigh J-3"]
    assert visitor.fill(f"{pieces['J-3']}/weigh", mass_kg="1100").texts("h1") == ["Weigh J-1"]
    assert visitor.fill(f"{pieces['J-1']}/weigh", mass_kg="1100").path.startswith(batch)
