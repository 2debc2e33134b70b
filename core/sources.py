"""Every rule, table and handbook we quote, named once: title, edition, section, and how we know it.

`verified` says what was read: "seen" (the document itself), "copy" (a faithful copy or quotation of it), "memory"
(known, text not found), "practice" (common practice of the trade; no published source), "computed" (our own arithmetic
on a definition). Only the first two are evidence.
"""

from typing import Literal

from attrs import frozen

from core.language import Message
from core.quantities import DENSITY, DOSE_MASS, FRACTION, METRIC, MOLALITY, TEMPERATURE_DIFFERENCE, Amount
from core.sentence import Said, Sentence, said

Verified = Literal["seen", "copy", "memory", "practice", "computed"]
KNOWN_HOW: dict[Verified, Message] = {
    "seen": "read in the text itself",
    "copy": "read in a copy",
    "memory": "from memory, not checked",
    "practice": "common practice; no published source",
    "computed": "worked out from the definition",
}
_MARKS: dict[Verified, Message] = {"copy": "copy", "memory": "memory", "computed": "worked out"}


@frozen
class Source:
    """title: as it was printed, in its own language; a sentence where the words are ours."""

    title: str | Sentence
    section: Said
    verified: Verified

    @property
    def where(self) -> Sentence:
        """Title and section, without how they are known."""
        if not self.section:
            return Sentence("{title}", {"title": self.title})
        return Sentence("{title}, {section}", {"title": self.title, "section": said(self.section)})

    @property
    def mark(self) -> Message:
        """A word or two that lead a screen to the page of sources; none where the text itself was read."""
        return _MARKS.get(self.verified, "")

    def cite(self) -> Sentence:
        """One line for the foot of a figure where no page of sources is at hand."""
        if not self.mark:
            return Sentence("{where}.", {"where": self.where})
        return Sentence("{where} ({known}).", {"where": self.where, "known": Sentence(KNOWN_HOW[self.verified])})


COMMON_PRACTICE = Source(Sentence("Common practice; no published source"), "", "practice")
DEFINITION = Source(Sentence("By definition"), "", "computed")

