"""What services say in commands, for paper: nobody types there, so it is said what to do and not
how it is booked."""

from __future__ import annotations

import re

#: A command in brackets, which says how; one behind a comma or a colon, or with which it is done.
_ASIDE = re.compile(r" \((?:like |see )?`[^`]*`\)")
_APPOSED = re.compile(r"((?:,? or|[,:])(?: (?:by|with|see))?) `([^`]*)`(?=[.;,)]|$)")
_BY = re.compile(r"( by| with) `([^`]*)`")
_COMMAND = re.compile(r"`([^`]*)`")
#: Of a command: the program, what it is done to, how much of it is chosen.
_NO_WORDS = re.compile(
    r'^pantry-tui |"[^"]*"|--?[a-z]\S*|\b[0-9][A-Z]+(?:/\d+)?\b|\b[A-Z]+\b|\S*=\S*'
)
#: Their second word is a part of their name.
_OF_TWO = ("household ", "place ", "timer ")


def plainly(text: str) -> str:
    """ "Check the seals first (`tend 2A`)." -> "Check the seals first."; "say `looks sound`" ->
    "say looks sound"."""
    if "`" not in text:
        return text
    text = _APPOSED.sub(_but_how, _ASIDE.sub("", text))
    return _COMMAND.sub(lambda found: _words(found[1]), _BY.sub(_but_how, text))


def _but_how(found: re.Match[str]) -> str:
    """Nothing, unless it says more than which command it is."""
    words = _words(found[2])
    return f"{found[1]} {words}" if " " in words and not words.startswith(_OF_TWO) else ""


def _words(command: str) -> str:
    """ "sign 7C looks sound" -> "sign looks sound"."""
    return " ".join(_NO_WORDS.sub("", command).split())
