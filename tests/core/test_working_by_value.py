"""Lines of working with the numbers that a source prints in them: that they add up is not enough, they must be those.

Constants are those of the source named beside them; that the lines add up is tested apart from this.
"""

import pytest

from core.quantities import METRIC
from core.worksheets import find

LINES = [
    # Wagner and Pruß 2002: 647.096 K, 22.064 MPa; ln(p/pc) · T/Tc at 12 °C of IAPWS-95's 1402.75 Pa
    ("moist-air", "dew_point", "at 12 °C; the sum of Wagner and Pruß's six terms is −4.25823:"),
    ("moist-air", "dew_point", "22 064 000 Pa × exp(647.096 K ÷ 285.15 K × −4.25823) = 1 402.75 Pa"),
    ("moist-air", "dew_point", "1 402.75 Pa × 1.00377 = 1 408.03 Pa"),
    ("moist-air", "humidity_ratio", "621.945 g/kg × 1 056.02 Pa ÷ (97 772.6 Pa − 1 056.02 Pa) = 6.79086 g/kg"),
    # 8.314462618 ÷ 18.015268 g/mol
    ("moist-air", "absolute_humidity", "1 056.02 Pa ÷ (0.461523 J/(g K) × 285.15 K) = 8.02429 g/m³"),
    ("moist-air", "enthalpy", "1.006 × 12 °C + 0.00679086 × (2501 + 1.86 × 12 °C) = 29.2075 kJ/kg"),
    ("moist-air", "vapour_pressure_deficit", "Saturation at the surface, 12 °C, in the same way: 1 408.03 Pa"),
    # ASHRAE 2017 ch. 1 eq. 3: 2.25577e-5 is 1 ÷ 44 330.8 m
    ("moist-air", "pressure", "1 013.25 hPa × (1 − 300 m ÷ 44 330.8 m) ^ 5.2559 = 977.726 hPa"),
    ("equal-drying", "equal_temperature", "239.392 Pa ÷ (0.97 − 85 %) = 1 994.93 Pa"),
    ("equal-drying", "equal_humidity", "0.97 − 239.392 Pa ÷ 1 712.35 Pa = 83.0197 %"),
    # a plate taken from the cold on both faces: 1050 · 3500 · 0.06 ÷ (4 · 12) s is 76.5625 min
    ("cold-piece", "warming", "with 1050 kg/m³ and 3.5 kJ/(kg K): 60 mm and 12 W/(m² K) make 76.5625 min."),
    ("cold-piece", "wet_for", "(22 °C − 2 °C) ÷ (22 °C − 20.2848 °C) = 11.6606"),
    (
        "cold-piece",
        "wet_for",
        "With 6 W/(m² K): 6.26847 h. With 35 W/(m² K), the surface ahead of the inside: 82.9871 min.",
    ),
    (
        "cold-piece",
        "coldest_dry_surface",
        "Were the humidity 3 % higher than the hygrometer shows, it forms at 20.8162 °C or colder.",
    ),
    ("moisture-load", "given_off", "10 kg × 1 % a day = 4.16667 g/h"),
    ("moisture-load", "peak", "10 kg × 1.5 % a day = 6.25 g/h"),
    ("moisture-load", "latent", "4.16667 g/h × 2 473.09 kJ/kg = 2.86237 W"),
    ("moisture-load", "one_per_cent", "500 L × 10.7002 g/m³ ÷ 100 = 0.0535012 g"),
    ("moisture-load", "rises_in", "0.0535012 g ÷ 4.16667 g/h = 46.2251 s"),
    ("moisture-load", "wet_limit", "A kilogram of it has 0.0634921 m²/kg: 4 ÷ (1050 kg/m³ × thickness)."),
    ("moisture-load", "coil", "4.16667 g/h is 0.1 L a day; in the first days 6.25 g/h is 0.15 L a day."),
    ("chamber-capacity", "capacity", "600 ml ÷ 3 d = 0.2 L a day"),
    ("chamber-capacity", "carries", "8.33333 g/h ÷ 0.8 % a day = 25 kg"),
    ("chamber-capacity", "carries_first", "8.33333 g/h ÷ 1.5 % a day = 13.3333 kg"),
    ("chamber-capacity", "burden", "In the first days, at the most: 12 kg ÷ 10 kg = 120 %"),
    ("humidifier-need", "need", "−0.327039 g, 20 times a day, is −0.00654078 L a day;"),
    ("humidifier-charge", "spoons", "82.8 g ÷ 13.8 g = 6 tbsp"),
    ("humidifier-charge", "molality", "14.5823 g/L ÷ 998.2 g/L ÷ 0.0840066 kg/mol = 0.173898 mol/kg"),
    # PHREEQC 3: pK 6.3819 and 10.3756, of water 14.1646, at 20 °C; Henry's law 10^−1.4071
    ("humidifier-charge", "ph_fresh", "carbonic acid are pK 6.38187 and 10.3756, of water 14.1646."),
    ("humidifier-charge", "ph_open", "420 ppm × 0.0391659 mol/kg = 0.0000164497 mol/kg"),
    # (6.864 + 0.12472 · 20 + 5.657e-4 · 400) ÷ 100 · 998.2: the quadratic through Seidell's table
    ("humidifier-charge", "share_of_solubility", "14.5823 g/L ÷ 95.6743 g/L = 15.2416 %"),
    ("humidifier-charge", "lowering", "1 − exp(−2 × 0.173898 mol/kg × 0.91 × 0.018015 kg/mol) = 0.568543 %"),
    ("humidifier-charge", "carried", "All that is dissolved goes with the mist: 14.5823 g/L"),
    # Greenspan 1977
    (
        "salt-check",
        "truth",
        "75.5164 + 0.0398321 × 12 °C − 0.00265459 × 12 °C ^ 2 + 0.00002848 × 12 °C ^ 3 = 75.6613 %",
    ),
    (
        "salt-check",
        "uncertainty",
        "The table, 0.204 %; half the last digit, 0.05 %; 0.2 K between salt and sensor, 0.997996 %.",
    ),
    ("salt-check", "wait", "once salt and box are equally warm: 60 min"),
    ("salt-check-two", "other_truth", "88.619 − 0.19334 × 20 °C + 0.000899706 × 20 °C ^ 2 = 85.1121 %"),
    ("salt-check-two", "gain", "(85.1121 % − 75.479 %) ÷ (86.4 % − 78 %) = 1.14679"),
    ("salt-check-two", "corrected", "Its remaining uncertainty, either way: 0.767119 %"),
    ("boiling-point", "truth", "ln(977.726 hPa ÷ 1 013.25 hPa) = −0.0356892"),
    ("boiling-point", "uncertainty", "The known point, 0.57449 K, and half the last digit, 0.05 K, added as squares:"),
    # ln 10 · R ÷ F with the exact constants of the SI
    ("ph-meter", "full_slope", "0.198421 mV × 298.15 K = 59.1593 mV"),
    ("ph-meter", "uncertainty", "The buffers themselves, ±0.02, and half the last digit, added as squares: 0.0217594"),
    ("ph-warmth", "ph", "7 + (5.2 − 7) × 298.15 K ÷ 285.15 K = 5.11794"),
    ("scale-check", "smallest_2", "(0.1 g + 0 g) ÷ (2 % − 0.3 %) = 5.88235 g"),
    ("sugar-for-ph", "by_buffer", "A gram of it makes 11.1012 mmol of lactic acid"),
    ("sugar-for-ph", "by_buffer", "0.8 × 41 ÷ 11.1012 = 2.95462 g/kg; 0.8 × 58 ÷ 11.1012 = 4.17971 g/kg"),
    ("sugar-for-ph", "by_rule", "1 g/kg of dextrose for each 0.1: 0.8 ÷ 0.1 × 1 = 8 g/kg"),
    ("ph-of-sugar", "ph", "By the rule of thumb, 0.1 for a gram to the kilogram: 5.8 less 5 g/kg makes 5.3"),
    ("ph-of-sugar", "ph", "the meat's own 1 g/kg turned to lactic acid, 66.6075 mmol/kg, against 41 mmol/(pH kg)"),
    ("starter", "share", "3.1 g ÷ 12.4 kg = 0.025 %; at most 0.5 % in the US"),
    ("casings", "fill", "12 × 0.785398 × (55 mm)² × 400 mm × 1.05 kg/L → 11.9742 kg"),
    ("fat-mix", "lean_share", "(88.69 % − 25 %) ÷ (88.69 % − 7.14 %) = 78.0993 %"),
    ("finished-mass", "meat", "Raw ÷ (1 + all else, of the meat): 12.3077 kg ÷ 1.04 = 11.8343 kg"),
]


@pytest.mark.parametrize(("name", "key", "line"), LINES)
def test_a_line_of_working_has_the_printed_numbers(name: str, key: str, line: str):
    sheet = find(name)
    (figure,) = [each for each in sheet.answer(sheet.example).figures if each.key == key]
    said = [step.say(METRIC).replace("\u00a0", " ") for step in figure.working]
    assert [each for each in said if line in each], "\n".join(said)
