"""A book with a bit of everything in it, written through the forms in CPython, and the way to each of its screens."""

import re
from datetime import datetime, timedelta
from functools import cache

from attrs import frozen
from flask.testing import FlaskClient
from playwright.sync_api import Browser, BrowserContext, Page, expect

from core.daybook.book import Book
from tests.browser import filled_chamber
from tests.browser.conftest import Site, new_device, open_daybook
from tests.browser.walking import tap
from web.app import create_app

PORTRAIT = {"width": 768, "height": 1024}
PIECES = {"J-1": "1250", "J-2": "1180", "J-3": "1310", "J-4": "990", "J-5": "1220", "J-6": "1275"}

SUMS_DRAWN = (
    *("moist-air", "salt-check-two", "dilute-sanitiser", "set-point", "cure-ppm", "cure-brine", "salting"),
    *("degree-hours-steps", "ready"),
)
"""All sums share one template; these have the most boxes, choices, ranges, cautions, and the one verdict."""

SCREENS = {
    "today": "/",
    "batches": "/batches",
    "a new batch": "/batches/new",
    "a batch in the making": "/batches/{fresh}",
    "a batch that dries": "/batches/{batch}",
    "cure": "/batches/{fresh}/cure",
    "cure of a pumped piece": "/batches/{fresh}/cure?method=pump",
    "a licensed exception": "/batches/{fresh}/exception",
    "rules": "/rules",
    "a house rule": "/rules/house",
    "sources": "/sources",
    "formulas": "/formulas",
    "a formula": "/formulas/{formula}",
    "writing a formula": "/formulas/{formula}/change",
    "a new formula": "/formulas/new",
    "ways to scale": "/formulas/{formula}/batch",
    "scaling by casings": "/formulas/{formula}/batch/casings",
    "a sheet": "/batches/{weighed_out}/sheet",
    "a sheet's row": "/batches/{weighed_out}/sheet/part-1",
    "a sheet's cure": "/batches/{weighed_out}/sheet/part-2",
    "a shut sheet": "/batches/{too_strong}/sheet",
    "a batch that ferments": "/batches/{ferments}",
    "a clock's start": "/batches/{fresh}/ferment",
    "a logger of the fermentation": "/batches/{ferments}/logger",
    "a deviation": "/batches/{ferments}/deviation",
    "a loin in salt": "/batches/{loin}",
    "into salt": "/batches/{fresh}/salt",
    "turning": "/batches/{loin}/turn",
    "out of the salt": "/batches/{loin}/unsalt",
    "reading": "/batches/{batch}/reading",
    "hanging": "/batches/{batch}/hang",
    "hanging several": "/batches/{batch}/hang/several",
    "weighing": "/pieces/{J-3}/weigh",
    "cutting": "/pieces/{J-3}/cut",
    "a ready piece": "/pieces/{J-1}",
    "a spoilt piece": "/pieces/{J-2}",
    "a wet piece": "/pieces/{J-3}",
    "a piece taken down": "/pieces/{J-4}",
    "water activity": "/pieces/{J-3}/activity",
    "inspection": "/pieces/{J-3}/inspect",
    "the meat": "/pieces/{J-3}/meat?anew=1&kind=pork&proof=cured&method=sausage-6",
    "taking down": "/pieces/{J-3}/take-down",
    "a correction": "/entries/{weighing}/correct",
    "giving up": "/batches/{fresh}/give-up",
    "a note on a batch": "/batches/{batch}/note",
    "a note on a piece": "/pieces/{J-3}/note",
    "a note on the chamber": "/chamber/note",
    "chamber": "/chamber",
    "charge": "/chamber/charge",
    "air": "/chamber/air",
    "how fast it may dry": "/chamber/drying-bounds",
    "a logger of the air": "/chamber/air/logger",
    "filling": "/chamber/fill",
    "emptying": "/chamber/basin/empty",
    "the basin": "/chamber/basin",
    "set-points": "/chamber/set-points",
    "choosing set-points": "/chamber/set-points/choose/beef-eu",
    "load": "/chamber/load",
    "a stated capacity": "/chamber/capacity",
    "beginning a run": "/chamber/preparation",
    "a run": "/chamber/preparation/{run}",
    "a run's list": "/chamber/preparation/list",
    "a run's task": "/chamber/preparation/list/contact",
    "instruments": "/chamber/instruments",
    "an instrument": "/chamber/instruments/{larder}",
    "adding an instrument": "/chamber/instruments/add",
    "adjusting an instrument": "/chamber/instruments/{larder}/recalibrate",
    "retiring an instrument": "/chamber/instruments/{larder}/retire",
    "a check": "/chamber/instruments/{electrode}/check/buffers",
    "files of a proof": "/chamber/proofs/new",
    "a proof": "/chamber/proofs/{proof}",
    "two proofs": "/chamber/proofs/compare",
    "finding": "/find?find=alder",
    "sums": "/sums",
    "a search without a find": "/sums?find=sourdough",
    "your data": "/yours",
    "the tablet's name": "/yours/tablet",
    "help": "/yours/help",
    "starting over": "/yours/start-over",
    "a saved line": "/chamber?saved={air}",
    "no such page": "/nowhere",
    **{f"sum {name}": f"/sums/{name}" for name in SUMS_DRAWN},
}
FORMULA = {
    **{"name": "Alder stick", "style": "fermented", "target_loss": "30", "note": "Mince it cold."},
    **{"meat-1-name": "Shoulder", "meat-1-share": "80", "meat-1-cut": "10072", "meat-1-price": "8"},
    **{"meat-2-name": "Back fat", "meat-2-share": "20", "meat-2-cut": "10004"},
    **{"part-1-name": "Salt", "part-1-role": "salt", "part-1-dose": "2.6"},
    **{"part-2-name": "Curing salt", "part-2-role": "cure", "part-2-dose": "0.19", "part-2-nitrite": "6.25"},
    **{"part-3-name": "Pepper", "part-3-role": "spice", "part-3-dose": "3", "part-3-dose-unit": "g/kg"},
}
SOLUTION = {"agent": "chlorine", "stock": "5.25", "target": "100", "volume_m3": "4", "after": "drain"}
RUN = SOLUTION | {"stated": "active", "stock_kg_m3": "1", "descaled": "yes"}
FORMS = {
    "a new batch": "Start the batch",
    "cure": "Save the weighed cure",
    "cure of a pumped piece": "Save the weighed cure",
    "a house rule": "Hold to it from now on",
    "writing a formula": "Save the formula",
    "scaling by casings": "Begin and weigh out",
    "a sheet's row": "Save and next",
    "into salt": "Put it into salt",
    "a deviation": "Save the decision",
    "reading": "Save the reading",
    "hanging": "Save and next piece",
    "hanging several": "Hang them",
    "giving up": "Give it up",
    "cutting": "Save the cut",
    "weighing": "Save and next",
    "water activity": "Save the measurement",
    "charge": "Save the charge",
    "air": "Save the reading",
    "filling": "Save the filling",
    "emptying": "Save the emptying",
    "load": "Work it out",
    "beginning a run": "Begin the run",
    "a run's list": "Add to the list",
    "adding an instrument": "Add it",
    "a check": "Save the check",
    "your data": "Read it in",
    **{f"sum {name}": "Work it out" for name in ("moist-air", "cure-ppm", "ready")},
}
"""The forms that cannot stand when they are empty, with the button that sends them. All sums share one template."""


