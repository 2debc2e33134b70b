"""One probe's humidity, looked at."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import compress, repeat
from operator import eq

from attrs import frozen

from core.chamber.series import Series, interval_s
from core.chamber.settling.events import Event
from core.chamber.settling.humid_air import HumidAir
from core.chamber.settling.humidity import HumidRhythm, humid_rhythm
from core.chamber.settling.rhythm import Cycle
from core.chamber.settling.runs import Run
from core.chamber.settling.sampling import sampling
from core.chamber.settling.settled import arrived, dried, undisturbed
from core.chamber.settling.statistics import Spread, spread
from core.chamber.settling.staying import Stay, stay
from core.chamber.settling.steps import Steps
from core.chamber.settling.wanted import Wanted


@frozen
class Humidity:
    """A probe's humidity over the whole log, how it stays in its band, its rhythm; dew point and deficit too.

    calm: of the probe's calm readings, once the coil has taken what doors and defrosts brought in. stay: None where no
    humidity is asked for.
    """

    spread: Spread
    calm: Spread
    arrived_s: float | None
    stay: Stay | None
    rhythm: HumidRhythm
    air: HumidAir
    dew_point: Spread | None
    deficit: Spread

    @property
    def settled_s(self) -> float | None:
        return self.stay and self.stay.since_s


@frozen
class Seen:
    """What the temperature shows beside it."""

    runs: Sequence[Run]
    events: Sequence[Event]
    cycles: Sequence[Cycle]


def humidity_of(
    probe: str, air: HumidAir, calm: Series, wanted: Wanted, seen: Seen, period_s: float | None
) -> Steps[Humidity]:
    rhythm = humid_rhythm(air, seen.cycles, seen.events, seen.runs)
    yield probe
    is_calm = undisturbed(air.times_s, seen.events)
    dew_point = _dew_point(air)
    yield probe
    shown_s = sampling(air.times_s, interval_s(air.times_s), period_s).shown_s
    band = wanted.humidity
    whole = spread(air.times_s, air.humidities, band, air.lasts_s)
    kept = dried(calm.times_s, seen.events, seen.runs) if seen.events else repeat(True)
    after = [each for each in compress(calm.humidities, kept) if each == each]
    alike_s = [calm.interval_s] * len(after)  # each counts for as long: what is between was left out
    return Humidity(
        spread=whole,
        calm=spread(range(len(after)), after, band, alike_s) if len(after) > 1 else whole,
        arrived_s=wanted.humidity and arrived(air.times_s, air.humidities, wanted.humidity),
        stay=band and stay(air.times_s, air.humidities, band, shown_s, is_calm, wanted.held_s),
        rhythm=rhythm,
        air=air,
        dew_point=dew_point,
        deficit=spread(air.times_s, air.deficits_pa, lasts_s=air.lasts_s),
    )


def _dew_point(air: HumidAir) -> Spread | None:
    dews = list(map(eq, air.dew_points_c, air.dew_points_c))
    if all(dews):
        return spread(air.times_s, air.dew_points_c, lasts_s=air.lasts_s)
    if sum(dews) < 2:
        return None
    return spread(list(compress(air.times_s, dews)), list(compress(air.dew_points_c, dews)))
