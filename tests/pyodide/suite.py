"""Inside Pyodide: the core's tests and those of this folder, but for the property tests, whose tool is native."""

import sys
from pathlib import Path

import pytest

tests = Path("/home/pyodide/tests")
laws = sorted(tests.rglob("test_*_laws.py"))
print(f"Python {sys.version.split()[0]} in Pyodide; {len(laws)} files of property tests are left to CPython")
without = [f"-pno:{plugin}" for plugin in ("cacheprovider", "doctest", "faulthandler", "junitxml", "unittest")]
ignored = [f"--ignore={path}" for path in laws]
int(pytest.main([str(tests), *without, *ignored, *arguments]))  # noqa: F821
