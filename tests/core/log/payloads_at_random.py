"""Payloads of every kind, with every field said and unsaid."""

from __future__ import annotations

from dataclasses import fields, is_dataclass
from datetime import date
from enum import Enum
from fractions import Fraction
from types import NoneType, UnionType
from typing import Any, get_args, get_origin, get_type_hints

from hypothesis import strategies as st

from pantry_tui.core.amounts import Amount
from pantry_tui.core.log.payloads import Payload

_PLAIN: dict[Any, st.SearchStrategy[Any]] = {
    str: st.text(max_size=8),
    int: st.integers(-10_000, 10_000),
    float: st.floats(allow_nan=False, allow_infinity=False, width=32),
    bool: st.booleans(),
    date: st.dates(),
    Amount: st.builds(
        Amount,
        st.fractions(Fraction(1, 999), 1000, max_denominator=999),
        st.sampled_from(["", "lb", "oz", "ml", "fl oz", "quart"]),
    ),
}


def of(kind: Any) -> st.SearchStrategy[Any]:
    """Any value of a type that a payload's field may have."""
    if kind in _PLAIN:
        return _PLAIN[kind]
    if get_origin(kind) is UnionType:
        return st.one_of(*(st.none() if one is NoneType else of(one) for one in get_args(kind)))
    if get_origin(kind) is tuple:
        first, *more = get_args(kind)
        if more == [Ellipsis]:
            return st.lists(of(first), max_size=3).map(tuple)
        return st.tuples(*map(of, get_args(kind)))
    if get_origin(kind) is frozenset:
        return st.frozensets(of(*get_args(kind)), max_size=3)
    if isinstance(kind, type) and issubclass(kind, Enum):
        return st.sampled_from(list(kind))
    return record(kind)


def record(kind: Any) -> st.SearchStrategy[Payload]:
    hints = get_type_hints(kind)
    names = [one.name for one in fields(kind)] if is_dataclass(kind) else kind._fields
    return st.builds(kind, **{name: of(hints[name]) for name in names})
