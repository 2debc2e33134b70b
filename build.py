#!/usr/bin/env python3
"""The one tool: build.py serve|build|test|bench|package. `build.py --help` says more."""

import sys

if sys.version_info < (3, 11):  # noqa: UP036  said here, where an older Python can still read it
    sys.exit("build.py needs Python 3.11 or newer; this is %d.%d." % sys.version_info[:2])  # noqa: UP031

from building.commands import main

if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
