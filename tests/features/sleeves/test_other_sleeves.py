"""Cap, flutter and petal sleeves (transformations 4 of the notes).

Bodies are the check values' standard ones and the demo's clients, drafted whole.
"""

import math

import pytest
from shapely.geometry import Polygon

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE
from clothwright.body import Body
from clothwright.curves import degrees_between, distance
from clothwright.features import Feature
from clothwright.features.roles import Role
from clothwright.features.sleeves.cap_sleeve import CapSleeve
from clothwright.features.sleeves.cuff import Cuff
from clothwright.features.sleeves.flutter_sleeve import FlutterSleeve
from clothwright.features.sleeves.petal_sleeve import PetalSleeve
from clothwright.features.sleeves.puffed_cap import PuffedCap
from clothwright.features.sleeves.set_in_sleeve import Elbow, SetInSleeve
from clothwright.features.sleeves.sleeve_lengths import Reach
from clothwright.findings import Severity
from clothwright.finishing.drawn import Meaning
from clothwright.finishing.roles import role_of
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from orders import order, sleeved_features

MM = 0.1
BODIES = (P80, P92, P116, BRIDA, YSOLDE, THEA)


def made(body: Body, *swaps: Feature) -> Draft:
    return draft(order(body, sleeved_features(*swaps)))


def codes(d: Draft, severity: Severity) -> set[str]:
    return {f.code for f in d.findings if f.severity is severity}


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("sleeve", [CapSleeve(), FlutterSleeve(), PetalSleeve()])
def test_each_sews(sleeve: Feature, body: Body) -> None:
    d = made(body, sleeve)
    p = pattern(d, words=False)
    assert not p.failed, [str(f) for f in p.findings if f.severity is Severity.REFUSE]
    walks = {w.seam.code: w for w in d.report.walks}
    assert walks["S25"].ease == pytest.approx(0.0, abs=0.01 * MM)
    for code, share in (("S23", 0.45), ("S24", 0.55)):
        assert walks[code].holds
        assert walks[code].ease == pytest.approx(share * d.numbers.E_cap, abs=0.1 * MM)
    angles = {a.joint.name: a for a in d.report.angles}
    assert sum(angles["cap under the arm"].parts) == pytest.approx(180.0, abs=0.1)
    assert angles["sleeve hem over the seam"].parts == pytest.approx([90, 90], abs=0.1)


@pytest.mark.parametrize("body", BODIES)
def test_a_cap_sleeve(body: Body) -> None:
    """A seam of 0 to 4 under the arm, the hem above the biceps line in the middle."""
    d = made(body, CapSleeve(length=9.0, under=2.0))
    p = d.sheet.points
    assert p["Hc"].y - p["T"].y == pytest.approx(9.0)
    assert p["Hc"].y < 0.0
    assert d.sheet.length("SL", "underarm front") == pytest.approx(2.0)
    assert role_of(d.sheet.piece("SL"), "hem", d.order.said) is Role.HEM
    assert "CS1" in codes(made(body, CapSleeve(length=4.0, under=1.0)), Severity.REFUSE)


def test_a_cap_sleeve_as_long_as_a_sleeve_is_doubted() -> None:
    assert "CS2" in codes(made(P80, CapSleeve(length=16, under=1.0)), Severity.WARN)
    assert "CS2" not in codes(made(P80, CapSleeve()), Severity.WARN)


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("part", [0.3, 0.6, 0.9])
def test_a_flutter_sleeve_is_part_of_a_ring(body: Body, part: float) -> None:
    """r = cap/φ, hem = φ(r + length); its area is that part of the ring's, reckoned
    by shapely from chords."""
    d = made(body, FlutterSleeve(part=part, length=12.0))
    n, sheet = d.numbers, d.sheet
    phi = 2 * math.pi * part
    cap = sheet.length("SL", "cap back") + sheet.length("SL", "cap front")
    assert cap == pytest.approx(n.A_f + n.A_b + 0.5, abs=0.1 * MM)
    assert n.ring_r == pytest.approx(cap / phi, abs=0.1 * MM)
    hem = sheet.length("SL", "hem")
    assert hem == pytest.approx(phi * (cap / phi + 12.0), abs=0.1 * MM)
    area = Polygon(sheet.piece("SL").outline.flatten(0.0005)).area
    assert area == pytest.approx(12.0 * (cap + hem) / 2, rel=1e-4)


@pytest.mark.parametrize("body", BODIES)
def test_petals_cross_at_the_top(body: Body) -> None:
    """They cross by 6 to 10 (transformations 4), half to each side of the shoulder
    notch; what lies on each other is of one length; both leave seam and cap square."""
    d = made(body, PetalSleeve(overlap=8.0))
    sheet = d.sheet
    assert "SL" not in sheet.pieces
    for piece in ("SLF", "SLB"):
        assert sheet.length(piece, "cap lap") == pytest.approx(4.0)
    walks = {w.seam.code: w for w in d.report.walks}
    for code in ("S104", "S105"):
        assert walks[code].ease == pytest.approx(0.0)
        assert walks[code].left == pytest.approx(4.0)
    front = sheet.edge("SLF", "hem").path
    cap = sheet.edge("SLF", "cap lap").path
    assert degrees_between(front.end_direction, cap.start_direction) == pytest.approx(
        90.0, abs=0.1
    )
    whole = made(body).sheet.piece("SL").area
    assert sheet.piece("SLF").area + sheet.piece("SLB").area < whole * 1.3
    drawn = {p.code: p for p in pattern(d, words=False).drawn.pieces}
    for code in ("SLF", "SLB"):
        assert any(k.meaning is Meaning.EASE for k in drawn[code].lines)
        assert [c.how for c in drawn[code].cuts] == ["2 (1 pair)"]
    assert distance(front.start, sheet.edge("SLF", "underarm front").path.end) < 1e-6


def test_petals_are_hemmed_and_laid_before_the_sleeve_is_set() -> None:
    titles = [op.title for op in making_order(made(P92, PetalSleeve())).operations]
    wanted = [
        "Sew the sleeve seams",
        "Hem the petals",
        "Lay the front petal over the back one",
        "Set the sleeves",
    ]
    assert [t for t in titles if t in wanted] == wanted
    assert not any(t.startswith("Hem the front petal") for t in titles)


@pytest.mark.parametrize(
    ("features", "word"),
    [
        ((PetalSleeve(), Cuff()), "hang free"),
        ((PetalSleeve(), PuffedCap()), "plain cap"),
        (
            (SetInSleeve(reach=Reach.WRIST, elbow=Elbow.DART), PetalSleeve()),
            "straight",
        ),
        ((CapSleeve(), PuffedCap()), "plain sleeve"),
        ((FlutterSleeve(), Cuff()), "set-in sleeve"),
    ],
)
def test_what_does_not_go_together(features: tuple[Feature, ...], word: str) -> None:
    with pytest.raises(OrderError, match=word):
        made(P92, *features)


def test_long_petals_are_doubted() -> None:
    d = made(P92, SetInSleeve(reach=Reach.WRIST), PetalSleeve())
    assert "PE1" in codes(d, Severity.WARN)
