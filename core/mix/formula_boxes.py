"""What is typed of a formula, each box once: of a meat, of an ingredient, and of the whole."""

from core.mix.cure_boxes import Strength
from core.mix.curing_salt import STRENGTH
from core.mix.measures import PER_MEAT, PRICE
from core.quantities import FRACTION, LENGTH, MASS
from core.usual import CASING_LONG_M
from core.worksheet import Number

MEAT_SHARE = Number("share", "Share", FRACTION, 0.0, 1.0)
MEAT_FAT = Number("fat", "Fat in it", FRACTION, 0.0, 1.0, optional=True)
MOST_PER_MEAT = 2.0
"""A brine may weigh more than its meat; twice the meat of one ingredient is a unit gone wrong."""
DOSE = Number("dose", "Of the meat", PER_MEAT, 0.0, MOST_PER_MEAT)
NITRITE = Strength("nitrite", "Nitrite on the label", STRENGTH, 0.0, 1.0, optional=True)
NITRATE = Number("nitrate", "Nitrate on the label", STRENGTH, 0.0, 1.0, optional=True)
PRICE_A_KG = Number("price", "Price", PRICE, 0.0, 1e5, optional=True)
CASING_DIAMETER = Number("casing_diameter_m", "Diameter of a casing", LENGTH, 0.005, 0.5, optional=True)
CASING_LENGTH = Number("casing_length_m", "Length of a casing", LENGTH, 0.01, 1000, optional=True, usual=CASING_LONG_M)
FAT_WANTED = Number("wanted", "Fat wanted", FRACTION, 0.0, 1.0, optional=True, help="Sets the shares of the meats.")
RAW = Number("raw_kg", "Raw weight wanted", MASS, 0.05, 500, help="As it is to hang at first.")
FINISHED = Number("finished_kg", "Finished weight wanted", MASS, 0.05, 500, help="After the loss to reach.")
