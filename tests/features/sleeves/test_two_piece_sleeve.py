"""The tailored sleeve of two pieces (transformations 4, truing 2 of the notes).

Bodies are the check values' standard ones and the demo's clients, drafted whole.
"""

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE, ansur_whole
from clothwright.body import Body
from clothwright.curves import distance
from clothwright.features import Feature
from clothwright.features.block import Block
from clothwright.features.bodice.back_shoulder import BackShoulder
from clothwright.features.bodice.back_waist_dart import BackWaistDart
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.bodice.yokes import BackYoke
from clothwright.features.sleeves.cuff import Cuff
from clothwright.features.sleeves.puffed_cap import PuffedCap
from clothwright.features.sleeves.set_in_sleeve import Elbow, SetInSleeve
from clothwright.features.sleeves.sleeve_lengths import Reach
from clothwright.features.sleeves.two_piece_sleeve import TwoPieceSleeve
from clothwright.findings import Severity
from clothwright.finishing.drawn import Meaning
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.order.draft import Workroom
from clothwright.paper import JOINT_RIGHT
from orders import order, sleeved_features

MM = 0.1
BODIES = (P80, P92, P116, BRIDA, YSOLDE, THEA)
LONG = SetInSleeve(reach=Reach.WRIST)


def made(body: Body, *swaps: Feature) -> Draft:
    return draft(order(body, sleeved_features(LONG, TwoPieceSleeve(), *swaps)))


@pytest.mark.parametrize("body", BODIES)
def test_it_sews(body: Body) -> None:
    """The front seams of one length; behind, the top sleeve 0.6 to 1.0 longer, eased in
    at the elbow; cap against armhole with 0.45 and 0.55 of the ease; cap and hem run
    on over both seams."""
    d = made(body)
    p = pattern(d, words=False)
    assert not p.failed, [str(f) for f in p.findings if f.severity is Severity.REFUSE]
    assert "SL" not in d.sheet.pieces
    walks = {w.seam.code: w for w in d.report.walks}
    assert "S25" not in walks
    assert walks["S32"].ease == pytest.approx(0.0, abs=0.01 * MM)
    assert walks["S33"].ease == pytest.approx(0.8, abs=0.01 * MM)
    for code, share in (("S23", 0.45), ("S24", 0.55)):
        assert walks[code].holds
        assert walks[code].ease == pytest.approx(share * 3.0, abs=0.1 * MM)
    angles = {a.joint.name: a for a in d.report.angles}
    for over in ("cap", "hem"):
        for side in ("front", "back"):
            parts = angles[f"{over} over the {side} seam"].parts
            assert sum(parts) == pytest.approx(180.0, abs=0.5)
    hem = angles["hem over the front seam"].parts
    # the seams are shifted level, the wrist line slants: about a degree
    assert hem == pytest.approx([90.0, 90.0], abs=1.5)


@pytest.mark.parametrize("body", BODIES)
def test_where_its_seams_lie(body: Body) -> None:
    """The top sleeve takes 1.5 to 2.5 from the under at the front; the back seam lies
    at 1/3 to 2/5 of the back from the underarm: seen at the biceps line, which both
    pieces have whole between them."""
    d = made(body)
    n, sheet = d.numbers, d.sheet
    top = (
        sheet.edge("ST", "cap back").path.start,
        sheet.edge("ST", "cap front").path.end,
    )
    assert top[1].x == pytest.approx(n.b_F / 2 + 2.0)
    assert top[0].x == pytest.approx(-n.b_B * (1 - 0.37))
    under = (
        sheet.edge("SU", "cap front").path.start,
        sheet.edge("SU", "cap back").path.end,
    )
    wide = (top[1].x - top[0].x) + (under[1].x - under[0].x)
    assert wide == pytest.approx(n.Wb, abs=0.1 * MM)
    for cap, both in (("cap front", n.A_f + 1.35), ("cap back", n.A_b + 1.65)):
        whole = sheet.length("ST", cap) + sheet.length("SU", cap)
        assert whole == pytest.approx(both, abs=0.1 * MM)


@pytest.mark.parametrize("body", BODIES)
def test_its_widths(body: Body) -> None:
    """Wrist max(WR + 3.5, HD + 0.5) (B10), both hems together; elbow at least EL + 2.5
    (B12); the arm's length from the top of the cap to the hem within 1."""
    d = made(body)
    n, sheet = d.numbers, d.sheet
    hem = sheet.length("ST", "hem") + sheet.length("SU", "hem")
    wrist = max(n.WR + 3.5, n.HD + 0.5)
    assert hem == pytest.approx(wrist, abs=0.1 * MM)
    assert n.We >= n.EL + 2.5 - 1e-9
    top = d.sheet.points["T"]
    middle = sheet.edge("ST", "hem").path.at_length(sheet.length("ST", "hem") / 2)
    assert distance(top, middle) == pytest.approx(n.AL, abs=1.0)


