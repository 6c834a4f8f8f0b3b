"""Words of a note that jars stood where it is hot: above 95 °F canned food may spoil, and no number
is published (USDA AIB 539, guide 1: no jar near a range, a furnace or hot pipes, under an attic or
in the sun). For notes in small letters, one clause at a time. Which words are listened for is a
choice of our own.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.safety.note_words import PURPOSE

_THE = r"(?:(?:the|our|my|a|an|back|of|hot|warm|old|big|wood|gas|south|sunny|uninsulated) )*"
_STORED = (
    r"(?:stood|standing|stands?|kept|stored|left|forgotten|forgot|sat|sits|sitting|stayed|spent|"
    r"lives?|been|shelf|shelves|cupboard|larder|pantry|jars?|rack|they|box(?:es)?)"
)
#: Hot in summer alone.
_UNDER_ROOF = (
    r"(?:attic|loft|roof space|eaves|green ?house|glass ?house|conservatory|poly ?tunnel|garage|"
    r"shed|caravan|camper|tent|barn|sauna|boot|trunk|car|van|lorry)"
)
_SUMMER = (
    r"(?:(?:all|over|through|during|for|in|since|the|whole|most of) )*(?:summer|july|august|june|"
    r"heat ?waves?|hot (?:days?|weeks?|months?|spell)|hottest \w+|dog days|(?:a|the|some|"
    r"several|\d+) (?:days|weeks|week|months))"
)
_HEATER = (
    r"(?:stove|cooker|oven|range|furnace|boiler|radiator|hot water (?:pipes?|tank|cylinder|"
    r"heater)|water heater|heating pipes?|hot pipes?|heater|wood ?burner|fire ?place|chimney|"
    r"dish ?washer|tumble dryer|dryer|kiln)"
)
_BESIDE = r"(?:beside|next to|right by|by|near|above|over|behind|on top of|close to|against|under)"
_HOT = (
    rf"\b{_STORED}\b(?: \w+){{0,3}} (?:in|under|up in) {_THE}{_UNDER_ROOF}\b(?: of the car)?(?: "
    rf"\w+)? {_SUMMER}\b|"
    rf"^(?:up )?(?:in|under) {_THE}{_UNDER_ROOF} {_SUMMER}\b|"
    rf"\b(?:was|were) (?:in|under|up in) {_THE}(?:attic|loft|garage|shed|caravan|camper|tent|boot|"
    rf"trunk|car|van|lorry)\b(?: (?:boot|trunk))?(?: of the car)? {_SUMMER}\b|"
    rf"^(?:(?:in|up) )?{_THE}(?:boot|trunk|car|van|lorry|attic|loft)\b(?: (?:boot|trunk))?"
    rf"(?: of the car)? {_SUMMER}\b|\bon {_THE}dash ?board\b|"
    rf"\bhot (?:car|boot|trunk|van|attic|loft|shed|garage)\b|"
    rf"\b{_STORED}\b(?: \w+){{0,3}} (?:in|under|catch\w*|gets?|got|facing) {_THE}(?:full |direct |"
    r"blazing |bright |afternoon |morning )*(?:sun(?:light|shine)?|sun all \w+)\b(?! (?:room|porch|"
    r"dried|ripened))|"
    rf"^(?:on|by) {_THE}window ?sill (?:in|with) {_THE}(?:full |direct )*sun\b|"
    rf"\b(?:sunny|south|south facing) (?:window ?sill|shelf|window ledge)\b|"
    rf"\b{_STORED}\b(?: \w+){{0,3}} {_BESIDE} {_THE}{_HEATER}\b|"
    rf"^{_BESIDE} {_THE}{_HEATER} (?:all|since|for|over|through) (?!\d|an? hour)\w+"
)
#: What was done there, and jars that were empty.
_OF_ELSE = (
    r"\b(?:cool\w*|while|fill\w*|empty|warm\w* (?:before|first|to)|cann(?:ing|ed)|process\w*|"
    r"pick\w*|grow\w*|grew|grown|ripen\w*|plant\w*|sown|started|wash\w*|to (?:cool|drain|dry|seal)|"
    r"away|out of|far from|shade\w*|in winter|insulated|steriliz\w*|sterilis\w*|stir\w*|"
    r"(?:next|this) summer|carr\w*|drove|driv\w*|home|took|from the|canner)\b"
)
_SHELF = (
    r"\b(?:pantry|larder|shelf|shelves|cupboard|garage|shed|attic|loft|cellar|store ?room|room|"
    r"basement|stored|kept|stood|it got|got up|place)\b"
)
_DEGREES = (
    r"\b(9[6-9]|1[0-3]\d)(?: ?°)? ?(?:degrees)?\b(?! ?(?:c|min|jars|pints|lb|ml|g|psi|ft|h)\b)"
)
_LONG = r"\b(?:above|over|up to|reach\w*|hit|got|was|at|in|weeks?|days?|summer|august|july)\b"


def stood_hot(clause: str, degrees: Sequence[float]) -> bool:
    """Whether jars stood so by a clause; `degrees` are the °F that it names."""
    told = re.sub(PURPOSE, " ", clause) if " for " not in clause else clause
    if re.search(_OF_ELSE, told):
        return False
    if affirmed(told, _HOT):
        return True
    hot = [one for one in degrees if 95 < one < 140]
    if not degrees:
        hot = [float(one) for one in re.findall(_DEGREES, told) if "degree" in told]
        hot += [96.0] if re.search(r"\b(?:above|over) 95\b", told) else []
    return bool(hot) and re.search(_SHELF, told) is not None and re.search(_LONG, told) is not None
