"""Another method on the same traces: scipy's peaks of a median-filtered trace, by their prominence.

Source of the rule: reference cross-check, median of five readings, prominence max(½ (P90 − P10), 4 σ).
"""

from functools import cache

import numpy as np
import pytest
from attrs import evolve
from scipy.ndimage import median_filter
from scipy.signal import find_peaks

from core.chamber.series import Series
from core.chamber.settling.swing import sigma_of
from core.chamber.settling.trace import step
from tests.core.analysed import compressor_of
from tests.core.chamber_model import Logged, draw, log, run
from tests.published.test_settling import readings

SEEDS = range(300, 330)


@cache
def quiet(seed: int) -> Logged:
    """A random chamber that nothing disturbs. Both methods would count a door; only ours tells it apart."""
    chamber, logger = draw(seed)
    chamber = evolve(chamber, doors_s=(), defrosts_s=())
    return log(run(chamber), evolve(logger, interval_s=min(logger.interval_s, 120)), seed)


def peaks(temperatures_c: tuple[float, ...]) -> int:
    values = np.array(temperatures_c)
    arrival = int(np.argmax(values <= np.median(values)))
    values = values[arrival:]
    low, high = np.percentile(values, [10, 90])
    prominence = max(0.5 * (high - low), 4 * sigma_of(list(values), step(values)))
    # A hair's slope: to scipy two equal readings on one top are two peaks, each as prominent as the whole.
    tilted = median_filter(values, 5) + 1e-9 * np.arange(len(values))
    return len(find_peaks(tilted, prominence=prominence)[0])


@pytest.mark.parametrize("seed", SEEDS)
def test_a_quiet_chamber_has_as_many_peaks_as_runs(seed: int):
    logged = quiet(seed)
    series = Series("low", logged.times_s, logged.temperatures_c)
    assert abs(peaks(series.temperatures_c) - len(compressor_of(series).runs)) <= 1


@pytest.mark.parametrize("name", ["a_clean_1min", "c_noise_5min"])
def test_a_reference_log_has_as_many_peaks_as_runs(name: str):
    assert peaks(readings(name).temperatures_c) == len(compressor_of(readings(name)).runs)
