"""A proof run as an entry keeps it, for the tests of entries and of their forms."""

from core.daybook.facts.kept import KeptAmount, KeptName, KeptSentence
from core.daybook.facts.proofs import KeptFigure, ProofFile, ProofProbe, ProofResult, ProofRun

RUN = ProofRun(
    name="Second run",
    changed="the fan turned",
    files=(ProofFile("5" * 64, "low.csv", {"separator": ";", "columns": [{"role": "time"}]}),),
    probes=(ProofProbe(0, "Probe 1", "low", "0190a6f0-0000-7000-8000-000000000000"),),
    temperature_c=12.345,
    temperature_half_k=1.2345,
    humidity=0.8123,
    humidity_half=0.0512,
    centre="low",
    room_c=20.123,
    from_s=1_795_000_000.0,
    begun_s=1_794_990_000.0,
    utc_offset_s=3600.0,
    result=ProofResult(
        None,
        None,
        (
            KeptSentence(
                "reason-drift",
                (KeptName("probe", "low"), KeptAmount("drift", 1.23e-6, "drift"), KeptAmount("most", 1e-6, "drift")),
                None,
            ),
        ),
        (KeptSentence("advice-compressor"),),
        figures=(KeptFigure("mean", 12.3456, "fine_temperature"),),
        outline=((0.0, 20.1), (1.0, 12.3)),
    ),
)
