"""What may stand behind each key of a process record: whether a value is understood."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from pantry_tui.core.amounts import (
    MOST,
    fractions_spelled,
    in_decimals,
    plain_digits,
    read_altitude,
)
from pantry_tui.core.safety.denial import NO, denies, without_denial
from pantry_tui.core.safety.jars import one_jar
from pantry_tui.core.safety.measured import (
    one_canner,
    read_inches,
    read_minutes,
    read_psi,
    spelled_out,
)
from pantry_tui.core.safety.prepared_words import all_understood
from pantry_tui.core.safety.seals import record_says_failed, says_none_failed, says_some_failed
from pantry_tui.core.safety.spoons import read_spoons
from pantry_tui.core.words import State
from pantry_tui.errors import BadInput

YES = frozenset({"yes", "y", "true", "ok"})
_UNKNOWN = frozenset({"", "?", "??", "unknown", "not recorded", "not known"})
#: "Popped" alone is neither: a lid pops down as its jar seals, and up as the seal fails.
_SEALED = frozenset(
    {"tight", "good", "okay", "fine", "firm", "sound", "checked", "pinged", "sealed", "all",
     "all sealed", "concave", "down"}
)  # fmt: skip


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


_ACIDS = _words("lemon citric lime vinegar")
_BESIDE_ACID = _words(
    "juice acid bottled fresh tbsp tbs tablespoon tablespoons tsp teaspoon teaspoons t ml g cup "
    "cups of and or per each jar quart pint a an half added with yes in the"
)
_SMALL = _words("of and or jar quart pint a an half with in the t")
_VINEGARS = _words(
    "vinegar white distilled spirit spirits cider apple malt wine red rice balsamic sherry "
    "pickling homemade home made own grain percent per cent acetic acid acidity strength of cup "
    "cups ml l litre litres liter liters quart quarts pint pints a to and or the at with"
)
_POURED = r"\b(?:cups?|ml|l|lit(?:re|er)s?|quarts?|pints?)\b"
_AROUND_VINEGAR = _words("of to a and or the at with own home made")
_SALTS = _words(
    "salt kosher pickling canning sea coarse fine g kg lb lbs oz tbsp tablespoon tablespoons tsp "
    "teaspoon teaspoons cup cups l litre liter ml quart pint percent brine dry water in by weight"
)
_SUGARS = _SALTS | _words("sugar syrup light medium heavy brix")
_SYRUPS = _words("extra very light medium heavy honey")
_GAPS = _words("in inch inches cm mm half quarter")
_DEGREES = _words("f c deg degrees")
_OF = _words("a of the to and per")
_CURES = _words("no number pink prague powder g kg oz lb tsp percent")
_TESTED = (
    r"(?=.*\b(?:usda|tested|proven|published|recommended|safe|extension|guide)\b)"
    r"(?:(?:a|by|the|from|usda|tested|proven|published|recommended|safe|extension|and|process|"
    r"recipe|guide)[\s,]*)+"
)


def is_unknown(value: str) -> bool:
    """Whether a person says that nobody knows."""
    return value.casefold().strip() in _UNKNOWN


#: What may stand behind a no: "no vinegar", "nothing added", "forgot the lemon juice".
_OF_NONE = _words(
    "acid acidity vinegar lemon citric lime juice added adding add to it the any at all was were "
    "used salt sugar in of out we i put powder"
)


def _only_none(value: str) -> bool:
    """Whether all that it says is that there was none: "not 5%" and "not homemade" say something
    else."""
    if not denies(value):
        return False
    numbers = re.findall(r"\d+", fractions_spelled(value))
    if any(map(int, numbers)):
        return False
    return bool(numbers) or _letters(without_denial(value)) <= _OF_NONE | NO


def says(pairs: Sequence[tuple[str, str]], key: str, value: str) -> bool:
    """Whether a record says just that of a key, in capitals or not."""
    return any(name == key and said.casefold() == value for name, said in pairs)


def seal_failed(value: str) -> bool:
    """Whether the record says that it did not seal, or not every jar of it."""
    plain = value.casefold().strip()
    if not plain or says_none_failed(plain):
        return False
    return denies(plain) or record_says_failed(plain) or says_some_failed(plain)


def _letters(value: str) -> set[str]:
    return set(re.findall(r"[^\W\d_]+", fractions_spelled(value.casefold())))


def _all_of(words: set[str], known: frozenset[str]) -> bool:
    return words <= known


def is_tested(value: str) -> bool:
    """Whether it names a tested recipe and nothing else: "tested", "USDA recipe"."""
    return re.fullmatch(_TESTED, value.casefold()) is not None


def _process(value: str) -> bool:
    return one_canner(value) or is_tested(value)


def _pack(value: str) -> bool:
    return bool(re.fullmatch(r"(?:hot|raw|cold)(?:[\s-]*pack(?:ed)?)?", value.casefold()))


def _acid(value: str) -> bool:
    words = _letters(value)
    named = bool(words & _ACIDS) and _all_of(words, _ACIDS | _BESIDE_ACID)
    # Vinegar has a strength; juice with a percentage is diluted, and none is tested.
    plain = read_spoons(value) is not None and ("%" not in value or "vinegar" in words)
    return _only_none(value) or value.casefold() in YES or (named and plain)


def adds_acid(value: str) -> bool:
    """Whether what stands behind the name of an acid says that it was added, and how: "yes",
    "1 tbsp", "bottled", "in each jar"; a mark or a small word alone says nothing."""
    return bool(_letters(value) & (_BESIDE_ACID - _SMALL | YES | _ACIDS) or re.search(r"\d", value))


def _vinegar(value: str) -> bool:
    words = _letters(value)
    named = bool(words - _AROUND_VINEGAR) or re.search(r"\d", value) is not None
    # "1 cup to 3 cup": of water, or as much more?
    mixed = re.search(rf"{_POURED}.*\bto\b.*{_POURED}", value.casefold()) is not None
    plain = named and not mixed and _all_of(words, _VINEGARS)
    return _only_none(value) or value.casefold() in YES or plain


def _altitude(value: str) -> bool:
    try:
        return -1500 <= read_altitude(value) <= 20_000
    except BadInput:
        return False


def _seal(value: str) -> bool:
    plain = value.casefold().strip()
    # Nobody looked yet; and rings are taken off what is well sealed.
    if re.search(r"\b(?:rings?|bands?)\b", plain) or (denies(plain) and "check" in plain):
        return False
    if plain in _SEALED | YES or says_none_failed(plain):
        return True
    # "No leaks and loose" would be read as its contrary.
    twice = denies(plain) and record_says_failed(without_denial(plain))
    return seal_failed(value) and not twice


def _numbered(value: str, units: frozenset[str]) -> bool:
    """A number, alone or with words of the kind that are listed; of one to so many (1:50) nobody
    says of what."""
    plain = spelled_out(value)
    numbered = re.search(r"\d", plain) is not None and ":" not in plain
    return numbered and _all_of(_letters(plain), units | _OF)


def _measured(value: str, units: frozenset[str]) -> bool:
    """The same, or yes or no, or that it was left out."""
    return _numbered(value, units) or spelled_out(value) in YES | NO or _only_none(value)


def _ph(value: str) -> bool:
    """One number, or a range: "4 1" is none."""
    number = r"(\d+(?:[.,]\d+)?)"
    said = in_decimals(spelled_out(value))
    found = re.fullmatch(rf"(?:ph )?{number}(?:\s*(?:-|–|to|and)\s*{number})?", said)
    low, high = _PH
    return found is not None and all(
        low <= float(one.replace(",", ".")) <= high for one in found.groups() if one
    )


def _syrup(value: str) -> bool:
    """A syrup by its name: "light syrup", "extra heavy syrup", "honey syrup"."""
    words = value.casefold().split()
    return words[-1:] == ["syrup"] and _all_of(set(words[:-1]), _SYRUPS)


def _yes_no(value: str) -> bool:
    return value.casefold() in YES | NO


def _state(value: str) -> bool:
    try:
        return State(value.casefold()) is not State.GONE
    except ValueError:
        return False


#: Key -> the most that any kitchen writes of it.
_MOST = {"minutes": 6000.0, "psi": 60.0, "temperature": 1000.0, "headspace": 6.0}
#: No food reads outside this: the meter or the typing is wrong.
_PH = 1.0, 10.0
_PERCENT = r"(\d+(?:[.,]\d+)?)\s*(?:%|per\s?cent\b)"
#: What may be below nought, or is read by somebody else.
_MAY_BE_BELOW = frozenset({"temperature", "altitude", "printed", "amount"})
_ANY_WORDS = frozenset({"by", "amount", "printed", "form", "prepared"})
#: A point or comma that stands alone before a number, or two of them: nobody knows what it parts.
_LOST_POINT = r"[.,·٫]{2,}\s*\d|^[.,·٫]\s+\d|\s[.,·٫]\s+\d|(?<=[^\W\d_])\.\d"


def beyond(key: str, value: str) -> bool:
    """Whether a number in the value is none that this key can have: of a thousand digits, below
    nought, more than all of it (of percents), or more than any kitchen reaches."""
    if key in ("by", "form", "prepared"):
        return len(value) > 200
    if plain_digits(value) and len(value) < 8:
        number = _NUMBER_OF.get(key, float)(value) if value else None
        return number is not None and number > _MOST.get(key, MOST)
    if re.search(r"\d{8}|\d[.,]\d{8}|\d/0+(?!\d)|\de[-+]?\d", value.casefold()):
        return True
    if key not in _ANY_WORDS and re.search(_LOST_POINT, value.casefold()):
        return True
    if key not in _MAY_BE_BELOW and re.match(r"\s*[-−–]\s*[\d.,]", value):
        return True
    if any(
        float(one.replace(",", ".")) > 100
        for one in re.findall(_PERCENT, in_decimals(value.casefold()))
    ):
        return True
    number = _NUMBER_OF.get(key, _first_number)(value)
    return number is not None and number > _MOST.get(key, MOST)


_NUMBER_OF = {"minutes": read_minutes, "psi": read_psi, "headspace": read_inches}


def _first_number(value: str) -> float | None:
    found = re.search(r"\d+(?:[.,]\d+)?", in_decimals(value))
    return float(found[0].replace(",", ".")) if found else None


#: Key -> whether its value is understood. An amount and a printed day are read by who books them.
READERS: dict[str, Callable[[str], bool]] = {
    "minutes": lambda value: read_minutes(value) is not None,
    "psi": lambda value: read_psi(value) is not None,
    "canner": one_canner,
    "process": _process,
    "pack": _pack,
    "jar": one_jar,
    "form": all_understood,
    "prepared": all_understood,
    "acid": _acid,
    "vinegar": _vinegar,
    "altitude": _altitude,
    "seal": _seal,
    "headspace": lambda value: _measured(value, _GAPS),
    "by": bool,
    "salt": lambda value: _measured(value, _SALTS),
    "sugar": lambda value: _measured(value, _SUGARS) or _syrup(value),
    "ph": _ph,
    "vacuum": _yes_no,
    "blanched": lambda value: _yes_no(value) or read_minutes(value) is not None,
    "temperature": lambda value: _numbered(value, _DEGREES),
    "cure": lambda value: _measured(value, _CURES),
    "amount": bool,
    "state": _state,
    "printed": bool,
    "dated": lambda value: value.casefold() in ("use-by", "best-before", "sell-by"),
    "sold": lambda value: value.casefold() in ("shelf", "chilled"),
}
#: Key -> what may be written.
HINTS: dict[str, str] = {
    "minutes": "write minutes=25 or minutes=1h15",
    "psi": "write psi=11 or psi=76kPa",
    "canner": "write canner=dial, weighted, boiling-water or steam",
    "process": "write process=boiling-water, pressure, tested or none",
    "pack": "write pack=hot or pack=raw",
    "jar": "write jar=pint, quart or 500ml",
    "form": "write form=bone-in, boneless, whole, halved or sliced; anything else into a note",
    "prepared": "write prepared=whole, diced, peeled or unpeeled; anything else into a note",
    "acid": "write acid=lemon, acid=citric or acid=none, and how much in tsp, tbsp, cups or ml",
    "vinegar": "write vinegar=5%, vinegar=homemade or vinegar=none",
    "altitude": "write altitude=1800ft or altitude=550m",
    "seal": "write seal=tight if the lid is held down, seal=failed if it is not",
    "headspace": "write headspace=1/2in",
    "by": "write by=us, or who made it",
    "salt": "write salt=2.25%, salt=3tbsp to 5 lb, or salt=none",
    "sugar": "write sugar=60%, sugar=2lb or sugar=none",
    "ph": "write ph=4.1, a number from 1 to 10",
    "vacuum": "write vacuum=yes or vacuum=no",
    "blanched": "write blanched=3min or blanched=no",
    "temperature": "write temperature=160F",
    "cure": "write cure=yes, or its number",
    "amount": "write amount=30lb",
    "state": "write state=sealed, open, thawed or in-progress",
    "printed": "write printed=2027-03-31",
    "dated": "write dated=use-by, dated=best-before or dated=sell-by",
    "sold": "write sold=shelf or sold=chilled, as it stood in the shop",
}
