"""The front drawn in under the bust at its panel seam or waist dart (transformations
1.8)."""

from dataclasses import replace
from random import Random

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, ansur_whole
from clothwright.blocks.torso import fish_eye, fish_eye_ends
from clothwright.blocks.torso_width import width_at
from clothwright.body import Body
from clothwright.curves import degrees_between
from clothwright.features import Feature
from clothwright.features.bodice.bust_dart import BustDart
from clothwright.features.bodice.front_dart import DartPlace
from clothwright.features.bodice.torso import Torso
from clothwright.features.bodice.under_bust import UnderBust
from clothwright.features.linings.lining import Mode
from clothwright.findings import Severity
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft
from making.test_order import complete
from orders import closed_back, cut_faults, order, swapped

MM = 0.1
LINES = ("armhole", "shoulder", "darts")
EDGES = (("FC", "panel"), ("FS", "panel"), ("F", "leg cf"), ("F", "leg side"))


def both(body: Body, lines: str, *more: Feature) -> tuple[Draft, Draft]:
    """An order without the contour and with it."""
    usual = closed_back(lines=lines)
    kinds = {f.kind for f in more}
    if "torso" in kinds:
        usual = tuple(f for f in usual if f.kind not in ("waist seam", "peplum"))
    plain = (*usual, *(f for f in more if f.kind != "under-bust contour"))
    contour = next((f for f in more if f.kind == "under-bust contour"), UnderBust())
    return draft(order(body, plain)), draft(order(body, (*plain, contour)))


@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, THEA])
@pytest.mark.parametrize("lines", LINES)
def test_it_is_narrower_there_alone(lines: str, body: Body) -> None:
    """By 1.5 cm·(0.6 + 0.1·c) each half, at most 2.5 cm, level with the crease; at the
    bust point and at the waist nothing changes."""
    plain, made = both(body, lines)
    assert not made.failed, made.failures()
    n = made.numbers
    wanted = min(2.5, 1.5 * min(1.8, max(0.6, 0.6 + 0.1 * n.c)))
    assert n.cu == pytest.approx(wanted, abs=1e-9)
    assert n.y_U == pytest.approx(n.y_BP + n.BUB, abs=1e-9)
    there = [width_at(d.sheet, n.y_U) for d in (plain, made)]
    assert there[0] - there[1] == pytest.approx(n.cu, abs=MM)
    for level in (n.y_BP, n.yW - 0.2):
        a, b = (width_at(d.sheet, level) for d in (plain, made))
        assert a == pytest.approx(b, abs=0.6 * MM)
    for code in ("F", "FC", "FS"):
        if code in made.sheet.pieces:
            before, after = (d.sheet.piece(code) for d in (plain, made))
            for name in ("waist", "waist side", "armhole", "side"):
                if before.has(name):
                    was = before.edge(name).length
                    assert after.edge(name).length == pytest.approx(was, abs=1e-9)
    assert not cut_faults(made)


@pytest.mark.parametrize("lines", LINES)
def test_both_edges_grow_alike_and_leave_the_waist_as_before(lines: str) -> None:
    plain, made = both(P92, lines)
    grown = []
    for code, name in EDGES:
        if code not in made.sheet.pieces or not made.sheet.piece(code).has(name):
            continue
        a, b = (d.sheet.edge(code, name).path for d in (plain, made))
        grown.append(b.length - a.length)
        foot = "start" if a.start.y > a.end.y else "end"
        ways = (getattr(p, f"{foot}_direction") for p in (a, b))
        assert degrees_between(*ways) < 0.1
    assert len(grown) == 2
    assert grown[0] == pytest.approx(grown[1], abs=0.1 * MM)
    assert 0.0 < grown[0] < 3 * MM


@pytest.mark.parametrize("lines", ["armhole", "shoulder"])
def test_a_torso_gets_it_at_its_panel_seam(lines: str) -> None:
    plain, made = both(THEA, lines, Torso())
    assert not made.failed, made.failures()
    n = made.numbers
    there = [width_at(d.sheet, n.y_U) for d in (plain, made)]
    assert there[0] - there[1] == pytest.approx(n.cu, abs=MM)
    for level in (n.yW + 1.0, n.yW + 10.0):
        a, b = (width_at(d.sheet, level) for d in (plain, made))
        assert a == pytest.approx(b, abs=0.1 * MM)
    assert not cut_faults(made)
    complete(making_order(made))


