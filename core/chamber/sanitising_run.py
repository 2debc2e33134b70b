"""Preparing the chamber, step by step: what is done in which order, what waits for what, and for how long."""

from __future__ import annotations

from attrs import evolve, frozen

from core.chamber.sanitising import DRAIN, After, no_rinse_ppm
from core.chamber.sanitising_agents import AGENTS, NO_AGENT, PPM, conditions, within
from core.quantities import PARTS_PER_MILLION, TEMPERATURE, Amount
from core.refusals import OutOfRange
from core.sentence import Message, Sentence, Value
from core.units import HOUR_S

DRY_S = HOUR_S  # common practice; no published source: until it is dry to the hand
DESCALE_S = 1800.0  # common practice; no published source


TASK_WORDS: dict[str, Message] = {
    "unplug": "Unplug the chamber and the humidifier. Wait until the fans have stopped.",
    "clear": "Take out racks, hooks, drip tray, guard and wick. Empty the reservoir and the basin.",
    "cover": "Take out the sensors or wrap them. Keep every spray off fans, sensors and electrics.",
    "wash": "Wash walls, racks and parts with hot water and washing-up liquid.",
    "rinse": "Rinse or wipe with clean water until nothing foams.",
    "descale": "Soak limescaled parts in vinegar and water, half and half. This does not sanitise.",
    "rinse-descaler": "Rinse all the vinegar away, twice: with chlorine it sets free a gas that harms the lungs.",
    "mix": "Mix the {agent} at {strength}, as warm as the label asks: the water first. Nothing else goes in.",
    "mix-warm": "Mix the {agent} at {strength}, at {least} or warmer: the water first. Nothing else goes in.",
    "sanitise": "Wipe or dip every surface and part. Spray a cloth, not the chamber's electrics.",
    "contact": "Keep it all wet for the contact time.",
    "rinse-sanitiser": "Rinse with drinking water.",
    "drain": DRAIN,
    "dry": "Leave the door open until all is dry.",
    "wick": "Put the wick back, folded so that air passes through it.",
    "reservoir": "Fill the reservoir, no higher than its mark.",
    "tray": "Put the drip tray and the guard in.",
    "basin": "See that the condensate basin is empty and stands under its drain.",
    "sensors": "Put the sensors back where they hung.",
    "plug": "With dry hands, plug the chamber and the humidifier in.",
}
"""The usual words, by the key under which an entry keeps them: a key once in use stays."""


@frozen
class Task:
    """One step of the run. key: unique in it. text: what to do. timer_s: how long it stands, None where it need not.

    after: the keys of what must be done before. Plain enough for a user's own list to hold tasks of the same kind.
    """

    key: str
    text: Sentence
    timer_s: float | None = None
    after: tuple[str, ...] = ()


def preparation(
    agent: str,
    target_ppm: float,
    after: After = "drain",
    label_ppm: float | None = None,
    contact_s: float | None = None,
    descale: bool = False,
) -> tuple[Task, ...]:
    """The run from the plug pulled to the chamber ready to be started, each task after all those it waits for.

    agent: a key of AGENTS. target_ppm, after, label_ppm: as in `dilute`, which refuses what may not be made. contact_s:
    the label's own time; the longer of it and the rule's is kept. descale: take lime off with vinegar and water first.
    Raises OutOfRange on "agent".
    """
    if agent not in AGENTS:
        raise OutOfRange("agent", NO_AGENT)
    asked = conditions(agent, max(target_ppm, AGENTS[agent].least_ppm or 0.0))
    stands_s = max(asked.contact_s, contact_s or 0.0)
    return _in_a_row(
        *_cleaning(),
        *(_descaling() if descale else ()),
        *_sanitising(agent, target_ppm, asked.least_c, stands_s, _rinsed(agent, target_ppm, after, label_ppm)),
        *_putting_back(),
    )


def ready_for(tasks: tuple[Task, ...], done: frozenset[str]) -> tuple[Task, ...]:
    """The tasks that may be begun now: not done, and all they wait for done."""
    return tuple(task for task in tasks if task.key not in done and done.issuperset(task.after))


def _rinsed(agent: str, target_ppm: float, after: After, label_ppm: float | None) -> bool:
    limit_ppm = no_rinse_ppm(AGENTS[agent], label_ppm)
    return after == "rinse" or limit_ppm is None or not within(target_ppm, limit_ppm)


def _in_a_row(*tasks: Task) -> tuple[Task, ...]:
    """Each task waits for the one above it."""
    above = ((), *((task.key,) for task in tasks))
    return tuple(evolve(task, after=key) for task, key in zip(tasks, above, strict=False))


def _task(key: str, timer_s: float | None = None) -> Task:
    return Task(key, Sentence(TASK_WORDS[key]), timer_s)


def _cleaning() -> tuple[Task, ...]:
    return tuple(_task(key) for key in ("unplug", "clear", "cover", "wash", "rinse"))


def _descaling() -> tuple[Task, ...]:
    return _task("descale", DESCALE_S), _task("rinse-descaler")


def _sanitising(
    agent: str, target_ppm: float, least_c: float | None, stands_s: float, rinsed: bool
) -> tuple[Task, ...]:
    values: dict[str, Value] = {
        "agent": Sentence(AGENTS[agent].name),
        "strength": Amount(target_ppm * PPM, PARTS_PER_MILLION),
    }
    words = "mix"
    if least_c is not None:
        words, values["least"] = "mix-warm", Amount(least_c, TEMPERATURE)
    end = _task("rinse-sanitiser") if rinsed else _task("drain")
    return (
        Task("mix", Sentence(TASK_WORDS[words], values)),
        _task("sanitise"),
        _task("contact", stands_s),
        end,
        _task("dry", DRY_S),
    )


def _putting_back() -> tuple[Task, ...]:
    return tuple(_task(key) for key in ("wick", "reservoir", "tray", "basin", "sensors", "plug"))
