"""The faults: each a small change of the syntax tree that a person could have made by mistake."""

from __future__ import annotations

import ast
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

# Not code that runs, or nothing whose loss could be seen.
_SKIPPED_FIELDS = {"annotation", "returns", "decorator_list", "type_params", "bases"}
_SKIPPED_NODES = (ast.Assert, ast.Import, ast.ImportFrom)
_FUNCTIONS = (ast.FunctionDef, ast.AsyncFunctionDef)
_SKIPPED_KEYWORDS = {"strict", "maxsize", "init", "repr", "compare"}

_COMPARED: dict[type[ast.cmpop], tuple[type[ast.cmpop], ...]] = {
    ast.Eq: (ast.NotEq,),
    ast.NotEq: (ast.Eq,),
    ast.Lt: (ast.LtE, ast.GtE),
    ast.LtE: (ast.Lt, ast.Gt),
    ast.Gt: (ast.GtE, ast.LtE),
    ast.GtE: (ast.Gt, ast.Lt),
    ast.Is: (ast.IsNot,),
    ast.IsNot: (ast.Is,),
    ast.In: (ast.NotIn,),
    ast.NotIn: (ast.In,),
}
_RECKONED: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.FloorDiv: ast.Mult,
    ast.Mod: ast.Mult,
    ast.BitAnd: ast.BitOr,
    ast.BitOr: ast.BitAnd,
}
_NAMED = {"min": "max", "max": "min", "any": "all", "all": "any"}
_SHOWN = 40
_DROPPED = (ast.AugAssign, ast.Raise, ast.Continue, ast.Break, ast.Delete)


@dataclass(frozen=True, eq=False)
class Fault:
    """One change: `parent.field` (or its item `index`) becomes `new`.

    It is part of `statement`, `within` a function or class (Class.method; "" for the module);
    `called`: it runs when a function is called and not when its module is loaded.
    """

    parent: ast.AST
    field: str
    index: int | None
    new: ast.AST
    statement: ast.stmt
    line: int
    within: str
    called: bool

    def put(self) -> ast.AST:
        """Make the change in the tree; what was there before."""
        held: Any = getattr(self.parent, self.field)
        old: ast.AST
        if self.index is None:
            old = held
            setattr(self.parent, self.field, self.new)
        else:
            old, held[self.index] = held[self.index], self.new
        return old

    def take_back(self, old: ast.AST) -> None:
        if self.index is None:
            setattr(self.parent, self.field, old)
        else:
            getattr(self.parent, self.field)[self.index] = old

    def change(self) -> tuple[str, str]:
        """What differs in the statement, before and after, as one would write it."""
        before = ast.unparse(self.statement)
        old = self.put()
        after = "pass" if old is self.statement else ast.unparse(self.statement)
        if old is self.statement and not isinstance(self.new, ast.Pass):
            after = ast.unparse(self.new)
        self.take_back(old)
        return _differing(before, after)

    def said(self, file: str, why: str = "") -> str:
        """Where it is and what it changes, as it is printed."""
        before, after = self.change()
        return f"  {file}:{self.line} {self.within}{why}\n    - {before}\n    + {after}"

    def lines(self) -> range:
        """The lines of the statement; of one with a body, those before the body."""
        body = getattr(self.statement, "body", None)
        last = body[0].lineno - 1 if isinstance(body, list) and body else self.statement.end_lineno
        return range(self.statement.lineno, max(self.statement.lineno, last or 0) + 1)


def _differing(before: str, after: str) -> tuple[str, str]:
    """The lines that differ, as one each; of a long one, what stands about the difference."""
    olds, news = before.splitlines(), after.splitlines()
    start = _alike(olds, news)
    olds, news = olds[start:], news[start:]
    end = _alike(olds[::-1], news[::-1])
    old, new = (
        " ".join(line.strip() for line in lines[: len(lines) - end]) for lines in (olds, news)
    )
    first = _alike(old, new)
    last = min(_alike(old[::-1], new[::-1]), min(len(old), len(new)) - first)
    return _about(old, first, last), _about(new, first, last)


