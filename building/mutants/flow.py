"""Which functions a change is felt in: its own, and all that use what it takes part in computing on import.

A name is followed through imports and through what is computed on import; a limit in a table of rules is felt wherever
the table is used.
"""

import ast
from collections.abc import Iterable, Iterator

from attrs import frozen

Definition = ast.FunctionDef | ast.AsyncFunctionDef
Function = tuple[str, str]
"""A file and a function's name in it, dotted. The name is "" for what is done on import."""
Name = tuple[str, str]
"""A file and a name at the top of it."""


@frozen
class Part:
    """A function's body, or a statement that is carried out on import."""

    function: Function
    defines: frozenset[Name]
    mentions: frozenset[Name]
    calls: frozenset[Name]


@frozen
class Felt:
    functions: frozenset[Function]
    names: frozenset[Name]
    """A test that mentions one of them sees it by itself."""


def functions_by_line(source: str) -> dict[int, str]:
    """The innermost function to whose body a line belongs; none where it is carried out on import."""
    found: dict[int, str] = {}
    for name, definition in _definitions(ast.parse(source), ""):
        for line in range(definition.body[0].lineno, (definition.end_lineno or 0) + 1):
            found[line] = name  # inner ones come later
    return found


def parts_of(file: str, source: str) -> list[Part]:
    tree = ast.parse(source)
    known, home = _known_in(tree, file), home_of(file)
    bodies = [
        _part((file, name), {(home, name)} if _is_run_by_its_name(name) else set(), each.body, known)
        for name, each in _definitions(tree, "")
    ]
    statements = [_part((file, ""), {(home, name) for name in _defined(each)}, [each], known) for each in tree.body]
    return bodies + statements


def home_of(file: str) -> str:
    """A file as the owner of names: a package is named as if it were a module."""
    return file.replace("/__init__.py", ".py")


def felt(parts: Iterable[Part], function: Function, names: Iterable[Name]) -> Felt:
    """names: those that the changed statement gives a value to, where it is carried out on import."""
    parts = list(parts)
    reached, run = set(names), set[Name]()
    if _is_run_by_its_name(function[1]):
        run.add((home_of(function[0]), function[1]))
    before = -1
    while len(reached) + len(run) != before:
        before = len(reached) + len(run)
        for part in parts:
            if part.mentions & reached or part.calls & run:
                (run if part.function[1] else reached).update(part.defines)
    users = {part.function for part in parts if part.function[1] and part.mentions & reached}
    return Felt(frozenset(users | {function}), frozenset(reached))


def defined_at(source: str, line: int) -> list[str]:
    """What the statement at the top of a module that holds this line gives a value to."""
    for statement in ast.parse(source).body:
        first = min([statement.lineno, *(each.lineno for each in getattr(statement, "decorator_list", ()))])
        if first <= line <= (statement.end_lineno or 0):
            return _defined(statement)
    return []


def names_in(file: str, source: str) -> frozenset[Name]:
    """All that a file of tests mentions, its own and what it imports."""
    tree = ast.parse(source)
    return frozenset(_mentioned([tree], _known_in(tree, file), into_functions=True))


def _is_run_by_its_name(name: str) -> bool:
    """A function at the top of a module. A method is run by other means than its class's name."""
    return bool(name) and "." not in name


def _definitions(node: ast.AST, prefix: str) -> Iterator[tuple[str, Definition]]:
    for child in ast.iter_child_nodes(node):
        inside = prefix
        if isinstance(child, Definition | ast.ClassDef):
            inside = f"{prefix}{child.name}."
            if isinstance(child, Definition):
                yield f"{prefix}{child.name}", child
        yield from _definitions(child, inside)


def _known_in(tree: ast.Module, file: str) -> dict[str, Name]:
    """What each name in a file stands for: its own, or another file's that it imports. A module is (its file, "")."""
    known = {name: (home_of(file), name) for statement in tree.body for name in _defined(statement)}
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom):
            for each in node.names:
                known[each.asname or each.name] = (node.module or "", each.name)
    return known


def _part(function: Function, defines: set[Name], statements: list[ast.stmt], known: dict[str, Name]) -> Part:
    calls = [node.func for node in _walk(statements) if isinstance(node, ast.Call)]
    called = [name for call in calls for name in _named(call, known)]
    return Part(function, frozenset(defines), frozenset(_mentioned(statements, known)), frozenset(called))


def _mentioned(nodes: Iterable[ast.AST], known: dict[str, Name], into_functions: bool = False) -> Iterator[Name]:
    for node in _walk(nodes, into_functions):
        if isinstance(node, ast.ImportFrom):
            yield from (_in_file(node.module or "", each.name) for each in node.names)
        else:
            yield from _named(node, known)


def _named(node: ast.AST, known: dict[str, Name]) -> Iterator[Name]:
    """LIMIT, or rules.LIMIT where rules is a module."""
    if isinstance(node, ast.Name) and node.id in known:
        module, name = known[node.id]
        yield (module, name) if module.endswith(".py") else _in_file(module, name)
    elif isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name) and node.value.id in known:
        module, name = known[node.value.id]
        if not module.endswith(".py"):
            yield _in_file(f"{module}.{name}", node.attr)


def _in_file(module: str, name: str) -> Name:
    return f"{module.replace('.', '/')}.py", name


def _walk(nodes: Iterable[ast.AST], into_functions: bool = False) -> Iterator[ast.AST]:
    """All below, but for annotations and, unless asked, the bodies of functions: only their headers run on import."""
    for node in nodes:
        yield node
        left = [getattr(node, "annotation", None), getattr(node, "returns", None)]
        if isinstance(node, Definition) and not into_functions:
            left += node.body
        below = (each for each in ast.iter_child_nodes(node) if not any(each is one for one in left))
        yield from _walk(below, into_functions)


def _defined(statement: ast.stmt) -> list[str]:
    if isinstance(statement, Definition | ast.ClassDef):
        return [statement.name]
    if isinstance(statement, ast.Import | ast.ImportFrom):
        return [each.asname or each.name for each in statement.names]
    within = [
        each for part in ast.walk(statement) if isinstance(part, ast.comprehension) for each in ast.walk(part.target)
    ]
    names = [node for node in ast.walk(statement) if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Store)]
    return [name.id for name in names if name not in within]  # a comprehension's own names are not the module's
