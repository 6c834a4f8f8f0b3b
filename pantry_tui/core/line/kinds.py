"""What a place is like by what it is called: a larder, an attic, a deep freezer."""

from __future__ import annotations

from pantry_tui.core.words import Climate

#: What a place of each kind is also called.
KINDS = {
    "pantry": Climate.PANTRY, "larder": Climate.PANTRY, "cellar": Climate.CELLAR,
    "root cellar": Climate.CELLAR, "fridge": Climate.FRIDGE, "refrigerator": Climate.FRIDGE,
    "freezer": Climate.FREEZER, "deep freeze": Climate.FREEZER, "deep freezer": Climate.FREEZER,
    "cupboard": Climate.ROOM, "basement": Climate.ROOM, "garage": Climate.ROOM,
    "shed": Climate.ROOM, "kitchen": Climate.ROOM, "attic": Climate.ROOM, "cooler": Climate.FRIDGE,
}  # fmt: skip
#: The same where they are all that a part of the line says, or behind "in".
ALONE = {
    "cupboard under the stairs": Climate.ROOM, "under the stairs": Climate.ROOM,
    "counter": Climate.ROOM, "worktop": Climate.ROOM, "kitchen counter": Climate.ROOM,
    "under the bed": Climate.ROOM, "spare room": Climate.ROOM, "utility room": Climate.ROOM,
    "mudroom": Climate.ROOM, "porch": Climate.ROOM, "barn": Climate.ROOM, "loft": Climate.ROOM,
    "hall": Climate.ROOM, "hallway": Climate.ROOM, "landing": Climate.ROOM,
    "utility": Climate.ROOM, "laundry": Climate.ROOM, "laundry room": Climate.ROOM,
    "conservatory": Climate.ROOM, "veranda": Climate.ROOM, "balcony": Climate.ROOM,
    "outhouse": Climate.ROOM, "scullery": Climate.PANTRY, "cold room": Climate.CELLAR,
    "outside freezer": Climate.FREEZER, "garage freezer": Climate.FREEZER,
    "garage fridge": Climate.FRIDGE, "spare fridge": Climate.FRIDGE,
    "kitchen fridge": Climate.FRIDGE, "kitchen freezer": Climate.FREEZER,
    # as households on the continent of Europe say it
    "keller": Climate.CELLAR, "kelder": Climate.CELLAR, "cave": Climate.CELLAR,
    "cantina": Climate.CELLAR, "bodega": Climate.CELLAR, "piwnica": Climate.CELLAR,
    "källare": Climate.CELLAR, "speisekammer": Climate.PANTRY, "vorratskammer": Climate.PANTRY,
    "garde manger": Climate.PANTRY, "cellier": Climate.PANTRY, "dispensa": Climate.PANTRY,
    "despensa": Climate.PANTRY, "spiżarnia": Climate.PANTRY, "skafferi": Climate.PANTRY,
    "kühlschrank": Climate.FRIDGE, "frigo": Climate.FRIDGE, "nevera": Climate.FRIDGE,
    "lodówka": Climate.FRIDGE, "koelkast": Climate.FRIDGE, "gefrierschrank": Climate.FREEZER,
    "gefriertruhe": Climate.FREEZER, "congélateur": Climate.FREEZER,
    "congelatore": Climate.FREEZER, "congelador": Climate.FREEZER, "zamrażarka": Climate.FREEZER,
}  # fmt: skip
#: How warm these are differs from house to house and from summer to winter: only the household
#: knows whether one is a room or a cellar. Common practice, no source.
_VARIES = frozenset({
    "attic", "loft", "garage", "shed", "porch", "barn", "outhouse", "mudroom", "utility room",
    "utility", "laundry", "laundry room", "hall", "hallway", "landing", "conservatory", "veranda",
    "under the stairs", "cupboard under the stairs", "spare room", "basement", "balcony",
})  # fmt: skip
_NOT_COLD_BY_A_MACHINE = (Climate.ROOM, Climate.PANTRY, Climate.CELLAR)


def kind_of(name: str) -> Climate | None:
    """What a place that is called so usually is like; None where its name says nothing."""
    plain = " ".join(name.casefold().split())
    return KINDS.get(plain) or ALONE.get(plain)


def surely_of(word: str) -> Climate | None:
    """("fridge", "refrigerator") The climate by its own word, or by that of a place whose climate
    is the same in every house; None for an attic."""
    plain = " ".join(word.casefold().split())
    if plain in tuple(Climate):
        return Climate(plain)
    return None if plain in _VARIES else kind_of(plain)


def sensible(name: str) -> tuple[Climate, ...]:
    """The climates that a place of that name may have, the likeliest first."""
    plain = " ".join(name.casefold().split())
    if plain in _VARIES:
        return _NOT_COLD_BY_A_MACHINE
    usual = kind_of(plain)
    return tuple(Climate) if usual is None else (usual, *(one for one in Climate if one != usual))


def may_be(typed: str, path: str) -> bool:
    """Whether a place that is typed by its kind may be one that is there: a larder a pantry, but
    no attic a kitchen."""
    plain = " ".join(typed.casefold().split())
    usual, names = kind_of(plain), [part.strip() for part in path.split("›")]
    if plain in _VARIES:
        return False
    return all(
        kind_of(name) in (None, usual) and (kind_of(name) is None or usual is not Climate.ROOM)
        for name in names[-1:]
    )
