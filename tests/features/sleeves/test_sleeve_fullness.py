"""Fullness in sleeves, bands and cuffs (transformations 4 and 7 of the notes).

Bodies are the check values' standard ones and the demo's clients, drafted whole.
"""

import math
from itertools import pairwise

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE
from clothwright.body import Body
from clothwright.curves import Path, Point, degrees_between, distance
from clothwright.features import Feature
from clothwright.features.bodice.back_waist_dart import BackWaistDart
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.bodice.torso import Torso
from clothwright.features.bodice.waist import WaistSeam
from clothwright.features.roles import Role
from clothwright.features.sleeves.bell_sleeve import BellSleeve
from clothwright.features.sleeves.cuff import Cuff
from clothwright.features.sleeves.gathered_hem import GatheredHem
from clothwright.features.sleeves.leg_of_mutton import LegOfMutton
from clothwright.features.sleeves.puffed_cap import PuffedCap
from clothwright.features.sleeves.set_in_sleeve import Elbow, SetInSleeve
from clothwright.features.sleeves.sleeve_band import SleeveBand
from clothwright.features.sleeves.sleeve_fullness import blended
from clothwright.features.sleeves.sleeve_lengths import Reach
from clothwright.findings import Severity
from clothwright.finishing.drawn import Meaning
from clothwright.finishing.roles import role_of
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.order.draft import Workroom
from clothwright.units import Unit
from orders import order, sleeved_features

MM = 0.1
BODIES = (P80, P92, P116, BRIDA, YSOLDE, THEA)
LONG = SetInSleeve(reach=Reach.WRIST)
BENT = SetInSleeve(reach=Reach.WRIST, elbow=Elbow.DART)

STYLES: dict[str, tuple[Feature, ...]] = {
    "puffed top": (PuffedCap(),),
    "puffed top of a long sleeve": (LONG, PuffedCap()),
    "puffed top of a bent sleeve": (BENT, PuffedCap()),
    "puffed top into a band": (SetInSleeve(length=23), PuffedCap(), SleeveBand()),
    "puffed bottom": (SetInSleeve(length=26), GatheredHem(), SleeveBand()),
    "both": (SetInSleeve(length=26), PuffedCap(), GatheredHem(), SleeveBand()),
    "bishop": (LONG, GatheredHem(fullness=1.8), Cuff()),
    "shirt": (LONG, Cuff(width=7)),
    "bent with a cuff": (BENT, Cuff()),
    "long with a band": (LONG, GatheredHem(), SleeveBand()),
    "bell": (LONG, BellSleeve()),
    "short bell": (SetInSleeve(length=25), BellSleeve()),
    "leg of mutton": (BENT, LegOfMutton()),
}


def made(body: Body, *swaps: Feature, unit: Unit = Unit.CM) -> Draft:
    return draft(order(body, sleeved_features(*swaps), unit=unit))


def codes(d: Draft, severity: Severity) -> set[str]:
    return {f.code for f in d.findings if f.severity is severity}


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("style", STYLES)
def test_every_style_sews(style: str, body: Body) -> None:
    """Cap against armhole, the seams under the arm equal, the hem square at the seams;
    no check of the finished pattern fails."""
    d = made(body, *STYLES[style])
    p = pattern(d, words=False)
    assert not p.failed, [str(f) for f in p.findings if f.severity is Severity.REFUSE]
    walks = {w.seam.code: w for w in d.report.walks}
    assert walks["S25"].ease == pytest.approx(0.0, abs=0.1 * MM)
    angles = {a.joint.name: a for a in d.report.angles}
    # square by construction; a cuff's slit leaves the hem's own ends as they were
    assert angles["sleeve hem over the seam"].parts == pytest.approx([90, 90], abs=0.5)
    assert sum(angles["cap under the arm"].parts) == pytest.approx(180.0, abs=0.5)
    for code, notch in (("S23", 7.5), ("S24", 9.5)):
        w = walks[code]
        last = w.seam.notches[-1]
        assert w.right - last.right == pytest.approx(notch, abs=0.1 * MM)
        assert w.holds


