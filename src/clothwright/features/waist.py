"""The waist seam of the bodice: trued over every joint (first garment 12).

At each joint both partners are lengthened along their own seam, and every waist edge
becomes a curve that is square to the seams it meets. What that adds or takes is given
back in the waist darts, front and back each its own share, so that the stitched waist
is the body's waist with ease. (The notes halve the excess between front and back; each
half keeping its own leaves the bodice and the peplum equal edge by edge.)
"""

import math
from collections.abc import Callable, Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.curves import (
    SOLVE,
    Cubic,
    Path,
    Point,
    Vector,
    direction,
    distance,
    turned,
)
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Edge, Piece, Sheet, Verb, redraw
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "first garment 12"

WAIST = RuleTable("waist seam")
TRUED = RuleTable("waist darts as cut, waist trued")
_rule = WAIST.rule


@_rule(
    "wF",
    "stitched front waist, half",
    source=f"{_SRC}.4",
    key="w_F",
    formula="front half − a − fd",
)
def _w_front(front_half: float, a: float, fd: float) -> float:
    return front_half - a - fd


@_rule(
    "wB",
    "stitched back waist, half",
    source=f"{_SRC}.4",
    key="w_B",
    formula="xs − a − bd − set-in at the centre back",
)
def _w_back(xs: float, a: float, bd_net: float, x_back: float) -> float:
    return xs - a - bd_net - x_back


@_rule(
    "w½", "stitched waist, half", source=f"{_SRC}.4", key="w_half", formula="wF + wB"
)
def _w_half(w_F: float, w_B: float) -> float:
    return w_F + w_B


@_rule("w", "stitched waist", source=f"{_SRC}.5", formula="2·w½")
def w(w_half: float) -> float:
    return 2 * w_half


def _dip(half_opening: float, depth: float) -> float:
    """0.5·t·sin α for a seam that leaves the plumb by `half_opening` over `depth` cm.

    t = min(5, 0.4 of the seam below its last bend): the numbers of the notes' own
    worked draft show that the neighbours meant there are the seams, not the waist.
    """
    t = min(5.0, 0.4 * depth)
    return 0.5 * t * half_opening / math.hypot(half_opening, depth)


@_rule(
    "δf",
    "lengthening at the front panel",
    source=f"{_SRC}.2",
    key="delta_f",
    formula="0.5·t·sin(ω/2)",
)
def _delta_f(fd: float, yW: float, y_Pf: float) -> float:
    return _dip(fd / 2, yW - y_Pf)


@_rule(
    "δs",
    "lengthening at the side",
    source=f"{_SRC}.2",
    key="delta_s",
    formula="0.5·t·sin(atan(a/(yW − yB)))",
)
def _delta_s(a: float, yW: float, yB: float) -> float:
    return _dip(a, yW - yB)


@_rule(
    "δb",
    "lengthening at the back panel",
    source=f"{_SRC}.2",
    key="delta_b",
    formula="0.5·t·sin(ωb/2)",
)
def _delta_b(bd_net: float, yW: float, yB: float) -> float:
    return _dip(bd_net / 2, yW - yB)


def waist_curve(
    start: Point,
    end: Point,
    down_start: Vector | None,
    down_end: Vector | None,
    dip_start: float,
    dip_end: float,
) -> Cubic:
    """A waist edge from right to left between two seams that run down to it.

    `down_*` is the unit direction of the seam where it meets the waist, None for a
    fold or a centre edge, where the waist is level; `dip_*` lengthens the seam.
    """
    u = down_start or Vector(0.0, 1.0)
    v = down_end or Vector(0.0, 1.0)
    p, q = start + u * dip_start, end + v * dip_end
    third = distance(p, q) / 3
    return Cubic(p, p + turned(u, 90) * third, q - turned(v, 90) * third, q)


