"""Does a test notice when the core is changed? Small changes, one at a time, each tried against the tests it reaches.

`build.py test mutants` tries a random sample; `-- core/release` every change in one room; `-- --survivors` those again
that nothing noticed last time. The working tree is left alone: what is changed is a copy under .build/mutants.
"""
