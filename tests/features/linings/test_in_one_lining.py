"""Lining of sleeves cut in one with the body, of a dropped shoulder, of fronts that
wrap, of a halter and of a cowl (transformations 4 and 6, first garment 15)."""

import math

import pytest

from bodies import P80, P92, P116, THEA, YSOLDE, ansur_women
from clothwright.body import Body
from clothwright.curves import Point, degrees_between, distance
from clothwright.features import Feature
from clothwright.features.bodice.back_waist_dart import BackWaistDart
from clothwright.features.bodice.bust_dart import BustDart
from clothwright.features.bodice.drop_shoulder import DropShoulder
from clothwright.features.bodice.front_dart import DartPlace
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.bodice.torso import Torso
from clothwright.features.linings.cowl_lining import without_cowl
from clothwright.features.linings.lining import Lining, Mode
from clothwright.features.linings.neck_facing import NeckFacing
from clothwright.features.necks.cowl import Cowl
from clothwright.features.necks.cowl_rules import Folds
from clothwright.features.necks.halter import Halter, HalterNeck
from clothwright.features.necks.wrap_front import WrapFront
from clothwright.features.openings.button_stand import ButtonStand
from clothwright.features.openings.stand_edging import Edging
from clothwright.features.sleeves.kimono import Kimono
from clothwright.features.sleeves.raglan import Raglan
from clothwright.features.sleeves.set_in_sleeve import Elbow, SetInSleeve
from clothwright.features.sleeves.sleeve_lengths import Reach
from clothwright.making.cutting import cutting_sheet
from clothwright.making.order import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.paper import PaperError, Piece, straight
from orders import closed_back, order, sleeved_features

MM = 0.1

BODIES = [P80, P92, P116, THEA, YSOLDE, *ansur_women()[::140]]

_DARTS = (SideDart(), BackWaistDart())


def without(features: tuple[Feature, ...], *kinds: str) -> tuple[Feature, ...]:
    return tuple(f for f in features if not any(k in f.kind for k in kinds))


def raglan(elbow: Elbow = Elbow.DART) -> tuple[Feature, ...]:
    sleeve = SetInSleeve(reach=Reach.WRIST, elbow=elbow)
    features = sleeved_features(Raglan(), sleeve, *_DARTS, Lining())
    return without(features, "princess")


def kimono(angle: float) -> tuple[Feature, ...]:
    dart = BustDart(to=DartPlace.WAIST)
    features = sleeved_features(Kimono(angle=angle), dart, BackWaistDart(), Lining())
    return without(features, "princess", "sleeved armhole", "set-in")


def dropped() -> tuple[Feature, ...]:
    features = sleeved_features(DropShoulder(), *_DARTS, Lining())
    return without(features, "princess", "sleeved armhole")


def in_one(features: tuple[Feature, ...]) -> tuple[Feature, ...]:
    """The same with bodice and skirt in one."""
    return (*without(features, "waist seam", "peplum"), Torso())


def wrapped(inside: str) -> tuple[Feature, ...]:
    if inside == "sleeved":
        features = sleeved_features(WrapFront(), *_DARTS, Lining())
        return tuple(f for f in without(features, "princess") if f.kind != "neckline")
    features = closed_back(lines="darts", lining=Mode(inside))
    return (*(f for f in features if f.kind != "neckline"), WrapFront())


def cowl(folds: Folds) -> tuple[Feature, ...]:
    features = sleeved_features(Cowl(folds=folds), BackWaistDart(), Lining())
    return tuple(f for f in without(features, "princess") if f.kind != "neckline")


def held(mode: Mode, shape: HalterNeck = HalterNeck.V) -> tuple[Feature, ...]:
    features = closed_back(lines="darts", lining=mode)
    return (*without(features, "neckline", "armhole"), Halter(shape=shape))


ORDERS: dict[str, tuple[Feature, ...]] = {
    "raglan": raglan(),
    "raglan, straight": raglan(Elbow.STRAIGHT),
    "kimono with a gusset": kimono(45.0),
    "drop shoulder": dropped(),
    "raglan, torso": in_one(raglan()),
    "drop shoulder, torso": in_one(dropped()),
    "wrap, sleeved": wrapped("sleeved"),
    "wrap below the facing": wrapped("below the facing"),
    "wrap to the edge": wrapped("to the edge"),
    "cowl of one fold": cowl(Folds.ONE),
    "cowl of three folds": cowl(Folds.THREE),
    "halter below the facing": held(Mode.BELOW_FACING),
    "halter to the edge": held(Mode.TO_EDGE, HalterNeck.ROUND),
}