def test_the_finished_pieces() -> None:
    """A pair each; the sleeve's own seams are the notches of the cap; ease told on the
    back of the top sleeve."""
    drawn = {p.code: p for p in pattern(made(P92), words=False).drawn.pieces}
    for code in ("ST", "SU"):
        assert [c.how for c in drawn[code].cuts] == ["2 (1 pair)"]
        assert any(k.meaning is Meaning.GRAIN for k in drawn[code].lines)
    eased = [k for k in drawn["ST"].lines if k.meaning is Meaning.EASE]
    assert len(eased) == 3
    assert not [k for k in drawn["SU"].lines if k.meaning is Meaning.EASE]
    caps = [k.note for k in drawn["SU"].notches if "cap" in k.note]
    assert caps == []
    named = [b.text for b in drawn["SU"].wording.beside if "biceps" in b.text]
    assert named == ["biceps line"]  # one line, though it is drawn in two parts


def test_it_is_closed_before_it_is_set() -> None:
    titles = [op.title for op in making_order(made(P92)).operations]
    assert titles.index("Sew the sleeve seams") < titles.index("Set the sleeves")


@pytest.mark.parametrize(
    ("swaps", "word"),
    [
        ((Cuff(),), "hemmed"),
        ((PuffedCap(),), "plain cap"),
        ((SetInSleeve(reach=Reach.WRIST, elbow=Elbow.DART),), "two seams shape"),
        ((SetInSleeve(reach=Reach.WRIST, taper=2.0),), "leave the taper"),
        ((SetInSleeve(length=30),), "reach to the wrist"),
    ],
)
def test_what_does_not_go_together(swaps: tuple[Feature, ...], word: str) -> None:
    with pytest.raises(OrderError, match=word):
        made(P92, *swaps)


def test_changes_redraw_as_a_fresh_draft_would() -> None:
    room = Workroom()
    for two in (
        TwoPieceSleeve(),
        TwoPieceSleeve(front=2.5),
        TwoPieceSleeve(front=2.5, back=0.4),
        TwoPieceSleeve(wrist=26.0),
        TwoPieceSleeve(ease=0.6),
    ):
        o = order(P92, sleeved_features(LONG, two))
        kept, fresh = room.draft(o), draft(o)
        for code in ("ST", "SU"):
            for e in fresh.sheet.piece(code).edges:
                assert kept.sheet.length(code, e.name) == pytest.approx(
                    e.length, abs=1e-9
                )


def test_a_shorter_one_is_as_wide_as_far_down_as_it_goes() -> None:
    """Three-quarter: from We at the elbow towards Ww at the wrist, and forward by as
    much less (exact shares of the way from elbow to wrist)."""
    short = SetInSleeve(reach=Reach.THREE_QUARTER)
    made = draft(order(P92, sleeved_features(short, TwoPieceSleeve())))
    assert not made.failed, made.failures()
    n = made.numbers
    share = n.below_elbow / (n.AL - n.SE - 0.5)
    assert 0.2 < share < 0.9
    hem = sum(made.sheet.length(code, "hem") for code in ("ST", "SU"))
    assert hem == pytest.approx(n.We + (n.Ww - n.We) * share, abs=0.1 * MM)
    assert n.two_forward == pytest.approx(2.0 * share - 1.0, abs=1e-6)


@pytest.mark.parametrize("way", [BackShoulder.EASE, BackShoulder.YOKE])
@pytest.mark.parametrize("body", [P92, THEA, *ansur_whole()[94::200]])
def test_its_seam_meets_the_armhole_below_a_yoke(body: Body, way: BackShoulder) -> None:
    """The seams of the sleeve are the marks of its cap (first garment 19): a yoke cut
    off the armhole moves no notch off them."""
    parts = (
        f
        for f in sleeved_features(LONG, TwoPieceSleeve(), Block(back_shoulder=way))
        if "princess" not in f.kind
    )
    back = BackYoke() if way is BackShoulder.YOKE else BackYoke(depth=11.0)
    made = draft(order(body, (*parts, SideDart(), BackWaistDart(), back)))
    assert not made.failed, made.failures()
    for code, cap in (("S23", "cap front"), ("S24", "cap back")):
        seam = made.sheet.seam(code)
        (joint,) = (k for k in seam.notches if k.note == JOINT_RIGHT)
        assert joint.right == pytest.approx(made.sheet.length("ST", cap), abs=0.1 * MM)
        lower = made.sheet.chain_length(seam.left) - joint.left
        assert lower == pytest.approx(made.sheet.length("SU", cap), abs=0.1 * MM)
