"""Where the core reads what a module assigns: who comes by there may notice a fault in it."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from tests.mutants.reach import Line
from tests.mutants.swap import assigned


@cache
def _parsed(path: str) -> ast.Module:
    return ast.parse(Path(path).read_text(encoding="utf-8"), path)


def readers(path: str, statement: ast.stmt, paths: tuple[str, ...]) -> frozenset[Line]:
    """The lines of functions in the files at `paths` that read what a statement of the module at
    `path` assigns, or what modules make of that; none where it assigns nothing by name."""
    known: set[tuple[str, str]] = set()
    new = {(path, name) for name in assigned(statement)}
    found: set[Line] = set()
    while new:
        known |= new
        made: set[tuple[str, str]] = set()
        for other in paths:
            # What begins with an underscore is its module's own.
            names = {name for of, name in new if of == other or not name.startswith("_")}
            if names:
                lines, more = _reading(other, frozenset(names))
                found |= lines
                made |= {(other, name) for name in more}
        new = made - known
    return frozenset(found)


@cache
def _reading(path: str, names: frozenset[str]) -> tuple[frozenset[Line], frozenset[str]]:
    """The lines of functions that read one of the names, and what is assigned from them."""
    lines: set[Line] = set()
    made: set[str] = set()
    for node in _parsed(path).body:
        if assigned(node):
            if any(True for _ in _reads(node, names)):
                made.update(assigned(node))
        else:
            lines.update((path, one) for one in _reads(node, names))
    return frozenset(lines), frozenset(made - names)


def _reads(node: ast.AST, names: frozenset[str]) -> Iterator[int]:
    for one in ast.walk(node):
        named = (isinstance(one, ast.Name) and one.id in names) or (
            isinstance(one, ast.Attribute) and one.attr in names
        )
        if named and isinstance(one, ast.expr) and isinstance(getattr(one, "ctx", None), ast.Load):
            yield one.lineno
