"""All that is held against some logs whose chambers are known, and what is advised: each reason with its amounts.

The chambers, and the bands asked of them, are in `settling_logs`; `test_settling_whole_figures` has the truth.
Behind each key: whether it is met = how it is said, and what is said in it, in SI.
"""

import pytest

from tests.core.settling_flat import differs, read, reasons
from tests.core.settling_logs import CASES, proof

REASONS = {
    "plain": """
        length True=length covered=86340 least=64800
        sampling-first True=sampling interval=60 most=300 period=3877.5
        hole-first True=hole hole=60 most=900 window=43200
        sampling-second True=sampling interval=60 most=300 period=3878.5
        hole-second True=hole hole=60 most=900 window=43200
        temperature-first True=temperature-stays least=43200 window=43200 inside=1 outside=0 share=0.95 out=0
            until=43140 most=900 low=10 high=13 since=2040
        drift-first True=drift drift=1.33065e-07 most=8.68056e-06
        temperature-second True=temperature-stays least=43200 window=43200 inside=1 outside=0 share=0.95 out=0
            until=43140 most=900 low=10 high=13 since=2100
        drift-second True=drift drift=9.0295e-08 most=8.68056e-06
        humidity-first True=humidity-stays least=43200 window=43200 inside=1 outside=0 share=0.95 out=0 until=43140
            most=900 low=0.74 high=0.86 since=1440
        humidity-second True=humidity-stays least=43200 window=43200 inside=1 outside=0 share=0.95 out=0 until=43140
            most=900 low=0.74 high=0.86 since=1500
        gradient True=apart warmest=second coldest=first apart=0.19914 together=83760 least=43200 most=1.5
    """,
    "doors and defrosts": """
        length True=length covered=93540 least=64800
        sampling-first True=sampling interval=60 most=300 period=7100
        hole-first True=hole hole=60 most=900 window=43200
        temperature-first True=temperature-stays least=43200 window=43200 inside=1 outside=0 share=0.95 out=0
            until=50340 most=900 low=10 high=13 since=2040
        drift-first True=drift drift=1.0625e-06 most=8.68056e-06
        humidity-first True=humidity-stays least=43200 window=43200 inside=1 outside=0 share=0.95 out=0 until=50340
            most=900 low=0.7 high=0.9 since=1260
        gradient None=one-probe
        advice-0 none=True
    """,
    "walled": """
        length True=length covered=93480 least=64800
        sampling-first True=sampling interval=120 most=300 period=3323.16
        hole-first True=hole hole=120 most=900 window=43200
        temperature-first True=temperature-stays least=43200 window=43200 inside=0.989796 outside=0.0031348 share=0.95
            out=0 until=50280 most=900 low=10 high=13 since=5760
        drift-first True=drift drift=2.14439e-06 most=8.68056e-06
        humidity-first False=humidity-at-a-time least=43200 window=43200 inside=0.583072 outside=0.384013 share=0.95
            out=1560 until=54600 most=900 low=0.74 high=0.86
        gradient None=one-probe
        advice-0 set-point=True off=0.633241
        advice-1 humidifier=True mean=0.842594 low=0.792 high=0.924
    """,
    "coarse": """
        length None=length covered=86340 least=100000
        sampling-first True=sampling interval=60 most=300 period=7086
        hole-first True=hole hole=60 most=900 window=84660
        temperature-first None=temperature-not-yet least=100000 window=84660 inside=1 outside=0 share=0.95 out=0
            until=1680 most=900 low=10 high=14
        drift-first True=drift drift=1.24042e-06 most=1.15741e-05
        gradient None=one-probe
        advice-0 none=True
    """,
    "every five minutes": """
        length True=length covered=107700 least=64800
        sampling-first True=sampling interval=300 most=300 period=7089.74
        hole-first True=hole hole=300 most=900 window=43200
        sampling-second True=sampling interval=300 most=300 period=7090.38
        hole-second True=hole hole=300 most=900 window=43200
        temperature-first None=temperature-doors-unknown least=43200 window=43200 inside=0.770833 outside=0.159722
            share=0.95 out=900 until=102900 most=900 low=11.1 high=12.9
        drift-first True=drift drift=9.78634e-07 most=5.20833e-06
        temperature-second False=temperature-at-a-time least=43200 window=43200 inside=0.666667 outside=0.291667
            share=0.95 out=1800 until=68400 most=900 low=11.1 high=12.9
        drift-second True=drift drift=8.81371e-07 most=5.20833e-06
        humidity-first None=humidity-doors-unknown least=43200 window=43200 inside=0.875 outside=0.0694444 share=0.95
            out=300 until=66900 most=900 low=0.787 high=0.819
        humidity-second None=humidity-doors-unknown least=43200 window=43200 inside=0.875 outside=0.0694444 share=0.95
            out=300 until=71400 most=900 low=0.787 high=0.819
        gradient True=apart warmest=first coldest=second apart=0.400284 together=105600 least=43200 most=1.5
        advice-0 sensor=True one=first other=second off=0.400284
        advice-1 differential=True swing=2.2 less=0.76
        advice-2 humidifier=True mean=0.805639 low=0.79 high=0.832
    """,
    "drifting": """
        length True=length covered=129540 least=64800
        sampling-first True=sampling interval=60 most=300 period=2454.38
        hole-first True=hole hole=60 most=900 window=43200
        sampling-second True=sampling interval=60 most=300 period=2454.38
        hole-second True=hole hole=60 most=900 window=43200
        temperature-first False=temperature-at-a-time least=43200 window=43200 inside=0.577778 outside=0.4 share=0.95
            out=1440 until=126180 most=900 low=10 high=13
        drift-first False=drift drift=1.29568e-05 most=8.68056e-06
        temperature-second False=temperature-at-a-time least=43200 window=43200 inside=0.581944 outside=0.395833
            share=0.95 out=1440 until=126180 most=900 low=10 high=13
        drift-second False=drift drift=1.29651e-05 most=8.68056e-06
        humidity-first False=humidity-too-much least=43200 window=43200 inside=0.772222 outside=0.2 share=0.95 out=780
            until=95040 most=900 low=0.74 high=0.86
        humidity-second False=humidity-too-much least=43200 window=43200 inside=0.768056 outside=0.205556 share=0.95
            out=780 until=95040 most=900 low=0.74 high=0.86
        gradient True=apart warmest=second coldest=first apart=0.00127326 together=122520 least=43200 most=1.5
        advice-0 drift=True by=1.37286e-05
        advice-1 set-point=True off=0.821694
        advice-2 humidifier=True mean=0.831984 low=0.794 high=0.89
    """,
    "paused": """
        length True=length covered=78780 least=64800
        sampling-first True=sampling interval=60 most=300 period=3888.46
        hole-first None=hole hole=5400 most=900 window=43200
        sampling-second True=sampling interval=60 most=300 period=3878.5
        hole-second True=hole hole=60 most=900 window=43200
        temperature-first None=temperature-not-shown least=43200 window=43200 inside=0.858333 outside=0 share=0.95
            out=0 until=43140 most=900 low=10 high=13
        drift-first True=drift drift=-3.77965e-07 most=8.68056e-06
        temperature-second True=temperature-stays least=43200 window=43200 inside=1 outside=0 share=0.95 out=0
            until=43140 most=900 low=10 high=13 since=2100
        drift-second True=drift drift=9.0295e-08 most=8.68056e-06
        humidity-first None=humidity-not-shown least=43200 window=43200 inside=0.858333 outside=0 share=0.95 out=0
            until=43140 most=900 low=0.74 high=0.86
        humidity-second True=humidity-stays least=43200 window=43200 inside=1 outside=0 share=0.95 out=0 until=43140
            most=900 low=0.74 high=0.86 since=1500
        gradient True=apart warmest=second coldest=first apart=0.0980676 together=37260 least=43200 most=1.5
        advice-0 none=True
    """,
    "short": """
        length None=length covered=17940 least=64800
        sampling-first True=sampling interval=60 most=300 period=3885
        hole-first True=hole hole=60 most=900 window=15900
        sampling-second True=sampling interval=60 most=300 period=3880
        hole-second True=hole hole=60 most=900 window=15840
        temperature-first None=temperature-not-yet least=43200 window=15900 inside=1 outside=0 share=0.95 out=0
            until=2040 most=900 low=10 high=13
        temperature-second None=temperature-not-yet least=43200 window=15840 inside=1 outside=0 share=0.95 out=0
            until=2100 most=900 low=10 high=13
        humidity-first None=humidity-not-yet least=43200 window=16500 inside=1 outside=0 share=0.95 out=0 until=1440
            most=900 low=0.74 high=0.86
        humidity-second None=humidity-not-yet least=43200 window=16440 inside=1 outside=0 share=0.95 out=0 until=1500
            most=900 low=0.74 high=0.86
        gradient None=not-together apart=0.0984436 together=15420 least=43200 most=1.5
        advice-0 none=True
    """,
    "never cold": """
        length True=length covered=71880 least=64800
        sampling-first None=sampling-without-cycles interval=120 most=75
        hole-first True=hole hole=120 most=900 window=40200
        temperature-first None=temperature-not-yet least=43200 window=40200 inside=0.99403 outside=0.00298507
            share=0.95 out=0 until=31680 most=900 low=10 high=13
        drift-first False=drift drift=-1.72012e-05 most=8.68056e-06
        humidity-first True=humidity-stays least=43200 window=43200 inside=0.991919 outside=0 share=0.95 out=0
            until=28680 most=900 low=0.74 high=0.86 since=12480
        gradient None=one-probe
        advice-0 set-point=True off=0.896855
    """,
    "overshooting": """
        length True=length covered=86340 least=64800
        sampling-first True=sampling interval=60 most=300 period=3495.71
        hole-first True=hole hole=60 most=900 window=43200
        temperature-first False=temperature-at-a-time least=43200 window=43200 inside=0.688889 outside=0.295139
            share=0.95 out=1080 until=44580 most=900 low=11.6 high=13.4
        humidity-first False=humidity-at-a-time least=43200 window=43200 inside=0.504167 outside=0.481944 share=0.95
            out=3360 until=67380 most=900 low=0.74 high=0.86
        gradient None=one-probe
        advice-0 differential=True swing=2.2 less=0.76
        advice-1 set-point=True off=0.481749
        advice-2 humidifier=True mean=0.875131 low=0.793 high=1
    """,
    "apart": """
        length True=length covered=86280 least=64800
        sampling-first True=sampling interval=30 most=300 period=7087.5
        hole-first True=hole hole=30 most=900 window=43200
        sampling-second True=sampling interval=120 most=300 period=7086
        hole-second True=hole hole=120 most=900 window=43200
        sampling-third True=sampling interval=30 most=300 period=7089
        hole-third True=hole hole=30 most=900 window=43200
        temperature-first True=temperature-stays least=43200 window=43200 inside=1 outside=0 share=0.95 out=0
            until=43170 most=900 low=9 high=15 since=1440
        drift-first True=drift drift=1.46117e-06 most=1.73611e-05
        temperature-second True=temperature-stays least=43200 window=43200 inside=1 outside=0 share=0.95 out=0
            until=43080 most=900 low=9 high=15 since=1920
        drift-second True=drift drift=1.32916e-06 most=1.73611e-05
        temperature-third True=temperature-stays least=43200 window=43200 inside=1 outside=0 share=0.95 out=0
            until=43170 most=900 low=9 high=15 since=1290
        drift-third True=drift drift=1.43569e-06 most=1.73611e-05
        humidity-first True=humidity-stays least=43200 window=43200 inside=1 outside=0 share=0.95 out=0 until=43170
            most=900 low=0.74 high=0.86 since=1470
        humidity-second True=humidity-stays least=43200 window=43200 inside=1 outside=0 share=0.95 out=0 until=43080
            most=900 low=0.74 high=0.86 since=1560
        humidity-third True=humidity-stays least=43200 window=43200 inside=1 outside=0 share=0.95 out=0 until=43170
            most=900 low=0.74 high=0.86 since=1440
        gradient False=apart warmest=second coldest=third apart=1.89808 together=83880 least=43200 most=1.5
        advice-0 sensor=True one=first other=second off=1.39776
        advice-1 sensor=True one=first other=third off=0.500214
        advice-2 sensor=True one=second other=third off=1.8991
        advice-3 fan=True apart=1.9709
    """,
    "too slow": """
        length True=length covered=107400 least=64800
        sampling-first None=sampling-without-cycles interval=600 most=75
        hole-first True=hole hole=600 most=900 window=43200
        temperature-first True=temperature-stays least=43200 window=43200 inside=1 outside=0 share=0.95 out=0
            until=64200 most=900 low=10 high=13 since=2400
        drift-first True=drift drift=1.37611e-06 most=8.68056e-06
        humidity None=no-humidity
        gradient None=one-probe
        advice-0 none=True
    """,
    "lost in steps": """
        length True=length covered=71940 least=64800
        sampling-first True=sampling interval=60 most=300 period=3900
        hole-first True=hole hole=60 most=900 window=43200
        temperature-first False=temperature-too-much least=43200 window=43200 inside=0.744444 outside=0.234028
            share=0.95 out=840 until=41220 most=900 low=10.8 high=11.6
        humidity-first True=humidity-stays least=43200 window=43200 inside=1 outside=0 share=0.95 out=0 until=28740
            most=900 low=0.74 high=0.86 since=1440
        gradient None=one-probe
        advice-0 differential=True swing=1 less=0.36
        advice-1 set-point=True off=0.205872
    """,
    "aimed elsewhere": """
        length True=length covered=71940 least=64800
        sampling-first True=sampling interval=60 most=300 period=3879.38
        hole-first True=hole hole=60 most=900 window=43200
        sampling-second True=sampling interval=60 most=300 period=3878.75
        hole-second True=hole hole=60 most=900 window=43200
        temperature-first False=temperature-never least=43200 window=43200 inside=0 outside=1 share=0.95 out=43200
            until=71940 most=900 low=4 high=6
        temperature-second False=temperature-never least=43200 window=43200 inside=0 outside=1 share=0.95 out=43200
            until=71940 most=900 low=4 high=6
        humidity-first False=humidity-never least=43200 window=43200 inside=0 outside=1 share=0.95 out=43200 until=71940
            most=900 low=0.93 high=0.97
        humidity-second False=humidity-never least=43200 window=43200 inside=0 outside=1 share=0.95 out=43200
            until=71940 most=900 low=0.93 high=0.97
        gradient True=apart warmest=first coldest=second apart=0.000778547 together=69360 least=43200 most=1.5
        advice-0 set-point=True off=6.38503
        advice-1 humidifier=True mean=0.806206 low=0.791 high=0.832
    """,
}


@pytest.mark.parametrize("name", CASES)
def test_each_reason_and_each_advice_is_as_it_was_when_it_was_held_against_the_truth(name: str):
    written, found = read(REASONS[name]), reasons(name)
    assert list(written) == list(found)
    assert [f"{key}: {each}" for key in found for each in differs(written[key], found[key])] == []


def test_the_plain_one_alone_is_settled_and_since_its_last_probe_is():
    assert {name: proof(name).settled_since_s for name in CASES if proof(name).is_settled} == {"plain": 52_100.0}