CFR_424_21C = Source("9 CFR 424.21(c), chart of substances", "curing agents, 2015 annual edition", "copy")
FSIS_7620_3 = Source("FSIS Directive 7620.3, Processing Inspectors' Calculations Handbook", "rev. 1995, ch. 3", "copy")
CFR_424_22B = Source("9 CFR 424.22(b)", "bacon, 2015 annual edition", "copy")
CFR_172_170 = Source("21 CFR 172.170(a)(2)", "home-curing mixes", "copy")
US_PICKLE_NITRATE = Source("9 CFR 424.21(c), chart of substances", "nitrate in pickle as parts per million", "memory")
EU_CURE_NEW = Source(
    "Reg. (EC) 1333/2008, Annex II, part E", "consolidated 18 August 2026, with Reg. (EU) 2023/2108", "copy"
)
EU_CURE_OLD = Source("Reg. (EC) 1333/2008, Annex II, part E", "as amended by Reg. (EU) 1129/2011", "seen")
CFIA_CURING = Source("CFIA, Meat Hygiene Manual of Procedures, archived", "ch. 4, §4.13.1, curing", "seen")
CFIA_BRINE = Source("CFIA, Meat Hygiene Manual of Procedures, archived", "ch. 4, §4.13.2, saturated brine", "seen")
BRINE_DENSITY = Source(
    Sentence("Density of salt water"),
    Sentence(
        "our own line through CoolProp's Melinder fluid, 20 °C, within {error} to 23 %", {"error": Amount(0.2, DENSITY)}
    ),
    "computed",
)
MEAT_BUFFER = Source(
    "Puolanne and Kivikari, Determination of the buffering capacity of postrigor meat",
    "41 to 58 mmol/(pH kg); the pH range it holds for is from memory",
    "copy",
)
SUGAR_RULE = Source(
    Sentence("A home-curing book, quoted"), "1 g of dextrose to the kilogram lowers the pH by 0.1", "memory"
)
STARTER_LEVEL = Source(
    Sentence("Starter for sausage"), "one million to ten million cells to the gram of meat", "memory"
)
CFR_STARTER = Source(
    "9 CFR 424.21(c), chart of substances",
    Sentence("harmless bacteria, {most}, 2015 annual edition", {"most": Amount(0.005, FRACTION)}),
    "copy",
)
CANADA_SIDE_BACON = Source("CFIA glossary, side bacon", "only quotations read", "memory")
FSRE_STABILITY = Source(
    "USDA-FSIS, FSRE Shelf-Stable: Principles of Preservation of Shelf-Stable Dried Meat Products",
    "2005, pp. 159–160",
    "copy",
)
FSRE_ACID = Source(FSRE_STABILITY.title, "2005, p. 164", "copy")
DEGREE_HOURS_US = Source(FSRE_STABILITY.title, "2005, p. 164, degree-hours, after the industry GMP of 1997", "copy")
DEGREE_HOURS_CANADA = Source(
    "CFIA, Meat Hygiene Manual of Procedures",
    "4.16.2.1, degree-hours in fermented sausage; only quotations read",
    "memory",
)
EU_LISTERIA = Source(
    "Reg. (EC) 2073/2005", "Annex I, food category 1.3 (its three limits; “or equal” from memory)", "copy"
)
JERKY_2014 = Source("USDA-FSIS, Compliance Guideline for Meat and Poultry Jerky", "August 2014, pp. 15–16", "copy")
MPR_CAUTION = Source("USDA-FSIS, Compliance Guideline for Meat and Poultry Jerky", "August 2014, p. 14", "copy")
CFR_114 = Source("21 CFR 114.3", "what a low-acid food is", "copy")
CFIA_STABLE = Source("CFIA, preventive controls for fermented and dried meat", "shelf stability; from memory", "memory")
GROWTH_ARS = Source(
    "USDA-ARS growth table; FDA, Bad Bug Book 1992; FSRE Shelf-Stable 2005", "lowest and highest of them", "copy"
)
TOXIN_LIMITS = Source("Adams and Moss, Food Microbiology", "table 7.8, growth and toxin", "copy")
BOTULINUM_LIMITS = Source("FDA, Bad Bug Book 1992; Lindström, table 1; FSRE Shelf-Stable 2005", "", "copy")
GD_2023_BOTULISM = Source(
    "USDA-FSIS, RTE Fermented, Salt-Cured, and Dried Products Guideline, FSIS-GD-2023-0002", "May 2023, p. 38", "copy"
)
GD_2023_TILKENS = Source(GD_2023_BOTULISM.title, "May 2023, app. 5, p. 48, after Tilkens 2015", "copy")
GD_2023_KILLED = Source(GD_2023_BOTULISM.title, "May 2023, pp. 40–41, 54 and 70", "copy")
BAKING_SODA_SPOON = Source(
    "USDA FoodData Central, leavening agents, baking soda",
    Sentence("{cup} a cup, 16 tablespoons to the cup", {"cup": Amount(0.2208, DOSE_MASS)}),
    "copy",
)
BAKING_SODA_SOLUBILITY = Source(
    Sentence("Solubility of sodium bicarbonate, a chemical database quoting Seidell"),
    Sentence("0 to 60 °C, quadratic fit within {error} of the water", {"error": Amount(0.0009, FRACTION)}),
    "copy",
)
BAKING_SODA_ACTIVITY = Source(
    Sentence("Computed with PHREEQC, databases phreeqc.dat and pitzer.dat"),
    Sentence("sodium bicarbonate {dissolved}, 5 to 25 °C", {"dissolved": Amount(0.174, MOLALITY)}),
    "computed",
)
PHREEQC_CARBONATE = Source(
    "PHREEQC 3, database phreeqc.dat",
    "carbonic acid after Plummer and Busenberg 1982, sodium pairs; activity by Davies",
    "seen",
)
USDA_COMPOSITION = Source(
    "USDA National Nutrient Database for Standard Reference, release 26", "file ABBREV, raw, g/100 g", "copy"
)
MIX_WEIGHS = Source(
    Sentence("Density of sausage mix"),
    Sentence("{density}, stuffed without air", {"density": Amount(1050, DENSITY)}),
    "memory",
)
USDA_LEAN_WATER = Source("USDA National Nutrient Database for Standard Reference, release 26", "lean raw meat", "copy")
GD_2023_STAPHYLOCOCCI = Source(GD_2023_BOTULISM.title, "May 2023, p. 37", "copy")
GD_2023_SLOW_CURE = Source(GD_2023_BOTULISM.title, "May 2023, p. 38, quoting CFIA 2020", "copy")
DRIED_MEAT_TOLDRA = Source("Toldrá (ed.) 2010, Handbook of Meat Processing", "ch. 11, p. 221", "copy")
CRANK = Source("Crank, The Mathematics of Diffusion", "slab and cylinder, series solutions", "computed")
SALT_DIFFUSIVITY = Source(
    Sentence("Salt in lean pork and beef"),
    "2e-10 m²/s at 3 °C from memory; Hansen et al. 2008, Meat Science 80, 851, measured 3 to 7e-10",
    "memory",
)
FARM_PORK = Source("USDA Farmers' Bulletin on pork on the farm", "dry salt and sweet pickle", "copy")
VT_458_223 = Source("Virginia Cooperative Extension 458-223", "dry curing ham", "copy")
KEMP_1968 = Source("Kemp 1968, Kentucky practice of country ham", "", "seen")
EU_PICKLED_HAM = Source("Reg. (EC) 1333/2008, Annex II, part E, consolidated 2026", "rows 08.3.4", "copy")
CFR_HAM_SALTING = Source("9 CFR 318.10, ham method 3", "2015 annual edition, removed in 2018", "copy")
CFR_TRICHINELLA = Source("9 CFR 318.10, trichinae", "2015 annual edition, removed in 2018", "copy")
EU_TRICHINELLA = Source("Arrêté du 10 juillet 1986, annexe VIII", "the same figures as Directive 77/96/EEC", "copy")
CFIA_TRICHINELLA = Source("CFIA, preventive controls for Trichinella in pork", "curing of sausage, method 2", "seen")
HILL_2017 = Source("Hill et al. 2017, Trichinella in dry sausage", "days by pH and salt; a trial", "copy")
CFR_COUNTRY_HAM = Source("9 CFR 319.106(c)", "country ham and shoulder, salting, equalising and drying", "copy")
CFR_DRY_CURED_HAM = Source("9 CFR 319.106(c)(6)", "dry cured ham and shoulder, days in all", "memory")

