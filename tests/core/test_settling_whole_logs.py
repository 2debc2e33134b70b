"""What lies under the figures of some logs whose chambers are known: runs, events, stays, spreads, to the sixth digit.

`settling_flat` names what each row holds, in its order; `test_settling_whole_figures` holds the chambers to the truth.
"""

import pytest

from tests.core.settling_flat import differs, read, rest
from tests.core.settling_logs import CASES, analysis, truth

UNDER = {
    "plain": """
        first probe=50000,136340,20,52040 whole=11.511,0.943992,10.7,20,10.8,12,86400 calm=1396
            sampling=60,3877.5,300,86340 give=0.106208 runs=21 counted=True stay=52040,1 lately=93140,1,0,0,93140,0
            sums=1.96278e+06,2.00052e+06,1.9902e+06,2.00766e+06,252.1,226.6 cycles=20 late=184.8 arrived=51440
            follows=False deficit=271.845,77.5447,218.489,1148.43,236.696,288.832,86400
            dews=8.22383,0.496621,7.23486,10.4432,7.54053,8.87476,86400 humid-stay=51440,1
            humid-lately=93140,1,0,0,93140,0
        second probe=50000,136340,20.2,52100 whole=11.7103,0.945386,11,20.2,11,12.2,86400 calm=1397
            sampling=60,3878.5,300,86340 give=0.105872 runs=21 counted=True stay=52100,1 lately=93140,1,0,0,93140,0
            sums=1.96302e+06,2.0005e+06,1.99002e+06,2.00748e+06,256.1,231 cycles=20 late=181.65 arrived=51500
            follows=False deficit=275.39,78.3988,225.37,1153.23,239.069,293.422,86400
            dews=8.41871,0.498417,7.50351,10.6652,7.73946,9.09492,86400 humid-stay=51500,1
            humid-lately=93140,1,0,0,93140,0
    """,
    "doors and defrosts": """
        first probe=0,93540,20,2040 whole=12.0294,1.09256,10.5,20,10.8,13.2,93600 calm=1352 sampling=60,7100,300,93540
            give=0.175894 runs=15 counted=True stay=2040,1 lately=50340,1,0,0,50340,0
            sums=715438,759345,749400,766680,199.8,161.9 door@24480=24964.8,25140,25500,10.8,13.2
            defrost@40800=40911,41880,42900,11.1,14.8 door@59520=59952,60120,60480,11.4,13.6
            defrost@75960=76179,77340,78300,10.9,15.2 cycles=6 late=141.257 arrived=1260 follows=False
            deficit=274.556,79.2104,140.226,1148.43,207.049,308.179,93600
            dews=8.8169,0.749552,7.43792,11.9425,7.66938,9.96005,93600 humid-stay=1260,1
            humid-lately=50340,1,0,0,50340,0
    """,
    "walled": """
        first probe=0,93480,20,5760 whole=12.3429,1.38378,10.7,20,10.9,14.6,93600 calm=676
            sampling=120,3323.16,300,93480 give=0.278592 runs=24 counted=True stay=5760,0.989796
            lately=50280,0.99373,0.0031348,0,50280,0 sums=1.13858e+06,1.18569e+06,1.17012e+06,1.19796e+06,319.7,259.4
            defrost@49920=50262,51360,52080,12.8,19.2 door@69480=69720,70200,70560,11.2,14.2 cycles=19 late=180.874
            arrived=1200 follows=True deficit=237.945,115.313,0,1148.43,109.39,323.172,93600
            dews=9.67558,0.824115,7.77667,14.0811,8.98089,11.3387,93600 humid-stay=91200,1
            humid-lately=50280,0.583072,0.384013,1560,54600,0
    """,
    "coarse": """
        first probe=0,86340,20,1680 whole=12.0333,1.03175,11,20,11,13,86400 calm=1401 sampling=60,7086,300,86340
            give=0.190048 runs=11 counted=True stay=1680,1 lately=1680,1,0,0,1680,0
            sums=465330,493230,480720,497760,143,121 cycles=10 late=150 arrived=None follows=False
            deficit=281.613,77.2848,221.417,1148.43,241.186,307.07,86400
            dews=8.72817,0.689768,7.33607,10.5339,7.66938,9.89378,86400
    """,
    "every five minutes": """
        first probe=100000,207700,20,102100 whole=12.0136,1.00128,10.8,20,10.9,12.9,108000 calm=352
            sampling=300,7089.74,300,107700 give=0.300341 runs=14 counted=True stay=203200,1
            lately=164500,0.770833,0.159722,900,202900,0 sums=2.12572e+06,2.1788e+06,2.1692e+06,2.1869e+06,181.6,151.6
            cycles=13 late=234.602 arrived=101800 follows=False
            deficit=280.976,75.3278,218.489,1148.43,241.899,307.627,108000
            dews=8.71046,0.681355,7.36439,10.4102,7.63268,9.78977,108000 humid-stay=206200,1
            humid-lately=164500,0.875,0.0694444,300,166900,0
        second probe=100000,207700,19.6,102100 whole=11.6136,1.00084,10.4,19.6,10.5,12.5,108000 calm=352
            sampling=300,7090.38,300,107700 give=0.298628 runs=14 counted=True stay=204100,1
            lately=164500,0.666667,0.291667,1800,168400,0
            sums=2.12578e+06,2.17883e+06,2.1698e+06,2.1866e+06,175.9,145.9 cycles=13 late=188.12 arrived=101800
            follows=False deficit=273.458,73.3645,217.802,1099.65,234.833,298.338,108000
            dews=8.32369,0.677226,6.9248,9.93159,7.25529,9.35671,108000 humid-stay=188200,1
            humid-lately=164500,0.875,0.0694444,300,171400,0
    """,
    "drifting": """
        first probe=0,129540,20,5700 whole=12.4604,0.979231,11,20,11.3,13.6,129600 calm=2042
            sampling=60,2454.38,300,129540 give=0.0729729 runs=49 counted=True stay=129000,1
            lately=86340,0.577778,0.4,1440,126180,0 sums=3.18096e+06,3.24496e+06,3.2226e+06,3.26172e+06,634,568
            cycles=48 late=345.39 arrived=1140 follows=False
            deficit=251.404,76.4749,147.892,1148.43,170.1,314.157,129600
            dews=9.62049,0.658018,7.81382,13.1729,8.70804,10.4876,129600 humid-stay=None,0
            humid-lately=86340,0.772222,0.2,780,95040,0
        second probe=0,129540,20,5700 whole=12.4616,0.978091,11,20,11.3,13.6,129600 calm=2042
            sampling=60,2454.38,300,129540 give=0.0727121 runs=49 counted=True stay=129000,1
            lately=86340,0.581944,0.395833,1440,126180,0 sums=3.18099e+06,3.24497e+06,3.22248e+06,3.26208e+06,634,568.1
            cycles=48 late=276.262 arrived=1140 follows=False
            deficit=251.395,76.2432,145.374,1141.39,170.668,313.246,129600
            dews=9.62194,0.658199,7.86936,13.0717,8.69832,10.4962,129600 humid-stay=None,0
            humid-lately=86340,0.768056,0.205556,780,95040,0
    """,
    "paused": """
        first probe=0,86340,20,2040 whole=11.5156,0.978707,10.7,20,10.8,12,79380 calm=619
            sampling=60,3888.46,300,78780 give=0.35349 runs=17 counted=? stay=48600,0.980922
            lately=43140,0.858333,0,0,43140,5400 sums=723480,753960,745680,759660,204.1,183.5 cycles=13 late=176.25
            arrived=1440 follows=False deficit=272.547,80.6741,218.489,1148.43,237.733,288.832,79380
            dews=8.22217,0.508272,7.23486,10.4432,7.54053,8.88162,79380 humid-stay=48600,0.980922
            humid-lately=43140,0.858333,0,0,43140,5400
        second probe=0,86340,20.1,2100 whole=11.6103,0.945386,10.9,20.1,10.9,12.1,86400 calm=1397
            sampling=60,3878.5,300,86340 give=0.105872 runs=21 counted=True stay=2100,1 lately=43140,1,0,0,43140,0
            sums=913020,950500,940020,957480,254,228.9 cycles=20 late=181.65 arrived=1500 follows=False
            deficit=273.578,77.9209,223.876,1146.11,237.486,291.495,86400
            dews=8.32129,0.498585,7.40625,10.5677,7.6423,8.99727,86400 humid-stay=1500,1
            humid-lately=43140,1,0,0,43140,0
    """,
    "short": """
        first probe=7000,24940,20,9040 whole=12.014,1.85374,10.8,20,10.8,16.9,18000 calm=257
            sampling=60,3885,300,17940 give=None runs=3 counted=True stay=9040,1 lately=9040,1,0,0,9040,0
            sums=46920,52110,50760,53100,36,32.4 cycles=2 late=185 arrived=8440 follows=False
            deficit=307.865,162.322,218.489,1148.43,235.659,688.345,18000
            dews=8.45038,0.733935,7.23486,10.4432,7.6143,10.1747,18000 humid-stay=8440,1
            humid-lately=8440,1,0,0,8440,0
        second probe=7000,24940,20.1,9100 whole=12.1133,1.85846,10.9,20.1,10.9,17,18000 calm=257
            sampling=60,3880,300,17940 give=None runs=3 counted=True stay=9100,1 lately=9100,1,0,0,9100,0
            sums=46680,52060,50640,53100,36.3,32.7 cycles=2 late=225.75 arrived=8500 follows=False
            deficit=309.664,163.107,224.052,1146.11,234.833,688.838,18000
            dews=8.55001,0.742412,7.40625,10.5677,7.68769,10.3127,18000 humid-stay=8500,1
            humid-lately=8500,1,0,0,8500,0
    """,
    "never cold": """
        first probe=0,71880,20,31440 whole=13.7392,1.98328,12.1,20,12.2,18.4,72000 calm=318 sampling=120,None,75,71880
            give=0.0978917 runs=0 counted=False stay=31680,0.99403 lately=31680,0.99403,0.00298507,0,31680,0
            arrived=12480 follows=False deficit=382.203,179.907,262.544,1148.43,276.142,845.96,72000
            dews=9.67665,0.830104,8.47953,11.1941,8.6551,10.9607,72000 humid-stay=12480,0.991919
            humid-lately=28680,1,0,0,28680,0
    """,
    "overshooting": """
        first probe=0,86340,20,4860 whole=12.2528,1.19678,10.7,20,10.8,13.8,86400 calm=1315
            sampling=60,3495.71,300,86340 give=0.224844 runs=22 counted=True stay=None,0
            lately=43140,0.688889,0.295139,1080,44580,0 sums=978650,1.02332e+06,1.00926e+06,1.03368e+06,286.2,237.6
            cycles=21 late=162.375 arrived=840 follows=False deficit=188.065,124.309,0,1150.78,4.45272,305.753,86400
            dews=10.1094,1.54365,7.4479,15.7446,7.9781,12.8847,86400 humid-stay=None,0
            humid-lately=43140,0.504167,0.481944,3360,67380,0
    """,
    "apart": """
        first probe=0,86370,20,1440 whole=12.0213,1.0217,10.8,20,10.9,12.9,86400 calm=2801
            sampling=30,7087.5,300,86370 give=0.132787 runs=11 counted=True stay=1440,1 lately=43170,1,0,0,43170,0
            sums=454320,494770,488190,501030,142.967,118.867 cycles=10 late=162.322 arrived=1470 follows=False
            deficit=281.301,76.3727,216.02,1148.43,240.614,307.763,86400
            dews=8.71713,0.679191,7.30901,10.4634,7.6747,9.78977,86400 humid-stay=1470,1
            humid-lately=43170,1,0,0,43170,0
        second probe=40,86320,21.4,1960 whole=13.4238,1.03997,12.2,21.4,12.3,14.4,86400 calm=700
            sampling=120,7086,300,86280 give=0.266151 runs=11 counted=True stay=1960,1 lately=43120,1,0,0,43120,0
            sums=456020,495220,488120,501440,158.4,134.2 cycles=10 late=202.25 arrived=1600 follows=False
            deficit=308.51,85.2297,238.287,1228.89,264.576,335.467,86400
            dews=10.0826,0.683311,8.68913,11.7929,9.04013,11.1621,86400 humid-stay=1600,1
            humid-lately=43120,1,0,0,43120,0
        third probe=0,86370,19.6,1290 whole=11.5211,1.02252,10.3,19.6,10.4,12.4,86400 calm=2802
            sampling=30,7089,300,86370 give=0.132967 runs=11 counted=True stay=1290,1 lately=43170,1,0,0,43170,0
            sums=454845,494725,488040,500760,137.467,113.3 cycles=10 late=182.147 arrived=1440 follows=False
            deficit=272.125,74.1071,209.064,1113.39,233.278,297.128,86400
            dews=8.23035,0.684875,6.78583,9.99595,7.18245,9.31965,86400 humid-stay=1440,1
            humid-lately=43170,1,0,0,43170,0
    """,
    "too slow": """
        first probe=0,107400,20,2400 whole=12.0217,1.04569,10.8,20,10.9,12.9,108000 calm=176
            sampling=600,None,75,107400 give=0.424402 runs=0 counted=False stay=2400,1 lately=64200,1,0,0,64200,0
    """,
    "lost in steps": """
        first probe=0,71940,20,2520 whole=11.5617,1.02121,10.5,20,11,12,72000 calm=1158 sampling=60,3900,300,71940
            give=0.145409 runs=17 counted=False stay=None,0 lately=28740,0.744444,0.234028,840,41220,0
            sums=620190,635010,620700,639720,204,186 arrived=1440 follows=False
            deficit=274.125,84.657,221.417,1148.43,237.232,290.087,72000
            dews=8.25997,0.522211,7.34599,10.5339,7.57746,8.97241,72000 humid-stay=1440,1
            humid-lately=28740,1,0,0,28740,0
    """,
    "aimed elsewhere": """
        first probe=0,71940,20,None whole=11.5416,1.018,10.7,20,10.8,12,72000 calm=1156 sampling=60,3879.38,300,71940
            give=0.140775 runs=17 counted=True stay=None,0 lately=28740,0,1,43200,71940,0
            sums=606960,637650,629220,643500,204.1,183.4 cycles=16 late=180.6 arrived=None follows=False
            deficit=273.764,84.5243,218.489,1148.43,236.696,289.061,72000
            dews=8.24036,0.513667,7.23486,10.4432,7.53524,8.89285,72000 humid-stay=None,0
            humid-lately=28740,0,1,43200,71940,0
        second probe=0,71940,20,None whole=11.5409,1.0199,10.8,20,10.8,12,72000 calm=1157
            sampling=60,3878.75,300,71940 give=0.140649 runs=17 counted=True stay=None,0
            lately=28740,0,1,43200,71940,0 sums=607440,637600,629460,643320,204,183.6 cycles=16 late=181.65
            arrived=None follows=False deficit=273.683,84.4306,222.391,1139.04,235.914,289.918,72000
            dews=8.2407,0.516714,7.30901,10.4703,7.53524,8.92122,72000 humid-stay=None,0
            humid-lately=28740,0,1,43200,71940,0
    """,
}


