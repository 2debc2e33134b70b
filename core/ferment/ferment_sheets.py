"""The single sums of fermenting: degree-hours at one temperature or by steps, and the hours that are left."""

from __future__ import annotations

from attrs import evolve

from core.ferment.course import Course
from core.ferment.deadline import STANDS_STILL, hours_left
from core.ferment.degree_hours import constant, figure, limit_figure, stepped, used_up
from core.ferment.rules import LOCAL_RULES, NO_PROOF, RULE_WORDS, RULES, Rule, RuleKey
from core.quantities import DEGREE_HOURS, HOURS, TEMPERATURE
from core.refusals import Missing
from core.sentence import Message
from core.units import HOUR_S
from core.usual import FERMENT_C, TO_PH_S
from core.working import Figure
from core.worksheet import Choice, Number, Worksheet

OVER: Message = (
    "That is not fewer than the limit: hold it. The toxin of staphylococci survives cooking; ask a food-safety "
    "authority."
)
MOST_HOURS_S = 1000 * HOUR_S
_RULE = Choice("rule", "Rule", RULE_WORDS, default="us")
_WARM = (TEMPERATURE, 0.0, 50.0)
WHOLE_DEGREES = "The highest it was. A thermometer that shows whole degrees may be half a degree lower: add it."


def _judged(course: Course, rule: Rule) -> tuple[Figure, ...]:
    gone = figure(course, rule)
    limit = limit_figure(rule, course.highest_c)
    said = (NO_PROOF, LOCAL_RULES)
    cautions = (OVER, *said) if used_up(gone.value, limit.value) else said
    return evolve(gone, cautions=cautions), limit


def _constant(temperature_c: float, lasts_s: float, rule: RuleKey) -> tuple[Figure, ...]:
    chosen = RULES[rule]
    most = hours_left(0.0, chosen.limit_ks(temperature_c), temperature_c, chosen)
    figures = _judged(constant(temperature_c, lasts_s), chosen)
    return figures if most is None else (*figures, evolve(most, key="most_hours", name="Hours to the limit"))


def _stepped(rule: RuleKey, **typed: float | None) -> tuple[Figure, ...]:
    steps: list[tuple[float, float]] = []
    for number, _ in enumerate(_STEPS, 1):
        warm, lasts_s = typed[f"temperature_{number}"], typed[f"lasts_{number}"]
        if warm is not None and lasts_s is not None:
            steps.append((warm, lasts_s))
        elif warm is not None or lasts_s is not None:
            missing = f"temperature_{number}" if warm is None else f"lasts_{number}"
            raise Missing(missing, "Enter both the temperature and the time of this step, or neither.")
    return _judged(stepped(steps), RULES[rule])


def _left(gone_ks: float, highest_c: float | None, present_c: float, rule: RuleKey) -> tuple[Figure, ...]:
    chosen = RULES[rule]
    limit = limit_figure(chosen, None if highest_c is None else max(present_c, highest_c))
    left = hours_left(gone_ks, limit.value, present_c, chosen)
    if left is None:
        return (evolve(limit, cautions=(STANDS_STILL, LOCAL_RULES)),)
    said = (NO_PROOF, LOCAL_RULES)
    return evolve(left, cautions=(OVER, *said) if not left.value else said), limit


DEGREE_HOURS_SHEET = Worksheet(
    name="degree-hours",
    title="Degree-hours at one temperature",
    stage="ferment",
    question="Does it come down to pH 5.3 in time?",
    inputs=(
        Number("temperature_c", "Temperature of the chamber", *_WARM, usual=FERMENT_C, help=WHOLE_DEGREES),
        Number(
            "lasts_s",
            "Time to pH 5.3",
            HOURS,
            0.0,
            MOST_HOURS_S,
            usual=TO_PH_S,
            help="From the moment it passed the base.",
        ),
        _RULE,
    ),
    compute=_constant,
    example={"temperature_c": "80 °F", "lasts_s": "55 h", "rule": "us"},
)


_STEPS: tuple[tuple[Message, Message], ...] = (
    ("Temperature, step 1", "Time, step 1"),
    ("Temperature, step 2", "Time, step 2"),
    ("Temperature, step 3", "Time, step 3"),
    ("Temperature, step 4", "Time, step 4"),
)


def _step_inputs() -> tuple[Number, ...]:
    found: list[Number] = []
    for number, (warm, lasts) in enumerate(_STEPS, 1):
        later = number > 1
        help_: Message = "" if later else WHOLE_DEGREES
        found.append(Number(f"temperature_{number}", warm, *_WARM, usual=FERMENT_C, optional=later, help=help_))
        found.append(Number(f"lasts_{number}", lasts, HOURS, 0.0, MOST_HOURS_S, optional=later))
    return tuple(found)


DEGREE_HOURS_STEPS_SHEET = Worksheet(
    name="degree-hours-steps",
    title="Degree-hours by steps",
    stage="ferment",
    question="Does a fermentation at changing temperatures come down to pH 5.3 in time?",
    inputs=(*_step_inputs(), _RULE),
    compute=_stepped,
    example={
        **{"temperature_1": "24 °C", "lasts_1": "10 h", "temperature_2": "30 °C", "lasts_2": "10 h"},
        **{"temperature_3": "35 °C", "lasts_3": "15 h", "rule": "canada"},
    },
)
HOURS_LEFT_SHEET = Worksheet(
    name="degree-hours-left",
    title="Hours left to pH 5.3",
    stage="ferment",
    question="How long is left at the temperature it has now?",
    inputs=(
        Number("gone_ks", "Degree-hours so far", DEGREE_HOURS, 0.0, 2000 * HOUR_S),
        Number("present_c", "Temperature now", *_WARM, usual=FERMENT_C),
        Number(
            "highest_c",
            "Highest temperature so far",
            *_WARM,
            usual=FERMENT_C,
            optional=True,
            help="It draws the limit. Left empty, the lowest limit counts.",
        ),
        _RULE,
    ),
    compute=_left,
    example={"gone_ks": "400 °C·h", "present_c": "24 °C", "highest_c": "26 °C", "rule": "us"},
)
WORKSHEETS = (DEGREE_HOURS_SHEET, DEGREE_HOURS_STEPS_SHEET, HOURS_LEFT_SHEET)
