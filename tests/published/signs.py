"""Signs, typed in by hand from the publications named above each block.

One line a sign: method | food | open or closed | sign | verdict on the container | disposal.
Verdict and disposal are the strict reading that the house defaults ask for.
"""

from __future__ import annotations

TYPED = {
    "Monterey County Health Department, Botulism, after CDC": """
    pressure canned | snap beans | closed | swollen lid | do not taste | bag
    boiling-water canned | peaches | closed | swollen lid | do not taste | bag
    jam | strawberry jam | closed | swollen lid | do not taste | bag
    bought in | tuna | closed | swollen lid | do not taste | bag
    pressure canned | beef | open | spurts or foams on opening | do not taste | gloves-bag
    vinegar pickle | dilly beans | closed | still unsure after looking | do not taste | bag
    fermented paste | miso | open | still unsure after looking | do not taste | gloves-bag
    """,
    "University of Missouri Extension, Quick Answers 157": """
    pressure canned | sweet corn | closed | leaking lid | do not taste | gloves-bag
    boiling-water canned | tomatoes | open | leaking lid | do not taste | gloves-bag
    """,
    "Washington State University Extension, Protect yourself from botulism": """
    pressure canned | beets | closed | cracked or damaged jar | do not taste | bag
    pressure canned | beets | open | cracked or damaged jar | do not taste | gloves-bag
    """,
    "Michigan State University Extension, Preserving Food Safely 01600952 and 01600953": """
    pressure canned | carrots | closed | dried streaks from the rim | do not taste | bag
    pressure canned | peas | closed | bubbles rising in a still jar | do not taste | bag
    boiling-water canned | pears | closed | unnatural colour | do not taste | bag
    boiling-water canned | pears | open | unnatural colour | do not taste | gloves-bag
    pressure canned | peas | closed | rust eaten into the lid or rim | do not taste | bag
    pressure canned | peas | closed | stood above 95 F or in the sun | tend | none
    """,
    "NC State Extension, answers 489, 220, 188, 468, 471 and 591": """
    pressure canned | okra | closed | loose lid found in storage | do not taste | gloves-bag
    boiling-water canned | plums | closed | unsealed for over a day | do not taste | gloves-bag
    pressure canned | asparagus | closed | yellow crystals in asparagus | sound | none
    pressure canned | peas | closed | surface rust on the lid | tend | none
    boiling-water canned | plums | closed | froze in store, still sealed | eat soon | none
    jam | raspberry jam | closed | mould | discard | bin
    jam | apple butter | open | mould | discard | bin
    freezer jam | strawberry jam | open | mould | discard | bin
    """,
    "University of Nebraska-Lincoln Extension, Jars did not seal": """
    boiling-water canned | pears | open | unsealed within a day, tested recipe | eat soon | none
    pressure canned | beef | closed | unsealed within a day, raw or dense pack | eat soon | none
    """,
    "CDC MMWR 68(10) and 49(34)": """
    pressure canned | peas | open | unsealed jar, wrong process, chilled | do not taste | gloves-bag
    fridge pickle | pickled eggs | open | pickled eggs left unchilled | do not taste | gloves-bag
    fridge pickle | pickled eggs | closed | pickled eggs left unchilled | do not taste | bag
    """,
    "Clemson Extension, Discarding spoiled canned foods, and HGIC": """
    pressure canned | venison | closed | looks fine, process wrong or unknown | do not taste | bag
    boiling-water canned | peaches | closed | half the liquid lost at unloading | eat soon | none
    boiling-water canned | peaches | closed | dark food at the top, tight seal | tend | none
    pressure canned | dry beans | closed | sediment under clear liquid | tend | none
    vinegar pickle | dill pickles | closed | cloudy brine | tend | none
    vinegar pickle | dill pickles | closed | pink brine | tend | none
    vinegar pickle | dilly beans | closed | blue or green garlic | sound | none
    lactic ferment | dill pickles | open | blue or green garlic | sound | none
    lactic ferment | cucumbers | open | cloudy brine while fermenting | sound | none
    fresh | chickens | closed | moist food in vacuum left unchilled | do not taste | bag
    frozen | salmon | open | fish thawed sealed, over 2 hours above 41 F | do not taste | gloves-bag
    """,
    "Michigan State University Extension, How old are your home-canned foods": """
    pressure canned | stew | closed | old jar without a label | do not taste | bag
    """,
    "USDA, Canning, freezing and storing garden produce": """
    pressure canned | peas | closed | another jar of the batch spoiled | tend | none
    pressure canned | pork | open | slimy or very soft food | do not taste | gloves-bag
    boiling-water canned | pears | closed | pink or blue tint in the fruit | sound | none
    boiling-water canned | plums | open | dark deposit under a sound lid | sound | none
    boiling-water canned | plums | closed | froze and the glass cracked | discard | gloves-bag
    pressure canned | snap beans | closed | froze and the glass cracked | do not taste | gloves-bag
    boiling-water canned | salsa | closed | froze and the glass cracked | do not taste | gloves-bag
    boiling-water canned | plums | closed | froze, unsealed, still solid | eat soon | none
    pressure canned | carrots | closed | sound but over a year old | eat soon | none
    frozen | vegetable soup | closed | cracked or splintered jar | discard | bin
    """,
    "Oregon State University Extension, SP 50-742, 50-743, 50-745 and 50-746": """
    boiling-water canned | figs | open | moving bubbles, alcohol smell | do not taste | gloves-bag
    boiling-water canned | tomatoes | closed | frothy, gassy, bad smell | do not taste | bag
    pressure canned | lima beans | closed | mould on food or lid | do not taste | bag
    pressure canned | lima beans | open | mould on food or lid | do not taste | gloves-bag
    pressure canned | turkeys | open | foul or musty smell | do not taste | gloves-bag
    pressure canned | peas | open | gas with a rancid butter smell | do not taste | gloves-bag
    pressure canned | peas | closed | murky liquid and soft food | do not taste | bag
    pressure canned | potatoes | closed | cloud that settles, food firm | tend | none
    jam | apple jelly | closed | liquid weeping from the gel | sound | none
    jam | apple jelly | closed | cloudy jelly, tight seal | sound | none
    jam | apple jelly | closed | cloudy jelly, no tight seal | tend | bin
    jam | plum jam | open | sugar grains through the spread | sound | none
    lactic ferment | sauerkraut | open | white scum on kraut | sound | none
    lactic ferment | kimchi | open | fuzzy, raised or coloured mould | discard | bin
    fermented paste | miso | open | fuzzy, raised or coloured mould | discard | bin
    lactic ferment | sauerkraut | open | pink kraut, not slimy | tend | none
    lactic ferment | sauerkraut | open | slimy or ropy | discard | bin
    lactic ferment | sauerkraut | open | soft kraut, clean sour smell | eat soon | none
    lactic ferment | sauerkraut | open | dark kraut | eat soon | none
    lactic ferment | fermented carrots | closed | rotten or putrid smell | discard | bin
    """,
    "NCHFP, problems with canned food, jellied fruit and fermented pickles; garlic in oil": """
    pressure canned | beets | closed | low liquid, tight seal | sound | none
    jam | marmalades | closed | moving bubbles | discard | bin
    jam | marmalades | closed | still bubbles in the gel | sound | none
    jam | marmalades | closed | wax lid pulled away or weeping | discard | bin
    lactic ferment | dill pickles | open | soft or slippery pickles | discard | bin
    in oil | garlic | closed | fresh food in oil left unchilled | do not taste | bag
    in oil | garlic | open | fresh food in oil left unchilled | do not taste | gloves-bag
    in oil | chillies | open | fresh food in oil over 4 days old | do not taste | gloves-bag
    flavoured vinegar | herb vinegar | closed | mould, bubbles or slime | discard | bin
    """,
    "NC State Extension, Pickle problems; herbs in oil": """
    vinegar pickle | dill pickles | open | soft, slippery or slimy | discard | bin
    fridge pickle | pickled onions | open | soft, slippery or slimy | discard | bin
    vinegar pickle | dill pickles | open | hollow pickles | sound | none
    lactic ferment | cucumbers | open | flat white film (kahm) | sound | none
    lactic ferment | cucumbers | open | brine below the vegetables | tend | none
    in oil | basil | closed | fresh herbs or pesto in oil over 2 days old | do not taste | bag
    """,
    "NDSU Extension, pickling questions; after a thaw": """
    vinegar pickle | pickled beets | closed | dark pickles, steel or glass gear | sound | none
    vinegar pickle | chutney | closed | odd colour, brass, copper or zinc gear | discard | bin
    frozen | ground beef | open | off smell or colour after thawing | do not taste | bin
    """,
    "Oklahoma Extension, column on spoilage": """
    vinegar pickle | dill pickles | closed | mould or foul smell | do not taste | bag
    vinegar pickle | dill pickles | open | mould or foul smell | do not taste | gloves-bag
    """,
    "Washington State Whatcom; an extension handout on colours; Antrim Council": """
    boiling-water canned | apricots | closed | floating fruit | sound | none
    pressure canned | spinach | closed | white crystals on spinach | sound | none
    boiling-water canned | tomato sauce | closed | hard white scale, not fuzzy | sound | none
    pressure canned | cauliflowers | closed | white vegetable turned yellow | sound | none
    pressure canned | salmon | open | glass-like crystals in fish | tend | none
    """,
    "Iowa State University Extension, AnswerLine": """
    jam | grapes | open | sand or needle crystals | sound | none
    dried | apples | closed | drops or fog inside the jar | tend | none
    freeze-dried | peas | closed | drops or fog inside the jar | tend | none
    dried | apples | closed | pieces sticking together | tend | none
    frozen | pork | closed | freezer burn (grey dry patches) | eat soon | none
    frozen | pork | closed | loose ice crystals in the pack | eat soon | none
    """,
    "Canadian Food Inspection Agency; a page on kombucha": """
    flavoured vinegar | raspberry vinegar | closed | jelly disc or strands (mother) | sound | none
    vinegar ferment | vinegar | open | jelly disc or strands (mother) | sound | none
    vinegar ferment | vinegar | open | fuzzy mould on the culture | discard | bin
    """,
    "University of Georgia, So Easy to Preserve; dry goods columns": """
    dried | mushrooms | closed | mould | discard | bin
    dried | apricots | closed | softer than when packed, no mould | eat soon | none
    dried | apricots | closed | sour, winey or yeasty smell | discard | bin
    dried | flour | closed | webbing, larvae or many insects | discard | bin
    dried | oats | closed | few insects in good dry goods | tend | none
    dried | popcorn | closed | musty or discoloured kernels | discard | bin
    dried | walnuts | closed | paint, putty or cardboard smell | discard | bin
    dried | tomatoes | closed | moist food with an oxygen absorber | do not taste | bag
    dried | jerky | closed | mould on jerky | discard | bin
    dried | beef | closed | jerky, meat not heated before drying | eat soon | none
    """,
    "FoodSafety.gov, frozen food after an outage, 2021": """
    frozen | chickens | open | thawed above 40 F over 2 hours | do not taste | bin
    frozen | stew | open | thawed above 40 F over 2 hours | do not taste | bin
    frozen | milk | open | milk, cheese or eggs thawed above 40 F over 2 hours | do not taste | bin
    frozen | peas | open | vegetables thawed above 40 F over 6 hours | do not taste | bin
    frozen | raspberries | open | fruit thawed, no mould, slime or yeast smell | eat soon | none
    frozen | raspberries | open | fruit thawed, mould, slime or yeast smell | discard | bin
    frozen | bread | open | hard cheese, bread, flour or nuts thawed | eat soon | none
    cooked meal | curry | closed | part thawed, ice crystals remain | eat soon | none
    """,
    "UK Food Standards Agency; Alaska FNH-00221; Michigan State 01600816; PNW 238": """
    fresh | beef | closed | puffed vacuum pack | do not taste | bag
    hot smoked | trout | closed | smoked fish in vacuum over 5 days | do not taste | bag
    hot smoked | salmon | closed | smoked fish over 14 days old | do not taste | bag
    cold smoked | salmon | open | cold-smoked fish over 10 days old | do not taste | gloves-bag
    hot smoked | eels | closed | smoked fish left unchilled | do not taste | bag
    cold smoked | salmon | closed | slimy, sour or mouldy | do not taste | bag
    """,
    "Potato advice of BfR; Toxins 10(11):475; Penn State on onions; cellar pages": """
    cellar-stored | potatoes | open | green patches, firm | tend | none
    cellar-stored | potatoes | open | short sprouts, firm | eat soon | none
    cellar-stored | potatoes | open | shrivelled, long sprouts or very green | discard | compost-ok
    cellar-stored | potatoes | open | wet, foul or collapsing | discard | compost-ok
    cellar-stored | apples | open | soft brown rot or blue mould | discard | compost-ok
    cellar-stored | onions | open | sprouted, firm | eat soon | none
    cellar-stored | garlic | open | sprouted clove | sound | none
    cellar-stored | garlic | open | mushy, weeping or rotten smell | discard | compost-ok
    cellar-stored | garlic | open | blue-green powder on cloves | discard | bin
    cellar-stored | sweet potatoes | open | black spots or bitter taste | discard | bin
    cellar-stored | pumpkins | open | leaking, or mould in the seed cavity | discard | compost-ok
    fresh | zucchini | open | very bitter taste | discard | bin
    """,
    "USDA FSIS, Molds on food; salted fish; eggs": """
    salted | country hams | closed | mould on whole dry-cured ham or salami | eat soon | none
    salted | prosciutto | open | mould on sliced or cooked meat, or bacon | discard | bin
    salted | cod | closed | pink or red sheen | discard | bin
    fresh | hard cheese | open | mould on hard cheese | eat soon | none
    fresh | cheese | open | mould on soft, sliced or shredded cheese | discard | bin
    fresh | eggs | closed | floats in water | tend | none
    fresh | eggs | open | pink, green or shimmering white, or dark spots | discard | bin
    lime-kept | eggs | closed | eggs held in lime water or water glass | discard | bin
    """,
    "Pages on honey, maple syrup and tinctures; a fat from memory": """
    sugar preserve | honey | closed | set solid or grainy | sound | none
    sugar preserve | honey | open | foaming, yeasty or mouldy smell | discard | bin
    sugar preserve | maple syrup | open | mould | discard | bin
    sugar preserve | maple syrup | closed | gritty sediment | sound | none
    alcohol infusion | vanilla extract | closed | soft sediment | sound | none
    alcohol infusion | cherry brandy | open | mould, or a foul or skunky smell | discard | bin
    alcohol ferment | cider | open | bubbles, hiss or tight lid while fermenting | sound | none
    rendered fat | lard | open | sharp or paint-like smell | discard | bin
    """,
}  # fmt: skip

