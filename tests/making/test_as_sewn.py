"""Garments of every closing and neck as a maker sews them (cutting and costing 3 to 5).

Minutes are the first third of the book's ranges: fly 45 to 75, centred or lapped zip 15
to 30, buttonhole 3 to 5, pockets 20 to 35 in the side and 30 to 45 slanting.
"""

import pytest

from bodies import BRIDA, THEA, YSOLDE
from clothwright.cost.sheet import _quantity
from clothwright.features import Feature
from clothwright.features.bodice.back_waist_dart import BackWaistDart
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.bodice.torso import Torso
from clothwright.features.collars.shirt_collar import ShirtCollar
from clothwright.features.collars.stand_collar import StandCollar
from clothwright.features.linings.lining import Lining
from clothwright.features.necks.halter import Halter
from clothwright.features.necks.neck_shapes import BackShape, FrontShape
from clothwright.features.necks.necklines import BackNeckline, Neckline
from clothwright.features.necks.wrap_front import WrapFront
from clothwright.features.notions import Article, Notion
from clothwright.features.openings.button_stand import ButtonStand
from clothwright.features.openings.concealed_zip import ConcealedZip
from clothwright.features.openings.neck_placket import NeckPlacket
from clothwright.features.openings.underarm_zip import UnderarmZip
from clothwright.features.openings.zips import Setting
from clothwright.features.operations import Hazard, Stitch, Task, Work
from clothwright.features.skirts.skirt_zip import SkirtZip, Where
from clothwright.features.skirts.vent import Vent
from clothwright.features.sleeves.cuff import Cuff
from clothwright.features.sleeves.gathered_hem import GatheredHem
from clothwright.features.sleeves.set_in_sleeve import SetInSleeve
from clothwright.features.sleeves.sleeve_lengths import Reach
from clothwright.features.trousers.trouser_pockets import Pockets
from clothwright.features.trousers.trouser_zip import SideZip
from clothwright.making import MakingOrder, making_order
from clothwright.making.cutting import bought, cutting_sheet
from clothwright.making.telling import seam_line
from clothwright.making.times import USUAL
from clothwright.order import draft
from making.test_order import by_title, complete
from orders import (
    closed_back,
    order,
    sleeved_features,
    straight_skirt,
    trouser_features,
)

DARTS = closed_back(lines="darts")


def instead(base: tuple[Feature, ...], out: str, *new: Feature) -> tuple[Feature, ...]:
    """An order's features, those of these kinds left out and others added."""
    return (*(f for f in base if f.kind not in out.split(", ")), *new)


SHIRT = instead(
    sleeved_features(SideDart(), BackWaistDart(), SetInSleeve(reach=Reach.WRIST)),
    "neckline, back neckline, concealed zip, front armhole princess, "
    "back armhole princess",
    Neckline(shape=FrontShape.STANDARD),
    BackNeckline(shape=BackShape.STANDARD),
    GatheredHem(),
    Cuff(),
    ButtonStand(),
    ShirtCollar(),
)
HALTER = instead(DARTS, "sleeveless armhole, neckline, back neckline", Halter())
WRAP = instead(DARTS, "neckline, concealed zip", WrapFront(), UnderarmZip())
SHEATH = instead(DARTS, "waist seam, peplum", Torso(), Vent())
PLACKET = instead(
    sleeved_features(SideDart(), BackWaistDart()),
    "neckline, back neckline, concealed zip, front armhole princess, "
    "back armhole princess",
    Neckline(shape=FrontShape.STANDARD),
    BackNeckline(shape=BackShape.STANDARD),
    NeckPlacket(),
    UnderarmZip(),
    StandCollar(),
)
LINED = sleeved_features(SideDart(), BackWaistDart(), Lining())
LINED = instead(LINED, "front armhole princess, back armhole princess")
LAPPED_TOP = instead(DARTS, "concealed zip", ConcealedZip(setting=Setting.LAPPED))
LAPPED_SKIRT = straight_skirt(SkirtZip(setting=Setting.LAPPED))
GARMENTS = {
    "shirt": SHIRT,
    "halter": HALTER,
    "wrap": WRAP,
    "sheath": SHEATH,
    "placket": PLACKET,
    "lined": LINED,
    "lapped top": LAPPED_TOP,
}


def sewn(features: tuple[Feature, ...]) -> MakingOrder:
    return making_order(draft(order(THEA, features)))


def place(m: MakingOrder, words: str) -> int:
    return m.operations.index(by_title(m, words))


@pytest.mark.parametrize("name", GARMENTS)
def test_every_seam_and_edge_is_sewn_once_and_in_order(name: str) -> None:
    made = draft(order(BRIDA if name == "shirt" else THEA, GARMENTS[name]))
    m = making_order(made)
    if "lapped" not in name:  # whose zip follows the seam below it
        complete(m)


