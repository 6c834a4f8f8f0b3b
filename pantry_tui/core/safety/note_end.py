"""What a note says of the end of a process, and of power or gas that failed at another time: the
heat goes off when the time is over, the pressure falls by itself, jars rest some minutes in the
open canner (USDA AIB 539, guide 1). For notes in small letters, numbers in figures. Which words are
taken so is a choice of our own; where any word says that it came too early nothing is.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import date

from pantry_tui.core.canned import LIDDED
from pantry_tui.core.words import Method

_THE = r"(?:(?:the|my|our|it|then|and|just|all) )*"
_FIRE = r"(?:heat|gas|stove|burner|hob|ring|flame|cooker|canner|pot|pressure canner)"
_WHEN_OVER = (
    r"(?: (?:afterwards?|at the end|when (?:it was )?done|then|after that|after the time))?"
)
_DIAL = r"(?:pressure|gauge|needle|dial|weight|canner)"
_BY_ITSELF = r"(?: (?:by itself|on its own|naturally|slowly|all|back|down))*"
_ZERO = r"(?:0|zero)"
#: A whole clause that says that it was over.
_END = (
    rf"{_THE}{_FIRE} (?:(?:was|is|turned|switched|taken|went) )*off(?: the (?:heat|stove|burner|"
    rf"hob|ring|gas))?{_WHEN_OVER}|"
    rf"{_THE}(?:(?:turned|switched|shut|took|taken|slid|moved|lifted) )?{_THE}(?:canner |pot |it )?"
    rf"off {_THE}{_FIRE}{_WHEN_OVER}|"
    rf"{_THE}(?:turned|switched|shut) {_THE}{_FIRE} off{_WHEN_OVER}|"
    rf"{_THE}{_DIAL} (?:(?:fell|fallen|dropped|came|back|went|down|is|was|at|to|by itself|on its "
    rf"own|had) )*{_ZERO}{_BY_ITSELF}|"
    rf"(?:at )?{_ZERO} (?:after|in) (?:about )?[\d.]+ ?(?:min\w*|hours?)|"
    rf"{_THE}(?:natural|own) (?:pressure )?(?:release|cool\w*|fall|drop)|"
    rf"{_THE}(?:opened?|unlocked) {_THE}(?:canner|lid|pot)? ?(?:after|when|once) (?:it|all|"
    r"everything) (?:was|had|is) (?:all |quite |down to )?(?:cold|cooled|cool|0)(?: down)?"
)
#: Nothing but how long it rested then, and what was done with the canner.
_REST = (
    r"(?:(?:then|and|after|waited|wait|waiting|rested?|rest|of|for|until|till|another|about|only|"
    rf"just|the|lids?|jars?|pressure|gauge|needle|{_ZERO}|down|off|out|in|at|to|it|was|were|took|"
    r"them|all|left|let|come|came|fell|fall|dropped|drop|open|opened|opening|cool\w*|stood|sat|"
    r"canner|pot|bath|towel|on|a|more|coffee|tea|by|itself|own|its|naturally|slowly|before|lifted|"
    r"took|taken|half|0\.5|an|1|min\w*|hours?|hrs?|h|\d+(?:\.\d+)?) ?)+"
)
_EARLY = (
    r"\b(?:re ?lit|re ?start\w*|half ?way|mid ?way|in the middle|part ?way|too (?:soon|early)|"
    r"early|twice|back on|on again|again|kids?|child\w*|somebody|someone|mistake|accident\w*|"
    r"forgot\w*|died|ran out|before (?:the |its )?(?:time|end)|instead|for (?:a|some) (?:bit|"
    r"moment|minute|while)|during|while|at once|straight|immediately|quick\w*|forc\w*|cold "
    r"water|over ?night|next (?:day|morning)|psi|pounds?|lb|carried on|went on|counted|by itself "
    r"off|tripped|itself off)\b"
)
#: Steam goes away from whoever opens it.
_LID_AWAY = (
    r"\b(?:canner )?lid (?:was )?(?:opened|lifted|tilted|tipped|raised) away from (?:me|us|my "
    r"face|the face)\b"
)
_SUPPLY = (
    r"\b(?:power|electric\w*|current|black ?out|brown ?out|outage|mains|gas(?: bottle)?|propane)\b"
)
_WEEKDAY = r"\b(?:last |on )?(mon|tues|wednes|thurs|fri|satur|sun)days?\b"
_DAYS = ("mon", "tues", "wednes", "thurs", "fri", "satur", "sun")
#: They were done by then.
_DONE_BY_THEN = (
    r"\bjars (?:were |was |all |had )*(?:already|long|long since|by then|safely)?(?: \w+)? ?"
    r"(?:done|cold|out|cooling|cooled|sealed|on the (?:towel|table|counter|shelf|rack))\b|"
    r"\bjars (?:already |long |all )+\w+"
)
#: It came back, and only then was it begun.
_BEGUN_AFTER = (
    r"\b(?:came|was|is|were) back\b[^;]*; (?:then |only then |so )?(?:canned|began|begun|started|"
    r"processed|put up)(?! (?:again|over|counting|anew|where))|"
    r"\b(?:came|was|is) back(?: on)? (?:so|and) (?:i|we) could (?!carry|go on|finish|continue|"
    r"resume)|"
    r"\bmains? (?:was |were )?off\b[^;]*; (?:then |only )?(?:canned|began|started|processed|put up)"
    r"(?! (?:again|over|counting|anew))"
)
_LASTED = (
    r"\b(?:gas|propane|bottle|fuel)\b[^;]*\blow\b[^;]*; (?:it )?(?:\w+ )?(?:lasted|held out|"
    r"just enough|enough to finish)\b|\b(?:ran out|empty|finished) (?:just )?after (?:the |that )?"
    r"(?:last )?(?:load|batch|canner|jars|one)\b|\bthat was before\b(?! (?:the )?(?:time|end))"
)
#: Before it was over.
_CUT_SHORT = (
    rf"\b{_FIRE} (?:(?:was|went|turned|switched|is) )*off(?: (?:half ?way|mid ?way|part ?way|in "
    rf"the "
    r"middle|too (?:soon|early)|by (?:mistake|accident))|; (?:then |and )?(?:back on|on again|re "
    r"?lit)"
    r"\b)|"
    r"\b(?:weight|regulator|jiggler|rocker) (?:(?:was|off|got) )*(?:pulled|taken|lifted|knocked|"
    r"removed)(?: off)? at \d+ ?(?:lb|psi|pounds?)"
)


def of_the_process(
    method: Method, every: Sequence[tuple[str, str]], made: date | None = None
) -> list[tuple[str, str]]:
    """The clauses of a note on jars without what is of the end of their process, or of a day on
    which they were not `made`."""
    if method not in LIDDED:
        return list(every)
    together = "; ".join(clause for _, clause in every)
    another = re.search(rf"{_DONE_BY_THEN}|{_BEGUN_AFTER}|{_LASTED}", together) is not None
    early = re.search(_EARLY, together) is not None
    found, over = [], False
    for typed, told in every:
        clause = re.sub(_LID_AWAY, " ", told)
        if not early and re.fullmatch(_END, clause):
            over = True
            continue
        if over and re.fullmatch(_REST, clause):
            continue
        if re.search(_SUPPLY, clause) and (another or _of_another_day(clause, made)):
            continue
        found.append((typed, clause))
    return found


def _of_another_day(clause: str, made: date | None) -> bool:
    day = re.search(_WEEKDAY, clause)
    return day is not None and made is not None and _DAYS.index(day[1]) != made.weekday()


def cut_short(note: str) -> bool:
    """Whether a whole note, its clauses parted by "; ", has the heat or the weight off too soon."""
    return re.search(_CUT_SHORT, note) is not None
