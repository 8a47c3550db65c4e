"""A dress whose fronts cross from shoulder to hem (transformations 2, blocks G; common
practice, no source)."""

import math

import pytest

from bodies import P92, THEA, YSOLDE, ansur_whole
from clothwright.body import Body
from clothwright.curves import distance
from clothwright.features import Feature
from clothwright.features.linings.jump_pleat import JumpPleat
from clothwright.features.linings.lining import Lining, Mode
from clothwright.features.necks.necklines import Neckline
from clothwright.features.necks.wrap_front import WrapFront
from clothwright.features.openings.concealed_zip import ConcealedZip
from clothwright.features.skirts.dress_skirt import Cut, DressSkirt, Front
from clothwright.findings import Severity
from clothwright.making import making_order
from clothwright.making.cutting import cutting_sheet
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.paper import EdgeKind
from clothwright.units import Unit
from features.necks.test_wrap_front import sleeved, wrapped
from making.test_order import complete
from orders import order

MM = 0.1
FLARED = DressSkirt(front=Front.WRAPS)
GATHERED = DressSkirt(front=Front.WRAPS, cut=Cut.GATHERED)


def dress(
    skirt: DressSkirt,
    *more: Feature,
    wrap: WrapFront | None = None,
    sleeves: bool = False,
) -> tuple[Feature, ...]:
    """A wrap dress without any other closing; `more` is added."""
    usual = (sleeved if sleeves else wrapped)(wrap or WrapFront())
    kept = (f for f in usual if f.kind not in ("concealed zip", "peplum"))
    return (*kept, skirt, *more)


def sound(body: Body, features: tuple[Feature, ...], unit: Unit = Unit.CM) -> Draft:
    d = draft(order(body, features, unit=unit))
    assert not d.failed, d.failures()
    return d


@pytest.mark.parametrize("crossing", [8.0, 12.0, None])
@pytest.mark.parametrize("body", [P92, THEA, YSOLDE], ids=lambda b: b.client)
def test_a_flared_skirt_runs_on_beyond_the_centre(
    body: Body, crossing: float | None
) -> None:
    """By the bodice's crossing, cut smaller by what the bias yields as the rest of its
    waist is; its edge runs to the centre of the arcs, so that the hem of what crosses
    is longer as (r + L)/r (G2, exact)."""
    d = sound(body, dress(FLARED, wrap=WrapFront(crossing=crossing)))
    n, front = d.numbers, d.sheet.piece("PF")
    over, edge = front.edge("waist over").path, front.edge("front edge").path
    assert over.length == pytest.approx(n.wx * n.wc / (2 * (n.w_F + n.w_PB)))
    assert edge.length == pytest.approx(n.L)
    for p, r in ((edge.start, n.r), (edge.end, n.r + n.L)):
        assert math.hypot(p.x, p.y) == pytest.approx(r)
    half = math.radians(n.phi_F) * n.r_hem
    hem = half + over.length * n.r_hem / n.r
    assert front.edge("hem").length == pytest.approx(hem, abs=0.1 * MM)
    assert front.fold is None and front.edge("front edge").kind is EdgeKind.FINISHED


def test_a_gathered_skirt_runs_on_too() -> None:
    d = sound(P92, dress(GATHERED))
    n, front = d.numbers, d.sheet.piece("PF")
    assert front.edge("waist over").length == pytest.approx(n.wx * n.g)
    assert front.edge("hem").length == pytest.approx((n.w_F + n.wx) * n.g)


@pytest.mark.parametrize("skirt", [FLARED, GATHERED], ids=lambda s: s.cut.value)
def test_the_edges_run_on(skirt: DressSkirt) -> None:
    """The bodice's edge ends where the skirt's begins: what lies beyond the centre is
    sewn to what lies beyond it, and no front is laid on the other there."""
    d = sound(THEA, dress(skirt))
    n, sheet = d.numbers, d.sheet
    seam = sheet.seam("S124")
    left, right = (sheet.chain_length(c) for c in (seam.left, seam.right))
    assert left == pytest.approx(n.wx, abs=0.1 * MM)
    assert right == pytest.approx(
        n.wx * (n.g if skirt.gathered else n.wc / (2 * (n.w_F + n.w_PB))), abs=0.1 * MM
    )
    codes = {s.code for s in sheet.seams}
    assert {"S5", "S6", "S62", "S124"} <= codes and "S61" not in codes
    f, pf = sheet.piece("F"), sheet.piece("PF")
    ends = f.edge("neck").path.end, sheet.run_path(seam.left[0]).end
    assert distance(*ends) < 1e-6
    assert pf.edge("front edge").path.start == sheet.run_path(seam.right[0]).end