def test_a_shirt_is_made_from_its_collar_to_its_buttons() -> None:
    m = making_order(draft(order(YSOLDE, SHIRT)))
    steps = (
        "Interline",
        "Make the collar",
        "Set the collar",
        "Face the neck",
        "Bind the slits",
        "Set the cuffs",
        "Set the sleeves",
        "Sew the waist",
        "Face the front edges",
        "buttonholes in the right front",
        "buttons on",
    )
    at = [place(m, words) for words in steps]
    assert at == sorted(at)
    holes = [op for op in m.operations if op.task is Task.BUTTONHOLE]
    assert all(op.stitch is Stitch.ZIGZAG and m.stitched(op) for op in holes)
    assert all(Hazard.BLADE in op.hazards for op in holes)
    every = [n for n in cutting_sheet(m).notions if n.article is Article.FLAT_BUTTON]
    assert [n.spare for n in every] == [1, 1], "one to spare of either size"


def test_a_visible_zip_is_set_when_the_seam_below_it_is_closed() -> None:
    for features in (LAPPED_SKIRT, LAPPED_TOP):
        m = sewn(features)
        zipped = place(m, "Put in the lapped zip")
        assert place(m, "Close the centre back below the zip") < zipped
        assert m.operations[zipped].task is Task.VISIBLE_ZIP
        band = [i for i, op in enumerate(m.operations) if op.work is Work.BAND]
        assert all(zipped < i for i in band)
    m = sewn(straight_skirt())
    below = place(m, "Close the centre back below the zip")
    assert place(m, "Put in the concealed zip") < below
    assert any("press the vent to the left" in s for s in m.operations[below].says)


@pytest.mark.parametrize(
    ("features", "sides"),
    [
        (WRAP, ("Sew the sides", "Sew the peplum side seams")),
        (straight_skirt(SkirtZip(where=Where.SIDE)), ("Sew the skirt side seams",)),
        (trouser_features(SideZip()), ("Sew the sides",)),
    ],
)
def test_a_side_is_left_open_for_its_zip(
    features: tuple[Feature, ...], sides: tuple[str, ...]
) -> None:
    """Said where it is sewn, not when the zip is taken up."""
    gone = "fly" if any(f.kind == "side zip" for f in features) else ""
    m = sewn(instead(features, gone))
    for words in sides:
        said = by_title(m, words).says
        assert any("Leave the left one open" in s for s in said), words
    assert not any(
        "open for the zip" in s for op in sewn(DARTS).operations for s in op.says
    )


def test_a_halter_has_no_shoulders() -> None:
    m = sewn(HALTER)
    assert not any(op.work is Work.SHOULDER for op in m.operations)
    band = by_title(m, "Make the band")
    assert band.task is Task.BAG and "S65" in by_title(m, "Join the pieces").seams
    assert "halter band" in by_title(m, "Interline").title
    assert Hazard.SMALL_PART in by_title(m, "hooks and eyes to the band").hazards


def test_a_sleeve_lining_is_set_when_the_lining_s_sides_are_sewn() -> None:
    m = sewn(LINED)
    codes = by_title(m, "Make the lining").seams
    assert codes.index("LS4") < codes.index("LS23")
    assert codes.index("LS25") < codes.index("LS23")


def test_the_neck_s_ends_are_named_as_they_are() -> None:
    ends = {}
    for name, features in (("wrap", WRAP), ("placket", PLACKET), ("plain", DARTS)):
        m = sewn(features)
        ends[name] = seam_line(m, m.draft.sheet.seam("S8")).ends
    assert ends == {
        "wrap": "shoulder to waist",
        "placket": "shoulder to placket",
        "plain": "shoulder to centre front",
    }


def test_what_a_hem_s_words_say_is_reckoned() -> None:
    """A sheath's hem is neatened: its thread is told."""
    m = sewn(SHEATH)
    assert Stitch.OVEREDGE in m.stitched(by_title(m, "Hem the lower edge"))


def test_zips_are_bought_by_the_piece_and_tape_by_length() -> None:
    m = sewn(trouser_features(Pockets()))
    every = {n.article: n for n in bought(cutting_sheet(m))}
    assert _quantity(every[Article.TROUSER_ZIP])[1] == "1"
    tape = Notion(Article.TAPE, 2, "for both edges", length=21.9)
    assert _quantity(tape)[1] == "0.5 m"
    tasks = {op.task: op.count for op in m.operations}
    assert tasks[Task.FLY] == 1.0 and tasks[Task.SLANT_POCKET] == 2.0


@pytest.mark.parametrize(
    ("task", "minutes"),
    [
        (Task.FLY, 55.0),
        (Task.VISIBLE_ZIP, 20.0),
        (Task.ZIP, 32.0),
        (Task.BUTTONHOLE, 4.0),
        (Task.SIDE_POCKET, 25.0),
        (Task.SLANT_POCKET, 35.0),
    ],
)
def test_minutes_are_the_first_third_of_the_range(task: Task, minutes: float) -> None:
    assert USUAL[task] == minutes
