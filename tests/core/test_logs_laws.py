"""Two thousand files after mishaps: no crash, and no reading that was not made at its moment. Time and memory grow as
the file does."""

import math
import tracemalloc
from datetime import UTC, datetime, timedelta
from random import Random

import pytest

from core.chamber.logs import Layout, Log, answer, guess, read
from core.refusals import Refusal, Refused
from tests.core.effort import effort_s
from tests.core.zoo import all_animals
from tests.core.zoo_keeper import Animal
from tests.core.zoo_mishaps import Victim, befall

ANIMALS = all_animals()
PARTS, FILES_A_PART = 20, 100
Triple = tuple[float, float | None, float | None]


def answered(victim: Victim, layout: Layout) -> Layout:
    """Each question answered as one who knows the file does."""
    for _ in range(40):
        if not layout.questions:
            break
        question = layout.questions[0]
        layout = answer(victim.data, layout, question.about, truthful(victim, question.about, layout))
    return layout


USUAL = {"elapsed": "s", "loss": "leave", "nothing": "nothing", "clocks": "each", "month": "pl", "beside": "0"}


def truthful(victim: Victim, about: str, layout: Layout) -> str:
    kind, _, column = about.partition(" ")
    if kind == "order":
        return ORDERS[victim.animal.name]
    if kind == "decimal":
        return victim.animal.answers.get("decimal", ".")
    if kind == "time":
        return str(victim.holds.index("time") + 1)
    if kind in USUAL:
        return USUAL[kind]
    same_width = len(layout.columns) == len(victim.holds)
    holds = victim.holds[int(column) - 1] if same_width else "ignored"
    offered = [choice.key for question in layout.questions if question.about == about for choice in question.choices]
    wanted = holds.split(" ")[-1] if kind == "unit" else holds.split(" ")[0]
    return wanted if wanted in offered else offered[-1]


def order_of(name: str) -> str:
    return "mdy" if "month first" in name or "AM and PM" in name or "American" in name else "dmy"


ORDERS = {animal.name: order_of(animal.name) for animal in ANIMALS}
ORDERS["year of two digits in front"] = "ymd"


def taken(victim: Victim) -> Log | None:
    try:
        return read(victim.data, answered(victim, guess(victim.data)))
    except (Refusal, Refused):
        return None


def untrue(log: Log, animal: Animal) -> list[str]:
    """Readings that no one probe made at that moment. A lost head may have told the offset: the log says local then."""
    late_s = animal.late_s if log.clock == "local" else 0.0
    known = {probe: {row[0] - late_s: row for row in rows} for probe, rows in animal.truth.items()}
    wrong: list[str] = []
    for series in log.series:
        rows = list(zip(series.times_s, series.temperatures_c, series.humidities, strict=True))
        misses = {probe: [row for row in rows if not is_true(row, made.get(row[0]))] for probe, made in known.items()}
        fewest = min(misses.values(), key=len)
        wrong += [f"{series.probe}: {row}" for row in fewest]
    return wrong


def is_true(row: tuple[float, float, float], made: Triple | None) -> bool:
    if made is None:
        return False
    return all(
        math.isnan(told) or (true is not None and abs(told - true) < 1e-6)
        for told, true in zip(row[1:], made[1:], strict=True)
    )


@pytest.mark.parametrize("part", range(PARTS))
def test_a_mishap_never_makes_a_reading_that_was_not_made(part: int):
    refused = 0
    for number in range(part * FILES_A_PART, (part + 1) * FILES_A_PART):
        chance = Random(number)
        victim = befall(chance.choice(ANIMALS), chance)
        log = taken(victim)
        refused += log is None
        assert log is None or not untrue(log, victim.animal), (number, victim.animal.name, victim.mishaps)
    assert refused <= FILES_A_PART / 20


def month_of(rows: int) -> bytes:
    """Two probes a minute apart from each other's readings, day after day."""
    start = datetime(2025, 1, 13, tzinfo=UTC)
    lines = ["Time,Temp 1 (°C),RH 1 (%),Temp 2 (°C),RH 2 (%)"]
    for i in range(rows):
        at = start + timedelta(minutes=i)
        cells = (f"{12 + i % (17 + p) / 10:.1f},{79 + i % (23 + p) / 10:.1f}" for p in (0, 1))
        lines.append(f"{at.isoformat(' ')[:16]},{','.join(cells)}")
    return ("\n".join(lines) + "\n").encode()


def test_the_effort_of_reading_grows_as_the_rows_do():
    few, many = month_of(10_000), month_of(200_000)
    least_s = effort_s(lambda: read(few, guess(few)))
    tries_s = (effort_s(lambda: read(many, guess(many)), runs=1) for _ in range(5))
    assert any(each < 2 * 20 * least_s for each in tries_s)  # a busy machine can only add to it


def test_reading_takes_no_more_memory_than_a_few_times_the_file():
    data = month_of(40_000)
    tracemalloc.start()
    read(data, guess(data))
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert peak < 8 * len(data)
