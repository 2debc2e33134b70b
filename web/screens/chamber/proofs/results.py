"""What a run came to, ready to be drawn: the verdict, the tables, what stands in the chart."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import groupby
from typing import Any

from attrs import evolve, frozen

from core.chamber.proof_run import Found, means_as_logged
from core.chamber.settling.analysis import Probe
from core.chamber.settling.figure_names import FIGURE_NAMES
from core.chamber.settling.figures import figures_of, space_figures
from core.chamber.settling.measures import FINE_TEMPERATURE, LASTS
from core.chamber.settling.outline import hours
from core.chamber.settling.pair_figures import pair_figures
from core.daybook.facts.proofs import ProofResult
from core.daybook.kept_words import named_figures, said
from core.daybook.proofs import headline, logged_at, settled_at
from core.quantities import (
    COUNT,
    NO_BREAK_SPACE,
    RELATIVE_HUMIDITY,
    TEMPERATURE,
    TEMPERATURE_DIFFERENCE,
    Amount,
    Quantity,
)
from core.sentence import Message, Rounded, Said, Sentence, Value
from core.working import Figure
from web.saying import say
from web.visitor import reader

HOUR_HEADS: tuple[Message, ...] = (
    "{probe} temperature",
    "{probe} lowest",
    "{probe} highest",
    "{probe} humidity",
    "{probe} driest",
    "{probe} dampest",
)
CYCLE_HEADS: tuple[Message, ...] = ("From", "Cools for about", "From a peak of", "Down to")
EVENT_HEADS: tuple[Message, ...] = ("When", "What", "Seen by", "Rose by", "Over after")
FOLLOWS: Message = "The humidifier works once for each run of the compressor: it makes good what the coil took."
MOST_LINES = 200
"""Of what was skipped: more of them say no more."""


@frozen
class Table:
    """Said already. The first cell of a row names it. caption: what it shows."""

    caption: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    more: str = ""


def context(found: Found) -> dict[str, Any]:
    """All that the result's template asks for."""
    probes = found.analysis.probes
    space = space_figures(found.analysis)
    pairs = [
        (say("{one} − {other}", one=pair.one, other=pair.other), pair_figures(pair)) for pair in found.analysis.pairs
    ]
    return {
        "found": found,
        "proof": found.proof,
        "headline": headline(*settled_at(found), found.has_dates),
        "because": [(reason.text, reason.met) for reason in found.proof.because],
        "advice": [each.text for each in found.proof.advice],
        "probe_table": _with_as_logged(found, _beside((probe.name, figures_of(probe)) for probe in probes)),
        "probe_figures": [(probe.name, figures_of(probe)) for probe in probes],
        "pair_table": _beside(pairs),
        "pair_figures": pairs,
        "space": space,
        "space_table": _beside([(say("All probes"), space)]),
        "space_cautions": list(dict.fromkeys(caution for each in space for caution in each.cautions)),
        "events": _events(found),
        "unseen": [(probe.name, each) for probe in probes for each in _unseen(probe)],
        "skipped": [_skipped(found, at) for at, log in enumerate(found.logs) if log.skipped],
        "remarks": list(dict.fromkeys([*found.notes, *(each for log in found.logs for each in log.remarks)])),
    }


def tables_of(found: Found) -> dict[str, Any]:
    """The chart's data in words."""
    probes = found.analysis.probes
    return {
        "hourly": _hourly(found),
        "cycles": [_cycles(found, probe) for probe in probes if probe.compressor.runs],
        "events": _events(found),
    }


def kept_context(result: ProofResult) -> dict[str, Any]:
    """The same of a run whose logs are not at hand."""
    rows = ((say(FIGURE_NAMES[key]), each.show(reader())) for key, each in named_figures(result.figures))
    return {
        "because": [(said(each), each.met) for each in result.because],
        "advice": [said(each) for each in result.advice],
        "kept_table": Table(say("As it was saved"), ("", say("The run")), tuple(rows)),
    }


def at_words(found: Found, at_s: float) -> str:
    """A moment of the log: by the clock, or as hours into it where it has no dates."""
    into = Sentence("{time} in", {"time": Rounded(Amount(at_s, LASTS))})
    words = Sentence("{at}", {"at": logged_at(at_s)}) if found.has_dates else into
    return words.say(reader()).replace(" ", NO_BREAK_SPACE)


def _beside(columns: Iterable[tuple[str, tuple[Figure, ...]]]) -> Table | None:
    """Figures of the same name in one row, a column for each probe or pair."""
    found = list(columns)
    if not found:
        return None
    by_key = [{figure.key: figure for figure in figures} for _, figures in found]
    names = {figure.key: say(figure.name) for _, figures in found for figure in figures}
    rows = (
        (name, *(figures[key].show(reader()) if key in figures else "—" for figures in by_key))
        for key, name in names.items()
    )
    return Table("", ("", *(name for name, _ in found)), tuple(rows))


def _with_as_logged(found: Found, table: Table | None) -> Table | None:
    """What was corrected is shown as it was logged too."""
    if table is None:
        return None
    means = [means_as_logged(found, probe.name) for probe in found.analysis.probes]
    named = (
        (say("Mean temperature as logged"), FINE_TEMPERATURE),
        (say("Mean humidity as logged"), RELATIVE_HUMIDITY),
    )
    rows = (
        (name, *(_shown(each[place], quantity) for each in means))
        for place, (name, quantity) in enumerate(named)
        if any(each[place] is not None for each in means)
    )
    return evolve(table, rows=(*rows, *table.rows))


