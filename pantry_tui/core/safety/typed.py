"""How the figures of a record may be typed: other digits and signs made plain, and what nobody can
count by: two numbers side by side, a mark that makes a number uncertain, a sign behind nothing."""

from __future__ import annotations

import re
import unicodedata

from pantry_tui.core.amounts import in_decimals, plain_digits

_NUMBER = r"\d+(?:[.,]\d+)?"
#: Thousandths, in a sign or in words.
_PER_MILLE = r"(?i)\b(?:per|pro)[\s-]?mill?e?\b"
_THOUSANDTHS = rf"({_NUMBER})(?:(\s*(?:-|–|to)\s*)({_NUMBER}))?\s*‰"
#: Signs as wide as a letter of the East, and what they are beside.
_WIDE, _WIDE_BY = range(0xFF01, 0xFF5F), 0xFEE0
_PLAIN = {"٪": "%", "﹪": "%", "º": "°", "℃": "°C", "℉": "°F"}
#: What people write beside letters and figures; any other mark ("~5%", "≥4", "5*") says something
#: of a number that nobody here can judge.
_STRANGE = r"[^\w\s.,/⁄()%°'\"′″’:;&#@+·٫‘“”–−-]"
#: Keys whose numbers are of one thing each.
_FIGURED = frozenset(
    {"salt", "sugar", "vinegar", "acid", "cure", "temperature", "headspace", "altitude"}
)
#: Of what a degree is: of heat, and of the acid in a vinegar (5° are 5 %).
_IN_DEGREES = frozenset({"temperature", "vinegar"})
_UNCOUNTED = (
    r"\d\s+\d|"  # "0 5%"
    r"\d\s*[,;]\s+\d|"  # "5, 10%"
    r"\d[.,]\d+[.,]\d"  # "1.5.2"
)
_ABOUT = (
    r"\b(?:about|approx\w*|around|roughly|circa|nearly|almost|or so|ish|maybe|perhaps|probably)\b"
)
_SHARE = r"\d\s*/\s*\d"
_COUNTED_SIGNS = r"\d\s*%|\d[\s-]*grain\b"


def plainly_typed(value: str) -> str:
    """("５％", "٥٪", "½‰") -> "5%", "5%", "0.05%": digits and signs of other scripts as they are
    known here; thousandths become per cent, which every reader knows."""
    if plain_digits(value):
        return value
    plain = "".join(map(_plain, value))
    if "‰" not in (plain := re.sub(_PER_MILLE, "‰", plain)):
        return plain
    return re.sub(_THOUSANDTHS, _in_percent, in_decimals(plain))


def _plain(sign: str) -> str:
    if sign.isascii():
        return sign
    if ord(sign) in _WIDE:
        return chr(ord(sign) - _WIDE_BY)
    digit = unicodedata.decimal(sign, None)
    return _PLAIN.get(sign, sign) if digit is None else str(digit)


def _in_percent(found: re.Match[str]) -> str:
    low, joint, high = found[1], found[2] or "", found[3]
    tenths = [f"{float(one.replace(',', '.')) / 10:g}" for one in (low, high) if one]
    return f"{joint.join(tenths)}%"


def uncounted(key: str, value: str) -> bool:
    """Whether nobody can say which number is meant, or of what. Values are `plainly_typed`."""
    if plain_digits(value):
        return False
    if re.search(_STRANGE, value) or "‰" in value or re.search(_ABOUT, value.casefold()):
        return True
    if key not in _FIGURED:
        return False
    plain = in_decimals(value.casefold())
    rest = re.sub(_COUNTED_SIGNS, " ", plain)
    degree = "°" in plain and key not in _IN_DEGREES and "brix" not in plain
    share = key not in ("headspace", "altitude") and re.search(_SHARE, plain)
    return bool(
        re.search(_UNCOUNTED, plain) or share or degree or re.search(r"[%:]|\bgrain\b", rest)
    )
