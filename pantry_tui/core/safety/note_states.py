"""What food is by its note, where its record says otherwise: cooked, cut, out of its shell, wet,
opened, thawed.

What was done to the batch is told from what is to be done with it by the form of the verb and by
what leads it: "peeled in October" was done; "peel before use", "lovely mashed", "to be opened at
Christmas", "if cooked" were not. A sample ("sliced one, white inside") is not the batch. Which
words are listened for is a choice of our own, the stricter one.
"""

from __future__ import annotations

import re
from enum import StrEnum
from functools import lru_cache
from typing import NamedTuple

from pantry_tui.core.canned import ANIMAL, LIDDED
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.safety.note_added import plants_in
from pantry_tui.core.safety.note_cold import NO_POWER
from pantry_tui.core.safety.note_end import of_the_process
from pantry_tui.core.safety.note_finer import finer
from pantry_tui.core.safety.note_wet import DRIED_SINCE, is_powder, made_wet
from pantry_tui.core.safety.note_words import PURPOSE
from pantry_tui.core.safety.notes import clauses
from pantry_tui.core.safety.prepared import is_large
from pantry_tui.core.safety.prepared_words import CUT, FINER
from pantry_tui.core.safety.seals import without_set_apart
from pantry_tui.core.vessels import laid_eggs
from pantry_tui.core.words import Group, Method


class Now(StrEnum):
    """What food is by its note."""

    COOKED = "cooked"
    CUT = "cut"
    SHELLED = "shelled"
    HURT = "hurt"
    WET = "wet"
    OPENED = "opened"
    THAWED = "thawed"
    FLAVOURED = "flavoured"
    FINER = "finer"
    MOVED = "moved"
    FROZEN = "frozen"
    OF_RAW_EGG = "of raw egg"
    WITHOUT_POWER = "without power"


class Told(NamedTuple):
    """One of them, with the words of the note; of what was cut the word that says how."""

    now: Now
    typed: str
    how: str = ""


