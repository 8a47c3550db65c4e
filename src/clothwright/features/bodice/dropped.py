"""A torso cut across by a seam below the waist, and its own skirt below that
(blocks D7).

Each half is cut level, raised where a seam leans out so that the edges are square to
it (truing 4); its side is moved until the seam measures what the numbers say. Then the
torso is made longer, to blouse over (transformations 1.9).
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from clothwright.blocks.torso import (
    FISH_EYE,
    HIP_LINE,
    WAIST_LINE,
    fish_eye,
)
from clothwright.blocks.trial import by_trial
from clothwright.curves import Path, Point, Vector, shift
from clothwright.features.bodice.waist_rules import waist_curve
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    InnerLine,
    PaperError,
    Piece,
    Run,
    Seam,
    SeamKind,
    Sheet,
    Verb,
)
from clothwright.truing import arc_like

BLENDED = 5.0
"""So much of a seam beside a joint is blended, cm (truing 4: t)."""

CRUMB = 0.5
"""What is shorter beside the seam is no line of its own: at the hip, cm."""

MOST_MOVED = 2.0
"""The side is moved by no more to make up the seam's length, cm (common practice, no
source)."""

LOWER = {
    "F": ("PF", "Front skirt"),
    "FC": ("PFC", "Centre front skirt"),
    "FS": ("PFS", "Side front skirt"),
    "B": ("PB", "Back skirt"),
    "BC": ("PBC", "Centre back skirt"),
    "BS": ("PBS", "Side back skirt"),
}
"""Code and name of what is cut off each piece."""


def runs_below(piece: Piece) -> bool:
    """True for a piece of a torso that runs on below the waist, to a hem or a seam."""
    return any(k.name == WAIST_LINE for k in piece.lines)


def open_legs(sheet: Sheet, code: str) -> tuple[Path, ...]:
    """Both legs of a half's dart that ends in the seam below the waist, as the loop
    meets them; none where there is no such dart."""
    piece = sheet.pieces.get(code)
    if piece is None or not runs_below(piece):
        return ()
    return tuple(e.path for e in piece.edges if e.name.startswith("leg "))


_WHOLE = {True: ("F", "waist", "waist side"), False: ("B", "waist side", "waist")}
_PANELS = {True: ("FC", "FS"), False: ("BS", "BC")}
_LEGS = {True: ("leg cf", "leg side"), False: ("leg side", "leg cb")}
_LOWER_LEGS = {True: ("dart centre", "dart side"), False: ("dart side", "dart centre")}
_CENTRES = ("cf", "cb")


@dataclass(frozen=True)
class _Stop:
    """A line that runs down, parted by the seam."""

    upper: Path
    lower: Path

    @property
    def at(self) -> Point:
        return self.upper.end

    def moved(self, way: Vector) -> "_Stop":
        """The same with the seam's end moved on both parts."""
        at = self.at + way
        return _Stop(
            self.upper.pinned(self.upper.start, at),
            self.lower.pinned(at, self.lower.end),
        )

    def longer(self, by: float) -> "_Stop":
        """The upper part made longer."""
        at = self.at + Vector(0.0, by)
        return replace(self, upper=self.upper.pinned(self.upper.start, at))


@dataclass(frozen=True)
class _Stretch:
    """A stretch of the seam on one piece, from its right end to its left."""

    piece: str
    name: str
    right: _Stop
    left: _Stop

    @property
    def line(self) -> Path:
        """Square to the lines in which it ends."""
        a, b = self.right.upper, self.left.upper
        return Path(
            (waist_curve(a.end, b.end, a.end_direction, b.end_direction, 0.0, 0.0),)
        )

    def longer(self, by: float) -> "_Stretch":
        """Both ends lower on the paper above the seam."""
        return replace(self, right=self.right.longer(by), left=self.left.longer(by))


def _parted(down: Path, level: float, out: float, on: float = 0.0) -> _Stop:
    """A line parted at a level; `out` is 1 where the paper lies to its left, −1 where
    to its right, 0 for a centre. Where it leans out of the paper it is parted higher;
    `on` is further down along it."""
    hits = down.meets(Path.line(Point(-200.0, level), Point(300.0, level)))
    if not hits:
        raise PaperError(
            "the torso does not reach down to its seam below the waist (dd): make it "
            "longer (L), or the seam higher"
        )
    s = hits[0][0]
    s += on - BLENDED / 2 * out * down.direction_at_length(s).x
    upper, lower = down.split_at_length(s)
    return _Stop(upper.without_crumbs(CRUMB), _blended(lower))


