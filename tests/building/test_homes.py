"""What the whole house goes by has one home: no second copy that could be moved without the first."""

import ast
from pathlib import Path

import pytest

import core

ROOT = Path(core.__file__).parent
SOURCES = {path.relative_to(ROOT).as_posix(): path.read_text("utf-8") for path in sorted(ROOT.rglob("*.py"))}
DAY = 86_400
HOMES = {"units.py", "meat.py"}


def assigned(source: str) -> dict[str, str]:
    """Names that a module gives a value to, with that value's text."""
    found: dict[str, str] = {}
    for node in ast.parse(source).body:
        targets = (
            node.targets if isinstance(node, ast.Assign) else [node.target] if isinstance(node, ast.AnnAssign) else []
        )
        value = node.value if isinstance(node, ast.Assign | ast.AnnAssign) else None
        for target in targets:
            names = target.elts if isinstance(target, ast.Tuple) else [target]
            values = value.elts if isinstance(value, ast.Tuple) and len(names) > 1 else [value] * len(names)
            for name, each in zip(names, values, strict=True):
                if isinstance(name, ast.Name) and each is not None:
                    found[name.id] = ast.unparse(each)
    return found


ASSIGNED = {file: assigned(source) for file, source in SOURCES.items()}


@pytest.mark.parametrize(
    ("name", "home"),
    [
        ("Style", "meat.py"),
        ("STYLES", "meat.py"),
        ("ACID_PH", "meat.py"),
        ("USUAL_LOSS", "meat.py"),
        ("MOST_LOSS", "meat.py"),
        ("MOST_LOSS_A_DAY", "meat.py"),
        ("DAY_S", "units.py"),
        ("HOUR_S", "units.py"),
    ],
)
def test_it_is_said_in_one_place(name: str, home: str):
    assert [file for file, names in ASSIGNED.items() if name in names] == [home]


@pytest.mark.parametrize("file", [file for file in SOURCES if file not in HOMES])
def test_a_day_and_a_style_have_no_second_name(file: str):
    for name, value in ASSIGNED[file].items():
        assert value not in (f"{DAY}", f"{DAY}.0"), f"{name}: core.units.DAY_S"
        assert value not in ("5.3",), f"{name}: core.meat.ACID_PH"
        assert not value.startswith("Literal['fermented'"), f"{name}: core.meat.Style"
