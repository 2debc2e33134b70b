"""The register of single sums: every worksheet by its name, and by the stage it belongs to."""

from __future__ import annotations

from difflib import get_close_matches

from core import air_sheets
from core.chamber import checks_sheets, moisture_sheets, sanitising_sheets, setpoint_sheets
from core.chamber.humidifier import CHARGE_SHEET
from core.dry import activity_sheets
from core.dry.shrink import SHRINK_SHEET, TARGET_SHEET
from core.dry.trim import TRIM_SHEET
from core.ferment import ferment_sheets
from core.mix import acid_sheets, cure_sheets, salting_sheets
from core.mix.formula_sheets import WORKSHEETS as FORMULA_SHEETS
from core.refusals import Refusal
from core.release import trichinella_sheets
from core.release.lab_sheet import LAB_SHEET
from core.release.ready_sheet import READY
from core.sentence import Message, Sentence, in_a_row
from core.worksheet import Worksheet

STAGES: dict[str, Message] = {
    "air": "Air",
    "mix": "Mix",
    "ferment": "Ferment",
    "dry": "Dry",
    "chamber": "Chamber",
    "release": "Release",
}
"""As each stage that has sums is headed."""

WORKSHEETS: dict[str, Worksheet] = {
    sheet.name: sheet
    for sheet in (
        *air_sheets.WORKSHEETS,
        *checks_sheets.WORKSHEETS,
        *sanitising_sheets.WORKSHEETS,
        CHARGE_SHEET,
        *setpoint_sheets.WORKSHEETS,
        *moisture_sheets.WORKSHEETS,
        *cure_sheets.WORKSHEETS,
        *acid_sheets.WORKSHEETS,
        *salting_sheets.WORKSHEETS,
        *ferment_sheets.WORKSHEETS,
        *FORMULA_SHEETS,
        SHRINK_SHEET,
        TARGET_SHEET,
        TRIM_SHEET,
        *activity_sheets.WORKSHEETS,
        READY,
        LAB_SHEET,
        *trichinella_sheets.WORKSHEETS,
    )
}


def find(name: str) -> Worksheet:
    """The worksheet of that name. Raises Refusal, with the nearest name, where there is none."""
    if name in WORKSHEETS:
        return WORKSHEETS[name]
    near = get_close_matches(name, WORKSHEETS, n=1)
    if near:
        told = {"name": name, "near": near[0]}
        raise Refusal("", Sentence("There is no worksheet “{name}”. Did you mean “{near}”?", told))
    told = {"name": name, "known": in_a_row(tuple(WORKSHEETS))}
    raise Refusal("", Sentence("There is no worksheet “{name}”. There are: {known}.", told))


def by_stage() -> dict[str, tuple[Worksheet, ...]]:
    """The worksheets of each stage, stages and sheets in the order of the work."""
    stages = dict.fromkeys(sheet.stage for sheet in WORKSHEETS.values())
    return {stage: tuple(sheet for sheet in WORKSHEETS.values() if sheet.stage == stage) for stage in stages}
