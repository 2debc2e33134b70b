"""No text that is shown is put together in the code: another language orders its words otherwise."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

from building.paths import CORE, WEB, shown

TEXT_AT = {"Sentence": 0, "say": 0, "Refusal": 1, "OutOfRange": 1, "Missing": 1, "NotAQuantity": 1}
"""What is called with a text, and as which of its arguments."""
FILES = [path for top in (CORE, WEB) for path in sorted(top.rglob("*.py")) if "node_modules" not in path.parts]


def texts(tree: ast.AST) -> Iterator[ast.expr]:
    for call in ast.walk(tree):
        if isinstance(call, ast.Call) and isinstance(call.func, ast.Name) and call.func.id in TEXT_AT:
            yield from call.args[TEXT_AT[call.func.id] :][:1]
            yield from (each.value for each in call.keywords if each.arg == "plural")


def is_glued(text: ast.expr) -> bool:
    is_method = isinstance(text, ast.Call) and isinstance(text.func, ast.Attribute)
    by_method = is_method and text.func.attr in ("format", "join", "replace", "lower", "capitalize")
    by_sign = isinstance(text, ast.BinOp) and isinstance(text.op, ast.Add | ast.Mod)
    return isinstance(text, ast.JoinedStr) or by_method or by_sign


@pytest.mark.parametrize("path", FILES, ids=shown)
def test_a_text_that_is_shown_is_not_put_together(path: Path):
    tree = ast.parse(path.read_text(encoding="utf-8"))
    assert [f"line {each.lineno}: {ast.unparse(each)}" for each in texts(tree) if is_glued(each)] == []


@pytest.mark.parametrize(
    "glued", ['f"{name} is wet"', '"wet: " + name', '"%s is wet" % name', '"{} is wet".format(name)']
)
def test_a_glued_text_is_found(glued: str):
    for call in (f"Sentence({glued}, told)", f"OutOfRange('ph', {glued})", f"Sentence('wet', told, plural={glued})"):
        assert any(map(is_glued, texts(ast.parse(call))))