@pytest.mark.parametrize("body", BODIES)
def test_a_puffed_cap_is_gathered_between_its_notches(body: Body) -> None:
    """Cap = armhole and 5 to 12 (transformations 4); below the notches it is the plain
    cap, and it is level at its top."""
    plain, d = made(body), made(body, PuffedCap())
    took = 0.0
    for code in ("S23", "S24"):
        seam = d.sheet.seam(code)
        assert seam.gathered
        took += d.sheet.chain_length(seam.right) - d.sheet.chain_length(seam.left)
    assert 5.0 <= took <= 12.0
    # 6 opened and 2 raised, beside the 3 of ease
    assert 5.0 < took - 3.0 < 8.0
    for side in ("front", "back"):
        name = f"underarm {side}"
        assert d.sheet.length("SL", name) == pytest.approx(
            plain.sheet.length("SL", name), abs=0.01 * MM
        )
    assert d.sheet.edge("SL", "cap back").path.end_direction.y == pytest.approx(0.0)
    top = d.sheet.edge("SL", "cap back").path.end
    assert d.sheet.points["K"].y - top.y == pytest.approx(2.0)
    drawn = next(p for p in pattern(d, words=False).drawn.pieces if p.code == "SL")
    notes = [k.note for k in drawn.lines if k.meaning is Meaning.EASE]
    assert notes.count("gather") == 2


@pytest.mark.parametrize("body", BODIES)
def test_a_leg_of_mutton_is_plain_below_the_elbow(body: Body) -> None:
    plain, d = made(body, BENT), made(body, BENT, LegOfMutton())
    for edge in ("hem", "underarm back low", "dart elbow low"):
        a, b = plain.sheet.edge("SL", edge).path, d.sheet.edge("SL", edge).path
        assert distance(a.start, b.start) < 1e-6
        assert distance(a.end, b.end) < 1e-6
    # the biceps line grows by nearly half of the opening, which hinges at the elbow
    wide = distance(
        d.sheet.edge("SL", "cap back").path.start,
        d.sheet.edge("SL", "cap front").path.end,
    )
    assert plain.numbers.Wb + 4.0 < wide < plain.numbers.Wb + 9.0
    with pytest.raises(OrderError, match="dart or ease"):
        made(body, LONG, LegOfMutton())


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("sleeve", [LONG, SetInSleeve(length=26)])
def test_a_flared_hem(body: Body, sleeve: SetInSleeve) -> None:
    """The cap keeps the length of each half, the seams keep theirs; the hem is longer
    by what it was opened by, and a little as it is now an arc."""
    plain, d = made(body, sleeve), made(body, sleeve, BellSleeve(flare=14.0))
    for edge in ("cap back", "cap front", "underarm front", "underarm back"):
        assert d.sheet.length("SL", edge) == pytest.approx(
            plain.sheet.length("SL", edge), abs=0.1 * MM
        )
    hem = d.sheet.length("SL", "hem")
    grown = hem - plain.sheet.length("SL", "hem")
    assert 14.0 - 0.5 < grown < 14.0 + 1.5
    # a cone: the seams lean apart by the opening over the length, about
    front = d.sheet.edge("SL", "underarm front").path
    back = d.sheet.edge("SL", "underarm back").path
    apart = degrees_between(front.end_direction, back.start_direction * -1.0)
    assert apart > math.degrees(14.0 / (d.numbers.lh + 2.0))


def test_a_flared_hem_is_narrow() -> None:
    """2·h·Φ of a hem turned up in one, up to a twentieth of it (truing 9)."""
    for features, role in (
        ((SetInSleeve(),), Role.TURNED),
        ((BENT,), Role.TURNED),
        ((SetInSleeve(length=25), BellSleeve()), Role.HEM),
    ):
        d = made(P92, *features)
        assert role_of(d.sheet.piece("SL"), "hem", d.order.said) is role


@pytest.mark.parametrize("body", BODIES)
def test_a_bishop_sleeve(body: Body) -> None:
    """Wrist full 1.5 to 2 times; length AL and 2.5 to 5 less the cuff; 2 lower behind
    (transformations 4); cuff WR + 3 and an underlap of 2.5; a slit of 6 to 10 in the
    back third, walked from one side of it to the other."""
    d = made(body, LONG, GatheredHem(fullness=1.8), Cuff())
    n, sheet = d.numbers, d.sheet
    assert n.lh == pytest.approx(n.AL + 3.0 - 5.0)
    seam = sheet.seam("S26")
    cuff, hem = sheet.chain_length(seam.left), sheet.chain_length(seam.right)
    assert cuff == pytest.approx(n.WR + 3.0)
    assert 1.5 <= hem / cuff <= 2.05
    assert seam.gathered
    assert sheet.length("CU", "lap") == pytest.approx(2.5)
    whole = sheet.edge("SL", "hem").path + sheet.edge("SL", "hem back").path
    slit = next(k for k in sheet.piece("SL").lines if k.name == "slit").path
    assert 6.0 <= slit.length <= 10.0
    behind = sheet.length("SL", "hem back") / whole.length
    assert 0.0 < behind < 1 / 3
    assert distance(slit.start, sheet.edge("SL", "hem back").path.start) < 1e-6
    way = sheet.edge("SL", "hem back").path.start_direction
    assert degrees_between(way, slit.start_direction) == pytest.approx(90.0, abs=0.1)
    # lower behind than in front, the same distance from the centre
    level = [whole.at_length(whole.length * share).y for share in (0.25, 0.75)]
    assert 1.0 < level[1] - level[0] < 3.0
    # cuff and slit let the hand through
    assert cuff + 2 * slit.length >= n.HD


