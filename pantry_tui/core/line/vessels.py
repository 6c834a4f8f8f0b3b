"""Words for what things stand in, and for weights and volumes. Makers' names are read as input and
never shown."""

from __future__ import annotations

#: Singular -> what it is called here. Two-word names stand before one-word ones.
_VESSELS: dict[str, str] = {
    one: name
    for name, words in {
        "jar": "jar;mason jar;canning jar;jam jar;screw top jar;wide mouth jar;regular mouth jar;"
        "ball jar;preserving jar;honey jar;glas;glaeser;gläser;einmachglas;einmachgläser;"
        "weckglas;weckgläser;bocal;bocaux;barattolo;barattoli;vasetto;vasetti;frasco;tarro;bote;"
        "słoik;słoiki;słoików;sloik;sloiki;sloikow;burk;burkar;potje;sklenice;borcan;borcane",
        "clip-top jar": "clip top jar;clip top;cliptop jar;kilner jar;kilner;weck jar;weck;"
        "fido jar;fido;bail jar;wire bail jar;rubber ring jar;le parfait jar;parfait jar;"
        "glass lid jar;swing top jar;fowlers jar;fowlers vacola jar;vacola jar;vacola bottle;"
        "fowlers bottle;agee jar;fowlers vacola;vacola;fowlers",
        "jelly jar": "jelly jar",
        "bottle": "bottle;swing top bottle;wine bottle;beer bottle;growler;btl;flagon;stubby;"
        "stubbies;longneck;long neck;longneck bottle;stubby bottle;flask;flasche;flaschen;"
        "bouteille;bottiglia;bottiglie;botella;garrafa;butelka;butelki;flaska;flaskor",
        "jug": "jug;pitcher",
        "canister": "canister",
        "bag": "bag;freezer bag;ziplock bag;zip bag;zipper bag;mylar bag;ziplock;vacuum bag;"
        "mesh bag;paper bag;baggie;beutel;tüte;tüten",
        "pack": "pack;packet;package;pkt;pkg;parcel;vacuum pack;vac pack;sachet;packette",
        "tub": "tub;container;freezer box;takeaway tub;takeaway container;ice cream tub;punnet;"
        "clamshell;tupperware;freezer container;ramekin;barquette",
        # In a pouch or a carton pulses are sold cooked: they are no bag and no box.
        "pouch": "pouch;retort pouch",
        "carton": "carton",
        "box": "box;case;freezer carton",
        "tin": "tin;can;dose;dosen",
        "tray": "tray;flat;ice cube tray",
        "crock": "crock;stoneware crock;fermenting crock;gärtopf;steintopf;steinguttopf",
        "crate": "crate;lug;hamper;basket;trug;bushel basket;kiste;kisten;cassetta;cassette;"
        "cagette;cageot;skrzynka;skrzynki;harvest crate;apple crate",
        "sack": "sack;hessian sack;gunny sack;feed sack",
        "net": "net;onion net",
        "bin": "bin;clamp",
        "heap": "heap;pile",
        "bucket": "bucket;pail;fermenting bucket;food bucket",
        "demijohn": "demijohn",
        "carboy": "carboy;fermenter",
        "barrel": "barrel;cask;keg;drum;fass;fässer",
        "bowl": "bowl",
        "dish": "dish;casserole dish;pan",
        "string": "string;rope",
        "braid": "braid;plait;grappe",
        "bunch": "bunch",
        "side": "side",
        "block": "block;brick;slab",
        "wheel": "wheel;truckle",
        "log": "log",
        "pot": "pot",
        "pat": "pat",
        "flitch": "flitch",
        "roll": "roll",
        "tube": "tube;chub",
        "mould": "mould;mold",
        "stick": "stick",
        "bushel": "bushel;bu",
        "peck": "peck;pk",
        "hundredweight": "hundredweight;cwt",
    }.items()
    for one in words.split(";")
}
#: What a piece of something is called where it is counted; a brace is two.
PIECES: dict[str, int] = {
    "piece": 1, "pc": 1, "head": 1, "ear": 1, "cob": 1, "bulb": 1, "whole": 1,
    "each": 1, "fillet": 1, "steak": 1, "chop": 1, "joint": 1, "portion": 1, "link": 1,
    "brace": 2, "bird": 1, "leg": 1, "root": 1, "clove": 1, "serving": 1, "helping": 1,
}  # fmt: skip
#: Makers' words and sizes whose advice differs, or which nobody can size: they are asked about.
UNSURE = frozenset({"kilner", "weck", "fido", "parfait", "vacola", "fowlers", "agee"})
#: Words for how big a vessel is, which nobody can measure by, and what they are called here.
HOW_BIG = {"small": "small", "little": "small", "large": "large", "big": "large"}
#: One of them holds many quarts.
BIG = frozenset({"demijohn", "carboy", "crock", "barrel", "bucket", "bin"})
#: By the crop, and sources differ: how much it is has to be said.
BY_CROP = frozenset({"bushel", "peck", "hundredweight"})
#: Volumes by which jars are named.
JAR_UNITS = frozenset({"pint", "quart", "half-pint", "half-gallon", "gallon"})

_PLURALS = {
    "boxes": "box", "dishes": "dish", "bunches": "bunch", "loaves": "loaf", "punnets": "punnet",
    "pieces": "piece", "pcs": "pc", "moulds": "mould", "pouches": "pouch", "bus": "bu",
    "packages": "package", "pkgs": "pkg", "pkts": "pkt", "kartons": "karton",
    "cassette": "cassetta", "flitches": "flitch", "stubbies": "stubby",
}  # fmt: skip


def one(word: str) -> str:
    """("jars") -> "jar"."""
    if word in _PLURALS:
        return _PLURALS[word]
    return word[:-1] if word.endswith("s") and len(word) > 2 and not word.endswith("ss") else word


def vessel(words: str) -> str:
    """("freezer bags") -> "bag"; "" where it is none."""
    if words in _VESSELS:
        return _VESSELS[words]
    *front, last = words.split(" ")
    return _VESSELS.get(" ".join((*front, one(last))), "")


def plural(name: str, count: int) -> str:
    """("jar", 7) -> "jars"."""
    if count == 1:
        return name
    if name.endswith(("x", "sh", "ch")):
        return name + "es"
    return name + "s"