def made(features: tuple[Feature, ...], body: Body = P92) -> Draft:
    d = draft(order(body, features))
    assert not d.failed, d.failures()
    return d


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("kind", ORDERS)
def test_everything_is_lined_and_sewn(kind: str, body: Body) -> None:
    """Every piece of bodice and sleeve has its lining, every edge of it a partner, and
    the finished pattern passes its checks."""
    d = made(ORDERS[kind], body)
    assert not [
        f for f in pattern(d, words=False).findings if f.severity.name == "REFUSE"
    ]
    shell = {c for c in d.sheet.pieces if c in ("F", "B", "SL", "SLF", "SLB", "GU")}
    assert {f"L.{c}" for c in shell} <= set(d.sheet.pieces)


@pytest.mark.parametrize("body", BODIES)
def test_a_raglan_goes_on_flat(body: Body) -> None:
    """Its lining hangs from the facing, which runs on over the sleeves; body and sleeve
    are raised within what is good (6: 0.6 to 1.2, 1.5 to 2.5), and the raglan seams,
    eased nowhere in the shell (4), are of one length."""
    sheet = made(raglan(), body).sheet
    for half, sleeve in (("F", "SLF"), ("B", "SLB")):
        a, b = (sheet.length(f"L.{c}", "raglan") for c in (half, sleeve))
        assert a == pytest.approx(b, abs=0.5 * MM)
    for code, end in (("F", "start"), ("B", "end")):
        shell, mine = (
            getattr(sheet.edge(c, "raglan").path, end) for c in (code, f"L.{code}")
        )
        assert 0.6 <= shell.y - mine.y <= 1.3
    front, mine = (sheet.length(c, "underarm front") for c in ("SLF", "L.SLF"))
    assert 1.5 - 0.05 <= mine - front + 1.5 <= 2.5 + 0.1  # and the hem 1.5 shorter
    for facing in ("FF", "BF"):
        join = sheet.seam(f"L{facing[0]}")
        assert len(join.left) == 2
        assert join.notches  # where the raglan seam meets the facing


@pytest.mark.parametrize(("width", "shoulder"), [(5.0, 4.0), (10.0, 8.0)])
def test_a_raglans_notches_lie_below_its_facing(width: float, shoulder: float) -> None:
    """The upper notch of a raglan seam may lie behind a wide facing; the lower one, at
    the armhole's, is as far from the raised underarm on both sides (4)."""
    facing = NeckFacing(width=width, shoulder=shoulder)
    d = made(tuple(facing if f.kind == "neck facing" else f for f in raglan()))
    counts = set()
    for code in ("LS23", "LS24"):
        seam = d.sheet.seam(code)
        whole = d.sheet.chain_length(seam.left)
        assert all(1.0 < k.left < whole - 1.0 for k in seam.notches)
        counts.add(len(seam.notches))
    assert min(counts) == (2 if width < 6.0 else 1)


def test_a_raglans_lining_lies_on_its_shell() -> None:
    """Above the arm it is the shell below the facing; only under it, it differs."""
    sheet = made(raglan()).sheet
    for code, edge in (("SLF", "overarm"), ("SLB", "overarm"), ("F", "cf")):
        shell, mine = (sheet.edge(c, edge).path for c in (code, f"L.{code}"))
        for t in (0.1, 0.5, 0.9):
            assert shell.nearest(mine.at_length(t * mine.length))[1] < 0.1 * MM


def test_the_facing_of_a_dropped_shoulder_runs_beside_it() -> None:
    """Moved in by the same at both ends (first garment 14.5), though the shoulder bends
    down over the arm further out."""
    sheet = made(dropped()).sheet
    for code, facing in (("F", "FF"), ("B", "BF")):
        shoulder, mine = (sheet.edge(c, "shoulder").path for c in (code, facing))
        if code == "F":
            shoulder, mine = shoulder.reversed(), mine.reversed()
        turn = degrees_between(shoulder.start_direction, mine.start_direction)
        assert turn < 0.1


