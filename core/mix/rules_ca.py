"""Canada: nitrite and nitrate together, every salt by its weight, on all of the raw mixture before it is smoked, cooked
or fermented. The same dose gives fewer ppm than on the meat alone."""

from __future__ import annotations

from core.mix.rule import EVERY, WHOLE, Rule, RuleSet
from core.sources import CANADA_SIDE_BACON, CFIA_CURING

MOST_PPM = 200.0
LEAST_PPM = 100.0
SIDE_BACON_PPM = 120.0

CANADA = RuleSet(
    "ca",
    "Canada",
    "Nitrite and nitrate together, on all of the raw mixture; less than 100 ppm does not count as cured.",
    {"meat": "cured meat", "bacon": "side bacon"},
    (
        Rule(
            product="meat",
            what="cured meat",
            methods=EVERY,
            substance="both",
            counted="weighed",
            on="mixture",
            most_ppm=MOST_PPM,
            least_ppm=LEAST_PPM,
            printed="100 to 200 ppm in all",
            cite="CFIA 4.13.1",
            source=CFIA_CURING,
            as_of="archived edition, read 2026",
            note="The text read gives the amounts; that the whole raw mixture counts is a trade page's wording.",
        ),
        Rule(
            product="bacon",
            what="side bacon",
            methods=WHOLE,
            substance="both",
            counted="weighed",
            on="mixture",
            most_ppm=SIDE_BACON_PPM,
            least_ppm=LEAST_PPM,
            printed="120 ppm at most",
            cite="CFIA, side bacon",
            source=CANADA_SIDE_BACON,
            as_of="copies read 2026",
            note="Printed for nitrite; held here for both together.",
        ),
    ),
)
