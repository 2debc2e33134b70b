"""What the figures of a cure say: their names, what each line of their working multiplies and divides, doubts."""

from __future__ import annotations

from collections.abc import Mapping

from core.mix.ions import Substance
from core.sentence import Message

GOES_IN: Mapping[Substance, Message] = {"nitrite": "Nitrite going in", "nitrate": "Nitrate going in"}
THE_SAME_AS_ION: Mapping[Substance, Message] = {
    "nitrite": "The same, as nitrite ion",
    "nitrate": "The same, as nitrate ion",
}
SODIUM: Mapping[Substance, Message] = {"nitrite": "Sodium nitrite", "nitrate": "Sodium nitrate"}
PART: Mapping[Substance, Message] = {
    "nitrite": "Curing salt × its nitrite = sodium nitrite: {cure} × {strength} = {part}",
    "nitrate": "Curing salt × its nitrate = sodium nitrate: {cure} × {strength} = {part}",
}
PART_OF_POTASSIUM: Mapping[Substance, Message] = {
    "nitrite": (
        "Curing salt × its potassium nitrite × molar mass of the sodium salt ÷ that of the potassium salt: "
        "{cure} × {strength} × {factor} = {part}"
    ),
    "nitrate": (
        "Curing salt × its potassium nitrate × molar mass of the sodium salt ÷ that of the potassium salt: "
        "{cure} × {strength} × {factor} = {part}"
    ),
}
OF_BOTH: Mapping[Substance, Message] = {
    "nitrite": "Sodium nitrite of both: {part} + {next} = {total}",
    "nitrate": "Sodium nitrate of both: {part} + {next} = {total}",
}
TO_ION: Mapping[Substance, Message] = {
    "nitrite": "Sodium nitrite × molar mass of the ion ÷ molar mass of the salt: {made} × {part} = {ion}",
    "nitrate": "Sodium nitrate × molar mass of the ion ÷ molar mass of the salt: {made} × {part} = {ion}",
}
PUMPED: Message = "{name} × pump ÷ brine: {part} × {taken} ÷ {pickle} = {made}"
PUMPED_OF_MIXTURE: Message = (
    "{name} × pump ÷ (100 % + pump) ÷ brine: {part} × {taken} ÷ (100 % + {taken}) ÷ {pickle} = {made}"
)
PICKED_UP: Message = "{name} × pick-up ÷ brine: {part} × {taken} ÷ {pickle} = {made}"
PICKED_UP_OF_MIXTURE: Message = (
    "{name} × pick-up ÷ (100 % + pick-up) ÷ brine: {part} × {taken} ÷ (100 % + {taken}) ÷ {pickle} = {made}"
)
OF_MEAT_AND_BRINE: Message = "{name} ÷ (green weight of meat + brine): {part} ÷ ({meat} + {pickle}) = {made}"
OF_MIXTURE: Message = "{name} ÷ the whole raw mixture: {part} ÷ {whole} = {made}"
OF_MEAT: Message = "{name} ÷ green weight of meat: {part} ÷ {meat} = {made}"
NO_LIMIT_BUT_NONE: Message = "Limit for {product}, {rule}: none may be added"
LIMIT_IN_OTHER_WORDS: Message = "Limit for {product}, {rule}: {printed} = {limit}"
LIMIT: Message = "Limit for {product}, {rule}: {limit}"
LIMIT_AS_PRINTED: Message = "Limit for {product}, {rule}: {limit} ({printed})"
LIMIT_OF_ION: Message = "Limit for {product}, {rule}: {limit}, as ion"
LIMIT_OF_ION_AS_PRINTED: Message = "Limit for {product}, {rule}: {limit}, as ion ({printed})"
IN_WATER_ONLY: Message = (
    "The handbook takes meat and brine for one; salt and nitrite spread in their water only, so the meat takes up a "
    "little less."
)
CANADA_ASKS_FOR_SALT: Message = (
    "Canada asks for at least 2.5 % salt in fermented meat (CFIA 2020, quoted in FSIS-GD-2023-0002, p. 38)."
)
