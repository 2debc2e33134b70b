"""Raw files: stored with the request's entries or not at all, named by their SHA-256, fetched when needed."""

import io
import json
from hashlib import sha256
from types import ModuleType

import pytest
from flask import Flask, request

from core.daybook.book import Book
from core.daybook.facts.chamber import CHAMBER, AirRead
from tests.web.conftest import MORNING, Visitor
from tests.web.test_host import fresh_host
from web.app import create_app
from web.files import DeviceFiles, FileWanted, NoSuchFile, file_of, keep_file
from web.journal import NotSaved, fresh_id, record

LOG = b"time,temp\n10:00,12.4\n" + bytes(range(256))
NOT_KEPT = "full"


def add_screens(app: Flask) -> None:
    """What a screen for logs does, without its words."""

    def keep() -> tuple[str, int]:
        try:
            names = [keep_file(each.read()) for each in request.files.getlist("log")]
            record(AirRead(12.0), about=CHAMBER, happened_at=MORNING, token=fresh_id())
        except NotSaved as refusal:
            return refusal.sentence, 422
        return " ".join(names), 422 if "refuse" in request.args else 200

    def show() -> tuple[bytes | str, int]:
        try:
            return b"|".join(file_of(name) for name in request.args["names"].split()), 200
        except NoSuchFile:
            return "gone", 404

    app.add_url_rule("/keep", view_func=keep, methods=["POST"])
    app.add_url_rule("/show", view_func=show)


@pytest.fixture
def visitor() -> Visitor:
    book = Book()
    app = create_app(book)
    add_screens(app)
    return Visitor(app, book)


def sent(*logs: bytes) -> dict[str, object]:
    return {"data": {"log": [(io.BytesIO(each), f"{nth}.csv") for nth, each in enumerate(logs)]}}


def test_a_kept_file_is_named_by_its_sha_256(visitor: Visitor):
    assert visitor.client.post("/keep", **sent(LOG)).text == sha256(LOG).hexdigest()


def test_a_kept_file_comes_back_byte_for_byte(visitor: Visitor):
    name = visitor.client.post("/keep", **sent(LOG)).text
    assert visitor.client.get(f"/show?names={name}").data == LOG


def test_the_same_file_again_is_no_second_one(visitor: Visitor):
    for _ in range(2):
        visitor.client.post("/keep", **sent(LOG, LOG))
    assert len(visitor.app.extensions["files"]) == 1


def test_an_empty_file_is_a_file(visitor: Visitor):
    name = visitor.client.post("/keep", **sent(b"")).text
    assert visitor.client.get(f"/show?names={name}").data == b""


def test_a_refused_answer_keeps_no_file(visitor: Visitor):
    visitor.client.post("/keep?refuse", **sent(LOG))
    assert visitor.app.extensions["files"] == {}


def test_a_file_that_is_not_there_is_no_such_file(visitor: Visitor):
    assert visitor.client.get("/show?names=00").status_code == 404


def test_a_request_finds_the_file_that_it_asks_to_keep(visitor: Visitor):
    with visitor.app.test_request_context("/"):
        assert file_of(keep_file(LOG)) == LOG


class Device:
    """Does what the browser's worker does with files."""

    def __init__(self, host: ModuleType) -> None:
        self.host = host
        self.disk: dict[str, bytes] = {}
        self.wanted: list[str] = []
        host.start("", "build-1")
        add_screens(host._app)

    def ask(self, method: str, path: str, body: bytes = b"", kind: str = "", refused: str | None = None):
        head = {"method": method, "path": path, "headers": {"Content-Type": kind}, "refused": refused}
        for _ in range(9):
            answered, text, files = self.host.answer(json.dumps(head), body)
            said = json.loads(answered)
            if "wants" not in said:
                return said, text, dict(zip(said["files"], files, strict=True))
            self.wanted.append(said["wants"])
            self.host.give(said["wants"], self.disk.get(said["wants"]))
        raise AssertionError("it never has enough")

    def keep(self, *logs: bytes, refused: str | None = None, then_give: bool = True):
        parts = b"".join(
            b'--x\r\nContent-Disposition: form-data; name="log"; filename="a.csv"\r\n\r\n' + log + b"\r\n"
            for log in logs
        )
        said, text, files = self.ask("POST", "/keep", parts + b"--x--\r\n", "multipart/form-data; boundary=x", refused)
        self.disk |= files
        for name, data in files.items() if then_give else ():
            self.host.give(name, data)
        return said, text.decode().split()

    def show(self, *names: str) -> tuple[int, bytes]:
        said, text, _ = self.ask("GET", f"/show?names={'%20'.join(names)}")
        return said["status"], text


@pytest.fixture
def device() -> Device:
    return Device(fresh_host())


def restarted(device: Device) -> Device:
    again = Device(fresh_host())
    again.disk = device.disk
    return again


def test_the_host_hands_out_entries_and_files_together(device: Device):
    said, names = device.keep(LOG)
    assert ([each["kind"] for each in said["entries"]], said["files"]) == (["air-read"], names)
    assert device.disk == {names[0]: LOG}


def test_a_page_has_no_files_to_be_kept(device: Device):
    device.keep(LOG)
    assert device.ask("GET", "/")[0]["files"] == []


def test_a_file_just_stored_is_not_fetched(device: Device):
    _, names = device.keep(LOG)
    assert (device.show(*names), device.wanted) == ((200, LOG), [])


def test_a_file_is_not_believed_before_it_is_given_back(device: Device):
    _, names = device.keep(LOG, then_give=False)
    device.disk.clear()
    assert device.show(*names) == (404, b"gone")


def test_a_refused_host_gets_no_files_and_the_sentence(device: Device):
    said, _ = device.keep(LOG, refused=NOT_KEPT)
    assert (said["status"], said["entries"], said["files"]) == (422, [], [])


def test_after_a_restart_a_file_is_fetched_once(device: Device):
    _, names = device.keep(LOG)
    again = restarted(device)
    assert [again.show(*names) for _ in range(2)] == [(200, LOG)] * 2
    assert again.wanted == names


def test_a_request_gets_all_the_files_it_needs(device: Device):
    logs = [LOG + bytes([nth]) for nth in range(5)]
    _, names = device.keep(*logs)
    assert restarted(device).show(*names) == (200, b"|".join(logs))


def test_a_file_the_device_does_not_hold_is_asked_for_once_a_request(device: Device):
    assert device.show("00") == (404, b"gone")
    assert device.wanted == ["00"]


def test_a_file_that_came_later_is_found(device: Device):
    device.show("00")
    device.disk["00"] = LOG
    assert device.show("00") == (200, LOG)


def held(files: DeviceFiles, *names: str) -> list[str]:
    kept = []
    for name in names:
        try:
            files[name]
        except FileWanted:
            continue
        kept.append(name)
    return kept


def test_the_file_that_was_longest_not_used_is_let_go():
    files = DeviceFiles(most_held=10)
    for name in ("a", "b"):
        files.give(name, bytes(4))
    files["a"]
    files.give("c", bytes(4))
    files.end_request()
    assert held(files, "a", "b", "c") == ["a", "c"]


def test_within_a_request_no_file_is_let_go():
    files = DeviceFiles(most_held=10)
    for name in ("a", "b", "c"):
        files.give(name, bytes(8))
    assert held(files, "a", "b", "c") == ["a", "b", "c"]


def test_one_file_is_held_however_long_it_is():
    files = DeviceFiles(most_held=10)
    files.give("a", bytes(40))
    files.end_request()
    assert held(files, "a") == ["a"]
