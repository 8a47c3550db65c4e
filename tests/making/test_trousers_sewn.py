"""The order of making of trousers: every seam and loose edge once, the zip of a fly in
the flat fronts, sides and inseams before the crotch, that and a zip in the side before
the band, all before the hems (cutting and costing 5)."""

import pytest

from bodies import THEA
from clothwright.features import Feature
from clothwright.features.operations import Task, Work
from clothwright.features.skirts.contour_band import ContourBand
from clothwright.features.trousers.fly import Fly
from clothwright.features.trousers.pleats import Pleats
from clothwright.features.trousers.trouser_pockets import Pockets, Shape
from clothwright.features.trousers.trouser_zip import SideZip
from clothwright.features.trousers.trousers import Trousers
from clothwright.features.trousers.turn_ups import TurnUps
from clothwright.making import making_order
from clothwright.making.telling import seam_line
from clothwright.order import draft
from making.test_order import complete
from orders import order, trouser_features

KINDS = {
    "fly": trouser_features(),
    "side zip": trouser_features(SideZip()),
    "pockets": trouser_features(Pockets()),
    "pleated": trouser_features(Pleats(second=2.0), Pockets(shape=Shape.SEAM)),
    "turned up": trouser_features(TurnUps()),
    "shaped band": (Trousers(), Fly(), ContourBand()),
}


@pytest.mark.parametrize("kind", KINDS)
def test_every_seam_and_edge_is_sewn_once_and_in_order(kind: str) -> None:
    features: tuple[Feature, ...] = KINDS[kind]
    m = making_order(draft(order(THEA, features)))
    complete(m)
    at = {code: i for i, op in enumerate(m.operations) for code in op.seams}
    assert max(at["S40"], at["S41"]) < at["S42"]
    (zipped,) = (
        i for i, op in enumerate(m.operations) if op.task in (Task.FLY, Task.ZIP)
    )
    band = [i for i, op in enumerate(m.operations) if op.work is Work.BAND]
    hems = [i for i, op in enumerate(m.operations) if op.work is Work.HEM]
    assert max(at["S42"], zipped) < min(band)
    assert max(band) < min(hems)
    if "S43" in at:  # the fly is made while the fronts lie flat
        assert at["S43"] < zipped < min(at["S40"], at["S41"])
        assert "below the fly" in " ".join(m.operations[at["S42"]].says)
    else:
        assert at["S42"] < zipped
    if "S47" in at:
        assert at["S47"] < at["S40"]


def test_what_is_bought_for_trousers() -> None:
    """A zip as long as the fly, a hook for the band."""
    d = draft(order(THEA, KINDS["fly"]))
    bought = [b for f in d.order.features for b in f.notions(d.numbers, d.sheet)]
    lengths = {b.article.value: b.length for b in bought}
    assert lengths["trouser zip"] == pytest.approx(17.0)
    assert lengths["hook and eye"] is None


def test_the_back_inseam_is_stretched_not_eased() -> None:
    """Truing 2: "trousers inseam above knee: front (back stretched)", by what the draft
    makes it shorter (0.3 to 0.8)."""
    m = making_order(draft(order(THEA, KINDS["fly"])))
    told = seam_line(m, m.draft.sheet.seam("S41")).ease
    assert told == "stretch the trouser back by 0.4 cm between the crotch and the notch"