#: Every sign that the sign tables give as "discard, do not taste": method | food or * | sign.
NEVER_MILDER = """
    pressure canned; boiling-water canned; jam; vinegar pickle; bought in | * | swollen lid
    pressure canned; boiling-water canned; jam; vinegar pickle; bought in | * | leaking lid
    pressure canned; boiling-water canned; jam; bought in | * | cracked or damaged jar
    pressure canned; boiling-water canned | * | dried streaks from the rim
    pressure canned; boiling-water canned | * | loose lid found in storage
    pressure canned; boiling-water canned | * | lid springs when pressed
    pressure canned; boiling-water canned | * | unsealed for over a day
    pressure canned; boiling-water canned | * | unsealed jar, wrong process, chilled
    pressure canned; boiling-water canned | * | looks fine, process wrong or unknown
    pressure canned; boiling-water canned | * | old jar without a label
    pressure canned; boiling-water canned | * | spurts or foams on opening
    pressure canned; boiling-water canned | * | bubbles rising in a still jar
    boiling-water canned | cherries | moving bubbles, alcohol smell
    boiling-water canned | tomatoes | frothy, gassy, bad smell
    pressure canned; boiling-water canned | * | mould on food or lid
    pressure canned; boiling-water canned | * | foul or musty smell
    pressure canned | * | gas with a rancid butter smell
    pressure canned | * | murky liquid and soft food
    pressure canned; boiling-water canned | * | slimy or very soft food
    pressure canned; boiling-water canned | * | unnatural colour
    pressure canned; boiling-water canned | * | rust eaten into the lid or rim
    pressure canned; boiling-water canned; dried; frozen | * | stood in flood water
    vinegar pickle | * | mould or foul smell
    fridge pickle | pickled eggs | pickled eggs left unchilled
    dried; freeze-dried | * | moist food with an oxygen absorber
    frozen | beef | thawed above 40 F over 2 hours
    frozen | peas | vegetables thawed above 40 F over 6 hours
    frozen | milk | milk, cheese or eggs thawed above 40 F over 2 hours
    frozen | * | refrozen slab or pooled juice, no record why
    frozen | * | off smell or colour after thawing
    fresh; frozen; hot smoked; cold smoked; cooked meal | * | puffed vacuum pack
    fresh; frozen; hot smoked; cold smoked; cooked meal | * | moist food in vacuum left unchilled
    fresh; hot smoked; cold smoked; salted | * | vacuum pack past its chilled limit
    frozen; hot smoked; cold smoked | cod | fish thawed sealed, over 2 hours above 41 F
    in oil | * | fresh food in oil left unchilled
    in oil | * | fresh food in oil over 4 days old
    in oil | basil | fresh herbs or pesto in oil over 2 days old
    in oil | * | bubbles, fizz or swollen lid
    in oil | * | cloudy oil at room temperature
    in oil | * | mould or a bad smell
    hot smoked; cold smoked | trout | smoked fish in vacuum over 5 days
    hot smoked | trout | smoked fish over 14 days old
    cold smoked | trout | cold-smoked fish over 10 days old
    hot smoked; cold smoked | trout | smoked fish left unchilled
    hot smoked; cold smoked | * | slimy, sour or mouldy
    lactic ferment; rendered fat; fresh; lime-kept; fermented paste | * | still unsure after looking
"""  # fmt: skip
