"""What build.py does, one step a file.

What runs before .venv exists (commands, environment, npm, running, stamps, paths) uses only the standard library.
"""
