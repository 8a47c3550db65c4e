"""Yokes cut across a princess line (transformations 1.5)."""

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE, ansur_whole
from clothwright.body import Body
from clothwright.curves import distance
from clothwright.features import Feature
from clothwright.features.block import Block
from clothwright.features.bodice.back_shoulder import BackShoulder
from clothwright.features.bodice.yoke_panels import YokePanels
from clothwright.features.bodice.yokes import BackYoke, FrontYoke
from clothwright.features.linings.lining import Mode
from clothwright.findings import Severity
from clothwright.order import OrderError, draft
from clothwright.paper import Run
from order.test_combinations import finished
from orders import closed_back, order, sound, swapped

MM = 0.1
BODIES = (P80, P92, P116, BRIDA, YSOLDE, THEA, *ansur_whole()[::400])
LINES = ("armhole", "shoulder")


def yoked(
    lines: str,
    *yokes: Feature,
    way: BackShoulder = BackShoulder.EASE,
    lining: Mode | None = None,
) -> tuple[Feature, ...]:
    return (*closed_back(way, lines=lines, lining=lining), *yokes)


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("lines", LINES)
def test_a_taped_yoke_is_that_of_a_half_in_one_piece(lines: str, body: Body) -> None:
    """Taping closes what the seam takes in, so the yoke over a princess line is the one
    of the same body without it: edge by edge and in area (exact)."""
    yokes = FrontYoke(), BackYoke(depth=15.0)
    made = sound(body, yoked(lines, *yokes))
    plain = sound(body, yoked("darts", *yokes))
    for code, flank in (("FY", "FS"), ("BY", "BS")):
        mine, its = made.sheet.piece(code), plain.sheet.piece(code)
        assert {e.name for e in mine.edges} == {e.name for e in its.edges}
        for e in its.edges:
            assert mine.edge(e.name).length == pytest.approx(e.length, abs=MM / 10)
        assert mine.area == pytest.approx(its.area, abs=0.05)
        assert f"{code}S" not in made.sheet.pieces
        crossed = not made.sheet.piece(f"{code[0]}C").has("armhole")
        assert made.sheet.piece(flank).has("yoke") is crossed


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("lines", LINES)
@pytest.mark.parametrize("panels", YokePanels)
@pytest.mark.parametrize("mode", [None, Mode.TO_EDGE, Mode.BELOW_FACING])
def test_everything_meets(
    mode: Mode | None, panels: YokePanels, lines: str, body: Body
) -> None:
    """Both sides of the yoke's seam are of one length and notched alike, at the panel
    seam too; the panels below are eased as without a yoke; neck, armhole and shoulder
    are sewn to the same facings; all of it is cut and sewn."""
    features = yoked(lines, FrontYoke(panels=panels), lining=mode)
    made, plain = sound(body, features), sound(body, yoked(lines, lining=mode))
    sheet, was = made.sheet, plain.sheet
    seam = sheet.seam("front yoke")
    assert seam.left == (Run("FC", "yoke", True), Run("FS", "yoke", True))
    a, b = (sheet.chain_length(c) for c in (seam.left, seam.right))
    assert a == pytest.approx(b, abs=0.1 * MM)
    joint = sheet.length("FC", "yoke")
    assert any(k.left == pytest.approx(joint, abs=1e-6) for k in seam.notches)
    below, old = sheet.seam("S1"), was.seam("S1")
    eased, planned = (
        s.chain_length(k.right) - s.chain_length(k.left)
        for s, k in ((sheet, below), (was, old))
    )
    assert eased == pytest.approx(planned, abs=0.1 * MM)
    assert below.ease == old.ease
    assert below.notches[-1].left - below.notches[-2].left == pytest.approx(
        old.notches[-1].left - old.notches[-2].left, abs=1e-6
    )
    faced = ("LE1", "LE3") if mode is Mode.TO_EDGE else ("S8", "S10")
    for code in ("S4", "S11" if mode is not Mode.TO_EDGE else "LE4", *faced):
        for now, then in zip(
            (sheet.seam(code).left, sheet.seam(code).right),
            (was.seam(code).left, was.seam(code).right),
            strict=True,
        ):
            gap = sheet.chain_length(now) - was.chain_length(then)
            assert abs(gap) < 0.1 * MM
    assert ("S130" in {s.code for s in sheet.seams}) is (panels is YokePanels.SEAMED)
    assert not finished(made)


