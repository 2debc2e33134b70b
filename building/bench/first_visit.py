"""What a first visit transfers: everything the tablet keeps, each file gzipped where that makes it smaller."""

from building import site
from building.bench import Row

GOAL_MB = 9.0


def first_visit() -> Row:
    site.build()
    return Row(round(site.first_visit_bytes() / 1e6, 3), "MB", GOAL_MB)
