"""How steeply panel lines leave their edge, and how far from its ends.

First garment 5.1, 5.2, 6.2 and 7.2.
"""

import math
from itertools import product

import pytest
from shapely.geometry import LineString, Polygon

from bodies import P80, P92, P116, THEA, ansur_whole, bdims_women
from clothwright.curves import Point, bearing, degrees_between
from clothwright.features.bodice.back_princess import BackArmholePrincess
from clothwright.features.bodice.front_princess import FrontArmholePrincess
from clothwright.features.bodice.panel_lines import (
    BACK,
    FRONT,
    PanelLine,
    from_armhole,
    from_shoulder,
    start_findings,
)
from clothwright.features.bodice.shoulder_princess import ShoulderPrincess
from clothwright.features.necks.neck_shapes import FrontShape
from clothwright.features.necks.necklines import Neckline
from clothwright.order import OrderError, draft
from clothwright.truing import arc_like
from orders import closed_back, main_features, order, swapped

BP, D1 = Point(40.0, 24.0), Point(42.0, 41.0)
PD, D1B = Point(9.5, 22.0), Point(7.5, 41.0)


@pytest.mark.parametrize(
    ("line", "q", "apex", "base", "drawn"),
    [
        (FRONT, Point(32.0, 11.0), BP, D1, None),  # as in the notes' drafts: 38 to 41
        (FRONT, Point(30.0, 17.0), BP, D1, 15.0),
        (FRONT, Point(36.5, 5.0), BP, D1, 60.0),
        (BACK, Point(18.0, 12.0), PD, D1B, None),
        (BACK, Point(20.0, 17.5), PD, D1B, 0.0),
        (BACK, Point(12.0, 4.0), PD, D1B, 50.0),
    ],
)
def test_start_at_the_armhole(
    line: PanelLine, q: Point, apex: Point, base: Point, drawn: float | None
) -> None:
    """15° to 60° below the horizontal in front, 0° to 50° behind; what lies between is
    left alone, what lies outside is kept to the bound and said."""
    upper = from_armhole(line, q, apex, base)
    start = upper.path.start_direction
    below = math.degrees(math.atan2(start.y, line.centre * start.x))
    said = list(start_findings(line, upper))
    if drawn is None:
        assert upper.path == arc_like(q, apex, base - apex)
        assert line.steep[0] < below < line.steep[1]
        assert said == []
    else:
        assert below == pytest.approx(drawn)
        (finding,) = said
        assert finding.severity.value == "N"
        assert f"{upper.wanted:.0f}°" in finding.sentence
        assert f"{drawn:.0f}°" in finding.sentence
    # into the dart's leg without a corner, whatever the start
    assert degrees_between(upper.path.end_direction, base - apex) < 0.01


@pytest.mark.parametrize("slope", [10.0, 18.0, 24.0, 32.0])
@pytest.mark.parametrize("across", [-9.0, -6.0, -3.0, 0.0, 3.0])
def test_start_at_the_shoulder(slope: float, across: float) -> None:
    """7.2: 65° to 85° below the horizontal, within 10° of square to the shoulder; the
    back is the front's mirror image."""
    q = Point(BP.x + across, 2.0)
    outwards = bearing(180.0 - slope)
    front = from_shoulder(FRONT, q, BP, D1, outwards)
    start = front.path.start_direction
    below = math.degrees(math.atan2(start.y, start.x))
    off_square = degrees_between(start, outwards) - 90.0
    assert abs(off_square) <= 10.0 + 1e-9
    square = 90.0 - slope
    low, high = max(65.0, square - 10.0), min(85.0, square + 10.0)
    if low <= high:
        assert low - 1e-9 <= below <= high + 1e-9

    def mirrored(p: Point) -> Point:
        return Point(-p.x, p.y)

    back = from_shoulder(BACK, *map(mirrored, (q, BP, D1, outwards)))
    assert back.drawn == pytest.approx(front.drawn)
    assert back.wanted == pytest.approx(front.wanted)


def test_a_note_on_the_order() -> None:
    """A V neck and a narrow back bring the shoulder line over the bust point."""
    made = draft(order(THEA, closed_back(lines="shoulder", front=FrontShape.V)))
    (note,) = (f for f in made.findings if f.code == "P9")
    assert note.severity.value == "N"
    assert not any(f.code == "P9" for f in draft(order(P92, main_features())).findings)
    start = made.sheet.edge("FC", "panel").path.end_direction * -1.0
    below = math.degrees(math.atan2(start.y, start.x))
    assert below == pytest.approx(note.data["drawn"], abs=0.5)


@pytest.mark.parametrize("half", ["front", "back"])
@pytest.mark.parametrize("share", [0.30, 0.65])
def test_far_from_the_ends_of_the_armhole(half: str, share: float) -> None:
    """5.1, 6.2: 6 from the underarm, 4 from the tip, or a sentence that says which."""
    low, high = ("FS", "FC") if half == "front" else ("BS", "BC")
    feature = FrontArmholePrincess if half == "front" else BackArmholePrincess
    seen = set()
    for body in (P80, P92, P116, *bdims_women()[::20]):
        plain = main_features(ease=0.0)
        sheet = draft(order(body, plain)).sheet
        whole = sheet.length(low, "armhole") + sheet.length(high, "armhole")
        room = min(share * whole - 6.0, (1 - share) * whole - 4.0)
        if abs(room) < 0.2:  # the plain armhole was measured after the panels
            continue
        seen.add(room > 0)
        kind = f"{half} armhole princess"
        features = (feature(share=share) if f.kind == kind else f for f in plain)
        try:
            draft(order(body, tuple(features)))
        except OrderError as e:
            assert f"{half} panel line starts too near" in str(e)
            assert room < 0
        else:
            assert room > 0
    assert True in seen
    assert (False in seen) == (share < 0.5)


def test_a_line_from_the_shoulder_keeps_clear_of_the_neck() -> None:
    """A square neck, upright and wide, beside a line that starts near it and bends in
    over a slim bust: 1 must stay of the centre front (our own), else it is refused by
    the start of the line and the neck. Shapely judges the distance."""
    body = ansur_whole()[494]
    seen = set()
    for wide, share in product((0.0, 3.0, 4.0, 5.0), (0.35, 0.5, 0.65)):
        neck = Neckline(shape=FrontShape.SQUARE, lean=0.0, width=wide)
        lines = ShoulderPrincess(share=share)
        features = swapped(swapped(closed_back(lines="shoulder"), neck), lines)
        try:
            d = draft(order(body, features))
        except OrderError:
            continue
        p = d.sheet.piece("FC")
        a, b = (LineString(p.edge(k).path.flatten(0.002)) for k in ("neck", "panel"))
        told = [f for f in d.findings if f.code == "P15"]
        assert bool(told) is (a.distance(b) < 1.0)
        assert told or Polygon(p.outline.flatten(0.002)).is_valid
        seen.add(bool(told))
    assert seen == {True, False}
