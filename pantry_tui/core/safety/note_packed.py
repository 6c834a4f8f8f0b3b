"""A pack in a note that is not that of the record, for notes in small letters, numbers in figures,
one clause at a time."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from pantry_tui.core.safety import note_words as terms
from pantry_tui.core.safety.denial import DENIED, affirmed

#: What it was packed in, and no more.
_LIQUID = (
    r"(?:(?:actually|really|in fact|they|were|are|was|is|all|packed|canned|put up|filled|covered|"
    r"topped up|instead) )*(?:in|with) (?:(?:their|its|own|the|light|medium|heavy|extra|very|"
    r"tomato|apple|grape|white|pineapple|orange|fruit|sugar|plain|boiling|hot) )*(juice|water|"
    r"syrup)(?: instead| really| after all)?"
)


def packed_otherwise(said: Mapping[str, str], clause: str) -> Iterator[tuple[str, str | None]]:
    """A pack that is not that of the record: the two have times of their own."""
    has = said.get("pack", "")
    liquid = re.fullmatch(_LIQUID, clause)
    if liquid is not None and liquid[1] not in said.get("form", ""):
        yield "form", liquid[1]
    if not terms.speaks(clause, ("pack", "fill", "jarred", "bottled", "raw", "cold", "hot")):
        return
    for pack, other in (("raw", r"(?:raw|cold)"), ("hot", r"hot")):
        if pack in has and re.search(rf"\b{DENIED} (?:\w+ )?{other} ?pack", clause):
            yield "pack", None
        into = rf"\b(?:packed|filled|jarred|bottled) (?:them |it |in )?{other}\b(?! (?:jars|pack))"
        if not affirmed(clause, rf"\b{other} ?pack(?:ed|ing)?\b|{into}"):
            continue
        if not has:
            yield "pack", pack
        elif pack not in has and not (pack == "raw" and "cold" in has):
            yield "pack", None
