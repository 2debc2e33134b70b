"""The seam to the worker: strings and bytes; entries come back in the head and are in the book only once learnt."""

import importlib
import json
from types import ModuleType
from urllib.parse import urlencode

import pytest

from tests.web.conftest import MORNING
from tests.web.reading import Page
from web.journal import NOT_SAVED

NOT_KEPT = "full"


class Worker:
    """Does what the browser's worker does: asks, stores, lets the book learn, follows redirects."""

    def __init__(self, host: ModuleType, base: str) -> None:
        self.host, self.base = host, base
        self.stored: list[dict] = []
        self.entries: list[dict] = []
        host.start(base, "build-1")

    def ask(self, verb: str, path: str, refused: str | None = None, keep: bool = True, **values: str) -> Page:
        for _ in range(5):
            head, body = self._answer(verb, path, refused, urlencode(values))
            self.entries = head["entries"]
            if keep and self.entries:
                self.stored += self.entries
                self.host.learn(json.dumps(self.entries))
            if head["status"] != 303:
                break
            location = dict(head["headers"])["Location"]
            assert location.startswith(f"{self.base}/")
            verb, path, values = "GET", location.removeprefix(self.base), {}
        return Page(head["status"], path, dict(head["headers"]), body.decode())

    def _answer(self, method: str, path: str, refused: str | None, body: str) -> tuple[dict, bytes]:
        headers = {"Daybook-Now": MORNING.isoformat(), "Content-Type": "application/x-www-form-urlencoded"}
        asked = {"method": method, "path": path, "headers": headers, "refused": refused}
        head, answered, _ = self.host.answer(json.dumps(asked), body.encode())
        return json.loads(head), answered

    def fill(self, path: str, refused: str | None = None, **values: str) -> Page:
        form = self.ask("GET", path).form(path)
        return self.ask("POST", path, refused, **form.values | values)


def fresh_host() -> ModuleType:
    import web.host

    return importlib.reload(web.host)


@pytest.fixture
def worker() -> Worker:
    return Worker(fresh_host(), "")


@pytest.fixture
def below() -> Worker:
    return Worker(fresh_host(), "/sub/kitchen")


def start(worker: Worker) -> str:
    values = {"name": "Juniper coarse", "meat_kg": "12.4", "target_loss": "35", "style": "fermented"}
    return worker.fill("/batches/new", **values).path.partition("?")[0]


def test_starting_answers_with_the_build():
    assert fresh_host().start("", "build-1") == "build-1"


def test_learning_tells_how_many_are_known(worker: Worker):
    start(worker)
    assert fresh_host().learn(json.dumps(worker.stored)) == 1


def test_learning_again_is_harmless(worker: Worker):
    start(worker)
    assert [worker.host.learn(json.dumps(worker.stored)) for _ in range(2)] == [1, 1]


def test_a_page_is_answered_in_bytes(worker: Worker):
    head, body = worker._answer("GET", "/", None, "")
    assert head["status"] == 200
    assert isinstance(body, bytes)


def test_a_page_asks_for_nothing_to_be_written(worker: Worker):
    worker.ask("GET", "/")
    assert worker.entries == []


def test_a_saved_form_asks_for_one_entry(worker: Worker):
    start(worker)
    assert [entry["kind"] for entry in worker.stored] == ["batch-started"]


def test_an_entry_is_not_in_the_book_before_it_is_learnt(worker: Worker):
    worker.ask("POST", "/chamber/air", keep=False, temperature_c="12")
    assert "12.0 °C" not in worker.ask("GET", "/chamber").text


def test_an_entry_that_was_not_kept_does_not_come_back_with_the_next_request(worker: Worker):
    worker.ask("POST", "/chamber/air", keep=False, temperature_c="12")
    worker.ask("GET", "/chamber")
    assert worker.entries == []


def test_a_refused_host_gets_no_entries(worker: Worker):
    worker.fill("/chamber/air", refused=NOT_KEPT, temperature_c="12")
    assert worker.entries == []


def test_a_refused_host_gets_the_form_with_the_sentence(worker: Worker):
    page = worker.fill("/chamber/air", refused=NOT_KEPT, temperature_c="12.5 °C")
    assert page.status == 422
    assert NOT_SAVED[NOT_KEPT] in page.all("div", "summary")[0].text


def test_a_refused_host_gets_the_form_as_typed(worker: Worker):
    page = worker.fill("/chamber/air", refused=NOT_KEPT, temperature_c="12.5 °C", humidity="78")
    assert (page.typed("temperature_c"), page.typed("humidity")) == ("12.5 °C", "78")


