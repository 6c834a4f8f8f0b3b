"""Cold smoke cooks nothing: what a record says of the salt in the fish, its cure, and the air. Of
fish that was smoked hot it is only asked whether there was any salt at all.

Smoked fish is held to salt in its water, the loin analysed: 3 % in a pack with air (Michigan,
R 285.569.8; Maine, chapter 359, has 2.5 %), 3.5 % in one without (Maine, chapter 359); both read in
excerpts. Nobody analyses a fish at home, so the share of salt that was typed counts as that of its
water. A strong bare percentage may be that of the brine it lay in, which says nothing of the fish.
The air is below 85 °F (University of Alaska Fairbanks Extension, FNH-00325; a copy). Meat that is
smoked without heat needs a nitrite cure (National Center for Home Food Preservation, review of
cured and smoked meats; from memory, the stricter choice).
"""

from __future__ import annotations

from collections.abc import Mapping

from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety.denial import denies
from pantry_tui.core.safety.measured import all_fahrenheit, read_percent, spelled_out
from pantry_tui.core.safety.salt import MOST_PERCENT, read_brine, read_salt, says_of_brine
from pantry_tui.core.words import Group, Method

IN_AIR_PERCENT, IN_VACUUM_PERCENT = 3.0, 3.5
WARMEST_F = 85.0
_NO_SALT = "No salt was used: no smoked fish is published without it."
SALT_NOT_CHECKED = (
    "Salt of the fish not recorded: not checked. Smoked fish holds at least "
    f"{IN_AIR_PERCENT:g} % in its water, {IN_VACUUM_PERCENT:g} % in a vacuum pack (salt=3.5%). "
    f"Above {MOST_PERCENT:g} % it is read as its brine's."
)


def too_little_smoked(method: Method, food: FoodFacts, said: Mapping[str, str]) -> list[str]:
    """What the record of something smoked says against it, sentence by sentence."""
    if method is Method.HOT_SMOKED and food.group is Group.FISH:
        return [_NO_SALT] if denies(said.get("salt", "")) else []
    if method is not Method.COLD_SMOKED or food.group not in (Group.FISH, Group.MEAT):
        return []
    warm = max(all_fahrenheit(said.get("temperature", "")), default=WARMEST_F)
    found = []
    if food.group is Group.FISH:
        found += _salt(said)
    elif denies(said.get("cure", "")):
        found.append("No cure was used: meat that is smoked without heat needs one with nitrite.")
    if warm > WARMEST_F:
        found.append(f"{warm:g} F is too warm for cold smoke, which stays below {WARMEST_F:g} F.")
    return found


def _salt(said: Mapping[str, str]) -> list[str]:
    salt = said.get("salt", "")
    # Where nobody knows it may lie without air, which is the stricter case.
    airless = "vacuum" in said and not denies(said["vacuum"])
    least = IN_VACUUM_PERCENT if airless else IN_AIR_PERCENT
    if denies(salt):
        return [_NO_SALT]
    # Of a brine less goes into the fish than is in it.
    percent = read_brine(salt) if says_of_brine(salt) else _share(salt)
    if percent is None or percent >= least:
        return []
    pack = "packed without air" if airless else "packed in air"
    return [
        f"{percent:g} % of salt is too little: smoked fish {pack} holds at least {least:g} % in "
        "its water."
    ]


def salt_unsaid(batch: Batch) -> bool:
    """Whether it is cold-smoked fish, and its record tells no share of salt in it: how strong a
    brine it lay in says nothing of how much of that went into it. Of none at all there is doubt."""
    fish = batch.method is Method.COLD_SMOKED and batch.food.group is Group.FISH
    salt = dict(batch.process).get("salt", "")
    return fish and (_share(salt) is None or says_of_brine(salt))


def _share(salt: str) -> float | None:
    """Per cent of salt in the fish; None where nobody says it: a percentage above that of food
    which is only salted to be eaten is read as the brine's. This program's choice."""
    percent = read_salt(salt)
    bare = read_percent(spelled_out(salt)) is not None
    return None if bare and percent is not None and percent > MOST_PERCENT else percent
