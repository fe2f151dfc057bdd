"""Energy factors as the law prints them."""

from demould.larder.read import energy_factors

# Regulation (EU) No 1169/2011, Annex XIV: kJ and kcal per gram (salatrims left out).
ANNEX_XIV = {
    "carbohydrate": (17, 4),
    "polyols": (10, 2.4),
    "protein": (17, 4),
    "fat": (37, 9),
    "alcohol": (29, 7),
    "acid": (13, 3),
    "fibre": (8, 2),
    "erythritol": (0, 0),
}


def test_factors_are_those_of_annex_xiv() -> None:
    found = {name: (known.kj, known.kcal) for name, known in energy_factors().items()}
    assert found == ANNEX_XIV
