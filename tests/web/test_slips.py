"""The page of slips is the program: each box has its rows, each slip typed into it meets what the page says."""

import re
from pathlib import Path

import pytest
from attrs import frozen

from core.command_line import read_as
from core.quantities import METRIC, US, Amount, Reader
from core.refusals import Refusal, Unusual
from core.worksheet import Number
from core.worksheets import WORKSHEETS
from tests.web.boxes import every_box, every_other_input, keys_written
from web.forms import Form

PAGE = Path(__file__).parents[2] / "docs" / "slips.md"
BOXES = every_box()
GUARDS = ("asked", "refused", "said back", "harmless, because ")


@frozen
class Slip:
    section: str
    boxes: tuple[str, ...]
    typed: str
    reader: Reader
    guard: str


def _sections() -> dict[str, str]:
    _, *parts = re.split(r"^## (.+)\n", PAGE.read_text("utf-8"), flags=re.MULTILINE)
    return dict(zip(parts[::2], parts[1::2], strict=True))


def _boxes(section: str) -> tuple[str, ...]:
    listed = re.search(r"Boxes: (.+?)\.\n\n", section, re.DOTALL)
    assert listed
    return tuple(" ".join(each.split()) for each in re.findall(r"`([^`]+)`", listed[1]))


def _slips() -> list[Slip]:
    found: list[Slip] = []
    for title, section in SECTIONS.items():
        for typed, us, guard in re.findall(r"^\| `([^`]+)`( US)? \|.+\| ([^|]+) \|$", section, re.MULTILINE):
            found.append(Slip(title, _boxes(section), typed, US if us else METRIC, guard))
    return found


SECTIONS = _sections()
SLIPS = _slips()


def typed_into(box: Number, slip: Slip) -> Refusal | None:
    """As on a screen: the unit that stands beside the box from the first was not picked."""
    form = Form("", (box,), {box.key: slip.typed, f"{box.key}-unit": box.quantity.bare(slip.reader.system).symbol})
    try:
        box.read(form.readable(slip.reader)[box.key], slip.reader)
    except Refusal as refusal:
        return refusal
    return None


def test_every_box_of_the_program_has_its_rows_once():
    listed = [box for section in SECTIONS.values() for box in _boxes(section)]
    assert sorted(listed) == sorted(BOXES)


def test_no_box_of_the_screens_is_overlooked():
    keys = [each.key for each in BOXES.values()]
    assert [written for written in keys_written() if not any(key.endswith(written) for key in keys)] == []


def test_what_takes_no_number_is_chosen_ticked_or_written():
    """A new kind of input has to be thought about here."""
    known = {"Choice", "Kept", "OptionalChoice", "Words", "Ticks", "ReadWith", "Moment", "Dose", "Photo"}
    assert every_other_input() <= known


def test_every_section_has_rows_and_every_row_a_guard():
    assert {slip.section for slip in SLIPS} == set(SECTIONS)
    assert len(SLIPS) == sum(section.count("\n| `") for section in SECTIONS.values())
    assert all(slip.guard.startswith(GUARDS) for slip in SLIPS)
    assert all(len(slip.guard) > 30 for slip in SLIPS if slip.guard.startswith("harmless"))


@pytest.mark.parametrize("title", SECTIONS)
def test_what_is_usual_on_the_page_is_what_the_box_asks_by(title: str):
    for name in _boxes(SECTIONS[title]):
        usual = BOXES[name].usual_here
        ends = [Amount(each, BOXES[name].quantity).show_exact(METRIC, 3) for each in usual or ()]
        line = f"Usual: {' to '.join(ends).replace(chr(0xA0), ' ')}."
        assert (line in SECTIONS[title]) == (usual is not None), name


@pytest.mark.parametrize("slip", SLIPS, ids=lambda slip: f"{slip.section}-{slip.typed}-{slip.reader.system}")
def test_the_slip_meets_its_guard_in_every_box(slip: Slip):
    """A box whose bounds are narrower refuses what the others ask about or say back."""
    refusals = {name: typed_into(BOXES[name], slip) for name in slip.boxes}
    assert all(refusal.field == BOXES[name].key for name, refusal in refusals.items() if refusal)
    if slip.guard in ("asked", "refused"):
        assert [name for name, refusal in refusals.items() if refusal is None] == []
    if slip.guard != "asked":
        assert [name for name, refusal in refusals.items() if isinstance(refusal, Unusual)] == []
    if slip.guard not in ("asked", "refused"):
        assert None in refusals.values()


@pytest.mark.parametrize("slip", [slip for slip in SLIPS if slip.guard == "asked"], ids=lambda slip: slip.typed)
def test_some_box_of_the_section_asks_and_the_unit_answers(slip: Slip):
    asking = [name for name in slip.boxes if isinstance(typed_into(BOXES[name], slip), Unusual)]
    assert asking
    for name in asking:
        box = BOXES[name]
        with_unit = f"{slip.typed} {box.quantity.bare(slip.reader.system).symbol}"
        assert box.read(with_unit, slip.reader) is not None


@pytest.mark.parametrize("slip", [slip for slip in SLIPS if slip.guard == "said back"], ids=lambda slip: slip.typed)
def test_what_no_range_can_tell_is_said_back_with_its_unit(slip: Slip):
    taken = [name for name in slip.boxes if typed_into(BOXES[name], slip) is None]
    for name in taken:
        box = BOXES[name]
        unit = box.quantity.bare(slip.reader.system).symbol
        assert unit, name
        sheet = WORKSHEETS.get(name.split()[0])
        if sheet is not None:
            assert unit in read_as(sheet, {box.key: slip.typed}, slip.reader)[box.key]


def test_whatever_may_be_asked_about_has_a_unit_to_answer_with():
    for name, box in BOXES.items():
        if box.usual_here is not None:
            assert box.quantity.bare_metric.symbol, name
            assert box.quantity.bare_us.symbol, name


def test_what_a_box_holds_from_the_first_is_usual():
    for name, box in BOXES.items():
        if box.default is not None:
            assert not box.asks(f"{box.quantity.bare_metric.from_si(box.default):.9f}", METRIC), name
