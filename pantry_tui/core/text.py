"""Text that people typed, made fit to stand on one line of a terminal."""

from __future__ import annotations

#: Marks that turn the writing direction of what follows them.
_TURNING = frozenset(map(chr, (*range(0x202A, 0x202F), *range(0x2066, 0x206A), 0x200E, 0x200F)))


def clean(text: str) -> str:
    """One line without control characters or marks that turn the writing direction."""
    kept = (char if char.isprintable() else " " for char in text if char not in _TURNING)
    return " ".join("".join(kept).split())