_PAST = (
    r" (?:it|they|i|we|she|he|you|this|that|the \w+|\w+)(?: \w+)? (?:came|arrived|got|found|opened|"
    r"was|were|went|put|stowed|bagged|unpacked|checked|looked|fetched|bought|did|took|left|"
    r"packed)\b"
)
#: What is meant for it, wished or asked, and all that follows: none of it was done.
_MEANT = (
    rf"{PURPOSE}|\bwhen(?!{_PAST})\b.*|\b(?:if|once|until|till|unless|whenever|should|must|may|"
    rf"might|could|would|shall|"
    r"want(?:s|ed)? to be|needs?|ha(?:ve|s) to|ought|planned|meant|intended|waiting|likes?|loves?|"
    r"prefers?|better|perfect|ideal|excellent|delicious|tasty|wonderful|super|eaten|enjoyed|"
    r"wants?|to be|ready to|do not|next|always|usually)\b.*"
)
#: Advice that stands behind: "peeled before use", "opened if needed".
_ADVICE = (
    r"\b(?:before|just before|prior to) (?:use|using|eating|serving|cooking|the meal)\b|"
    r"\b(?:when|once|as) (?:needed|wanted|required|necessary|used|using|eating|cooking|desired)\b|"
    r"(?<!even )\bif\b|\bunless\b|\bwhenever\b"
)
_SAMPLE = r"(?! (?:1|a|an|some|few|another|off|back|down)\b(?! (?:cm|mm|in|inch|day|week|month)))"
_HEATED = (
    r"(?:pre ?|par ?|over ?|under ?|half |slow |well )?(?:cooked|boiled|steamed|stewed|fried|"
    r"saut[eé]ed|braised|caramell?i[sz]ed|grilled|microwaved|simmered|poached|blanched|scalded|"
    r"confit|deep fried|stir fried|pressure cooked)"
)
#: Of dry food this leaves it dry.
_DRY_HEAT = r"(?:baked|roasted|toasted|charred)"
_MASHED = r"(?:mashed|pur[eé]ed|blended|souped)"
_DISH = (
    r"(?:porridge|mash|pur[eé]e|soup|stew|compote|gruel|congee|risotto|pilaf|mush|stock|gratin|"
    r"left ?overs?|hash browns?|jacket potatoes|fritters)"
)
_NOW_A_DISH = (
    rf"^(?:(?:is|it is|now|already|all|as|a|by now) )*{_DISH}$|"
    rf"\b(?:made|turned|cooked|boiled|done) (?:up )?(?:in)?to (?:a )?{_DISH}\b|"
    r"\bleft ?over (?:from|rice|pasta|porridge)\b"
)
#: Another thing that was heated before, or beside it.
_OF_ELSE = r"\b(?:jars?|lids?|water|bottles?|syrup|brine|sauce|milled|parboiled rice|soil)\b"
_CUT = (
    r"(?:sliced|diced|cubed|chopped|halved|quartered|shredded|grated|julienned|peeled|cored|"
    r"podded|pitted|stoned|minced|crushed|spiralised|spiralized|hollowed|cut (?:up|open|"
    r"half|through|small|sticks|pieces|in(?:to)? (?:half|halves|pieces|chunks|quarters|wedges|"
    r"strips|slices|cubes|rings|sticks|batons|matchsticks|coins|florets|spears|\d+))|riced|zested|"
    r"skinned|carved|scooped|juiced)"
)
_PIECES = (
    r"(?!pieces of )(?:halves|quarters|wedges|sticks|batons|pieces|chunks|slices|cubes|strips|"
    r"rings|florets|spears|matchsticks|coins)"
)
_IN_PIECES = (
    rf"^(?:(?:in|into|as|all|small|big|thick|thin|now|already) )*{_PIECES}$|"
    rf"\bin (?:(?!to\b)\w+ )?{_PIECES}\b"
)
#: Of a crop of which one makes several meals.
_PART_USED = (
    r"(?:^half$|\b(?:half|part|partly|a quarter|1/4|1/2|0\.25|0\.5|some)(?: of (?:1|it|this))?"
    r"(?: (?:is|was|already))? (?:used|gone|eaten|left|cut)\b)"
)
_CUT_ALONE = r"^(?:(?:all|some|already|is|are|was|were|it|they|half|now) )*cut$"
_PARTS = r"(?:egg )?(?:whites|yolks)"
_VESSEL = r"(?:jar|tub|bowl|cup|mug|box|glass|bag|dish|container|pot|bottle|jug|lidded \w+)"
#: Eggs out of the shell. What a yolk or a white looks like says nothing of that.
_SHELLED = (
    r"\b(?:beaten|whisked|whipped|scrambled|peeled|shelled|liquid eggs?|egg wash|blended)\b|"
    r"\bseparated\b(?! (?:from (?:the )?(?:others|rest|hens|ducks?|older|dirty|brown|shop)|by|"
    r"into (?:two |2 |three |3 )?(?:boxes|trays|sizes)))|"
    r"\b(?:out of|without|taken from) (?:the |their |its )?shells?\b|"
    r"\bshells? (?:(?:are|were|is|was|all|already|taken) )*(?:off|removed|gone)\b|"
    r"\bmixed with (?:milk|cream|salt|sugar)\b|"
    rf"\b(?:poured|cracked|broken|tipped|opened|mixed|stirred) (?:\w+ )?(?:in|into) (?:a |the |1 )?"
    rf"{_VESSEL}\b|"
    rf"^(?:(?:just|only|all|the|some|raw|left ?over|\d+|an?|of|with|{_VESSEL}) )*{_PARTS}"
    rf"(?: (?:only|alone|and|or|left(?: over)?|kept|apart|separate(?:ly|d)?|"
    rf"in (?:an? |1 )?{_VESSEL}|{_PARTS}))*$|"
    rf"\b(?:only|just) (?:the )?{_PARTS}\b|\b{_PARTS} (?:only|alone|separate(?:ly|d)?|apart|"
    rf"in (?:an? |1 |the |one )?{_VESSEL})\b"
)
_PEELED = r"\b(?:peeled|shelled)\b"
#: Whole crops keep, hurt ones do not (USDA Handbook 66 stores sound ones alone; from memory).
_HURT = (
    r"(?:bruised|damaged|nicked|speared|split|cracked|frosted|frost bitten|frost damaged|"
    r"frozen (?:in|by|on|overnight|a bit|slightly)|fro(?:ze|st (?:got|reached|hit|nipped|"
    r"caught|took)) (?:at |to )?(?:it|them|in|on|overnight|the top|some)|"
    r"gnawed|slug eaten|worm ?eaten|wormy|scuffed|stabbed|forked|soggy|"
    r"cut (?:by|with) (?:the|a) (?:spade|fork|hoe|plough|shovel)|"
    r"(?:went|put|packed|bagged|still|were|was|are|stored)(?: in| up| away)? (?:wet|damp)"
    r"(?! (?:sand|sawdust|moss|peat|leaves|cloth|sack\w*|soil|\w*paper|straw|towels?|burlap)))"
)
#: What else splits, cracks and is damaged.
_OF_THE_PACK = r"\b(?:bags?|sacks?|box(?:es)?|crates?|stems?|stalks?|leaf|leaves|summer|weather)\b"
#: Wet skins rot: of these the publications say that they go in dry and unwashed (from memory).
_WASHED = frozenset(
    {"potatoes", "new potatoes", "sweet potatoes", "onions", "shallots", "garlic"}
)  # fmt: skip
_OPENED = (
    r"(?:opened|unsealed|(?:is|was|been|already|stands|stood|left|now|half) open|"
    r"open(?: (?:since|for|in the fridge|now|already|pack\w*|bag|carton|bottle|jar|tin|tub))|"
    r"broke the seal|broached|"
    r"in use(?! by)|drunk half|last of the (?:bottle|jar|carton|pack\w*|bag|tub|tin|box)|"
    r"first (?:glass|slice|cup|spoon\w*) (?:poured|taken|gone)|"
    r"(?:bag|pack|packet|carton|box|foil|lid|pouch|wrapper|packaging) (?:is |was |got )?"
    r"(?:torn|ripped|split|punctured|open|holed)|punctured|"
    r"(?:half|part|partly|nearly) (?:used|drunk|eaten|empty|gone))"
)
#: Of a jar that was canned the lid is off the canner, and how it sealed is read elsewhere.
_LID_OFF = r"\b(?:seal|cap|lid) (?:is |was )?(?:broken|off|gone|loose)\b"
_CANNER = r"\b(?:canner|cooker|petcock|vent|valve|kettle|pan|pot)\b"
_OPENED_ALONE = (
    r"^(?:already |now |is )?open$|^(?:started|begun) "
    r"(?:on|in|last|yesterday|today|this|\d(?!\d?(?::\d\d|[ap]m)))"
)
#: What else is opened.
_OTHER_DOOR = (
    r" (?:the |our |its |a |up )*(?:(?!in|at|on|from|by|for)\w+ )?"
    r"(?:clamp|door|window|cellar|shed|shop|store|pit|bin|crate|barn|"
    r"season|garden|bed|flowers?|buds?|shells?|house|market|hatch|vent|damper|1|some|another|"
    r"lid|daily|every|to (?:skim|stir|burp|release|let))\b"
)
#: The same before the word, so that it is no jar that is open.
_DOOR_OPEN = (
    r"\b(?:fridge|refrigerator|freezer|ice ?box|doors?|window|oven|cellar|vent|damper)\b"
    r"(?: (?!jar|pack|tub|carton|box)\w+){0,4}? open(?:ed)?\b|"
    r"\bleft (?:the |our )?(?:fridge|refrigerator|freezer)(?: door| lid)? (?:wide )?open\b"
)
#: What is soft in a dish before it is frozen.
_OTHER_SOFT = r" (?:cheese|chocolate|butter|garlic|onion|celery|\w+s\b)"
_THAWED = (
    r"(?:(?:start|beg[au]n)\w* to (?:thaw|melt|defrost|soften)|dripping|"
    r"(?:it|bags?|packs?|all|they|has|had) dripped|"
    rf"softened(?!{_OTHER_SOFT})|"
    r"(?:was |were |already )(?:thawing|melting|defrosting)|(?:thawing|melting|defrosting) when|"
    r"not (?:quite |fully |completely )?frozen (?:solid|hard|through)|"
    r"(?:half |partly |part |fully |nearly |all )?"
    rf"(?:thawed|defrosted|un ?frozen|melted(?!{_OTHER_SOFT}))|"
    r"soft when|no longer (?:hard|frozen|solid)|slushy|"
    r"not (?:quite |fully |completely )?(?:frozen|solid|hard)(?: any ?more)? when)"
)
#: Of meat and dishes; fruit is soft when it is ripe.
_SOFTENED = (
    r"(?:(?:was|were|gone|went|got|came|arrived|felt|turned) (?:\w+ )?(?:soft|limp|squishy))"
)
#: It was cooked since, or made of what had thawed.
_THAWED_BEFORE = (
    r"\b(?:from|of|with|using) (?:thawed|defrosted)|\bbutter\b|\bchocolate\b|"
    r"\b(?:then|and|before) (?:\w+ )?(?:cook|roast|brais|stew|bak|fr[yi]|boil|smok)\w*"
)
_ROOMS = (
    r"(?:fridge|refrigerator|freezer|cellar|basement|kitchen|pantry|larder|garage|shed|porch|"
    r"counter|cupboard|attic|barn|bathroom|hall(?:way)?|cool(?:er)? room|cold room|"
    r"room temperature|warmer (?:place|spot)|colder (?:place|spot)|outside|indoors|upstairs|"
    r"downstairs)"
)
#: What happened to a batch that is still at work; what went in frozen did so before.
_HAPPENED = (
    (Now.MOVED, rf"\b(?:moved|brought|shifted|carried|transferred|taken|put) (?:\w+ ){{0,4}}"
                rf"{_ROOMS}\b"),
    (Now.FROZEN, r"\b(?:(?:it|they|jars?|crock|all|top|bottom|brine|some|1|has|had) froze(?:n)?|"
                 r"^froze|(?:was|were|got|been) frozen|froze (?:solid|in|on|over|through|up)|"
                 r"frozen (?:solid|through|overnight))\b(?! (?:berries|fruit))"),
    (Now.THAWED, r"\b(?:thawed|defrosted)(?! (?:\w+s|fruit|juice)\b)"),
    (Now.WITHOUT_POWER, NO_POWER),
)  # fmt: skip
_BEFORE_IT = r"\b(?:before|first|from|made (?:of|with)|then (?:salted|cured|brined|mixed))\b"
_RAW = frozenset({Method.FRESH, Method.CELLAR, Method.BOUGHT})
_RAW_OR_FROZEN = _RAW | {Method.FROZEN}
_DRIED = frozenset({Method.DRIED, Method.FREEZE_DRIED})
_COOKABLE = ANIMAL | {Group.VEGETABLE, Group.FRUIT, Group.HERB, Group.NUT, Group.GRAIN}
_GREENS = frozenset({Group.VEGETABLE, Group.FRUIT, Group.HERB})
#: What was cooked or made already, so that its record says so.
_MADE = frozenset({"cooked", "dish", "stock", "soup", "baked", "bread", "jam", "pickle"})


