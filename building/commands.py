"""The commands of build.py. Each sets up what it needs, and says in one line what is wrong when it cannot."""

import argparse
import sys
from collections.abc import Sequence

from building import environment, npm
from building.locking import alone
from building.paths import DIST, shown
from building.running import Failed

STAGES = ("lint", "core", "web", "building", "pyodide", "browser")
ASKED_FOR = ("mutants",)
"""Stages that run only when they are named."""
GROUPS = {"test": ("app", "build", "test", "alone"), "bench": ("app", "build", "test")}


def main(arguments: Sequence[str]) -> int:
    asked = list(arguments)
    split = asked.index("--") if "--" in asked else len(asked)
    options = _parser().parse_args(asked[:split])
    options.pytest = asked[split + 1 :]
    try:
        return _prepare_and_do(options, asked)
    except Failed as failure:
        print(f"build.py {options.command}: {failure}", file=sys.stderr)
        return 1
    except KeyboardInterrupt:
        print()
        return 130


def _prepare_and_do(options: argparse.Namespace, asked: list[str]) -> int:
    with alone():
        environment.ensure(*GROUPS.get(options.command, ("app", "build")))
    if not environment.is_inside():
        return environment.hand_over(asked)
    with alone():
        npm.ensure()
    return options.do(options) or 0


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="build.py", description="Set up, build, serve, test, measure and pack.")
    commands = parser.add_subparsers(dest="command", required=True)
    serve = commands.add_parser("serve", help="build if needed and serve dist/ on this machine")
    serve.add_argument("--port", type=int, default=8765)
    serve.add_argument("--at", default="/", metavar="/PATH/", help="serve under this path")
    serve.set_defaults(do=_serve)
    commands.add_parser("build", help="make dist/: static files for any web host").set_defaults(do=_build)
    commands.add_parser("package", help="one zip of dist/").set_defaults(do=_package)
    messages = commands.add_parser("messages", help="write all that the daybook says, for a translator to start from")
    messages.set_defaults(do=_messages)
    test = commands.add_parser("test", help="run every test, or one stage; what follows -- goes to pytest")
    test.add_argument("stages", nargs="*", metavar="stage", help=", ".join((*STAGES, *ASKED_FOR)))
    test.set_defaults(do=_test)
    bench = commands.add_parser(
        "bench", help="measure; one JSON object a line; -- --chambers N of so many simulated ones"
    )
    bench.add_argument("names", nargs="*", metavar="name")
    bench.set_defaults(do=_bench)
    return parser


def _build(_: argparse.Namespace) -> int:
    from building import site

    site.build()
    print(f"{shown(DIST)}/ is ready: {site.summary()}")
    return 0


def _messages(_: argparse.Namespace) -> int:
    from building import languages

    print(f"{shown(languages.write_template())} is ready.")
    return 0


def _serve(options: argparse.Namespace) -> int:
    from building import serving, site

    site.build()
    return serving.serve(DIST, options.port, options.at)


def _package(_: argparse.Namespace) -> int:
    from building import packaging, site

    site.build()
    path = packaging.package()
    print(f"{shown(path)}  {path.stat().st_size / 1e6:.1f} MB")
    return 0


def _test(options: argparse.Namespace) -> int:
    from building import checks

    known = (*STAGES, *ASKED_FOR)
    unknown = [stage for stage in options.stages if stage not in known]
    if unknown:
        raise Failed(f"There is no stage {unknown[0]}. Stages: {', '.join(known)}.")
    return checks.run_stages(options.stages or STAGES, options.pytest)


def _bench(options: argparse.Namespace) -> int:
    from building import bench

    return bench.run(options.names, options.pytest)
