"""The log as text: the one reader and writer of an event's JSON.

A payload is written as an object of its fields, without those that hold their default. Dates are
ISO, enums their words, amounts exact ("113/3 lb"), tuples arrays, small tuples of ours objects.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from datetime import date
from enum import Enum
from functools import cache
from types import NoneType, UnionType
from typing import Any, get_args, get_origin, get_type_hints

from pantry_tui.core.amounts import Amount, exact_amount
from pantry_tui.core.log.payloads import BY_NAME, Payload
from pantry_tui.core.model import FoodFacts

_Step = Callable[[Any], Any]


#: Fields that came to a record later and are left out where they hold their default, so that an
#: older log goes out as it came in.
_LATER: dict[Any, dict[str, Any]] = {FoodFacts: {"told": False}}


def write(payload: Payload) -> str:
    """A payload as one line of JSON, its keys sorted."""
    return json.dumps(
        _writer(_hashable(type(payload)))(payload), ensure_ascii=False, sort_keys=True
    )


def read(did: str, text: str) -> Payload:
    """What `write` wrote for an event of that name. Raises ValueError, KeyError, TypeError for
    what makes no sense."""
    payload: Payload = _reader(_hashable(BY_NAME[did]))(json.loads(text))
    return payload


def _hashable(kind: Any) -> Any:
    """A class, for the caches below."""
    return kind


@cache
def _writer(kind: Any) -> _Step:
    """How a value of a type becomes JSON."""
    base = _without_none(kind)
    if base is Amount:
        return lambda value: None if value is None else value.exact
    if base is date:
        return lambda value: None if value is None else value.isoformat()
    inner = _items(base)
    if inner is not None:
        each = _writer(inner)
        return lambda value: None if value is None else [each(one) for one in value]
    if get_origin(base) is frozenset:
        return sorted
    if issubclass(base, Enum):
        return lambda value: None if value is None else value.value
    if _is_record(base):
        return _record_writer(base)
    return lambda value: value


@cache
def _reader(kind: Any) -> _Step:
    """How JSON becomes a value of a type."""
    base = _without_none(kind)
    optional = base is not kind

    def unless_none(step: _Step) -> _Step:
        return (lambda value: None if value is None else step(value)) if optional else step

    if base is Amount:
        return unless_none(exact_amount)
    if base is date:
        return unless_none(date.fromisoformat)
    inner = _items(base)
    if inner is not None:
        each = _reader(inner)
        return unless_none(lambda value: tuple(each(one) for one in value))
    if get_origin(base) is frozenset:
        return frozenset
    if issubclass(base, Enum):
        return unless_none(base)
    if _is_record(base):
        return _record_reader(base)
    return unless_none(_plain(base))


def _plain(base: Any) -> _Step:
    """Text, numbers and yes or no, each only as itself: a log that says otherwise is hurt."""
    allowed = (int, float) if base is float else (base,)

    def step(value: Any) -> Any:
        if not isinstance(value, allowed) or (isinstance(value, bool) and base is not bool):
            raise TypeError(f"{value!r} is no {base.__name__}")
        return value

    return step


def _record_writer(kind: Any) -> _Step:
    steps = [(name, _writer(hint), default) for name, hint, default in _fields(kind)]

    def step(value: Any) -> dict[str, Any]:
        return {
            name: write_one(held)
            for name, write_one, default in steps
            if (held := getattr(value, name)) != default
        }

    return step


def _record_reader(kind: Any) -> _Step:
    steps = {name: _reader(hint) for name, hint, _ in _fields(kind)}

    def step(value: dict[str, Any]) -> Any:
        return kind(**{name: steps[name](held) for name, held in value.items()})

    return step


#: Stands for "has no default".
_ALWAYS = object()


def _fields(kind: Any) -> list[tuple[str, Any, Any]]:
    """(name, type, default) of each field of a small tuple or dataclass of ours."""
    hints = get_type_hints(kind)
    defaults = getattr(kind, "_field_defaults", _LATER.get(kind, {}))
    return [(name, hints[name], defaults.get(name, _ALWAYS)) for name in kind.__match_args__]


def _is_record(kind: Any) -> bool:
    return hasattr(kind, "__match_args__")


def _without_none(kind: Any) -> Any:
    """(`X | None`) -> X."""
    if isinstance(kind, UnionType):
        (base,) = [one for one in get_args(kind) if one is not NoneType]
        return base
    return kind


def _items(kind: Any) -> Any:
    """(`tuple[X, ...]`) -> X; a pair of texts is read like a list of them."""
    if get_origin(kind) is not tuple:
        return None
    return get_args(kind)[0]
