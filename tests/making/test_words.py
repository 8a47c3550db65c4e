"""How the making order and the cost sheet name what is sewn."""

import pytest

from bodies import P92
from clothwright.features import Feature
from clothwright.features.bodice.bust_dart import BustDart
from clothwright.features.bodice.front_dart import DartPlace
from clothwright.features.bodice.yokes import BackYoke, FrontYoke
from clothwright.features.linings.lining import Lining
from clothwright.features.openings.button_stand import ButtonStand
from clothwright.features.operations import Task
from clothwright.features.skirts.flounce import Flounce
from clothwright.features.skirts.gathered_skirt import GatheredSkirt, Tiers
from clothwright.features.skirts.pleated_skirt import PleatedSkirt
from clothwright.features.skirts.skirt_zip import SkirtZip, Where
from clothwright.features.skirts.waistband import Waistband
from clothwright.making import MakingOrder, making_order
from clothwright.making.telling import seam_line
from clothwright.order import draft
from orders import closed_back, order, straight_skirt, swapped

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
