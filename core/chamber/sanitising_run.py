"""Preparing the chamber, step by step: what is done in which order, what waits for what, and for how long."""

from __future__ import annotations

from attrs import evolve, frozen

from core.chamber.sanitising import DRAIN, After, no_rinse_ppm
from core.chamber.sanitising_agents import AGENTS, PPM, conditions, within
from core.quantities import PARTS_PER_MILLION, TEMPERATURE, Amount
from core.refusals import OutOfRange
from core.sentence import Sentence

DRY_S = 3600.0  # common practice, no source: until it is dry to the hand
DESCALE_S = 1800.0  # common practice, no source


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
        raise OutOfRange("agent", f"The sanitiser must be one of {', '.join(AGENTS)}.")
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


def _cleaning() -> tuple[Task, ...]:
    return (
        Task("unplug", Sentence("Unplug the chamber and the humidifier. Wait until the fans stand still.")),
        Task("clear", Sentence("Take out racks, hooks, drip tray, guard and wick. Empty the reservoir and the basin.")),
        Task("cover", Sentence("Take out the sensors or wrap them. Keep every spray off fans, sensors and electrics.")),
        Task("wash", Sentence("Wash walls, racks and parts with hot water and washing-up liquid.")),
        Task("rinse", Sentence("Rinse or wipe with clean water until nothing foams.")),
    )


def _descaling() -> tuple[Task, ...]:
    return (
        Task(
            "descale",
            Sentence("Stand the parts with lime on them in vinegar and water, half and half. This is no sanitising."),
            timer_s=DESCALE_S,
        ),
        Task(
            "rinse-descaler",
            Sentence("Rinse all the vinegar away, twice: with chlorine it sets free a gas that harms the lungs."),
        ),
    )


def _sanitising(
    agent: str, target_ppm: float, least_c: float | None, stands_s: float, rinsed: bool
) -> tuple[Task, ...]:
    name = AGENTS[agent].name
    amounts = {"strength": Amount(target_ppm * PPM, PARTS_PER_MILLION)}
    warmth = "as warm as the label asks"
    if least_c is not None:
        amounts["least"] = Amount(least_c, TEMPERATURE)
        warmth = "at {least} or warmer"
    end = Task("rinse-sanitiser", Sentence("Rinse with drinking water.")) if rinsed else Task("drain", Sentence(DRAIN))
    return (
        Task(
            "mix",
            Sentence(f"Mix the {name} at {{strength}}, {warmth}: the water first. Nothing else goes in.", amounts),
        ),
        Task("sanitise", Sentence("Wipe or dip every surface and part. Spray a cloth, not the chamber's electrics.")),
        Task("contact", Sentence("Keep it all wet for the contact time."), timer_s=stands_s),
        end,
        Task("dry", Sentence("Leave the door open until all is dry."), timer_s=DRY_S),
    )


def _putting_back() -> tuple[Task, ...]:
    return (
        Task("wick", Sentence("Put the wick back, folded so that air passes through it.")),
        Task("reservoir", Sentence("Fill the reservoir, no higher than its mark.")),
        Task("tray", Sentence("Put the drip tray and the guard in.")),
        Task("basin", Sentence("See that the condensate basin is empty and stands under its drain.")),
        Task("sensors", Sentence("Put the sensors back where they hung.")),
        Task("plug", Sentence("With dry hands, plug the chamber and the humidifier in.")),
    )