def test_the_cuff_lies_as_it_is_sewn() -> None:
    """Its two layers fold onto each other, its notch meets the sleeve's own seam."""
    d = made(P92, LONG, GatheredHem(), Cuff())
    walks = {w.seam.code: w for w in d.report.walks}
    for code in ("S28", "S29"):
        assert walks[code].ease == pytest.approx(0.0)
    cu = d.sheet.piece("CU")
    assert cu.edge("inside").length == pytest.approx(cu.edge("upper").length)
    at = walks["S26"].seam.notches[-1].right
    assert at == pytest.approx(d.sheet.length("SL", "hem"))
    drawn = {p.code: p for p in pattern(d, words=False).drawn.pieces}
    assert len(drawn["CU"].notches) == 2
    assert any(k.note == "button 1" for k in drawn["CU"].lines)
    assert [c.cloth for c in drawn["CU"].cuts] == ["shell", "interlining"]


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("length", [23.0, 32.0, 55.0])
def test_a_closed_band_lets_hand_and_arm_through(body: Body, length: float) -> None:
    d = made(body, SetInSleeve(length=length), GatheredHem(), SleeveBand())
    n = d.numbers
    assert n.band_net >= n.HD
    if length < n.SE:
        assert n.band_net >= min(n.UA, n.EL) + 2.0
    assert not d.failed, d.failures()
    tight = made(body, SetInSleeve(length=23.0), SleeveBand(girth=19.0))
    assert "SB2" in codes(tight, Severity.REFUSE)


@pytest.mark.parametrize(
    ("features", "code"),
    [
        ((SetInSleeve(length=20), SleeveBand(girth=40)), "SB1"),
        ((SetInSleeve(length=20), Cuff()), "CU1"),
    ],
)
def test_what_does_not_go_is_refused(features: tuple[Feature, ...], code: str) -> None:
    d = made(P92, *features)
    assert code in codes(d, Severity.REFUSE), [str(f) for f in d.findings]


def test_a_cuff_too_tight_for_the_hand_is_refused() -> None:
    """Cuff and both sides of the slit against HD."""
    taken = {"HT": 165, "HB": 87, "B": 92, "W": 72, "H": 98, "WR": 15, "HD": 25}
    body = Body.of(taken, client="hand")
    tight = made(body, LONG, Cuff(slit=4.0, girth=16.5))
    assert "CU3" in codes(tight, Severity.REFUSE)
    assert "CU3" not in codes(made(body, LONG, Cuff()), Severity.REFUSE)


@pytest.mark.parametrize(
    ("features", "word"),
    [
        ((LONG, GatheredHem()), "cuff"),
        ((LONG, BellSleeve(), Cuff()), "bell hangs free"),
        ((BENT, BellSleeve()), "straight"),
        ((LONG, BellSleeve(), GatheredHem(), Cuff()), "one kind of hem"),
        ((LONG, SleeveBand(), Cuff()), "one thing"),
        ((BENT, PuffedCap(), LegOfMutton()), "one kind of cap"),
    ],
)
def test_what_does_not_go_together(features: tuple[Feature, ...], word: str) -> None:
    with pytest.raises(OrderError, match=word):
        made(P92, *features)


def test_thick_gathers_are_doubted() -> None:
    d = made(P116, LONG, GatheredHem(fullness=3.0), Cuff())
    assert "SB3" in codes(d, Severity.WARN)
    assert "SL10" in codes(made(P92, PuffedCap(opened=2.0, raised=0.0)), Severity.WARN)
    short = made(P92, SetInSleeve(length=20), BellSleeve(flare=30))
    assert "SL11" in codes(short, Severity.WARN)


def test_the_making_order_of_a_bishop_sleeve() -> None:
    """Slit while it is flat, seam, gathers, cuff, and then the sleeve is set (cutting
    and costing 5)."""
    titles = [
        op.title
        for op in making_order(
            made(P92, LONG, PuffedCap(), GatheredHem(), Cuff())
        ).operations
    ]
    wanted = [
        "Bind the slits of the sleeves",
        "Sew the sleeve seams",
        "Gather the ends of the sleeves",
        "Set the cuffs on the sleeves",
        "Gather the caps of the sleeves",
        "Set the sleeves",
    ]
    assert [t for t in titles if t in wanted] == wanted
    # interlined, set, buttonholed, buttoned
    assert sum("cuffs" in t for t in titles) == 4


