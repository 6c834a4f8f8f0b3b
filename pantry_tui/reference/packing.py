"""Frozen rows to plain tuples that marshal can hold, and back when they are asked for."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator, Mapping, Sequence
from enum import Enum, StrEnum
from typing import Any, Generic, TypeVar

K = TypeVar("K")
V = TypeVar("V")
P = TypeVar("P")


class _Words(dict[Any, Any]):
    """The value of an enum, or a tuple or frozenset of its values -> the same as members."""

    def __init__(self, kind: type[StrEnum]) -> None:
        self._kind = kind

    def __missing__(self, value: Any) -> Any:
        if isinstance(value, str):
            meant: Any = self._kind(value)
        else:
            meant = type(value)(map(self._kind, value))
        self[value] = meant
        return meant


def _plain(cell: Any) -> Any:
    """A cell without enums; equal words are one object, which marshal then writes once."""
    if isinstance(cell, Enum):
        return sys.intern(cell.value)
    if isinstance(cell, str):
        return sys.intern(cell)
    if isinstance(cell, tuple | frozenset):
        return type(cell)(map(_plain, cell))
    if cell is None or isinstance(cell, bool | int | float):
        return cell
    raise TypeError(f"{cell!r} cannot be packed")


def _has_words(cell: Any) -> bool:
    if isinstance(cell, tuple | frozenset):
        return any(map(_has_words, cell))
    return isinstance(cell, Enum)


class Packing(Generic[V]):
    """How one dataclass is packed: its fields in order; `words` name the enum of each field that
    holds a member, or a tuple or frozenset of members."""

    def __init__(self, kind: Callable[..., V], /, **words: type[StrEnum]) -> None:
        self._kind = kind
        self._fields: tuple[str, ...] = kind.__match_args__  # type: ignore[attr-defined]
        self._worded = frozenset(words)
        self._sets: dict[frozenset[Any], frozenset[Any]] = {}
        self._read = [(self._fields.index(name), _Words(enum)) for name, enum in words.items()]

    def pack(self, row: V) -> tuple[Any, ...]:
        """Raises TypeError for a cell that would not come back as it is."""
        cells = []
        for name in self._fields:
            cell = getattr(row, name)
            if name not in self._worded and _has_words(cell):
                raise TypeError(f"{name} holds an enum that its packing does not name")
            packed = _plain(cell)
            # Sets of words repeat from row to row: as one object they are written only once.
            shared = isinstance(packed, frozenset)
            cells.append(self._sets.setdefault(packed, packed) if shared else packed)
        return tuple(cells)

    def unpack(self, cells: tuple[Any, ...]) -> V:
        """The row that was packed."""
        filled = list(cells)
        for at, words in self._read:
            filled[at] = words[filled[at]]
        return self._kind(*filled)


class Rows(Sequence[V]):
    """A sequence that is loaded when it is first asked for, each row made when it is."""

    def __init__(self, load: Callable[[], Sequence[tuple[Any, ...]]], packing: Packing[V]) -> None:
        self._load, self._packing = load, packing
        self._packed: Sequence[tuple[Any, ...]] | None = None
        self._made: dict[int, V] = {}

    def _rows(self) -> Sequence[tuple[Any, ...]]:
        if self._packed is None:
            self._packed = self._load()
        return self._packed

    def __len__(self) -> int:
        return len(self._rows())

    def __getitem__(self, at: Any) -> Any:
        if isinstance(at, slice):
            return tuple(self[i] for i in range(*at.indices(len(self))))
        number = range(len(self))[
            at
        ]  # counts from the end, and is refused outside, as a tuple does
        if number not in self._made:
            self._made[number] = self._packing.unpack(self._rows()[number])
        return self._made[number]


class Lazy(Mapping[K, V]):
    """A mapping that is loaded when it is first asked, each value made from what was loaded when
    it is asked for."""

    def __init__(self, load: Callable[[], Mapping[K, P]], make: Callable[[P], V]) -> None:
        self._load: Callable[[], Mapping[K, Any]] = load
        self._make: Callable[[Any], V] = make
        self._loaded: Mapping[K, Any] | None = None
        self._made: dict[K, V] = {}

    def _all(self) -> Mapping[K, Any]:
        if self._loaded is None:
            self._loaded = self._load()
        return self._loaded

    def __getitem__(self, key: K) -> V:
        if key not in self._made:
            self._made[key] = self._make(self._all()[key])
        return self._made[key]

    def __contains__(self, key: object) -> bool:
        return key in self._all()

    def __iter__(self) -> Iterator[K]:
        return iter(self._all())

    def __len__(self) -> int:
        return len(self._all())
