"""Walking: lengths, ease by stretch, bands, sentences. Bands: truing 1 (common
practice); 1/16 in = 1.5875 mm exactly (international inch, 25.4 mm)."""

from typing import Any, ClassVar

import pytest

from clothwright.curves import Path, Point
from clothwright.findings import Severity
from clothwright.paper import (
    Ease,
    Edge,
    NotchPair,
    Piece,
    Run,
    Seam,
    SeamKind,
    Sheet,
    straight,
)
from clothwright.truing import walk, walk_all
from clothwright.truing.walk import reject_band

MM = 0.1


def cm(x: float) -> str:
    return f"{round(x * 10) / 10:g} cm"


def sixteenths(x: float) -> str:
    n = round(x / 2.54 * 16)
    whole, part = divmod(n, 16)
    for d in (2, 4, 8, 16):
        if part * d % 16 == 0:
            top = f"{part * d // 16}/{d}"
            break
    text = " ".join(t for t in (str(whole) if whole else "", top if part else "") if t)
    return f"{text or '0'} in"


def strip(code: str, length: float) -> Piece:
    """A strip of paper 5 cm wide whose edge `s` has this length."""
    a, b, c, d = Point(0, 0), Point(5, 0), Point(5, length), Point(0, length)
    return Piece(
        code,
        code,
        (straight("t", a, b), straight("s", b, c), straight("u", c, d), _back(d, a)),
    )


def _back(d: Point, a: Point) -> Edge:
    return straight("b", d, a)


def table(left: float, right: float, **seam: Any) -> tuple[Sheet, Seam]:
    """Two strips sewn along their edges `s`."""
    s = Seam("S4", "side", (Run("L", "s"),), (Run("R", "s"),), **seam)
    return Sheet().put(strip("L", left), strip("R", right)).sew(s), s