@pytest.mark.parametrize("angle", [32.0, 45.0])
def test_a_kimonos_lining_is_its_shell(angle: float) -> None:
    """Under the arm the lining is the shell, as long, and its hem 1.5 higher; from the
    facing's shoulder its seam over the arm runs into the shell's."""
    sheet = made(kimono(angle)).sheet
    assert ("L.GU" in sheet.pieces) is (angle > 40)
    for code, facing in (("F", "FF"), ("B", "BF")):
        under, mine = (sheet.edge(c, "underarm").path for c in (code, f"L.{code}"))
        assert under.length - mine.length == pytest.approx(1.5, abs=1 * MM)
        over, led = (sheet.edge(c, "overarm").path for c in (code, f"L.{code}"))
        assert over.nearest(led.at_length(led.length / 2))[1] < 0.1 * MM
        free = sheet.edge(facing, "free").path
        top, end = (led.end, free.end) if code == "F" else (led.start, free.start)
        assert distance(top, end) < 0.1 * MM


@pytest.mark.parametrize("body", BODIES)
def test_a_low_cap_is_not_wider_lined_than_cut(body: Body) -> None:
    """What the lining's cap is longer than its armhole is no more than the shell's."""
    sheet = made(dropped(), body).sheet
    for code in ("S23", "S24"):
        eased, less = (
            sheet.chain_length(s.right) - sheet.chain_length(s.left)
            for s in (sheet.seam(code), sheet.seam(f"L{code}"))
        )
        assert less < eased + 0.5 * MM


def test_a_torsos_lining_keeps_its_side_dart() -> None:
    """In one with the skirt there is no waist dart at the edge to take it, and a neck
    facing does not reach it."""
    sheet = made(in_one(raglan())).sheet
    for leg in ("dart low", "dart high"):
        assert sheet.length("L.F", leg) == pytest.approx(sheet.length("F", leg))
    assert sheet.seam("Lside dart").runs()[0].piece == "L.F"


def test_a_torso_whose_bust_dart_is_led_elsewhere_is_not_lined() -> None:
    """Its lining's dart would lie in a side that is whole in the shell; with a part
    left there it is lined."""
    usual = [
        f
        for f in sleeved_features()
        if f.kind not in ("front armhole princess", "waist seam", "peplum")
    ]
    for share, lined in ((None, False), (0.5, True)):
        top = (*usual, BustDart(share=share), Torso(), Lining())
        if lined:
            assert not draft(order(P92, top)).failed
        else:
            with pytest.raises(OrderError, match="keep the bust dart at its side"):
                draft(order(P92, top))


@pytest.mark.parametrize("inside", ["sleeved", "below the facing", "to the edge"])
def test_linings_of_a_wrap_lie_on_each_other(inside: str) -> None:
    """Beyond the centre the lining reaches to the facing's foot, or to its own roll
    inside the edge: at the waist ρ over the sine of the corner."""
    d = made(wrapped(inside))
    sheet, n = d.sheet, d.numbers
    mine, over = sheet.length("L.F", "waist over"), sheet.length("F", "waist over")
    if inside == "to the edge":
        corner = math.radians(sheet.piece("F").interior_angle("neck"))
        assert over - mine == pytest.approx(n.rho_l / math.sin(corner), abs=0.5 * MM)
    else:
        assert over - mine == pytest.approx(n.strip_w, abs=0.5 * MM)
    titles = [op.title for op in making_order(d).operations]
    over_each_other = titles.index("Lay the linings of the fronts over each other")
    assert over_each_other < titles.index("Close the lining")


@pytest.mark.parametrize("folds", Folds)
def test_a_cowls_lining_has_no_folds(folds: Folds) -> None:
    """Its centre is plumb, its waist and side are the shell's, and its neck ends below
    where the cowl hangs at rest and above where its facing ends."""
    d = made(cowl(folds))
    sheet, n = d.sheet, d.numbers
    lining = sheet.piece("L.F")
    centre = lining.edge("cf").path
    assert centre.start.x == pytest.approx(centre.end.x) == pytest.approx(n.X)
    for edge in ("waist", "waist side"):
        shell, mine = (sheet.length(c, edge) for c in ("F", "L.F"))
        assert mine == pytest.approx(shell, abs=0.5 * MM)
    low = centre.start.y - sheet.points["Nf′"].y
    assert n.sag < low < n.sag + n.fc
    front, back = (sheet.length(c, "shoulder") for c in ("L.F", "L.B"))
    assert back - front == pytest.approx(n.se_left, abs=1 * MM)
    assert lining.grain is not None
    assert lining.grain[0].x == lining.grain[1].x  # on the straight, the shell's bias
    titles = [op.title for op in making_order(d).operations]
    assert "Hem the neck of the front lining" in titles


