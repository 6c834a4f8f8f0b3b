"""Text that people typed, made fit to stand on one line of a terminal."""

from __future__ import annotations

#: Marks that turn the writing direction of what follows them.
_TURNING = frozenset(map(chr, (*range(0x202A, 0x202F), *range(0x2066, 0x206A), 0x200E, 0x200F)))


def clean(text: str) -> str:
    """One line without control characters or marks that turn the writing direction."""
    kept = (char if char.isprintable() else " " for char in text if char not in _TURNING)
    return " ".join("".join(kept).split())


def begun(text: str) -> str:
    """("put up 2A") -> "Put up 2A": the first letter large, all others as they are, since a lid
    code or a name in small letters is another one."""
    return f"{text[:1].upper()}{text[1:]}"


def has_name(text: str) -> bool:
    """Whether anybody can see a letter or a figure of it."""
    return any(char.isalnum() for char in text)


def in_sight(text: str) -> str:
    """Lines for a terminal, whatever a log holds: no character of them steers it."""
    if text.replace("\n", " ").isprintable() and _TURNING.isdisjoint(text):
        return text
    kept = (c if c == "\n" or c.isprintable() else " " for c in text if c not in _TURNING)
    return "".join(kept)


def whole_characters(text: str) -> str:
    """The text with U+FFFD for each half of a character (a byte of a file's name that is no text),
    at which strict readers of JSON stop."""
    if text.isprintable():
        return text
    return "".join("\ufffd" if "\ud800" <= char <= "\udfff" else char for char in text)


def unsteered(json: str) -> str:
    """JSON whose strings steer no terminal and no reader: C1 controls, marks that turn the writing
    direction, line ends of other kinds and halves of characters as `\\u009b`."""
    if json.isprintable():  # what steers never is
        return json
    import re

    steering = "[\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ud800-\udfff]"
    return re.sub(steering, lambda found: f"\\u{ord(found[0]):04x}", json)


def singular(word: str) -> str:
    """ "berries" -> "berry", "peaches" -> "peach", "jars" -> "jar"; by ending alone."""
    if len(word) > 4 and word.endswith("ies"):
        return word[:-3] + "y"
    if len(word) > 4 and word.endswith(("ches", "shes", "xes", "sses", "toes")):
        return word[:-2]
    if len(word) > 3 and word.endswith("s") and not word.endswith(("ss", "us", "is")):
        return word[:-1]
    return word


def counted(number: float, many: str) -> str:
    """(1, "batches") -> "1 batch", (1200, "jars") -> "1,200 jars", (2.5, "servings") -> "2.5
    servings"; only the first word is counted: (1, "rows more") -> "1 row more"."""
    noun, gap, rest = many.partition(" ")
    shown = f"{number:,}" if isinstance(number, int) else f"{number:g}"
    return f"{shown} {singular(noun) if number == 1 else noun}{gap}{rest}"


def agreed(number: float, one: str, many: str) -> str:
    """What stands behind a count: (1, "is", "are") -> "is"."""
    return one if number == 1 else many