@lru_cache(maxsize=512)
def states(method: Method, food: FoodFacts, note: str, *, dry: bool) -> tuple[Told, ...]:
    """What the note says that the food is by now, each state once; `dry`: it is dry as it is
    bought. What its record and its name say already is not told again."""
    found: dict[Now, Told] = {}
    told = without_set_apart(note) if method in LIDDED else note
    for typed, clause in of_the_process(method, list(clauses(told))):
        if not (done := done_of(clause)):
            continue
        alone = done == clause
        for now, how in _of_clause(method, food, clause, done, dry=dry, alone=alone):
            found.setdefault(now, Told(now, typed, how))
    if Now.COOKED in found and found.get(Now.SHELLED, found[Now.COOKED]).how == _PEELED:
        del found[Now.SHELLED]  # a cooked egg is peeled
    return tuple(found.values())


def happened(note: str) -> tuple[Told, ...]:
    """What the note says that happened to a batch in progress, and a person books: each once."""
    found: dict[Now, Told] = {}
    for typed, clause in clauses(note):
        done = done_of(clause)
        for now, pattern in _HAPPENED:
            if done and affirmed(done, pattern) and not re.search(_BEFORE_IT, done):
                found.setdefault(now, Told(now, typed))
    return tuple(found.values())


def done_of(clause: str) -> str:
    """What of a clause was done to the batch: without what it is for, and what is wished of it."""
    if re.search(_ADVICE, clause):
        return ""
    return " ".join(re.sub(_MEANT, " ", clause).split())


