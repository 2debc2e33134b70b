"""What an analysis says as names and values, so that all of it can be held against written rows."""

import math
from collections.abc import Mapping
from typing import Any

from core.chamber.settling.analysis import Analysis, Probe
from core.chamber.settling.figures import figures_of, space_figures
from core.chamber.settling.humid_probe import Humidity
from core.chamber.settling.pair_figures import pair_figures
from core.chamber.settling.proof_words import PROOF_WORDS
from core.chamber.settling.staying import Stay
from core.quantities import Amount
from core.sentence import Sentence
from core.working import Figure
from tests.core.settling_logs import proof

Flat = dict[str, Any]
KEYS = {text: key for key, text in PROOF_WORDS.items()}


def figures(probe: Probe) -> Flat:
    return {key: value for each in figures_of(probe) for key, value in _figure(each)}


def together(found: Analysis) -> Flat:
    told = {key: value for each in space_figures(found) for key, value in _figure(each)}
    if found.space is not None:
        told["space"] = _numbers(found.space, "gradient_give_k together_s overall_k widest_k warmest coldest centre")
    for pair in found.pairs:
        told |= {f"{pair.one}-{pair.other}.{each.key}": each.value for each in pair_figures(pair)}
    return told


def _figure(figure: Figure) -> list[tuple[str, float]]:
    told = [(figure.key, figure.value)]
    if figure.low is not None and figure.high is not None:
        told += [(f"{figure.key}.low", figure.low), (f"{figure.key}.high", figure.high)]
    return told


def worked(figure: Figure) -> Flat:
    """The amounts its working names."""
    return {key: value for step in figure.working for key, value in said(step).items()}


def said(text: Sentence) -> Flat:
    return {key: value.value if isinstance(value, Amount) else value for key, value in text.values.items()}


def _numbers(of: Any, keys: str) -> tuple[Any, ...]:
    return tuple(getattr(of, key) for key in keys.split())


SPREAD = "mean deviation lowest highest low_5 high_95 covered_s"


def rest(probe: Probe) -> Flat:
    """What no figure shows. Several numbers are in the order they are named in here; of runs each column's sum."""
    told: Flat = {
        "probe": _numbers(probe, "begins_s ends_s first_c arrived_s"),
        "whole": _numbers(probe.temperature, SPREAD),
        "calm": len(probe.calm),
        "sampling": _numbers(probe.sampling, "interval_s period_s most_s covered_s"),
        "give": None if probe.drift is None else probe.drift.give_k,
        "runs": len(probe.compressor.runs),
        "counted": probe.compressor.is_counted,
        **_stay("", probe.stay),
    }
    if probe.compressor.runs:
        columns = (_numbers(each, "rises_s falls_s peak_s trough_s peak_c trough_c") for each in probe.compressor.runs)
        told["sums"] = tuple(map(sum, zip(*columns, strict=True)))
    for event in probe.compressor.events:
        told[f"{event.kind}@{event.starts_s:.0f}"] = _numbers(event, "onset_s top_s ends_s from_c top_c")
    rhythm = probe.compressor.rhythm
    if rhythm is not None:
        told |= {"cycles": len(rhythm.cycles), "late": rhythm.late_s}
    return told | (_humid(probe.humidity) if probe.humidity is not None else {})


def _humid(humidity: Humidity) -> Flat:
    assert humidity.dew_point is not None
    told: Flat = {"arrived": humidity.arrived_s, "follows": humidity.rhythm.follows}
    told |= {"deficit": _numbers(humidity.deficit, SPREAD), "dews": _numbers(humidity.dew_point, SPREAD)}
    return told | (_stay("humid-", humidity.stay) if humidity.stay is not None else {})


def _stay(name: str, stay: Stay) -> Flat:
    lately = _numbers(stay.lately, "from_s inside outside longest_out_s out_until_s longest_hole_s")
    return {f"{name}stay": _numbers(stay, "since_s inside"), f"{name}lately": lately}


def reasons(name: str) -> dict[str, Flat]:
    """By its key: whether it is met, the key of its sentence, and the amounts of that and of what would settle it."""
    told: dict[str, Flat] = {}
    for each in proof(name).reasons:
        amounts = said(each.text) | said(each.settle)
        amounts.pop("probe", None)
        told[each.key] = {str(each.met): KEYS[each.text.text].removeprefix("reason-"), **amounts}
    return told | {
        f"advice-{place}": {each.key: True, **said(each.text)} for place, each in enumerate(proof(name).advice)
    }


def read(rows: str) -> dict[str, dict[str, str]]:
    """Written rows: what stands under a name, as name=value."""
    told: dict[str, dict[str, str]] = {}
    for word in rows.split():
        if "=" not in word:
            under = told.setdefault(word, {})
        else:
            key, value = word.split("=")
            under[key] = value
    return told


def differs(written: Mapping[str, str], found: Flat) -> list[str]:
    """What is not as written, to the sixth digit. "?" is written for what is told, and held to nothing."""
    told = {key: (value, found.get(key)) for key, value in written.items() if value != "?"}
    missing = [f"{key} is not told" for key in written.keys() - found.keys()]
    more = [f"{key} is told: {found[key]}" for key in found.keys() - written.keys()]
    return missing + more + [f"{key}: {was} became {now}" for key, (was, now) in told.items() if not _alike(was, now)]


def _alike(written: str, found: Any) -> bool:
    values = found if isinstance(found, tuple) else (found,)
    words = written.split(",")
    return len(words) == len(values) and all(map(_is, words, values))


def _is(word: str, value: Any) -> bool:
    if isinstance(value, bool) or not isinstance(value, int | float):
        return word == str(value)
    return word not in ("None", "True", "False") and math.isclose(float(word), value, rel_tol=2e-5, abs_tol=1e-9)
