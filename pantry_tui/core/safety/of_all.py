"""What a person says of one container that is true of all of its batch, and that no look takes
back: somebody fell ill after eating of it, or it is recalled. The toxin of botulism cannot be seen,
smelled or tasted; what is called back is not eaten, whatever it looks like (US CDC, "Botulism:
prevention"; US FDA and USDA FSIS, recalls; from memory).
"""

from __future__ import annotations

from collections.abc import Sequence

from pantry_tui.core.dataclass import replace
from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.safety.note_orders import RECALLED
from pantry_tui.core.safety.note_spoilage import ILL, NERVES, ill_of_else
from pantry_tui.core.safety.signs import UNSURE, Sign, SignVerdict

#: As the payloads of such signs name them.
ILL_ID, RECALLED_ID = "fell-ill", "recalled"
OF_ALL = frozenset({ILL_ID, RECALLED_ID})
#: Said of a jar that was eaten, and no word of it.
_TREATED = (
    r"\b(?:hospital\w*|emergency room|a ?& ?e|ambulance|doctors?|poison (?:control|centre|center|"
    r"line|unit))\b(?! (?:fair|fete|fête|sale|bazaar|gift))"
)
_BACK = r"\b(?:recall(?:ed|s)?|called back|r(?:ü|ue)ckruf\w*|on (?:a |the )?recall)\b"


def of_all(known: Sequence[Sign], text: str) -> Sign | None:
    """The sign that words mean which speak of the whole batch, with what is known of a container of
    it; None where they do not."""
    said = " ".join(text.casefold().split())
    ill = affirmed(said, f"{ILL}|{NERVES}|{_TREATED}") and not ill_of_else(said)
    back = affirmed(said, f"{RECALLED}|{_BACK}")
    if not (ill or back):
        return None
    unsure = next(one for one in known if one.id.startswith(UNSURE))
    if ill and not back:
        return replace(
            unsure,
            id=ILL_ID,
            words="somebody fell ill after eating of it",
            means="What made somebody ill may be in every container of the batch, and none of them "
            "shows it.",
            verdict=SignVerdict.DO_NOT_TASTE,
            steps=(
                "Get medical help at once for whoever ate of it, and say what it was",
                "Eat none of this batch, whatever it looks like",
                "Keep the rest closed and out of reach until those who help have asked for it",
            ),
            disposal="bag",
            suspect_batch=True,
        )
    return replace(
        unsure,
        id=RECALLED_ID,
        words="recalled",
        means="What is called back is not eaten, whatever it looks like.",
        verdict=SignVerdict.DO_NOT_TASTE if ill else SignVerdict.DISCARD,
        steps=("Eat none of it", "Do as the recall says: take it back, or discard it closed"),
        disposal="bag" if ill else "bin",
        suspect_batch=True,
    )
