"""Bundle what we write in JavaScript and CSS. Names and values are given in; nothing of this machine comes out."""

import json
from collections.abc import Mapping, Sequence
from pathlib import Path

from building import npm
from building.paths import BUILD, MODULES, ROOT, shown
from building.running import Failed

BUNDLES = BUILD / "bundles"
TARGETS = ("es2022", "safari16.4", "chrome112", "firefox114")
ONLY_IN_NODE = ("node:*", "ws")  # Pyodide reaches for these when it runs under Node, never in a browser


def script(source: Path, values: Mapping[str, object], *, kind: str = "esm") -> bytes:
    """One file with all it imports: "esm" a module, "iife" a classic script. values: global names it may use."""
    defined = [f"--define:{name}={json.dumps(value, sort_keys=True)}" for name, value in values.items()]
    external = [f"--external:{name}" for name in ONLY_IN_NODE]
    return _bundle(source, [f"--format={kind}", "--platform=browser", *defined, *external])


def style(sources: Sequence[Path]) -> bytes:
    """All style sheets in one, in the order of their names."""
    BUNDLES.mkdir(parents=True, exist_ok=True)
    entry = BUNDLES / "all_styles.css"
    above = "../" * len(entry.parent.relative_to(ROOT).parts)
    entry.write_text("".join(f'@import "{above}{shown(path)}";\n' for path in sources))
    return _bundle(entry, ["--external:*.woff2"])


def _bundle(source: Path, options: list[str]) -> bytes:
    BUNDLES.mkdir(parents=True, exist_ok=True)
    target = BUNDLES / f"bundled-{source.name}"
    target.unlink(missing_ok=True)
    if not source.exists():
        raise Failed(f"{shown(source)} is missing. Restore it from the repository.")
    program = MODULES / "esbuild/bin/esbuild"
    if not program.exists():
        raise Failed("esbuild is missing. Delete web/node_modules and run again.")
    command = [program, source, "--bundle", "--minify", "--legal-comments=none", f"--target={','.join(TARGETS)}"]
    remedy = f"{shown(source)} could not be bundled."
    npm.run_node([*command, *options, f"--outfile={target}"], f"bundle-{source.stem}", remedy)
    return target.read_bytes()
