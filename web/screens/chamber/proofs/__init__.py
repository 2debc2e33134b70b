"""The two-day proof: files chosen, their layout settled, a band asked for, the logs looked at, and the run kept."""

from web.screens.chamber.proofs import comparing, draft_run, laying_out, new_run, points, saved_run, setting

__all__ = ["comparing", "draft_run", "laying_out", "new_run", "points", "saved_run", "setting"]
