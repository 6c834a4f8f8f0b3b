"""What people write of the form of a food and of what was done to it: words that are understood,
spellings that mean one of them, and all else, which is refused by name. "Not peeled" is unpeeled,
and "not diced" is nothing that anybody could judge by.
"""

from __future__ import annotations

import re

from pantry_tui.core.amounts import fractions_spelled
from pantry_tui.core.safety.denial import DENIAL


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


#: Words of cutting and peeling: a crop that was so treated is no whole one.
CUT = _words(
    "sliced slices slice diced cubed cubes cube chopped halved halves quartered chunks chunk "
    "strips julienned shredded grated wedges rings coins batons peeled cored cut florets balls "
    "matchsticks spiralised podded shelled blanched parboiled pitted stoned half quarter quarters "
    "piece pieces strip wedge ring baton floret"
)
#: The same of a record, where no word of a name (ground cherries) can be meant.
FINER = _words("minced mashed crushed ground spears riced puree pureed pulp juiced hash")
#: Done to it without parting it, or said of what it is: nothing is judged by these.
_AS_IT_IS = _words(
    "whole washed rinsed scrubbed cleaned clean dry dried fresh raw cooked stewed baked smoked "
    "boiled steamed roasted drained soaked trimmed topped tailed stemmed destemmed hulled husked "
    "unhusked cured unwashed uncut unpitted unstoned untrimmed unshelled unhulled picked sorted "
    "frozen thawed loose packed packing pack canned canning dipped treated ripe unripe green red "
    "white yellow black brown purple orange pink hot sweet sour mild small medium large big tiny "
    "thin thick fine coarse young baby old jumbo mini extra very thinly thickly finely coarsely "
    "roughly evenly lightly well inch inches in cm mm into to of with and or the a an by on off "
    "at style up out long wide across lengthwise crosswise together separately each one two three "
    "four six eight round side sides shell shells beaten whisked"
)
#: What food is packed in, its parts, and what was taken out of it.
_PARTS = _words(
    "bones bone boned boneless deboned bonein skin skins skinned skinless peel peels unpeeled "
    "seed seeds seeded deseeded seedless stems stem stones stone pits pit core cores leaves leaf "
    "stalks stalk tops roots kernel kernels cob cobs ears ear pods pod hearts heart tips tip "
    "crown crowns water juice syrup own tomato pineapple apple liquid added broth stock sauce "
    "molasses brine salt oil vinegar honey sugar light heavy medium double single cream creamed "
    "creamy paste relish jelly butter fillet fillets filleted steaks steak loin thighs thigh "
    "breasts breast legs leg wings wing drumsticks drumstick joints joint ribs shoulder belly "
    "roast stew burger patties patty fat lean trimmings tails tail heads head gutted scaled "
    "shucked mince french italian english asian domestic game commercial homemade semi part "
    "partly partially sun air powdered powder pectin fermented quick reduced sodium standard"
)
#: What the published processes call the food itself: some differ by it (form=goose, form=lima).
_KINDS = _words(
    "apples apricots asparagus bean beans beef beets berries birds carrots cherries chicken chile "
    "chiles choice chopped clams corn cucumbers duck elk venison bear pork lamb veal mutton goat "
    "figs fish goose grape grapes lima meat mushrooms nectarines onions peaches pears peas pepper "
    "peppers pickles plums potatoes poultry pumpkin rabbit rhubarb salsa snap soup squash "
    "strawberries tomatillos tomatoes trout salmon tuna turkey vegetable vegetables winter greens "
    "spinach okra zucchini kidney navy pinto runner wax meatless blend spaghetti ketchup "
    "applesauce cranberry chutney fruit grapefruit sections jam preserve pie filling blueberry "
    "dill bread pickled pearl dilly pickle piccalilli salad banana sauerkraut mixed succotash "
    "other containing seafood con carne"
)
#: Said of a crop, and judged by (core.safety.prepared).
_FALLEN = frozenset({"windfall", "windfalls"})
_KNOWN = CUT | FINER | _AS_IT_IS | _PARTS | _KINDS | _FALLEN
#: The same said otherwise; of what stands behind only the word in front counts.
_SAME = (
    (r"\b(?:not|never|non|un) peeled\b|\bno peeling\b|"
     r"\bwith(?: the| their| its)? (?:skins?|peels?)\b|\b(?:skins?|peels?)(?: left)? on\b|"
     r"\bin(?: the| their| its) skins?\b", "unpeeled"),
    (r"\b(?:without|no|minus)(?: the| their| its)? (?:skins?|peels?)\b|"
     r"\b(?:skins?|peels?) off\b|"
     r"\bskinless\b|\bskinned\b", "peeled"),
    (r"\b(?:not|never|un) cut(?: up)?\b|\buncut\b|\bleft whole\b", "whole"),
    (r"\b(?:without|no) (?:liquid|water)\b", "dry packed"),
    (r"\b(?:without|no)(?: the| their| its)? bones?\b|\bboneless\b|\bdeboned\b", "boneless"),
    (r"\b(?:without|no) meat\b", "meatless"),
)  # fmt: skip
#: A process of its own: tomatoes in the juice that runs from them.
_NONE_ADDED = r"\b(?:no|without) added (?=(?:liquid|pectin|sugar|salt)\b)"


def plainly(typed: str) -> str:
    """In small words parted by single spaces, each as it is known here: "Sliced, skin-on" is
    "sliced unpeeled"."""
    if not typed:
        return ""
    plain = " ".join(re.findall(r"[^\W\d_]+", fractions_spelled(typed.casefold())))
    for pattern, meant in _SAME:
        plain = re.sub(pattern, meant, plain)
    return plain


def all_understood(typed: str) -> bool:
    """Whether every word is known, and none turns another one about."""
    plain = re.sub(_NONE_ADDED, " ", plainly(typed))
    words = plain.split()
    known = all(word in _KNOWN for word in words) and any(len(word) > 1 for word in words)
    return known and re.search(DENIAL, plain) is None