@frozen
class Filled:
    """exported: the file that "Book" saves. ids: what the addresses need."""

    exported: str
    ids: dict[str, str]

    def path(self, screen: str) -> str:
        """Any sum's too, whether or not it is among those drawn."""
        if screen.startswith("sum "):
            return f"/sums/{screen.removeprefix('sum ')}"
        return re.sub(r"\{(.+?)\}", lambda found: self.ids[found[1]], SCREENS[screen])


@cache
def fill() -> Filled:
    client = create_app(Book()).test_client()
    fresh = _write(client, "/batches/new", 1, name="Beech loin", style="whole-muscle", meat_kg="3.2", target_loss="38")
    batch = _write(
        client, "/batches/new", 45, name="Juniper coarse", style="fermented", meat_kg="12.4", target_loss="35"
    )
    of_batch = f"/batches/{batch}"
    _write(client, f"{of_batch}/cure", 45, dose="0.25", nitrite="6.25", nitrate="0", other_salt_kg="310")
    for days, ph in ((45, "5.7"), (44, "5.6"), (43, "5.3"), (42, "5.1")):
        _write(client, f"{of_batch}/reading", days, ph=ph, temperature_c="22")
    ids = {tag: _write(client, f"{of_batch}/hang", 40, tag=tag, start_kg=grams) for tag, grams in PIECES.items()}
    for days, share in ((25, 0.84), (10, 0.72), (0, 0.63)):
        for tag, grams in PIECES.items():
            left = share if tag not in ("J-3", "J-5") else share + 0.12
            weighing = _write(client, f"/pieces/{ids[tag]}/weigh", days, mass_kg=f"{float(grams) * left:.0f}")
    _write(client, f"/pieces/{ids['J-1']}/meat", 0, kind="pork", proof="tested", lot="P-7")
    _write(client, f"/pieces/{ids['J-1']}/activity", 0, water_activity="0.88")
    _write(client, f"/pieces/{ids['J-1']}/inspect", 0, found="sound")
    _write(client, f"/pieces/{ids['J-2']}/inspect", 0, found="wrong", signs="slime", note="on the seam")
    _write(client, f"/pieces/{ids['J-4']}/take-down", 0, note="to the table")
    air = _write(client, "/chamber/air", 0, temperature_c="13", humidity="78")
    _write(client, "/chamber/charge", 3, water_m3="6", soda_kg_per_m3="1", tank_m3="8")
    for days in (4, 2, 1):
        _write(client, "/chamber/fill", days, water_m3="1", now_holds_m3="6")
        _write(client, "/chamber/basin/empty", days, volume_m3="0.4")
    _write(client, "/chamber/basin", 4, holds_m3="2")
    _write(
        client,
        "/chamber/set-points/choose/dry-practice",
        3,
        temperature_c="12.8",
        humidity="80",
        surface_activity="0.97",
    )
    run = _write(client, "/chamber/preparation", 5, **RUN)
    formula = _write(client, "/formulas/new", 0, **FORMULA)
    weighed_out = _write(client, f"/formulas/{formula}/batch/meat", 0, name="Alder stick", meat_kg="4")
    _write(client, f"/batches/{weighed_out}/sheet/meat-1", 0, mass_kg="3210", division_kg="5", lot="P 31")
    strong = _write(client, "/formulas/new", 0, **FORMULA | {"name": "Too keen", "part-2-dose": "0.4"})
    too_strong = _write(client, f"/formulas/{strong}/batch/meat", 0, name="Too keen", meat_kg="4")
    kept = filled_chamber.instruments(client)
    proof = filled_chamber.proofs(client, kept["larder"])
    others = {"ferments": _fermenting(client), "loin": _in_salt(client), "proof": proof, **kept}
    exported = client.get("/yours/export").get_data(as_text=True)
    ids |= {"formula": formula, "weighed_out": weighed_out, "too_strong": too_strong, **others}
    return Filled(exported, {**ids, "fresh": fresh, "batch": batch, "weighing": weighing, "air": air, "run": run})