@pytest.mark.parametrize("lines", LINES)
def test_real_women_get_it(lines: str) -> None:
    for body in Random(11).sample(ansur_whole(), 6):
        for lining in (None, Mode.BELOW_FACING, Mode.TO_EDGE):
            usual = closed_back(lines=lines, lining=lining)
            made = draft(order(body, (*usual, UnderBust(amount=1.0))))
            refused = [f for f in made.findings if f.severity is Severity.REFUSE]
            assert {f.code for f in refused} <= {"UB2"}, made.failures()
            if not refused:
                assert not cut_faults(made)
                complete(making_order(made))


def test_a_dart_led_to_the_waist_is_drawn_in_too() -> None:
    usual = swapped(
        closed_back(lines="darts"), BustDart(to=DartPlace.WAIST), place_of="side dart"
    )
    plain, made = (draft(order(P92, f)) for f in (usual, (*usual, UnderBust())))
    assert not made.failed, made.failures()
    level = made.numbers.y_U
    narrower = width_at(plain.sheet, level) - width_at(made.sheet, level)
    assert narrower == pytest.approx(made.numbers.cu, abs=MM)


@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, THEA, *ansur_whole()[::300]])
def test_a_fish_eye_dart_is_wider_at_the_crease_alone(body: Body) -> None:
    """Both its upper edges stand out there by half of the amount, on its own side each;
    its ends and its width at the waist stay."""
    plain, made = both(body, "darts", Torso())
    assert not set(made.failures()) - set(plain.failures())
    n = made.numbers
    there = [width_at(d.sheet, n.y_U) for d in (plain, made)]
    assert there[0] - there[1] == pytest.approx(n.cu, abs=0.3 * MM)
    for level in (n.yW, n.yW + 5.0):
        before, after = (width_at(d.sheet, level) for d in (plain, made))
        assert before == pytest.approx(after, abs=0.1 * MM)
    assert fish_eye_ends(made.sheet, "F") == fish_eye_ends(plain.sheet, "F")
    dart = fish_eye(made.sheet, "F")
    assert dart is not None
    top, a, _, b = fish_eye_ends(made.sheet, "F")
    for p in (top, a, b):
        assert dart.nearest(p)[1] < 0.1 * MM
    legs = dart.length_to_point(a), dart.length - dart.length_to_point(b)
    assert legs[0] == pytest.approx(legs[1], abs=0.2 * MM)
    assert not cut_faults(made)


def test_a_lined_fish_eye_dart_is_drawn_in_in_both() -> None:
    usual = tuple(
        f
        for f in closed_back(lines="darts", lining=Mode.TO_EDGE)
        if f.kind not in ("waist seam", "peplum")
    )
    made = draft(order(P92, (*usual, Torso(), UnderBust())))
    assert not made.failed, made.failures()
    shell, inside = (fish_eye(made.sheet, c) for c in ("F", "L.F"))
    assert shell is not None and inside is not None
    assert inside.length == pytest.approx(shell.length)
    complete(making_order(made))


def test_too_tight_under_the_bust_is_told() -> None:
    """A body whose ribs are wider than the bodice would be there."""
    wide = replace(
        P92,
        values={**P92.values, "UB": replace(P92.values["B"], code="UB", value=82.0)},
    )
    made = draft(order(wide, (*closed_back(lines="armhole"), UnderBust(amount=2.5))))
    told = next(f for f in made.findings if f.code == "UB2")
    assert told.place == "cu"
    assert "at least is wanted" in told.sentence


@pytest.mark.parametrize(
    ("features", "said"),
    [
        (
            swapped(
                closed_back(lines="darts"),
                BustDart(to=DartPlace.CENTRE_WAIST),
                place_of="side dart",
            ),
            "no seam is left under the bust",
        ),
    ],
)
def test_what_it_does_not_go_with(features: tuple[Feature, ...], said: str) -> None:
    with pytest.raises(OrderError, match=said):
        draft(order(P92, (*features, UnderBust())))
