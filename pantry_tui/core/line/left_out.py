"""Parts of a line that say what was left out: "no lemon juice", "skipped the salt", "vinegar
omitted". They become the pairs that the record of a process knows, with nothing behind the key."""

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
