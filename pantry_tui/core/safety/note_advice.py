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
from pantry_tui.core.safety.notes import clauses, whole
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
#: The same by its age, beside whoever it is for: "for the twins, eight months".
_WHO = (
    r"(?:for|given?|giv(?:e|ing)|gave|fed|feed(?:ing)?|twins?|triplets|daughters?|sons?|grand\w+|"
    r"nephews?|nieces?|boys?|girls?|little (?:1|ones?)|toddlers?|child(?:ren)?|kids?|bub|cousin|"
    r"brother|sister)"
)
_FEW_MONTHS = (
    r"(?:\b(?:[1-9]|1[01])[ -]?(?:months?|mths?|mos?)\b|\b(?:half a year|0\.5 (?:a )?year)\b)"
)
_UNDER_A_YEAR = (
    rf"\b{_WHO}\b(?: [\w']+){{0,4}} ?[;,(]* ?(?:(?:is|are|aged|now|who|only|just|not yet|barely|"
    rf"at|of|our|my|the) )*{_FEW_MONTHS}(?! (?:ago|from|in|on|after|later|shelf|or so))|"
    r"\bweaning\b|\bfirst (?:solids?|solid foods?|spoonfuls?|porridge|pap)\b|\b(?:breast|"
    r"bottle) ?fed\b|"
    r"\bteething\b|\b(?:under|below|before|not yet|less than) (?:(?:a|1|the|his|her|their|first) )+"
    r"(?:years?|yr|birthday)\b"
)
#: Of no child: "good for the next 8 months".
_OF_A_STOCK = r"\b(?:good|keeps?|lasts?|enough|kept|ready|best|use|stock|supply|next|coming) for\b"
#: Old dried food smells so; mould smells of must.
_STALE = (
    r"\b(?:smells?|smelling|smelt|tastes?|aroma|scent)(?: (?:a bit|more|only|rather|just))* "
    r"(?:like|of) (?:old )?(?:hay|straw|dust|grass|cardboard|paper|nothing)\b|"
    r"\b(?:smells?|tastes?|gone|is|are) (?:a bit |rather )?(?:stale|dusty)\b|\bhay (?:like|smell)"
)
_LOST_ITS_AROMA = (
    "old dried food smells so: it is past its best. What smells of must or mould is discarded."
)
_DRY = frozenset({Method.DRIED, Method.FREEZE_DRIED})
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
    every = tuple(clauses(batch.note))
    # INSPQ Quebec; US CDC and AAP, from memory.
    babies = [typed for typed, clause in every if honey and says(_BABY, clause)]
    together = "; ".join(clause for _, clause in every)
    young = honey and re.search(_UNDER_A_YEAR, re.sub(_OF_A_STOCK, " ", together))
    for typed in babies or ([whole(batch.note)] if young else []):
        yield f"{QUOTES}{typed!r}: {NO_HONEY}", Verdict.SOUND
    for typed, clause in every:
        if batch.method in _DRY and says(_STALE, clause):
            yield f"{QUOTES}{typed!r}: {_LOST_ITS_AROMA}", Verdict.PAST_BEST
        if batch.method is Method.FROZEN and says(_UNSEALED, clause):
            yield f"{QUOTES}{typed!r}: {_WRAP_IT}", Verdict.EAT_SOON
