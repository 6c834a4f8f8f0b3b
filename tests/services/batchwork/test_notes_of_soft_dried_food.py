"""Notes of dried food that is soft or damp again, and of what is as dry as it should be."""

from __future__ import annotations

import pytest

from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import each, speaks_against

LINES = {
    "dapple": "1 bag apples, dried, larder, 20 oct",
    "dbeans": "1 jar green beans, dried, larder, 20 oct",
    "dmush": "1 jar mushrooms, dried, larder, 20 oct",
    "herbs": "2 jars mint, dried, larder, 20 aug",
    "powder": "1 jar onion powder, dried, larder, 20 oct",
    "jerky": "1 bag beef jerky, dried, larder, 20 nov",
    "dtom": "1 jar tomatoes, dried, larder, 20 oct",
    "draisin": "1 bag raisins, dried, larder, 20 oct",
}
GOOD = {
    "dapple": """
leathery, bend without breaking
soft and leathery as they should be
pliable
bendy
rings bend, no moisture when cut
chewy
not damp at all
soft kind of apple
dry and soft to the bite
conditioned ten days, no drops on the glass
never went soft
soft apples to begin with
""",
    "dbeans": """
snap when bent
bend one and it snaps
break when you bend them
brittle
crisp
not bendy
do not bend
bent double with picking
for soft beans soak overnight
go soft in soup
""",
    "dmush": """
bendy
brittle, snap clean
kind of leathery before, then dried again till they snapped
""",
    "herbs": """
crumble between fingers
leaves crumble, stems snap
soft leaved sage, dried crisp
""",
    "powder": """
fine and loose
""",
    "jerky": """
bends and cracks, does not break
bendy
""",
    "dtom": """
leathery
""",
    "draisin": """
soft and bendy
""",
}
BAD = {
    "dapple": """
went soft and damp
apples went soft and damp
rings bend and feel damp
soft again since the wet weeks
no longer leathery, more like fresh
a bit moist again
sweating in the jar
drops under the lid
sticky and wet to the touch
gone limp and clammy
drew water
squeezed one and juice came
""",
    "dbeans": """
beans bend
beans are bendy
bend instead of snapping
do not snap any more
leathery
pliable
rubbery
went soft
chewy not crisp
flexible again
not brittle
lost their crunch
""",
    "dmush": """
went soft
rubbery again
""",
    "herbs": """
leaves do not crumble
leaves bend
went limp
feels damp
""",
    "powder": """
clumped
gone to a lump
""",
    "jerky": """
went soft and sticky
wet beads on it
""",
    "dtom": """
some still juicy
""",
}


@pytest.mark.parametrize(("what", "note"), each(GOOD))
def test_it_stays_what_it_is(kitchen: Pantry, what: str, note: str) -> None:
    assert not speaks_against(kitchen, LINES[what], note)


@pytest.mark.parametrize(("what", "note"), each(BAD))
def test_it_is_held_against_it(kitchen: Pantry, what: str, note: str) -> None:
    assert speaks_against(kitchen, LINES[what], note)
