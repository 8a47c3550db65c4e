"""Zips set three ways, and the zip under the arm (transformations 7)."""

import pytest

from bodies import P92, THEA, YSOLDE, ansur_women
from clothwright.body import Body
from clothwright.features import Feature
from clothwright.features.bodice.torso import Torso
from clothwright.features.linings.lining import Mode
from clothwright.features.necks.neck_shapes import FrontShape
from clothwright.features.notions import Article, Notion
from clothwright.features.openings.concealed_zip import ConcealedZip
from clothwright.features.openings.underarm_zip import UnderarmZip
from clothwright.features.openings.zips import Setting
from clothwright.features.skirts.skirt_zip import SkirtZip
from clothwright.features.trousers.trouser_zip import SideZip
from clothwright.making.cutting import cutting_sheet
from clothwright.making.order import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from orders import (
    closed_back,
    main_features,
    order,
    sleeved_features,
    straight_skirt,
    swapped,
    trouser_features,
)

MM = 0.1


def bought(d: Draft) -> Notion:
    (zip_,) = (
        k
        for k in cutting_sheet(making_order(d)).notions
        if k.article in (Article.ZIP, Article.VISIBLE_ZIP)
    )
    return zip_


@pytest.mark.parametrize("setting", Setting)
def test_each_setting_of_each_zip(setting: Setting) -> None:
    """A concealed zip is 2 to 3 cm longer than its opening (7), a visible one as long;
    a visible one goes in when the seam below it is closed."""
    for features in (
        swapped(sleeved_features(), ConcealedZip(setting=setting)),
        straight_skirt(SkirtZip(setting=setting)),
        trouser_features(SideZip(setting=setting)),
    ):
        d = draft(order(THEA, features))
        assert not d.failed, d.failures()
        concealed = setting is Setting.CONCEALED
        zip_ = bought(d)
        assert (zip_.article is Article.ZIP) is concealed
        titles = [op.title for op in making_order(d).operations]
        assert f"Put in the {setting.value} zip" in titles
        if "z_S" in d.numbers:
            assert zip_.length == pytest.approx(d.numbers.z_S + 2.5 * concealed)
        else:
            last = titles.index("Close the centre back below the zip")
            assert (titles.index(f"Put in the {setting.value} zip") < last) is concealed


def side_opened(*, lines: str, lining: Mode | None = None) -> tuple[Feature, ...]:
    features = closed_back(lines=lines, front=FrontShape.SCOOP, lining=lining)
    return swapped(features, UnderarmZip(), place_of="concealed zip")


@pytest.mark.parametrize("body", [P92, THEA, YSOLDE, *ansur_women()[::240]])
@pytest.mark.parametrize("lines", ["armhole", "shoulder", "darts", "mixed"])
def test_the_side_opens(body: Body, lines: str) -> None:
    """22 to 30 cm with its top 3 to 5 below the armhole (7), moved only where a side
    dart lies there; the centre back is whole."""
    d = draft(order(body, side_opened(lines=lines)))
    assert {f.code for f in d.findings if f.severity.value == "E"} <= {"R-j"}
    s4, s7 = d.sheet.seam("S4"), d.sheet.seam("S7")
    (top,) = (k.left for k in s4.notches if k.ticks == 2)
    (end,) = (k.left for k in s7.notches if k.ticks == 2)
    assert top == pytest.approx(4.0, abs=0.1 * MM if lines == "armhole" else 1.75)
    assert end == pytest.approx(d.numbers.z)
    opening = d.sheet.chain_length(s4.left) - top + end
    assert 22.0 <= opening <= 31.0
    assert bought(d).length == pytest.approx(opening + 2.5)
    back = "PB"
    assert d.sheet.piece(back).fold is not None
    assert "S21" not in {s.code for s in d.sheet.seams}


@pytest.mark.parametrize("body", [P92, THEA, YSOLDE, *ansur_women()[::480]])
@pytest.mark.parametrize("lines", ["armhole", "shoulder", "darts", "mixed"])
def test_the_side_of_a_torso_opens(body: Body, lines: str) -> None:
    """Both ends are told on the one side seam; it ends 2 cm above the hip, as a torso's
    zip behind (7), so that the hip passes; the centre back is whole."""
    features = swapped(side_opened(lines=lines), Torso(), place_of="waist seam")
    d = draft(order(body, tuple(f for f in features if f.kind != "peplum")))
    assert {f.code for f in d.findings if f.severity.value == "E"} <= {"R-j"}
    n, sheet = d.numbers, d.sheet
    side = sheet.seam("S4")
    top, end = (k.left for k in side.notches if k.ticks == 2)
    assert n.z == pytest.approx(n.WH - 2.0)
    back = sheet.edge("B" if "B" in sheet.pieces else "BS", "side").path
    waist = back.length_to_point(sheet.points["wb"])
    assert end == pytest.approx(waist + n.z, abs=0.1 * MM)
    assert bought(d).length == pytest.approx(end - top + 2.5)
    assert "S21" not in {s.code for s in sheet.seams}
    assert not [f for f in d.findings if f.code in ("Z1", "Z2", "Z5")]


@pytest.mark.parametrize("lining", Mode)
def test_a_lined_side_opens(lining: Mode) -> None:
    d = draft(order(YSOLDE, side_opened(lines="armhole", lining=lining)))
    assert not d.failed, d.failures()
    pattern(d, words=False)
    titles = [op.title for op in making_order(d).operations]
    assert any("lining to the zip's tape" in t for t in titles)


def test_what_a_side_zip_refuses() -> None:
    with pytest.raises(OrderError, match="one place"):
        draft(order(P92, (*sleeved_features(), UnderarmZip())))
    loops = swapped(main_features(), UnderarmZip(), place_of="loops")
    with pytest.raises(OrderError, match="its own edges"):
        draft(order(P92, loops))
    # no neck opens: it must go over the head (transformations 2, rule 3)
    closed = swapped(sleeved_features(), UnderarmZip(), place_of="concealed zip")
    assert any(f.code == "R-j" for f in draft(order(P92, closed)).findings)


def test_strips_of_interlining_lie_behind_a_zip() -> None:
    """Cutting and costing 3: "zip area: strip 2.5"; one to each edge, over the whole
    opening, told where it is cut and where it is fused."""
    for features, place in (
        (swapped(sleeved_features(), ConcealedZip()), "centre back"),
        (straight_skirt(SkirtZip()), "centre back"),
        (trouser_features(SideZip(setting=Setting.LAPPED)), "left side"),
        (side_opened(lines="darts"), "left side"),
    ):
        d = draft(order(THEA, features))
        making = making_order(d)
        sheet = cutting_sheet(making)
        (strip,) = sheet.strips
        zip_ = bought(d)
        spare = 2.5 if zip_.article is Article.ZIP else 0.0
        assert zip_.length is not None
        assert (strip.article, strip.count, strip.size) == (Article.STRIP, 2, 2.5)
        assert strip.length == pytest.approx(zip_.length - spare + 1.0, abs=MM)
        assert place in strip.where
        titles = [op.title for op in making.operations]
        fused = titles.index(f"Strengthen the edges of the zip, {place}")
        assert fused < next(k for k, t in enumerate(titles) if t.startswith("Put in"))
