"""Every kind of entry has a form, a sentence in the log, and a way back."""

import attrs
import pytest

from core.daybook.facts import KINDS, KNOWN, Withdrawn
from core.daybook.facts.air_log import AirLogTaken
from core.daybook.facts.batch import (
    ActivityMeasured,
    BatchEnded,
    CureWeighed,
    PieceCut,
    PieceInspected,
    PieceTakenDown,
    Reading,
)
from core.daybook.facts.chamber import (
    CHAMBER,
    AirRead,
    BasinEmptied,
    BasinKnown,
    CapacityStated,
    HumidifierCharged,
    HumidifierFilled,
    SetPointsChosen,
)
from core.daybook.facts.cure import RULES, HouseRule, LicensedException
from core.daybook.facts.device import DEVICES, DeviceNamed
from core.daybook.facts.drying import DryingBounded
from core.daybook.facts.ferment import DeviationDecided, FermentationBegun, FermentLogTaken
from core.daybook.facts.formula import FormulaChanged, FormulaKept, IngredientWeighed
from core.daybook.facts.instruments import InstrumentAdded, InstrumentRecalibrated, InstrumentRetired
from core.daybook.facts.kept import KeptAmount, KeptReason
from core.daybook.facts.meat import MeatNoted
from core.daybook.facts.note import NoteTaken
from core.daybook.facts.preparation import (
    KeptTask,
    PreparationBegun,
    PreparationEnded,
    PreparationListKept,
    TaskBegun,
    TaskDone,
)
from core.daybook.facts.salting import PieceTurned, SaltingBegun, SaltingEnded
from core.daybook.preparation_list import tasks_for
from core.quantities import METRIC, US
from tests.core import kept_proof, workshop
from tests.core.kitchen import Kitchen
from tests.core.mixing import FORMULA, fields
from tests.web.conftest import Visitor, alike
from web.entry_forms import form_of, say

NO_FORM = {Withdrawn}


def _chamber(kitchen: Kitchen) -> None:
    """One entry of each kind about the chamber's water, set-points, load and preparation."""
    kitchen.note(HumidifierFilled(0.0012345678, 0.0023456789), CHAMBER)
    kitchen.note(BasinKnown(0.0034567891), CHAMBER)
    kitchen.note(BasinEmptied(0.0011234567), CHAMBER)
    kitchen.note(CapacityStated(1.2345678e-8, 0.51234567), CHAMBER)
    kitchen.note(
        SetPointsChosen(12.3456, 0.8123, 0.51, 0.031, "drying", "dry-us", 0.2134, 0.9712, 2.13, 0.0612), CHAMBER
    )
    kitchen.note(PreparationListKept((KeptTask("own-1", "Look at the seal.", 61.0),)), CHAMBER)
    start = PreparationBegun(
        "quat", 0.101234, 1.512345e-4, 0.0041234, ph=7.1234, contact_s=61.5, descaled=True, others=("acid",)
    )
    run = kitchen.note(attrs.evolve(start, tasks=tasks_for(start, ())), CHAMBER)
    kitchen.note(TaskBegun("contact", "Keep it wet."), run)
    kitchen.note(TaskDone("contact", "Keep it wet."), run, at=0.1)
    kitchen.note(PreparationEnded("the stock was empty"), run, at=0.2)


