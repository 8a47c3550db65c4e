"""Shoulder straps (truing 5; where they lie is common practice, no source)."""

import math
from dataclasses import replace

import pytest

from bodies import BRIDA, P80, P92, YSOLDE, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.curves import Point, distance
from clothwright.features import Feature
from clothwright.features.bodice.strapless import Strapless, TopShape
from clothwright.features.linings.lining import Mode
from clothwright.features.necks.straps import StrapKind, Straps
from clothwright.making import making_order
from clothwright.making.cutting import cutting_sheet
from clothwright.order import OrderError, draft, pattern
from clothwright.order.cautions import of_garment
from clothwright.order.wearer import Wearer
from features.bodice.test_strapless import LINES, held
from orders import closed_back, cut_faults, order

MM = 0.1


def hung(
    straps: Straps, lines: str = "armhole", lining: Mode | None = None
) -> tuple[Feature, ...]:
    return (*held(Strapless(shape=TopShape.SWEETHEART), lines, lining), straps)


@pytest.mark.parametrize("lines", LINES)
@pytest.mark.parametrize("kind", StrapKind)
@pytest.mark.parametrize("body", [P92, BRIDA, YSOLDE])
def test_a_strap_goes_over_the_shoulder(
    body: Body, kind: StrapKind, lines: str
) -> None:
    """From its mark in front straight to the middle of the block's shoulder, and from
    there to its mark behind; twice as wide as it is worn, and 2.5 longer."""
    d = draft(order(body, hung(Straps(shape=kind), lines)))
    assert not d.failed, d.failures()
    assert not cut_faults(d)
    n, p = d.numbers, d.sheet.points
    # the slopes of blocks A2.4 and A3.4
    f, b = math.radians(n.sigma_f), math.radians(n.sigma_b)
    half = n.SH / 2
    front = Point(n.x_hf - half * math.cos(f), n.y_hf + half * math.sin(f))
    back = Point(n.bw + half * math.cos(b), half * math.sin(b) - n.nr)
    long = distance(p["Ks"], front) + distance(back, p["Ksb"])
    assert d.sheet.length("SR", "strap over") == pytest.approx(long + 2.5, abs=MM)
    assert d.sheet.length("SR", "front end") == pytest.approx(2 * n.strap_w)
    assert n.strap_w == (0.8 if kind is StrapKind.NARROW else 3.0)
    assert p["Ksb"].x == pytest.approx(n.XB / 4)
    marked = {
        c for c, q in d.sheet.pieces.items() if any(m.name == "strap" for m in q.marks)
    }
    assert len(marked) == 2


def test_real_women() -> None:
    for body in ansur_women()[::60]:
        d = draft(
            order(
                body, hung(Straps(), "armhole", Mode.TO_EDGE), estimates=RuleSet.SURVEY
            )
        )
        assert not d.failed, d.failures()


def test_its_edges_and_its_line_are_told_in_words() -> None:
    made = draft(order(BRIDA, hung(Straps(shape=StrapKind.BROAD))))
    strap = next(p for p in pattern(made).drawn.pieces if p.code == "SR")
    said = " ".join(t.text for t in strap.texts)
    assert "back edge" in said
    assert "long edge" in said
    assert "strap over" not in said


def test_its_width_is_not_the_facings() -> None:
    """Whichever of the two an order names first."""
    features = hung(Straps())
    for each in (features, features[::-1]):
        assert draft(order(P92, each)).sheet.length("SR", "front end") == 1.6


def test_it_is_cut_twice_and_caught_in_before_the_edge_is_faced() -> None:
    making = making_order(draft(order(BRIDA, hung(Straps()))))
    cut = {c.code: c for c in cutting_sheet(making).cloths["shell"]}
    assert cut["SR"].count == 2
    titles = [op.title for op in making.operations]
    make, baste = (
        titles.index("Make the straps"),
        titles.index("Baste the straps to the top edge"),
    )
    assert make < baste < titles.index("Face the top edge")


def test_a_child_has_no_cords() -> None:
    """EN 14682, which the caution names; a broad strap is no cord."""
    for kind, said in ((StrapKind.NARROW, True), (StrapKind.BROAD, False)):
        asked = replace(order(BRIDA, hung(Straps(shape=kind))), wearer=Wearer.CHILD)
        hazards = [
            h for op in making_order(draft(asked)).operations for h in op.hazards
        ]
        assert any("EN 14682" in text for text in of_garment(hazards, asked)) == said


@pytest.mark.parametrize(
    ("straps", "code"), [(Straps(width=2.0), "SR1"), (Straps(behind=13.0), "SR2")]
)
def test_what_is_doubted(straps: Straps, code: str) -> None:
    d = draft(order(BRIDA, hung(straps)))
    assert code in {f.code for f in d.findings}


def test_a_strap_needs_a_top_edge() -> None:
    with pytest.raises(OrderError, match="top edge of a strapless bodice"):
        draft(order(BRIDA, (*closed_back(), Straps())))


def test_off_the_edge_is_refused() -> None:
    with pytest.raises(OrderError, match="off the top edge"):
        draft(order(P80, hung(Straps(inner=9.0, shape=StrapKind.BROAD, width=9.0))))