@pytest.mark.parametrize(("name", "probe"), [(name, probe) for name, rows in UNDER.items() for probe in read(rows)])
def test_what_lies_under_the_figures_is_as_it_was_when_it_was_held_against_the_truth(name: str, probe: str):
    shown = next(each for each in analysis(name).probes if each.name == probe)
    assert differs(read(UNDER[name])[probe], rest(shown)) == []


COUNTED = [name for name, rows in UNDER.items() if "counted=True" in rows and name != "paused"]


@pytest.mark.parametrize("name", COUNTED)
def test_the_runs_that_are_said_to_be_counted_are_those_there_were(name: str):
    """All but that of the first pull-down. Of a log with pauses no run in them can be, so "counted" is not held to."""
    case = CASES[name]
    made = len(truth(case.chamber, case.hours).runs) - 1
    assert [len(probe.compressor.runs) for probe in analysis(name).probes] == [made] * len(case.offsets_k)


@pytest.mark.parametrize("name", ["doors and defrosts", "walled"])
def test_doors_and_defrosts_are_told_when_they_were(name: str):
    case = CASES[name]
    happened = truth(case.chamber, case.hours)
    made = sorted(
        [("door", *each) for each in happened.doors] + [("defrost", *each) for each in happened.defrosts],
        key=lambda event: event[1],
    )
    told = analysis(name).centre.compressor.events
    assert [each.kind for each in told] == [kind for kind, *_ in made]
    for each, (_, begin_s, end_s) in zip(told, made, strict=True):
        assert begin_s - 600 <= each.starts_s <= begin_s + 240
        assert end_s - 60 <= each.top_s <= end_s + 600
