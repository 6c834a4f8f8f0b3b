"""A changed tree put in the place of what is loaded, or loaded in its place."""

from __future__ import annotations

import ast
import functools
import importlib.abc
import importlib.util
import sys
from collections.abc import Sequence
from importlib.machinery import ModuleSpec, SourceFileLoader
from types import CodeType, FunctionType, ModuleType

_FUNCTION = 0x1  # what the compiler marks the code of a function with, and of a class not


def module_name(file: str) -> str:
    """("pantry_tui/core/words.py") -> "pantry_tui.core.words"."""
    return file.removesuffix("/__init__.py").removesuffix(".py").replace("/", ".")


def swap(file: str, path: str, tree: ast.Module, within: str) -> bool:
    """Give the loaded function or method that `within` begins with its code in the (changed)
    tree; False where it cannot be found."""
    module = sys.modules.get(module_name(file))
    code = _code_in(compile(tree, path, "exec"), within.split("."))
    function = _function_in(module, within.split(".")) if module is not None else None
    if code is None or function is None or function.__code__.co_name != code.co_name:
        return False
    if function.__code__.co_firstlineno != code.co_firstlineno:
        return False
    try:
        function.__code__ = code
    except ValueError:  # it reaches for other names of the function around it than before
        return False
    return True


def rebind(file: str, tree: ast.Module, statement: ast.stmt) -> bool:
    """Work out anew what a (changed) statement of the module assigns, and what the module makes of
    that, and hand it to all who have taken it; False where it is no such statement.

    What other modules have made of it stays: who is not noticed so has to be loaded anew.
    """
    module = sys.modules.get(module_name(file))
    if module is None or not any(one is statement for one in tree.body):
        return False
    changed = set(assigned(statement))
    if not changed:
        return False
    for node in tree.body[tree.body.index(statement) :]:
        names = assigned(node)
        if names and (node is statement or changed & _read(node)):
            before = {name: vars(module).get(name) for name in names}
            exec(compile(ast.Module([node], []), module.__file__ or file, "exec"), vars(module))
            for name, old in before.items():
                _hand_on(name, old, vars(module)[name])
            changed.update(names)
    return True


def assigned(node: ast.stmt) -> list[str]:
    """The names that a statement of a module gives a value."""
    if isinstance(node, ast.Assign):
        targets = node.targets
    elif isinstance(node, ast.AnnAssign) and node.value is not None:
        targets = [node.target]
    else:
        return []
    return [one.id for one in targets if isinstance(one, ast.Name)]


def _read(node: ast.AST) -> set[str]:
    return {one.id for one in ast.walk(node) if isinstance(one, ast.Name)}


def _hand_on(name: str, old: object, new: object) -> None:
    """To every module that has the old one: under its own name, or under any if it is no plain
    value, which may be the same by chance."""
    plain = old is None or isinstance(old, (int, float, str))
    for module in list(sys.modules.values()):
        if (getattr(module, "__name__", "") or "").startswith(("pantry_tui", "tests", "test_")):
            held = vars(module)
            for key in [key for key, value in held.items() if value is old]:
                if key == name or not plain:
                    held[key] = new


def _code_in(code: CodeType, names: list[str]) -> CodeType | None:
    """That of the outermost function on the way."""
    for name in names:
        inner = [one for one in code.co_consts if isinstance(one, CodeType) and one.co_name == name]
        if len(inner) != 1:
            return None
        code = inner[0]
        if code.co_flags & _FUNCTION:
            return code
    return None


def _function_in(holder: ModuleType | type, names: list[str]) -> FunctionType | None:
    for name in names:
        held = vars(holder).get(name)
        if isinstance(held, type):
            holder = held
            continue
        return _plain(held)
    return None


def _plain(held: object) -> FunctionType | None:
    """The function itself, without what stands around it."""
    if isinstance(held, property):
        held = held.fget
    elif isinstance(held, (staticmethod, classmethod)):
        held = held.__func__
    elif isinstance(held, functools.cached_property):
        held = held.func
    held = getattr(held, "__wrapped__", held)
    return held if isinstance(held, FunctionType) else None


class Finder(importlib.abc.MetaPathFinder):
    """Loads the one file from a tree in memory."""

    def __init__(self, file: str, path: str, tree: ast.Module) -> None:
        self.name, self.path, self.tree = module_name(file), path, tree

    def find_spec(
        self, fullname: str, _path: Sequence[str] | None, _target: ModuleType | None = None
    ) -> ModuleSpec | None:
        if fullname != self.name:
            return None
        loader = _Loader(fullname, self.path)
        loader.tree = self.tree
        return importlib.util.spec_from_file_location(fullname, self.path, loader=loader)


class _Loader(SourceFileLoader):
    tree: ast.Module

    def get_code(self, _fullname: str) -> CodeType:
        return compile(self.tree, self.path, "exec")
