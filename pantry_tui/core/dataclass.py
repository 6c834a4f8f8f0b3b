"""`dataclass(frozen=True, slots=True)` for a sixth of its price.

A command makes some fifty small classes before it does anything. The standard decorator compiles
six methods of each from text, which takes half a millisecond, and its module loads `inspect`, 7 ms.
Here only `__init__` is compiled and all else is shared. A type checker is shown the standard one,
and whoever asks `dataclasses.fields`, `replace` or `asdict` at run time finds no difference. What
is not done here: fields of a base class, `order`, `kw_only`, `InitVar`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from operator import attrgetter
from typing import TYPE_CHECKING, Any

__all__ = ["dataclass", "field", "replace"]

_UNSAID: Any = object()


class _Field:
    """What is said of one field."""

    __slots__ = ("compare", "default", "default_factory", "init", "repr")

    def __init__(
        self,
        *,
        default: Any = _UNSAID,
        default_factory: Any = _UNSAID,
        init: bool = True,
        repr: bool = True,
        compare: bool = True,
    ) -> None:
        self.default, self.default_factory = default, default_factory
        self.init, self.repr, self.compare = init, repr, compare

    def said(self) -> dict[str, Any]:
        """The same, as `dataclasses.field` takes it."""
        words = {name: getattr(self, name) for name in self.__slots__}
        return {name: word for name, word in words.items() if word is not _UNSAID}


class _Standard:
    """The fields as the standard library knows them, made for whoever asks it."""

    def __get__(self, one: object, kind: Any) -> Mapping[str, Any]:
        import dataclasses

        fields = [
            (name, kind.__annotations__[name], dataclasses.field(**said.said()))
            for name, said in kind.__fields__.items()
        ]
        standard: Any = dataclasses.make_dataclass(kind.__name__, fields)
        found: Mapping[str, Any] = standard.__dataclass_fields__
        kind.__dataclass_fields__ = found
        return found


def _dataclass(*, frozen: bool = False, slots: bool = False) -> Callable[[Any], Any]:
    """Makes a class one of the fields that it annotates."""

    def made(kind: Any) -> Any:
        fields = _fields_of(kind)
        if slots:
            kind = _slotted(kind, fields)
        shared = _FROZEN if frozen else _SHARED
        # A class that has its own `__eq__` has None for `__hash__`.
        missing = {name: one for name, one in shared.items() if vars(kind).get(name) is None}
        own = {
            "__fields__": fields,
            "__match_args__": tuple(name for name, one in fields.items() if one.init),
            "__compared__": attrgetter(*(name for name, one in fields.items() if one.compare)),
            "__dataclass_fields__": _Standard(),
            "__init__": _init(kind, fields),
        }
        for name, value in (own | missing).items():
            setattr(kind, name, value)
        return kind

    return made


def _replace(one: Any, /, **changes: Any) -> Any:
    """The same with other values in some fields; of a standard dataclass too."""
    kind = type(one)
    return kind(**{name: getattr(one, name) for name in kind.__match_args__} | changes)


def _fields_of(kind: Any) -> dict[str, _Field]:
    """What is said of each field, by name, in order. Raises TypeError where a base has some."""
    if hasattr(kind, "__fields__"):
        raise TypeError(f"{kind.__name__} would inherit fields: take the standard dataclass")
    found = {}
    for name, hint in vars(kind).get("__annotations__", {}).items():
        if not hint.startswith("ClassVar"):
            said = vars(kind).get(name, _UNSAID)
            found[name] = said if isinstance(said, _Field) else _Field(default=said)
    return found


def _slotted(kind: Any, fields: Mapping[str, _Field]) -> Any:
    """The class made anew, with a slot for each field."""
    left_out = {*fields, "__dict__", "__weakref__"}
    own = {name: value for name, value in vars(kind).items() if name not in left_out}
    made = type(kind)(kind.__name__, kind.__bases__, {**own, "__slots__": tuple(fields)})
    made.__qualname__ = kind.__qualname__
    return made


def _init(kind: Any, fields: Mapping[str, _Field]) -> Any:
    """The only method that is compiled, since it is called most."""
    known: dict[str, Any] = {"_unsaid": _UNSAID}
    head, body = ["self"], []
    for name, one in fields.items():
        known[f"_set_{name}"] = _setter(vars(kind).get(name), name)
        known[f"_make_{name}"], known[f"_default_{name}"] = one.default_factory, one.default
        value = name if one.init else f"_default_{name}"
        if one.default_factory is not _UNSAID:
            head += [f"{name}=_unsaid"] if one.init else []
            made = f"_make_{name}()"
            value = f"{made} if {name} is _unsaid else {name}" if one.init else made
        elif one.init:
            head.append(name if one.default is _UNSAID else f"{name}=_default_{name}")
        body.append(f" _set_{name}(self, {value})")
    if hasattr(kind, "__post_init__"):
        body.append(" self.__post_init__()")
    exec("\n".join((f"def __init__({', '.join(head)}):", *body)), known)
    return known["__init__"]


def _setter(slot: Any, name: str) -> Callable[[Any, Any], None]:
    """How a field is filled where nothing may be set any more."""
    into: Callable[[Any, Any], None] | None = getattr(slot, "__set__", None)
    return into or (lambda one, value: object.__setattr__(one, name, value))


def _eq(self: Any, other: Any) -> Any:
    if type(other) is not type(self):
        return NotImplemented
    return self.__compared__(self) == self.__compared__(other)


def _hash(self: Any) -> int:
    return hash(self.__compared__(self))


def _repr(self: Any) -> str:
    shown = (name for name, one in self.__fields__.items() if one.repr)
    said = ", ".join(f"{name}={getattr(self, name)!r}" for name in shown)
    return f"{type(self).__qualname__}({said})"


def _refuse(self: Any, name: str, *_value: object) -> None:
    from dataclasses import FrozenInstanceError

    raise FrozenInstanceError(f"{type(self).__name__} is frozen: its {name} stays as it is")


def _reduce(self: Any) -> tuple[Any, tuple[Any, ...]]:
    return type(self), tuple(getattr(self, name) for name in self.__match_args__)


_SHARED: Mapping[str, Any] = {
    "__eq__": _eq,
    "__hash__": None,
    "__repr__": _repr,
    "__reduce__": _reduce,
}
_FROZEN: Mapping[str, Any] = {
    **_SHARED,
    "__hash__": _hash,
    "__setattr__": _refuse,
    "__delattr__": _refuse,
}

if TYPE_CHECKING:
    from dataclasses import dataclass, field, replace
else:
    dataclass, field, replace = _dataclass, _Field, _replace
