"""What the daybook says, gathered from its source: every constant text that a catalogue of another language must hold.

Where a text is one is read off the declarations: the argument of a parameter or field that is annotated `Message` or
`Said`, the value of a name annotated so, the text and the plural of a `Sentence`, and what a template gives to `say`.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path

from attrs import field, frozen
from jinja2 import nodes

from building.paths import CORE, WEB, shown
from building.running import Failed
from core.daybook.book import Book
from web.app import create_app

_IS_MESSAGE = re.compile(r"\b(Message|Said)\b")
Node = ast.expr | None
Parameters = list[tuple[str, bool]]
"""Their names in order, and whether each takes a message."""


@frozen
class Found:
    """One text, with its plural where it has one, and where it stands."""

    text: str
    plural: str = ""
    where: str = field(default="", eq=False)


@cache
def every() -> tuple[Found, ...]:
    """Each text once, in the order of the files."""
    trees = {shown(path): ast.parse(path.read_text(encoding="utf-8")) for path in _files(".py")}
    declared = _Declared(trees)
    found = [each for path, tree in trees.items() for each in _of_python(path, tree, declared)]
    found += [each for path in _files(".html") for each in _of_template(path)]
    return tuple(dict.fromkeys(each for each in found if each.text.strip()))


def _files(suffix: str) -> list[Path]:
    return [path for top in (CORE, WEB) for path in sorted(top.rglob(f"*{suffix}")) if "node_modules" not in path.parts]


class _Declared:
    """Which parameters take a message, by the name that is called; and what stands in a name."""

    def __init__(self, trees: Mapping[str, ast.Module]) -> None:
        self.parameters: dict[str, list[Parameters]] = {
            "Sentence": [[("text", True), ("values", False), ("plural", True)]]
        }
        """By a name that is called: of each that is called so, for the name alone does not say which is meant."""
        self.fields: set[str] = set()
        self.names: dict[str, list[ast.expr]] = {}
        self.here: dict[tuple[str, str], list[ast.expr]] = {}
        bases: dict[str, list[str]] = {}
        for path, tree in trees.items():
            for each in ast.walk(tree):
                if isinstance(each, ast.FunctionDef):
                    self._learn(each.name, _of_function(each))
                elif isinstance(each, ast.ClassDef):
                    bases[each.name] = [base.id for base in each.bases if isinstance(base, ast.Name)]
                    self._learn(each.name, _of_class(each))
            for each in ast.walk(tree):
                for name, value in _assigned(each) if isinstance(each, ast.stmt) else ():
                    self.here.setdefault((path, name), []).append(value)
                    if each in tree.body:
                        self.names.setdefault(name, []).append(value)
        for name, above in bases.items():
            inherited = [self.parameters[base] for base in above if base in self.parameters]
            if inherited and name not in self.parameters:
                self.parameters[name] = inherited[0]

    def _learn(self, name: str, parameters: Parameters) -> None:
        messages = {key for key, is_message in parameters if is_message}
        if messages:
            self.parameters.setdefault(name, []).append(parameters)
            self.fields |= messages

    def texts(self, node: Node, path: str, within: frozenset[str] = frozenset()) -> Iterator[str]:
        """The constant texts that an expression may come to."""
        match node:
            case ast.Constant(value=str(text)):
                yield text
            case ast.IfExp(body=one, orelse=other):
                yield from self.texts(one, path, within)
                yield from self.texts(other, path, within)
            case ast.BoolOp(values=values) | ast.Tuple(elts=values) | ast.List(elts=values) | ast.Dict(values=values):
                for each in values:
                    yield from self.texts(each, path, within)
            case ast.Starred(value=value) | ast.Subscript(value=value):
                yield from self.texts(value, path, within)
            case ast.Name(id=name) if name not in within:
                for each in self.here.get((path, name)) or self.names.get(name, ()):
                    yield from self.texts(each, path, within | {name})
            case _:
                return


def _of_function(function: ast.FunctionDef) -> Parameters:
    given = (*function.args.posonlyargs, *function.args.args, *function.args.kwonlyargs)
    return [(each.arg, _says(each.annotation)) for each in given if each.arg not in ("self", "cls")]


def _of_class(each: ast.ClassDef) -> Parameters:
    for within in each.body:
        if isinstance(within, ast.FunctionDef) and within.name == "__init__":
            return _of_function(within)
    fields = [
        within for within in each.body if isinstance(within, ast.AnnAssign) and isinstance(within.target, ast.Name)
    ]
    return [(ast.unparse(each.target), _says(each.annotation) or _makes_sentences(each)) for each in fields]


def _makes_sentences(declared: ast.AnnAssign) -> bool:
    """A field that turns plain texts into sentences: Figure.cautions."""
    return declared.value is not None and "each_said" in ast.unparse(declared.value)


def _says(annotation: Node) -> bool:
    return annotation is not None and _IS_MESSAGE.search(ast.unparse(annotation)) is not None


def _assigned(each: ast.stmt) -> Iterator[tuple[str, ast.expr]]:
    match each:
        case ast.Assign(targets=[ast.Name(id=name)], value=value):
            yield name, value
        case ast.AnnAssign(target=ast.Name(id=name), value=ast.expr() as value):
            yield name, value
        case _:
            return


def _of_python(path: str, tree: ast.Module, declared: _Declared) -> Iterator[Found]:
    for node in ast.walk(tree):
        if isinstance(node, ast.AnnAssign) and _says(node.annotation):
            yield from (Found(text, where=f"{path}:{node.lineno}") for text in declared.texts(node.value, path))
        elif isinstance(node, ast.FunctionDef):
            yield from (Found(text, where=f"{path}:{node.lineno}") for text in _defaults(node, path, declared))
        elif isinstance(node, ast.Call):
            yield from _of_call(path, node, declared)


def _defaults(function: ast.FunctionDef, path: str, declared: _Declared) -> Iterator[str]:
    given = function.args
    last = zip(reversed((*given.posonlyargs, *given.args)), reversed(given.defaults), strict=False)
    for each, default in (*last, *zip(given.kwonlyargs, given.kw_defaults, strict=True)):
        if _says(each.annotation):
            yield from filter(None, declared.texts(default, path))


def _of_call(path: str, call: ast.Call, declared: _Declared) -> Iterator[Found]:
    name = call.func.id if isinstance(call.func, ast.Name) else getattr(call.func, "attr", "")
    if name == "evolve":  # what is evolved is some declaration: its fields go by the same names
        yield from _given(path, call, [("", False), *((key, True) for key in declared.fields)], declared)
    for parameters in declared.parameters.get(name, ()):
        yield from _given(path, call, parameters, declared)


def _given(path: str, call: ast.Call, parameters: Parameters, declared: _Declared) -> Iterator[Found]:
    named = {each.arg: each.value for each in call.keywords if each.arg}
    given = dict(zip((key for key, _ in parameters), call.args, strict=False)) | named
    where = f"{path}:{call.lineno}"
    if "plural" in given and "text" in given:
        ones, many = list(declared.texts(given["text"], path)), list(declared.texts(given["plural"], path))
        if len(ones) != len(many):
            raise Failed(f"{where}: a text must stand beside its plural, or both have a name in the module.")
        yield from (Found(*pair, where) for pair in zip(ones, many, strict=True))
        return
    for key, is_message in parameters:
        if is_message and key in given:
            yield from (Found(text, where=where) for text in declared.texts(given[key], path) if text)


def _of_template(path: Path) -> Iterator[Found]:
    tree = create_app(Book()).jinja_env.parse(path.read_text(encoding="utf-8"))
    calls = [(each.args[0], _plural(each)) for each in tree.find_all(nodes.Call) if _calls_say(each)]
    filters = [(each.node, "") for each in tree.find_all(nodes.Filter) if each.name == "say"]
    for node, plural in (*calls, *filters):
        for each in _said(node):
            yield Found(each.value, plural, where=f"{shown(path)}:{each.lineno}")


def _calls_say(call: nodes.Call) -> bool:
    return isinstance(call.node, nodes.Name) and call.node.name == "say" and bool(call.args)


def _plural(call: nodes.Call) -> str:
    given = (*call.args[1:2], *(each.value for each in call.kwargs if each.key == "plural"))
    return next((each.value for each in given if isinstance(each, nodes.Const)), "")


def _said(node: nodes.Expr | None) -> Iterator[nodes.Const]:
    """The constant texts that an expression of a template may come to."""
    match node:
        case nodes.Const(value=str()):
            yield node
        case nodes.CondExpr(expr1=one, expr2=other) | nodes.Or(left=one, right=other):
            yield from _said(one)
            yield from _said(other)
        case nodes.Getitem(node=nodes.Dict(items=items)):
            for each in items:
                yield from _said(each.value)
        case _:
            return