class TestTotals:
    @pytest.mark.parametrize(
        ("apart", "severity"),
        [
            (0.0, None),
            (1.5 * MM, None),
            (1.5875 * MM, None),
            (1.7 * MM, Severity.WARN),
            (3.0 * MM, Severity.WARN),
            (3.1 * MM, Severity.REFUSE),
            (-1.7 * MM, Severity.WARN),
            (-3.1 * MM, Severity.REFUSE),
        ],
    )
    def test_a_short_plain_seam(self, apart: float, severity: Severity | None) -> None:
        sheet, s = table(21.0, 21.0 + apart, ease=Ease.about(0.0, 2.54 / 16))
        assert walk(sheet, s).severity is severity

    def test_a_long_seam_is_given_more(self) -> None:
        sheet, s = table(60.0, 60.45, ease=Ease.about(0.0, 0.3175))
        assert walk(sheet, s).severity is Severity.WARN
        sheet, s = table(60.0, 60.55, ease=Ease.about(0.0, 0.3175))
        assert walk(sheet, s).severity is Severity.REFUSE

    def test_planned_ease_moves_the_whole_band(self) -> None:
        for right, severity in (
            (20.5, None),
            (20.0, Severity.REFUSE),
            (20.75, Severity.WARN),
            (20.85, Severity.REFUSE),
        ):
            sheet, s = table(20.0, right, ease=Ease.about(0.5, 0.1))
            assert walk(sheet, s).severity is severity, right

    def test_an_uneven_band_is_read_as_stated(self) -> None:
        """A facing may be 1.5 mm shorter but only 0.5 mm longer (first garment 14)."""
        ease = Ease(0.0, -0.15, 0.05)
        sheet, s = table(20.0, 19.85, ease=ease, kind=SeamKind.FACED)
        assert walk(sheet, s).holds
        sheet, s = table(20.0, 20.1, ease=ease, kind=SeamKind.FACED)
        assert walk(sheet, s).severity is Severity.WARN

    @pytest.mark.parametrize(
        ("seam", "length", "reject"),
        [
            ({}, 30.0, 0.3),
            ({}, 30.1, 0.5),
            ({"kind": SeamKind.DART}, 15.0, 0.15875),
            ({"kind": SeamKind.FACED}, 20.0, 0.3),
            ({"ease": Ease.about(2.5, 0.2)}, 44.0, 0.4),
        ],
    )
    def test_the_refusal_limit_by_kind(
        self, seam: dict[str, Any], length: float, reject: float
    ) -> None:
        sheet, s = table(length, length, **seam)
        assert reject_band(s, length).reject == pytest.approx(reject)
        assert walk(sheet, s).left == pytest.approx(length)

    def test_a_stated_band_wider_than_the_refusal_limit_stands(self) -> None:
        """Gathers, elastic: a seam's own band says what sews."""
        sheet, s = table(20.0, 20.8, ease=Ease(0.5, 0.0, 1.0))
        assert walk(sheet, s).holds

    def test_the_length_is_along_the_curve(self) -> None:
        """A quarter circle of radius 10 is 5·pi long, within the cubic's 0.03 %."""
        k = 10 * 0.5522847498
        arc = Path.cubic(Point(0, 0), Point(k, 0), Point(10, 10 - k), Point(10, 10))
        bent = Piece(
            "C",
            "C",
            (
                Edge("s", arc),
                straight("b", arc.end, Point(0, 10)),
                straight("t", Point(0, 10), arc.start),
            ),
        )
        s = Seam("X", "curve", (Run("C", "s"),), (Run("L", "s"),))
        w = walk(Sheet().put(bent, strip("L", 15.708)).sew(s), s)
        assert w.left == pytest.approx(15.708, abs=0.05 * MM)

    def test_chains_add_up(self) -> None:
        sheet = Sheet().put(strip("A", 7), strip("B", 11), strip("C", 18))
        s = Seam("S5", "waist", (Run("A", "s"), Run("B", "s", True)), (Run("C", "s"),))
        (w,) = walk_all(sheet.sew(s))
        assert (w.left, w.right) == (18, 18)
        assert w.holds
        assert w.findings(cm) == ()


class TestStretches:
    PANEL: ClassVar[dict[str, Any]] = {
        "ease": Ease.about(0.3, 0.1),
        "zone": (10.0, 20.0),
        "notches": (NotchPair(10.0, 10.0), NotchPair(20.0, 20.3)),
        "start": "armhole",
        "end": "waist",
    }

    def test_the_ease_lies_in_its_zone(self) -> None:
        sheet, s = table(32.0, 32.3, **self.PANEL)
        w = walk(sheet, s)
        assert w.holds
        assert [x.ease for x in w.segments] == pytest.approx([0.0, 0.3, 0.0])
        assert [(x.low + x.high) / 2 for x in w.segments] == pytest.approx([0, 0.3, 0])

    def test_right_in_all_but_wrong_between_notches(self) -> None:
        even = {**self.PANEL, "notches": (NotchPair(10, 10.13), NotchPair(20, 20.25))}
        sheet, s = table(32.0, 32.3, **even)
        w = walk(sheet, s)
        assert w.severity is None
        assert not w.holds
        assert [x.severity for x in w.segments] == [
            Severity.WARN,
            Severity.WARN,
            None,
        ]
        first = w.findings(cm)[0]
        assert first.code == "S4"
        assert first.sentence == (
            "Side, from the armhole to the first notch: 10 and 10.1 cm, 1.3 mm apart; "
            "up to 1.0 mm is right."
        )

    def test_a_notch_far_off_is_refused(self) -> None:
        far = {**self.PANEL, "notches": (NotchPair(10, 10.25), NotchPair(20, 20.3))}
        sheet, s = table(32.0, 32.3, **far)
        assert walk(sheet, s).segments[0].severity is Severity.REFUSE

    def test_a_notch_inside_the_zone_shares_it(self) -> None:
        inside = {
            **self.PANEL,
            "notches": (NotchPair(10, 10), NotchPair(14, 14.12), NotchPair(20, 20.3)),
        }
        sheet, s = table(32.0, 32.3, **inside)
        parts = [(x.low + x.high) / 2 for x in walk(sheet, s).segments]
        assert parts == pytest.approx([0.0, 0.12, 0.18, 0.0])

    def test_a_zone_of_no_length_lies_in_one_stretch(self) -> None:
        point = {**self.PANEL, "zone": (10.0, 10.0)}
        sheet, s = table(32.0, 32.3, **point)
        assert [(x.low + x.high) / 2 for x in walk(sheet, s).segments] == (
            pytest.approx([0.0, 0.3, 0.0])
        )

    def test_without_a_zone_any_stretch_may_hold_it(self) -> None:
        for notch in (NotchPair(10, 10), NotchPair(10, 10.3), NotchPair(10, 10.15)):
            sheet, s = table(20.0, 20.3, ease=Ease.about(0.3, 0.1), notches=(notch,))
            assert walk(sheet, s).holds

    def test_notches_stated_in_any_order(self) -> None:
        notches = (NotchPair(20.0, 20.3), NotchPair(10.0, 10.0))
        sheet, s = table(32.0, 32.3, **{**self.PANEL, "notches": notches})
        assert walk(sheet, s).holds


