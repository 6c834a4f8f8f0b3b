"""Notes in which hours of the day, or several times, say how long food was out of the cold: however
they are written, what is over two hours is never left quiet, and other hours raise nothing."""

from __future__ import annotations

import pytest

from pantry_tui.core.safety.note_sums import minutes_out
from pantry_tui.core.safety.note_times import how_long, plainly
from pantry_tui.core.words import Verdict
from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import judged_otherwise, tried_each

OVER = {
    "2 tubs beef stew, cooked meal, fridge": (
        "2.5-hour buffet", "buffet 2 h 30", "two hours on the buffet, then another hour",
        "put out at 6, taken in at 9", "out noon-4", "cooled on counter 10-14", "stood 12-16 Uhr",
        "kids party 2pm-5pm", "lunch 12.15, fridge 4.45", "cooked 12h00, fridge 17h00",
        "ready 1300, fridged 1700", "made for 1 pm, put away 5 pm",
        "cooked at 9 am, cooled down by 4 pm", "dished up at seven, cleared at half past ten",
        "out 90 min twice", "1 h out at noon and 1 1/2 h out at 6",
        "ready by 12, not chilled till 4", "took off the hob 11.30, Kühlschrank 15.00",
        "gekocht 12 Uhr, Kühlschrank 17 Uhr", "stand von 12 bis 16 Uhr draußen",
        "out on the side 0900-1230", "BBQ 14:00-18:30", "potluck from 5 to 8:30",
        "wedding buffet, 3.5 h", "sat on the cooker 150 min",
        "cooling 1,5 h, then 1 h on the table",
        "1.25 h at lunch and 1.25 h at supper on the table", "half an hour out five times",
        "30 min on the table, five times", "picnic 11-3", "left on worktop 10am - 1pm",
        "on the table 6.30-9.15", "served 1800, cleared 2100",
        "finished cooking 14h30, in the fridge 18h15", "took it out at ten, put back at two",
        "in the hall for church supper 4:30 to 8", "boiled 8 a.m., fridged 1 p.m.",
        "dinner 19.00, Kühlschrank 22.30", "dinner 6.15, cleared 9.40", "in the car 1-4 pm",
        "school fair 10 till 2", "stood from quarter past two till five",
        "from eleven to three on the sideboard", "brought out 7 pm, carried in 10 pm",
        "two 75-minute stints on the table",
        "out 45 min at breakfast, 45 min at lunch and 45 min at supper",
        "stood 1h15, then another 1h15", "stood 2h45", "2 hours 20 minutes on the counter",
        "cooled 2 hrs 40 before the fridge", "party, 3 hours in total", "brunch 10-1:30",
        "tea party 3-6", "cooked 11:00, fridged at 15:00", "done 13:20; went in the fridge 16:05",
        "off the heat at 1, in the fridge at 5", "simmered till 5pm, fridge at 9pm",
        "took out of oven 4pm. Fridge 8pm.", "potluck, 4 hrs", "on display noon to 3",
        "out 1.5 hours in 95F heat", "garden party 2 to 3:30 in 95 F", "sat in the car 75 min",
        "out at 11am, back in at 2pm", "cooked yesterday 6pm, in the fridge this morning 8am",
        "4pm out of oven, 8pm to fridge", "put in fridge 9 pm, came off the stove 5 pm",
        "2pm-5pm", "12:30 to 17:00", "standing around 2 to 6",
        "served at 12:00, leftovers chilled at 15:30",
        "cooked at noon, we got home at five and put it in the fridge",
        "made 10:30, served 13:00, leftovers in the fridge",
        "out at 6pm, eaten 8:30pm, then chilled",
    ),
    "2 bowls potato salad, cooked meal, fridge": (
        "garden do 13:00-17:00", "set out noon, cleared away 3.15",
        "on the trestle table 2.5 hrs", "stood on terrace von 15 bis 18 Uhr",
        "Grillabend 17-21 Uhr, danach Kühlschrank",
        "came off the boil 10.45, into the fridge 1.20", "pan left on stove 5.30 - 8.45",
        "dinner served at 1830, leftovers put away 2130", "took from fridge 7 am, back 10 am",
        "off the heat quarter to one, chilled at four", "sat 2 1/4 hours",
        "out for 1 hr 10, then 1 hr more", "first 40 mins then 90 mins on the side",
        "picnic hamper 11.00 - 14.30", "cake stall 9.30 to 1", "birthday tea 3 til 6",
        "lunch buffet (12-3)", "1½ h Tisch, 1 h Anrichte",
        "cooked at ten past nine, fridged five past one", "cooked 0915; cold room 1300",
        "kettle off at 8 in the evening, fridged 11 in the evening",
        "hob off 20:10, fridge 23:00", "it was ready at 2 and we put it away at half five",
        "served 6 o'clock, cleared 9 o'clock", "potluck at church 11-2",
        "three hours at the fete", "135 minutes out", "3 x 50 min on the buffet",
        "out 70 min, cold, out 70 min", "two lots of 80 minutes on the table", "stood for 2h 20m",
        "stood from 1 p.m. through 4 p.m.", "barbecue went from 4 to 8", "in the sun 1-2:30",
        "on the dashboard an hour and a half", "sitting out since 9am, chilled at noon",
        "served 12h30, rangé 16h", "made 7am, eaten 12, leftovers in fridge 1",
        "on the sideboard from 5ish to 9ish", "cooked 11-ish, in fridge by about 3",
    ),
    "2 boxes cooked rice, cooked meal, freezer": (
        "cooked 12:10, frozen 16:00", "rice cooker off at 6, boxed at 9.30",
        "steamed at noon, bagged and frozen at 5 pm", "out on the bench 4 hours before freezing",
        "cooling from 1 to 4",
    ),
    "1 lb ham slices, bought in, fridge": (
        "on the sandwich platter 11:00-15:00", "platter out at 4, in at 8",
        "in the shopping bag 3 h 15", "bought at 10, home and in the fridge at 2",
    ),
    "2 pints chicken stock, cooked meal, fridge": (
        "strained 9pm, fridge 8am", "off boil 2200, fridge 0700", "left to cool 19:00 - 23:00",
        "cooled five hours",
    ),
    "2 tubs goulash, cooked meal, fridge": (
        "carnitas off the fire 11:45, boxed 15:10",
        "slow cooker turned off at 3, into icebox 6.30",
        "pot left to cool from half past four, fridged at eight",
        "Topf vom Herd 13 Uhr, Kühlschrank 18 Uhr", "vom Buffet 11-14 Uhr",
        "on table 1130 til 1430", "4 1/4 hours at the potluck",
        "served from 12 noon through 3 pm", "tailgate 10am-2pm",
        "out at the tailgate for 3.25 hrs", "the pan sat 2 hr 45 min before we boxed it",
        "done 1.15pm, popped in fridge 4.40pm", "ready at one fifteen, put away at four",
        "sat out between 5 and 8:30", "left standing 180 mins",
        "put out 18.30, cleared away 21.15", "hob off at 19h, fridge 22h30",
        "cooked for supper at 6, remembered at 10", "took it to the allotment 9:00-13:00",
        "was on the counter when I left at 8 and still at noon", "back in the fridge 2.5h later",
        "went into fridge three and a half hours after cooking",
        "finished 15:30, ate 16:00, rest chilled 19:00", "school run, pot out from 2:45 to 5",
        "out 1h 50, then again 40 minutes", "twenty minutes out, seven times",
        "80 minutes on the bench on two occasions",
        "out 50 min morning, 50 min noon, 50 min evening", "in a hot car 70 minutes",
        "1 hour 15 in the sun at 33 C", "served hot 12.30 - leftovers away 15.45",
        "cooling since 8, fridge 11", "from the stove at six to the fridge at nine",
        "took out to thaw on the side 8-14", "rested on hob until 9pm, cooked 5pm",
        "counter 0600-1000", "Kühlung aus 10-14 Uhr",
    ),
    "2 boxes cooked rice, cooked meal, fridge": (
        "rice pot switched off 12:20, fridge 16:30", "left in pot 3.75 h",
        "sushi platter noon to 3:15",
        "steamed 7 a.m., lunchboxes at noon, leftovers fridge 1.30 p.m.",
        "boiled 18:10. Fridge 21:30.",
    ),
    "2 lb trout, hot smoked, fridge": (
        "out of smoker 2 pm, fridge 7 pm", "cooled on rack 14:00-18:00",
    ),
    "1 crock custard, cooked meal, fridge": (
        "poured 10:15, chilled 13:45", "set on the windowsill for 2 h 40",
    ),
    "2 tubs lasagne, cooked meal, fridge": (
        "baked for noon, in the fridge about four", "Buffet stand 3 Stunden",
        "drei Stunden draußen", "tray out 1000 hrs, back 1330 hrs", "party food, 7pm til 10.30pm",
        "came out the oven at half six, fridge ten",
        "came out of the oven 18h, Kühlschrank um 21 Uhr",
        "left it cooling and went shopping, 2 1/2 hours", "cooled for 150 minutes then fridge",
        "cooled 2:30 h", "took 3 hrs to get cold", "out 5-8pm",
        "on hob from 5pm, off at 6, fridge at 9", "out 1.75 h Sat, 1 h Sun",
        "lunchtime to teatime on the side", "served at one; forgot to chill until five",
        "from 4 to 7 it sat on the range",
        "stood for one and three quarter hours, then for another half hour",
        "delivered 10 am, fridge 2 pm", "courier dropped it 9.05, I found it at 13.20",
        "wake from 2 to 5.30", "wedding breakfast 13:00-16:00", "left by the window 0700-1200",
        "bring-and-share 12-3.30",
    ),
    "2 lb pulled pork, cooked meal, fridge": (
        "rested on the counter from noon, fridge by 3.30", "4 hrs from smoker to fridge",
        "off smoker noon. packed away 4.", "hot box died at 9, found at 13:00",
        "buffet, cleared after 3 h", "at room temp 1:00-4:15 pm", "bench 12.00-15.00",
        "warming drawer off from 2 till 5", "left on the pass for 2 hrs 15",
        "1 hr on the table, an hour and 20 min in the car", "cater tray 10.30 a.m.-2 p.m.",
        "was out from the time we ate (7) until midnight", "ate at 7, put it away at midnight",
    ),
    "1 pack smoked mackerel, hot smoked, fridge": (
        "on the platter 6 to 9 pm", "out 3 hrs at the christening",
    ),
    "12 eggs, hard boiled, cooked meal, fridge": (
        "dyed and on show 10 till 4",
    ),
}  # fmt: skip
QUIET = {
    "2 tubs beef stew, cooked meal, fridge": (
        "cooked 3 h, cooled 1 h, then fridge", "simmered 2 h 30",
        "simmered 2.5 hours, cooled quickly", "slow-cooked 8-10 h", "braised 12-14 h at 225F",
        "recipe p. 12.15", "serves 4-6", "for 8-10 people", "1300 g beef, 1700 g onions",
        "cooked 1300, fridged 1430", "lunch 12.15, fridge 1.30",
        "dinner at 6.15, fridged by 7.30", "cooked at 9 am, cooled down by 10:30 am",
        "made for 1 pm, put away 2:30 pm", "kids party 2pm-3:30pm", "out noon-1",
        "stood 12-13 Uhr", "buffet 90 min", "1.5-hour buffet", "out 45 min twice",
        "1 h out at noon and 30 min out at 6", "30 minutes on the counter, then fridge overnight",
        "one hour on the buffet, then another half hour", "for the party 2pm-5pm",
        "eat between 12 and 2", "reheat at noon or at 6", "open 9-5", "shop open 9:00-17:00",
        "delivered 10:00, in the fridge 10:20", "brined 6 pm to 6 am in the fridge",
        "marinated from 8pm to 8am", "oven 12:00-16:00, fridge 17:30",
        "in the oven from 2 to 5, cooled by 6:30", "bought 1900, recipe from 2012",
        "2 parts 3 parts", "cooled to 10-14 C in the sink", "stirred 10-14 times",
        "cost 12.50, sold 14.00", "page 1204", "500 kcal a bowl", "2 lb at 12.50",
        "in the slow cooker from 8am till 6pm, fridge 7pm", "thawed in fridge 6pm to 6am",
        "fridge since 8:30", "cooled in ice water 10-14 min", "cooked in two rounds, 2 h each",
        "Aunt Hilde's 1950 recipe, 2 h", "cooled 20-30 minutes then chilled", "put up at 19:00",
        "ready at 12:00, eaten 12:30, rest in fridge 13:45", "chilled in 90 minutes",
        "cooled within 2 hours", "1 h 30 in the oven", "from 70 C to 21 C in 1 h 30",
        "out of the oven at 5, fridge at 6.30", "left to cool 1 hour, into the fridge by 7",
        "boiled 15-20 min", "stood 10-15 min", "rested 10-15", "leave 10-15 before carving",
        "stew no 10-14", "pot sat 5-10 minutes, then boxed",
        "made 11:00, eaten 12:30, leftovers in the fridge",
        "cooked at noon, straight in the fridge",
        "fridge, cooked at noon", "made for lunch at 1, in the fridge since 10",
    ),
    "2 bowls potato salad, cooked meal, fridge": (
        "garden do 13:00-14:30", "for the garden do 13:00-17:00",
        "set out noon, cleared away 1.15", "came off the boil 10.45, into the fridge 12.20",
        "took from fridge 7 am, back 7.40 am", "birthday tea, 3 children, 6 adults",
        "serve 1-2 hours out of the fridge", "boil potatoes 20-25 minutes",
        "made at 7, chilled by 8:30", "cooked 0915; cold room 1040",
        "ready at 2 and put away at half three", "3 x 15 min on the buffet", "stood for 1h 20m",
        "out 35 min, then 30 min", "two lots of 2 kg", "party of 12", "the 2-4 pm shift made it",
        "table 12, seat 4", "chilled 9:00-17:00 before serving", "in the fridge from 8 to 5",
        "on ice 12:00-16:00", "cool box 10:00 to 15:00", "kept in the cooler 11-4",
        "door open 10-15 sec", "recipe from 1960, doubled", "dinner for 12-14",
        "lunch for 20 at 1 pm", "Anna 14:00, Ben 16:00", "good for lunch and dinner",
        "eat at 12:30 or 18:30", "4.5 lb, cost 12.80",
    ),
    "2 boxes cooked rice, cooked meal, freezer": (
        "cooked 12:10, frozen 13:00", "steamed 11:00-12:00, bagged and frozen at 1 pm",
        "12-14 portions", "rice 1:2 water", "cooked 1:1.5",
        "cooked 18 min, stood 10 min, spread on a tray, fridge in half an hour",
    ),
    "2 lb trout, hot smoked, fridge": (
        "brined 6 pm to 6 am in the fridge", "brined 18:00-06:00, smoked 9:00-14:00",
        "smoked 8-14 h at 225F, salt 3.5%", "smoked from 8am to 4pm",
        "hung 8 to 10 in the fridge to dry", "smoked 3.5 hours",
        "caught 5 am, on ice, smoked 9 am to 1 pm",
    ),
    "3 lb ground beef, fresh, fridge": (
        "bought 10:00, fridge 10:45", "shop open 8-18 Uhr",
    ),
    "2 pints chicken stock, cooked meal, fridge": (
        "simmered 9:00-15:00, strained, in ice bath, fridge 16:30",
        "simmered from 8 am till 2 pm, fridge at 3 pm",
        "simmered overnight 22:00-06:00, chilled 07:30",
        "pressure cooker 45 min, 1 h 10 cooling in the sink", "cooked 3 h 30, cooled 1 h 15",
    ),
    "1 carton milk, bought in, fridge": (
        "delivered 6.30, in the fridge 7.15", "milking 5:00-6:00, fridge 6:30",
        "left the shop 14:10, home 14:40",
    ),
    "7 pint jars green beans, pressure canned, larder, minutes=20 psi=11 canner=dial": (
        "picked 9 am, canned 11 am", "picked 7:30, in the canner 10:15-10:35",
    ),
    "1 crock cabbages 10 lb, lactic ferment, cellar, salt=2.25%": (
        "shredded 9:00-11:00, in the crock 12:00",
    ),
    "2 pint jars cucumbers, fridge pickle, fridge": (
        "salted 10:00-13:00, drained, in the fridge 14:00",
    ),
    "2 tubs goulash, cooked meal, fridge": (
        "boxed 15:10, fridge 15:20", "slow cooker from 7 to 5, icebox at 6",
        "Topf vom Herd 13 Uhr, Kühlschrank 14 Uhr", "on table 1130 til 1230",
        "served 12 guests at 3", "serves 2 at 6", "recipe 12:15 in the book of 1984",
        "for the tailgate 10am-2pm", "the pan sat 45 min before we boxed it",
        "done 1.15pm, popped in fridge 2.40pm", "ready at one fifteen, put away at three",
        "ratio 1:2:3", "simmer 2-3 hours", "simmered from 11 to 2, fridge at 3:30",
        "cooked 6-8 hours on low", "for supper on Tuesday at 7", "eat Friday at 6",
        "cooked at 5, cooling in a sink of ice till 9", "1.5 h total prep",
        "chilled overnight 10pm-7am", "kept hot in the slow cooker 12-5",
        "two hours is the limit, it was out 1", "out 25 min, twice", "batch 4-8 of 10",
        "add 10-14 g salt", "180 C for 90 mins", "beans soaked 8-12 h", "beans soaked 9pm to 7am",
        "3 quarts, 2 hours' work", "reheated at 12:00 and 18:00 to 165F",
        "moved to the freezer at 14:00", "cooked 2 h, rested 30 min, fridge",
        "9-10 portions of 1 cup", "timer 12:30", "pressure cooked 35 min",
        "left to cool in the fridge 4 h", "pm shift lunch",
    ),
    "2 boxes cooked rice, cooked meal, fridge": (
        "12-minute rice, cooled 20 minutes", "rinsed 3-4 times",
        "steamed 7 a.m., fridge 8.30 a.m.",
    ),
    "3 lb beef roast, fresh, fridge": (
        "collected 10:30, fridge 11:15", "hung 10-14 days", "aged 14-21 days in the cold room",
    ),
    "1 crock custard, cooked meal, fridge": (
        "chilled 13:45-17:45", "bake 40-45 min at 160 C",
    ),
    "3 lb trout, hot smoked, fridge": (
        "smoked 9:30-15:30, 160F inside for 30 min", "brined 12-14 hours",
        "dried in the fridge 8pm-8am, smoked 10-2", "out of smoker 2 pm, fridge 3.30 pm",
        "smoker 225F 12-14 h",
    ),
    "2 carton milk, bought in, fridge": (
        "best 10:45 stamp on pack", "morning milk, 6:30, in the tank at 38F by 7",
    ),
    "2 tubs lasagne, cooked meal, fridge": (
        "baked for noon, in the fridge at one", "party food, eat from 7pm til 10.30pm",
        "came out of the oven at half six, fridge half seven",
        "cooled for 50 minutes then fridge", "cooled 0:50 h", "baked 45-60 min",
        "needs 1 h 15 in oven at 180", "oven 4-5pm, fridge 6pm", "out 20 min Sat, 30 min Sun",
        "took 40 mins to get cold", "delivered 10 am, fridge 10.15 am", "courier 9-12 window",
        "serve with salad at 7", "for Anna's party 7-11pm", "layers 3-4", "sheet 10x15",
        "portion 350-400 g", "cut into 9-12", "page 12-14 of the red book", "tel 0171 2030",
        "code 1215", "batch 2 of 3", "2025-2026 season tomatoes", "cheese aged 12-18 months",
        "sauce simmered 3.5 h", "from 3-5 lb beef", "rest 10-15 before slicing", "freeze by 8",
        "put in fridge at 8, ate at 12", "oven on 12-2, cooled 1h",
    ),
    "2 tubs beef stew, cooked meal, freezer": (
        "cooked 11-1, frozen at 2:30", "thaw overnight 8pm-8am in the fridge",
        "freezer since 14:00", "frozen flat 3-4 h",
    ),
    "4 lb ground beef, fresh, fridge": (
        "butcher open 8-1", "ground 7:15, fridge 7:40",
    ),
    "2 lb pulled pork, cooked meal, fridge": (
        "on the smoker 22:00-11:00, pulled at 12, fridge 12:45",
        "smoked 5am to 3pm at 225F, rested in a cooler 3-5, fridge at 6",
        "kept at 150F from 2 till 5", "rested 45 min, pulled, fridge in 20 min",
        "2 lb 4 oz, 12-14 servings", "rub of 3-2-1", "3-2-1 method, 6 hours",
        "wrapped at 165F, done at 203F", "lunch for 8 at 12:30",
        "left the smoker at 225 for 10 h",
    ),
    "1 pack smoked mackerel, hot smoked, fridge": (
        "smoked 80-120 min", "brine 1:10, 8-12 h",
    ),
    "12 eggs, hard boiled, cooked meal, fridge": (
        "boiled 10-12 min", "laid 7-9 Nov",
    ),
}  # fmt: skip