PITZER = Source(
    "Pitzer and Mayorga 1973, sodium chloride",
    "Table I; with temperature by PHREEQC 3, pitzer.dat; sugars by Norrish, together by Ross, both from memory",
    "memory",
)
MEAN_KINETIC = Source("USP <1160>", "mean kinetic temperature, ΔH ÷ R 10 000 K", "copy")
BRINE_ISOTHERM = Source("Water held by brine and protein", "our own: Pitzer's brine less 3 % of the weight", "computed")

_ASHRAE = "ASHRAE Handbook Fundamentals 2017"
ASHRAE_ALTITUDE = Source(_ASHRAE, "ch. 1, eq. 3", "copy")
ASHRAE_HUMIDITY_RATIO = Source(_ASHRAE, "ch. 1, eq. 20", "copy")
ASHRAE_ENTHALPY = Source(_ASHRAE, "ch. 1, eq. 30", "copy")
ASHRAE_WET_BULB = Source(_ASHRAE, "ch. 1, eqs. 33 and 35", "copy")
WATER_SATURATION = Source("Wagner and Pruß 2002 (IAPWS SR1-86)", "saturation line of ordinary water", "copy")
ICE_SATURATION = Source("IAPWS R14-08(2011)", "sublimation pressure of ice", "copy")
ENHANCEMENT = Source("Hardy 1998, ITS-90 Formulations for Vapor Pressure", "enhancement factor", "copy")
VAPOUR_AS_IDEAL_GAS = Source(Sentence("Ideal gas law"), "water vapour, 461.523 J/(kg K)", "computed")

FOOD_PROBE = Source("California Health and Safety Code", "section 114159, accuracy of food probes", "seen")
ICE_POINT = Source(Sentence("Ice-point method of a public health district, after USDA-FSIS"), "", "copy")
BOILING_LINE = Source(
    "Wagner and Pruß 2002 (IAPWS-95)",
    Sentence(
        "boiling point of water, our own fit within {error}, 60 to 110 kPa",
        {"error": Amount(0.0001, TEMPERATURE_DIFFERENCE)},
    ),
    "computed",
)
_GREENSPAN = "Greenspan 1977, J. Res. NBS 81A, 89"
GREENSPAN = Source(_GREENSPAN, "humidity over saturated salts, the printed polynomial", "copy")
GREENSPAN_FITTED = Source(_GREENSPAN, "our own line through the printed table, which is from memory", "memory")
GREENSPAN_UNCERTAINTY = Source(_GREENSPAN, "printed uncertainties", "memory")
SALT_WAIT = Source("T. Padfield, Properties of selected saturated salt solutions", "time to settle", "copy")
NERNST = Source(Sentence("Nernst equation"), "R T ln 10 ÷ F, with the exact constants of the SI", "computed")
USP_791 = Source("USP <791> pH", "USP 38 to 39: slope 90 to 105 %, offset 0 ± 30 mV", "copy")

