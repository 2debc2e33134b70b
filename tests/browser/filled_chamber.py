"""Instruments with their checks, and two saved runs of the empty chamber, for the book with a bit of everything."""

import io
import re

from flask.testing import FlaskClient

from tests.browser.chamber_logs import FIRST, REPAIRED, SECOND, TOO_COLD, two_files

BAND = {"temperature_c": "13", "temperature_half_k": "1.5", "humidity": "79", "humidity_half": "5", "room_c": "20"}
MOST_STEPS = 200
INSTRUMENTS = {
    "larder": {"name": "Larder A", "kind": "hygrometer", "probe": "Larder A"},
    "needle": {"name": "Needle", "kind": "thermometer"},
    "electrode": {"name": "Glass electrode", "kind": "ph-meter"},
}
CHECKS = {
    "larder": ("salt", {"salt": "nacl", "temperature_c": "20", "reading": "72", "apart_k": "0.2", "bulk": "small"}),
    "needle": ("boiling", {"reading_c": "98.4", "altitude_m": "600"}),
}


def instruments(client: FlaskClient) -> dict[str, str]:
    """Their ids by the names above; one was never checked."""
    ids = {key: _sent(client, "/chamber/instruments/add", **fields) for key, fields in INSTRUMENTS.items()}
    for key, (way, fields) in CHECKS.items():
        division = {"division": "0.1"} if way == "salt" else {"division_k": "0.1"}
        _sent(client, f"/chamber/instruments/{ids[key]}/check/{way}", **fields, **division)
    return ids


def proofs(client: FlaskClient, larder: str) -> str:
    """One run that is not settled and one that is; returns the first's id."""
    first = _proof(client, two_files(TOO_COLD, FIRST, "first"), larder, name="Before the fix")
    _proof(client, two_files(REPAIRED, SECOND, "second"), larder, name="After the fix", changed="Differential 1 K")
    return first


def _proof(client: FlaskClient, files: dict[str, bytes], larder: str, **naming: str) -> str:
    sent = [(io.BytesIO(data), name) for name, data in files.items()]
    draft = client.post("/chamber/proofs/new", data={"file": sent}).headers["Location"].rpartition("/files/")[0]
    for at in range(len(files)):
        client.post(f"{draft}/files/{at}", data={"do": "take", "q-order": "dmy"})
    probes = {"probe-0": "Larder A", "probe-1": "Larder B", "instrument-0": larder, "centre": "0"}
    client.post(f"{draft}/settings", data=BAND | probes | naming)
    for _ in range(MOST_STEPS):
        if "?step=" not in client.get(draft).get_data(as_text=True):
            return _sent(client, f"{draft}/save")
    raise AssertionError("the logs are never read to their end")


def _sent(client: FlaskClient, path: str, **fields: str) -> str:
    answer = client.post(path, data=fields)
    assert answer.status_code == 303, re.findall(r'class="refusal"[^>]*>([^<]+)', answer.get_data(as_text=True))
    return answer.headers["Location"].rpartition("saved=")[2]