def test_a_halter_to_the_edge() -> None:
    """The strap's lining is narrower by both rolls (14.6); the back, which is cut away,
    is not rolled."""
    d = made(held(Mode.TO_EDGE))
    sheet = d.sheet
    strap, mine = (sheet.length(c, "shoulder") for c in ("F", "L.F"))
    assert strap - mine == pytest.approx(2 * d.numbers.rho_l, abs=2 * MM)
    assert sheet.length("L.B", "neck") == pytest.approx(sheet.length("B", "neck"))
    assert {r.piece for r in sheet.seam("LE5").runs()} == {"L.F", "HN"}


def test_they_are_cut_and_made() -> None:
    m = making_order(made(kimono(45.0)))
    cut = {p.code: p.how for p in cutting_sheet(m).cloths["lining"]}
    assert "pair" in cut["L.GU"] and "fold" in cut["L.F"]
    titles = [op.title for op in m.operations]
    assert "Catch the lining under the arms" in titles
    assert "Catch the sleeve linings to the armholes" not in titles
    lining = next(op for op in m.operations if op.title == "Make the lining")
    assert lining.seams.index("LS4") < lining.seams.index("LS57")
    titles = [op.title for op in making_order(made(raglan())).operations]
    assert "Catch the sleeve linings to the armholes" in titles


def test_a_facing_that_leaves_a_cowls_lining_no_shoulder_is_told_by_its_number() -> (
    None
):
    facing = NeckFacing(shoulder=8.0)
    features = (*without(cowl(Folds.ONE), "neck facing"), facing)
    with pytest.raises(
        OrderError, match=r"8\.0 cm wide.*\(shoulder of .neck facing.\) [67]\.\d cm"
    ):
        draft(order(P80, features))


def test_a_waist_that_takes_in_nothing_leaves_a_cowl_unlined() -> None:
    """A front without a waist dart is told by the measures that leave it none."""
    d = made(cowl(Folds.ONE))
    a, b, c = Point(0, 0), Point(20, 40), Point(0, 40)
    names = (("side", a, b), ("waist", b, c), ("cf", c, a))
    plain = d.sheet.put(Piece("F", "Front", tuple(straight(*of) for of in names)))
    with pytest.raises(PaperError, match=r"bust \(B\) and waist \(W\) are so near"):
        without_cowl(plain, d.numbers)


@pytest.mark.parametrize("kind", ["raglan", "kimono with a gusset", "drop shoulder"])
@pytest.mark.parametrize("body", [P92, THEA, *ansur_women()[::300]])
def test_it_hangs_from_a_facing_that_is_cut_on(kind: str, body: Body) -> None:
    """The facing is turned over when all that hangs from it is traced: its free edge is
    then the front's, and the lining's join meets it there."""
    stand = ButtonStand(edge=Edging.CUT_ON)
    d = made((*without(ORDERS[kind], "concealed zip"), stand), body)
    assert "FF" not in d.sheet.pieces
    join = d.sheet.seam("LF")
    assert {(r.piece, r.edge) for r in join.right} == {("F", "free")}
    assert not [
        f for f in pattern(d, words=False).findings if f.severity.name == "REFUSE"
    ]


@pytest.mark.parametrize("gap", [0.3, 0.9, 2.0])
@pytest.mark.parametrize("body", [ansur_women()[k] for k in (19, 100, 304, 500, 777)])
def test_a_raglan_lining_ends_on_its_facing(body: Body, gap: float) -> None:
    """Under a wrap the raglan seam lies up to 5 mm beside itself on sleeve and body
    where the facing's edge crosses it: there the lining of the sleeve is led out to the
    facing, so that both are of one length, but for the roll and the zip, and its
    raglan seam is still as long as the body's."""
    features = tuple(
        f for f in raglan() if f.kind not in ("neckline", "raglan", "neck facing")
    )
    made = draft(order(body, (*features, WrapFront(), Raglan(gap=gap), NeckFacing())))
    assert not made.failed, made.failures()
    walks = {w.seam.code: w for w in made.report.walks}
    assert walks["LF"].ease == pytest.approx(0.0, abs=MM)
    short = 0.5 + made.numbers.rho  # beside the zip (16.4), and the roll
    assert walks["LB"].ease == pytest.approx(-short, abs=MM)
    for code in ("LS23", "LS24"):
        assert abs(walks[code].ease) < 1.5 * MM
