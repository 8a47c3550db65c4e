"""How the making order and the cost sheet name what is sewn."""

import pytest

from bodies import P92
from clothwright.features import Feature
from clothwright.features.bodice.bust_dart import BustDart
from clothwright.features.bodice.front_dart import DartPlace
from clothwright.features.bodice.strapless import Strapless
from clothwright.features.bodice.yokes import BackYoke, FrontYoke
from clothwright.features.linings.lining import Lining
from clothwright.features.openings.button_stand import ButtonStand
from clothwright.features.openings.lacing import Lacing
from clothwright.features.operations import Task, Work
from clothwright.features.pockets.back_pocket import BackPocket
from clothwright.features.pockets.set_on import Shape
from clothwright.features.skirts.flounce import Flounce
from clothwright.features.skirts.gathered_skirt import GatheredSkirt, Tiers
from clothwright.features.skirts.pleated_skirt import PleatedSkirt
from clothwright.features.skirts.skirt_zip import SkirtZip, Where
from clothwright.features.skirts.waistband import Waistband
from clothwright.features.sleeves.set_in_sleeve import Elbow, SetInSleeve
from clothwright.features.sleeves.sleeve_lengths import Reach
from clothwright.finishing.finish import _DARTS
from clothwright.making import MakingOrder, making_order
from clothwright.making.telling import seam_line
from clothwright.order import draft
from clothwright.paper import own_name
from clothwright.truing import Towards
from combinations import alone
from orders import (
    closed_back,
    order,
    sleeved_features,
    straight_skirt,
    swapped,
    trouser_features,
)

DARTS = closed_back(lines="darts")
BARE = (SkirtZip(), Waistband())


def making(*features: Feature) -> MakingOrder:
    made = draft(order(P92, features))
    assert not made.failed, made.failures()
    return making_order(made)


@pytest.mark.parametrize(
    ("features", "titles"),
    [
        (
            (GatheredSkirt(tiers=Tiers.THREE), SkirtZip(where=Where.SIDE), Waistband()),
            (
                "Sew the second tier to the skirt front",
                "Sew the third tier to the second tier",
                "Hem the third tier",
            ),
        ),
        (
            straight_skirt(Flounce())[:2] + (Waistband(), Flounce()),
            ("Sew the front flounce to the skirt front",),
        ),
        ((PleatedSkirt(), *BARE), ("Sew the panel seams",)),
        ((*DARTS, BackYoke()), ("Sew the back yoke seam",)),
        (
            swapped(DARTS, BustDart(to=DartPlace.SHOULDER), place_of="side dart"),
            ("Sew the bust darts at the shoulder",),
        ),
    ],
)
def test_titles_are_a_dresser_s(
    features: tuple[Feature, ...], titles: tuple[str, ...]
) -> None:
    found = [op.title for op in making(*features).operations]
    assert set(titles) <= set(found), found


def test_a_yoke_is_no_princess_seam() -> None:
    """One seam across, whether its piece is cut on the fold or not."""
    for yoke in (BackYoke(), FrontYoke()):
        tasks = {
            op.task: op.count
            for op in making(*DARTS, yoke).operations
            if op.title == f"Sew the {yoke.kind} seam"
        }
        assert tasks == {Task.ACROSS: 1.0}


def test_a_lining_that_hangs_shorter_ends_short_of_its_facing() -> None:
    features = swapped(
        (*closed_back(), Lining()), ButtonStand(), place_of="concealed zip"
    )
    made = making(*features)
    lines = [
        seam_line(made, s).ease
        for s in made.draft.sheet.seams
        if s.code.startswith("LS") and "facing, below" in s.name
    ]
    assert lines
    assert all("ends 1.5 cm short of the facing" in line for line in lines)


EVERY = {place.value: BustDart(to=place) for place in DartPlace}
"""Places of the bust dart."""


@pytest.mark.parametrize("place", [*EVERY, "elbow"])
def test_a_dart_is_pressed_as_its_cap_is_folded(place: str) -> None:
    """Level and slanting darts down, upright ones towards the centre, those that open
    at it away from it (truing 3.2): the cap of a dart pressed the other way is short.
    Armhole and elbow darts were once told to lie towards the centre."""
    features = sleeved_features(SetInSleeve(elbow=Elbow.DART, reach=Reach.WRIST))
    if place in EVERY:
        features = swapped(DARTS, EVERY[place], place_of="side dart")
    if place == "yoke":
        features = (*features, FrontYoke())
    made = making(*features)
    darts = [op for op in made.operations if op.work is Work.DART]
    assert darts
    for seam, press in ((s, op.press) for op in darts for s in made.seams(op)):
        legs = {own_name(r.edge) for r in seam.runs()}
        (on,) = {
            a if way is Towards.FIRST else b
            for a, b, _, way in _DARTS
            if {a, b} == legs
        }
        assert press == LIES[on.split()[-1]], seam.name


LIES = {
    **dict.fromkeys(("low", "lower"), "down"),
    **dict.fromkeys(("cf", "cb", "centre"), "towards the centre"),
    "side": "towards the side",
}
"""Where a dart lies that is folded on its leg of this name."""


def test_what_there_are_several_of_is_told_so() -> None:
    """Jets, sleeves, trouser fronts; the front of a skirt is one."""
    jetted = BackPocket(shape=Shape.JETTED)
    titles = [op.title for op in making(*trouser_features(jetted)).operations]
    assert "Hem the trouser fronts and trouser backs" in titles
    assert any(t.startswith("Interline the") and "jets" in t for t in titles)
    sleeved = [op.title for op in making(*sleeved_features()).operations]
    assert "Hem the sleeves" in sleeved
    skirt = [op.title for op in making(*straight_skirt()).operations]
    assert "Hem the skirt front and skirt back" in skirt


def test_a_strapless_bodice_has_a_top_edge_and_no_armhole() -> None:
    """Nor a neck: its lining or facing goes over the turned top edge."""
    told = " ".join(
        words for op in making(*alone(Strapless)).operations for words in op.says
    )
    assert "in one run over the turned top edge." in told
    assert "armhole" not in told
    laced = making(*alone(Lacing))
    told = " ".join(words for op in laced.operations for words in op.says)
    assert "From the top edge to the hem in one run" in told
