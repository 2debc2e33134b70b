"""The two-day proof of an empty chamber: is it settled, since when, and what is to be changed if not?"""
