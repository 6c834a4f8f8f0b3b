"""Quality figures of the federal storage table of 2018 that give a date: nothing closer, newer or
stricter of ours speaks there."""

from __future__ import annotations

TYPED = {
    "USDA FSIS, Cornell University and FMI, Food storage data, version 128, 2018": """
        fresh | apples | sealed | fridge | quality | 4 weeks
        fresh | asparagus | sealed | fridge | quality | 3 days
        fresh | blueberries | sealed | fridge | quality | 1 weeks
        fresh | broccoli | sealed | fridge | quality | 3 days
        fresh | carrots | sealed | fridge | quality | 2 weeks
        fresh | kefir | sealed | fridge | quality | 1 weeks
        fresh | mushrooms | sealed | fridge | quality | 3 days
        fresh | strawberries | sealed | fridge | quality | 2 days
        frozen | basil | sealed | freezer | quality | 1 months
        frozen | parsley | sealed | freezer | quality | 1 months
        frozen | muscadines | sealed | freezer | quality | 1 months
        frozen | pine nuts | sealed | freezer | quality | 9 months
        bought in | brown rice | sealed | pantry | quality | 1 years
        bought in | dry beans | sealed | pantry | quality | 1 years
        bought in | dry beans | open | pantry | quality | 1 years
        bought in | flour | open | pantry | quality | 6 months
        bought in | sugar | open | pantry | quality | 18 months
        dried | dry beans | open | pantry | quality | 1 years
        dried | chickpeas | open | pantry | quality | 1 years
        dried | lentils | open | pantry | quality | 1 years
        dried | split peas | open | pantry | quality | 1 years
        bought in | honey | sealed | pantry | quality | 2 years
        bought in | ketchup | open | fridge | quality | 6 months
        bought in | lentils | sealed | pantry | quality | 1 years
        bought in | maple syrup | sealed | pantry | quality | 1 years
        bought in | molasses | sealed | pantry | quality | 1 years
        bought in | mustard | open | fridge | quality | 1 years
        bought in | oats | sealed | pantry | quality | 2 months
        bought in | peanut butter | open | pantry | quality | 2 months
        bought in | quinoa | sealed | pantry | quality | 2 years
        bought in | white flour | sealed | pantry | quality | 6 months
    """,
    "The same table: up to 3 weeks, so no shorter end and no date": """
        fresh | sour cream | sealed | fridge | quality | none
    """,
}