def test_a_refused_form_can_be_sent_again_under_its_id(worker: Worker):
    form = worker.ask("GET", "/chamber/air").form("/chamber/air")
    refused = worker.ask("POST", "/chamber/air", NOT_KEPT, **form.values | {"temperature_c": "12"})
    worker.ask("POST", "/chamber/air", **refused.form("/chamber/air").values)
    assert [entry["id"] for entry in worker.stored] == [form.values["entry"]]


@pytest.mark.parametrize("what", ["undo", "withdraw"])
def test_a_refused_undo_says_so_and_writes_nothing(worker: Worker, what: str):
    key = worker.fill("/chamber/air", temperature_c="12").saved
    page = worker.ask("POST", f"/entries/{key}/{what}", NOT_KEPT)
    assert (page.status, worker.entries) == (503, [])
    assert NOT_SAVED[NOT_KEPT] in page.text


def test_a_refused_correction_keeps_what_was_typed(worker: Worker):
    key = worker.fill("/chamber/air", temperature_c="12").saved
    page = worker.fill(f"/entries/{key}/correct", refused=NOT_KEPT, temperature_c="13")
    assert (page.status, page.typed("temperature_c"), worker.entries) == (422, "13", [])


def test_a_query_and_letters_of_every_script_go_through(worker: Worker):
    page = worker.ask("GET", "/sums?find=w%C3%BCrzig")
    assert page.by_id("find")["value"] == "würzig"


@pytest.mark.parametrize("path", ["/%ff", "/%00", "/sums/%E8%BE%9B", "/sums?find=%ff", "/?saved=%ff", "/" + "x" * 9000])
def test_odd_paths_are_answered(worker: Worker, path: str):
    assert worker.ask("GET", path).status in (200, 404)


def walk(worker: Worker) -> list[Page]:
    """Every page that can be reached by links from Today, each once."""
    to_do, pages = ["/"], {}
    while to_do:
        path = to_do.pop()
        if path not in pages:
            pages[path] = worker.ask("GET", path)
            links = [link["href"].partition("#")[0] for link in pages[path].all("a")]
            to_do += [link.removeprefix(worker.base) for link in links if link.startswith(f"{worker.base}/")]
    return list(pages.values())


def filled(worker: Worker) -> None:
    batch = start(worker)
    worker.fill(f"{batch}/cure", dose="0.25 %")
    worker.fill(f"{batch}/reading", ph="5.1", temperature_c="22")
    piece = worker.fill(f"{batch}/hang", tag="J-1", start_kg="1250").saved
    worker.fill(f"/pieces/{piece}/weigh", mass_kg="800")
    worker.fill("/chamber/air", temperature_c="12", humidity="80")
    worker.fill("/chamber/charge", water_m3="5")


def addresses(page: Page) -> list[str]:
    names = ("href", "action", "src", "hx-get", "hx-post", "formaction")
    return [each[name] for each in page.elements for name in names if name in each.attributes]


@pytest.mark.parametrize("is_filled", [False, True], ids=["empty", "filled"])
def test_under_a_sub_path_every_address_stays_below_it(below: Worker, is_filled: bool):
    if is_filled:
        filled(below)
    pages = walk(below)
    found = {address for page in pages for address in addresses(page)}
    assert len(pages) > (25 if is_filled else 15)
    assert [each for each in found if not each.startswith(("/sub/kitchen/", "#"))] == []


def test_under_a_sub_path_every_way_back_stays_below_it(below: Worker):
    filled(below)
    backs = {each["value"] for page in walk(below) for each in page.all("input") if each["name"] == "back"}
    assert backs
    assert [each for each in backs if not each.startswith("/sub/kitchen/")] == []


def test_under_a_sub_path_every_page_is_there(below: Worker):
    filled(below)
    assert {page.status for page in walk(below)} == {200}


def test_under_a_sub_path_a_refused_form_stays_below_it(below: Worker):
    page = below.fill("/chamber/air", temperature_c="much")
    assert page.status == 422
    assert all(each.startswith(("/sub/kitchen/", "#")) for each in addresses(page))


def test_under_a_sub_path_a_switch_comes_back(below: Worker):
    page = below.ask("GET", "/sums?find=salt")
    assert below.ask("POST", "/settings", **page.form("/settings").values, units="us").path == "/sums?find=salt"