def chart_headline(found: Found) -> str:
    """What the chart shows, in a line."""
    probes = found.analysis.probes
    warm = [(probe.steady.lowest, probe.steady.highest) for probe in probes]
    low, high = min(each[0] for each in warm), max(each[1] for each in warm)
    told: dict[str, Value] = {
        "coldest": Rounded(Amount(low, TEMPERATURE)),
        "warmest": Rounded(Amount(high, TEMPERATURE)),
    }
    damp = [probe.humidity.spread for probe in probes if probe.humidity is not None]
    if not damp:
        return say(Sentence("{coldest} to {warmest} after the pull-down", told))
    told["driest"] = Rounded(Amount(min(each.low_5 for each in damp), RELATIVE_HUMIDITY))
    told["dampest"] = Rounded(Amount(max(each.high_95 for each in damp), RELATIVE_HUMIDITY))
    both = "{coldest} to {warmest} after the pull-down; humidity mostly {driest} to {dampest}"
    return say(Sentence(both, told))


def _shown(value: float | None, quantity: Quantity) -> str:
    return "—" if value is None else Amount(value, quantity).show(reader())


def _hourly(found: Found) -> Table:
    """The chart's data, an hour a line: mean, lowest and highest of each probe."""
    by_hour: dict[float, dict[str, tuple[str, ...]]] = {}
    columns: list[str] = []
    empty: dict[str, tuple[str, ...]] = {}
    for series in found.series:
        heads = HOUR_HEADS if series.has_humidity else HOUR_HEADS[:3]
        columns += [say(head, probe=series.probe) for head in heads]
        empty[series.probe] = ("—",) * len(heads)
        for hour in hours(series):
            warm = [_shown(each, FINE_TEMPERATURE) for each in (hour.mean_c, hour.lowest_c, hour.highest_c)]
            damp = [_shown(each, RELATIVE_HUMIDITY) for each in (hour.humidity, hour.driest, hour.dampest)]
            by_hour.setdefault(hour.begins_s, {})[series.probe] = tuple([*warm, *damp][: len(heads)])
    rows = (
        (at_words(found, at_s), *(cell for name, dash in empty.items() for cell in by_hour[at_s].get(name, dash)))
        for at_s in sorted(by_hour)
    )
    return Table(say("Every hour: mean, lowest and highest"), (say("Hour from"), *columns), tuple(rows))


def _cycles(found: Found, probe: Probe) -> Table:
    rows = (
        (
            at_words(found, run.peak_s),
            _shown(run.trough_s - run.peak_s, LASTS),
            _shown(run.peak_c, FINE_TEMPERATURE),
            _shown(run.trough_c, FINE_TEMPERATURE),
        )
        for run in probe.compressor.runs
    )
    return Table(_counted(probe), tuple(map(say, CYCLE_HEADS)), tuple(rows))


def _counted(probe: Probe) -> str:
    """Of a log with pauses the count is never that of the whole."""
    count, looked = len(probe.compressor.runs), probe.compressor.looked
    told: dict[str, Value] = {"count": Amount(count, COUNT), "probe": probe.name}
    if looked.is_whole:
        return Sentence(
            "{count} run of the compressor, as “{probe}” shows them",
            told,
            plural="{count} runs of the compressor, as “{probe}” shows them",
        ).say(reader())
    told |= {"covered": Rounded(Amount(looked.covered_s, LASTS)), "whole": Rounded(Amount(looked.of_s, LASTS))}
    return Sentence(
        "{count} run of the compressor, as “{probe}” shows them, in {covered} of the {whole} from its usual level on",
        told,
        plural="{count} runs of the compressor, as “{probe}” shows them, in {covered} of the {whole} from its usual "
        "level on",
    ).say(reader())


def _events(found: Found) -> Table | None:
    rows = sorted(
        (event.starts_s, probe.name, event) for probe in found.analysis.probes for event in probe.compressor.told_events
    )
    if not rows:
        return None
    return Table(
        say("Defrosts and door openings, told by how fast the temperature rose and went again"),
        tuple(map(say, EVENT_HEADS)),
        tuple(
            (
                at_words(found, at_s),
                say("defrost" if event.kind == "defrost" else "door opened"),
                name,
                _shown(event.rise_k, TEMPERATURE_DIFFERENCE),
                _shown(event.ends_s - event.starts_s, LASTS),
            )
            for at_s, name, event in rows
        ),
    )


def _unseen(probe: Probe) -> Iterator[Said]:
    """What could not be told, and why; and how humidifier and compressor go together."""
    compressor = probe.compressor
    whys = (compressor.why_not, compressor.events_why_not, compressor.rhythm and compressor.rhythm.warming_why_not)
    yield from dict.fromkeys(each for each in whys if each)
    if probe.humidity is None:
        return
    if probe.humidity.rhythm.why_not:
        yield probe.humidity.rhythm.why_not
    if probe.humidity.rhythm.follows:
        yield FOLLOWS


def _skipped(found: Found, at: int) -> Table:
    """Lines of a file that were not taken. Neighbours left out for the same reason are one row."""
    skipped = found.logs[at].skipped
    rows: list[tuple[str, str]] = []
    for why, group in groupby(skipped, key=lambda each: each.why):
        lines = [each.line for each in group]
        first, last = str(lines[0]), str(lines[-1])
        rows.append((first if len(lines) == 1 else say("{first} to {last}", first=first, last=last), say(why)))
    count = len({each.line for each in skipped})
    name = found.given.files[at].name
    caption = Sentence(
        "{file}: {count} line with something not taken",
        {"file": name, "count": Amount(count, COUNT)},
        plural="{file}: {count} lines with something not taken",
    )
    more = say("And {count} more.", count=len(rows) - MOST_LINES) if len(rows) > MOST_LINES else ""
    return Table(say(caption), (say("Line"), say("Why")), tuple(rows[:MOST_LINES]), more)
