"""Places on paper as a hand measures them, and lines through them.

    { edge = "neck", from = "shoulder", along = "B/24" }    along an edge from its end
    { edge = "armhole", from = "side", share = "1/3" }      a part of its length
    { corner = ["neck", "shoulder"] }                       where two edges meet
    { mark = "BP" }                                         a mark of the draft

A length is written as a number or as plain arithmetic on measures and numbers of the
draft, so that the same steps fit another body.
"""

from collections.abc import Iterator, Mapping, Sequence
from typing import Annotated, NamedTuple

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, ValidationInfo

from clothwright.curves import Cubic, Line, Path, Point, Segment, Vector, distance, mix
from clothwright.paper import CornerAfter, Drafting, On, PaperError, Piece, Spot
from clothwright.paper.drafting import Size as Number
from clothwright.rules import Kind, Rule
from clothwright.rules.formula import read_formula
from clothwright.units import LengthError, Unit
from clothwright.units.fields import Ratio


class Amount(NamedTuple):
    """A length as written, and the unit of its bare numbers."""

    text: str
    unit: Unit

    def rule(self, key: str, name: str) -> Rule:
        """The length as a number of the draft. Raises FormulaError, LengthError."""
        read = read_formula(self.text, name, self.unit, _ANY, Kind.LENGTH)
        return Rule(
            key,
            key,
            name,
            Kind.LENGTH,
            "her own step",
            read.needs,
            read.compute,
            self.text,
        )


class _Any(Mapping[str, str]):
    """Every name stands for itself; one that no draft knows is told when it is
    wanted."""

    def __getitem__(self, name: str) -> str:
        return name

    def __contains__(self, name: object) -> bool:
        return isinstance(name, str)

    def __iter__(self) -> Iterator[str]:
        return iter(())

    def __len__(self) -> int:
        return 0


_ANY = _Any()


def _amount(value: object, info: ValidationInfo) -> object:
    if value is None or isinstance(value, Amount):
        return value
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        raise LengthError('write a length, like "3 cm", or arithmetic, like "B/24"')
    unit = (info.context or {}).get("unit", Unit.CM)
    amount = Amount(str(value), unit)
    amount.rule("length", str(info.field_name))
    return amount


Size = Annotated[Amount | None, BeforeValidator(_amount, json_schema_input_type=str)]
"""A length of a hand step: a number or a formula."""

Measured = tuple[str, Amount, str]
"""Where in a step a length stands, the length, and what it is in words."""


class HandModel(BaseModel):
    """Base of what is written in a hand step."""

    model_config = ConfigDict(
        extra="forbid",
        frozen=True,
        allow_inf_nan=False,
        populate_by_name=True,
        defer_build=True,
    )


class Place(HandModel):
    """A place on a piece; see the module for how it is written."""

    edge: str = ""
    from_: str = Field(default="", alias="from")
    along: Size = None
    share: Ratio | None = Field(None, ge=0.0, le=1.0)
    corner: tuple[str, str] | None = None
    mark: str = ""
    right: Size = None
    down: Size = None

    def measured(self, within: str) -> Iterator[Measured]:
        """The lengths that this place is measured by."""
        if self.along is not None:
            yield f"{within}.along", self.along, f"along the {self.edge}"
        for way in ("right", "down"):
            amount: Amount | None = getattr(self, way)
            if amount is not None:
                yield f"{within}.{way}", amount, way

    def said(self) -> str:
        """The place in words, its lengths left to the amounts of the step."""
        if self.corner:
            return f"the corner of {self.corner[0]} and {self.corner[1]}"
        if self.mark:
            return self.mark
        if self.share is not None:
            return f"{_part(self.share)} of the {self.edge} from the {self.from_}"
        return f"the {self.edge}"

    def point(self, d: Drafting, piece: Piece, key: str) -> Point:
        """Where it is, cm; `key` names its numbers. Raises PaperError."""
        at = self._at(d, piece, key)
        for way, u in (("right", Vector(1.0, 0.0)), ("down", Vector(0.0, 1.0))):
            if getattr(self, way) is not None:
                at = at + u * d.n[f"{key}.{way}"]
        return at

    def spot(self, d: Drafting, piece: Piece, key: str) -> Spot:
        """The same as a place of the outline. Raises PaperError."""
        at = self.point(d, piece, key)
        if self.edge and self.right is None and self.down is None:
            s = self._length(d, piece, key)
            if NEAR < s < piece.edge(self.edge).length - NEAR:
                return On(self.edge, s)
        for e in piece.edges:
            if distance(e.path.end, at) < NEAR:
                return CornerAfter(e.name)
        for e in piece.edges:
            place, gap = e.path.nearest(at)
            if gap < NEAR:
                return On(e.name, e.path.length_to(place))
        raise PaperError(
            f"{piece.code}: {self.said()} lies inside the piece; begin and end a line "
            "on its edges"
        )

    def _at(self, d: Drafting, piece: Piece, key: str) -> Point:
        if self.corner:
            return _corner(piece, *self.corner)
        if self.mark:
            if self.mark not in d.sheet.points:
                known = ", ".join(sorted(d.sheet.points))
                raise PaperError(
                    f"there is no mark {self.mark} on the table; it has {known}"
                )
            return d.sheet.points[self.mark]
        if self.edge:
            return piece.edge(self.edge).path.at_length(self._length(d, piece, key))
        raise PaperError(
            f"{piece.code}: a place is missing; write an edge and how far along it, "
            "a corner, or a mark"
        )

    def _length(self, d: Drafting, piece: Piece, key: str) -> float:
        """How far along its edge, from where the edge begins in the loop."""
        path = piece.edge(self.edge).path
        if self.along is not None:
            s = d.n[f"{key}.along"]
        elif self.share is not None:
            s = path.length * self.share
        else:
            raise PaperError(
                f"{piece.code}: say how far along the {self.edge} the place is: "
                'along = "3 cm", or share = "1/2"'
            )
        if not -NEAR <= s <= path.length + NEAR:
            raise PaperError(
                f"{piece.code}: {s:.1f} cm along the {self.edge} is beyond its end: it "
                f"is {path.length:.1f} cm long"
            )
        before, after = piece.before(self.edge).name, piece.after(self.edge).name
        if self.from_ not in (before, after):
            raise PaperError(
                f"{piece.code}: say from which end of the {self.edge} to measure: "
                f'from = "{before}" or from = "{after}"'
            )
        return s if self.from_ == before else path.length - s