@pytest.mark.parametrize("line", OVER)
def test_over_two_hours_however_they_are_told(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, OVER[line])
    over = (Verdict.DISCARD, Verdict.UNKNOWN)
    assert {note for note, one in found.items() if one.verdict not in over} == set()


@pytest.mark.parametrize("line", QUIET)
def test_other_hours_raise_nothing(chilled: Pantry, line: str) -> None:
    assert judged_otherwise(chilled, line, tried_each(chilled, line, QUIET[line])) == set()


def test_hours_beside_no_word_that_is_known_are_asked_about(chilled: Pantry) -> None:
    line = "2 tubs beef stew, cooked meal, fridge"
    found = tried_each(chilled, line, ["dog walked 9:00, home late 17:00", "12:30 to 17:00"])
    assert {one.verdict for one in found.values()} == {Verdict.UNKNOWN}
    assert any("was not understood" in reason for one in found.values() for reason in one.reasons)


@pytest.mark.parametrize(
    ("told", "plain"),
    [
        ("cooked 12h00; fridge 17:00", "cooked 12:00; fridge 17:00"),
        ("ready 1300; fridged 1700", "ready 13:00; fridged 17:00"),
        ("lunch 12.15; fridge 4.45", "lunch 12:15; fridge 4:45"),
        ("stood 12-16 uhr", "stood 12:00 to 16:00"),
        ("um 18 uhr 30", "18:30"),
        ("out noon-4", "out noon to 4:00"),
        ("counter 10-14", "counter ~10:00 to ~14:00"),
        ("out 6; in 9", "out ~6:00; in ~9:00"),
        ("0900-1230", "09:00 to 12:30"),
        ("recipes of 2019-2024", "recipes of 2019-2024"),
        ("cooked 20.11; thawed 25.11", "cooked 20.11; thawed 25.11"),
        ("1300 g and 1700 g", "1300 g and 1700 g"),
        ("served 4-6 people", "served 4-6 people"),
    ],
)
def test_clocks_in_one_way(told: str, plain: str) -> None:
    assert plainly(told) == plain


