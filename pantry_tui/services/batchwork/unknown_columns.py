"""The columns of a household's own list that are nothing here: what stands in them is kept in the
note of its row, under the name of the column, so that a lid that bulged is read as it was written.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from pantry_tui.services.batchwork.detail_columns import named_by

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
#: Whether all is well.
_ASKS = re.compile(r"\b(?:ok|okay|good|safe|fine|right|sound|correct)\b(?: to \w+)?\W*$")
#: Headings over the time of a process that may be said of something else as well (the least that is
#: in stock, the hours of a drying), so that they name no detail of its record.
_TIME = re.compile(
    r"(?:mins?|minutes?|minuten|duration|dauer|zeit|kochzeit|einkochzeit|pt|timer|time|"
    r"process(?:ing|ed)?|canning|boil(?:ed|ing)?|cook(?:ed|ing)?)"
    r"(?: (?:for|time|timer|duration|min|mins|minutes))?"
)
_MINUTES = re.compile(r"(\d{1,3})(?: ?(?:m|min|mins|minutes?|minuten|'))?\.?")
_NOTHING = frozenset({"", "-", "–", "—", "?", "n/a", "na"})


def in_note(headings: Sequence[str], taken: Mapping[str, int], out: frozenset[int]) -> list[int]:
    """The columns that are kept in the note: with a heading, taken as no field, and not left out by
    a person."""
    used = {*taken.values(), *out}
    return [at for at, one in enumerate(headings) if one and at not in used and not _aside(one)]


def with_unknown(note: str, headings: Sequence[str], cells: Sequence[str], at: list[int]) -> str:
    """The note of a row with what stands in those columns."""
    told = any((named := named_by(one)) and named.field == "minutes" for one in headings)
    more = [
        f"{_name(headings[one])}: {cell if told else _in_minutes(headings[one], cell)}"
        for one in at
        if one < len(cells)
        and not _is_nothing(headings[one], cell := " ".join(cells[one].split()))
        and not re.match(r"https?://", cell)
    ]  # fmt: skip
    return "; ".join(filter(None, (" ".join(note.split()), *more)))


def _in_minutes(heading: str, cell: str) -> str:
    """("Timer", "5") -> "processed 5 minutes", where no other column has the time of the process:
    too short a time is read then as such a note is."""
    plain = " ".join(re.sub(r"[^\w]+|_", " ", heading.casefold()).split())
    found = _MINUTES.fullmatch(cell.casefold())
    return f"processed {found[1]} minutes" if found and _TIME.fullmatch(plain) else cell


def _name(heading: str) -> str:
    """Without what would part or end a clause."""
    return " ".join(re.sub(r"[:;!]|\.(?!\w)", " ", heading).split())


def _is_nothing(heading: str, cell: str) -> bool:
    """Whether a cell says nothing; under a question a dash and a mark are an answer."""
    asked = _ASKS.search(heading.casefold()) is not None
    return not cell or (cell.casefold() in _NOTHING and not asked)


def _aside(heading: str) -> bool:
    plain = " ".join(re.sub(r"[^\w#]+|_", " ", heading.casefold()).split())
    return _ASIDE.fullmatch(plain) is not None