def _of_clause(
    method: Method, food: FoodFacts, clause: str, done: str, *, dry: bool, alone: bool
) -> list[tuple[Now, str]]:
    found = []
    if _may_be_cooked(method, food, dry=dry) and _is_cooked(food, done, dry=dry):
        found.append((Now.COOKED, ""))
    whole = method in _RAW and food.group in _GREENS and not dry and not food.classes & _MADE
    if whole and (cut := _is_cut(food, done)):
        found.append((Now.CUT, cut))
    laid = method in _RAW and not food.classes & _MADE and laid_eggs(food.name, food.classes)
    if laid and affirmed(done, _SHELLED):
        rest = re.sub(_PEELED, " ", done)
        found.append((Now.SHELLED, "" if affirmed(rest, _SHELLED) else _PEELED))
    if whole and method is Method.CELLAR and _is_hurt(food, done):
        found.append((Now.HURT, ""))
    if food.name == "vinegar" and method is not Method.FLAVOURED_VINEGAR and plants_in(done):
        found.append((Now.FLAVOURED, ""))
    # What is canned was soaked for it (NCHFP, Selecting, preparing and canning beans).
    bought_dry = method not in LIDDED and (dry or (method not in _DRIED and is_powder(food)))
    stays_dry = bought_dry or method in _DRIED
    if stays_dry and made_wet(food, clause, done, dry=bought_dry, sample=_SAMPLE):
        found.append((Now.WET, ""))
    if method in _RAW_OR_FROZEN and (how := finer(food, done)):
        found.append((Now.FINER, how))
    if method is not Method.CELLAR and _is_opened(method, done, alone=alone):
        found.append((Now.OPENED, ""))
    if method is Method.FROZEN and _is_thawed(food, done):
        found.append((Now.THAWED, ""))
    return found


