"""What people say of a lid that came up or did not hold, of what came out of a jar, and of pests,
beyond the plain words of `said.SAID`: rows of the same shape, read before them. The signs are those
of data/signs.csv, with their publications; which wording names which of them is this program's
strict reading."""

from __future__ import annotations

_LID = r"(?:lids?|caps?|tops?|buttons?|centre|center|middle|dome|deckel|knopf)"
_BE = r"(?:(?:is|are|was|were|has|have|had|looks?|looked|a|bit|little|slightly|gone|went|came|ist|"
_BE += r"war|sich|hat|all) )*"
_UP = (
    r"(?:up|raised|risen|rose|bowed|bows|curved|curves|arched|rounded|humped|tented|proud|"
    r"sticks up|sticking up|stands up|standing up|pushed up|lifted up|stuck up|popped(?: up)?|"
    r"gew(?:ö|oe|o)lbt|hoch|aufgew(?:ö|oe|o)lbt|w(?:ö|oe|o)lbt)"
)
_LOOSE = (
    r"(?:ajar|askew|crooked|wobbl\w*|rock(?:s|ed|ing)?|open|loose|lose|locker|offen|auf|ab|"
    r"undicht|punctured|pierced|holed|opened|lifts|undone)"
)
_HOLE = r"(?:pin ?)?(?:holes?|punctures?|loch|l(?:ö|oe)cher)"
_SWOLLEN = (
    "swollen-lid puffed-pack oil-bubbles swollen-frozen tight-sweet-drink working-bubbles",
    "spoiled", "unsure",
)  # fmt: skip
_BURST = (
    "spurting swollen-lid puffed-pack canned-foul-smell",
    "rising-bubbles jam-moving-bubbles vinegar-mould oil-bubbles working-bubbles cold-fizz "
    "honey-foam thawed-fruit-off",
    "spoiled", "unsure",
)  # fmt: skip

#: Words, and the signs they may mean, tier by tier, as in `said.SAID`.
LIDS: tuple[tuple[str, tuple[str, ...]], ...] = (
    (r"(?:went|gone|go|goes|with an?) (?:off with a )?(?:big |loud )?bang\w*|ge ?platzt|"
     r"explodiert|recall(?:ed)?(?: notice)?|r(?:ü|ue)ckruf", _BURST),
    (r"sp[ai]t(?:s|ting)?(?: out)?|squirt\w*|splutter\w*|sprudelt|spritzt\w*",
     ("spurting", *_BURST)),
    (rf"{_LID} {_BE}{_UP}|(?:popped|raised|bowed|curved|risen) {_LID}|button popped",
     _SWOLLEN),
    (r"(?:food|contents?|beans?|meat|it|fruit) (?:is |are |was )?(?:pushed|pushing|pressed|"
     r"pressing|pushes|presses)(?: up)? (?:up )?(?:against|on|to|into) (?:the )?lid", _SWOLLEN),
    (rf"{_HOLE} (?:\w+ ){{0,2}}{_LID}|{_LID} (?:with|has|had|got|is|was|hat)(?: an?| ein)? "
     rf"(?:\w+ )?{_HOLE}|{_LID} {_BE}{_LOOSE}|(?:wobbly|crooked|lose\w*|offene\w*) {_LID}|"
     r"open(?:s|ed|ing)? (?:by|on|of) (?:itself|its own|themselves|their own)|came open|"
     r"(?:popped|sprang|sprung|came|went) open",
     ("loose-lid", "spoiled", "unsure")),
    (r"spongy|spongey", ("canned-slimy pickle-soft ferment-slimy soft-brined-pickles roots-slimy "
     "potato-soft-rot allium-mushy thawed-fruit-off", "spoiled", "unsure")),
    (r"liquid (?:is |was )?(?:below|under|lower than|beneath) (?:the )?(?:food|beans|fruit|meat)|"
     r"(?:food|beans|fruit|meat) (?:is |are )?(?:above|out of) (?:the )?liquid",
     ("low-liquid half-liquid-lost",)),
    (r"(?:smell\w*|odou?rs?|stinks?) (?:\w+ )?(?:like|of) (?:\w+ )?(?:eggs?|sulphur|sulfur)|"
     r"egg\w* smell", ("oil-spoiled canned-foul-smell mould-or-smell",)),
    (r"(?:mouse |rat |mice )?droppings(?! (?:near|beside|around|on the (?:shelf|floor)))",
     ("gnawed-pack", "rodents")),
    (r"(?<!few )(?<!two )(?<!couple of )(?:bugs|insects|beetles|weevils|mites|k(?:ä|ae)fer)",
     ("infested", "unsure")),
)  # fmt: skip
