"""A note in the form of a table ("Spoiled: no", "Smell: off"), as lists have it: read as the words
that a person would say of it. A choice of our own, the stricter one."""

from __future__ import annotations

import re

_LABELLED = re.compile(r"([^\W\d_][^:/\d]{0,39}?) ?: ?(\S.*)")
_YES = frozenset({"yes", "y", "x", "true", "✓", "✔", "1", "ja", "oui"})
_NO = frozenset(
    {"no", "n", "none", "false", "0", "nothing", "nil", "never", "not", "not yet", "non", "nein",
     "n/a", "na", "-", "no problem", "no problems"}
)  # fmt: skip
#: What comes of them is said by the value alone.
_SAYS = re.compile(
    r"(?:signs?|problems?|issues?|observations?|observed|conditions?|remarks?|comments?|faults?|"
    r"defects?|what happened|verdict|result|inspection|check|looks?|appearance)"
)
#: The value says how they are.
_HOW = re.compile(r"(?:smells?|odou?rs?|scent|aroma|taste|flavou?r|recipe)")
_WELL = re.compile(
    r"\b(?:ok|okay|fine|good|normal|usual|great|nice|lovely|clean|fresh|perfect|pleasant|sound|"
    r"tested|safe|pass(?:ed)?)\b"
)
_SOUND = re.compile(
    r"(?:still )?(?:ok|okay|good|fine|safe|sound|edible|usable|fit)(?: to (?:eat|use|keep))?"
)
_BAD = re.compile(
    r"(?:is |gone |went )?(?:bad|off|unsafe|spoil(?:ed|t)|contaminated|discard(?:ed)?|rejected|"
    r"not (?:safe|good|edible|ok|fit)(?: to eat)?|(?:throw|thrown|threw) (?:it )?(?:out|away)|"
    r"bin(?:ned)?(?: it)?|toss(?:ed)?(?: it)?|inedible|fail(?:ed)?|to (?:bin|discard|throw out))"
)
_PARTICIPLE = re.compile(
    r"\w+(?:ed|ing)|lost|shut|tight|broken|soft|open|kept|swollen|rotten|mouldy"
)
_BAD_WORD = "spoiled"


def in_words(clause: str) -> str:
    """A clause in small letters, without its label where it has one."""
    found = _LABELLED.fullmatch(clause)
    if found is None:
        return clause
    label, value = found[1].strip(" ?"), found[2].strip(" .")
    if value in _YES:
        return _BAD_WORD if _BAD.fullmatch(label) else label
    if value in _NO:
        return _BAD_WORD if _SOUND.fullmatch(label) else _denied(label)
    if _SAYS.fullmatch(label):
        return _BAD_WORD if _BAD.fullmatch(value) else value
    if _HOW.fullmatch(label) and not (_WELL.search(value) and "not " not in f" {value}"):
        return f"{value} {label}"
    return clause


def _denied(label: str) -> str:
    """("seal checked") -> "seal not checked"; ("tested recipe") -> "recipe not tested"."""
    first, *rest = label.split()
    if _PARTICIPLE.fullmatch(first):
        return f"{' '.join(rest)} not {first}".strip()
    if rest and _PARTICIPLE.fullmatch(rest[-1]):
        return " ".join((first, *rest[:-1], "not", rest[-1]))
    return f"no {label}"
