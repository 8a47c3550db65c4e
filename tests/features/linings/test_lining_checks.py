"""Linings found out when they are wrong, and notched as their shells (first garment 15,
21)."""

import random

import pytest

from bodies import BRIDA, P92, THEA
from clothwright.curves import Point, distance
from clothwright.features import Feature
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.linings import lining_edge, roll
from clothwright.features.linings.facing_checks import roll_findings
from clothwright.features.linings.lining import Lining, Mode
from clothwright.features.linings.lining_checks import edge_findings
from clothwright.features.linings.lining_strips import beside_strip
from clothwright.features.linings.neck_facing import NeckFacing
from clothwright.features.linings.roll import rolled_front
from clothwright.features.linings.sewn_halves import front_half, sewn_front
from clothwright.features.necks.neck_shapes import FrontShape
from clothwright.features.necks.necklines import Neckline
from clothwright.findings import Severity
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.paper import JOINT, PaperError, Piece, Sheet, straight
from combinations import combination
from features.linings.test_lining import edged, hung, to_edge
from orders import order, sleeved_features
from women import woman
from wrong import longer, severity_of, unnoticed


# -- notches -------------------------------------------------------------------------
def test_the_lining_is_notched_as_the_shell() -> None:
    """19: front panel single at BP ± 5, back panel double, side, waist joints, faced
    edges; each notch on the lining stands by the shell's."""
    d = edged()
    for code in ("LS1", "LS2", "LS4", "LS5", "LS6", "LE2", "LE3", "LE4"):
        seam, shell = d.sheet.seam(code), d.sheet.seam("S3")
        assert seam.notches, code
        if code.startswith("LS"):
            shell = d.sheet.seam(code[1:])
            assert [n.ticks for n in seam.notches] == [n.ticks for n in shell.notches]
            for mine, its in zip(seam.notches, shell.notches, strict=True):
                for chain, s, other, t in (
                    (seam.left, mine.left, shell.left, its.left),
                    (seam.right, mine.right, shell.right, its.right),
                ):
                    p = d.sheet.chain_at(chain, s)[1]
                    q = d.sheet.chain_at(other, t)[1]
                    assert distance(p, q) < 0.7
    drawn = {p.code: p for p in pattern(d, words=False).drawn.pieces}
    for code in ("L.FC", "L.FS", "L.BC", "L.BS", "L.PF", "L.PB"):
        assert drawn[code].notches, code


def test_the_join_is_notched_at_the_panel() -> None:
    for name in ("open, narrow strip", "closed"):
        sheet = hung(name).sheet
        for code in ("LF", "LB"):
            [pair] = sheet.seam(code).notches
            assert pair.note == JOINT


@pytest.mark.parametrize("seed", range(30))
def test_notches_of_a_lining_meet(seed: int) -> None:
    """Random lined tops: panels that bend apart over a shoulder dart, a side that was
    turned, joints near a notch. Nothing is said of the notches of a lining that is not
    said of its shell."""
    features = combination(random.Random(seed), Lining)
    try:
        made = draft(order(woman(seed), features))
    except OrderError:
        return  # refused with a sentence (tests of orders)
    codes = {f.code for f in made.findings}
    for f in made.findings:
        said = f.sentence
        if "Lining" in said and "notch" in said:
            assert f.code.removeprefix("L") in codes, said


# -- found out when wrong ------------------------------------------------------------
@pytest.mark.parametrize("name", ["open", "closed", "shoulder lines"])
def test_an_edge_of_the_wrong_length_is_noticed(name: str) -> None:
    """Every seam of the lining; a centre back or a panel sewn to its own twin aside."""
    own = ("LS21", "LS14")
    for d in (edged(name), hung(name)):
        assert not unnoticed(d, lambda c: c.startswith("L") and c not in own)


def _refused(d: Draft, sheet: Sheet) -> set[str]:
    found = edge_findings(d.numbers, sheet)
    return {f.code for f in found if f.severity is Severity.REFUSE}


def test_a_lining_cut_as_the_shell_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    """No roll at all."""
    monkeypatch.setattr(
        "clothwright.features.linings.lining_edge.rolled_front",
        lambda half, rho: rolled_front(half, 0.0 * rho),
    )
    d = draft(order(P92, to_edge("open")))
    assert any(f.code == "F3" for f in d.findings)
    assert d.failed


def test_a_shoulder_left_where_it_was_is_noticed(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(roll, "_moved_in", lambda path, by: path)
    for body in (P92, BRIDA, THEA):
        sheet = draft(order(body, to_edge("open"))).sheet
        for code in ("LE1", "LE3", "LE4"):
            assert severity_of(sheet, code) is not None


@pytest.mark.parametrize("slack", [0.2, 0.8])
def test_the_wrong_slack_is_refused(
    monkeypatch: pytest.MonkeyPatch, slack: float
) -> None:
    monkeypatch.setattr(lining_edge, "SLACK", slack)
    assert "N1" in {f.code for f in draft(order(P92, to_edge("open"))).findings}


def test_a_lining_waist_of_the_wrong_length_is_refused() -> None:
    """15: lining to shell at the waist, the same net length."""
    for d in (edged(), hung()):
        for code, piece in (("LW1", "L.FS"), ("LW2", "L.BS")):
            assert severity_of(d.sheet, code) is None
            wrong = longer(d.sheet, piece, "waist", 0.5)
            assert severity_of(wrong, code) is Severity.REFUSE


def test_the_rolls_check_asks_the_lining_itself() -> None:
    d = edged()
    half, own = sewn_front(d.sheet), front_half(d.sheet, "L.")
    rolled = own.neck, own.armhole, own.slant
    assert not list(roll_findings(0.3, 0.3, half, rolled, "lining", ""))
    assert list(roll_findings(0.6, 0.6, half, rolled, "lining", ""))
    assert not _refused(d, d.sheet)


def test_a_strip_that_covers_its_piece_is_told_by_its_width() -> None:
    """A facing of 30 beside the centre of a piece 20 wide."""
    a, b, c, e = Point(0, 0), Point(20, 0), Point(20, 40), Point(0, 40)
    names = ("waist", "side", "hem", "cf")
    ends = zip(names, (a, b, c, e), (b, c, e, a), strict=True)
    piece = Piece("PF", "Peplum front", tuple(straight(*of) for of in ends))
    far = straight("free", Point(-10, 40), Point(-10, 0))
    loop = (far, straight("waist", far.path.end, a), straight("end", a, far.path.start))
    strip = Piece("FFP", "Front facing, lower", loop)
    with pytest.raises(PaperError, match=r"make the facing \(bf\) narrower"):
        beside_strip(piece, strip)


def test_a_facing_down_to_the_waist_dart_is_told_by_its_width() -> None:
    """A square neck 20 deep, faced 12 wide: its free edge would run over the point of
    the dart, and the lining's front cross itself."""

    def lined(wide: float) -> tuple[Feature, ...]:
        neck = Neckline(shape=FrontShape.SQUARE, depth=20.0)
        features = sleeved_features(
            neck,
            NeckFacing(width=wide),
            SideDart(),
            Lining(mode=Mode.BELOW_FACING),
        )
        return tuple(f for f in features if f.kind != "front armhole princess")

    assert not draft(order(P92, lined(8.0))).failed
    with pytest.raises(
        OrderError, match=r"waist dart.*\(width of .neck facing.\) narrower"
    ):
        draft(order(P92, lined(12.0)))