def _front_length(
    fd: float,
    X: float,
    x_BP: float,
    xs: float,
    a: float,
    yW: float,
    yB: float,
    y_Pf: float,
    delta_f: float,
    delta_s: float,
) -> float:
    apex, wf = Point(x_BP, y_Pf), Point(xs + a, yW)
    d1, d2 = Point(x_BP + fd / 2, yW), Point(x_BP - fd / 2, yW)
    side = direction(Point(xs, yB), wf)
    centre = waist_curve(Point(X, yW), d1, None, direction(apex, d1), 0.0, delta_f)
    flank = waist_curve(d2, wf, direction(apex, d2), side, delta_f, delta_s)
    return centre.length + flank.length


def _back_length(
    bd: float,
    xs: float,
    a: float,
    xd: float,
    x_back: float,
    yW: float,
    yB: float,
    delta_b: float,
    delta_s: float,
) -> float:
    apex, wb = Point(xd, yB), Point(xs - a, yW)
    d1, d2 = Point(xd - bd / 2, yW), Point(xd + bd / 2, yW)
    side = direction(Point(xs, yB), wb)
    flank = waist_curve(wb, d2, side, direction(apex, d2), delta_s, delta_b)
    centre = waist_curve(d1, Point(x_back, yW), direction(apex, d1), None, delta_b, 0.0)
    return flank.length + centre.length


_FRONT = ("X", "x_BP", "xs", "a", "yW", "yB", "y_Pf", "delta_f", "delta_s")
_BACK = ("xs", "a", "xd", "x_back", "yW", "yB", "delta_b", "delta_s")
"""Where the trued edges lie: what `_front_length` and `_back_length` take after the
dart."""


@_rule(
    "exF",
    "excess of the trued front waist",
    source=f"{_SRC}.4",
    key="ex_F",
    formula="trued edges − wF",
    needs=("w_F", "fd", *_FRONT),
)
def _ex_front(w_F: float, fd: float, *place: float) -> float:
    return _front_length(fd, *place) - w_F


@_rule(
    "exB",
    "excess of the trued back waist",
    source=f"{_SRC}.4",
    key="ex_B",
    formula="trued edges − wB",
    needs=("w_B", "bd_net", *_BACK),
)
def _ex_back(w_B: float, bd_net: float, *place: float) -> float:
    return _back_length(bd_net, *place) - w_B


@_rule("ex", "excess of the trued waist", source=f"{_SRC}.4", formula="exF + exB")
def ex(ex_F: float, ex_B: float) -> float:
    return ex_F + ex_B


def _given_back(dart: float, excess: Callable[[float], float]) -> float:
    """The dart changed until the trued edges have no excess, within 0.01 mm."""
    for _ in range(4):
        more = excess(dart)
        dart += more
        if abs(more) < SOLVE:  # the next would be a hundredth of it
            break
    return dart


@TRUED.rule(
    "fd cut",
    "front waist dart as cut",
    source=f"{_SRC}.4",
    key="fd_cut",
    formula="fd changed by the excess of the trued front waist",
    needs=("w_F", "fd", *_FRONT),
)
def _fd_cut(w_F: float, fd: float, *place: float) -> float:
    return _given_back(fd, lambda dart: _front_length(dart, *place) - w_F)


@TRUED.rule(
    "bd cut",
    "back waist dart as cut",
    source=f"{_SRC}.4",
    key="bd_cut",
    formula="bd changed by the excess of the trued back waist",
    needs=("w_B", "bd_net", *_BACK),
)
def _bd_cut(w_B: float, bd_net: float, *place: float) -> float:
    return _given_back(bd_net, lambda dart: _back_length(dart, *place) - w_B)


LEVEL_BACK = RuleTable("back waist dart beside a zip or an open edge, level")


@LEVEL_BACK.rule("bd cut", "back waist dart as cut", source="blocks A4", key="bd_cut")
def _bd_level(bd_net: float) -> float:
    return bd_net