def _blended(rest: Path) -> Path:
    """What is left of a line below the seam, without crumbs; it leaves the seam as
    before, also where a crumb of the hip's curve lay there."""
    even = rest.without_crumbs(CRUMB)
    if even is rest or even.length < 2 * BLENDED:
        return even
    on = even.between(BLENDED, even.length)
    way = on.start_direction
    return arc_like(rest.start, on.start, way, rest.start_direction) + on


def _stretches(
    sheet: Sheet, level: float, *, front: bool, on: float = 0.0
) -> list[_Stretch]:
    """The seam of a half, from right to left; `on` lowers its end at the side."""
    whole, first, second = _WHOLE[front]
    codes = [whole] if whole in sheet.pieces else list(_PANELS[front])
    out = []
    for code in codes:
        piece = sheet.piece(code)
        before, after = piece.before("hem"), piece.after("hem")
        ends = [
            _parted(
                down,
                level,
                0.0 if edge.name in _CENTRES else way,
                on if edge.name.startswith("side") else 0.0,
            )
            for edge, down, way in (
                (before, before.path, 1.0),
                (after, after.path.reversed(), -1.0),
            )
        ]
        legs = _legs(sheet, code, level)
        if legs:
            out.append(_Stretch(code, first, ends[0], legs[0]))
            out.append(_Stretch(code, second, legs[1], ends[1]))
        else:
            out.append(_Stretch(code, "waist", *ends))
    return out


def _legs(sheet: Sheet, code: str, level: float) -> list[_Stop]:
    """Both legs of a fish-eye dart that passes the seam, from its upper point down, as
    the loop meets them; none where it ends above."""
    dart = fish_eye(sheet, code)
    if dart is None or dart.segments[1].end.y <= level:
        return []
    first, second = dart.split_at_length(dart.length / 2)
    return [_parted(first, level, -1.0), _parted(second.reversed(), level, 1.0)]


def _to_width(stretches: list[_Stretch], aim: float, *, front: bool) -> list[_Stretch]:
    """The same with the side moved in or out until the seam is `aim` long, cm."""

    def moved(by: float) -> list[_Stretch]:
        out = list(stretches)
        if front:
            out[-1] = replace(out[-1], left=out[-1].left.moved(Vector(-by, 0.0)))
        else:
            out[0] = replace(out[0], right=out[0].right.moved(Vector(by, 0.0)))
        return out

    def over(by: float) -> float:
        return sum(s.line.length for s in moved(by)) - aim

    by = by_trial(over, -MOST_MOVED, MOST_MOVED)
    if by is None:
        half = "front" if front else "back"
        raise PaperError(
            f"the {half} of the torso does not come to the {aim:.1f} cm that its seam "
            "below the waist should measure: lay the seam (dd) elsewhere, or give the "
            "waist more ease (Ew)"
        )
    return moved(by)


# -- the pieces ------------------------------------------------------------------------
def _upper(piece: Piece, on: Sequence[_Stretch], *, front: bool) -> Piece:
    """The piece above the seam, with the legs of a dart that ends in it."""
    before, after = piece.before("hem"), piece.after("hem")
    loop: list[Edge] = []
    for e in piece.edges:
        if e is before:
            loop.append(e.along(on[0].right.upper))
        elif e is after:
            loop.append(e.along(on[-1].left.upper.reversed()))
        elif e.name != "hem":
            loop.append(e)
        else:
            loop.append(Edge(on[0].name, on[0].line))
            if len(on) > 1:
                first, second = _LEGS[front]
                loop.append(Edge(first, on[0].left.upper.reversed()))
                loop.append(Edge(second, on[1].right.upper))
                loop.append(Edge(on[1].name, on[1].line))
    piece = piece.with_edges(loop)
    if len(on) == 1:
        return piece
    lines = tuple(k for k in piece.lines if k.name != FISH_EYE)
    ends = (f"{FISH_EYE}, upper end", f"{FISH_EYE}, lower end")
    marks = tuple(k for k in piece.marks if k.name not in ends)
    return piece.holding(marks, lines, piece.grain)


def _lower(piece: Piece, on: Sequence[_Stretch], *, front: bool) -> Piece:
    """What is cut off the piece, the rest of a dart at its seam."""
    code, name = LOWER[piece.code]
    before, hem, after = (
        piece.before("hem"),
        piece.edge("hem"),
        piece.after("hem"),
    )
    loop = [Edge(on[-1].name, on[-1].line.reversed())]
    if len(on) > 1:
        first, second = _LOWER_LEGS[front]
        loop.append(Edge(second, on[1].right.lower))
        loop.append(Edge(first, on[0].left.lower.reversed()))
        loop.append(Edge(on[0].name, on[0].line.reversed()))
    loop += [
        Edge(_plain(before.name), on[0].right.lower, before.kind),
        hem,
        Edge(_plain(after.name), on[-1].left.lower.reversed(), after.kind),
    ]
    lines = tuple(InnerLine(k.name, k.path) for k in piece.lines if k.name == HIP_LINE)
    return Piece(code, name, tuple(loop), lines=lines)


