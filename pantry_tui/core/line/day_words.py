"""Months, days of the week, seasons and feasts, as people write them."""

from __future__ import annotations

MONTHS = {
    name: number
    for number, names in enumerate(
        ("january jan", "february feb", "march mar", "april apr", "may", "june jun", "july jul",
         "august aug", "september sept sep", "october oct", "november nov", "december dec"),
        start=1,
    )
    for name in names.split()
}  # fmt: skip
#: In other languages: a month beside a day or a year, behind "in", or alone in its part.
FOREIGN_MONTHS = {
    name: number
    for number, names in enumerate(
        ("januar janvier gennaio enero janeiro januari styczen", "februar février fevrier febbraio "
         "febrero fevereiro februari", "märz maerz mars marzo março", "avril aprile abril",
         "mai maggio maio maj", "juni juin giugno junio junho czerwiec", "juli juillet luglio "
         "julio julho lipiec", "août aout agosto augusti sierpien", "septembre settembre "
         "septiembre setembro wrzesien", "oktober octobre ottobre octubre outubro okt", "novembre "
         "noviembre novembro", "dezember décembre decembre dicembre diciembre dezembro dez"),
        start=1,
    )
    for name in names.split()
}  # fmt: skip
MONTH_WORDS = (
    "jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"
)  # fmt: skip
DAYS = {
    name: number
    for number, names in enumerate(
        ("monday mon", "tuesday tue tues", "wednesday wed weds", "thursday thu thurs", "friday fri",
         "saturday sat", "sunday sun")
    )
    for name in names.split()
}  # fmt: skip
SEASONS = {"spring": 3, "summer": 6, "autumn": 9, "fall": 9, "winter": 12}
#: Day and month of feasts that never move.
FEASTS = {
    "christmas day": (25, 12), "christmas": (25, 12), "xmas": (25, 12), "christmas eve": (24, 12),
    "boxing day": (26, 12), "new year's day": (1, 1), "new year's eve": (31, 12),
    "new year": (1, 1), "michaelmas": (29, 9), "martinmas": (11, 11), "midsummer": (24, 6),
    "halloween": (31, 10), "candlemas": (2, 2), "st john's": (24, 6), "xmas day": (25, 12),
    "xmas eve": (24, 12), "new years day": (1, 1), "new years eve": (31, 12),
    "new year's": (1, 1), "australia day": (26, 1), "anzac day": (25, 4), "burns night": (25, 1),
    "bonfire night": (5, 11), "guy fawkes": (5, 11), "st patrick's day": (17, 3),
    "valentine's day": (14, 2), "independence day": (4, 7), "all saints": (1, 11),
    "st george's day": (23, 4), "twelfth night": (5, 1), "lammas": (1, 8),
}  # fmt: skip
MOVING = frozenset(
    {"easter", "lent", "diwali", "thanksgiving", "harvest", "whitsun", "pancake day",
     "easter sunday", "easter monday", "palm sunday", "good friday", "stir up sunday",
     "mothering sunday", "shrove tuesday", "pancake tuesday", "ash wednesday", "black friday",
     "mother's day", "father's day", "labor day", "labour day", "memorial day", "bank holiday",
     "bank holiday monday", "harvest festival", "passover", "eid", "ramadan"}
)  # fmt: skip
#: The day itself and the one before, in other languages: alone in their part.
FOREIGN_DAYS = {
    "heute": 0, "aujourd'hui": 0, "oggi": 0, "hoy": 0, "hoje": 0, "idag": 0, "vandaag": 0,
    "gestern": 1, "hier": 1, "ieri": 1, "ayer": 1, "ontem": 1, "igår": 1, "gisteren": 1,
}  # fmt: skip
PARTS_OF_DAY = frozenset(
    {"morning", "afternoon", "evening", "night", "lunchtime", "noon", "midday", "midnight"}
)
VAGUE = {
    "last week": 14, "last month": 62, "the other day": 10, "recently": 30, "a while ago": 365,
    "last weekend": 14, "a few days ago": 10, "a few weeks ago": 60, "this week": 7,
    "this month": 31, "the weekend": 14, "this summer": 365, "last summer": 730,
    "last spring": 730, "last autumn": 730, "last winter": 730, "last fall": 730,
}  # fmt: skip


def _phrases(text: str) -> tuple[tuple[str, ...], ...]:
    return tuple(tuple(words.split()) for words in text.split(";"))


#: In front of a day, and part of it.
LEADS = _phrases(
    "started on;started in;made on;made in;put up on;put up in;put up;started;begun;made;since;"
    "on the;on;in;the;dated;date;back in;some time in;sometime in;week of;around;about;circa;ca;"
    "laid;picked;dug;lifted;harvested;gathered;foraged;caught;killed;slaughtered;butchered;shot;"
    "baked;from"
)
NOBODY_KNOWS = _phrases(
    "date unknown;unknown date;made unknown;undated;no date;don't know when;no idea when;"
    "age unknown;not sure when;don't remember when;can't remember when;forgot when;year unknown"
)
