"""Alterations of trousers after a fitting: what is let out is measured again on the
paper."""

import math

import pytest

from bodies import P92
from clothwright.curves import Point, distance
from clothwright.order import Draft, draft
from features.sleeves.test_block_alterations import MM, by_word, cm, waist
from orders import order, trouser_features

# -- trousers --------------------------------------------------------------------------
PLAIN_TROUSERS = draft(order(P92, trouser_features()))


def moved(d: Draft, mark: str, about: str) -> tuple[float, float]:
    """How far a mark has gone, seen from another: towards the fork or the centre, and
    down."""
    out = []
    for of in (d, PLAIN_TROUSERS):
        a, o = of.sheet.points[mark], of.sheet.points[about]
        out.append(((a.x - o.x) * (1 if about == "Of" else -1), a.y - o.y))
    return out[0][0] - out[1][0], out[0][1] - out[1][1]


@pytest.mark.parametrize(("word", "sign"), [("long rise", 1), ("short rise", -1)])
def test_the_rise_moves_the_waist_and_the_hip_by_a_third(word: str, sign: int) -> None:
    by = 1.2
    d = by_word(word, by)
    for mark, about, share in (
        ("Cf", "Of", 1.0),
        ("Cb", "Ob", 1.0),
        ("Hfs", "Of", 1 / 3),
        ("Hbs", "Ob", 1 / 3),
        ("Ff", "Of", 0.0),
    ):
        x, y = moved(d, mark, about)
        assert y == pytest.approx(-sign * by * share, abs=0.1 * MM), mark
        if mark[0] in "CF" and mark != "Cb":
            assert x == pytest.approx(0.0, abs=0.1 * MM)
    for code in ("TF", "TB"):
        assert waist(d, code) == pytest.approx(waist(PLAIN_TROUSERS, code), abs=MM / 2)


FORKS = {
    "longer front fork": (1.0, 0.0),
    "shorter front fork": (-1.0, 0.0),
    "longer back fork": (0.0, 1.0),
    "shorter back fork": (0.0, -1.0),
    "full thighs": (0.3, 0.7),
    "thin thighs": (-0.3, -0.7),
}


@pytest.mark.parametrize("word", FORKS)
def test_a_fork_goes_out_alone(word: str) -> None:
    """Centre front, side, knee and crease stay; the inseams fit again (truing: the
    back is stretched by st)."""
    by = 1.0
    d = by_word(word, by)
    for mark, about, share in (
        ("Ff", "Of", FORKS[word][0]),
        ("Fb", "Ob", FORKS[word][1]),
    ):
        assert moved(d, mark, about)[0] == pytest.approx(share * by, abs=0.1 * MM)
    for mark in ("Cf", "Hfs", "Kfi", "Mfs"):
        assert moved(d, mark, "Of") == pytest.approx((0.0, 0.0), abs=0.1 * MM)
    for mark in ("Cb", "Hbs", "Kbi", "Mbs"):
        assert moved(d, mark, "Ob") == pytest.approx((0.0, 0.0), abs=0.1 * MM)
    apart = cm(d, "TF.inseam") - cm(d, "TB.inseam")
    assert apart == pytest.approx(d.numbers["st"], abs=0.2 * MM)


@pytest.mark.parametrize(
    ("word", "sign"), [("full seat of trousers", 1), ("flat seat of trousers", -1)]
)
def test_a_seat_of_trousers_turns_about_the_side_at_the_hip(
    word: str, sign: int
) -> None:
    """A chord of `by` at the hip's width; the waist point turns by the same angle."""
    by = 1.2
    d, was = by_word(word, by), PLAIN_TROUSERS.sheet.points
    angle = sign * 2 * math.asin(by / (2 * PLAIN_TROUSERS.numbers["hip_B"]))
    side, q = was["Hbs"], was["Cb"]  # the centre back lies at the left of the side
    x, y = q.x - side.x, q.y - side.y
    to = (
        side.x + x * math.cos(angle) - y * math.sin(angle),
        side.y + x * math.sin(angle) + y * math.cos(angle),
    )
    assert distance(d.sheet.points["Cb"], Point(*to)) < 0.2 * MM
    assert waist(d, "TB") == pytest.approx(waist(PLAIN_TROUSERS, "TB"), abs=MM / 2)
    assert cm(d, "TB.side") == pytest.approx(cm(PLAIN_TROUSERS, "TB.side"), abs=MM)


def test_a_gaping_waist_goes_into_the_back_darts() -> None:
    by = 0.8
    d = by_word("close back waist", by)
    less = waist(PLAIN_TROUSERS, "TB") - waist(d, "TB")
    assert less == pytest.approx(by, abs=MM / 2)
    assert waist(d, "TF") == pytest.approx(waist(PLAIN_TROUSERS, "TF"), abs=0.1 * MM)
    more = d.numbers["bd_T"] - PLAIN_TROUSERS.numbers["bd_T"]
    assert more == pytest.approx(by)


@pytest.mark.parametrize(("word", "sign"), [("full calves", 1), ("thin calves", -1)])
def test_calves_move_at_every_seam(word: str, sign: int) -> None:
    by = 0.5
    d = by_word(word, by)
    for b, about in (("f", "Of"), ("b", "Ob")):
        for level in "KM":
            assert moved(d, f"{level}{b}i", about)[0] == pytest.approx(sign * by)
            assert moved(d, f"{level}{b}s", about)[0] == pytest.approx(-sign * by)
        assert moved(d, f"H{b}s", about) == pytest.approx((0.0, 0.0), abs=0.1 * MM)


@pytest.mark.parametrize(("word", "sign"), [("long legs", 1), ("short legs", -1)])
def test_legs_grow_below_the_knee_or_on_both_sides_of_it(word: str, sign: int) -> None:
    for by, at_knee in ((1.2, 0.0), (4.0, 2.0)):
        d = by_word(word, by)
        assert not d.failed, d.failures()
        for b, about in (("f", "Of"), ("b", "Ob")):
            assert moved(d, f"M{b}i", about) == pytest.approx((0.0, sign * by))
            knee = moved(d, f"K{b}i", about)
            assert knee == pytest.approx((0.0, sign * at_knee), abs=1e-6)