def _plain(name: str) -> str:
    return "side" if name.startswith("side") else name


def _dart(code: str, name: str, first: str, second: str) -> Seam:
    """A dart that begins at the seam, as a seam of its piece with itself; its legs as
    the loop meets them."""
    return Seam(
        name,
        name,
        (Run(code, first),),
        (Run(code, second, True),),
        "waist",
        "point",
        Ease.about(0.0, 0.1),
        kind=SeamKind.DART,
    )


def _pieces(sheet: Sheet, half: Sequence[_Stretch], *, keep: bool) -> Sheet:
    """The sheet with a half cut; with `keep` its lower part too."""
    front = half[0].piece.startswith("F")
    called = "front" if front else "back"
    for code in dict.fromkeys(s.piece for s in half):
        piece = sheet.piece(code)
        on = [s for s in half if s.piece == code]
        sheet = sheet.put(_upper(piece, on, front=front))
        darted = len(on) > 1
        if darted:
            sheet = sheet.sew(_dart(code, f"{called} waist dart", *_LEGS[front]))
        if keep:
            lower = _lower(piece, on, front=front)
            sheet = sheet.put(lower)
            if darted:
                legs = _LOWER_LEGS[front][::-1]
                sheet = sheet.sew(_dart(lower.code, f"skirt {called} dart", *legs))
    return sheet


def cut_across(d: Drafting, *, keep: bool) -> None:
    """Cut both halves across below the waist; with `keep` what is below is the skirt,
    else it is laid aside."""
    n, sheet = d.n, d.sheet
    d.part = "waist"
    level = n.yW + n.dd
    back = _to_width(_stretches(sheet, level, front=False), n.w_B, front=False)
    front = _level_sides(sheet, level, back[0], n.w_F, n.blouse)
    for half in (back, front):
        sheet = _pieces(sheet, half, keep=keep)
    made = (*back, *front)
    d.lay(
        Verb.CUT,
        sheet,
        ", ".join(dict.fromkeys(s.piece for s in made)),
        "both halves cut across",
        amounts=(
            ("below the waist", "dd"),
            ("the front's half {} along the seam", "w_F"),
            ("the back's {}", "w_B"),
        ),
        detail="level at the centres, square to the sides and to every other seam; "
        + ("what is below is the skirt" if keep else "what is below is laid aside"),
        lines=tuple(s.line for s in made),
    )
    if n.blouse <= 0:
        return
    sheet = d.sheet
    for half in (back, front):
        sheet = _lengthened(sheet, half, n.blouse)
    d.lay(
        Verb.MOVE,
        sheet,
        "waist",
        "torso cut level between waist and seam and moved apart, to blouse over",
        amounts=(("by {}", "blouse"),),
        detail="then sides, centres and darts are redrawn from end to end",
    )


def _lengthened(sheet: Sheet, on: Sequence[_Stretch], by: float) -> Sheet:
    """The upper parts of a half made longer."""
    front = on[0].piece.startswith("F")
    lines = {(s.piece, s.name): s.line.moved(shift((0.0, by))) for s in on}
    for code in dict.fromkeys(s.piece for s in on):
        piece = sheet.piece(code)
        mine = [s.longer(by) for s in on if s.piece == code]
        edges = {s.name: lines[code, s.name] for s in mine}
        first, last = mine[0], mine[-1]
        edges[piece.before(first.name).name] = first.right.upper
        edges[piece.after(last.name).name] = last.left.upper.reversed()
        if len(mine) > 1:
            legs = _LEGS[front]
            edges[legs[0]] = first.left.upper.reversed()
            edges[legs[1]] = last.right.upper
        sheet = sheet.put(
            piece.with_edges(
                e.along(edges[e.name]) if e.name in edges else e for e in piece.edges
            )
        )
    return sheet


def _level_sides(
    sheet: Sheet, level: float, back: _Stretch, aim: float, blouse: float
) -> list[_Stretch]:
    """The seam of the front, its end at the side so low that both sides are of one
    length, their darts closed."""
    wanted = back.right.longer(blouse).upper.length
    code = "F" if "F" in sheet.pieces else "FS"
    piece = sheet.piece(code)
    last = piece.after("hem").name
    above = sum(
        e.length for e in piece.edges if e.name.startswith("side") and e.name != last
    )
    on = 0.0
    for _ in range(6):
        front = _to_width(_stretches(sheet, level, front=True, on=on), aim, front=True)
        lacks = wanted - above - front[-1].left.longer(blouse).upper.length
        on += lacks
        if abs(lacks) < 1e-4:
            break
    return front