class TestSentences:
    def test_in_inches(self) -> None:
        inch = 2.54
        sheet, s = table(
            8.25 * inch, 8.375 * inch, ease=Ease.about(0, 2.54 / 16), end="hem"
        )
        w = walk(sheet, s)
        (f,) = w.findings(sixteenths)
        assert f.sentence == (
            "Side: 8 1/4 and 8 3/8 in, 1/8 in apart; up to 1/16 in is right."
        )
        assert f.severity is Severity.REFUSE
        assert f.data["ease"] == pytest.approx(0.3175)

    def test_what_the_unit_would_hide_is_told_in_millimetres(self) -> None:
        sheet, s = table(20.0, 20.2, ease=Ease.about(0, 2.54 / 16))
        assert "2.0 mm apart; up to 1.6 mm" in walk(sheet, s).sentence(sixteenths)

    def test_what_is_gathered_is_told_in_the_unit(self) -> None:
        """Its limits lie a millimetre apart, which sixteenths would hide."""
        sheet, s = table(13.4, 17.94, ease=Ease.about(4.54, 0.1))
        assert walk(sheet, s).sentence(sixteenths) == (
            "Side: 5 1/4 and 7 1/16 in, the second 1 13/16 in longer; up to 1.0 mm "
            "more or less is right."
        )

    def test_planned_ease_says_which_way(self) -> None:
        sheet, s = table(20.0, 20.0, ease=Ease.about(0.5, 0.2))
        assert walk(sheet, s).sentence(cm) == (
            "Side: 20 and 20 cm, of one length; 0.3 cm to 0.7 cm longer is right."
        )
        sheet, s = table(20.0, 20.0, ease=Ease.about(-0.5, 0.2))
        assert "0.3 cm to 0.7 cm shorter" in walk(sheet, s).sentence(cm)
        sheet, s = table(20.0, 20.4, ease=Ease(0.0, -0.3, 0.1))
        assert "from 0.3 cm shorter to 0.1 cm longer" in walk(sheet, s).sentence(cm)

    @pytest.mark.parametrize(
        ("end", "says"),
        [("hem", "Level it at the hem"), ("waist", "Redraw"), ("", "Redraw")],
    )
    def test_a_small_rest_is_never_levelled_at_waist_or_neck(
        self, end: str, says: str
    ) -> None:
        sheet, s = table(20.0, 20.2, ease=Ease.about(0, 0.1), end=end)
        (f,) = walk(sheet, s).findings(cm)
        assert f.to_do.startswith(says)
