"""The straight skirt against its check values (check values corrected, §7), and the
demo's order 3 against its hand arithmetic (demo scenario §5)."""

import pytest

from bodies import P80, P92, P116, THEA
from clothwright.blocks import skirt
from clothwright.blocks.skirt_curves import Half, Plan
from clothwright.blocks.skirt_darts import open_darts
from clothwright.body import Body
from clothwright.curves import Path, Point, degrees_between, distance
from clothwright.features import Feature
from clothwright.features.skirts.straight_skirt import StraightSkirt
from clothwright.order import Draft, draft
from orders import order, straight_skirt

MM = 0.1

CHECKED = {
    # key: P80, P92, P116, tolerance (cm)
    "half_S": (46.00, 51.00, 63.00, 0.05),
    "xs_S": (22.75, 25.25, 31.25, 0.05),
    "sup_S": (14.00, 14.00, 13.00, 0.05),
    "a_S": (3.08, 3.08, 2.86, 0.05),
    "ex_S": (0.25, 0.24, 0.21, 0.05),
    "bd_set": (5.01, 5.01, 4.64, 0.05),
    "fd_set": (3.08, 3.08, 2.85, 0.05),
}


def made(body: Body, *swaps: Feature) -> Draft:
    return draft(order(body, straight_skirt(*swaps)))


@pytest.mark.parametrize("i", range(3))
@pytest.mark.parametrize("key", CHECKED)
def test_numbers(key: str, i: int) -> None:
    n = made((P80, P92, P116)[i]).numbers
    assert n[key] == pytest.approx(CHECKED[key][i], abs=CHECKED[key][3])


@pytest.mark.parametrize(
    ("body", "net", "side", "girth", "high_hip"),
    [
        (P80, 32.00, 22.08, 85.45, 79.68),
        (P92, 37.00, 22.08, 95.45, 89.68),
        (P116, 50.00, 22.05, 119.92, 114.32),
    ],
)
def test_drawn(
    body: Body, net: float, side: float, girth: float, high_hip: float
) -> None:
    """The waist and the side as they lie on the paper; the girth at half the hip depth
    with the darts of a half taken as one, back 13.5 deep and front 9 (A9)."""
    d = made(body)
    n, sheet = d.numbers, d.sheet
    waist = sum(
        e.length
        for code in (skirt.BACK, skirt.FRONT)
        for e in sheet.piece(code).edges
        if e.name.startswith("waist")
    )
    assert waist == pytest.approx(net, abs=0.05)
    for code in (skirt.BACK, skirt.FRONT):
        path = sheet.edge(code, "side").path
        hip = sheet.points["Hbs" if code == skirt.BACK else "Hfs"]
        at = path.length_to_point(hip)
        down = at if code == skirt.BACK else path.length - at
        assert down == pytest.approx(side, abs=0.05)
    assert pytest.approx(high_hip, abs=0.05) == n.HH
    level = n.WH / 2
    round_ = 2 * sum(
        _across(half, level) - open_darts(Plan((0.0,), (darts,), (deep,)), top, level)
        for half, darts, deep, top in (
            (skirt.back_half(n), n.bd_set, 13.5, n.db_S),
            (skirt.front_half(n), n.fd_set, 9.0, n.df_S),
        )
    )
    assert round_ == pytest.approx(girth, abs=0.3)


def _across(half: Half, y: float) -> float:
    ruler = Path.line(Point(-50.0, y), Point(100.0, y))
    side = half.side()
    return side.at_length(side.meets(ruler)[0][0]).x


def test_the_demo_order() -> None:
    """Order 3: half 48.50, xs 24.00, sup 14.50, sides 3.19, back 5.03, front 3.09."""
    n = made(THEA).numbers
    found = (n.half_S, n.xs_S, n.sup_S, n.a_S, n.bd_S, n.fd_S)
    assert found == pytest.approx((48.5, 24.0, 14.5, 3.19, 5.03, 3.09), abs=0.006)


@pytest.mark.parametrize("body", [P80, P92, P116, THEA])
def test_darts(body: Body) -> None:
    """Legs are equal (K4), the point stands square to the mouth's middle, at least 2.5
    above the hip (C8); folded, the waist runs on (K5) and is square to the legs."""
    d = made(body)
    for seam in d.sheet.seams:
        if "dart" not in seam.code:
            continue
        (a,), (b,) = seam.left, seam.right
        left, right = (d.sheet.run_path(r) for r in (a, b))
        assert left.length == pytest.approx(right.length, abs=0.01 * MM)
        assert left.end.y <= d.numbers.WH - 2.5 + 0.1 * MM
        assert 1.0 <= distance(left.start, right.start) <= 3.8 + 0.1
        piece = d.sheet.piece(a.piece)
        for run, leg in ((a, left), (b, right)):
            edge = piece.edge(run.edge)
            first = edge.path.start == leg.start
            beside = piece.before(run.edge) if first else piece.after(run.edge)
            way = beside.path.end_direction if first else beside.path.start_direction
            assert degrees_between(way, leg.start_direction) == pytest.approx(
                90.0, abs=0.1
            )


def test_a_flared_side_keeps_the_hem_even() -> None:
    """Side and centre are as long below the hip (G9), the hem square to both (K6)."""
    d = made(P92, StraightSkirt(flare=6.0))
    n, sheet = d.numbers, d.sheet
    side = sheet.edge(skirt.BACK, "side").path
    below = side.length - side.length_to_point(sheet.points["Hbs"])
    assert below == pytest.approx(n.L - n.WH, abs=0.1 * MM)
    assert sheet.piece(skirt.BACK).interior_angle("side") == pytest.approx(90, abs=0.1)
    assert sheet.piece(skirt.FRONT).interior_angle("cf") == pytest.approx(90, abs=0.1)
    for code in (skirt.BACK, skirt.FRONT):
        low = max(p.y for p in sheet.edge(code, "hem").path.flatten(0.001))
        assert low <= n.L + 0.5 * MM  # it does not dip
    assert n.hem_S > 2 * n.half_S + 4 * 5.5
