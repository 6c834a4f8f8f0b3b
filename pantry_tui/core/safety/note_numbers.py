"""The numbers of a note held against those of its record: a time, a pressure, a height, a share, a
jar, a pack that the record does not have, or that is only nearly so.

`clause` is one clause of a note, in small letters and with its numbers in figures.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from pantry_tui.core.amounts import in_digits, read_altitude
from pantry_tui.core.canned import LIDDED, PROCESSED
from pantry_tui.core.safety import note_words as terms
from pantry_tui.core.safety.denial import denies
from pantry_tui.core.safety.jars import of_one_jar, ounces
from pantry_tui.core.safety.measured import all_minutes, read_percent, read_psi
from pantry_tui.core.safety.note_mixture import REDUCED_SODIUM, hardly_sweet
from pantry_tui.core.safety.note_packed import packed_otherwise
from pantry_tui.core.safety.note_pressed import let_down_to, rose_to
from pantry_tui.core.safety.salt import says_of_brine
from pantry_tui.core.words import Method
from pantry_tui.errors import BadInput

#: A vent of ten minutes precedes every pressure process (USDA AIB 539, guide 1).
_VENT_MINUTES = 10.0
#: Food is boiled so long before it is packed hot, at most; jars are boiled longer. Our own line.
_LONGEST_HOT_PACK = 10.0
_BOILED = r"(?:only )?boiled (?:them |the jars )?(?:for )?[\d.]+ \w+"
#: No process of jars is so long: it is of something else, unless it is said to be one.
_LONGEST = 300.0
_N = terms.NUMBER
_TIMED = rf"(?<![\d.])({_N}(?:\s*(?:-|–|to)\s*{_N})?)\s*(h|hrs?|hours?|mins?|minutes?|m)\b"
_PRESSED = rf"(?<![\d.])({_N})(?:\s*(?:-|–|to)\s*{_N})?\s*(psig?|kpa|bar|lbs?|pounds?|#)(?!\w)"
_HIGH = rf"(?<![\d.])({_N})\s*(ft|feet|foot|m|met(?:er|re)s?)\b"
_HIGH_BARE = rf"\b(?:altitude|elevation)\D{{0,12}}({_N})(?!\s*(?:[a-z%]|\d))"
_SHARE = rf"({_N})\s*(?:%|per\s?cent)"
_PH = rf"\bph\b\D{{0,12}}({_N})"
_INCHES = r"((?:\d+ )?\d+/\d+|\d+(?:\.\d+)?)\s*(?:in|inch|inches|cm|mm)\b"
#: The least that can be meant of a height: a row of the garden is shorter.
_LEAST_HIGH = 100.0
_JAR = (
    r"(?<!per )(?<!each )(?<!every )\b((?:half )?gallon|gal|(?<!half )pint|(?<!half )pt|quart|qt|"
    r"lit(?:re|er))s?\b"
    r"(?=\s*(?:$|jars?\b|and\b|were\b|was\b|size|not\b|did\b|among|in(?:stead)?\b|too\b|as\b|"
    r"bottles?\b|after all\b|really\b|actually\b|this time\b|mostly\b|all\b|rather\b|"
    r"half\b|by mistake\b|that\b))"
)
_SIZED = (
    r"\b(\d+(?:\.\d+)?\s*(?:ml|oz|l|lit(?:re|er)s?)|\d\.\d+\s*(?:pint|quart|qt|pt)s?) "
    r"(?:jars?|bottles?|ones)\b"
)
_AMOUNT_OF_ACID = rf"(?:\d+/\d+|{_N})\s*(?:tsp|tbsp|tbs|teaspoons?|tablespoons?)\b"

#: On the way to a process, or after it.
_UNTIL_THERE = (
    r"\b(?:took|takes|needed|after)\b.*\b(?:to (?:come|get|heat|reach|build|warm|cool|fall|drop)|"
    r"until|before)\b|\b(?:came|come|fell|dropped|went|goes|back) (?:back )?(?:down|to (?:zero|"
    r"0))\b.*\b(?:in|after|within)\b|\b(?:zero|(?:at|to) 0)\b|\bwithin\b.*\bof (?:pick|harvest|"
    r"cutt|com)|\bice bath\b|\b(?:cool|heat)\w* (?:down|up)\b"
)
_UNDER = r"\b(?:under|below|beneath|short of) \d{1,2}\b"
#: ("10 instead of 11", "40 of the 85 minutes")
_INSTEAD = (
    r"\b(\d{1,3}(?:\.\d+)?)(?: (?:min\w*|psi|lbs?|pounds?))? (?:instead of|rather than|"
    r"in place of|not|(?:out )?of (?:the )?)(?: ?the)? ?(\d{1,3}(?:\.\d+)?)\b"
)
#: The weight that was on it, by the pounds that it holds.
_WEIGHT = (
    r"\b(5|10|15)(?: ?(?:lbs?|pounds?|psi))? (?:weight|rocker|ring|regulator)\b(?! of)|"
    r"\b(?:put|had|used|with|left) (?:the|a) (5|10) on\b"
)
#: Where a steam canner is, at the heat of boiling water.
_STEAMED = (
    r"(?<!pressure )\bsteam (?:canner|bath|pot|kettle)\b|\bsteamer\b|\bsteamed (?:the )?jars\b"
)
#: What shows a pressure, and how it is read.
_SHOWN = terms.any_of(
    r"(?:shade|touch|bit|hair|little|just) (?:under|below)|(?:hover|peak|reach|read|sink|sank|slip|"
    r"slid|sagg|dipp|topp|climb|settl|bottom|plateau|crept|hung)\w*|(?:stay|sat|kept|held|hold|"
    r"keep|got|get|went|go|drop|fell|fall|stuck|was|manag)\w* (?:it |them |only |just |up |down |"
    r"out )*(?:at|to|near|around|under|below|beyond|past|above|about)|needle|dial|gauge|"
    r"pressure\b(?! can| cook)|psi|rocker|it$|(?:it|her|them) (?:to|at|past)"
)
_SHOWN_AT = (
    r"\b(?:at|to|past|above|over|below|under|around|about|near|beyond|beneath|reach\w*|h[eo]ld|"
    r"reads?|reading|show\w*|said|says|was|only|like|of|between|hit|touched|on) (\d{1,2}(?:\.\d+)?)"
    r"(?=$| (?!min|h\b|hours?|am\b|pm\b|jars|pints|quarts|o'clock|degrees|f\b|c\b|%|in\b|inch|of|"
    r"times|lids|high|low|off|out|pounds?|lbs?|psi|kpa|bar\b|years?|weeks?|days?|second))"
)
#: With what a word begins that leaves a number in doubt, or shows one.
_OF_DOUBT = (
    "needle", "dial", "gauge", "pressure", "psi", "rocker", "more", "close", "near", "rough",
    "only", "really", "barely", "perhaps", "prob", "poss", "up", "down", "hardly", "just", "not",
    "say", "i", "max", "or", "give", "pulled", "took", "quit", "stopped", "lifted", "ended", "cut",
    "called", "out", "her", "them", "of", "rather", "hover", "peak", "read", "sink", "sank", "slip",
    "slid", "sag", "dip", "top", "climb", "settl", "stay", "sat", "kept", "keep", "held", "hold",
    "get", "went", "go", "drop", "fell", "fall", "stuck", "was", "manag", "used", "weight", "might",
    "may", "could", "a", "between", "reach", "short", "did", "gave", "so", "crept", "hung",
    "bottom", "put", "timer",
)  # fmt: skip
#: A number without its unit that somebody is not sure of.
_HEDGED = (
    r"\b(?:more like|closer to|nearer(?: to)?|about|around|roughly|only|really|actually|barely|at "
    r"most|at best|maybe|perhaps|probably|possibly|up to|down to|nearly|almost|hardly|just "
    r"(?:under|over|shy of|short of)|short of|shy of|(?:might|may|could) have been|between|did|"
    r"gave (?:them|it)|so|settled for|not quite|say|i think|i guess|just) (\d{1,3}(?:\.\d+)?)(?=$| "
    r"(?:min(?:ute)?s?\b|psi\b|pounds?$|lbs?$|than|and \d|though|because|as they|since|not|instead|"
    r"really|actually|i think|at (?:most|best)|tops|or so|if that|max|in the end|by the clock|"
    r"rather|too))"
)
_HEDGED_BEHIND = (
    r"\b(\d{1,3}(?:\.\d+)?)(?: (?:min(?:ute)?s?|psi|pounds?|lbs?))? (?:tops|at most|at best|at the "
    r"most|max(?:imum)?|if that|maybe|or so|or less|or thereabouts|ish|i think|i guess|probably|"
    r"perhaps|give or take|really|actually)\b"
)
#: With a number of the record they leave it in doubt; "about 20 minutes" are 20.
_UNSURE = terms.any_of(
    r"short of|shy of|nearly|almost|barely|hardly|not quite|just (?:under|shy of)|"
    r"at (?:the )?(?:most|best)|maybe|"
    r"perhaps|probably|possibly|up to|tops|if that|or less|max(?:imum)?|i think|i guess|say|ish|"
    r"give or take|or thereabouts"
)
#: They were taken out, or it was turned off, at a number.
_ENDED_AT = (
    r"\b(?:pulled|took|quit|stopped|lifted|ended|cut|called|out|off|done|gave up|"
    r"finished|timer(?: \w+)? (?:rang|went|beeped|buzzed|pinged|dinged|stopped|ran out|said))\b"
    r"(?: \w+){0,3}? (?:at|after|in) (\d{1,3})"
    r"(?=$| (?:min(?:ute)?s?|instead|not|rather|already|as|because|since|when|so|to be|in)\b)"
)
#: More than was asked for, by intent: it had all of its time.
_FOR_SAFETY = (
    r"\b(?:to be (?:safe|sure|certain|on the safe side)|for (?:safety|good measure|luck)|"
    r"(?:just )?in case|extra|longer than|rather too long)\b"
)
#: A number of something else.
_OTHER_NUMBER = terms.any_of(
    r"pick\w*|harvest\w*|bought|yield\w*|weigh\w*\b(?! (?:came )?off)|jars?\b|pints?\b|made|"
    r"quarts?\b|age|aged|o'clock|people|serv\w*|heads?|rows?|plants?|box|page|no\b|cups?|kids|"
    r"price|cost|share|gave (?!it|them)|ate|vent\w*"
)
_Differs = Iterator[tuple[str, str | None]]


def differs(
    method: Method, size: str, said: Mapping[str, str], altitude_ft: int | None, clause: str
) -> _Differs:
    """The keys of which the words say a number that is not in the record: with the value, where the
    record has none and it can be judged; None where the two differ."""
    yield from _shares(said, clause)
    if hardly_sweet(method, clause):
        sugar = said.get("sugar", "")
        yield "sugar", None if sugar and not denies(sugar) else "none"
    if method not in LIDDED:
        return
    pickle = method is Method.VINEGAR_PICKLE and "form" not in said
    if pickle and re.search(REDUCED_SODIUM, clause):
        yield "form", "reduced-sodium"
    yield from _times(method, said, clause)
    yield from _pressures(method, said, clause)
    yield from _heights(said, altitude_ft, clause)
    yield from _nearly(method, said, clause)
    yield from packed_otherwise(said, clause)
    for degrees, unit in re.findall(terms.DEGREES, clause):
        if not re.search(terms.OTHER_DEGREES, clause) and not re.search(terms.DRIED_BEFORE, clause):
            yield "temperature", f"{degrees} {unit}"
    if "head" in clause:
        for inches in re.finditer(_INCHES, clause):
            yield "headspace", inches[0]
    if re.search(terms.ACID, clause) and re.search(_AMOUNT_OF_ACID, clause):
        yield "acid", clause
    sized = [holds for one in re.findall(_SIZED, clause) if (holds := ounces(one)) is not None]
    own, other = ounces(of_one_jar(said, size)), re.search(_JAR, clause)
    sized += [ounces(other[1]) or 0] if other and not re.search(terms.FILLED_FROM, clause) else []
    if own and max(sized, default=0) > own * 1.1:
        yield "jar", None
    bathed = method is Method.PRESSURE and re.search(terms.BATH, clause)
    if bathed or (method is Method.PRESSURE and re.search(_STEAMED, clause)):
        yield "canner", None
    if method is Method.BOILING_WATER and "steam canner" in clause:
        yield "canner", "steam"


def _shares(said: Mapping[str, str], clause: str) -> _Differs:
    for share in re.finditer(_SHARE, clause):
        named = next((key for key, words in _OF_A_SHARE if re.search(words, clause)), "")
        if not named:
            continue
        has = read_percent(said.get(named, ""))
        # The share of a brine is not the share of what lies in it.
        brine = " brine" if "brine" in clause else ""
        other = brine and named == "salt" and not says_of_brine(said.get(named, ""))
        if has is None or other:
            yield named, f"{share[1]}%{brine}"
        elif abs(has - float(share[1])) > 0.01:
            yield named, None
    for number in re.findall(_PH, clause):
        if said.get("ph") != number:
            yield "ph", number


_OF_A_SHARE = (
    ("vinegar", r"vinegar|acetic|acidity"), ("salt", r"\b(?:salt|brine)"), ("sugar", r"\bsugar"),
)  # fmt: skip


def _times(method: Method, said: Mapping[str, str], clause: str) -> _Differs:
    for typed, unit in re.findall(_TIMED, clause):
        minutes = all_minutes(f"{typed} {unit}")
        if not minutes or (unit == "m" and min(minutes) >= _LEAST_HIGH):
            continue
        vented = r"\b(?:vent|exhaust|purg)|\bsteam (?!canner)|\bof steam\b"
        if re.search(vented if method is Method.PRESSURE else r"\b(?:vent|exhaust)", clause):
            if method is Method.PRESSURE and min(minutes) < _VENT_MINUTES:
                yield "", None
            continue
        rested = re.search(terms.RESTED, clause) and "process" not in clause
        of_process = (re.search(terms.OF_PROCESS, clause) and not rested) or re.search(
            terms.ONLY, clause
        )
        if min(minutes) > _LONGEST and not of_process:
            continue
        if re.search(_UNTIL_THERE, clause) and not re.search(terms.ONLY, clause):
            continue
        whole = method is Method.BOILING_WATER and min(minutes) > _LONGEST_HOT_PACK
        boiled = whole and re.fullmatch(_BOILED, clause) is not None
        if not (of_process or boiled) and (
            re.search(terms.OTHER_TIME, clause) or method is Method.JAM
        ):
            continue
        recorded = all_minutes(said.get("minutes", ""))
        if not recorded:
            yield "minutes", f"{min(minutes):g}"
        elif not set(minutes) <= set(recorded) and not _had_more(clause, minutes, recorded):
            yield "minutes", None


def _had_more(clause: str, told: Sequence[float], recorded: Sequence[float]) -> bool:
    """Whether more time than is recorded is told of, and that it was meant so."""
    return min(told) >= max(recorded, default=1e9) and re.search(_FOR_SAFETY, clause) is not None


def _pressures(method: Method, said: Mapping[str, str], clause: str) -> _Differs:
    for found in re.finditer(_PRESSED, clause):
        before, behind = clause[: found.start()], clause[found.end() :]
        if found[2] in ("lb", "lbs", "pound", "pounds", "#"):
            led = re.search(r"(?:\bat|@|\bonly|\breally|\bactually|\bto|\bonto)\s*$", before)
            alone = not behind.strip() or re.search(terms.SUBJECT, clause) or led
            if method is not Method.PRESSURE or not alone or re.search(terms.OTHER_WEIGHT, clause):
                continue
        psi, recorded = read_psi(found[0].replace("#", "lb")), read_psi(said.get("psi", ""))
        if psi is None or method not in PROCESSED:
            continue
        if recorded is None:
            yield "psi", f"{psi:g}"
        elif psi > recorded and rose_to(before):
            continue  # more than its pressure, for a while
        elif abs(psi - recorded) > 0.1:
            yield "psi", None


def _heights(said: Mapping[str, str], altitude_ft: int | None, clause: str) -> _Differs:
    try:
        own: int | None = read_altitude(said.get("altitude", ""))
    except BadInput:
        own = altitude_ft
    clause = in_digits(clause)
    heights = [(f"{n} {unit}", float(n)) for n, unit in re.findall(_HIGH, clause)]
    heights += [(f"{n} ft", float(n)) for n in re.findall(_HIGH_BARE, clause)]
    for typed, number in heights:
        try:
            feet = read_altitude(re.sub(r"\s*(?:met\w+|m)$", " m", typed))
        except BadInput:
            continue
        if number < _LEAST_HIGH and not re.search(terms.ALTITUDE, clause):
            continue
        if own is None:
            yield "altitude", f"{feet} ft"
        elif abs(feet - own) > max(30, own * 0.02):
            yield "altitude", None
    high = "altitude" in clause or "elevation" in clause
    left_out = (
        high and re.search(terms.ALTITUDE_LEFT_OUT, clause) and not re.search(terms.NEED, clause)
    )
    away = " at " in clause and "altitude" not in said and re.search(terms.AWAY, clause)
    if left_out or away or (not heights and re.search(terms.HIGH_UP, clause)):
        yield "altitude", None


def _nearly(method: Method, said: Mapping[str, str], clause: str) -> _Differs:
    """("more like 8", "15 tops", "needle stayed at 9", "maybe 20 minutes") A number without its
    unit that is none of the record, or one of which somebody is not sure."""
    if not terms.speaks(clause, _OF_DOUBT) or not re.search(r"\d", clause):
        return
    minutes, psi = all_minutes(said.get("minutes", "")), read_psi(said.get("psi", ""))
    if method is Method.PRESSURE and psi is not None:
        weights = [float(one) for pair in re.findall(_WEIGHT, clause) for one in pair if one]
        if any(one < psi for one in weights):
            yield "psi", None
            return
    if method is Method.PRESSURE and psi is not None and let_down_to(clause) < psi:
        yield "psi", None
        return
    if re.search(_OTHER_NUMBER, clause):
        return
    pressed = method is Method.PRESSURE and re.search(_SHOWN, clause)
    if pressed:
        read = [float(one) for one in re.findall(_SHOWN_AT, clause)]
        under = re.search(_UNDER, re.sub(terms.NO_HARM, " fine ", clause))
        if low := [one for one in read if one > 0 and (psi is None or one < psi or under)]:
            yield "psi", f"{min(low):g}" if psi is None else None
            return
    bare = re.search(_HEDGED, clause) or re.search(_HEDGED_BEHIND, clause)
    ended = re.search(_ENDED_AT, clause)
    found = bare or ended
    for first, other in re.findall(_INSTEAD, clause):
        if float(other) in (*minutes, psi) and float(first) < float(other):
            yield "minutes" if float(other) in minutes else "psi", None
            return
    if found is None:
        return
    number = float(found[1])
    key = "psi" if pressed or ("psi" in clause and not ended) else "minutes"
    if key == "minutes" and _had_more(clause, (number,), minutes):
        return
    if key == "psi" and psi is not None and number > psi and rose_to(clause):
        return
    if number not in (*minutes, psi) or re.search(_UNSURE, clause):
        yield key, None
