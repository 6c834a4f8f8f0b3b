"""What a note says that makes no food unsafe for everybody, and is answered with advice: honey for
a baby, a bag that stands open in a freezer. For notes in small letters, one clause at a time.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from pantry_tui.core.model import Batch
from pantry_tui.core.safety.denial import DENIED
from pantry_tui.core.safety.note_before import QUOTES
from pantry_tui.core.safety.note_look import AIR_IN, says
from pantry_tui.core.safety.notes import clauses
from pantry_tui.core.words import Method, Verdict

#: A bag that stands open to the cold of a freezer.
_UNSEALED = (
    r"^(?:no|without(?: a)?|lost (?:its|the)|broken|bad|poor) (?:seal|vacuum|lid)\b|"
    r"\b(?:seal|vacuum|zip|bag|pack|pouch|wrap(?:ping)?)s? (?:\w+ )?(?:broke\w*|failed|gone|lost|"
    r"torn|tore|split|leak\w*|burst|came (?:open|off|undone)|popped|not (?:sealed|shut|closed))\b|"
    rf"^(?:(?:is|are|was|were|it|they|all|bags?) )*(?:un ?sealed|(?:{DENIED}) (?:\w+ )?(?:sealed|"
    rf"shut|closed|wrapped))\b|{AIR_IN}|\b(?:torn|split|ripped|punctured|holed) "
    r"(?:bag|pack|wrap\w*|pouch)\b|\bhole in (?:the |1 |a )?(?:bag|pack|wrap\w*|pouch)\b"
)
#: Who is no year old. Small carrots are none.
_BABY = (
    r"\b(?:bab(?:y|ies)|infants?|new ?borns?|months? old (?:boy|girl|son|daughter|nephew|niece))\b"
    r"(?!'?s? (?:shower|carrots?|beets?|corn|leaf|leaves|spinach|potato\w*|onions?|marrows?|"
    r"cucumbers?|sitter|first birthday|cheeses?|back|led|bella|gem|artichokes?|squash|greens?|"
    r"kale|mothers?|mum\w*|moms?|dad\w*|fathers?|parents|grand\w+|gran\w*|nan|god\w+|nurse|"
    r"aunt\w*|uncle|christening|naming|party)\b)"
)
NO_HONEY = (
    "no honey before the first birthday, raw or cooked: it may hold spores of botulism, which grow "
    "in a baby alone."
)
#: data/signs.csv, torn bag.
_WRAP_IT = "air dries it out and burns it. Wrap it again and use it first."


def advised(batch: Batch) -> Iterator[tuple[str, Verdict]]:
    """A sentence for each such clause, and what the food is at best with it."""
    if not batch.note:
        return
    honey = "honey" in batch.food.name or re.search(r"\bhoney\b", batch.note.casefold())
    for typed, clause in clauses(batch.note):
        # INSPQ Quebec; US CDC and AAP, from memory.
        if honey and says(_BABY, clause):
            yield f"{QUOTES}{typed!r}: {NO_HONEY}", Verdict.SOUND
        if batch.method is Method.FROZEN and says(_UNSEALED, clause):
            yield f"{QUOTES}{typed!r}: {_WRAP_IT}", Verdict.EAT_SOON
