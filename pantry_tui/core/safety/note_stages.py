"""What a note says against a stage of a process, for notes in small letters, numbers in figures."""

from __future__ import annotations

import re
from collections.abc import Iterator

from pantry_tui.core.safety.note_heating import HEATING
from pantry_tui.core.safety.note_jars import OF_JARS
from pantry_tui.core.safety.note_unsure import UNSURE
from pantry_tui.core.safety.note_words import speaks
from pantry_tui.core.words import Method

#: Jars that were full, and stood before they were heated: what is in them cools and grows, and its
#: time is tested from hot jars. Common practice, no source; the stricter one.
_FULL = r"\b(?:fill|pack|jarr|bottl|ladl|put up)\w*\b"
_EARLIER_DAY = (
    r"\b(?:evening|night|yesterday|afternoon|noon|supper|dinner|lunch\w*|mid ?day|breakfast|"
    r"morning|dawn|"
    r"day before|last thing|(?:mon|tues|wednes|thurs|fri|satur|sun)day)\b"
)
_HEATED_LATER = (
    r"\b(?:process|cann|bath|boil|heat)\w*\b(?: \w+){0,4}? (?:(?:the )?(?:next|following) (?:day|"
    r"morning|evening)|tomorrow|(?:the )?(?:day|morning) after|(?:a|1|2|3) days? (?:after|later)|"
    r"later|in the morning|first thing|"
    r"at (?:dawn|dusk|midnight)|after (?:midnight|dinner|supper|lunch|tea|dark)|at night|"
    r"in the evening|that (?:night|evening)|"
    r"(?:mon|tues|wednes|thurs|fri|satur|sun)day|after work|over ?night)\b"
)
_STOOD_FULL = (
    r"\b(?:filled|full|packed|loaded|waiting|raw packed|cold packed)(?: (?:the|my))? jars\b(?: \w+)"
    r"{0,4} (?:sat|stood|stand|wait\w*|left|rested|in the fridge|out)\b|"
    r"\bwait\w*\b.*\b(?:next day|morning|hours|tomorrow|evening|night)\b.*\bto (?:process|can|"
    r"bath)\b|"
    r"\b(?:jars|them|they)(?: \w+){0,2} (?:full|packed|filled) (?:since|for (?!the winter)|all)\b|"
    r"\blet (?:the )?(?:filled|packed|full) jars (?:cool|sit|stand|wait|rest)|\b(?:sat|stood|"
    r"stayed) full\b|"
    r"\bjars (?:sat|stood|wait\w*|were left|rested)(?: \w+){0,3} (?:filled|full|packed|before)\b|"
    r"\b(?:fill|pack|jarr)\w*\b(?: \w+){0,5} (?:then|and) (?:left|waited|sat|stood|slept|forgot|"
    r"went (?:to bed|out|to work|off))\b"
)
_OF_THE_CROP = r"\b(?:pick|harvest|bought|shell|snapp|peel|soak|chop|prep|thaw)\w*\b"


def gone_wrong(method: Method, clause: str) -> Iterator[str]:
    """The keys that a clause puts in doubt by what it says of a stage, "" of what no key says."""
    for stage in (*HEATING, *OF_JARS, *UNSURE):
        if (
            method in stage.methods
            and speaks(clause, stage.about)
            and re.search(stage.wrong, clause)
            and not (stage.well and re.search(stage.well, clause))
        ):
            yield stage.key


def delayed(note: str) -> str:
    """The words of a whole note, in small letters, that jars were filled and heated much later."""
    if not re.search(r"\b(?:fill|full|pack|jar|bottl|load|ladl|process|wait)", note):
        return ""
    if found := re.search(_STOOD_FULL, note):
        return found[0]
    later = re.search(_HEATED_LATER, note)
    if later is None:
        return ""
    full = re.search(_FULL, note[: later.start()])
    # "Processed" alone is said of full jars, "canned" of all that was done.
    same = "process" in later[0] and not re.search(_OF_THE_CROP, note[: later.start()])
    if same or (full and re.search(_EARLIER_DAY, note[full.start() : later.start()] or "")):
        return later[0]
    return ""
