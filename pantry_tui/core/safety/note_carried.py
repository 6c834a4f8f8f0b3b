"""What a note says of food that was carried about, hidden for children, laid out for show, or put
away late, and of frozen food that was found soft: with an hour or none. For notes in small letters,
numbers in figures, one clause at a time. How long it was warm nobody says, or says at the edge: it
is asked for, or over (USDA FSIS, the two-hour rule). Which words are listened for is a choice of
our own.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from pantry_tui.core.canned import ANIMAL
from pantry_tui.core.keeping.warm import WARM_MIN
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.safety.kept_warm import BOOK_IT, PERHAPS_WARM, WARM, minutes_of
from pantry_tui.core.safety.note_clock import minutes_by_the_day
from pantry_tui.core.safety.note_stood import AT_ONCE
from pantry_tui.core.safety.note_words import PURPOSE
from pantry_tui.core.words import Group, Method

_COLD = (
    r"\b(?:ice|iced|ice packs?|cool ?(?:box|bag|er)s?|chill(?:ed|er)|cold (?:bag|box|pack)\w*|"
    r"insulated|frozen hard|hard frozen|still (?:hard|frozen|solid)|snow)\b"
)
_SOFT = r"(?:soft|limp|mushy|floppy|squishy|slushy|squashy|bendy|pliable|half thawed|thawed)"
#: So it was found, and no word of how it was packed or cooked.
_FOUND_SOFT = (
    r"\b(?:found|discovered|noticed|(?:came|got) home (?:to|and)|came back to|woke (?:up )?to)"
    r"(?: (?:it|them|all|everything|the|was|were|packs?|bags?|boxes|meat|fish|very|quite|rather|"
    rf"a bit|in the (?:chest|freezer)|to be))* {_SOFT}\b(?! (?:spots?|ones?|fruit))|"
    r"\b(?:gave|gives?|dents?|dented) (?:\w+ )?(?:under|to) (?:the |my |a )?(?:finger|thumb)\w*\b"
)
#: On the way home.
_HOME = r"(?:home|from the (?:shop|store|super ?market|market|fishmonger|butcher)|in the car)"
_CAME_SOFT = (
    rf"\b(?:came|got|arrived|was|were|brought|by the time|carried|limp|soft)\b.*\b{_HOME}\b.*"
    rf"\b{_SOFT}\b|"
    rf"\b{_SOFT}\b.*\b(?:when|by the time|as|before|once|on the way)\b.*\b(?:home|house)\b"
)
_HEAT = r"\b(?:summer|heat|hot|july|august|sun|sunny|warm)\b"
_DRIVE = (
    r"(?:\b(?:[2-9]|\d\d|several|some|many|long)(?:\.\d+)?(?: ?(?:hours?|h|hrs?))?(?: of)?"
    r"(?: \w+)? (?:drive|driving|trip|ride|journey|walk|way|bus)\b)"
)
_NOTHING_COLD = (
    r"\b(?:no|without(?: an?| any)?) (?:cool ?(?:box|bag|er)s?|ice ?(?:packs?|box)?|insulat\w*)\b"
)
_OUTDOORS = (
    r"(?:lawn|gardens?|grass|yard|park|woods?|meadow|bushes|hedge|flower ?beds?|field|house|flat|"
    r"living room|hay|orchard|playground|terrace|balcony|nests?|basket|children|kids)"
)
#: Of eggs that were cooked hard.
_HIDDEN = (
    rf"\b(?:hidden|hid|hiding|searched|hunted|sought|found)\b.*\b{_OUTDOORS}\b|"
    r"\b(?:egg|easter) (?:egg )?(?:hunt|search|roll\w*|rolling|race)s?\b|"
    r"\b(?:easter|spring|table|centre ?piece|window|brunch) ?(?:table )?(?:decorations?|display|"
    r"centre ?piece|center ?piece)\b|"
    r"\b(?:decorated|adorned|graced|lay on|stood on|sat on|were on|was on|on) (?:the |our |my )*"
    r"(?:\w+ )?(?:table|sideboard|mantel\w*|window ?sill|easter tree)\b(?! (?:for|at) (?:an? |1 )?"
    r"(?:hour|minute))|"
    r"\bin (?:the |an? |their |our )*(?:easter )?(?:nests?|easter baskets?)\b"
)
_NOT_YET = (
    r"\b(?:dy(?:e|ed|eing)|colou?red|painted|cooked|boiled|made|meant|ready|saved?|keep|kept)\b.*"
    r"\b(?:for|before|until|till|after)\b|\b(?:next|tomorrow|will|not used|not hidden)\b|"
    r"\b(?:plastic|fridge|refrigerator)\b|\b(?:hens?|chickens?|laid|free range)\b"
)
_BAG = (
    r"(?:lunch ?(?:box|bag|pack)|packed lunch|school ?bag|picnic(?: (?:basket|hamper|bag|box))?|"
    r"rucksack|back ?pack|hand ?bag|satchel|brief ?case|saddle ?bag|gym bag|desk)"
)
_BACK = r"(?:back|again|home|uneaten|untouched|not eaten|left over|returned)"
_CARRIED = (
    rf"\b(?:in|from|inside) (?:(?:the|his|her|my|our|their|a|kids?|children'?s?) )*{_BAG}\b.*\b"
    rf"(?:till|until|since|all|whole|{_BACK}|hours?|afternoon|morning|day|noon|\d+ to \d+)\b|"
    r"\b(?:taken|took|carried|went|came|been|brought|travelled|traveled)\b.*\b(?:hikes?|walk|"
    r"trip|picnic|excursion|outing|beach|train|bus|school|work|office|tour|bike ride|camp\w*|lake|"
    rf"zoo|park|mountain)\b[^;]*;? ?\b(?:[^;]* )?{_BACK}\b(?! garden)|"
    rf"\b{_BACK} (?:\w+ )?from (?:the |a |our |his |her )*(?:\w+ )?(?:hikes?|walk|trip|picnic|"
    r"excursion|outing|beach|lake|zoo|lunch ?box)\b"
)
_FEAST = (
    r"(?:buffet|party|picnic|pot ?luck|barbecue|bbq|cook ?out|reception|wedding|funeral|brunch|"
    r"christening|street party|garden party|open house|office party|feast|fete|bake sale)"
    r"(?! (?:size\w*|pan|packs?|packet|platter|recipe|cake|dish|tin|tray)\b)"
)
_LEFT = r"(?:left ?overs?|left over|remains|rests?|remnants|scraps|remainder)"
#: The rest of what stood out to be eaten from.
_REST = (
    rf"\b{_FEAST} (?:table |food )?{_LEFT}\b|\b{_LEFT} (?:from|of|after|off) (?:(?:the|a|our|my|"
    rf"\w+) ){{0,2}}{_FEAST}\b|\b(?:what|that) (?:was|is) left (?:on|of|from|over from|after) "
    rf"(?:the |our )?(?:\w+ )?{_FEAST}\b|"
    rf"\b(?:taken|came|brought|saved|over) (?:home )?(?:from|off) (?:the |a |our )*(?:\w+ )?"
    rf"{_FEAST}\b"
)
_SAME_DAY = (
    r"\b(?:frozen|chilled|fridged|refrigerated|cooled) (?:on )?(?:the |that )(?:same|very) "
    r"(?:day|evening|night|hour)\b"
)
_POT = r"(?:pots?|pan|stove|hob|cooker|kettle|casserole|dish|range|counter|slow cooker)"
_NEXT = (
    r"(?:this morning|in the morning|(?:the )?(?:next|following) (?:day|morning)|at (?:breakfast|"
    r"dawn|midnight|bed ?time)|when (?:i|we) (?:got up|woke|came down|went to bed|got home|came "
    r"home)|hours later|by morning|after (?:breakfast|work))"
)
_IN_THE_POT = (
    r"\b(?:still|found(?: it| them)?|was|were|sat|cold|stood|warm|lukewarm|tepid|forgotten|forgot"
    rf"(?: it)?)(?: \w+){{0,2}} (?:in|on) (?:(?:the|its|our|my|a|big|soup) )*{_POT}\b(?: \w+)? "
    rf"{_NEXT}\b|"
    rf"^(?:still )?(?:luke ?)?(?:warm|cold|tepid) {_NEXT}\b"
)
_LATE = (
    r"(?:at midnight|past midnight|after midnight|around midnight|at bed ?time|before bed|late at "
    r"night|at (?:10|11|12|22:\d+|23:\d+|[1-3]) ?(?:pm|am|o'clock)?\b|after (?:the |our )?(?:\w+ )?"
    r"(?:dinner|party|guests|meal|supper|film|visitors|concert|game))"
)
_PUT = (
    r"(?:put|went|boxed|packed|into?|chilled|fridged|stored|cleared|tidied|ladled|away|portioned)"
)
_PUT_AWAY_LATE = (
    rf"\b{_PUT}\b.*\b(?:luke ?warm|tepid|barely warm|hardly warm)\b.*\b{_LATE}|"
    rf"\b(?:luke ?warm|tepid|barely warm|hardly warm)\b.*\b{_PUT}\b.*\b{_LATE}|"
    rf"\b{_LATE}.*\b{_PUT}\b.*\b(?:luke ?warm|tepid)\b"
)
#: The meal was hours before the refrigerator, in two clauses.
_AT_MIDNIGHT = r"\b(?:fridge|refrigerator|put away|chilled|fridged|boxed)\b[^;]*\bmidnight\b"
_MEAL_AT = (
    r"\b(?:lunch|dinner|supper|meal|guests|cooked|eaten|ate|served|party|ready|done)\b[^;]*\b(?:at|"
    r"from|since|was|by) (?:about )?(?:noon|lunch|midday|[1-9](?::\d+)?(?: ?pm)?)\b"
)
_COOKER = (
    r"\b(?:slow cooker|crock ?pot|rice cooker|hot ?plate|warming (?:tray|drawer)|warmer|multi "
    r"?cooker|instant pot)\b(?:;|:| -)? (?:(?:which|that|it|and|but|had|has|was|were|been|got|by "
    r"then|the|plug|lid|then|turned|switched|itself|someone|somebody|i found|found|\w+) )?"
    r"(?:(?:had|has|was|were|been|got|itself|is|came|turned|switched) )*(?:un ?plugged|off(?! the)"
    r"(?! (?:after|once|at \d+(?::\d+)?(?:;|$)))|dead|stopped|"
    r"not (?:plugged|on|switched|working))\b"
)

_THEN_COLD = r"\b(?:then|and|rest) (?:\w+ )?(?:chill|fridge|refrigerat|freez|froz|cool)\w*"


def left_warm(
    method: Method,
    food: FoodFacts,
    clause: str,
    note: str,
    perishes: Callable[[], bool],
    *,
    cooked: bool,
) -> Iterator[str]:
    """What a clause says so against it, a sentence each; `note` is all of it, `perishes`: whether
    two hours run on it."""
    if method is Method.FROZEN and found_soft(food, clause, note):
        yield BOOK_IT
    out = carried_about(food, clause, note) or (cooked and cooled_in_its_pot(clause))
    if out and perishes():
        hours = minutes_of(clause) or minutes_by_the_day(clause) or 0
        yield f"{WARM}: discard." if hours > WARM_MIN else PERHAPS_WARM


def found_soft(food: FoodFacts, clause: str, note: str) -> bool:
    """Whether frozen food was found soft; of flesh and cooked food whether it came home so, or by a
    long way in the heat."""
    flesh = food.group in ANIMAL or food.group is Group.MEAL
    whole = re.sub(_NOTHING_COLD, "warm", note)
    driven = re.search(_DRIVE, clause) and re.search(_HEAT, whole)
    if flesh and driven and not re.search(_COLD, whole):
        return True
    if re.search(_COLD, clause) or re.search(r"\b(?:oven|cook\w*|boil\w*|ripe)\b", clause):
        return False
    if affirmed(clause, _FOUND_SOFT):
        return True
    return flesh and affirmed(clause, _CAME_SOFT)


def carried_about(food: FoodFacts, clause: str, note: str) -> bool:
    """Whether it was in a bag, hidden, on show, or is the rest of a feast; `note` is all of it."""
    told = re.sub(PURPOSE, " ", clause)
    if re.search(rf"{_COLD}|{AT_ONCE}|{_SAME_DAY}", note):
        return False
    hard = "hard" in food.name and food.group is Group.EGG and not re.search(_NOT_YET, clause)
    if hard and affirmed(re.sub(PURPOSE, " ", clause.replace("served as", " ")), _HIDDEN):
        return True
    planned = re.search(r"\b(?:for|before) (?:the |a |our |my |\w+ ){0,2}$", clause)
    return affirmed(told, rf"{_CARRIED}|{_REST}") and planned is None


def cooled_in_its_pot(clause: str) -> bool:
    """Whether cooked food was still in its pot next morning, or was put away late and not cold."""
    if re.search(r"\b(?:simmer\w*|keep warm|kept hot|low heat|water|milk fed)\b", clause):
        return False
    return affirmed(clause, rf"{_IN_THE_POT}|{_PUT_AWAY_LATE}")


def off_or_late(note: str) -> bool:
    """The same of a whole note, and of what should have kept it hot."""
    if re.search(AT_ONCE, note):
        return False
    late = re.search(_AT_MIDNIGHT, note) and re.search(_MEAL_AT, note)
    carried = not re.search(_COLD, note) and affirmed(note, _CARRIED)
    cooker = affirmed(note, _COOKER) and not re.search(_THEN_COLD, note)
    return late is not None or carried or cooker
