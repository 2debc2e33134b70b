"""Every layout of the zoo is read right or asked about; none is read wrong."""

import math

import pytest

from core.chamber.logs import Layout, Log, answer, guess, read
from tests.core.zoo import Animal, all_animals

ANIMALS = all_animals()
each_animal = pytest.mark.parametrize("animal", ANIMALS, ids=[animal.name for animal in ANIMALS])


def settled(animal: Animal) -> Layout:
    layout = guess(animal.data)
    while layout.questions:
        about = layout.questions[0].about
        layout = answer(animal.data, layout, about, animal.answers[about])
    return layout


def read_all(animal: Animal) -> Log:
    return read(animal.data, settled(animal))


def told(log: Log) -> dict[str, list[tuple[float, float | None, float | None]]]:
    return {
        series.probe: [
            (at, None if math.isnan(warm) else warm, None if math.isnan(humid) else humid)
            for at, warm, humid in zip(series.times_s, series.temperatures_c, series.humidities, strict=True)
        ]
        for series in log.series
    }


def is_the_same(one: tuple[float | None, ...], other: tuple[float | None, ...]) -> bool:
    return all(
        a == b or (a is not None and b is not None and abs(a - b) < 1e-9) for a, b in zip(one, other, strict=True)
    )


def test_the_zoo_has_many_animals():
    assert len(ANIMALS) >= 80


@each_animal
def test_asks_what_the_file_leaves_open_and_nothing_else(animal: Animal):
    assert tuple(question.about for question in guess(animal.data).questions) == animal.asks


@each_animal
def test_reads_what_is_true(animal: Animal):
    found = told(read_all(animal))
    assert list(found) == list(animal.truth)
    for probe, rows in animal.truth.items():
        assert len(found[probe]) == len(rows)
        assert all(is_the_same(one, other) for one, other in zip(found[probe], sorted(rows), strict=True))


@each_animal
def test_lists_each_line_that_is_no_row(animal: Animal):
    assert len(read_all(animal).skipped) == animal.skips
