"""The kinds of change: most are cosmic-ray's. Our own: a limit moved by 1 %, an integer by one, a condition negated."""

from ast import literal_eval
from collections.abc import Callable, Iterable, Iterator
from typing import Any, Protocol, cast

from cosmic_ray.operators import (
    binary_operator_replacement,
    boolean_replacer,
    comparison_operator_replacement,
    unary_operator_replacement,
)
from parso.grammar import load_grammar
from parso.python.tree import Number

Span = tuple[tuple[int, int], tuple[int, int]]
CONDITION_AFTER = {"if", "elif", "while"}
HOLDS_CONDITIONS = {"if_stmt", "while_stmt", "comp_if", "ternary", "test"}
KINDS = (
    *("ReplaceComparisonOperator_" + pair for pair in ("Lt_LtE", "LtE_Lt", "Gt_GtE", "GtE_Gt", "Eq_NotEq", "NotEq_Eq")),
    *("ReplaceComparisonOperator_" + pair for pair in ("Is_IsNot", "IsNot_Is")),
    *("ReplaceBinaryOperator_" + pair for pair in ("Add_Sub", "Sub_Add", "Mul_Div", "Div_Mul", "FloorDiv_Div")),
    *("ReplaceUnaryOperator_Delete_" + name for name in ("Not", "USub")),
    *("ReplaceAndWithOr", "ReplaceOrWithAnd"),
)


ROOM_FOR_ROUNDING = tuple(10.0**-power for power in range(9, 17))
"""A power of ten so small is no limit of the trade's: a hundredth more or less of it shows nowhere."""


Node = Any
"""A node or a leaf of parso's tree, whose own annotations do not say what it holds."""


class Operator(Protocol):
    """One kind of change. It may change the node itself, and answers it or another in its place."""

    def mutation_positions(self, node: Node) -> Iterable[Span]: ...

    def mutate(self, node: Node, index: int) -> Node: ...


class Negated:
    """The whole condition of an if, a while, a choice or a filter, not its first term alone."""

    def mutation_positions(self, node: Node) -> Iterator[Span]:
        for at in _conditions(node):
            yield node.children[at].start_pos, node.children[at].end_pos

    def mutate(self, node: Node, index: int) -> Node:
        at = _conditions(node)[index]
        node.children[at] = parsed(f" not ({node.children[at].get_code(include_prefix=False)})")
        return node


class Moved:
    """An integer moved by one, up or down, any other number by 1 %; by both where it stands outside functions."""

    def mutation_positions(self, node: Node) -> Iterator[Span]:
        for _ in _moves(node):
            yield node.start_pos, node.end_pos

    def mutate(self, node: Node, index: int) -> Node:
        return Number(_moves(node)[index], node.start_pos, prefix=node.prefix)


_GRAMMAR = cast(Any, load_grammar())


def parsed(source: str) -> Node:
    return _GRAMMAR.parse(source)


def _conditions(node: Node) -> list[int]:
    if node.type not in HOLDS_CONDITIONS:
        return []
    return [
        at + 1
        for at, child in enumerate(node.children[:-1])
        if getattr(child, "value", None) in CONDITION_AFTER and "TYPE_CHECKING" not in node.children[at + 1].get_code()
    ]


def _moves(node: Node) -> list[str]:
    if not isinstance(node, Number):
        return []
    value = literal_eval(node.value)
    if value in ROOM_FOR_ROUNDING:
        return []
    by_one = [repr(value + 1), repr(value - 1)] if isinstance(value, int) else []
    by_a_hundredth = [repr(float(f"{value * factor:.12g}")) for factor in (1.01, 0.99)] if value else []
    if not by_one:
        return by_a_hundredth or ["0.01"]
    return by_one if node.search_ancestor("funcdef") else by_one + by_a_hundredth


def _every() -> tuple[Operator, ...]:
    known: dict[str, Callable[[], Operator]] = {
        each.__name__: each
        for each in (
            *comparison_operator_replacement.operators(),
            *binary_operator_replacement.operators(),
            *unary_operator_replacement.operators(),
            *(boolean_replacer.ReplaceAndWithOr, boolean_replacer.ReplaceOrWithAnd),
        )
    }
    return (*(known[kind]() for kind in KINDS), Negated(), Moved())


OPERATORS = _every()
