"""What cooks of German and French kitchens write of a danger, put into English before a note is
read: mould, a lid that is domed or came off, a leak, no lemon juice, a night in the warm, thawed.
Common words, no source."""

from __future__ import annotations

import re

#: Longer phrases first: a word that is left over stays as it was typed.
_WORDS = (
    ("über nacht|ueber nacht|toute la nuit|la nuit entière", "over night"),
    ("(?:draußen|draussen) (?:gestanden|vergessen|gelassen)", "left out"),
    ("(?:draußen|draussen|dehors) over night|over night (?:draußen|draussen|dehors)",
     "left out over night"),
    ("oubliée?s?(?: dehors)? over night", "left out over night"),
    ("ohne (?:zitronensaft|zitrone|zitronensäure|essig|säure)|"
     "sans (?:jus de )?(?:citron|vinaigre|acide(?: citrique)?)", "forgot the lemon juice"),
    ("(?:zitronensaft|zitrone|zitronensäure) vergessen|(?:jus de )?citron oublié",
     "forgot the lemon juice"),
    ("(?:manometer|druckmesser|druckanzeige)(?: (?:ist|war))? (?:kaputt|defekt)|"
     "manomètre (?:cassé|en panne)", "pressure gauge broken"),
    ("deckel(?: (?:ist|sind|war|waren|hat sich))? "
     "(?:gewölbt|hochgewölbt|nach oben gewölbt|aufgebläht)|"
     "(?:couvercles?|boîtes?|bocal|bocaux)(?: (?:est|sont))? (?:bombée?s?|gonflée?s?)",
     "lid bulging"),
    ("deckel (?:ging(?:en)? (?:wieder )?auf|aufgegangen|ist auf|offen|locker|lose|hält nicht|"
     "halten nicht)|couvercles? (?:ouverts?|décollés?|ne tient pas)", "lid came off"),
    ("(?:hoch)?gewölbt|aufgebläht|bombée?s?|gonflée?s?", "lid bulging"),
    ("undicht|qui fuit|qui fuient|fuit|läuft aus|ausgelaufen", "leaking"),
    ("zischt|gezischt|zischte|siffle|pschitt", "hissing when opened"),
    ("^(?:(?:le|la|liquide|jus|saumure|est|un peu|très) )*trouble$|(?:lake|flüssigkeit|saft)"
     "(?: (?:ist|war|wird|wurde))? (?:trüb|trübe)", "cloudy liquid"),
    ("(?:ver)?schimmel(?:t|ig|ige|iges|iger|flecken)?|moisie?s?|moisissures?", "mould"),
    ("nachgekocht|noch ?mal (?:ein)?gekocht|erneut (?:ein)?gekocht", "reprocessed after 2 days"),
    ("décongelée?s? (?:puis|et|ensuite) recongelée?s?|aufgetaut und wieder eingefroren",
     "thawed and refrozen"),
    ("wieder eingefroren|recongelée?s?", "refrozen"),
    ("(?:an)?aufgetaut|angetaut|décongelée?s?", "thawed"),
    ("verdorben|faulig|ranzig|pourrie?s?|avariée?s?", "spoiled"),
    ("stinkt|riecht (?:schlecht|komisch|übel)|sent mauvais|pue", "smells bad"),
)  # fmt: skip
_EACH = tuple((re.compile(rf"(?<!\w)(?:{words})(?!\w)"), meant) for words, meant in _WORDS)
_ANY = re.compile(r"(?<!\w)(?:" + "|".join(words for words, _ in _WORDS) + r")")
#: There was none of it; an acid that there was none of is the danger itself.
_NO = re.compile(
    r"(?<!\w)(?:nicht|kein|pas de|pas|aucune?|keine?n?|ohne|sans|nichts) "
    r"(?=(?:ver)?schimm|hochgew|gewölbt|aufge|undicht|moisi|bomb|gonfl|fuit|verdorb|faul|pourri|"
    r"décong|recong|locker|lose|offen)"
)
#: What is meant for later.
_MEANT = re.compile(r"(?<!\w)(?:wenn|falls|vor dem|zum|si|avant de|pour|gegen|contre)(?!\w)")


def dangers_in_english(note: str) -> str:
    """("Deckel gewölbt") -> "lid bulging": a note in small letters; of one that says none of it
    every word stays."""
    if not _ANY.search(note) or _MEANT.search(note):
        return note
    note = _NO.sub("no ", note)
    for words, meant in _EACH:
        note = words.sub(meant, note)
    return " ".join(note.split())
