"""Foods that households of four kitchens have, chosen without a look at the tables."""

from __future__ import annotations

from pantry_tui.reference.ambiguous import could_be
from pantry_tui.reference.compose import composer
from pantry_tui.reference.tables import load_tables

AMERICAN = """
collard greens;black-eyed peas;okra;sweet potatoes;yellow squash;zucchini;jalapenos;
bell peppers;roma tomatoes;crushed tomatoes;salsa verde;dill pickles;bread and butter pickles;
pickled beets;apple butter;strawberry preserves;grape jelly;peach jam;pepper jelly;applesauce;
apple pie filling;cherry pie filling;peach halves;pear halves;cranberry sauce;sauerkraut;
hot sauce;barbecue sauce;tomato soup;chili con carne;beef stew;chicken noodle soup;
chicken broth;ground beef;ground turkey;ground venison;pork chops;pork shoulder;bacon;
breakfast sausage;bratwurst;beef jerky;chuck roast;chicken thighs;whole chickens;turkey breasts;
catfish fillets;salmon fillets;shrimp;crab meat;pinto beans;navy beans;white rice;rolled oats;
cornmeal;all-purpose flour;brown sugar;maple syrup;honey;peanut butter;pecans;walnuts;
dried apples;banana chips;cheddar;cream cheese
"""
BRITISH = """
runner beans;broad beans;swedes;parsnips;beetroot;curly kale;purple sprouting broccoli;leeks;
spring onions;King Edward potatoes;maincrop potatoes;marrows;courgettes;Bramley apples;damsons;
greengages;gooseberries;blackcurrants;redcurrants;rhubarb;sloes;elderflowers;quinces;medlars;
Seville oranges;damson jam;bramble jelly;Seville marmalade;lemon curd;mincemeat;piccalilli;
pickled onions;pickled red cabbage;tomato chutney;mint sauce;horseradish sauce;sloe gin;
elderflower cordial;raspberry vinegar;minced lamb;lamb shanks;leg of lamb;gammon joint;
back bacon;black pudding;pheasants;wood pigeons;rabbits;kippers;smoked haddock;mackerel fillets;
cod fillets;prawns;shepherd's pie;steak pie;leek and potato soup;pea and ham soup;clotted cream;
stilton;crumpets;Christmas pudding;Christmas cake;treacle;golden syrup;suet;dripping;
porridge oats
"""
AUSTRALIAN = """
capsicum;silverbeet;kumara;rockmelon;pawpaw;passionfruit;feijoas;lemon butter;macadamias;
beef mince;lamb chops;snags;kangaroo;barramundi;flathead;snapper;prawns;yabbies;pumpkin soup;
Kent pumpkin;butternut pumpkin;snow peas;sugar snaps;bok choy;choko;mangoes;lychees;limes;
mandarins;tomato passata;tomato relish;sweet chilli sauce;plum sauce;mango chutney;
preserved lemons;fig jam;apricot jam;dried apricots;desiccated coconut;sultanas;
self-raising flour;rolled oats;vegemite;tahini;ghee;yoghurt;halloumi;sourdough starter;damper;
lasagne;curry paste;laksa paste;chicken stock;corned silverside;chicken schnitzel;fish cakes;
olives;olive oil;beetroot relish;pickled ginger;lemon myrtle;quandongs
"""
METRIC = """
sour cherries;mirabelles;plum butter;quince paste;rosehip syrup;elderberry juice;apple juice;
chestnuts;hazelnuts;celeriac;kohlrabi;black salsify;savoy cabbage;red cabbage;chicory;
lamb's lettuce;fennel;artichokes;aubergines;peppers in oil;dried tomatoes;dried porcini;
chanterelles;pickled gherkins;fermented cucumbers;kimchi;miso;tempeh;tofu;lentils;chickpeas;
couscous;bulgur;polenta;buckwheat;semolina;basmati rice;red lentils;mung beans;paneer;feta;
mozzarella;quark;kefir;duck confit;goose fat;lard;salami;prosciutto;chorizo;pancetta;herrings;
trout;carp;sardines;anchovies;wild boar;roe deer;goulash;borscht;pelmeni;ratatouille;pesto;
ajvar;harissa
"""


def test_95_of_100_household_foods_are_known() -> None:
    """Known by name, by words beside a name, or as a word that could be two and is asked about."""
    named = [
        name.strip()
        for kitchen in (AMERICAN, BRITISH, AUSTRALIAN, METRIC)
        for name in kitchen.replace("\n", "").split(";")
    ]
    compose = composer(load_tables())

    def known(name: str) -> bool:
        meant = compose.meant(name.lower().replace("-", " ").split())
        return meant.facts is not None or could_be(name, "metric") is not None

    unknown = [name for name in named if not known(name)]
    assert len(set(named)) >= 250
    assert len(unknown) <= 0.05 * len(named), unknown
