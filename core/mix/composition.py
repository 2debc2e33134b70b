"""What raw meat is made of: water, protein and fat of a cut, from a named row of a public table.

A cut at hand is fatter or leaner than the table's. Its fat is then taken as the maker knows it, and the lean part is
taken to be made up as the row's own lean part.
"""

from __future__ import annotations

from attrs import frozen

from core.refusals import OutOfRange
from core.sentence import Message


@frozen
class Cut:
    """One row as printed, in g/100 g. ndb: its number in the USDA table. They add to 100 within the table's rounding.

    Source: USDA National Nutrient Database for Standard Reference, release 26, file ABBREV (`USDA_COMPOSITION`).
    """

    ndb: str
    name: Message
    water: float
    protein: float
    fat: float
    ash: float


@frozen
class Made:
    """Fractions of the mass, 0 to 1; `other` is what is neither: ash and a little starch."""

    water: float
    protein: float
    fat: float

    @property
    def other(self) -> float:
        return 1 - self.water - self.protein - self.fat


_ROWS = (
    Cut("10070", "pork shoulder, whole, lean + fat", 64.02, 17.18, 17.99, 0.88),
    Cut("10072", "pork shoulder, whole, lean", 72.63, 19.55, 7.14, 1.02),
    Cut("10074", "pork arm picnic, lean + fat", 68.34, 18.71, 12.51, 0.98),
    Cut("10077", "pork arm picnic, lean", 75.51, 20.26, 3.77, 1.05),
    Cut("10080", "pork Boston butt, lean + fat", 69.18, 17.42, 12.36, 0.83),
    Cut("10084", "pork Boston butt, lean", 74.31, 18.73, 5.71, 0.88),
    Cut("10004", "pork backfat", 7.69, 2.92, 88.69, 0.7),
    Cut("10006", "pork separable fat", 24.76, 9.25, 65.7, 0.51),
    Cut("10005", "pork belly", 36.74, 9.34, 53.01, 0.49),
    Cut("10105", "pork jowl", 22.19, 6.38, 69.61, 0.32),
    Cut("10109", "pork leaf fat", 4.09, 1.76, 94.16, 0.1),
    Cut("10008", "pork leg (ham), lean + fat", 62.47, 17.43, 18.87, 0.88),
    Cut("10010", "pork leg, lean", 72.9, 20.48, 5.41, 1.05),
    Cut("10020", "pork loin, lean + fat", 66.92, 19.74, 12.58, 0.96),
    Cut("10024", "pork loin, lean", 72.23, 21.43, 5.66, 1.05),
    Cut("10060", "pork tenderloin, lean", 76, 20.95, 2.17, 1.03),
    Cut("10219", "pork, ground", 61.06, 16.88, 21.19, 0.87),
    Cut("10110", "pork liver", 71.06, 21.39, 3.65, 1.44),
    Cut("13809", "beef chuck arm, lean + fat", 62.33, 19.23, 17.98, 0.86),
    Cut("23603", "beef chuck arm, lean", 73.32, 22.11, 4.19, 1.01),
    Cut("13815", "beef chuck blade, lean + fat", 61.23, 17.16, 19.41, 0.82),
    Cut("23093", "beef chuck for stew", 72.51, 21.75, 4.48, 1.11),
    Cut("13803", "beef brisket, lean + fat", 61.08, 18.42, 19.06, 0.88),
    Cut("13023", "beef brisket, lean", 70.29, 20.72, 7.37, 1.02),
    Cut("13227", "beef shank, lean", 73.03, 21.75, 3.85, 1.44),
    Cut("23572", "beef, ground 80/20", 61.94, 17.17, 20, 0.84),
    Cut("13335", "beef suet", 4, 1.5, 94, 0.1),
    Cut("17164", "deer (venison)", 73.57, 22.96, 2.42, 1.16),
    Cut("17343", "deer, ground", 71.15, 21.78, 7.13, 0.88),
    Cut("17166", "elk", 74.38, 22.95, 1.45, 1),
    Cut("17172", "moose", 75.55, 22.24, 0.74, 1.13),
    Cut("17158", "wild boar", 72.54, 21.51, 3.33, 0.97),
    Cut("17162", "caribou", 71.45, 22.63, 3.36, 1.14),
    Cut("17170", "horse", 72.63, 21.39, 4.6, 0.99),
    Cut("17177", "rabbit, domestic", 72.82, 20.05, 5.55, 0.72),
    Cut("17035", "lamb shoulder, lean + fat", 61.39, 16.58, 21.45, 0.89),
    Cut("17039", "lamb shoulder, lean", 72.99, 19.55, 6.76, 1.04),
    Cut("05139", "duck, meat + skin", 48.5, 11.49, 39.34, 0.68),
    Cut("05141", "duck, meat", 73.77, 18.28, 5.95, 1.06),
    Cut("05144", "wild duck, meat + skin", 66.52, 17.42, 15.2, 1.16),
    Cut("05148", "goose, meat", 68.3, 22.75, 7.13, 1.1),
)
CUTS: dict[str, Cut] = {cut.ndb: cut for cut in _ROWS}


def made_of(cut: Cut, fat: float | None = None) -> Made:
    """The cut's water, protein and fat, with the fat as given where it is. fat: 0 to 1.

    The lean part keeps the row's proportion of water to protein. A row that adds to a little over 100 is taken to its
    own sum. Raises OutOfRange on "fat".
    """
    lean = 100 - cut.fat
    lean_sum = max(lean, cut.water + cut.protein)
    share = cut.fat / 100 if fat is None else fat
    if not 0 <= share <= 1:
        raise OutOfRange("fat", "The fat of a meat must be between 0 and 100 %.")
    return Made(
        water=(1 - share) * cut.water / lean_sum,
        protein=(1 - share) * cut.protein / lean_sum,
        fat=share,
    )