def _about(text: str, alike_before: int, alike_after: int) -> str:
    """What differs, and enough of both sides to know it by."""
    start, end = alike_before - _SHOWN, len(text) - alike_after + _SHOWN
    begun, ended = "... " if start > 0 else "", " ..." if end < len(text) else ""
    return f"{begun}{text[max(0, start) : end]}{ended}"


def _alike(some: Sequence[str], others: Sequence[str]) -> int:
    """How many at the start are the same."""
    pairs = enumerate(zip(some, others, strict=False))
    return next((n for n, (one, other) in pairs if one != other), min(len(some), len(others)))


def faults(tree: ast.Module) -> list[Fault]:
    """Every fault of a module, in the order of its lines."""
    return sorted(_in(tree, None, "", False), key=lambda one: one.line)


def _in(parent: ast.AST, statement: ast.stmt | None, within: str, called: bool) -> Iterator[Fault]:
    for field, value in ast.iter_fields(parent):
        if field in _SKIPPED_FIELDS:
            continue
        runs = called or (isinstance(parent, _FUNCTIONS) and field == "body")
        for index, node in _nodes(value):
            if isinstance(node, _SKIPPED_NODES) or _never_seen(node):
                continue
            inside = node if isinstance(node, ast.stmt) else statement
            if inside is not None:
                line = getattr(node, "lineno", inside.lineno)
                for new in _instead(node, parent, field):
                    if not hasattr(new, "lineno"):
                        ast.fix_missing_locations(ast.copy_location(new, node))
                    yield Fault(parent, field, index, new, inside, line, within, runs)
            yield from _in(node, inside, _named(node, within), runs)


def _named(node: ast.AST, within: str) -> str:
    if isinstance(node, (*_FUNCTIONS, ast.ClassDef)):
        return f"{within}.{node.name}".lstrip(".")
    return within


def _never_seen(node: ast.AST) -> bool:
    """What only a type checker reads, and how a dataclass is made."""
    if isinstance(node, ast.keyword):
        return node.arg in _SKIPPED_KEYWORDS
    return (
        isinstance(node, ast.If)
        and isinstance(node.test, ast.Name)
        and node.test.id == "TYPE_CHECKING"
    )


def _nodes(value: object) -> Iterator[tuple[int | None, ast.AST]]:
    if isinstance(value, ast.AST):
        yield None, value
    elif isinstance(value, list):
        yield from ((n, one) for n, one in enumerate(value) if isinstance(one, ast.AST))


def _instead(node: ast.AST, parent: ast.AST, field: str) -> Iterator[ast.AST]:
    """What could stand in a node's place."""
    if field in ("test", "ifs", "guard") and isinstance(node, ast.expr):
        yield from _condition(node, field)
    make = _MAKERS.get(type(node))
    if make is not None:
        yield from make(node, parent)


def _condition(node: ast.expr, field: str) -> Iterator[ast.AST]:
    if field != "test":
        yield ast.Constant(True)
    # These are turned round by the fault of their own.
    own = isinstance(node, (ast.Compare, ast.BoolOp, ast.Constant))
    if not own and not (isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.Not)):
        yield ast.UnaryOp(ast.Not(), node)


def _compare(node: ast.Compare, _: ast.AST) -> Iterator[ast.AST]:
    for n, op in enumerate(node.ops):
        for other in _COMPARED[type(op)]:
            ops = [*node.ops[:n], other(), *node.ops[n + 1 :]]
            yield ast.Compare(node.left, ops, node.comparators)


def _bool_op(node: ast.BoolOp, _: ast.AST) -> Iterator[ast.AST]:
    yield ast.BoolOp(ast.Or() if isinstance(node.op, ast.And) else ast.And(), node.values)
    for n in range(len(node.values)):
        rest = _without(node.values, n)
        yield rest[0] if len(rest) == 1 else ast.BoolOp(node.op, rest)


def _unary_op(node: ast.UnaryOp, _: ast.AST) -> Iterator[ast.AST]:
    if isinstance(node.op, (ast.Not, ast.USub)):
        yield node.operand


def _bin_op(node: ast.BinOp, _: ast.AST) -> Iterator[ast.AST]:
    other = _RECKONED.get(type(node.op))
    if other is not None:
        yield ast.BinOp(node.left, other(), node.right)


