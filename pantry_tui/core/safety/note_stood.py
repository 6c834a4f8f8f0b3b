"""Words of a note that food stood out of the cold until something happened, with no hour in it: "on
the garden table till guests came", "forgot it in the oven". For notes in small letters, one clause
at a time. How long that was nobody knows: it is asked for (USDA FSIS, the two-hour rule). Which
words are listened for is a choice of our own.
"""

from __future__ import annotations

import re

from pantry_tui.core.safety.denial import affirmed

_WHERE = (
    r"(?:out(?:side|doors)?|(?:on|in|by|at) (?:(?:the|a|our|my|back|of|hot|warm|parked|kitchen|"
    r"dining|garden|patio|picnic|coffee|side|work|serving|pot|pan|dish|on|tray|bowl|cooker) )*"
    r"(?:table|counter|worktop|side ?board|side|buffet|kitchen|porch|stove|hob|bench|garden|sun|"
    r"patio|terrace|deck|balcony|lawn|window ?sill|ledge|bar|barbecue|bbq|draining board|sink|"
    r"office|desk|hall|shed|garage|tent|trolley|cooker))"
)
#: Until somebody did something, and no food.
_WHO = (
    r"(?:(?:the|our|all|last|other|my) )*(?:i|we|they|he|she|everyone|everybody|somebody|someone|"
    r"anyone|guests?|visitors|people|kids|children|family|others|neighbou?rs|husband|wife|men|"
    r"boys|girls|friends|mum|mom|dad)"
)
_DID = (
    r"(?:(?:had|all|were|was|finally|at last|just|only|have|got|then) )*(?:came|come|got|arrived|"
    r"left|gone|went|back|home|in bed|asleep|there|remembered|noticed|saw|found|thought|woke|"
    r"finished|done|returned|turned up|sat down|away|out|over|at (?:church|work|school|the)|"
    r"driving|walking|swimming|dancing|talking|playing|watching|could|eaten)"
)
_IT_WAS = (
    r"(?:the )?(?:party|film|match|game|movie|speech(?:es)?|meal|dinner|show|wedding|service|rain|"
    r"buffet|visit|evening|concert) (?:was |had |had been |were )?(?:over|ended|finished|done|"
    r"stopped|began|started)"
)
_TILL = rf"(?:till|til|until|while|when) (?:{_WHO} {_DID}|{_IT_WAS})\b"
_LEFT = (
    r"(?:stood|standing|sat|sitting|left|lay|laid|stayed|was|were|been|waited|waiting|cooling|"
    r"cooled|kept|remained|forgotten|pot|dish|tray|pan|bowl|it|put|set|all|rest)"
)
_EVENT = (
    r"(?:party|match|games?|film|movie|wedding|reception|concert|show|meeting|picnic|barbecue|bbq|"
    r"buffet|service|evening|afternoon|morning|night|day|meal|dinner|lunch|feast|speeches|dancing|"
    r"fair|funeral|church|supper)"
)
_THROUGH = (
    rf"(?:for|through|throughout|during|all)(?: out)? (?:(?:the|an?|1|our|whole|entire|rest of) )*"
    rf"{_EVENT}\b"
)
_STOOD = (
    rf"(?:^|\b{_LEFT} )(?:\w+ )?{_WHERE}(?: (?:outside|out|cold|there|covered))? {_TILL}|"
    rf"(?:^|\b{_LEFT} )out {_WHERE} {_THROUGH}|"
    rf"^{_WHERE} (?:outside|out|there) {_THROUGH}|"
    rf"\bserved (?:from|off) the (?:\w+ )?(?:table|counter|side ?board|buffet) {_THROUGH}|"
    r"\b(?:pot|pan|dish|tray|bowl|platter|rest|it|all) (?:was |were )?(?:stood|sat|left) "
    rf"(?:uncovered|open|out|there) (?:after|during|through) (?:the |our )?(?:\w+ )?{_EVENT}\b|"
    r"\b(?:dish|dishes|bowl|platter|lot|rest) (?:was |were )?(?:stood|sat|left) (?:out|outside)$|"
    r"\b(?:in|on) (?:the )?(?:back (?:seat )?of the |hot )?(?:car|van|boot|trunk) (?:till|until|"
    r"while) (?:\w+ ){1,4}from (?:the |a )?(?!shop|store|super|market|butcher|farm|grocer)\w+"
)
#: There it only cools down.
_IN_THE_OVEN = (
    r"\b(?:forgot(?:ten)?|found)(?: (?:it|them|this|that|the \w+))?(?: still)? in(?:side)? (?:the |"
    r"our )?(?:oven|stove|grill)\b(?! (?:dish|glove|tray))|"
    r"\b(?:left|stood|sat|stayed|still|lay)(?: (?:it|them|this|the \w+))? in(?:side)? (?:the |"
    r"our )?"
    rf"(?:oven|stove|grill)\b (?:after (?:the |our )?(?:\w+ )?{_EVENT}|{_TILL}|when (?:i|we|they) "
    r"(?:came|got|went|woke|left)|over ?night|till (?:the )?morning)\b"
)
_WENT_IN_LATE = (
    r"\b(?:went|put|got|boxed|moved|into?|chilled)(?: (?:it|them|all|only|back))* (?:in|into) "
    r"(?:the "
    r"|our )?(?:fridge|refrigerator|freezer) (?:only )?(?:when|once|after|as soon as) "
    rf"(?:{_WHO} {_DID}(?: \w+)? from (?:the |a )?(?!shop|store|super|market|butcher|farm|grocer)"
    rf"\w+|(?:the |all )?(?:guests|everyone|everybody|they|people) (?:had )?(?:all )?(?:left|gone|"
    rf"went)|{_IT_WAS})"
)
_BACK_FROM = (
    r"\b(?:back|home|returned|came) from (?:the |a |our )(?:\w+ )?(?:buffet|party|picnic|pot ?luck|"
    r"barbecue|bbq|cook ?out|fair|bake sale|supper|reception|funeral|wedding)\b"
)
_COLD = (
    r"\b(?:fridge|refrigerator|freezer|ice|iced|cool ?(?:box|bag|er)|chill\w*|cold|snow|cellar)\b"
)
_HOT = (
    r"\b(?:slow cooker|kept hot|hot plate|simmer\w*|warming tray|bain marie|cook(?:ed|ing)|low|"
    r"bubbl\w*|brais\w*|bak(?:ed|ing)|smok\w*|roast\w*|\d{3} ?f|boil\w*|ris(?:e|en|ing))\b"
)
#: The rest of a meal that was put away at its end.
AT_ONCE = (
    r"\b(?:straight|right|directly|at once|immediately)(?: (?:back|away|in|into|to|the|on))* "
    r"(?:fridge|refrigerator|freezer|ice)\b|"
    r"\b(?:chilled|fridged|refrigerated|frozen|put away|boxed|iced)(?: up)? (?:at once|"
    r"straight ?away|immediately|right away|on the spot|within (?:the |an? |1 )?hour)\b|"
    r"\b(?:in|into|to|on) (?:the )?(?:fridge|refrigerator|freezer|ice) (?:at once|straight ?away|"
    r"immediately|right away|within (?:the |an? |1 )?hour|in (?:an|1|half an|0\.5) hour)\b|"
    r"\b(?:kept|stayed|always) (?:cold|chilled|on ice|in the (?:fridge|refrigerator))\b|"
    r"\bnever left the (?:fridge|refrigerator|ice)\b"
)
_REST_OF = (
    r"\b(?:left ?overs?|left over|rest|remains|left)(?= (?:from|of|after) (?:the |a |our )*"
    r"(?:\w+ )?(?:buffet|party|picnic|pot ?luck|barbecue|bbq|fair|supper|dinner|lunch|breakfast|"
    r"meal|roast|reception|funeral|wedding))"
)
_BROKEN_OVEN = (
    r"\b(?:oven|stove|cooker|hob|slow cooker)(?: (?:was|had|is))? (?:broke(?:n)?(?: down)?|off|"
    r"dead|"
    r"died|failed|not working|would not (?:start|light|come on))\b"
)
_ANOTHER_OVEN = (
    r"\b(?:used|borrowed|went to|took it to) (?:\w+'s?|another|the other|a borrowed|next door's|"
    r"the "
    r"neighbou?r'?s)\b|\b(?:so|then|and|instead)? ?(?:cooked|baked|finished|done|made) (?:it |"
    r"them )?"
    r"(?:at|in|on) (?:\w+'s|another|the (?:other|neighbou?r\w*|stove|hob|grill|barbecue|camp\w*))\b"
)
_IN_IT_THEN = (
    r"\b(?:half ?way|mid ?way|over ?night|left|in it|stood|till|until|inside|while|hours?|during|"
    r"cold|after)\b"
)


def stood_out(clause: str) -> bool:
    """Whether it stood out of the cold until something happened."""
    if affirmed(clause, _WENT_IN_LATE) and not re.search(r"\b(?:ice|iced|cool ?box)\b", clause):
        return True
    if re.search(_COLD, clause):
        return False
    if affirmed(clause, rf"{_IN_THE_OVEN}|{_BACK_FROM}"):
        return re.search(r"\b(?:low|hot|\d{3} ?f|lit|on)\b", clause) is None
    return re.search(_HOT, clause) is None and affirmed(clause, _STOOD)


def put_away(note: str, clause: str) -> str:
    """A clause without the feast that it is left from, where the note has it chilled at once, and
    without what was broken, where it has another one that cooked it."""
    if re.search(_ANOTHER_OVEN, note) and not re.search(_IN_IT_THEN, note):
        clause = re.sub(_BROKEN_OVEN, " ", clause)
    if re.search(AT_ONCE, note) is None:
        return clause
    return re.sub(rf"{_REST_OF} (?:from|of|after) (?:the |a |our )*", "what is of a ", clause)
