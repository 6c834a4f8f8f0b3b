"""Words that say that somebody else put a jar up: "a gift", "from the neighbour", "bought at a
fair". Whoever only had the crop from there says `by=us`; until then the stricter reading counts."""

from __future__ import annotations

import re

_PEOPLE = (
    r"(?:neighbou?rs?|friends?|aunt\w*|uncles?|mother|father|mum|mom|mama|dad|grand\w*|gran|granny|"
    r"nana?|sisters?|brothers?|cousins?|parents|niece|nephew|daughter|in[ -]laws?|lady|woman|man|"
    r"colleagues?|co-?workers?|farmers?|somebody|someone|strangers?|(?:some|any)one else)(?:['’]s)?"
)
_SOLD = (
    r"(?:markets?|fairs?|f[eê]tes?|stalls?|stands?|sales?|swaps?|exchange|church|bazaars?|auctions?|"
    r"club|estate)"
)
_GIVEN = re.compile(
    r"\b(?:(?:gift|present|gifted|given|donat\w*)(?! (?:for|to (?!me|us)))|inherited|"
    r"received|swapped|traded|bartered|handed down|found|came with|unknown canner|"
    r"who canned|not (?:home )?(?:canned|made|put up) by (?:me|us)|"
    r"(?:somebody|someone) else(?:['’]s)?|"
    rf"(?:from|by|got|bought|of|at)\b[^,;]*\b(?:{_PEOPLE}|{_SOLD})|"
    rf"{_PEOPLE} (?:made|canned|gave))\b"
)
_NAMED = re.compile(r"\b(?:[Ff]rom|[Bb]y) [A-Z][a-z]")
_ALONE = re.compile(rf"\b(?:{_PEOPLE}|{_SOLD})\b")
#: What somebody else gave of it, and not the jar: "recipe from my mother".
_ONLY = re.compile(r"\b(?:recipes?|instructions?|idea|seeds?)\b")


#: Where one's own comes from, and where food is bought; in a line it tells nothing else.
_OWN = (
    r"(?:hens?|chickens?|ducks?|geese|goose|quails?|flock|coop|bees|hives?|goats?|cows?|sheep|pigs?|"
    r"gardens?|allotment|orchard|plot|patch|beds?|hedge(?:row)?s?|trees?|bush(?:es)?|vines?|"
    r"greenhouse|poly ?tunnel|fields?|meadow|woods?|forest)"
)
_OURS = rf"from (?:(?:our|my|the|own|back|front|kitchen|vegetable|veg|herb|home|\w+) ){{1,3}}{_OWN}"
_WHOSE = r"\b(?:your|his|her|their|neighbou?r\w*|friend\w*|\w+['’]s)\b"
_SHOP = (
    r"from (?:(?:the|a|our|local|farm|corner|village) ){1,3}(?:shop|stores?|supermarket|market|"
    r"markets|butchers?(?:['’]s)?|fishmongers?(?:['’]s)?|bakers?|bakery|grocers?(?:['’]s)?|deli|"
    r"stall|stand)"
)


def says_where_from(text: str, *, canned: bool) -> bool:
    """Whether words of a line say no more than where its food comes from: from our hens, from the
    market. Of what was `canned` only one's own, since who else put it up counts."""
    plain = " ".join(text.casefold().split())
    if not canned and re.fullmatch(_SHOP, plain):
        return True
    return re.fullmatch(_OURS, plain) is not None and not re.search(_WHOSE, plain)


def says_given(text: str, left_over: bool = False) -> bool:
    """Whether a note says so, or what was left over of a line ("aunt ida", "from Lena")."""
    plain = " ".join(text.casefold().split())
    if _ONLY.search(plain):
        return False
    if _GIVEN.search(plain) or _NAMED.search(text):
        return True
    return left_over and (plain.startswith("from ") or _ALONE.search(plain) is not None)