class WaistSeam(Feature):
    """Seam at the waist, trued over side and panels."""

    kind: Literal["waist seam"] = "waist seam"
    title: ClassVar[str] = "Waist seam"
    sentence: ClassVar[str] = "There is a seam at the waist, eased on by {ease} a half."
    page: ClassVar[int] = 2
    gives: ClassVar[frozenset[str]] = frozenset({"waist seam"})
    needs: ClassVar[dict[str, str]] = {
        "front panels": "add a front princess line or a side dart",
        "back panels": "add a back princess line or a back waist dart",
        "opening": "a fitted waist must open: add a low open back or a zip",
    }

    ease: Annotated[
        Length | None,
        Number(
            "ew",
            "ew",
            "bodice eased onto the skirt, each half",
            f"{_SRC}.5",
            0.0,
            0.0,
            0.0,
            1.2,
            (0.0, 0.6),
        ),
    ] = None
    excess_given_back: bool = True
    """Give the excess of the trued waist back in the darts."""

    def tables(self) -> tuple[RuleTable, ...]:
        return (WAIST, TRUED if self.excess_given_back else LEVEL_BACK)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.WAIST, "the waist seam", true_waist),)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        for half, aim in (("front", n.w_F), ("back", n.w_B)):
            length = sum(
                sheet.length(c, e) for c, e in waist_edges(sheet) if _half(c) == half
            )
            off = length - aim
            if abs(off) > (0.05 if self.excess_given_back else 0.3):
                yield Finding(
                    "B2",
                    Severity.REFUSE,
                    f"The {half} waist measures {length:.2f} cm and should be "
                    f"{aim:.2f} cm.",
                    "waist",
                    "Look at the waist darts.",
                    {"length": length, "aim": aim},
                )
        if abs(n.ex) > 0.6:
            yield Finding(
                "W1",
                Severity.REFUSE,
                "Truing moves the waist by more than 0.6 cm.",
                "ex",
                "The darts are too wide for one seam; share them out.",
                {"ex": n.ex},
            )
        elif abs(n.ex) > 0.3:
            yield Finding(
                "W1",
                Severity.WARN,
                "Truing moves the waist by more than 0.3 cm.",
                "ex",
                "Look at the darts.",
                {"ex": n.ex},
            )


def _seam(sheet: Sheet, side_panel: str) -> str:
    return "panel seam" if side_panel in sheet.pieces else "dart"


def _half(code: str) -> str:
    return "front" if code.startswith("F") else "back"


def waist_edges(sheet: Sheet) -> list[tuple[str, str]]:
    """(piece, edge) of every bodice waist edge, from centre front to centre back."""
    out = []
    for code in ("FC", "FS", "F", "BS", "BC", "B"):
        if code in sheet.pieces:
            p = sheet.pieces[code]
            names = (
                ["waist", "waist side"] if code[0] == "F" else ["waist side", "waist"]
            )
            out += [(code, e) for e in names if p.has(e)]
    return out


def true_waist(d: Drafting) -> None:
    """Redraw every waist edge over its joints."""
    n = d.n
    d.part = "waist"
    sheet = d.sheet
    drawn: list[Path] = []

    def dip(p: Piece, neighbour: str) -> float:
        if neighbour in ("side", "side low"):
            return n.delta_s
        return n.delta_f if p.code.startswith("F") else n.delta_b

    for code, name in waist_edges(d.sheet):
        p = sheet.piece(code)
        before, after = p.before(name), p.after(name)
        path = p.edge(name).path
        loose = ("cf", "cb", "slant")
        down = None if before.name in loose else before.path.end_direction
        up = None if after.name in loose else after.path.start_direction * -1.0
        curve = waist_curve(
            path.start,
            path.end,
            down,
            up,
            0.0 if down is None else dip(p, before.name),
            0.0 if up is None else dip(p, after.name),
        )
        new = Path((curve,))
        sheet = redraw(sheet, code, [name], [Edge(name, new)])
        drawn.append(new)
    d.lay(
        Verb.REDRAW,
        sheet,
        "waist",
        "waist, every seam run on below the waist line",
        amounts=(
            (f"at the front {_seam(sheet, 'FS')}", "delta_f"),
            ("at the side", "delta_s"),
            (f"at the back {_seam(sheet, 'BS')}", "delta_b"),
        ),
        detail="then joined by curves that meet each seam at a right angle",
        lines=tuple(drawn),
    )
