"""For all tests: a law is broken neither by a slow machine nor by chance.

The examples are the same on every machine. `--hypothesis-profile=searching` draws others.
"""

from hypothesis import HealthCheck, settings

settings.register_profile("searching", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.register_profile("any machine", settings.get_profile("searching"), derandomize=True, database=None)
settings.load_profile("any machine")
