"""Lining of a top with set-in sleeves (transformations 6)."""

import pytest

from bodies import P80, P92, P116, THEA, YSOLDE, ansur_women
from clothwright.body import Body
from clothwright.curves import distance
from clothwright.features import Feature
from clothwright.features.bodice.back_princess import BackArmholePrincess
from clothwright.features.bodice.back_waist_dart import BackWaistDart
from clothwright.features.bodice.shoulder_princess import ShoulderPrincess
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.linings.lining import Lining, Mode
from clothwright.features.necks.neck_shapes import BackShape, FrontShape
from clothwright.features.necks.necklines import BackNeckline, Neckline
from clothwright.features.sleeves.cap_sleeve import CapSleeve
from clothwright.features.sleeves.cuff import Cuff
from clothwright.features.sleeves.gathered_hem import GatheredHem
from clothwright.features.sleeves.puffed_cap import PuffedCap
from clothwright.features.sleeves.set_in_sleeve import Elbow, SetInSleeve
from clothwright.features.sleeves.sleeve_lengths import Reach
from clothwright.features.sleeves.two_piece_sleeve import TwoPieceSleeve
from clothwright.making.cutting import cutting_sheet
from clothwright.making.order import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from orders import order, sleeved_features

MM = 0.1

LINES: dict[str, tuple[Feature, ...]] = {
    "armhole": (),
    "shoulder": (ShoulderPrincess(),),
    "darts": (SideDart(), BackWaistDart()),
    "mixed": (SideDart(), BackArmholePrincess()),
}


def lined(*swaps: Feature, lines: str = "armhole", body: Body = P92) -> Draft:
    features = sleeved_features(*swaps, Lining())
    if LINES[lines]:
        features = tuple(f for f in features if "princess" not in f.kind)
        features = (*features, *LINES[lines])
    d = draft(order(body, features))
    assert not d.failed, d.failures()
    return d


@pytest.mark.parametrize("body", [P80, P116, THEA, YSOLDE, *ansur_women()[::200]])
@pytest.mark.parametrize("lines", LINES)
def test_it_lines_every_bodice(body: Body, lines: str) -> None:
    """Everything below the neck facing, armholes and sleeves too, sewn as the shell;
    the cap goes in with no more ease than the shell's."""
    d = lined(lines=lines, body=body)
    pattern(d, words=False)
    shell = {c for c in d.sheet.pieces if c[0] in "FBP" and c not in ("FF", "BF")}
    assert {f"L.{c}" for c in (*shell, "SL")} == {
        c for c in d.sheet.pieces if c.startswith("L.")
    }
    for code in ("S23", "S24"):
        s, own = d.sheet.seam(code), d.sheet.seam(f"L{code}")
        eased, less = (
            d.sheet.chain_length(k.right) - d.sheet.chain_length(k.left)
            for k in (s, own)
        )
        assert 0.0 < less < eased


def test_the_underarms_are_raised() -> None:
    """The bodice's by 1 of 0.6 to 1.2, and 0.3 wider; the sleeve's by 2 of 1.5 to 2.5;
    its hem is 1.5 shorter (6)."""
    sheet = lined(SetInSleeve(reach=Reach.WRIST)).sheet
    for code, end in (("FS", "start"), ("BS", "end")):
        shell, mine = (
            getattr(sheet.edge(c, "armhole").path, end) for c in (code, f"L.{code}")
        )
        assert shell.y - mine.y == pytest.approx(1.0, abs=0.2)
        assert abs(distance(shell, mine) - 1.0) < 0.25
    for edge in ("underarm front", "underarm back"):
        more = sheet.length("L.SL", edge) - sheet.length("SL", edge)
        assert more == pytest.approx(2.0 - 1.5, abs=1 * MM)
    top = sheet.edge("SL", "cap front").path.start
    assert distance(sheet.edge("L.SL", "cap front").path.start, top) < 0.1 * MM


@pytest.mark.parametrize("front", [FrontShape.V, FrontShape.BOAT, FrontShape.SCOOP])
@pytest.mark.parametrize("elbow", [Elbow.STRAIGHT, Elbow.DART, Elbow.EASE])
def test_necks_and_elbows(front: FrontShape, elbow: Elbow) -> None:
    d = lined(
        Neckline(shape=front),
        BackNeckline(shape=BackShape.SCOOP),
        SetInSleeve(reach=Reach.WRIST, elbow=elbow),
        body=YSOLDE,
    )
    pattern(d, words=False)


def test_it_is_cut_and_made() -> None:
    m = making_order(lined())
    cut = {p.code: p.how for p in cutting_sheet(m).cloths["lining"]}
    assert "pair" in cut["L.SL"] and "fold" in cut["L.FC"]
    titles = [op.title for op in m.operations]
    assert "Catch the sleeve linings to the armholes" in titles
    assert "Join the lining to the facing" in titles


def test_a_shirt_sleeve_leaves_its_lining_no_ease() -> None:
    d = lined(SetInSleeve(cap_ease=0.0))
    assert any(f.code == "N3" for f in d.findings)
    assert not any(f.code == "N3" for f in lined().findings)


@pytest.mark.parametrize(
    ("sleeve", "says"),
    [
        ((PuffedCap(),), "a full cap"),
        ((TwoPieceSleeve(),), "a shaped hem"),
        (
            (SetInSleeve(reach=Reach.WRIST), GatheredHem(), Cuff()),
            "not lined yet",
        ),
    ],
)
def test_other_sleeves_are_refused(sleeve: tuple[Feature, ...], says: str) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(P92, sleeved_features(*sleeve, Lining())))


def test_a_cap_sleeve_and_an_edge_are_refused() -> None:
    with pytest.raises(OrderError, match="cap or a flutter sleeve is not lined"):
        draft(order(P92, sleeved_features(CapSleeve(), Lining())))
    to_edge = [f for f in sleeved_features() if f.kind != "neck facing"]
    with pytest.raises(OrderError, match="sleeveless"):
        draft(order(P92, (*to_edge, Lining(mode=Mode.TO_EDGE))))
