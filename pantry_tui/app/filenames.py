"""The rest of a file's name, as far as what lies there settles it. No textual here."""

from __future__ import annotations

import os
from collections.abc import Sequence
from itertools import islice, takewhile

#: Of a folder with more entries no more are looked at.
MOST = 5_000


def rest_of(typed: str, endings: Sequence[str]) -> str:
    """What Tab adds to a path as it was typed: as much as all files that fit have in common, else
    the first of them; a folder ends with its separator. "" where nothing fits. Files fit that have
    one of the endings; those that begin with a full stop once that is typed."""
    folder, begun = os.path.split(typed)
    found = _fitting(os.path.expanduser(folder) or ".", begun, tuple(endings))
    if not found:
        return ""
    # They stand in order, so that what the first and the last share, all share.
    pairs = zip(found[0], found[-1], strict=False)
    shared = sum(1 for _ in takewhile(lambda pair: pair[0] == pair[1], pairs))
    return found[0][len(begun) : shared] or found[0][len(begun) :]


def _fitting(folder: str, begun: str, endings: tuple[str, ...]) -> list[str]:
    """Names in a folder that begin so, in order; none of one that cannot be read."""
    try:
        with os.scandir(folder) as entries:
            return sorted(
                one.name + (os.sep if one.is_dir() else "")
                for one in islice(entries, MOST)
                if one.name.startswith(begun)
                and (begun or not one.name.startswith("."))
                and (one.is_dir() or one.name.lower().endswith(endings))
            )
    except (OSError, ValueError):
        return []
