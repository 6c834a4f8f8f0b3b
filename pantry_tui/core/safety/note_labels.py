"""A note in the form of a table ("Spoiled: no", "Smell: off"), as lists have it: read as the words
that a person would say of it. A choice of our own, the stricter one."""

from __future__ import annotations

import re

_LABELLED = re.compile(r"([^\W\d_][^:]{0,39}?)(?<!\d) ?: ?(\S.*)")
_YES = frozenset({"yes", "y", "x", "true", "✓", "✔", "1", "ja", "oui"})
_NO = frozenset(
    {"no", "n", "none", "false", "0", "nothing", "nil", "never", "not", "not yet", "non", "nein",
     "n/a", "na", "-", "no problem", "no problems", "✗", "✘", "nope", "nah"}
)  # fmt: skip
_UNSURE = frozenset({"not sure", "maybe", "perhaps", "possibly", "unsure", "not certain"})
#: What comes of them is said by the value alone.
_SAYS = re.compile(
    r"(?:signs?|problems?|issues?|observations?|observed|conditions?|remarks?|comments?|faults?|"
    r"defects?|what happened|verdict|result|inspection|check|looks?|appearance)"
)
#: The value says how they are.
_HOW = re.compile(r"(?:smells?|smell?ed|smelt|odou?rs?|scent|aroma|tastes?|tasted|flavou?r|recipe)")
_SENSES = {
    "tasted": "taste", "tastes": "taste", "smelled": "smell", "smelt": "smell", "smells": "smell",
}  # fmt: skip
#: What of a jar is said to be well, and that it is.
_IS_WELL = re.compile(
    r"(?P<what>.+?) (?:(?:is|are|was|were|all|still|looks?) )*"
    r"(?:ok|okay|good|fine|safe|sound|right|correct|normal|well)"
)
#: A fault that there was none of, which a no before it would make another: a lid that did not pop.
_FAULT = re.compile(r"(?:lids?|seals?|tops?|caps?) (?:popped(?: up)?|off|loose|up)|popped(?: up)?")
_COLD = re.compile(
    r"(?:(?:still|kept|stayed|arrived|found|is|was|always|stored|remained|food) )*(?:cold|chilled)"
    r"(?: (?:on arrival|when found|throughout|enough))?"
)
_COOLED_IN_TIME = re.compile(
    r"(?:chilled|cooled|refrigerated|fridged|in (?:the )?(?:fridge|refrigerator)|cold) "
    r"(?:within|in|under|inside|by|after) "
)
#: The unit that a label has for the number behind it.
_UNITS = (
    (r"(?:h|hr|hrs|hours?)", "hours"), (r"(?:min|mins|minutes?)", "minutes"),
    (r"(?:d|days?)", "days"), (r"(?:wks?|weeks?)", "weeks"), (r"(?:months?)", "months"),
    (r"(?:°? ?f|deg(?:rees)? f|fahrenheit)", "f"), (r"(?:°? ?c|deg(?:rees)? c|celsius)", "c"),
    (r"psi", "psi"),
)  # fmt: skip
_SHORT = {"hours": "(?:hours|hrs)", "minutes": "(?:minutes|mins)"}
_WORDS = ("hours", "minutes", "days", "weeks", "months")
_NUMBER = re.compile(
    r"(?:about |approx(?:imately|\.)? |ca\.? |~ ?|over |nearly )?"
    r"(?:\d+(?:\.\d+)? ?(?:-|–|to) ?)?(\d+(?:\.\d+)?)(?: ?(?:h|hrs?|hours?|mins?|minutes?|days?|"
    r"weeks?|months?|f|c|°f|°c|psi))?"
)
_BARE = re.compile(r"-?\d")
#: A time of a process that is told in minutes where no unit is said.
_OF_A_PROCESS = re.compile(
    r"(?:time (?:processed|canned|in (?:the )?canner|at pressure|boiled|in (?:the )?water ?bath)|"
    r"(?:process(?:ing)?|canning|boiling|canner|water ?bath|pressure) time)"
)
#: A time in the warm of which nobody says what it is told in.
_OUT = re.compile(
    r"(?:time )?(?:left |been )?(?:un ?refrigerated|out(?: of (?:the )?(?:fridge|refrigerator|"
    r"freezer|cold))?)"
)
_WELL = re.compile(
    r"\b(?:ok|okay|fine|good|normal|usual|great|nice|lovely|clean|fresh|perfect|pleasant|sound|"
    r"tested|safe|pass(?:ed)?)\b"
)
_SOUND = re.compile(
    r"(?:(?:still|all|everything|is|it|are|they) )*(?:ok|okay|good|fine|safe|sound|"
    r"edible|usable|fit)(?: to (?:eat|use|keep))?"
)
_BAD = re.compile(
    r"(?:is |gone |went )?(?:bad|off|unsafe|spoil(?:ed|t)|contaminated|discard(?:ed)?|rejected|"
    r"not (?:safe|good|edible|ok|fit)(?: to eat)?|(?:throw|thrown|threw) (?:it )?(?:out|away)|"
    r"bin(?:ned)?(?: it)?|toss(?:ed)?(?: it)?|inedible|fail(?:ed)?|to (?:bin|discard|throw out))"
)
#: A fault, or whether there is one: what is said of it is held against it, be it understood or not.
_A_FAULT = re.compile(
    r"(?:any )?(?:problems?|issues?|faults?|defects?|trouble|concerns?|suspect|suspicious|"
    r"doubt(?:s|ful)?|warning|damaged?)"
)
#: Of a lid, where a fault is asked after.
_LID_UP = re.compile(
    r"\b(?:lids?|seals?|caps?|tops?|buttons?|deckel)\b.*\b(?:up|raised|loose|open|ajar|off|bowed|"
    r"curved|moves|rocks|hole|leak\w*|gewölbt|lose|offen|auf)\b"
)
#: Of a jar and what is in it: that it is bad is said of the food.
_OF_IT = re.compile(
    r"(?:lids?|seals?|caps?|tops?|jars?|colou?rs?|quality|liquid|brine|contents?|texture|food|"
    r"(?:still )?(?:good|safe|ok|edible|fit)|status|state|rating|grade|overall|notes?)"
)
_PLAINLY_BAD = re.compile(
    r"(?:(?:it|they|is|are|was|looks?|gone|went|going|very|a bit|all) )*"
    r"(?:bad|off|spoil(?:ed|t)|rotten|unsafe|not (?:good|ok|okay|right|safe)|wrong|no good)"
)
#: The whole of what is said.
_ALONE = re.compile(
    r"(?:(?:it|they|is|are|was|looks?|gone|went|going|very) )*"
    r"(?:bad|spoil(?:ed|t)|rotten|unsafe|no good)"
)
_PARTICIPLE = re.compile(
    r"\w+(?:ed|ing)|lost|shut|tight|broken|soft|open|kept|swollen|rotten|mouldy"
)
_BAD_WORD = "spoiled"
#: A day as it is written in a list.
_DAY = re.compile(
    r"\d{4}-\d\d?-\d\d?|\d{1,2}[./]\d{1,2}(?:[./](?:\d{2,4})?)?|"
    r"\d{1,2}(?:st|nd|rd|th)?\.? [^\W\d_]{3,9}\.?(?: \d{2,4})?|"
    r"[^\W\d_]{3,9} \d{1,2}(?:st|nd|rd|th)?(?: \d{4})?"
)
_LAST_DAY = re.compile(
    r"(?:to be )?(?:discard\w*|throw\w*(?: it)?(?: out| away)?|toss\w*(?: out)?|bin(?:ned)?|"
    r"chuck\w*|"
    r"dispose\w*|get rid)(?: (?:by|on|until|after|before|of|from|day|date))*|"
    r"(?:eat|eaten|used?|consume\w*|finish\w*|good|keeps?|lasts?|best|fresh|safe|sell|ok|fit) "
    r"(?:by|until|till|til|before|thru|through|to)(?: date)?|exp\w*(?: ?(?:date|day|on))?|bbe?|b b|"
    r"(?:last|final|end) (?:day|date)|mhd|(?:mindestens )?haltbar(?: bis)?|"
    r"(?:zu )?verbrauchen(?: bis)?"
)
#: How each of them is said of a day that is over.
_BEGUN = {
    "cooked": "cook(?:ed|ing)?|gekocht|koch", "made": "prep(?:ared|aration)?|production|made|"
    "making",
    "baked": "bak(?:ed|ing)", "roasted": "roast(?:ed|ing)?", "smoked": "smok(?:ed?|ing)",
    "frozen": "frozen|freez(?:e|ing)|eingefroren", "thawed": "thaw(?:ed|ing)?|defrost(?:ed|ing)?",
    "opened": "open(?:ed|ing)|geöffnet", "bought": "bought|purchased?|buying|gekauft",
}  # fmt: skip
_AGE = re.compile(r"(?:age|how old|old|days old|age now|alter)")
_WITH_UNIT = re.compile(r"(?:about |ca\.? |~ ?)?(\d+) ?(d|days?|w|wks?|weeks?|months?|)")
#: Where it is warm, with a tick behind it.
_WARM = re.compile(
    r"(?:(?:left|sat|stood|kept|been|cooled|thawed|stayed) )?(?:out )?(?:(?:on|at|in) )?(?:the |"
    r"a )?"
    r"(?:kitchen )?(?:counter(?: ?top)?|worktop|work ?surface|table|bench|buffet|"
    r"room temp\w*|warm(?: place)?|outside|outdoors|out of (?:the )?(?:fridge|refrigerator|cold)|"
    r"car)"
)
#: A cross under it may mean that it is so, or that it is not.
_EITHER = frozenset({"x", "?", "??", "*", "-", "–", "—"})
#: How a clause ends that says of something whether it is well, and nobody knows which.
EITHER_WAY = "not sure either way"


