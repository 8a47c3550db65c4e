"""The bodice block against the check values (corrected tables, trial drafts [NUM]).

Also invariants of the block (blocks A6) on 260 real bodies.
"""

import pytest

from bodies import P80, P92, P116, bdims_women
from clothwright.body import Body
from clothwright.curves import distance
from orders import drafted

BODIES = (P80, P92, P116)
NUMBERS = [
    ("half", (44.00, 50.00, 62.00), 0.01),
    ("xs", (21.60, 24.35, 29.35), 0.01),
    ("yB", (21.30, 22.40, 24.40), 0.01),
    ("bw", (6.74, 7.18, 7.98), 0.01),
    ("nr", (1.89, 2.01, 2.23), 0.01),
    ("dep", (7.66, 8.06, 8.78), 0.1),
    ("dl", (2.81, 3.09, 4.47), 0.05),
    ("theta", (11.71, 11.27, 12.80), 0.2),
    ("sup", (11.50, 12.50, 11.50), 0.01),
    ("a", (1.61, 1.75, 1.61), 0.01),
    ("bd", (3.68, 4.00, 3.68), 0.01),
    ("fd", (4.60, 5.00, 4.60), 0.01),
]


@pytest.mark.parametrize(("key", "values", "t"), NUMBERS)
def test_number(key: str, values: tuple[float, ...], t: float) -> None:
    for body, v in zip(BODIES, values, strict=True):
        assert drafted(body).n[key] == pytest.approx(v, abs=t)


LENGTHS = [
    ("B", "side", (19.57, 18.76, 17.25), 0.05),
    ("F", "dart low", (14.05, 15.78, 20.14), 0.05),
    ("F", "dart high", (14.05, 15.78, 20.14), 0.05),
    ("F", "shoulder", (11.94, 12.38, 13.18), 0.01),
    ("B", "armhole", (20.99, 22.72, 26.10), 0.1),
    ("F", "armhole", (20.25, 22.33, 27.60), 0.1),
]


@pytest.mark.parametrize(("piece", "edge", "values", "t"), LENGTHS)
def test_length(piece: str, edge: str, values: tuple[float, ...], t: float) -> None:
    for body, v in zip(BODIES, values, strict=True):
        assert drafted(body).sheet.length(piece, edge) == pytest.approx(v, abs=t)


POINTS = {
    "hb": ((6.74, -1.89), (7.18, -2.01), (7.98, -2.23)),
    "tb": ((19.60, 2.67), (20.45, 2.69), (22.01, 2.73)),
    "ub": ((21.60, 21.30), (24.35, 22.40), (29.35, 24.40)),
    "wb": ((19.99, 40.80), (22.60, 41.07), (27.74, 41.57)),
    "hf": ((37.56, -2.31), (43.12, -2.65), (54.32, -4.10)),
    "tf": ((26.61, 2.45), (31.77, 2.29), (42.23, 1.16)),
    "BP": ((35.50, 21.65), (40.30, 23.85), (49.90, 27.85)),
    "G": ((21.96, 18.49), (24.94, 19.31), (30.62, 19.93)),
    "U1": ((21.47, 22.47), (24.53, 23.31), (29.98, 24.86)),
    "U2": ((21.93, 25.30), (24.72, 26.40), (29.81, 29.35)),
    "wf": ((23.21, 40.80), (26.10, 41.07), (30.96, 41.57)),
    "pb": ((16.93, 11.98), (18.30, 12.54), (20.80, 13.57)),
    "pf": ((28.47, 11.43), (33.04, 11.82), (43.03, 11.67)),
}


@pytest.mark.parametrize("name", POINTS)
def test_point(name: str) -> None:
    for body, (x, y) in zip(BODIES, POINTS[name], strict=True):
        at = drafted(body).sheet.points[name]
        assert at.x == pytest.approx(x, abs=0.05)
        assert at.y == pytest.approx(y, abs=0.05)


CUPS = [
    (2.5, 8.09, 2.09, 22.73, 21.45),
    (5.0, 11.27, 3.10, 22.72, 22.33),
    (7.5, 14.11, 4.10, 22.70, 23.17),
    (10.0, 16.67, 5.09, 22.67, 23.99),
    (12.5, 19.00, 6.10, 22.66, 24.83),
    (15.0, 21.12, 7.14, 22.66, 25.68),
]


@pytest.mark.parametrize(("c", "theta", "intake", "back", "front"), CUPS)
def test_cup_series(
    c: float, theta: float, intake: float, back: float, front: float
) -> None:
    d = drafted(Body.of({"HT": 165, "HB": 87, "B": 87 + c, "W": 72, "H": 98}))
    assert d.n.theta == pytest.approx(theta, abs=0.1)
    assert distance(d["U1"], d["U2"]) == pytest.approx(intake, abs=0.1)
    assert d.sheet.length("B", "armhole") == pytest.approx(back, abs=0.1)
    assert d.sheet.length("F", "armhole") == pytest.approx(front, abs=0.1)


def test_full_waist_branch() -> None:
    d = drafted(Body.of({"HT": 160, "HB": 105, "B": 112, "W": 112, "H": 116}))
    n = d.n
    assert (n.sup, n.a, n.bd, n.fd) == pytest.approx((2.50, 0.35, 0.0, 1.80), abs=0.01)


def test_dart_transfer() -> None:
    """The whole side dart moved to 24.20 from BP opens 4.75 there (exact given θ)."""
    import math

    half = math.radians(drafted(P92).n.theta) / 2
    assert 2 * 24.20 * math.sin(half) == pytest.approx(4.75, abs=0.02)
    assert 2 * 17.22 * math.sin(half) == pytest.approx(3.38, abs=0.02)


def test_invariants_on_real_bodies() -> None:
    """B1 to B4, B6, B7, B14, B20 of the block on 260 women (bdims)."""
    for body in bdims_women():
        d = drafted(body)
        n, f, b = d.n, d.sheet.piece("F"), d.sheet.piece("B")
        assert n.xs + (n.X - n.xs) == pytest.approx((n.B + n.Eb) / 2, abs=0.05)
        waist = sum(
            p.edge(e).length
            for p, e in (
                (f, "waist"),
                (f, "waist side"),
                (b, "waist"),
                (b, "waist side"),
            )
        )
        assert waist == pytest.approx((n.W + n.Ew) / 2, abs=0.05)
        side = f.edge("side high").length + f.edge("side low").length
        assert side == pytest.approx(b.edge("side").length, abs=0.05)
        assert f.edge("dart low").length == pytest.approx(
            f.edge("dart high").length, abs=0.05
        )
        neck = f.edge("neck").length + b.edge("neck").length
        assert neck == pytest.approx(n.N / 2 + 0.25, abs=0.01)
        assert f.interior_angle("neck") == pytest.approx(90.0, abs=1.0)
        over_bust = distance(d["hf"], d["BP"]) + n.yW - n.y_BP
        assert over_bust == pytest.approx(n.NFW, abs=0.05)
        assert distance(d["G"], d["U1"]) >= 2.5
        assert distance(d["U2"], d["wf"]) >= 5.0
