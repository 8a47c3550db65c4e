"""A zip that separates, down the whole front or back (transformations §6 and §7)."""

import pytest

from bodies import P92, THEA, ansur_whole
from clothwright.body import Body
from clothwright.features import Feature
from clothwright.features.bodice.torso import Torso
from clothwright.features.collars.shirt_collar import ShirtCollar
from clothwright.features.linings.jump_pleat import JumpPleat
from clothwright.features.linings.lining import Lining
from clothwright.features.necks.cowl import Cowl
from clothwright.features.notions import Article
from clothwright.features.openings.button_stand import Where
from clothwright.features.openings.open_zip import OpenZip
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft
from clothwright.order.pattern import finishing_of
from clothwright.paper import EdgeKind
from orders import cut_faults, order, sleeved_features, swapped

MM = 0.1
WOMEN = (P92, THEA, *ansur_whole()[::300])


def zipped(where: Where = Where.FRONT, *more: Feature) -> tuple[Feature, ...]:
    """A sleeved top with a peplum whose whole front, or back, a zip opens."""
    new = OpenZip(where=where)
    return (*swapped(sleeved_features(), new, place_of="concealed zip"), *more)


def blouson(*more: Feature, length: float = 25.0) -> tuple[Feature, ...]:
    """The same in one through the waist."""
    top = swapped(zipped(), Torso(length=length), place_of="waist seam")
    return (*(f for f in top if f.kind != "peplum"), *more)


def zip_of(d: Draft) -> float:
    (one,) = [
        k
        for f in d.order.features
        for k in f.notions(d.numbers, d.sheet)
        if k.article is Article.OPEN_ZIP
    ]
    assert one.length is not None
    return one.length


@pytest.mark.parametrize("where", Where)
@pytest.mark.parametrize("body", WOMEN, ids=lambda b: b.client)
def test_the_edges_meet_at_the_centre(body: Body, where: Where) -> None:
    """§7: subtract nothing from the width: the opened front is the closed one's paper,
    its centre an edge that is sewn; the facing is as long."""
    closed = draft(order(body, sleeved_features()))
    d = draft(order(body, zipped(where)))
    assert not d.failed, d.failures()
    assert not cut_faults(d)
    front = where is Where.FRONT
    for code in ("FC", "PF") if front else ("PB",):
        p, was = d.sheet.piece(code), closed.sheet.piece(code)
        assert p.area == pytest.approx(was.area, rel=1e-6)
        assert p.edge("stand").kind is EdgeKind.SEAM
        assert p.fold is None
    for code in ("S70", "S71") if front else ("S73", "S74"):
        (w,) = [w for w in d.report.walks if w.seam.code == code]
        assert abs(w.ease) < 0.1 * MM


@pytest.mark.parametrize("where", Where)
def test_length_of_the_zip(where: Where) -> None:
    """From 0.5 below the neck (first garment 16.3) to 0.3 above the hem."""
    d = draft(order(THEA, zipped(where)))
    codes = ("FC", "PF") if where is Where.FRONT else ("BC", "PB")
    edge = sum(d.sheet.length(c, "stand") for c in codes)
    assert zip_of(d) == pytest.approx(edge - 0.8, abs=0.1 * MM)
    d = draft(order(THEA, blouson()))
    assert zip_of(d) == pytest.approx(d.sheet.length("FC", "stand") - 0.8, abs=0.1 * MM)
    assert "OZ1" not in {f.code for f in d.findings}
    long = draft(order(THEA, blouson(length=60.0)))
    assert zip_of(long) > 80.0 and "OZ1" in {f.code for f in long.findings}


def test_allowance_of_its_edges() -> None:
    """§7: 1.5 to 2 beside a zip; 1.5 on shell and facing."""
    d = draft(order(P92, zipped()))
    allowed = finishing_of(d).allowances
    for code in ("FC", "PF", "FF", "FFP"):
        assert allowed.of(d.sheet.piece(code), "stand") == pytest.approx(1.5)


@pytest.mark.parametrize("more", [(), (Lining(),), (ShirtCollar(),)])
def test_it_is_made(more: tuple[Feature, ...]) -> None:
    for features in (zipped(Where.FRONT, *more), blouson(*more)):
        d = draft(order(THEA, features))
        assert not d.failed, d.failures()
        assert not cut_faults(d)
        ops = making_order(d).operations
        told = [s for o in ops for s in o.seams]
        assert {s.code for s in d.sheet.seams} == set(told)
        assert len(told) == len(set(told))
        titles = [o.title for o in ops]
        put = next(i for i, t in enumerate(titles) if "separating zip" in t)
        assert titles.index("Stitch the front facings across at the hem") < put
        if "S70" in told and any(f.kind == "peplum" for f in features):
            assert titles.index("Sew the waist") < put


@pytest.mark.parametrize("body", WOMEN, ids=lambda b: b.client)
@pytest.mark.parametrize("where", Where)
def test_no_notch_lies_at_the_joint_of_lining_and_facing(
    where: Where, body: Body
) -> None:
    d = draft(order(body, zipped(where, Lining())))
    assert not d.failed, d.failures()
    assert not [str(f) for f in d.findings if f.code == "notch"]


@pytest.mark.parametrize(
    ("features", "says"),
    [
        (swapped(zipped(), Cowl(), place_of="neckline"), "cowl"),
        ((*blouson(Lining()), JumpPleat()), "lining hangs free"),
    ],
)
def test_what_does_not_go_with_it(features: tuple[Feature, ...], says: str) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(P92, features))