def in_words(clause: str) -> str:
    """A clause in small letters, without its label where it has one."""
    found = _LABELLED.fullmatch(clause)
    if found is None:
        return _BAD_WORD if _ALONE.fullmatch(clause.strip(" .!?")) else clause
    label, value = found[1].strip(" ?."), found[2].strip(" .?") or found[2]
    label = re.sub(r" ?[(\[](?:y/n|yes/no|y or n)[)\]]$|\?", "", label)
    if (told := _dated(label, value) or _measured(label, value)) is not None:
        return told
    if "/" in label:
        return clause
    asks = _asks_if_well(label)
    if asks and (value in _UNSURE or value in _EITHER):
        return f"{label}: {EITHER_WAY}"
    if value in _UNSURE:
        return f"{label}: not sure"
    if value in _YES and _WARM.fullmatch(label):
        return "left out on the counter"
    if value in _YES:
        return _BAD_WORD if _BAD.fullmatch(label) or _A_FAULT.fullmatch(label) else label
    if value in _NO:
        if _FAULT.fullmatch(label):
            return ""
        return _BAD_WORD if _SOUND.fullmatch(label) else _denied(label)
    if _PLAINLY_BAD.fullmatch(value) and _OF_IT.fullmatch(label):
        return _BAD_WORD
    if _BAD.fullmatch(label) and not (_BARE.match(value) or _WELL.search(value)):
        return _BAD_WORD
    if _A_FAULT.fullmatch(label) and not _WELL.search(value) and _LID_UP.search(value):
        return _BAD_WORD
    if _SAYS.fullmatch(label):
        return _BAD_WORD if _BAD.fullmatch(value) else value
    if _HOW.fullmatch(label) and not (_WELL.search(value) and "not " not in f" {value}"):
        return f"{value} {_SENSES.get(label, label)}"
    return f"{label} {value}" if _BARE.match(value) else clause


