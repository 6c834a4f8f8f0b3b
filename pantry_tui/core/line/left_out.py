"""What a line says of its process that speaks against it: parts that say what was left out ("no
lemon juice", "skipped the salt", "vinegar omitted"), and a pressure cooker that is no canner. They
become pairs of the record of a process."""

from __future__ import annotations

from itertools import groupby

from pantry_tui.core.line.tokens import Line
from pantry_tui.core.safety.denial import says_only_lacking

#: Key -> what is called so.
_THINGS = {
    "acid": r"lemon|lime|citric|acid",
    "vinegar": "vinegar",
    "salt": "salt",
    "sugar": "sugar",
    "process": r"process(?:ed|ing)?|water bath",
}


_COOKERS = frozenset({"cooker", "saucepan", "pan", "pot"})


def take_cooker(line: Line, pairs: dict[str, str]) -> None:
    """The cooker of "pressure cooker" and "pressure cooker canned": the method stays to be read,
    the pot goes into the record, where it is judged."""
    for i in range(len(line.tokens)):
        if line.word(i) in _COOKERS and line.word(i - 1) == "pressure" and "process" not in pairs:
            pairs["process"] = f"pressure {line.word(i)}"
            line.claim(i, i + 1)


def take_left_out(line: Line, pairs: dict[str, str]) -> None:
    """Claims every part that says nothing else, and adds it to `pairs`; what a key says already is
    left where it stands, so that it is asked about."""
    numbered = [i for i in range(len(line.tokens)) if line.free[i]]
    for _, part in groupby(numbered, key=lambda i: line.tokens[i].part):
        indices = list(part)
        text = " ".join(line.tokens[i].text for i in indices)
        key = next((one for one, things in _THINGS.items() if says_only_lacking(text, things)), "")
        if key and pairs.get(key, "none") == "none":
            pairs[key] = "none"
            for i in indices:
                line.claim(i, i + 1)