@pytest.fixture
def walked(visitor: Visitor) -> dict[type, str]:
    """One entry of every kind, by its kind, with figures that no unit system shows in round numbers."""
    kitchen = Kitchen()
    batch = kitchen.begin(meat_kg=12.3456789, target_loss=1 / 3, least_s=21.5 * 86400)
    kitchen.note(CureWeighed(0.0301234567, 0.062345678, 0.0012345678, 0.3171717), batch)
    formula = kitchen.note(FormulaKept(**fields(FORMULA), note="Mince it cold."))
    kitchen.note(FormulaChanged(**fields(FORMULA)), formula)
    kitchen.note(IngredientWeighed("part-1", 0.0125, 0.0123456789, "Salt", 1.234567e-4, lot="L 7"), batch)
    kitchen.note(HouseRule("us", 123.456789e-6, 1234.56789e-6, "our own"), RULES)
    kitchen.note(
        LicensedException("a trial", "letter 12", "Ana", "food act, section 9", "nitrite", 187.654321e-6), batch
    )
    kitchen.note(Reading(5.1371371, 22.3737373), batch)
    kitchen.note(AirRead(12.3456789, 0.78912345), CHAMBER)
    kitchen.note(AirLogTaken("b" * 64, 3600.0, (0.0, 7200.0), (12.5, 13.0), (13.0, 14.5), (3600.0, 1800.0), 9), CHAMBER)
    kitchen.note(DryingBounded(6.1234e-8, 2.12345e-7, late_most=1.2345e-7), CHAMBER)
    kitchen.note(FermentationBegun("canada", 23.4567891), batch)
    kitchen.note(FermentLogTaken("a" * 64, "core", (0.0, 3600.0), (22.5, 23.25), 23.5, 3600.0, 61, "shelf"), batch)
    kitchen.note(DeviationDecided("keep", "Ana", "clean", "toxin, two pieces", "report 12"), batch, at=2)
    block = SaltingBegun("excess", "block", 0.1234567, 2.3456789, 0.2345678, 0.3456789, 0.9123456, 1.8765432, 2.9e6)
    kitchen.note(block, batch)
    kitchen.note(PieceTurned("much brine"), batch)
    kitchen.note(SaltingEnded("brushed off", 5.4321 * 86400, 2.3456789, 4.1234567), batch)
    cured = MeatNoted("pork", "cured", method="sausage-1", grind_m=0.0081234, across_m=0.0612345, dried_c=11.2345)
    kitchen.note(attrs.evolve(cured, bare="yes", unwashed="no"), batch)
    kitchen.note(BatchEnded("thrown-away", "it had stayed warm"), batch)
    kitchen.note(HumidifierCharged(0.0056781234, 0.0765432109, 0.0067890123), CHAMBER)
    _chamber(kitchen)
    kitchen.note(kept_proof.RUN, CHAMBER)
    kitchen.note(DeviceNamed("0a1b2c3d4e5f6071", "Kitchen"), DEVICES)
    kitchen.note(NoteTaken("Mould on the left."), CHAMBER)
    piece = kitchen.hang(batch, start_kg=0.0345678901)  # 0.0762 lb: few digits before the point
    kitchen.weigh(piece, 0.0234567891, at=3)
    kitchen.note(PieceCut(0.0234567891, 0.0212345678), piece, at=3.5)
    kitchen.note(ActivityMeasured(0.8912345), piece, at=4)
    kitchen.note(PieceInspected(("slime",), "at the string"), piece, at=5)
    kitchen.note(
        PieceTakenDown(
            "discard", "thrown away", (KeptReason("loss", True, (KeptAmount("lost", 0.4123456, "loss"),)),), "2026-11"
        ),
        piece,
        at=6,
    )
    for kind, checks in workshop.CHECKS.items():
        instrument = kitchen.note(InstrumentAdded(kind, kind, 30.5 * 86400))
        for fact in (*checks, InstrumentRecalibrated("calibrated"), InstrumentRetired("broken")):
            kitchen.note(fact, instrument, at=7)
    visitor.book.learn(kitchen.records)
    visitor.wait(days=40)
    return {KINDS[record["kind"]]: record["id"] for record in kitchen.records}


every_kind = pytest.mark.parametrize(
    "kind", [kind for kind in KNOWN if kind not in NO_FORM], ids=lambda kind: kind.__name__
)


def test_every_kind_but_the_taking_back_has_a_form():
    assert {kind for kind in KNOWN if form_of(kind)} == set(KNOWN) - NO_FORM


@every_kind
@pytest.mark.parametrize("units", ["metric", "us"])
@pytest.mark.parametrize("decimal", ["point", "comma"])
def test_a_correction_saved_without_a_change_changes_nothing(visitor: Visitor, walked, kind, units: str, decimal: str):
    before = visitor.book.line(walked[kind]).entry
    visitor.settings(units=units, decimal=decimal)
    page = visitor.fill(f"/entries/{walked[kind]}/correct")
    after = visitor.book.line(walked[kind]).entry
    assert page.status == 200
    assert len(visitor.book.line(walked[kind]).versions) == 2
    assert alike(after.fact, before.fact, rel=1e-5)
    assert after.happened_at == before.happened_at


@every_kind
def test_a_correction_starts_without_refusals(visitor: Visitor, walked, kind):
    page = visitor.get(f"/entries/{walked[kind]}/correct")
    assert (page.status, page.texts("p", "refusal")) == (200, [])


@every_kind
@pytest.mark.parametrize("reader", [METRIC, US], ids=["metric", "us"])
def test_every_kind_is_said_in_the_log(visitor: Visitor, walked, kind, reader):
    with visitor.app.test_request_context():
        assert say(visitor.book.line(walked[kind]), reader)


@every_kind
def test_every_kind_can_be_taken_back_and_brought_back(visitor: Visitor, walked, kind):
    before = visitor.book.line(walked[kind]).entry
    page = visitor.post(f"/entries/{walked[kind]}/withdraw")
    assert page.status == 200
    assert visitor.book.line(walked[kind]).withdrawn
    again = visitor.send(page.form("/undo"))
    after = visitor.book.line(walked[kind]).entry
    assert again.status == 200
    assert (after.fact, after.happened_at) == (before.fact, before.happened_at)
