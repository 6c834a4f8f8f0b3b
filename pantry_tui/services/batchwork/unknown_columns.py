"""The columns of a household's own list that are nothing here: what stands in them is kept in the
note of its row, under the name of the column, so that a lid that bulged is read as it was written.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

#: They number, price, picture or file a row, and say nothing of the food.
_ASIDE = re.compile(
    r"(?:(?:row|item|batch|record|product|stock|serial|lot|jar|lid|label|shelf|box|inventory) )?"
    r"(?:id|ids|uuid|guid|sku|code|codes|bar ?code|upc|ean|isbn|index|number|no|nr)|"
    r"#|row|(?:unit |total |purchase )?(?:price|cost|costs|value)(?: each| per \w+)?|currency|tax|"
    r"urls?|links?|web ?site|photos?|pictures?|images?|files?|qr(?: code)?|"
    r"(?:created|updated|modified|time ?stamp)(?: (?:at|by|on|date))?|"
    r"(?:entered|added|edited) (?:at|by|on|date)|"
    r"last (?:updated|modified|edited)|calories|kcal|sort(?: order)?"
)
_NOTHING = frozenset({"", "-", "–", "—", "?", "n/a", "na"})


def in_note(headings: Sequence[str], taken: Mapping[str, int], out: frozenset[int]) -> list[int]:
    """The columns that are kept in the note: with a heading, taken as no field, and not left out by
    a person."""
    used = {*taken.values(), *out}
    return [at for at, one in enumerate(headings) if one and at not in used and not _aside(one)]


def with_unknown(note: str, headings: Sequence[str], cells: Sequence[str], at: list[int]) -> str:
    """The note of a row with what stands in those columns."""
    more = [
        f"{' '.join(headings[one].replace(':', ' ').split())}: {cell}"
        for one in at
        if one < len(cells) and (cell := " ".join(cells[one].split())).casefold() not in _NOTHING
        and not re.match(r"https?://", cell)
    ]  # fmt: skip
    return "; ".join(filter(None, (" ".join(note.split()), *more)))


def _aside(heading: str) -> bool:
    plain = " ".join(re.sub(r"[^\w#]+|_", " ", heading.casefold()).split())
    return _ASIDE.fullmatch(plain) is not None
