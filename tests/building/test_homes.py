"""What the whole house goes by has one home: no second copy that could be moved without the first."""

import ast
import re
from pathlib import Path

import pytest

import core

ROOT = Path(core.__file__).parent
SOURCES = {path.relative_to(ROOT).as_posix(): path.read_text("utf-8") for path in sorted(ROOT.rglob("*.py"))}
WEB = ROOT.parent / "web"
SCREENS = {path.name: path.read_text("utf-8") for path in (WEB / "screens").rglob("*.py")}
DAY = 86_400
HOMES = {"units.py", "meat.py", "densities.py"}


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
        ("LOSS_HELP", "meat.py"),
        ("WATER_KG_PER_M3", "densities.py"),
        ("ROUGH_WATER_KG_PER_M3", "densities.py"),
        ("MEAT_KG_PER_M3", "densities.py"),
        ("TSP", "units.py"),
        ("TBSP", "units.py"),
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


DENSITIES = re.compile(r"\b(998\.2|1050\.0)\b")
SPOONS = re.compile(r"QUART_M3 / (64|192)\b|\b(14\.7868|4\.9289)")


@pytest.mark.parametrize("file", [file for file in SOURCES if file not in HOMES])
def test_a_density_and_a_spoon_stand_nowhere_else(file: str):
    for name, value in ASSIGNED[file].items():
        assert not DENSITIES.search(value), f"{name}: core.densities"
        assert not SPOONS.search(value), f"{name}: core.units.TBSP and TSP"


def test_the_usual_loss_is_said_in_one_place():
    said = [file for file, source in {**SOURCES, **SCREENS}.items() if "35 % is common" in source]
    assert said == ["meat.py"]


def test_every_limit_of_a_water_activity_is_a_hurdle():
    """But for those that say what a reading can be at all, which judge no meat."""
    named = [(file, name) for file, names in ASSIGNED.items() for name, value in names.items() if limits(name, value)]
    assert {file for file, _ in named} == {"release/hurdles.py"}


def limits(name: str, value: str) -> bool:
    return re.search(r"ACTIVITY|KEEP_COLD", name) is not None and re.fullmatch(r"0\.[89]\d*", value) is not None