def _constant(node: ast.Constant, parent: ast.AST) -> Iterator[ast.AST]:
    # A negative one stands for "none" as a rule: it loses its sign, and that is enough.
    if isinstance(parent, ast.UnaryOp) and isinstance(parent.op, ast.USub):
        return
    if isinstance(node.value, bool):
        yield ast.Constant(not node.value)
    elif isinstance(node.value, int):
        yield from (ast.Constant(node.value + step) for step in (1, -1))
    elif isinstance(node.value, float):
        yield from (ast.Constant(node.value * factor + 0.1) for factor in (1.5, 0.5))


def _call(node: ast.Call, _: ast.AST) -> Iterator[ast.AST]:
    if isinstance(node.func, ast.Name) and node.func.id in _NAMED:
        other = ast.copy_location(ast.Name(_NAMED[node.func.id], ast.Load()), node.func)
        yield ast.Call(other, node.args, node.keywords)
    for n, keyword in enumerate(node.keywords):
        if keyword.arg is not None and keyword.arg not in _SKIPPED_KEYWORDS:
            yield ast.Call(node.func, node.args, _without(node.keywords, n))


def _items(
    node: ast.Tuple | ast.List | ast.Set, parent: ast.AST, make: Callable[[list[ast.expr]], ast.AST]
) -> Iterator[ast.AST]:
    # A tuple of types, or of what several names are given, cannot be shorter.
    several = isinstance(parent, ast.Assign) and isinstance(parent.targets[0], ast.Tuple)
    if several or isinstance(parent, ast.Subscript):
        return
    if len(node.elts) > 1:
        yield from (make(_without(node.elts, n)) for n in range(len(node.elts)))


def _tuple(node: ast.Tuple, parent: ast.AST) -> Iterator[ast.AST]:
    if isinstance(node.ctx, ast.Load):
        yield from _items(node, parent, lambda rest: ast.Tuple(rest, ast.Load()))


def _list(node: ast.List, parent: ast.AST) -> Iterator[ast.AST]:
    if isinstance(node.ctx, ast.Load):
        yield from _items(node, parent, lambda rest: ast.List(rest, ast.Load()))


def _set(node: ast.Set, parent: ast.AST) -> Iterator[ast.AST]:
    yield from _items(node, parent, ast.Set)


def _dict(node: ast.Dict, _: ast.AST) -> Iterator[ast.AST]:
    if len(node.keys) > 1:
        for n in range(len(node.keys)):
            yield ast.Dict(_without(node.keys, n), _without(node.values, n))


def _return(node: ast.Return, _: ast.AST) -> Iterator[ast.AST]:
    if node.value is not None and not _is_none(node.value):
        yield ast.Return(ast.Constant(None))


def _expr(node: ast.Expr, _: ast.AST) -> Iterator[ast.AST]:
    if not isinstance(node.value, (ast.Constant, ast.Yield)):
        yield ast.Pass()


def _assign(node: ast.Assign, _: ast.AST) -> Iterator[ast.AST]:
    if all(isinstance(target, (ast.Attribute, ast.Subscript)) for target in node.targets):
        yield ast.Pass()


def _drop(_node: ast.stmt, _: ast.AST) -> Iterator[ast.AST]:
    yield ast.Pass()


def _is_none(node: ast.expr) -> bool:
    return isinstance(node, ast.Constant) and node.value is None


def _without(some: list[Any], n: int) -> list[Any]:
    return [*some[:n], *some[n + 1 :]]


_MAKERS: dict[type[ast.AST], Callable[[Any, ast.AST], Iterator[ast.AST]]] = {
    ast.Compare: _compare,
    ast.BoolOp: _bool_op,
    ast.UnaryOp: _unary_op,
    ast.BinOp: _bin_op,
    ast.Constant: _constant,
    ast.Call: _call,
    ast.Tuple: _tuple,
    ast.List: _list,
    ast.Set: _set,
    ast.Dict: _dict,
    ast.Return: _return,
    ast.Expr: _expr,
    ast.Assign: _assign,
    **dict.fromkeys(_DROPPED, _drop),
}
