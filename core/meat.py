"""What every stage takes a sausage or a muscle for: its style, how sour is sour, how much it loses at most."""

from __future__ import annotations

from typing import Literal

from core.language import Message

Style = Literal["fermented", "slow", "whole-muscle"]
STYLES: dict[str, Message] = {
    "fermented": "fermented sausage",
    "slow": "slow sausage, not meant to sour to pH 5.3",
    "whole-muscle": "whole muscle",
}
STYLE_NAMES: dict[Style, Message] = {
    "fermented": "fermented sausage",
    "slow": "slow sausage",
    "whole-muscle": "whole muscle",
}

ACID_PH = 5.3
"""Sour enough that staphylococci make no toxin: where degree-hours end (`core.sources.DEGREE_HOURS_US`)."""
USUAL_LOSS = 0.35
"""Of its weight when hung: common practice; no published source."""
LOSS_HELP: Message = "Share of the start weight it must lose: 35 % is common practice; no published source."
MOST_LOSS = 0.75
"""Lean raw meat is 70 to 76 % water (USDA): a greater loss is a wrong weight or a wrong tag."""
MOST_LOSS_A_DAY = 0.10
"""Of the start weight. Thin sausage in dry air may lose that at first; nothing keeps it up. Common practice; no
published source."""