FOOD_CODE_SANITISERS = Source(
    "Wisconsin ATCP 75 appendix, after FDA Food Code 4-501.114 and 4-703.11", "chemical sanitisers", "seen"
)
CFR_178_1010 = Source("21 CFR 178.1010", "sanitizing solutions, 2015 edition", "copy")
CFR_180_940 = Source("40 CFR 180.940", "food-contact surface sanitizing solutions, 2015 edition", "copy")
NEVER_MIXED = Source("Washington State Department of Health", "dangers of mixing bleach with cleaners, quoted", "copy")
PRODUCT_LABEL = Source(Sentence("The product’s own label"), "as typed in", "seen")

CHURCHILL_BERNSTEIN = Source(
    "Churchill and Bernstein 1977, cylinder in cross-flow",
    Sentence(
        "with the Lewis relation and Massman's diffusivity of 1998; constants of air fitted to CoolProp within {error}",
        {"error": Amount(0.002, FRACTION)},
    ),
    "memory",
)
MEAT_WARMS = Source(Sentence("Warming of a long round piece"), "meat 1050 kg/m³, 3.5 kJ/(kg K), 0.45 W/(m K)", "memory")
FIRST_DAYS_LOSS = Source(
    Sentence("Loss a day of hanging sausage"),
    Sentence(
        "{low} to {high} at first, 2 % at most; no published figure was found",
        {"low": Amount(0.01, FRACTION), "high": Amount(0.015, FRACTION)},
    ),
    "memory",
)
WATER_BALANCE = Source(Sentence("Balance of water in the chamber"), "what goes in must come out", "computed")
GD_2023_FERMENTING_AIR = Source(GD_2023_BOTULISM.title, "May 2023, p. 55", "copy")
HANDBOOK_SAUSAGE = Source(
    Sentence("Handbook of fermented meat, chapter on sausage processes"), "European and US styles", "copy"
)
SAUSAGE_65_MM = Source(Sentence("Study of a dry sausage in a 65 mm casing"), "methods: 28 days in four stages", "copy")
SAUSAGE_UNDER_LARD = Source(Sentence("Study of a dry sausage kept under lard, 2015"), "abstract: three stages", "seen")
CFIA_OPTIONS = Source("CFIA, options for E. coli in dry and semi-dry sausage", "annex K, drying step", "seen")
DRY_HAM_TOLDRA = Source("Toldrá 2010, dry-cured ham", "p. 355", "seen")
DRY_HAM_KATSARAS = Source("Katsaras 1982, IIF record 1983-1009", "Italian ham, salting to drying", "seen")
CELLAR_STUDY = Source(Sentence("Study of dry-cured meat of Slavonia"), "extract: air of the cellar", "copy")
EU_BEEF_AGEING = Source("Delegated Reg. (EU) 2024/1141", "dry-ageing of beef, in force 9 November 2024", "copy")
EFSA_BEEF_AGEING = Source("EFSA Journal 2023;21(1):7745", "dry-ageing of beef", "copy")
BEEF_AGEING_REVIEW = Source("Dashdorj et al. 2016, review of dry-aged beef", "abstract", "seen")

MAPPING_IEC = Source("IEC 60068-3-5:2018", "gradient, variation in space, stabilisation", "memory")
MAPPING_GB = Source(Sentence("GB/T definitions of climatic chambers"), "fluctuation and uniformity over 30 min", "copy")
MAPPING_DKD = Source("DKD-R 5-7", "§7.3, temporal instability and spatial inhomogeneity", "copy")
SETTLED_DIN = Source("DIN 12880:2007", "heat-up ends when the centre stays within the limit deviation", "copy")
MAPPING_WHO = Source("WHO TRS 961, Annex 9, supplement 8", "mapping: intervals of 1 to 15 min, 24 to 72 h", "copy")
CYCLES_SEEN = Source(
    Sentence("Hysteresis crossing, middle ± max(¼ (P90 − P10), 3 σ)"), "8 readings a cycle at least", "computed"
)
TIME_CONSTANT = Source(
    Sentence("First-order warming"), "slope of the logarithm of the distance to the room", "computed"
)


def every_source() -> tuple[Source, ...]:
    """All that are named in this module, by title."""
    return tuple(
        sorted(
            (each for each in globals().values() if isinstance(each, Source)), key=lambda each: each.where.say(METRIC)
        )
    )
