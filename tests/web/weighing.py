"""A piece weighed through its form, and what stands of it."""

from tests.web.conftest import Visitor


def weighed(visitor: Visitor, weight: str = "1000") -> tuple[str, str]:
    """A piece's path and the id of its weighing."""
    piece = visitor.hang(visitor.cured_and_acid())
    return piece, visitor.fill(f"{piece}/weigh", mass_kg=weight).saved


def mass(visitor: Visitor, key: str) -> float:
    return visitor.fact(key).mass_kg
