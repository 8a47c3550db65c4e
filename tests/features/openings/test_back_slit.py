"""A slit in the back of a closed neck, with a button and a loop (transformations 2)."""

import pytest
from shapely import LineString

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE, ansur_whole
from clothwright.body import Body
from clothwright.features import Feature
from clothwright.features.bodice.yokes import BackYoke
from clothwright.features.linings.lining import Mode
from clothwright.features.necks.back_strap import BackStrap
from clothwright.features.necks.neck_shapes import BackShape, FrontShape
from clothwright.features.necks.necklines import BackNeckline, Neckline
from clothwright.features.openings.back_slit import BackNeckSlit
from clothwright.features.openings.cut_out_back import CutOutBack
from clothwright.features.openings.underarm_zip import UnderarmZip
from clothwright.making import making_order
from clothwright.order import OrderError, draft
from order.test_combinations import finished
from orders import closed_back, order, sleeved_features, sound, swapped

MM = 0.1
BODIES = (P80, P92, P116, BRIDA, YSOLDE, THEA, *ansur_whole()[200::400])


def slit(
    one: BackNeckSlit,
    *swaps: Feature,
    lines: str = "darts",
    lining: Mode | None = None,
) -> tuple[Feature, ...]:
    """A top that opens at the side, its back on the fold."""
    top = closed_back(lines=lines, lining=lining)
    top = swapped(top, UnderarmZip(), place_of="concealed zip")
    for swap in swaps:
        top = swapped(top, swap)
    return (*top, one)


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("lines", ["darts", "armhole", "shoulder"])
@pytest.mark.parametrize("mode", [None, Mode.BELOW_FACING])
def test_it_is_marked_faced_and_closed(
    mode: Mode | None, lines: str, body: Body
) -> None:
    """14 long, plumb below the neck's centre, its edge 0.5 off the fold there; the
    facing has the same edge and keeps 3.5 round it (shapely); the loop is sewn before
    the edge is faced, neck and slit in one go, and the button last."""
    made = sound(body, slit(BackNeckSlit(), lines=lines, lining=mode))
    sheet = made.sheet
    code = "B" if lines == "darts" else "BC"
    edge, foot = sheet.edge(code, "cb nape").path, sheet.points["Sl"]
    assert foot.y - sheet.points["Sn"].y == pytest.approx(14.0)
    assert (edge.start.x, edge.end.x) == pytest.approx((0.0, 0.5), abs=1e-6)
    assert edge.start.y == pytest.approx(foot.y)
    assert edge.straight
    seam = sheet.seam("S134")
    a, b = sheet.chain_length(seam.left), sheet.chain_length(seam.right)
    assert a == pytest.approx(b, abs=0.5 * MM)
    slash = LineString(sheet.edge("BF", "cb nape").path.flatten(0.001))
    free = LineString(sheet.edge("BF", "free").path.flatten(0.001))
    assert slash.distance(free) == pytest.approx(3.5, abs=MM)
    titles = [op.title for op in making_order(made).operations]
    loop, face, button = (
        next(i for i, t in enumerate(titles) if t.startswith(start))
        for start in (
            "Make a loop and sew it to the right",
            "Face the neck and the sl",
            "Sew the button",
        )
    )
    assert loop < face < button
    assert not finished(made)


def test_the_head_goes_through() -> None:
    """Neck and twice the slit are the head and 2 cm, or it is refused with the length
    that lets it through (2, back opening lengths), which then does."""
    narrow = Neckline(shape=FrontShape.ROUND, width=0.0, depth=7.0)
    high = BackNeckline(shape=BackShape.ROUND, depth=2.5)
    bodice = sleeved_features(UnderarmZip(), narrow, high)
    bodice = tuple(f for f in bodice if f.kind != "concealed zip")
    body = P116
    short = draft(order(body, (*bodice, BackNeckSlit(length=6.0))))
    sheet, n = short.sheet, short.numbers
    necks = sheet.lines["neck front"].length + sheet.lines["neck back"].length
    round_ = 2 * necks + 2 * sheet.length("BC", "cb nape")
    (told,) = [f for f in short.findings if f.code == "R-j"]
    assert told.data["round"] == pytest.approx(round_)
    assert round_ < n.HEAD + 2.0
    long = round(6.0 + (n.HEAD + 2.0 - round_) / 2 + 0.05, 1)
    assert f"{long:.1f} cm long or more" in told.to_do
    sound(body, (*bodice, BackNeckSlit(length=long)))
    none = draft(order(body, bodice))
    (told,) = [f for f in none.findings if f.code == "R-j"]
    assert "or a back neck slit" in told.to_do


@pytest.mark.parametrize(
    ("features", "says"),
    [
        ((*closed_back(), BackNeckSlit()), "opens with the zip of the back"),
        (slit(BackNeckSlit(), BackNeckline(shape=BackShape.V)), "closes above it"),
        ((*slit(BackNeckSlit()), CutOutBack()), "opens the nape itself"),
        ((*slit(BackNeckSlit()), BackYoke()), "would run into the slit"),
        ((*slit(BackNeckSlit()), BackStrap()), "needs no strap"),
        (slit(BackNeckSlit(length=35.0)), r"make it \(length of .* long at most"),
    ],
)
def test_what_it_refuses_is_said(features: tuple[Feature, ...], says: str) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(P92, features))


def test_a_facing_wider_than_the_panel_is_refused() -> None:
    """SL1, by shapely: what lies between the slit and the panel seam."""
    wide = BackNeckSlit(length=20.0, facing=8.0)
    made = draft(order(P80, slit(wide, lines="armhole")))
    (told,) = [f for f in made.findings if f.code == "SL1"]
    back = made.sheet.piece("BC")
    edge = LineString(back.edge("cb nape").path.flatten(0.001))
    rest = [
        LineString(e.path.flatten(0.001))
        for e in back.edges
        if e.name not in ("cb", "cb nape", "neck")
    ]
    left = min(edge.distance(line) for line in rest)
    assert told.data["left"] == pytest.approx(left, abs=0.2 * MM)
    assert left < 8.0
