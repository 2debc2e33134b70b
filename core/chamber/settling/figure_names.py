"""The figures that are kept of a proof, by their names."""

from __future__ import annotations

from core.quantities import Amount
from core.sentence import Message

FIGURE_NAMES: dict[str, Message] = {
    "settled": "Settled after",
    "mean": "Mean temperature",
    "lowest": "Lowest",
    "highest": "Highest",
    "in_band": "Time within the band",
    "drift": "Drift",
    "fluctuation": "Fluctuation (GB/T), ±",
    "gradient": "Gradient (IEC 60068-3-5)",
    "uniformity": "Uniformity (GB/T)",
    "starts": "Compressor starts",
    "run_share": "Share of the time it runs",
    "holds": "Holds between runs",
    "swing": "Swing of the temperature",
    "cools_by": "Cools by",
    "warming": "Warming time constant",
    "defrost": "Defrosts",
    "door": "Doors opened",
    "humidity": "Mean humidity",
    "humidity_swing": "Humidity swing with each run",
}
"""By the key under which an entry keeps the figure: a key once in use stays."""

Named = tuple[str, Amount]
"""Key of a figure, and the figure."""
