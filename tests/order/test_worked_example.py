"""The demo order against the trade notes' own figures.

Rows 1 to 40 of the worked example (hand arithmetic in inches; tolerance 0.005 cm) and
the check values of the first garment (trial drafts; 0.05 cm, curves 0.1 cm, angles
0.2°), both for a body of check values and for the demo's first client.
"""

from functools import cache
from importlib import resources
from pathlib import Path

import pytest

from bodies import BRIDA, P92
from clothwright.curves import distance
from clothwright.order import Draft, draft, read_order
from clothwright.units import Unit
from orders import main_features, order

INCH = 2.54


@cache
def demo() -> Draft:
    with resources.as_file(resources.files("clothwright.demo")) as folder:
        return draft(read_order(Path(folder) / "peplum-top.toml"))


@cache
def p92() -> Draft:
    features = main_features(ease=0.0, given_back=False)
    return draft(order(P92, features))


@cache
def c1() -> Draft:
    features = main_features(ease=0.0, given_back=False)
    return draft(order(BRIDA, features, unit=Unit.IN))


ROWS = [
    (1, "half", 19.2500),
    (2, "c", 2.0000),
    (3, "s", 0.2638),
    (4, "xs", 9.3612),
    (5, "front_half", 9.8888),
    (7, "sup", 4.2500),
    (8, "a", 0.5950),
    (9, "bd", 1.3600),
    (10, "fd", 1.7000),
    (11, "w_F", 7.5938),
    (14, "Dm", 7.0833),
    (15, "bw", 2.8319),
    (16, "nr", 0.7929),
    (17, "dl", 1.3626),
    (19, "y_BP", 9.3750),
    (22, "xd", 3.7281),
    (25, "w_half", 14.0000),
    (26, "S", 4.6250),
    (27, "Lr", 2.3125),
    (28, "Lrb", 2.4375),
    (28, "se_left", 0.1250),
    (31, "y1", 5.2071),
    (32, "slant", 11.0881),
    (33, "u", 10.3381),
    (33, "spacing", 1.0338),
    (34, "v_cord", 1.1244),
    (34, "cord_cut", 2.1244),
    (34, "cord_all", 51.41),
    (35, "up_top", 2.75),
    (35, "up_waist", 1.75),
    (36, "up_height", 12.5429),
    (37, "w", 28.0),
    (37, "r", 8.8729),
    (38, "r_hem", 14.8729),
    (38, "hem", 46.7246),
    (40, "room", 40.566),
]
ANGLES = [
    (18, "SS", 22.024),
    (18, "sigma_f", 24.024),
    (18, "sigma_b", 20.024),
    (29, "phi_f", 12.413),
    (29, "phi_b", 5.879),
    (29, "sigma_f_new", 11.612),
    (29, "sigma_b_new", 14.145),
    (39, "phi_F", 48.817),
    (39, "phi_B", 41.183),
]


@pytest.mark.parametrize(("row", "key", "inches"), ROWS)
def test_row_of_the_worked_example(row: int, key: str, inches: float) -> None:
    assert demo().numbers[key] == pytest.approx(inches * INCH, abs=0.005)


@pytest.mark.parametrize(("row", "key", "degrees"), ANGLES)
def test_angle_of_the_worked_example(row: int, key: str, degrees: float) -> None:
    assert demo().numbers[key] == pytest.approx(degrees, abs=0.002)


def test_rows_that_are_sums_or_measured_on_the_paper() -> None:
    n, sheet = demo().numbers, demo().sheet
    tol = 0.005
    assert n.w_F + n.w_B + n.e2 == pytest.approx(15.0 * INCH, abs=tol)  # 6, 13
    assert n.xs - n.a - n.bd == pytest.approx(7.4062 * INCH, abs=tol)  # 12
    assert n.BPS / 2 - n.fd / 2 == pytest.approx(2.9625 * INCH, abs=tol)  # 20
    assert n.w_F - (n.BPS / 2 - n.fd / 2) == pytest.approx(4.6313 * INCH, abs=tol)
    assert n.xd - n.bd / 2 - n.e2 == pytest.approx(2.0481 * INCH, abs=tol)  # 23
    back = n.xs - n.a - n.bd - (n.xd - n.bd / 2)
    assert back == pytest.approx(4.3581 * INCH, abs=tol)  # 24
    leg = ((n.yW - n.y_BP) ** 2 + (n.fd / 2) ** 2) ** 0.5
    assert leg == pytest.approx(6.9273 * INCH, abs=tol)  # 30
    assert int(n.n_loops) == 11  # 33
    assert int(n.loops_all) == 22
    outer = sheet.piece("UP").edge("outer").length + n.tl
    assert outer == pytest.approx(12.5881 * INCH, abs=tol)  # 36
    front, back_arc = sheet.length("PF", "waist"), sheet.length("PB", "waist")
    assert front == pytest.approx(7.5599 * INCH, abs=tol)  # 39
    assert back_arc == pytest.approx(6.3776 * INCH, abs=tol)
    assert sheet.length("BC", "slant") == pytest.approx(11.0881 * INCH, abs=tol)
    assert sheet.length("BC", "shoulder") == pytest.approx(2.4375 * INCH, abs=tol)


