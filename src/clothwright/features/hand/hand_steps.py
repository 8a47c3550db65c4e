"""Her own steps: the words of the table, each with how it was measured.

    cut      divide a piece along a line from edge to edge; the two are sewn there
    tape     join along a seam (a dart that is cut open to its point closes so)
    spread   cut straight and open by an amount at each end
    redraw   give a run of edges a new line; what it takes up is gathered
    trace    copy a piece; the edges named are sewn to the old ones
    move     lay a piece elsewhere on the table
    unfold   open a piece at its fold

Seams follow: a divided edge stays sewn, and where an edge grows, what it is sewn to
takes in the difference as gathers or ease, if she says so.
"""

from dataclasses import replace
from typing import Literal

from pydantic import Field

from clothwright.curves import Cubic, Path, direction, distance
from clothwright.features.grain import grained, longest_line
from clothwright.features.hand.hand_places import (
    New,
    OwnStep,
    Place,
    Size,
    line_through,
    told,
)
from clothwright.features.hand.hand_seams import taken_in
from clothwright.paper import (
    Drafting,
    Edge,
    NotchPair,
    PaperError,
    Piece,
    Seam,
    Sheet,
    Verb,
    cut,
    redraw,
    spread,
    straight,
    tape,
)
from clothwright.paper import Size as Number

NOTCHED = 12.0
"""A new seam from here on is notched, cm: two of its kind cannot be confused."""


class Cut(OwnStep):
    """Divide a piece along a line."""

    do: Literal["cut"]
    from_: Place = Field(alias="from")
    to: Place
    over: tuple[Place, ...] = ()
    bow: Size = None
    keeps: str
    """An edge whose part keeps the piece's code and name."""

    new: New
    edge: str = "line"
    """What the new edges, and the seam between them, are called."""

    def apply(self, d: Drafting, key: str) -> None:
        """Cut, and sew the two parts. Raises PaperError."""
        p = d.sheet.piece(self.piece)
        if self.new[0] in d.sheet.pieces:
            raise PaperError(
                f"there is a piece {self.new[0]} already; give the new one another code"
            )
        start, end = (
            self.from_.spot(d, p, f"{key}.from"),
            self.to.spot(d, p, f"{key}.to"),
        )
        path = _line(self, d, p, key)
        kept, new = (p.code, p.name), self.new

        def parted(into: tuple[New, New]) -> Sheet:
            return cut(
                d.sheet,
                p.code,
                path,
                start,
                end,
                edge=self.edge,
                seam=key,
                seam_name=self.edge,
                into=into,
            )

        sheet = parted((kept, new))
        if not sheet.piece(p.code).has(self.keeps):
            sheet = parted((new, kept))
        if not sheet.piece(p.code).has(self.keeps):
            p.edge(self.keeps)  # says what edges there are
        sheet = _kept_grain(p, sheet, p.code, self.new[0])
        seam, length = sheet.seam(key), path.length
        if length >= NOTCHED:
            seam = replace(seam, notches=(NotchPair(0.4 * length, 0.4 * length),))
        says = f"{told(p)} from {self.from_.said()} to {self.to.said()}"
        d.lay(
            Verb.CUT,
            sheet.sew(seam),
            self.new[0],
            says,
            amounts=self.amounts(key),
            detail=f"its other part is the {self.new[1].lower()} ({self.new[0]})",
            lines=(path,),
        )


class Tape(OwnStep):
    """Join along a seam."""

    do: Literal["tape"]
    piece: str = ""
    seam: str
    as_: New | None = Field(default=None, alias="as")

    def apply(self, d: Drafting, key: str) -> None:
        """Tape; the first side's piece keeps its code unless another is given. Raises
        PaperError."""
        seam = _seam(d.sheet, self.seam)
        code, name = self.as_ or ("", "")
        keep = d.sheet.piece(seam.left[0].piece)
        names = {keep.name, d.sheet.piece(seam.right[0].piece).name}
        sheet = tape(d.sheet, seam.code, code=code, name=name)
        says = f"{seam.name} closed, {' and '.join(sorted(n.lower() for n in names))}"
        d.lay(Verb.TAPE, sheet, code or keep.code, says)


class Spread(OwnStep):
    """Cut straight and open by an amount at each end."""

    do: Literal["spread"]
    from_: Place = Field(alias="from")
    to: Place
    by: Size
    by_end: Size = None
    turns: str
    """An edge of the part that turns."""

    taken: Literal["gathers", "ease", "flare"] = "flare"

    def apply(self, d: Drafting, key: str) -> None:
        """Open the slash. Raises PaperError."""
        p = d.sheet.piece(self.piece)
        start, end = (
            self.from_.spot(d, p, f"{key}.from"),
            self.to.spot(d, p, f"{key}.to"),
        )
        opened = d.n[f"{key}.by_end"] if self.by_end is not None else 0.0
        sheet = spread(
            d.sheet,
            p.code,
            start,
            end,
            at_start=d.n[f"{key}.by"],
            at_end=opened,
            moving=self.turns,
        )
        if self.taken != "flare":
            mouths = (
                self.from_.point(d, p, f"{key}.from"),
                self.to.point(d, p, f"{key}.to"),
            )
            sheet = taken_in(d.sheet, sheet, p.code, mouths, self.taken)
        says = f"{told(p)} from {self.from_.said()} to {self.to.said()}"
        d.lay(
            Verb.SPREAD,
            sheet,
            p.code,
            says,
            amounts=self.amounts(key),
            detail="" if self.taken == "flare" else f"taken up as {self.taken}",
        )