@pytest.mark.parametrize("body", BODIES)
def test_a_line_above_the_panel_seam_cuts_the_centre_panel(body: Body) -> None:
    """At its usual 9 cm the back yoke ends on the armhole above the armhole princess:
    the side back and its seam stay as they were (exact)."""
    made = sound(body, yoked("armhole", BackYoke()))
    plain = sound(body, yoked("armhole"))
    assert made.sheet.piece("BS") == plain.sheet.piece("BS")
    assert made.sheet.seam("S2") == plain.sheet.seam("S2")
    parts = [made.sheet.piece(c).area for c in ("BY", "BC")]
    assert sum(parts) == pytest.approx(plain.sheet.piece("BC").area, abs=1e-6)


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("panels", YokePanels)
def test_a_shoulder_dart_in_the_seam_ends_at_the_yoke(
    panels: YokePanels, body: Body
) -> None:
    """Left to itself the yoke is as deep as the point of the dart that the shoulder
    princess takes up: taped, it closes the dart, and its shoulder is in one, as long as
    both parts were (exact); below, no dart is left in the panel seam."""
    way = BackShoulder.SEAM
    made = sound(body, yoked("shoulder", BackYoke(panels=panels), way=way))
    plain = sound(body, yoked("shoulder", way=way))
    sheet, was = made.sheet, plain.sheet
    assert sheet.points["Ycb"].y == pytest.approx(sheet.points["Ps"].y, abs=1e-6)
    parts = [was.length(c, "shoulder") for c in ("BC", "BS")]
    if panels is YokePanels.TAPED:
        assert sheet.length("BY", "shoulder") == pytest.approx(sum(parts), abs=0.1 * MM)
        seam = sheet.seam("S3")
        assert seam.right == (Run("BY", "shoulder"),)
        assert len(seam.left) == 2  # the front's panel seam ends there, and is notched
        at = sheet.length("FC", "shoulder")
        assert seam.notches[0].left == pytest.approx(at, abs=1e-6)
        planned = sum(was.seam(c).ease.plan for c in ("S3", "S3a"))
        assert seam.ease.plan == pytest.approx(planned, abs=1e-9)
    else:
        now = [sheet.length(c, "shoulder") for c in ("BY", "BYS")]
        assert now == pytest.approx(parts, abs=1e-6)
        a, b = (sheet.length(c, "panel") for c in ("BY", "BYS"))
        assert a == pytest.approx(b, abs=MM)
    assert not finished(made)


def test_a_dart_within_the_yoke_is_seamed_or_refused() -> None:
    """Below the dart's point the panels spread again, and cannot be taped."""
    way = BackShoulder.SEAM
    with pytest.raises(OrderError, match=r'leave its parts seamed \(panels = "seamed'):
        draft(order(P92, yoked("shoulder", BackYoke(depth=13.0), way=way)))
    seamed = BackYoke(depth=13.0, panels=YokePanels.SEAMED)
    assert not finished(sound(P92, yoked("shoulder", seamed, way=way)))


@pytest.mark.parametrize(
    ("features", "says"),
    [
        (
            yoked("armhole", FrontYoke(depth=14.2)),
            r"must stay: make the yoke \(depth of .front yoke.\)",
        ),
        (
            yoked("shoulder", FrontYoke(depth=28.0)),
            r"make it \(depth of .front yoke.\) less deep",
        ),
        (
            yoked("shoulder", FrontYoke(depth=6.0)),
            r"make the yoke \(depth of .front yoke.\) deeper",
        ),
        (
            swapped(
                yoked("armhole", BackYoke()), Block(back_shoulder=BackShoulder.YOKE)
            ),
            'back_shoulder = "to panel"',
        ),
    ],
)
def test_what_cannot_be_cut_is_said(features: tuple[Feature, ...], says: str) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(P92, features))


def test_two_seams_at_one_place_of_the_armhole_are_doubted() -> None:
    """The yoke ends a few mm above the panel seam: the finding tells how far."""
    plain = sound(P92, yoked("armhole"))
    qf, hf = plain.sheet.points["Qf"], plain.numbers.y_hf
    made = draft(order(P92, yoked("armhole", FrontYoke(depth=qf.y - hf - 0.8))))
    (told,) = [f for f in made.findings if f.code == "Y4"]
    assert told.severity is Severity.WARN
    rest = made.sheet.length("FC", "armhole")
    assert told.data["rest"] == pytest.approx(rest)
    assert rest < 1.5
    assert rest > distance(qf, made.sheet.points["Ya"]) - 0.1 * MM


def test_a_seam_that_no_yoke_needs_is_said() -> None:
    seamed = FrontYoke(panels=YokePanels.SEAMED)
    made = sound(P92, yoked("darts", seamed))
    assert "Y5" in [f.code for f in made.findings]
    assert "Y5" not in [f.code for f in sound(P92, yoked("shoulder", seamed)).findings]


def test_a_side_part_that_would_be_a_sliver_is_refused() -> None:
    """Two seams that end on the armhole within 1.5 of each other are a lump (our own
    choice): there is no such part, and its number is named."""
    said = set[str]()
    for depth in (13.0, 15.0, 15.25, 15.5, 15.75, 16.0, 16.5, 17.0):
        yoke = FrontYoke(panels=YokePanels.SEAMED, depth=depth)
        try:
            sheet = draft(order(P92, (*closed_back(lines="armhole"), yoke))).sheet
        except OrderError as e:
            said.add(str(e))
            continue
        if "FYS" in sheet.pieces:
            assert sheet.length("FYS", "armhole") >= 1.5
    assert any("from the panel seam on the armhole" in e for e in said)
    assert all('depth of "front yoke"' in e for e in said)
