"""What a note says against a stage of a process is held against a full and good record of it, and
what a proud canner writes is not. Which words are doubted is our own choice, the stricter one."""

from __future__ import annotations

import pytest

from pantry_tui.core.safety.note_heating import HEATING
from pantry_tui.core.safety.note_jars import OF_JARS
from pantry_tui.core.safety.note_words import speaks
from pantry_tui.core.words import Verdict
from pantry_tui.errors import BadInput
from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import tried

HERE = "larder, altitude=500ft"
BEANS = f"3 pint jars green beans, pressure canned, {HERE}, minutes=20 psi=11 canner=dial pack=hot"
TOMATOES = (
    f"3 pint jars tomatoes, boiling-water canned, {HERE}, minutes=85 "
    "acid=1 tbsp bottled lemon juice per pint"
)
PEACHES = f"3 pint jars peaches, boiling-water canned, {HERE}, minutes=30 pack=hot"
JAM = f"3 half-pint jars strawberry jam, jam, {HERE}, minutes=10"
DILLS = f"3 pint jars dill pickles, vinegar pickle, {HERE}, minutes=15 vinegar=5%"

#: By the stage that went wrong: the record, and notes against it.
DOUBTED = {
    "no process": (BEANS, (
        "never got round to boiling the jars", "thought I had processed these, I had not",
        "meant to pressure can them", "no time for the canner that night",
        "only blanched and bottled", "boiled them instead", "used the water bath for a change",
        "done in a steam canner", "went straight on the shelf",
    )),
    "after the canner": (BEANS, (
        "jars sat under flood water", "the creek came up over the shelf", "gauge said 8",
        "lids popped down a day later", "froze solid in the shed", "sealed late, next evening",
    )),
    "left to seal": (JAM, (
        "just poured in hot", "let them seal on their own", "sealed by themselves", "self sealed",
        "sealed from the heat of the jam", "paraffin on top", "did not bother with the bath",
        "lids went down alone so I left it", "jars upended", "just hot jam and lids",
        "turned the jars over to seal", "flipped the jars hot to seal", "flip method",
    )),
    "heat cut": (BEANS, (
        "kids turned the heat off", "my husband moved the pot off the heat halfway",
        "somebody switched the ring off while I was out", "ran out of gas halfway",
        "power flickered, restarted where it was", "power went twice", "generator cut out",
        "flame kept going out in the wind", "propane froze up", "blackout during the run",
        "the burner went out and I relit it",
    )),
    "pressure": (BEANS, (
        "couldn't get it to 11", "weight didn't jiggle", "no jiggle", "lost the gasket",
        "gasket was split", "needle kept sagging", "pressure slumped", "petcock left open",
        "the safety plug blew", "vent pipe clogged", "gauge never tested", "gauge reads 2 high",
        "steam leaked round the rim", "pressure had gone when I looked", "it refused to build",
        "the gauge and the weight did not agree", "did not restart when it dropped",
        "cooked at half the pressure", "half the psi", "steam never came out steadily",
        "steam hardly showed", "let the pressure drop", "pressure fell by itself halfway",
    )),
    "lost": (BEANS, ("a bit of water lost from the canner", "a lot of water lost")),
    "thickened": (BEANS, ("creamed it", "creamed the beans")),
    "pressure in figures": (BEANS, (
        "11 psi was more like 8", "closer to 9 psi", "the dial stayed at 9", "peaked at 9",

        "only ever reached 10", "a shade under 11",
        "needle would not climb past 8", "hovered near 9", "it read 10 the whole way",
        "slipped under 11 a few times", "used the 5 pound weight", "put the 5 on by mistake",
        "canned at 10 instead of 11", "ran at 10 pounds",
    )),
    "vent": (BEANS, (
        "vented for five", "only vented a couple of minutes", "vented in a hurry",
        "put the weight on straight away", "did not wait for the steam", "air not driven out",
        "ten minutes of venting skipped", "forgot the weight for the first part",
    )),
    "time": (BEANS, (
        "15 minutes tops", "maybe 20 minutes", "more like 12 minutes than 20", "pulled them at 15",
        "a little short of 20", "might have been 15", "gave it 17", "done in 18",
        "gave them a quarter hour", "shaved a few minutes off", "rounded down to 15",
        "timer never went off, guessed", "eyeballed the time", "did not look at the time",
        "used the time for half pints", "grandma's times", "counted on regardless",
    )),
    "opening": (BEANS, (
        "opened it straight after", "took the weight off at once to get them out",
        "ran cold water over it to hurry", "stood the canner in snow", "hosed the canner down",
        "tipped the weight to let the steam out",
        "opened before zero", "rushed the cooling with a wet towel",
    )),
    "left in the canner": (BEANS, (
        "left in canner overnight", "jars cooled in the canner until morning",
        "canner left to go cold with jars in, unloaded next day",
        "went to bed with the jars in the canner",
    )),
    "delay": (BEANS, (
        "processed next day", "filled in the evening, canned in the morning",
        "packed them Friday, processed Saturday", "jars waited filled for six hours",
        "filled at lunch and processed after dinner", "packed at night and canned at dawn",
        "stood on the bench four hours before they went in",
    )),
    "packing": (BEANS, (
        "packed right up to the rim", "crammed them in", "no headspace", "no headroom",
        "headspace too small", "packed raw after all", "filled cold", "packed solid",
        "hardly any water in the jars", "beans above the liquid", "half of the liquid came out",
        "jars came out two thirds full", "big liquid loss", "bigger chunks than the book says",
    )),
    "size": (BEANS, (
        "quarts really", "they are quart jars", "half quarts half pints", "used litre bottles",
        "big 1.5 pint jars", "they went into big jars", "used mayonnaise jars",
    )),
    "lids": (BEANS, (
        "reused lids", "used last year's lids again", "same lids as before", "lids from 1995",
        "screwed tight while hot", "re-tightened the bands", "bands too loose",
        "pushed the lid down and it stayed", "lid popped up again", "two did not ping",
        "two did not take", "one gives when pressed", "centre still pops", "lids wobble",
        "two lids are up", "three failed", "one jar open next morning", "rims were greasy",
        "did not wipe the rims", "a bean caught under one lid", "does not ring when tapped",
    )),
    "looks": (BEANS, (
        "cloudy when I took them out", "liquid turned milky", "they smell a bit funny",
        "drip marks down two jars", "one spat when opened",
    )),
    "nobody knows": (BEANS, (
        "hope the time was long enough", "should be ok I guess", "fingers crossed",
        "I think I did the full time", "not sure pressure was right", "do not trust this lot",
        "my own method", "not by the book", "lost count",
    )),
    "altitude": (BEANS, ("made at altitude", "on holiday in the high mountains")),
    "water": (TOMATOES, (
        "water didn't cover the jars", "jars floated", "three bobbed up", "jars fell over",
        "half the jar out of the water", "jars half submerged", "pot too shallow",
        "an inch short of the lids", "topped up with cold water in the middle",
        "water at neck height",
    )),
    "boil": (TOMATOES, (
        "a gentle simmer", "boil died down for a while", "boil was weak", "tepid bath",
        "bath not hot enough", "lazy boil", "counted the warm up", "40 of the 85 minutes",
        "cold packed into a boiling canner and started counting at once",
        "85 was too long so 60", "boiled 45 min",
    )),
    "acid": (TOMATOES, (
        "low acid variety", "sweet low-acid ones", "a squeeze of lemon each", "home squeezed lemon",
        "not certain every jar got lemon", "from blighted plants",
    )),
    "pack": (PEACHES, ("raw packed really", "packed cold", "jars were quarts after all")),
    "vinegar": (DILLS, (
        "rice vinegar", "white wine vinegar", "balsamic", "equal parts", "1 to 1", "half and half",
        "watered the brine down", "used last year's brine", "vinegar strength unknown",
        "unlabelled vinegar", "lime not washed off", "brine murky",
    )),
}  # fmt: skip
FINE = {
    BEANS: (
        "all sealed the next morning", "we froze the rest", "my own",
        "the field was flooded in june",
        "weight jiggled all along", "11 psi as always", "held 11 like a rock", "it sat at 11",
        "needle never moved off 11", "pressure never wavered", "no pressure drops",
        "turned the heat off after 20 min and waited", "turned off when the timer rang",
        "turned the burner down to hold 11", "switched off after the full time",
        "pressure came down on its own in 40 minutes", "needle at zero for 10 minutes",
        "waited until the needle was at zero", "took 25 minutes to come up to pressure",
        "vented 10 min, then weight on", "steam poured out for 10 minutes before closing",
        "weight on after ten minutes of steam", "started timing when the needle reached 11",
        "went straight into the canner", "picked in the evening, canned in the morning",
        "picked Friday, canned Saturday", "prepped the night before", "canned on Tuesday",
        "let them rest 24 h before shelving", "cooled on a towel overnight",
        "left overnight on the counter to cool", "seals tested after 24 hours",
        "labelled and put away the day after", "no siphoning at all", "hardly lost any liquid",
        "no liquid lost", "jars came out full", "an inch above the beans", "good inch of headspace",
        "packed loosely", "sealed with a lovely ping", "the last lid popped at midnight",
        "popped one by one in the night", "lids tight as drums", "every lid down tight",
        "opened the lid away from me", "rings finger tight", "new lids", "old jars, sound rims",
        "checked rims for nicks, none", "rims wiped with a damp cloth", "new gasket this year",
        "gauge checked at the extension office in May", "gauge reads true", "quarts next time",
        "no quarts this year", "kids turned the jars with the labels out",
        "turned off the fan while canning", "ran out of labels", "lost count of the beans",
        "not sure of the variety", "should last the winter", "might do carrots next",
        "think these are Provider", "hope we eat them before June", "low flame kept it there",
        "by the book, every step", "did not have to restart", "no interruptions this time",
        "no bulging lids", "no failed seals", "let the pressure drop by itself",
        "let the pressure return to zero on its own", "came up to pressure in 8 minutes",
        "got up to pressure within ten minutes", "a bit of water lost", "a little liquid lost",
        "one jar short of a full canner", "steam came out steadily for 10 minutes",
    ),
    TOMATOES: (
        "rolling boil the whole time", "started counting once it boiled again",
        "kept a kettle on to top up with boiling water", "turned the heat off after 85 min",
        "not one floated", "bottled lemon only", "lemon juice first, then tomatoes",
        "picked before the frost", "no blight this year", "lids not touched until cold",
        "water two inches over the lids", "boiled 5 minutes", "boiled 85 min",
    ),
    PEACHES: ("fruit floated a bit", "hot pack, 30 minutes", "overripe ones went into jam"),
    JAM: (
        "poured hot into hot jars, then 10 minutes in the bath", "foam skimmed",
        "turned off the heat and skimmed", "every lid went pop", "flipped through the book",
        "the last jar half full went to the fridge",
    ),
    DILLS: (
        "more vinegar than water", "well rinsed three times", "no lime used",
        "ice bath for four hours",
        "rice vinegar 5%", "brine covers them well", "soaked overnight in salt water, drained",
    ),
}  # fmt: skip