class Redraw(OwnStep):
    """Give a run of edges a new line."""

    do: Literal["redraw"]
    edges: tuple[str, ...] = Field(min_length=1)
    """The run, clockwise."""

    over: tuple[Place, ...] = ()
    bow: Size = None
    cornered: bool = False
    """The places are corners between the edges, which are ruled anew."""

    taken: Literal["gathers", "ease", ""] = ""
    """How what a dart in the run leaves open is taken up."""

    def apply(self, d: Drafting, key: str) -> None:
        """Redraw. Raises PaperError."""
        p, sheet = d.sheet.piece(self.piece), d.sheet
        first, last = p.edge(self.edges[0]), p.edge(self.edges[-1])
        middle = [q.point(d, p, f"{key}.over{i}") for i, q in enumerate(self.over, 1)]
        ends = [first.path.start, *middle, last.path.end]
        if self.cornered:
            if len(middle) != len(self.edges) - 1:
                raise PaperError(
                    f"{p.code}: {len(self.edges)} edges have {len(self.edges) - 1} "
                    f"corners between them; {len(middle)} are given"
                )
            new = [
                straight(n, a, b, p.edge(n).kind)
                for n, a, b in zip(self.edges, ends, ends[1:], strict=False)
            ]
        elif middle or self.bow is not None:
            bow = d.n[f"{key}.bow"] if self.bow is not None else 0.0
            new = [Edge(_name(self.edges), line_through(ends, bow), first.kind)]
        else:
            path = _bridged(first.path, last.path)
            new = [Edge(_name(self.edges), path, first.kind)]
        inside = {(p.code, n) for n in self.edges}
        within = [
            s.code
            for s in sheet.seams
            if all((r.piece, r.edge) in inside for r in s.runs())
        ]
        made = sheet if self.cornered else sheet.unsew(*within)
        made = redraw(made, p.code, list(self.edges), new)
        mouth = (first.path.end, last.path.start)
        if self.taken:
            made = taken_in(sheet.unsew(*within), made, p.code, mouth, self.taken)
        says = f"{told(p)}, {' and '.join(e.name for e in new)}"
        if not self.cornered and len(self.edges) > 1:
            says += " in one line"
        if self.over:
            how = "ruled anew to" if self.cornered else "over"
            says += f", {how} {', '.join(q.said() for q in self.over)}"
        amounts: list[tuple[str, Number]] = list(self.amounts(key))
        if self.taken:
            amounts.append(("it takes in {}", distance(*mouth)))
        d.lay(
            Verb.REDRAW,
            made,
            f"{p.code}.{new[0].name}",
            says,
            amounts=amounts,
            detail=_drawn_up(self.taken),
            lines=tuple(e.path for e in new),
        )


def _drawn_up(taken: str) -> str:
    """What becomes of what is opened."""
    if not taken:
        return ""
    what = "drawn up" if taken == "gathers" else "eased in"
    return f"which is {what} as {taken} between the notches beside it"


def _bridged(first: Path, last: Path) -> Path:
    """Two lines of which the second begins away from the end of the first, in one: it
    leaves and arrives as they do, and is as long as they and the mouth between them.
    """
    if first is last:
        return first
    a, b = first.start, last.end
    u, v = first.start_direction, last.end_direction
    wanted = first.length + distance(first.end, last.start) + last.length

    def curve(k: float) -> Path:
        return Path((Cubic(a, a + u * (k * wanted), b - v * (k * wanted), b),))

    low, high = 0.0, 1.0
    for _ in range(40):
        k = (low + high) / 2
        low, high = (k, high) if curve(k).length < wanted else (low, k)
    return curve(low)


def _name(run: tuple[str, ...]) -> str:
    """The name of a line that takes the place of several: "neck" for "neck 2" and
    "neck", which were one before a cut."""
    base, _, number = run[0].rpartition(" ")
    return base if number.isdigit() and base in run else run[0]


def _line(step: Cut, d: Drafting, p: Piece, key: str) -> Path:
    places = [
        step.from_.point(d, p, f"{key}.from"),
        *(q.point(d, p, f"{key}.over{i}") for i, q in enumerate(step.over, 1)),
        step.to.point(d, p, f"{key}.to"),
    ]
    bow = d.n[f"{key}.bow"] if step.bow is not None else 0.0
    return line_through(places, bow)


def _seam(sheet: Sheet, name: str) -> Seam:
    for s in sheet.seams:
        if name in (s.code, s.name):
            return s
    known = ", ".join(f"{s.code} ({s.name})" for s in sheet.seams)
    raise PaperError(f"there is no seam {name} on the table; it has {known}")


def with_grain(before: Sheet, after: Sheet) -> Sheet:
    """Grain on the pieces that a step has changed: along that of the piece before, as
    it lies now; plumb where there was none."""
    new = []
    for code, p in after.pieces.items():
        if before.pieces.get(code) is p:
            continue
        line = longest_line(p, direction(*p.grain)) if p.grain else None
        new.append(replace(p, grain=line) if line else grained(p))
    return after.put(*new)


def _kept_grain(old: Piece, sheet: Sheet, *codes: str) -> Sheet:
    """The grain of a piece that was cut, on each of its parts."""
    if old.grain is None:
        return sheet
    way = direction(*old.grain)
    parts = (sheet.piece(c) for c in codes)
    return sheet.put(*(replace(p, grain=longest_line(p, way)) for p in parts))
