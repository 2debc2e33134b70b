"""Clocks that were put back, put forward or set in the middle of a log."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

from tests.core.zoo_columns import H, T
from tests.core.zoo_keeper import CLEAR, STEP
from tests.core.zoo_sheet import Sheet, sheet

FALL = datetime(2025, 10, 25, 12, tzinfo=UTC)


def put_back(step_min: int):
    """The clock on the wall of each row: put back an hour at three in the morning of the 26th."""
    turn = datetime(2025, 10, 26, 3, tzinfo=UTC)
    return lambda at: {"wall": at if at < turn else at - timedelta(hours=1)}


def changed_clock(
    minutes: int, pattern: str = "%Y-%m-%d %H:%M", name: str = "", offset: int = 0, **more: object
) -> Sheet:
    return sheet(
        name or f"clock put back, {minutes} min",
        f"Time|time|{{wall:{pattern}}}",
        T,
        H,
        start=FALL + timedelta(minutes=offset),
        step=timedelta(minutes=minutes),
        rows=26 * 60 // minutes,
        words=put_back(minutes),
        clock="put back",
        **more,  # type: ignore[arg-type]
    )


def clocks() -> list[Sheet]:
    jump = timedelta(days=3000)
    return [
        *(changed_clock(minutes) for minutes in (1, 2, 5, 10, 15, 20, 30, 60)),
        *(
            changed_clock(minutes, offset=7, name=f"clock put back, {minutes} min, at odd minutes")
            for minutes in (15, 30, 60)
        ),
        changed_clock(20, name="clock put back, newest first", change=lambda lines: lines[::-1]),
        changed_clock(10, "%d/%m/%Y %I:%M %p", name="clock put back, AM and PM"),
        sheet(
            "a clock put forward",
            "Time|time|{wall:%Y-%m-%d %H:%M}",
            T,
            H,
            told="put forward",
            words=lambda at: {"wall": at if at < CLEAR + STEP * 60 else at + timedelta(hours=1)},
        ),
        sheet(
            "a clock that lost its day",
            "Time|time|{wall:%Y-%m-%d %H:%M}",
            T,
            H,
            words=lambda at: {"wall": at if at < CLEAR + STEP * 60 else at - jump},
        ),
        sheet(
            "a clock set by minutes",
            "Time|time|{wall:%Y-%m-%d %H:%M}",
            T,
            H,
            words=lambda at: {"wall": at if at < CLEAR + STEP * 60 else at - timedelta(minutes=25)},
        ),
        sheet("no half of the day", "Time|time|{at:%Y-%m-%d %I:%M}", T, H),
    ]