def _against(p: Pantry, line: str, note: str) -> bool:
    """Whether the note is asked about, or the batch is no longer trusted beside it."""
    try:
        said = tried(p, line, note)
    except BadInput:
        return True
    return said.verdict is not Verdict.SOUND or any("not checked" in one for one in said.reasons)


@pytest.mark.parametrize("stage", DOUBTED)
def test_a_stage_that_went_wrong_is_held_against_a_good_record(larder: Pantry, stage: str) -> None:
    line, notes = DOUBTED[stage]
    assert [note for note in notes if not _against(larder, line, note)] == []


@pytest.mark.parametrize("line", FINE)
def test_what_a_proud_canner_writes_raises_nothing(larder: Pantry, line: str) -> None:
    assert not _against(larder, line, "")
    assert [note for note in FINE[line] if _against(larder, line, note)] == []


@pytest.mark.parametrize(
    ("note", "key"),
    [
        ("needle stayed at 9", "psi"), ("15 minutes tops", "minutes"), ("quarts really", "jar"),
        ("steam canner", "canner"), ("packed raw", "pack"), ("reused lids", "seal"),
        ("no headroom", "headspace"),
    ],
)  # fmt: skip
def test_the_sentence_names_what_of_the_record_it_is_against(
    larder: Pantry, note: str, key: str
) -> None:
    found = tried(larder, BEANS, note)
    assert [one for one in found.reasons if f"as {key}=..." in one and repr(note) in one]


def test_a_note_of_nothing_asks_no_stage() -> None:
    """Most notes speak of no process, and cost no pattern."""
    stages = (*HEATING, *OF_JARS)
    asked = [one.about for one in stages if speaks("from row 3 by the old fence", one.about)]
    assert asked == []
