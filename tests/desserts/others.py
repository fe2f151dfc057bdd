"""Orchard Ring, Ember Log, Amber Terrine: a ring cake, a log, a frozen slice."""

from demould.mise.component import InSteps, Sheet, Tray, WholeBatches
from demould.mise.dessert import Dessert, Glaze, Spray
from demould.mise.shape import Box, Cylinder
from tests.desserts.build import component, formula, layer, stated

BAVAROIS = component(
    "bavarois",
    formula(
        "210 whole milk 3.5 %; made up",
        "15 roasted chicory; strained out",
        "60 egg yolk",
        "85 sugar",
        "7 gelatin 200 bloom",
        "35 water",
        "430 cream 35 %",
    ),
    1.03,
    whipped=stated(0.65, "g/ml", "whipped density of the bavarois"),
    lost=6,
)
PEAR = component(
    "centre",
    formula(
        "410 pear, peeled and cored",
        "112 pear, peeled and cored",
        "41 sugar",
        "5 pectin NH",
        "5 citric acid solution 50 %",
    ),
    1.09,
    away=5,
    lost=3,
)
RING_SPONGE = component(
    "sponge",
    formula(
        "180 whole egg",
        "130 sugar",
        "70 brown butter",
        "120 wheat flour",
        "30 oat flour",
        "30 whole milk 3.5 %",
        "3 baking powder",
    ),
    0.45,
    away=10,
    making=WholeBatches(),
    sheet=Sheet(
        tray=Tray(length_mm=400, width_mm=300),
        gap=stated(2, "mm", "between cuts"),
    ),
)
OAT_BASE = component(
    "oat base",
    formula(
        "60 oat flour",
        "40 wheat flour",
        "45 sugar",
        "60 butter 82 %",
        "1 salt",
        "45 white couverture 35 %",
    ),
    0.90,
    away=3,
)
VELVET = component(
    "velvet",
    formula("60 cocoa butter", "40 white couverture 35 %"),
    1.00,
    making=InSteps(of=stated(10, "g", "steps of the velvet")),
)

ORCHARD_RING = Dessert(
    key="orchard-ring",
    name="Orchard Ring",
    mould="ring",
    portions=stated(8, "portions", "cut into"),
    layers=(
        layer("bavarois"),
        layer("centre", Cylinder(diameter_mm=160, height_mm=12)),
        layer("bavarois"),
        layer("sponge", Cylinder(diameter_mm=160, height_mm=9.4)),
        layer("oat base", Cylinder(diameter_mm=160, height_mm=6)),
    ),
    finish=(
        Spray(
            component="velvet",
            film=stated(0.12, "mm", "film of the velvet"),
            lands=stated(50, "%", "share that lands"),
        ),
    ),
    components=(BAVAROIS, PEAR, RING_SPONGE, OAT_BASE, VELVET),
)

TEA_MOUSSE = component(
    "mousse",
    formula(
        "210 whole milk 3.5 %; made up",
        "12 smoked tea; strained out",
        "90 cream 35 %",
        "65 egg yolk",
        "28 sugar",
        "4 gelatin 200 bloom",
        "20 water",
        "300 dark couverture 66 %",
        "450 cream 35 %",
    ),
    1.08,
    whipped=stated(0.68, "g/ml", "whipped density of the mousse"),
    lost=6,
)
PLUM = component(
    "centre",
    formula(
        "545 plum purée",
        "80 dried plum",
        "60 sugar",
        "6 pectin NH",
        "3 citric acid solution 50 %",
    ),
    1.12,
    away=4,
    lost=3,
)
RYE_SPONGE = component(
    "sponge",
    formula(
        "160 whole egg",
        "100 sugar",
        "60 rye flour",
        "25 wheat flour",
        "20 cocoa powder 22 %",
        "45 butter 82 %",
        "2 baking powder",
    ),
    0.50,
    away=10,
    making=WholeBatches(),
    sheet=Sheet(
        tray=Tray(length_mm=600, width_mm=400),
        gap=stated(2, "mm", "between cuts"),
    ),
)
DARK_GLAZE = component(
    "glaze",
    formula(
        "180 water",
        "300 sugar",
        "80 glucose syrup DE40",
        "200 cream 35 %",
        "110 cocoa powder 22 %",
        "13 gelatin 200 bloom",
        "65 water",
    ),
    1.25,
    away=8,
    making=WholeBatches(),
)

EMBER_LOG = Dessert(
    key="ember-log",
    name="Ember Log",
    mould="trough",
    portions=stated(20, "portions", "cut into"),
    layers=(
        layer("mousse"),
        layer("centre", "insert frame"),
        layer("mousse"),
        layer("sponge", Box(length_mm=490, width_mm=70, height_mm=8)),
    ),
    finish=(
        Glaze(
            component="glaze",
            film=stated(1.8, "mm", "film of the glaze"),
            pour=stated(2.6, "", "poured, times what stays"),
            faces="face and ends",
        ),
    ),
    components=(TEA_MOUSSE, PLUM, RYE_SPONGE, DARK_GLAZE),
)

NOUGAT = component(
    "nougat",
    formula(
        "135 egg white",
        "110 honey",
        "60 sugar",
        "25 water",
        "450 cream 35 %",
        "95 almonds, roasted",
        "60 sugar",
        "80 candied orange peel",
        "60 dried apricot",
        "4 orange-flower water",
    ),
    1.05,
    whipped=stated(0.60, "g/ml", "whipped density of the nougat"),
    away=100 * 22 / 1079,
    lost=5,
)

AMBER_TERRINE = Dessert(
    key="amber-terrine",
    name="Amber Terrine",
    mould="terrine",
    portions=stated(15, "portions", "cut into"),
    layers=(layer("nougat"),),
    components=(NOUGAT,),
)
