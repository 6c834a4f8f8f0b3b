"""Lid codes in a note of something made ("fried in 2A", "with a spoon of 2A in it"): what is in it
is of that batch as well, though nobody booked it out of its jar. A choice of our own; a code that
is only named beside it ("same recipe as 2A", "stored with 2A") says nothing of what is in it."""

from __future__ import annotations

import re

from pantry_tui.core.safety.denial import DENIED, NONE

#: In small letters only where it is no unit: "with 5f" is none.
_CODE = r"(?P<code>[2-79](?:[ACDEFHJKMNPRTWXY]|[aejknprxy])(?:[2-79][A-Za-z]?)*)(?:/\d{1,4})?\b"
_MUCH = (
    r"(?:(?:half|all|some|most|the|rest|a|an|one|two|bits?|little|last|left ?overs?|"
    r"spoon(?:ful)?s?|jars?|pints?|quarts?|cups?|dash|lump|knob|splash|tbsp|tsp|oil|stock|broth|sauce|fat|brine|"
    r"juice|our|jar|batch|contents|\d+|of|from) )*"
)
_DONE = (
    r"(?:fried|cooked|browned|roasted|stirred|mixed|simmered|braised|stewed|boiled|soaked|dressed|"
    r"topped|made|finished|blended|thickened|stretched|filled|eked|baked|marinated|seasoned|"
    r"layered|tossed|prepared|sautéed|sauteed|poached)"
)
_INTO = (
    rf"(?:\b{_DONE}(?: (?:up|out|it|them|all|together))? (?:in|with|into|from|using|of)|"
    r"\b(?:using|used|added|add|plus|contains|containing|incl(?:uding|\.)?|from)|"
    r"(?<!stored )(?<!stands )(?<!kept )(?<!canned )(?<!processed )(?<!shelved )(?<!along )"
    r"(?<!together )(?<!compare )(?<!stood )(?<!same )\bwith|"
    r"\b(?:half|some|rest|bits?|little|spoon(?:ful)?s?|jars?|pints?|quarts?|cups?|dash|lump|knob|"
    r"splash|tbsp|tsp) (?:of|from))"
)
_PUT_IN = re.compile(rf"{_INTO} {_MUCH}{_CODE}", re.IGNORECASE)
_WENT_IN = re.compile(
    rf"\b{_CODE}(?: (?:was|is|all|went|got))* (?:used(?: up)?|stirred|mixed|added|put|went|emptied|"
    r"tipped|poured|goes|finished)(?: (?:up|all))? (?:in|into)\b|"
    r"\b" + _CODE.replace("<code>", "<other>") + r" (?:is |was )?(?:in|inside) (?:it|them|this)\b",
    re.IGNORECASE,
)
_DENIED = re.compile(rf"\b(?:{DENIED}|{NONE}|instead of)\b[^,;.]*$", re.IGNORECASE)
#: As it was typed: letters that are units are no code in small ones.
_TYPED = re.compile(r"[2-79](?:[ACDEFHJKMNPRTWXY]|[aejknprxy])")


def put_in(note: str) -> tuple[str, ...]:
    """The lid codes of what a note says went into it, as they are written on lids."""
    found: dict[str, None] = {}
    for pattern in (_PUT_IN, _WENT_IN):
        for one in pattern.finditer(note):
            code = next(part for part in one.groups() if part)
            if _TYPED.match(code) and not _DENIED.search(note[: one.start()]):
                found[code.upper()] = None
    return tuple(found)
