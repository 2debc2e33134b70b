"""All that a proof can say, by the key under which an entry keeps it.

A key once in use stays, as do the names of its values: a daybook of years ago says them again. The words may change.
"""

from __future__ import annotations

from collections.abc import Mapping

from core.sentence import Message, Sentence, Value

REASONS: dict[str, Message] = {
    "length": "The readings cover {covered}; {least} are needed.",
    "sampling": "“{probe}” was read every {interval}; its cycles of {period} need a reading every {most}.",
    "sampling-without-cycles": (
        "“{probe}” was read every {interval} and shows no cycles; to show there are none it needs one every {most}."
    ),
    "hole": "“{probe}” was at most {hole} without a reading in its last {window}; {most} may be.",
    "drift": "“{probe}” drifts by {drift} after settling; at most {most} is allowed.",
    "no-humidity": "No probe logged the humidity.",
    "one-probe": "Fewer than two probes were logged at the same time: warm and cold places are not known.",
    "not-together": "The probes were logged together for {together} only; {least} are needed.",
    "apart": "The means of “{warmest}” and “{coldest}” are {apart} apart; at most {most} is allowed.",
    "instrument-failed": "“{probe}” failed its {check} of {at}: what it logged proves nothing.",
    "temperature-stays": (
        "“{probe}”: its temperature stays between {low} and {high} from {since} on, for {inside} of the time; "
        "{share} is needed."
    ),
    "temperature-never": "“{probe}”: its temperature does not come between {low} and {high}.",
    "temperature-doors-unknown": (
        "“{probe}”: its temperature is outside {low} to {high} for {outside} of the last {window}; if by doors "
        "and defrosts, is not known."
    ),
    "temperature-at-a-time": (
        "“{probe}”: its temperature still leaves {low} to {high} after {until}, for {out} at a time; at most "
        "{most} is allowed."
    ),
    "temperature-too-much": (
        "“{probe}”: its temperature is outside {low} to {high} for {outside} of the last {window}; {share} of it "
        "inside is needed."
    ),
    "temperature-not-shown": (
        "“{probe}”: its temperature is shown between {low} and {high} for {inside} of the last {window} only; "
        "{share} is needed."
    ),
    "temperature-not-yet": "“{probe}”: its temperature has been between {low} and {high} for the last {window} only.",
    "humidity-stays": (
        "“{probe}”: its humidity stays between {low} and {high} from {since} on, for {inside} of the time; "
        "{share} is needed."
    ),
    "humidity-never": "“{probe}”: its humidity does not come between {low} and {high}.",
    "humidity-doors-unknown": (
        "“{probe}”: its humidity is outside {low} to {high} for {outside} of the last {window}; if by doors and "
        "defrosts, is not known."
    ),
    "humidity-at-a-time": (
        "“{probe}”: its humidity still leaves {low} to {high} after {until}, for {out} at a time; at most "
        "{most} is allowed."
    ),
    "humidity-too-much": (
        "“{probe}”: its humidity is outside {low} to {high} for {outside} of the last {window}; {share} of it "
        "inside is needed."
    ),
    "humidity-not-shown": (
        "“{probe}”: its humidity is shown between {low} and {high} for {inside} of the last {window} only; "
        "{share} is needed."
    ),
    "humidity-not-yet": "“{probe}”: its humidity has been between {low} and {high} for the last {window} only.",
}

ADVICE: dict[str, Message] = {
    "none": (
        "The logs do not say what to change. A reading every minute, a second probe, the humidity and the room's "
        "temperature, logged for two days with the door shut, would tell more."
    ),
    "hygrometer": (
        "“{one}” shows a dew point {off} above “{other}”, in the same air: check both hygrometers over a salt "
        "before you touch the humidistat."
    ),
    "sensor-above": (
        "“{one}” reads {off} above “{other}” all the time. Lay them side by side for an hour: if they still "
        "differ, check both at the ice point and correct the one that is off."
    ),
    "sensor-below": (
        "“{one}” reads {off} below “{other}” all the time. Lay them side by side for an hour: if they still "
        "differ, check both at the ice point and correct the one that is off."
    ),
    "compressor": "The compressor does not cool: it is as warm as the room. Look at plug, thermostat and compressor.",
    "ice": "Look for ice on the coil, and defrost it: the runs grew from {early} to {late}.",
    "set-point-drifts": (
        "The levels at which the compressor starts and stops drift by {by}: fix or change the thermostat's sensor."
    ),
    "set-lower": "Set the thermostat {off} lower: so far is the mean from what is wanted.",
    "set-higher": "Set the thermostat {off} higher: so far is the mean from what is wanted.",
    "narrow": "Narrow the differential by {less} or more: the trace swings by {swing} with each run of the compressor.",
    "widen": "Widen the differential: the compressor starts {starts} and rests for {hold} only, which wears it out.",
    "humidifier-weak": (
        "The humidifier is too weak, empty or blocked: the humidity hardly ever gets into its band, {mean} in the "
        "mean. Fill and clean it; look for a leak to dry air."
    ),
    "humidifier-overshoots": (
        "The humidifier overshoots: the humidity goes from {low} to {high}. Give less fog, or for less long."
    ),
    "humidistat-lower": "Set the humidistat {off} (of relative humidity) lower.",
    "humidistat-higher": "Set the humidistat {off} (of relative humidity) higher.",
    "door": "Leave the door shut for the proof: it was opened {count} times.",
    "leak": "Look at the door's seal, and at holes in the wall: left alone, it warms towards the room within {tau}.",
    "fan": "Move more air, or turn the fan, and keep its way clear: the probes are {apart} apart.",
    "load": "Lighten its work: the compressor runs {share} of the time. Look at the door's seal, at ice, at the room.",
    "never-cold": "It never comes down to its band: look at the door's seal, at ice, at the room's heat.",
}

CORRECTED: dict[str, Message] = {
    "temperature-as-logged": "“{probe}” failed its {check} of {at}: its temperature is as logged.",
    "temperature-by-a-line": "“{probe}”: its temperature is corrected by a straight line ({check} of {at}).",
    "temperature-right": "“{probe}”: its temperature reads right ({check} of {at}).",
    "temperature-raised": "“{probe}”: its temperature is corrected by +{by} ({check} of {at}).",
    "temperature-lowered": "“{probe}”: its temperature is corrected by −{by} ({check} of {at}).",
    "humidity-as-logged": "“{probe}” failed its {check} of {at}: its humidity is as logged.",
    "humidity-by-a-line": "“{probe}”: its humidity is corrected by a straight line ({check} of {at}).",
    "humidity-right": "“{probe}”: its humidity reads right ({check} of {at}).",
    "humidity-raised": "“{probe}”: its humidity is corrected by +{by} ({check} of {at}).",
    "humidity-lowered": "“{probe}”: its humidity is corrected by −{by} ({check} of {at}).",
}

PROOF_WORDS: dict[str, Message] = {
    **{f"reason-{key}": text for key, text in REASONS.items()},
    **{f"advice-{key}": text for key, text in ADVICE.items()},
    **{f"corrected-{key}": text for key, text in CORRECTED.items()},
}


def reason(key: str, values: Mapping[str, Value]) -> Sentence:
    return Sentence(REASONS[key], values)


def advice(key: str, values: Mapping[str, Value]) -> Sentence:
    return Sentence(ADVICE[key], values)


def corrected(key: str, values: Mapping[str, Value]) -> Sentence:
    return Sentence(CORRECTED[key], values)
