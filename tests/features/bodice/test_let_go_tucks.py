"""Tucks of the front stitched part of the way and let go (transformations 1.6, 10)."""

from random import Random

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, ansur_whole
from clothwright.body import Body
from clothwright.curves import degrees_between
from clothwright.features import Feature
from clothwright.features.bodice.bust_dart import BustDart
from clothwright.features.bodice.bust_dart_rules import TakenUp
from clothwright.features.bodice.front_dart import DartPlace
from clothwright.features.bodice.front_tucks import FrontTucks
from clothwright.features.bodice.torso import Torso
from clothwright.features.linings.lining import Mode
from clothwright.features.skirts.hem_facing import HemFacing
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft
from clothwright.paper import Piece
from making.test_order import complete
from orders import closed_back, cut_faults, order, swapped

MM = 0.1
LINES = ("armhole", "shoulder", "darts")
LET_GO = FrontTucks(count=4, depth=0.4, apart=0.8, stitched=22.0)


def front(made: Draft) -> Piece:
    return made.sheet.piece("FC" if "FC" in made.sheet.pieces else "F")


def tucked(
    lines: str, tucks: FrontTucks = LET_GO, mode: Mode | None = None
) -> tuple[Feature, ...]:
    return (*closed_back(lines=lines, lining=mode), tucks)


def in_one(lines: str, *more: Feature) -> tuple[Feature, ...]:
    usual = (f for f in tucked(lines) if f.kind not in ("waist seam", "peplum"))
    return (*usual, Torso(), *more)


@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, THEA])
@pytest.mark.parametrize("lines", LINES)
def test_the_waist_gathers_what_the_tucks_let_go(lines: str, body: Body) -> None:
    """§10, exact: 2·n·depth; the neck takes it in as tucks, the waist as gathers."""
    plain = draft(order(body, closed_back(lines=lines)))
    made = draft(order(body, tucked(lines)))
    assert not made.failed, made.failures()
    assert not cut_faults(made)
    wide = [p.outline.bounds() for p in (front(plain), front(made))]
    assert (wide[1][2] - wide[1][0]) - (wide[0][2] - wide[0][0]) == pytest.approx(3.2)
    waist = made.sheet.seam("S5")
    assert waist.drawn_up and not waist.tucked
    assert waist.ease.plan - plain.sheet.seam("S5").ease.plan == pytest.approx(
        3.2, abs=2 * MM
    )
    assert waist.zone is not None
    known = {0.0, *(k.left for k in waist.notches)}
    assert all(any(abs(z - k) < 1e-6 for k in known) for z in waist.zone)
    upper = [s for s in made.sheet.seams if s.tucked]
    assert upper and "S5" not in {s.code for s in upper}
    complete(making_order(made))


def test_all_end_on_one_level() -> None:
    """As long as said on the first, from there square across."""
    made = draft(order(P92, tucked("darts")))
    lines = {k.name: k.path for k in front(made).lines if "tuck" in k.name}
    end = lines.pop("front tucks, to here")
    level = end.start.y
    assert end.end.y == pytest.approx(level, abs=1e-9)
    assert all(k.start.y == pytest.approx(level, abs=1e-9) for k in lines.values())
    plain = draft(order(P92, closed_back(lines="darts")))
    neck = front(plain).edge("neck").path
    x = lines["stitch line of a tuck 1"].start.x
    at = min((neck.at_length(s / 10) for s in range(200)), key=lambda p: abs(p.x - x))
    assert level - at.y == pytest.approx(22.0, abs=MM)
    assert end.length == pytest.approx(4 * 0.8 + 3 * (0.4 + 0.8))  # §10


@pytest.mark.parametrize("lines", LINES)
def test_below_a_torso_they_hang_free(lines: str) -> None:
    """The hem is wider by all of them and no seam takes it in; it is one smooth line
    and square to the centre front as before."""
    usual = tuple(f for f in in_one(lines) if f.kind != "front tucks")
    plain, made = draft(order(THEA, usual)), draft(order(THEA, in_one(lines)))
    assert not made.failed, made.failures()
    assert not cut_faults(made)
    a, b = front(plain).edge("hem").path, front(made).edge("hem").path
    assert b.length - a.length == pytest.approx(3.2, abs=MM)
    for one, two in zip(b.segments, b.segments[1:], strict=False):
        assert degrees_between(one.end_direction, two.start_direction) < 0.5
    assert not any(s.drawn_up for s in made.sheet.seams)
    complete(making_order(made))


def test_they_are_told_to_her() -> None:
    making = making_order(draft(order(P92, tucked("darts", mode=Mode.TO_EDGE))))
    complete(making)
    by_title = {o.title: o for o in making.operations}
    sewn = by_title["Sew the tucks of the front"]
    assert "from the upper edge to its mark" in sewn.says[0]
    assert sewn.length == pytest.approx(
        2 * 4 * 22.0, rel=0.1
    )  # the neck rises outwards
    titles = [o.title for o in making.operations]
    gathered = titles.index("Gather the front below its tucks")
    assert gathered < titles.index("Sew the waist")
    whole = making_order(draft(order(P92, tucked("darts", FrontTucks()))))
    assert "Gather the front below its tucks" not in [o.title for o in whole.operations]


@pytest.mark.parametrize("lines", LINES)
def test_real_women_have_them_let_go(lines: str) -> None:
    for body in Random(29).sample(ansur_whole(), 5):
        made = draft(order(body, tucked(lines, FrontTucks(stitched=15.0))))
        assert not made.failed, made.failures()
        assert not cut_faults(made)


@pytest.mark.parametrize(
    ("features", "says"),
    [
        (
            tucked("darts", FrontTucks(stitched=60.0)),
            r'stitch them \(stitched of "front tucks"\) for \d+\.\d cm at most',
        ),
        (in_one("darts", HemFacing()), "would be turned in with its facing"),
        (
            (
                *swapped(
                    closed_back(lines="darts"),
                    BustDart(to=DartPlace.WAIST, taken_up=TakenUp.GATHERS),
                    place_of="side dart",
                ),
                LET_GO,
            ),
            "the waist takes up the fullness of the tucks, or that of the bust dart",
        ),
    ],
)
def test_what_cannot_be_let_go_is_refused(
    features: tuple[Feature, ...], says: str
) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(P92, features))