def test_deeper_back_as_the_demo_tells_it(tmp_path: Path) -> None:
    """Do 6 to 7: ten loops a side, 1.0381 apart (exact)."""
    with resources.as_file(resources.files("clothwright.demo")) as folder:
        text = (Path(folder) / "peplum-top.toml").read_text("utf8")
        (tmp_path / "brida.toml").write_text((Path(folder) / "brida.toml").read_text())
    (tmp_path / "deep.toml").write_text(text.replace("\ndepth = 6\n", "\ndepth = 7\n"))
    n = draft(read_order(tmp_path / "deep.toml")).numbers
    assert n.slant == pytest.approx(10.0926 * INCH, abs=0.001)
    assert int(n.n_loops) == 10
    assert n.spacing == pytest.approx(1.0381 * INCH, abs=0.001)


NUMBERS = [
    ("Dm", 17.873, 17.992, 0.01),
    ("yB", 21.706, 22.068, 0.01),
    ("theta", 11.91, 13.13, 0.2),
    ("kappa", 26.79, 27.23, 0.2),
    ("Lr", 5.690, 5.874, 0.01),
    ("Lrb", 5.940, 6.191, 0.01),
    ("sigma_f_new", 10.38, 11.61, 0.2),
    ("sigma_b_new", 13.71, 14.14, 0.2),
    ("ex", -0.105, -0.095, 0.05),
    ("slant", 28.20, 28.16, 0.05),
]


@pytest.mark.parametrize(("key", "p", "c", "t"), NUMBERS)
def test_number_of_the_first_garment(key: str, p: float, c: float, t: float) -> None:
    assert p92().numbers[key] == pytest.approx(p, abs=t)
    assert c1().numbers[key] == pytest.approx(c, abs=t)


POINTS = [
    ("Tf", (31.18, 1.89), (31.27, 1.75)),
    ("Tb", (18.38, 1.96), (18.83, 2.23)),
    ("Nf′", (36.78, 0.86), (37.03, 0.57)),
    ("Nb′", (12.61, 0.55), (12.82, 0.71)),
    ("C", (48.50, 5.35), (48.90, 4.91)),
    ("Qf", (31.98, 11.26), (32.07, 11.19)),
    ("Qb", (18.08, 11.83), (18.53, 12.15)),
]


@pytest.mark.parametrize(("name", "p", "c"), POINTS)
def test_point_of_the_first_garment(
    name: str, p: tuple[float, float], c: tuple[float, float]
) -> None:
    for made, aim in ((p92(), p), (c1(), c)):
        at = made.sheet.points[name]
        assert at.x == pytest.approx(aim[0], abs=0.05)
        assert at.y == pytest.approx(aim[1], abs=0.05)


EDGES = [
    ("FC.neck", 13.30, 13.35),
    ("FC.panel", 32.36, 32.80),
    ("BC.panel", 33.75, 33.89),
    ("FC.armhole", 9.42, 9.49),
    ("FS.armhole", 12.17, 12.15),
    ("BC.armhole", 9.91, 9.96),
    ("BS.armhole", 12.26, 12.13),
    ("FS.side", 19.64, 19.46),
    ("FC.waist", 7.42, 7.50),
    ("FS.waist", 11.34, 11.73),
    ("BS.waist", 10.85, 11.05),
    ("BC.waist", 5.04, 5.19),
    ("BC.neck", 14.84, 14.97),
    ("BC.slant", 28.20, 28.16),
    ("FC.shoulder", 5.69, 5.87),
]


@pytest.mark.parametrize(("edge", "p", "c"), EDGES)
def test_edge_of_the_first_garment(edge: str, p: float, c: float) -> None:
    piece, name = edge.split(".")
    assert p92().sheet.length(piece, name) == pytest.approx(p, abs=0.1)
    assert c1().sheet.length(piece, name) == pytest.approx(c, abs=0.1)


def test_bust_dart_opening_at_the_panel_start() -> None:
    for made, aim in ((p92(), 2.97), (c1(), 3.32)):
        gap = distance(made.sheet.points["Qf"], made.sheet.points["Q2"])
        assert gap == pytest.approx(aim, abs=0.05)
        corner = made.sheet.piece("BC").interior_angle("slant")
        assert corner == pytest.approx(135.9, abs=0.2)


def test_every_seam_of_the_demo_meets() -> None:
    assert not demo().failed
    assert all(w.severity is None for w in demo().report.walks)
