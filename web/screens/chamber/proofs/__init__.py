"""The two-day proof: files chosen, their layout settled, a band asked for, the logs looked at, and the run kept."""
