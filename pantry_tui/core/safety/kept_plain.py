"""What people say plainly of cooked and fresh food that stood warm, was never hot through, or met
something raw, with no hour and no word of the trade in it: "sat out through the party", "third
time heated". For notes in small letters, one clause at a time. Which words are listened for is a
choice of our own, the stricter one.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from pantry_tui.core.keeping.warm import WARM_MIN
from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.safety.note_clock import minutes_by_the_day
from pantry_tui.core.safety.note_words import PURPOSE

_EVENT = (
    r"(?:party|match|game|film|movie|wedding|reception|concert|show|meeting|picnic|barbecue|bbq|"
    r"buffet|service|evening|afternoon|morning|night|day|meal|feast|speeches|dancing|fair|funeral)"
)
_LONG = (
    r"(?:all (?:evening|afternoon|morning|night|day)|(?:for|through|throughout|during)"
    r"(?: out)? (?:the|an?|1)(?: whole| entire| rest of the)? "
    rf"{_EVENT}|(?:the )?(?:whole|entire) {_EVENT}|over ?night)"
)
_WHERE = (
    r"(?:(?:on|in|by|at) (?:the |a |our |my )?(?:hot |warm |parked |kitchen |dining )?(?:car|boot|"
    r"trunk|van|table|counter|worktop|side|sideboard|buffet|kitchen|porch|stove|hob|cooker|bench|"
    r"garden|sun|office|desk|bag|school bag|rucksack))"
)
_COLD = (
    r"\b(?:fridge|refrigerator|freezer|ice|iced|cool ?(?:box|bag|er)|chill\w*|cold|snow|cellar)\b"
)
_HOT = r"\b(?:slow cooker|kept hot|hot plate|simmer\w*|warming tray|bain marie|oven|cook\w*)\b"
_WARM = (
    rf"\b(?:sat|stood|left|stayed|been|spent|was|were) (?:out|{_WHERE}) {_LONG}\b|"
    rf"^{_WHERE} {_LONG}\b|"
    r"\b(?:luke ?warm|tepid|warm) (?:till?|until) (?:the |we |i |they )?\w+ "
    r"(?:ended|was over|finished|left|came|got|went|home|back)\b|"
    rf"\b(?:found|forgot\w*|discovered|spotted)(?: (?:it|them|this|the \w+))? (?:still )?{_WHERE} "
    r"(?:this morning|in the morning|next (?:day|morning)|the (?:next|following) (?:day|morning)|"
    r"at (?:dawn|breakfast)|today|hours later)\b|"
    r"\b(?:thermos|flask|vacuum flask|hay ?box|wonder ?bag)(?: \w+){0,2} (?:over ?night|all "
    r"(?:night|"
    r"day))\b|"
    r"\b(?:in|through) the (?:temperature )?danger zone\b(?! (?:less|under|for (?:a|10|20|30) "
    r"min))|"
    r"\b(?:buffet|party|picnic|wedding|barbecue|bbq|potluck) (?:left ?overs?|rest|remains) from "
    r"(?:noon|lunch|mid ?day|the (?:afternoon|morning|day)|yesterday|earlier|1[0-2]|[1-9])\b"
)
#: In an oven that was off it only cools down: in two clauses as in one.
_OFF = r"(?:off|cold|(?:switch|turn|shut)\w* off|not on|unlit|out)"
_DARK_HOURS = (
    r"(?:over ?night|all night|(?:till?|until) (?:the )?(?:next )?(?:morning|day|breakfast)|"
    r"(?:the )?next (?:day|morning)|all day|"
    r"(?:till?|until) (?:the )?(?:guests|everyone|they|we|people|kids) (?:\w+ )?(?:came|come|got|"
    r"arrived|left|turned up))"
)
_OVEN_OFF = (
    rf"\b(?:in|inside)(?: the| a| our| my)?(?: {_OFF}| warm| hot)? (?:oven|stove|grill|cooker)\b"
    rf"(?: (?:was|is|which|that|with|the|heat|gas|it|and|then|left|door|shut|closed))* {_OFF}\b"
    rf"(?: (?:and|left|it|them|forgotten|stayed|stood|for|there))* {_DARK_HOURS}\b|"
    rf"\b(?:in|inside)(?: the| a| our| my)? (?:{_OFF}|cooling) (?:oven|stove|grill|cooker) "
    rf"(?:\w+ )?{_DARK_HOURS}\b|"
    rf"\b(?:in|inside)(?: the| a| our| my)? (?:oven|stove|grill|cooker) {_DARK_HOURS}"
    rf"(?: (?:with|and|but|the|heat|gas|it|was|oven))* {_OFF}\b"
)
#: Set out for people, and from which hour to which.
_SET_OUT = (
    r"(?:^|\b(?:was|were|left|sat|stood|put|set|laid|been|it|them|all|dishes?|platters?) )"
    r"(?:out|on (?:the |our )?(?:table|buffet|sideboard|counter|side)) (?:for|at|during|through|in)"
    rf" (?:(?:the|a|our|my|his|her|birthday|garden|office|family|christmas) )*{_EVENT}\b"
)
_PEOPLE = r"\b(?:people|guests|persons|portions|servings|kids|children|adults|years?|boxes|jars)\b"
_COOL = (
    r"\b(?:never (?:got|came|went|reached|rose|made it)|did not (?:get|come|go|reach)|(?:only )?"
    r"(?:got|came|reached|went) only|only (?:got|came|reached|went)|reached only)"
    r"(?: (?:above|over|to|up to|past|hotter than|as far as|it))* ((?:8|9|10|11|12|13|14|15)\d|"
    r"[4-6]\d)"
    r"\b(?! ?(?:min|hour|day|week|lb|kg|g\b|oz|people|%|jars?|servings?|portions?|psi))"
)
_AGAIN = (
    r"\b(?:second|2nd|third|3rd|fourth|4th|umpteenth|fifth) (?:time|go|round) (?:it is |it was |"
    r"they "
    r"were |being |of )?(?:re ?)?(?:heat|warm)(?:ed|ing)(?: up)?\b"
)
_RAW = (
    r"\braw (?:\w+ )?(?:marinade|juices?|blood|drippings?) (?:\w+ )?(?:poured|spooned|brushed|"
    r"dripped|"
    r"leaked|ran|got|went|drizzled|over|on|into)\b|"
    r"\b(?:poured|spooned|brushed|dripped|drizzled|basted)(?: \w+){0,2} (?:raw|used|left ?over) "
    r"(?:\w+ )?(?:marinade|juices?)\b|"
    r"\b(?:cut|carved|sliced|chopped|served|put|laid|rested|plated)(?: (?:it|them|up))? (?:on|"
    r"with|off) "
    r"(?:the |a )?(?:same )?(?:raw (?:\w+ )?(?:board|plate|knife|tray|dish)|(?:board|plate|"
    r"knife|tray|"
    r"dish) (?:of|from|with|for|used for) (?:the )?raw)\b"
)
_OLD = (
    r"\b(?:mince|meat|beef|pork|chicken|fish|ham|milk|cream|sausages?|prawns?|mussels|eggs?)"
    r"(?: \w+)? (?:was|were|had gone|went|is)(?: already)? (?:a |1 |2 |\d |two |three |few |a "
    r"few )*"
    r"(?:days?|weeks?)? ?(?:over|past it|past (?:its|the) (?:date|day)|out of date)"
    r"(?! (?:the|ice|100|medium|easy|cooked))\b"
)


def off_in_the_oven(note: str) -> bool:
    """("in the oven; off; overnight") Whether a whole note leaves it in an oven that is off."""
    told = re.sub(r"\W+", " ", note)
    return re.search(_OVEN_OFF, told) is not None and not re.search(_COLD, told)


def out_for_hours(note: str) -> bool:
    """("out for the party; 3 to 8") Whether a whole note sets it out for over two hours."""
    if not re.search(_SET_OUT, note) or re.search(_COLD, note) or re.search(_PEOPLE, note):
        return False
    minutes = minutes_by_the_day(re.sub(r"\W*; ", " from ", note))
    return minutes is not None and minutes > WARM_MIN


def cool_inside(clause: str) -> bool:
    """Whether it never came to a warmth that kills, in figures with no unit beside them."""
    return re.search(_COOL, re.sub(PURPOSE, " ", clause)) is not None


def plain_of_kept(clause: str, perishes: Callable[[], bool], *, cooked: bool) -> Iterator[str]:
    """What a clause says against it, a sentence each; `perishes`: whether two hours run on it."""
    told = re.sub(PURPOSE, " ", clause)
    held = re.search(_COLD, clause) or re.search(_HOT, clause)
    # "For the afternoon" behind a place is no purpose.
    meant = re.search(r"\b(?:to be|can be|may be|do not|never) (?:left|put|kept)\b", clause)
    if not held and not meant and affirmed(clause, _WARM) and perishes():
        yield "out of the cold, for over two hours in all as far as anybody knows: discard."
    if cooked and cool_inside(clause):
        yield "nobody knows that it was hot through, and what is not grows germs as it stands."
    if cooked and affirmed(told, _AGAIN):
        # UK Food Standards Agency, Chilling: leftovers are reheated once (from memory).
        yield "cooked food is reheated once, and no figure is published for more."
    if affirmed(told, _RAW) and perishes():
        # USDA FSIS, Safe food handling, separate: raw juices stay off cooked food (from memory).
        yield "raw juices on food that is not cooked again have no published figure."
    if affirmed(told, _OLD) and perishes():
        yield "no figure begins with what was past its last day."