def test_blending_keeps_the_length() -> None:
    """A kinked line as long as before, and smooth: against the lines' own sum, but for
    0.2 mm at each kink."""
    kinked = Path.line(Point(0, 0), Point(5, 0)) + Path.line(Point(5, 0), Point(10, 1))
    kinked = kinked + Path.line(Point(10, 1), Point(14, 3))
    smooth = blended(kinked)
    assert smooth.length == pytest.approx(kinked.length, abs=2 * 0.2 * MM)
    assert (smooth.start, smooth.end) == (kinked.start, kinked.end)
    for a, b in zip(smooth.segments, smooth.segments[1:], strict=False):
        assert degrees_between(a.end_direction, b.start_direction) < 0.01


@pytest.mark.parametrize("body", BODIES)
def test_a_flared_cap_keeps_no_corner_over_its_slashes(body: Body) -> None:
    """Eight wedges of 5 degrees and more are blended into one line, over the top too:
    between the notches it nowhere turns by 5 degrees within 3 mm, on the flat crown of
    a short sleeve that is opened far; and that takes no length which could be cut
    (common practice, no source)."""
    d = made(body, SetInSleeve(length=22.0), BellSleeve(flare=36.0))
    back, front = (d.sheet.edge("SL", f"cap {h}").path for h in ("back", "front"))
    cap = back + front
    ways = [
        cap.direction_at_length(0.3 * k)
        for k in range(int(11.0 / 0.3), int((cap.length - 11.0) / 0.3))
    ]
    turns = [degrees_between(a, b) for a, b in pairwise(ways)]
    assert max(turns) < 5.0
    plain = made(body, SetInSleeve(length=22.0)).sheet
    whole = plain.length("SL", "cap back") + plain.length("SL", "cap front")
    assert cap.length == pytest.approx(whole, abs=0.5 * MM)


def test_changes_redraw_as_a_fresh_draft_would() -> None:
    room = Workroom()
    for features in (
        (LONG, GatheredHem(), Cuff()),
        (LONG, GatheredHem(drop=1.0), Cuff()),
        (LONG, GatheredHem(drop=1.0), Cuff(width=7.0)),
        (LONG, GatheredHem(fullness=2.0, drop=1.0), Cuff(width=7.0, slit=9.0)),
        (LONG, PuffedCap(), Cuff(width=7.0)),
        (LONG, PuffedCap(opened=8.0), Cuff(width=7.0)),
        (LONG, PuffedCap(opened=8.0, raised=3.0), SleeveBand()),
        (LONG, BellSleeve(flare=20.0)),
    ):
        o = order(P92, sleeved_features(*features))
        kept, fresh = room.draft(o), draft(o)
        for code in ("SL", "CU", "BA"):
            if code not in fresh.sheet.pieces:
                assert code not in kept.sheet.pieces
                continue
            for e in fresh.sheet.piece(code).edges:
                assert kept.sheet.length(code, e.name) == pytest.approx(
                    e.length, abs=1e-9
                )


@pytest.mark.parametrize(
    ("flare", "level"), [(1.0, True), (14.0, False), (30.0, False)]
)
def test_a_biceps_line_runs_from_underarm_to_underarm(
    flare: float, level: bool
) -> None:
    """Spread so far that the underarms rise, the sleeve has no level line there."""
    p = made(P92, LONG, BellSleeve(flare=flare)).sheet.piece("SL")
    lines = [k.path for k in p.lines if k.name == "biceps line"]
    assert bool(lines) == level
    corners = p.edge("cap back").path.start, p.edge("cap front").path.end
    for line in lines:
        for end in (line.start, line.end):
            assert min(distance(end, c) for c in corners) < 0.7


@pytest.mark.parametrize("above", [Torso(seam=9.0, blouse=2.0), WaistSeam(blouse=2.0)])
def test_sleeve_and_bodice_blouse_each_by_its_own(above: Feature) -> None:
    """A bishop sleeve on a top that blouses over too: neither takes the other's."""
    sleeve = (LONG, GatheredHem(blouse=4.0), Cuff())
    panels = ("front armhole princess", "back armhole princess")
    usual = sleeved_features(*sleeve, SideDart(), BackWaistDart(), above)
    gone = (*panels, *(("waist seam", "peplum") if above.kind == "torso" else ()))
    made = draft(order(P92, tuple(f for f in usual if f.kind not in gone)))
    assert not made.failed, made.failures()
    n = made.numbers
    assert (n.blouse, n.sleeve_blouse) == (2.0, 4.0)
    assert n.lh == pytest.approx(n.AL + 4.0 - n.end_depth)