def _asks_if_well(label: str) -> bool:
    return _IS_WELL.fullmatch(label) is not None or _SOUND.fullmatch(label) is not None


def _dated(label: str, value: str) -> str | None:
    """("throw out", "3 nov") -> "use by 3 nov"; ("cook date", "3 nov") -> "cooked 3 nov"; ("age",
    "9 days") -> "9 days old". None of other columns."""
    if _AGE.fullmatch(label) and (old := _WITH_UNIT.fullmatch(value)):
        unit = {"w": "weeks", "m": "months"}.get(old[2][:1], "days")
        return f"{old[1]} {unit} old"
    if not _DAY.fullmatch(value):
        return None
    if _LAST_DAY.fullmatch(label):
        return f"use by {value}"
    about = re.sub(r"[()\[\]]", " ", label)
    about = " ".join(re.sub(r"\b(?:date|day|on|of|at|am|the|was)\b", " ", about).split())
    begun = (word for word, said in _BEGUN.items() if re.fullmatch(said, about))
    return next((f"{word} {value}" for word in begun), None)


def _measured(label: str, value: str) -> str | None:
    """("hours out", "6") -> "out 6 hours"; ("fridge temp (f)", "52") -> "fridge temp 52 f". None
    where the label has no unit, or the value no number."""
    number = _NUMBER.fullmatch(value)
    if number is None:
        return None
    if _OF_A_PROCESS.fullmatch(label):
        return f"{label} {number[1]} minutes"
    if _OUT.fullmatch(label):
        bare = re.fullmatch(r"[\d.]+", value)
        return None if bare and float(value) <= 1 else label if bare else f"{label} {value}"
    label, unit = _unit_of(label)
    if not unit:
        return None
    label = "out of the cold" if label == "out" else label
    many = number[1]
    if unit in _WORDS and not float(many):
        return ""  # "left out (h): 0"
    if unit in ("days", "weeks", "months"):
        if re.search(r"\bopen(?:ed)?\b", label):
            return f"opened {many} {unit} ago"
        if re.fullmatch(r"(?:old|age|stored|kept|in (?:the )?(?:fridge|refrigerator))", label):
            return f"{many} {unit} old"
    return f"{label} {many} {unit}"


def _unit_of(label: str) -> tuple[str, str]:
    """The label without its unit, and that; "" where it has none."""
    for pattern, unit in _UNITS:
        written = [rf"(.+?) ?[(\[] ?{pattern}(?: ago)? ?[)\]]"]
        if unit in _WORDS:
            word = _SHORT.get(unit, unit)
            written += [rf"(?:number of |no\.? of )?{word} (.+)", rf"(.+) {word}"]
        for one in written:
            if (found := re.fullmatch(one, label)) is not None:
                return found[1], unit
    return label, ""


def _denied(label: str) -> str:
    """("seal checked") -> "seal not checked"; ("tested recipe") -> "recipe not tested"."""
    first, *rest = label.split()
    if (well := _IS_WELL.fullmatch(label)) is not None:
        cold = re.search(r"(?:fridge|refrigerator|freezer)$", well["what"])
        return f"{well['what']} not {'cold' if cold else 'right'}"
    if _COOLED_IN_TIME.match(label):
        return "not refrigerated"
    if _COLD.fullmatch(label):
        return "not cold when found"
    if _PARTICIPLE.fullmatch(first):
        return f"{' '.join(rest)} not {first}".strip()
    if rest and _PARTICIPLE.fullmatch(rest[-1]):
        return " ".join((first, *rest[:-1], "not", rest[-1]))
    return f"no {label}"
