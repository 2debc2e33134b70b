"""The two-day proof of an empty chamber: is it settled, since when, and what is to be changed if not?"""

from core.chamber.settling.analysis import Analysis, Probe, analyse, analysing, compressor_of
from core.chamber.settling.comparing import FIGURE_NAMES, Compared, beside, compare, key_figures
from core.chamber.settling.figures import figures_of, space_figures
from core.chamber.settling.pair_figures import pair_figures
from core.chamber.settling.proof import Proof, prove
from core.chamber.settling.statistics import Band
from core.chamber.settling.wanted import Wanted

__all__ = [
    "FIGURE_NAMES",
    "Analysis",
    "Band",
    "Compared",
    "Probe",
    "Proof",
    "Wanted",
    "analyse",
    "analysing",
    "beside",
    "compare",
    "compressor_of",
    "figures_of",
    "key_figures",
    "pair_figures",
    "prove",
    "space_figures",
]