def test_the_long_tie_reaches_round_the_back() -> None:
    """From wx right of the centre round the back to wx left of it, and its bow."""
    d = sound(P92, dress(DressSkirt(front=Front.WRAPS, bow=50.0)))
    n = d.numbers
    long = d.sheet.length("WU", "long edge")
    assert long == pytest.approx(2 * (n.w_F + n.w_B) - 2 * n.wx + 50.0)
    assert d.sheet.length("WT", "long edge") == 50.0


@pytest.mark.parametrize("k", [0, 150, 331, 512, 770, 940])
def test_real_bodies(k: int) -> None:
    """Fronts of bodice and skirt are pairs, the backs on the fold; no zip is bought;
    the tape of the waist is as long as that is from edge to edge."""
    skirt, unit = (FLARED, GATHERED)[k % 2], list(Unit)[k // 2 % 2]
    d = sound(ansur_whole()[k], dress(skirt, sleeves=k % 3 == 0), unit)
    n, making = d.numbers, making_order(d)
    complete(making)
    sheet = cutting_sheet(making)
    cut = {p.code: p.how for p in sheet.cloths["shell"]}
    assert cut["F"] == cut["PF"] == "2 (1 pair)"
    assert cut["PB"] == "1 on fold" and cut["WT"] == cut["WU"] == "1"
    bought = {one.article.value: one for one in sheet.notions}
    assert not any("zip" in what for what in bought)
    waist = [one for one in sheet.notions if one.where == "for the waist"]
    assert [one.length for one in waist] == [pytest.approx(n.w + 2 * n.wx)]
    told = [op.title for op in making.operations]
    assert told.index("Hem the front edges of the skirt") < told.index("Sew the waist")
    assert "Lay the fronts over each other" not in told
    found = pattern(d, words=False).findings
    assert not [f for f in found if f.severity is Severity.REFUSE]


@pytest.mark.parametrize("how", ["below", "below, sleeves", "to the edge"])
@pytest.mark.parametrize("skirt", [FLARED, GATHERED], ids=["flared", "gathered"])
@pytest.mark.parametrize("body", [P92, THEA, YSOLDE], ids=lambda b: b.client)
def test_it_is_lined(body: Body, skirt: DressSkirt, how: str) -> None:
    """In the skirt to 0.5 cm inside the front edge, on its hem; at the waist beyond the
    centre to the bodice's lining and the foot of its facing, both of which end inside
    the bodice's edge by the roll."""
    lining = Lining(mode=Mode.TO_EDGE if how == "to the edge" else Mode.BELOW_FACING)
    features = dress(skirt, lining, sleeves=how == "below, sleeves")
    if how == "to the edge":
        features = tuple(f for f in features if f.kind != "facing")
    d = sound(body, features)
    n, sheet = d.numbers, d.sheet
    shell, lined = (sheet.piece(c).edge("front edge").path for c in ("PF", "L.PF"))
    for share in (0.1, 0.5, 0.9):
        at = lined.at_length(share * lined.length)
        assert shell.nearest(at)[1] == pytest.approx(0.5, abs=0.1 * MM)
    s = sheet.seam("LS124")
    left, right = (sheet.chain_length(c) for c in (s.left, s.right))
    roll = (n.rho_l if how == "to the edge" else n.rho) / math.sin(
        math.radians(sheet.piece("F").interior_angle("neck"))
    )
    assert left == pytest.approx(n.wx - roll, abs=MM)
    assert right == pytest.approx(sheet.length("PF", "waist over") - 0.5, abs=MM)
    making = making_order(d)
    complete(making)
    told = [op.title for op in making.operations]
    done = ["Sew the waist", "Fell the lining to the front edges of the skirt"]
    assert [t for t in told if t in (*done, "Hem the lining")] == [
        *done,
        "Hem the lining",
    ]
    found = pattern(d, words=False).findings
    assert not [f for f in found if f.severity is Severity.REFUSE]


@pytest.mark.parametrize(
    ("features", "said"),
    [
        (dress(FLARED, ConcealedZip()), "closes by them"),
        (dress(GATHERED, Lining(), JumpPleat()), "the lining hangs free"),
        (
            (*(f for f in dress(FLARED) if f.kind != "wrap front"), Neckline()),
            'add a "wrap front"',
        ),
    ],
)
def test_refusals(features: tuple[Feature, ...], said: str) -> None:
    with pytest.raises(OrderError) as e:
        draft(order(P92, features))
    assert said in str(e.value)


def test_a_skirt_on_the_fold_has_no_use_for_ties() -> None:
    usual = wrapped(WrapFront())
    kept = tuple(f for f in usual if f.kind != "peplum")
    d = draft(order(P92, (*kept, DressSkirt(bow=50.0))))
    assert any(f.code == "Q5" and "bow" in str(f) for f in d.findings)
    assert "S61" in {s.code for s in d.sheet.seams}
