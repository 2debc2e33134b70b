"""The two-day proof of an empty chamber: is it settled, since when, and what is to be changed if not?"""

from core.chamber.settling.analysis import Analysis, Probe, Wanted, analyse, compressor_of
from core.chamber.settling.comparing import Compared, compare
from core.chamber.settling.figures import figures_of, space_figures
from core.chamber.settling.proof import Proof, prove
from core.chamber.settling.statistics import Band

__all__ = [
    "Analysis",
    "Band",
    "Compared",
    "Probe",
    "Proof",
    "Wanted",
    "analyse",
    "compare",
    "compressor_of",
    "figures_of",
    "prove",
    "space_figures",
]
