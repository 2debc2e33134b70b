"""What a proof says can be kept: read off the sources, which the tablet's interpreter does not have."""

import ast
import inspect
from types import ModuleType

import pytest

from core.chamber import proof_run
from core.chamber.settling import advice, proof


@pytest.mark.parametrize("room", [proof, advice, proof_run])
def test_what_a_proof_says_has_a_key(room: ModuleType):
    """Every reason's text and every advice is drawn by its key: none is made in place, where it could not be kept."""
    calls = [node for node in ast.walk(ast.parse(inspect.getsource(room))) if isinstance(node, ast.Call)]
    texts = [call.args[1] for call in calls if getattr(call.func, "id", "") in ("Reason", "Advice")]
    made = [node.value for node in ast.walk(ast.parse(inspect.getsource(room))) if _sets_text(node)]
    for text in (*texts, *made):
        drawn = isinstance(text, ast.Call) and getattr(text.func, "attr", "") in ("reason", "advice")
        assert drawn or getattr(text, "id", "") == "text", ast.unparse(text)
    assert texts


def _sets_text(node: ast.AST) -> bool:
    return isinstance(node, ast.Assign) and getattr(node.targets[0], "id", "") == "text"
