"""A note and a photo of a batch, a piece and the chamber: what is kept, shown, corrected and refused."""

import io
from hashlib import sha256

import pytest

from tests.web.conftest import Visitor
from tests.web.pictures import PLACE, jpeg, segment
from tests.web.reading import Page
from web.photos import bare_jpeg

PICTURE = jpeg()
NAME = sha256(PICTURE).hexdigest()
NO_PICTURE = "That file is no picture this device can show. Take one with the camera, or choose a JPEG or PNG."


def note(visitor: Visitor, path: str, words: str = "", photo: bytes | None = None) -> Page:
    sent = {} if photo is None else {"photo": (io.BytesIO(photo), "photo.jpg")}
    return visitor.post(f"{path}/note", words=words, **sent)


@pytest.fixture
def places(visitor: Visitor) -> dict[str, str]:
    batch = visitor.cured_and_acid()
    return {"batch": batch, "piece": visitor.hang(batch), "chamber": "/chamber"}


def photos(page: Page) -> list[str]:
    return [each["src"] for each in page.all("kept-photo")]


@pytest.mark.parametrize("place", ["batch", "piece", "chamber"])
def test_a_note_with_its_photo_stands_in_the_log_of(visitor: Visitor, places: dict[str, str], place: str):
    note(visitor, places[place], "Mould on the left.", PICTURE)
    page = visitor.get(places[place])
    assert any("Photo: Mould on the left." in words for words in page.texts("span", "words"))
    assert photos(page) == [f"/photos/{NAME}"]


def test_a_note_of_a_piece_stands_in_the_log_of_its_batch_under_its_tag(visitor: Visitor, places: dict[str, str]):
    note(visitor, places["piece"], "Soft.")
    assert "J-1: Note: Soft." in visitor.get(places["batch"]).texts("span", "words")


def test_words_alone_are_enough(visitor: Visitor, places: dict[str, str]):
    fact = visitor.fact(note(visitor, places["batch"], "Smells of smoke.").saved)
    assert (fact.words, fact.photo) == ("Smells of smoke.", None)


def test_a_photo_alone_is_enough(visitor: Visitor, places: dict[str, str]):
    fact = visitor.fact(note(visitor, places["chamber"], photo=PICTURE).saved)
    assert (fact.words, fact.photo) == ("", NAME)


def test_an_empty_note_is_refused(visitor: Visitor, places: dict[str, str]):
    page = note(visitor, places["batch"], "  ")
    assert (page.status, page.beside("words")) == (422, "Write something, or take a photo.")


@pytest.mark.parametrize(
    "data", [b"", b"time,temp\n10:00,12.4\n", PICTURE[:-2], b"\xff\xd8\xff\xd9", b"\x89PNG\r\n\x1a\n" + PICTURE]
)
def test_a_file_that_is_no_picture_is_refused_and_what_was_typed_stays(
    visitor: Visitor, places: dict[str, str], data: bytes
):
    page = note(visitor, places["batch"], "Look.", data)
    assert (page.status, page.typed("words")) == (422, "Look.")
    assert NO_PICTURE in page.texts("p", "refusal")
    assert visitor.app.extensions["files"] == {}


def test_what_the_camera_told_beside_the_picture_is_not_kept(visitor: Visitor, places: dict[str, str]):
    note(visitor, places["batch"], photo=jpeg(segment(0xE1, PLACE), segment(0xFE, b"taken by")))
    assert visitor.app.extensions["files"] == {NAME: PICTURE}


def test_how_its_colours_are_meant_is_kept():
    profile = jpeg(segment(0xE2, b"ICC_PROFILE\0\x01\x01"))
    assert bare_jpeg(profile) == profile


def test_the_file_is_given_as_a_picture(visitor: Visitor, places: dict[str, str]):
    note(visitor, places["batch"], photo=PICTURE)
    answer = visitor.client.get(f"/photos/{NAME}")
    assert (answer.data, answer.mimetype) == (PICTURE, "image/jpeg")


@pytest.mark.parametrize("name", ["0" * 64, "photo.jpg"])
def test_a_photo_that_is_not_on_this_device_is_not_there(visitor: Visitor, name: str):
    assert visitor.client.get(f"/photos/{name}").status_code == 404


def test_a_corrected_note_keeps_its_photo(visitor: Visitor, places: dict[str, str]):
    key = note(visitor, places["batch"], "Mold.", PICTURE).saved
    visitor.fill(f"/entries/{key}/correct", words="Mould.")
    assert (visitor.fact(key).words, visitor.fact(key).photo) == ("Mould.", NAME)


def test_a_photo_is_taken_out_of_its_note(visitor: Visitor, places: dict[str, str]):
    key = note(visitor, places["batch"], "Mould.", PICTURE).saved
    visitor.post(f"/entries/{key}/correct", words="Mould.")
    assert visitor.fact(key).photo is None


def test_another_photo_takes_its_place(visitor: Visitor, places: dict[str, str]):
    key, other = note(visitor, places["batch"], "Mould.", PICTURE).saved, jpeg(rows=b"\x56")
    visitor.post(f"/entries/{key}/correct", words="Mould.", photo=[NAME, (io.BytesIO(other), "photo.jpg")])
    assert visitor.fact(key).photo == sha256(other).hexdigest()


def test_a_deleted_note_shows_its_photo_no_more(visitor: Visitor, places: dict[str, str]):
    key = note(visitor, places["batch"], photo=PICTURE).saved
    visitor.post(f"/entries/{key}/withdraw")
    assert photos(visitor.get(places["batch"])) == []
