"""A law that is never empty: how many of its examples came as far as its assertion is counted, and asserted."""

from collections.abc import Callable


def reaches(law: Callable[[], None], reached: list[object], least: int = 40) -> None:
    """The law holds; and so many of its examples appended to `reached` once they had been held to it."""
    law()
    assert len(reached) >= least, f"only {len(reached)} examples came as far as the assertion"
