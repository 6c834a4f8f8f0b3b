"""Foods that households of four kitchens have, chosen without a look at the tables."""

from __future__ import annotations

import pytest

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
FILIPINO = """
atchara;bagoong;patis;calamansi;ube;ube halaya;purple yam;macapuno;nata de coco;kaong;
langka;jackfruit;bangus;milkfish;tuyo;daing;tinapa;tapa;tocino;longganisa;chicharron;
adobo;chicken adobo;pork adobo;sinigang;kare-kare;lumpia;pancit;malunggay;moringa leaves;
kangkong;water spinach;ampalaya;bitter melon;sitaw;yardlong beans;upo;bottle gourd;sayote;
chayote;talong;labanos;daikon;pechay;bok choy;gabi;taro;kamote;sweet potato;cassava;
saba bananas;plantain;green papaya;papaya;green mango;dried mangoes;santol;guyabano;
soursop;lanzones;rambutan;tamarind;tamarind paste;siling labuyo;bird's eye chillies;
coconut vinegar;cane vinegar;coconut milk;coconut oil;palm sugar;muscovado sugar;
salted duck eggs;balut;squid;dried squid;dried shrimp;tilapia
"""
GEORGIAN = """
tkemali;adjika;churchkhela;tklapi;suluguni;imeruli cheese;matsoni;khmeli suneli;
blue fenugreek;marigold petals;walnut paste;walnuts;hazelnuts;sunflower seeds;pomegranates;
pomegranate molasses;narsharab;persimmons;dried persimmons;cornelian cherries;sour plums;
green plums;alycha;quinces;medlars;mulberries;feijoa;figs;grape must;grape leaves;
vine leaves;jonjoli;pickled garlic;lobio;red kidney beans;red beans;satsivi;kharcho;
khinkali;pkhali;beetroot leaves;spinach;nettles;purslane;sorrel;tarragon;
tarragon lemonade;coriander;dill;savory;aubergines;stuffed peppers;green tomatoes;
pickled green tomatoes;basturma;sujuk;kupati;lavash;chacha;wine vinegar;
white cherry preserve;rose petal jam;walnut preserve;sea buckthorn;barberries;sumac;bulgur;
millet;buckwheat;ajvar;kefir;tvorog;smoked sturgeon;caviar;trout
"""
NIGERIAN = """
egusi;ogbono;iru;dawadawa;locust beans;ogiri;palm oil;red palm oil;garri;fufu;yam flour;
yams;cocoyam;plantain chips;dodo;black-eyed peas;cowpeas;brown beans;bambara nuts;
groundnuts;peanuts;peanut butter;groundnut paste;shea butter;stockfish;smoked catfish;
crayfish;ground crayfish;dried prawns;bonga fish;titus mackerel;mackerel;goat meat;oxtail;
cow foot;tripe;shaki;kilishi;suya;snails;guinea fowl;okra;dried okra;bitterleaf;ugu;
pumpkin leaves;waterleaf;jute leaves;ewedu;scent leaf;sorrel leaves;hibiscus;zobo;
baobab powder;tiger nuts;kuli kuli;ata rodo;scotch bonnets;tatashe;red bell peppers;
pepper soup;jollof rice;moi moi;akara;efo riro;ofada stew;uda seeds;grains of selim;
alligator pepper;kola nuts;agbalumo;guavas;soursop juice;pineapple;coconut flakes;
millet flour;sorghum;ogi;palm wine
"""
ANDEAN = """
quinoa;kaniwa;amaranth;oca;mashua;olluco;chuno;yuca;maca;maca powder;yacon;arracacha;
potatoes;purple potatoes;yellow potatoes;purple corn;choclo;cancha;hominy;mote;giant corn;
aji amarillo;aji amarillo paste;aji panca;rocoto;rocoto peppers;huacatay;chincho;
lima beans;pallares;canary beans;tarwi;lupini beans;broad beans;cuy;guinea pig;alpaca;
charqui;beef heart;anticuchos;chicken;salted cod;anchoveta;anchovies;corvina;sea bass;
scallops;octopus;lucuma;lucuma powder;cherimoya;tumbo;passion fruit;granadilla;tomatillos;
aguaymanto;golden berries;camu camu;pepino;prickly pears;tuna fruit;naranjilla;
tree tomatoes;tamarillos;avocados;limes;key limes;manjar blanco;dulce de leche;
condensed milk;evaporated milk;queso fresco;chicha morada;chicha de jora;pisco;sacha inchi;
cacao nibs;cocoa powder;panela;chancaca;chimichurri;salsa criolla;tamales;humitas;causa;
locro
"""


def _unknown(*kitchens: str) -> tuple[list[str], list[str]]:
    """All the foods named, and those that are known neither by name, nor by words beside a name,
    nor as a word that could be two and is asked about."""
    named = [name.strip() for kitchen in kitchens for name in kitchen.replace("\n", "").split(";")]
    compose = composer(load_tables())

    def known(name: str) -> bool:
        meant = compose.meant(name.lower().replace("-", " ").split())
        whole = meant.facts is not None and not meant.strange
        return whole or bool(meant.either) or could_be(name, "metric") is not None

    return named, [name for name in named if not known(name)]


@pytest.mark.parametrize(
    "kitchens",
    [(AMERICAN, BRITISH, AUSTRALIAN, METRIC), (FILIPINO, GEORGIAN, NIGERIAN, ANDEAN)],
    ids=["four kitchens", "four kitchens far away"],
)
def test_95_of_100_household_foods_are_known(kitchens: tuple[str, ...]) -> None:
    named, unknown = _unknown(*kitchens)
    assert len(set(named)) >= 250
    assert len(unknown) <= 0.05 * len(named), unknown