def _may_be_cooked(method: Method, food: FoodFacts, *, dry: bool) -> bool:
    if food.group not in _COOKABLE or food.classes & _MADE:
        return False
    return method in _RAW or (dry and method in _DRIED)


def _is_cooked(food: FoodFacts, done: str, *, dry: bool) -> bool:
    if re.search(_OF_ELSE, done) or (dry and re.search(DRIED_SINCE, done)):
        return False
    heated = _HEATED if dry or food.group is Group.NUT else rf"(?:{_HEATED}|{_DRY_HEAT}|{_MASHED})"
    if dry:  # nuts and pulses are scalded for their skins, and rice is parboiled in its husk
        heated = heated.replace("blanched|scalded|", "").replace("par ?|", "")
    return affirmed(done, rf"\b{heated}\b{_SAMPLE}") or affirmed(done, _NOW_A_DISH)


def _is_cut(food: FoodFacts, done: str) -> str:
    told = re.sub(rf"\b{re.escape(food.name)}\b", " ", done)
    cut = rf"\b{_CUT}\b{_SAMPLE}"
    part = rf"|{_PART_USED}" if is_large(food) else ""
    if not affirmed(told, rf"{cut}|{_CUT_ALONE}|{_IN_PIECES}{part}"):
        return ""
    found = re.search(cut, told)
    word = found[0].split()[0] if found else ""
    return word if word in CUT | FINER else "cut"


def _is_hurt(food: FoodFacts, done: str) -> bool:
    washed = food.name in _WASHED and affirmed(
        done, r"\bwashed\b(?! (?:away|off|out|crate|box|sand|bin|sack))"
    )
    if re.search(_OF_THE_PACK, done):
        return washed
    return washed or affirmed(done, rf"\b{_HURT}\b(?! (?:ones|1))")


def _is_opened(method: Method, done: str, *, alone: bool) -> bool:
    if method in LIDDED and re.search(_CANNER, done):
        return False
    done = re.sub(_DOOR_OPEN, " ", done)
    if method not in LIDDED and affirmed(done, _LID_OFF):
        return True
    if alone and affirmed(done, _OPENED_ALONE):
        return True
    return affirmed(done, rf"\b{_OPENED}\b(?!{_OTHER_DOOR})")


def _is_thawed(food: FoodFacts, done: str) -> bool:
    if re.search(_THAWED_BEFORE, done):
        return False
    soft = food.group in ANIMAL | {Group.MEAL}
    told = rf"(?:{_THAWED}|{_SOFTENED})" if soft else _THAWED
    return affirmed(done, rf"\b{told}\b")