@pytest.mark.parametrize(
    ("told", "plain"),
    [
        ("2.5-hour", "2.5 hour"), ("2 h 30", "2.5 hours"), ("1,5 h", "1.5 h"),
        ("2 hours and 15 minutes", "2.25 hours"), ("1h15", "1.25 hours"), ("2h 20m", "2.33 hours"),
        ("3 stunden", "3 hours"), ("1:30 h", "1.5 hours"), ("12h30", "12h30"),
        ("2 h 30 g", "2 h 30 g"), ("another hour", "another 1 hour"),
    ],
)  # fmt: skip
def test_lengths_in_one_way(told: str, plain: str) -> None:
    assert how_long(told) == plain


@pytest.mark.parametrize(
    ("note", "minutes"),
    [
        ("out 90 min twice", 180), ("30 min on the table; 5 times", 150),
        ("1 h out at noon and 1.5 h out at 6", 150),
        ("2 hours on the buffet; then another 1 hour", 180),
        ("2 75 minute stints on the table", 150), ("cooked 3 h; cooled 1 h", 60),
        ("simmered 3 h", None), ("out 1 h; fridge 9 h; out 1 h", 120),
    ],
)  # fmt: skip
def test_times_out_are_added_up(note: str, minutes: int | None) -> None:
    assert minutes_out(note) == minutes
