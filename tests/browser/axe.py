"""What axe finds on a page."""

import json

from playwright.sync_api import Page

from building.paths import MODULES

AXE = MODULES / "axe-core/axe.min.js"
BY_NIGHT = ("color-contrast", "link-in-text-block")
"""What the colours can break."""


def faults(page: Page, *only: str) -> list[str]:
    """axe's violations, one line each; only: these rules and no others. The page has AXE's text already."""
    rules = {"runOnly": list(only)} if only else {}
    found = page.evaluate("async (options) => (await axe.run(document, options)).violations", rules)
    return [f"{each['id']}: {json.dumps([node['target'] for node in each['nodes']])[:300]}" for each in found]
