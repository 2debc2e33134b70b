"""Inside Pyodide: the core's tests and those of this folder, but for the property tests, whose tool is native.

The first argument is which share of the files: 0/2 is the first of two. The others go to pytest.
"""

import sys
from pathlib import Path

import pytest

tests = Path("/home/pyodide/tests")
share, *options = arguments  # noqa: F821
first, shares = map(int, share.split("/"))
laws = set(tests.rglob("test_*_laws.py"))
files = sorted(set(tests.rglob("test_*.py")) - laws)[first::shares]
print(f"Python {sys.version.split()[0]} in Pyodide; {len(laws)} files of property tests are left to CPython")
without = [f"-pno:{plugin}" for plugin in ("cacheprovider", "doctest", "faulthandler", "junitxml", "unittest")]
int(pytest.main([*map(str, files), *without, *options]))