NEAR = 0.005
"""A place this near to a corner, cm, is the corner."""


def _part(share: float) -> str:
    for n in range(2, 9):
        for k in range(1, n):
            if abs(share - k / n) < 1e-6:
                return "half" if n == 2 else f"{k}/{n}"
    return f"{share:g}"


def _corner(piece: Piece, a: str, b: str) -> Point:
    if piece.after(a).name == b:
        return piece.edge(a).path.end
    if piece.after(b).name == a:
        return piece.edge(b).path.end
    raise PaperError(
        f"{piece.code}: {a} and {b} do not meet; {a} lies between "
        f"{piece.before(a).name} and {piece.after(a).name}"
    )


def line_through(points: Sequence[Point], bow: float = 0.0) -> Path:
    """A smooth line through points; of two alone straight, or bowed by `bow` cm at its
    middle, to the right as it is walked."""
    if len(points) == 2:
        a, b = points
        if abs(bow) < 1e-9:
            return Path((Line(a, b),))
        u = (b - a) * (1 / distance(a, b))
        side = Vector(-u[1], u[0]) * (bow * 4 / 3)
        return Path((Cubic(a, mix(a, b, 1 / 3) + side, mix(a, b, 2 / 3) + side, b),))
    out: list[Segment] = []
    for i in range(len(points) - 1):
        a, b = points[i], points[i + 1]
        before, after = points[max(0, i - 1)], points[min(len(points) - 1, i + 2)]
        out.append(Cubic(a, a + _way(before, a, b), b - _way(a, b, after), b))
    return Path(tuple(out))


def _way(a: Point, p: Point, b: Point) -> Vector:
    """The handle at a point between two others: along their chord, a third as long as
    the nearer of them is away."""
    chord = distance(a, b)
    near = min((d for d in (distance(a, p), distance(p, b)) if d > 0), default=0.0)
    return (b - a) * (near / (3 * chord)) if chord > 0 else Vector(0.0, 0.0)


New = tuple[str, str]
"""Code and name of a new piece: ["FY", "Front yoke"]."""


class OwnStep(HandModel):
    """Base of her steps."""

    piece: str

    def measured(self) -> Iterator[Measured]:
        """Its lengths: where they stand, as written, and in words."""
        for name in ("from_", "to"):
            place = getattr(self, name, None)
            if isinstance(place, Place):
                yield from place.measured(name.strip("_"))
        for i, place in enumerate(getattr(self, "over", ()), 1):
            yield from place.measured(f"over{i}")
        for name, words in (
            ("bow", "bowed"),
            ("by", "opened"),
            ("by_end", "opened at the end"),
            ("right", "to the right"),
            ("down", "down"),
        ):
            amount = getattr(self, name, None)
            if amount is not None:
                yield name, amount, words

    def amounts(self, key: str) -> tuple[tuple[str, Number], ...]:
        """The same for the record: words and the key of the number."""
        return tuple(
            (words if words.startswith(("along", "to", "down")) else f"{words} {{}}", k)
            for k, words in ((f"{key}.{at}", w) for at, _, w in self.measured())
        )


def told(p: Piece) -> str:
    """A piece in a sentence: "front (F)"."""
    return f"{p.name[:1].lower()}{p.name[1:]} ({p.code})"