def _fermenting(client: FlaskClient) -> str:
    """Three readings of the chamber and of the meat: enough to project when it will be sour."""
    batch = _write(client, "/batches/new", 2, name="Fennel", style="fermented", meat_kg="6", target_loss="35")
    _write(client, f"/batches/{batch}/cure", 2, dose="0.25", nitrite="6.25", nitrate="0")
    _write(client, f"/batches/{batch}/ferment", 2, rule="us", planned_c="22")
    for days, ph in ((1.8, "5.8"), (1.3, "5.7"), (0.8, "5.6")):
        _write(client, f"/batches/{batch}/reading", days, ph=ph, temperature_c="22", place="chamber")
        _write(client, f"/batches/{batch}/reading", days, temperature_c="21", place="core")
    return batch


def _in_salt(client: FlaskClient) -> str:
    batch = _write(client, "/batches/new", 5, name="Alder loin", style="whole-muscle", meat_kg="1.8", target_loss="38")
    _write(client, f"/batches/{batch}/cure", 5, dose="0.5", nitrite="6.25", nitrate="0")
    texts = {"method": "weighed", "shape": "slab", "thickness_m": "50", "temperature_c": "3", "centre_share": "90"}
    texts |= {"way": "diffusion"}
    _write(client, f"/batches/{batch}/salt", 5, **texts, mass_kg="1.8")
    return batch


def _write(client: FlaskClient, path: str, days_ago: float, **fields: str) -> str:
    """Send the form as the screen would; returns the id of what was written."""
    when = datetime.now().astimezone() - timedelta(days=days_ago)
    answer = client.post(path, data={**fields, "happened": when.strftime("%Y-%m-%dT%H:%M")})
    assert answer.status_code == 303, re.findall(r'class="refusal"[^>]*>([^<]+)', answer.get_data(as_text=True))
    return answer.headers["Location"].rpartition("saved=")[2]


def read_in(page: Page, filled: Filled) -> None:
    """Through the form, as one who moves to a new tablet does."""
    tap(page, page.get_by_role("link", name="Book"))
    expect(page.locator("main h1")).to_have_text("Book")
    file = {"name": "book.json", "mimeType": "application/json", "buffer": filled.exported.encode()}
    page.locator("[type=file]").set_input_files(file)
    tap(page, page.get_by_role("button", name="Read it in"))
    expect(page.locator("main .saved")).to_contain_text("Read in")


def device_with(browser: Browser, site: Site, filled: Filled) -> BrowserContext:
    context = new_device(browser, reduced_motion="reduce")
    read_in(open_daybook(context.new_page(), site.url()), filled)
    return context
