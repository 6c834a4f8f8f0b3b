"""What was done to a crop before it was put by, said beside its name: diced, peeled, dry packed.

"Diced onions" are onions and no whole onions: what the word changes goes into the record, as
`prepared`, and is judged there. Words that make another thing of the food stay unread.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from pantry_tui.core.canned import LIDDED, PROCESSED
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.denial import DENIAL, LEFT_OUT, denies, lacking, spelled_not
from pantry_tui.core.safety.measured import danger, sealed_so, unsafe_way
from pantry_tui.core.safety.prepared import (
    CROPS,
    DRY_PACKED,
    HALF_DRIED,
    IN_SHELL,
    NOT_TESTED,
    OVERRIPE,
    UNPEELED,
    WINDFALL,
    dried_in_part,
    in_shell,
    is_overripe,
    with_skins,
)
from pantry_tui.core.safety.prepared_words import CUT
from pantry_tui.core.safety.seals import note_says_unsealed, without_set_apart
from pantry_tui.core.safety.values import YES, is_unknown, seal_failed
from pantry_tui.core.vessels import laid_eggs
from pantry_tui.core.words import Group, Method

_BEATEN = frozenset({"beaten", "whisked"})
_OPENED_EGG = _BEATEN | {"peeled", "shelled", "sliced", "chopped", "halved", "diced", "quartered"}
#: How eggs are counted that nobody broke.
_AS_LAID = re.compile(r"(?:|pieces?|eggs?|.*\b(?:cartons?|dozens?|egg box(?:es)?))", re.IGNORECASE)
#: What salt keeps, or keeps until acid does.
_BY_SALT = (Method.LACTIC, Method.PASTE, Method.SALTED, Method.COLD_SMOKED, Method.HOT_SMOKED)
#: What lies in vinegar, and is kept by it.
_IN_VINEGAR = (Method.VINEGAR_PICKLE, Method.FRIDGE_PICKLE, Method.FLAVOURED_VINEGAR)
_RAW = (Method.CELLAR, Method.FRESH, Method.BOUGHT)
_BY_SUGAR = (Method.JAM, Method.SUGAR)
_NO_TASTE = r"(?! (?:taste|flavou?r|smell|odou?r))"
_SALT = (
    r"salt\b(?! (?:pork|cod|fish|beef|water|crust|taste|flavou?r|at (?:the )?table|"
    r"needed (?:at|to|when|on)|to serve)\b)"
)
_VINEGAR = rf"vinegar{_NO_TASTE}"
#: No peel and no herb.
_ACID = (
    r"(?:lemon|lime)s?\b(?! (?:peel|zest|rind|grass|balm|thyme|verbena|basil|slices?|wedges?|"
    rf"pepper|pith|leaf|leaves)\b)|citric|acid(?!s|ic|ity){_NO_TASTE}"
)
_PROCESS = (
    r"process(?:ed|ing)?\b(?! (?:sugar|cheese|meats?|foods?|flour|cheddar)\b)|"
    r"(?:water )?bath(?:ed)?(?! (?:salts?|towels?|mat|water))|"
    r"canner|canned|canning\b(?! (?:salt|jars?|lids?|powder|funnel|class|lesson|book|season|day|"
    r"label)\b)"
)
_VACUUM = re.compile(
    r"\bvac(?:uum)? ?(?:sealed|packed|pac|packs?|bags?|bagged)\b|\bsous vide (?:bags?|packs?)\b"
)
#: Chilled or raw: a pack without air keeps it for no longer, and smoked fish for half as long.
_SOONER_AIRLESS = frozenset({*_RAW, Method.HOT_SMOKED, Method.COLD_SMOKED, Method.MEAL})
_UNPROCESSED = re.compile(r"\bunprocessed\b(?! (?:sugar|honey|salt|foods?|cheese)\b)")
_SALT_FREE = re.compile(r"\b(?:unsalted|salt free)\b(?! (?:butter|nuts|stock|broth))")
#: An oven roasts, a stove is electric, a disc is waxed: alone they say nothing of the canning.
_HARMLESS = re.compile(
    r"\b(?:ovens?|microwaved?|electric(?! (?:pressure|canner|cooker|multi))|instant(?! pot)|"
    r"in the sun|wax(?:ed)?(?! seal))\b"
)
#: What was cooked in one before it went into its jars: its process is another thing.
_COOKED_IN = re.compile(
    r"\b(?:cook(?:ed|ing)?|reduc(?:ed|ing)|simmer(?:ed|ing)?|stew(?:ed|ing)?|thicken(?:ed|ing)?|"
    r"boil(?:ed|ing)?|made|bubbl(?:ed|ing)|left|overnight|start(?:ed)?|soften(?:ed)?)"
    r"(?: (?!jars?\b|lids?\b|cann|process|seal)\w+){0,5}? (?:in|with|on) (?:the |an? |my |our )?"
    r"(?:big |old |new )?(?:(?:electric )?(?:slow|multi|rice) ?cooker|crock ?pot|instant pot|"
    r"instant|electric (?:pot|pan|cooker))\b"
)
#: Such a pot is taken for a canner by households, so of low-acid food its name is not set aside.
_PRESSES = re.compile(r"\b(?:instant|electric|multi ?cooker)\b")
#: Empty jars are washed in one.
_WASHED = re.compile(
    r"\b(?:wash|clean|rins|steril|warm|hot|straight|fresh)\w*(?: \w+){0,2} (?:in|from|out of) "
    r"(?:the |my |our )?dish ?washer\b|\bdish ?washer (?:clean|warm|hot|safe|proof)\b"
)
#: Before these it is a measure, or a kind of bean.
_PARTS = frozenset({"half", "quarter"})
_MEASURED = frozenset({"runner", "runners", "bushel", "bushels", "peck", "dozen"})
#: Green potatoes are not eaten, so the colour is no colour (data/keeping.csv says the same).
_GREEN = frozenset({"potatoes", "new potatoes"})


def is_raw_crop(facts: FoodFacts | None, method: Method | None) -> bool:
    """Whether it is a vegetable or fruit that nothing was done to but to cut it."""
    return facts is not None and method in _RAW and facts.group in CROPS


def said_beside(typed: str, method: Method | None) -> dict[str, str]:
    """What words beside the food say of its process: a canned one went raw into its jars, one that
    salt keeps had none."""
    plain = typed.casefold().replace("-", " ")
    if method in PROCESSED and re.search(r"\b(?:raw|uncooked)\b", plain):
        return {"pack": "raw"}
    return said_anywhere(plain, method)


def said_anywhere(text: str, method: Method | None) -> dict[str, str]:
    """The same of words that stand anywhere, in a note too: a way of canning that no publication
    has, and what was left out where it keeps the food: salt, acid, sugar, the process, the seal."""
    plain = _WASHED.sub(" ", without_set_apart(text).casefold().replace("-", " "))
    found = dict.fromkeys(_left_out(plain, method), "none") | _airless(plain, method)
    if method not in LIDDED:
        return found or ({"process": plain[:60]} if sealed_so(plain) else {})
    canned = _HARMLESS.sub(" ", _without_pots(plain, method))
    if "process" not in found and (sealed_so(plain) or danger(canned)):
        found["process"] = plain[:60]
    if _never_sealed(text):
        found["seal"] = "failed"
    return found


def _never_sealed(text: str) -> bool:
    """Whether words say of all of it that it did not seal: of some jars it is asked which."""
    if not note_says_unsealed(text):
        return False
    from pantry_tui.core.safety.note_share import share  # loaded where a note is read
    from pantry_tui.core.safety.notes import clauses

    told = clauses(without_set_apart(text).replace("-", " "))
    return any(note_says_unsealed(clause) and not share(clause) for _, clause in told)


def _without_pots(plain: str, method: Method | None) -> str:
    """Without the pots in which it was cooked before it went into its jars."""

    def kept(found: re.Match[str]) -> str:
        presses = method is Method.PRESSURE and _PRESSES.search(found[0])
        return found[0] if presses else " "

    return _COOKED_IN.sub(kept, plain)


def _airless(plain: str, method: Method | None) -> dict[str, str]:
    """That it lies without air, where that is the stricter case; of what a shop sold its date may
    be believed for longer by it, so that there a note says only that nobody knows."""
    found = _VACUUM.search(plain) if method in _SOONER_AIRLESS else None
    if found is None or re.search(DENIAL, plain[: found.start()]):
        return {}
    return {"vacuum": "unknown" if method is Method.BOUGHT else "yes"}


def _left_out(plain: str, method: Method | None) -> list[str]:
    """The keys of what there was none of."""
    found = []
    if method in _BY_SALT and (_SALT_FREE.search(plain) or lacking(plain, _SALT)):
        found.append("salt")
    if method in _IN_VINEGAR and lacking(plain, _VINEGAR):
        found.append("vinegar")
    elif method in LIDDED and lacking(plain, _VINEGAR):
        found.append("acid")
    if method in LIDDED and "acid" not in found and lacking(plain, _ACID):
        found.append("acid")
    if method in _BY_SUGAR and lacking(plain, "sugar"):
        found.append("sugar")
    if method in LIDDED and (_UNPROCESSED.search(plain) or lacking(plain, _PROCESS)):
        found.append("process")
    return found


def contradicted(text: str, method: Method | None, record: Mapping[str, str]) -> str:
    """Why words and a record cannot both be true, a sentence: the record has what they say was
    left out; "" where they can. That there was no vinegar says nothing of the lemon, and what
    some of the jars lack nothing of the others."""
    text = _of_all(text)
    for key, told in said_anywhere(text, method).items():
        value = record.get(key, "")
        if is_unknown(value) or denies(value) != (key == "vacuum"):
            continue
        if key == "seal" and seal_failed(value):
            continue
        if key == "acid" and not _same_acid(text, value):
            continue
        if key == "process" and unsafe_way(value):
            continue
        return (
            f"{key}={value[:40]}, and {text[:60]!r} says otherwise: leave one of the two out, or "
            f"write {key}={told}."
        )
    return ""


def _of_all(text: str) -> str:
    """Without the clauses that say what only some of the jars went without."""
    plain = spelled_not(text.casefold())
    if not re.search(rf"{DENIAL}|{LEFT_OUT}", plain):
        return text
    from pantry_tui.core.safety.note_some import some_lack  # loaded where a note is read
    from pantry_tui.core.safety.notes import clauses

    told = list(clauses(text))
    some = some_lack([clause for _, clause in told])
    return (
        "; ".join(typed for at, (typed, _) in enumerate(told) if at not in some) if some else text
    )


def _same_acid(text: str, value: str) -> bool:
    named = lacking(text, rf"{_ACID}|{_VINEGAR}").removesuffix("s")
    return named == "acid" or named in value.casefold() or value.casefold() in YES


def named_way(typed: str) -> dict[str, str]:
    """What the name of a method says of a way that no publication has: "pressure cooker canned"."""
    plain = typed.casefold().replace("-", " ")
    return {"process": plain[:60]} if sealed_so(plain) or danger(plain) else {}


def as_laid(facts: FoodFacts, size: str, *told: str) -> bool:
    """Whether eggs of that size lie in their shells: they are counted by the piece or the carton,
    or are said to be fresh eggs; and nothing that was `told` says that they were beaten."""
    said = " ".join(told).casefold()
    laid = _AS_LAID.fullmatch(size) or re.search(r"\bfresh (?:\w+ )?eggs?\b", said)
    words = re.findall(r"[^\W\d_]+", said)
    beaten = _BEATEN.intersection(words)
    return laid_eggs(facts.name, facts.classes) and laid is not None and not beaten


def _without_measures(words: list[str]) -> list[str]:
    """Without the half of half a dozen, and of half runner beans."""
    behind = [*words[1:], ""]
    return [
        word
        for word, after in zip(words, behind, strict=True)
        if not (word in _PARTS and after in _MEASURED)
    ]


def prepared(typed: str, facts: FoodFacts | None, method: Method | None) -> tuple[str, list[str]]:
    """The words that belong into the record of `typed`, a food by more than its own name, and
    those that nobody can take for the food."""
    if facts is None or not typed:
        return "", []
    words = re.findall(r"[^\W\d_]+", typed.casefold())
    plain = " ".join(words)
    if facts.group is Group.EGG and "hard" not in facts.name:
        frozen = method is Method.FROZEN
        opened = _OPENED_EGG - _BEATEN if frozen else _OPENED_EGG
        whole = IN_SHELL if frozen and in_shell(plain) else ""
        return whole, [word for word in words if word in opened]
    unread = ["green"] if facts.name in _GREEN and "green" in words else []
    if method in PROCESSED:
        dry = next((one for one in DRY_PACKED if one in plain), "")
        crop = facts.group in CROPS
        skins = UNPEELED if crop and with_skins(plain) and UNPEELED not in words else ""
        ripe = OVERRIPE if crop and is_overripe(plain) else ""
        said = [dry, skins, ripe, *(word for word in words if word in NOT_TESTED)]
    elif is_raw_crop(facts, method):
        said = [word for word in _without_measures(words) if word in CUT]
    elif method is Method.DRIED and facts.group in CROPS and dried_in_part(plain):
        said = [HALF_DRIED]
    else:
        said = []
    fallen = WINDFALL if WINDFALL in plain else ""
    return " ".join(filter(None, (fallen, *said))), unread
