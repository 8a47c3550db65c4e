"""The bust dart led to another place of the front, or to two.

There it is sewn as a dart, laid as a tuck, or taken up as gathers or ease
(transformations 1.1, 1.6). The front stays in one piece with its waist dart.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from enum import Enum
from itertools import combinations
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.full_cup import WIDE_DART
from clothwright.curves import Point, distance
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.front_dart import (
    OPENED,
    DartPlace,
    Opened,
    bridged,
    close_side,
    dart_angle_of,
    keep_open,
    lead,
    set_back,
    tighten_armhole,
)
from clothwright.features.hand_seams import taken_in
from clothwright.features.operations import Operation, SeamType, Stitch, Task, Work
from clothwright.features.side_dart import (
    POINTS_APART,
    SIDE_DART,
    front_waist_dart,
    waist_dart_findings,
)
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Edge, PaperError, Sheet, Verb, redraw
from clothwright.rules import Kind, Numbers, RuleTable
from clothwright.units.fields import Length, Ratio

_SRC = "transformations 1.1"
_FULLNESS = "transformations 1.6"


class TakenUp(Enum):
    """What becomes of the dart where it opens."""

    DART = "a dart"
    TUCK = "a tuck"
    """Folded like a dart, stitched down for a part of its length only."""

    GATHERS = "gathers"
    EASE = "ease"
    """Eased in: a small part of the dart only."""


BUST_DART = RuleTable("bust dart led elsewhere")


@BUST_DART.rule(
    "θ1",
    "part of the bust dart that is led",
    kind=Kind.ANGLE,
    key="theta_1",
    source=_SRC,
    formula="share·(θ + φn)",
)
def _led(theta: float, phi_n: float, share_1: float) -> float:
    return (theta + phi_n) * share_1


@BUST_DART.rule(
    "θ2",
    "rest of the bust dart",
    kind=Kind.ANGLE,
    key="theta_2",
    source=_SRC,
    formula="θ + φn − θ1",
)
def _rest(theta: float, phi_n: float, theta_1: float) -> float:
    return theta + phi_n - theta_1


AT_WAIST = RuleTable("bust dart led to the waist")


@AT_WAIST.rule(
    "y(Pf)",
    "level of the point of the front waist dart",
    source="first garment 5.1",
    formula="yBP while it is drafted; set back when the waist is trued",
    key="y_Pf",
)
def _to_bp(y_BP: float) -> float:
    return y_BP


_BACK: Mapping[DartPlace, float] = {
    DartPlace.SHOULDER: 4.5,
    DartPlace.NECK: 5.5,
    DartPlace.ARMHOLE: 3.0,
    DartPlace.WAIST: 2.5,
}
"""How far a dart ends from the bust point, by where it opens, cm (1.1)."""

LEAST_BESIDE: Mapping[DartPlace, tuple[float, float]] = {
    DartPlace.SHOULDER: (1.5, 1.5),
    DartPlace.NECK: (2.0, 2.0),
    DartPlace.ARMHOLE: (6.0, 4.0),
}
"""What must stay of the edge on either side of a dart, in the direction of the loop, cm
(shoulder and neck our own choice: less cannot be sewn flat; armhole as a panel line,
first garment 5.1)."""

MOST_EASE = 0.6
"""What can be eased in over the bust without a dart, cm (1.4)."""


def _back_table(place: DartPlace, key: str) -> RuleTable:
    table = RuleTable(f"bust dart at the {place.value}, {key}")

    @table.rule(
        "set-back",
        "end of the bust dart from the bust point",
        key=key,
        source=_SRC,
        formula=f"{_BACK[place]:g} cm",
        low=0.0,
        high=8.0,
    )
    def _fixed() -> float:
        return _BACK[place]

    return table


_FIRST = {p: _back_table(p, "set_back_1") for p in DartPlace}
_SECOND = {p: _back_table(p, "set_back_2") for p in DartPlace}


class BustDart(Feature):
    """Front in one piece with its bust dart elsewhere than at the side."""

    kind: Literal["bust dart"] = "bust dart"
    title: ClassVar[str] = "Bust dart"
    sentence: ClassVar[str] = (
        "The front is in one piece with a waist dart; the [bust dart] goes to the {to} "
        "as {taken_up}, {set_back} from the bust point."
    )
    gives: ClassVar[frozenset[str]] = frozenset({"front panels"})
    needs: ClassVar[dict[str, str]] = {"armhole": "say how the armhole is finished"}
    clashes: ClassVar[dict[str, str]] = {
        "front panels": "the bust dart can go into one line only; leave one off"
    }

    to: DartPlace = DartPlace.SHOULDER
    taken_up: TakenUp = TakenUp.DART
    second: DartPlace | None = None
    """Where the rest of it goes when only a part is led; blank leaves it at the side.
    """

    second_taken_up: TakenUp = TakenUp.DART
    share: Annotated[
        Ratio | None,
        Number(
            "share_1",
            "share",
            "share of the bust dart that goes there",
            _SRC,
            low=0.1,
            high=1.0,
            kind=Kind.RATIO,
        ),
    ] = None
    along: Annotated[
        Ratio | None,
        Number(
            "along_1",
            "along",
            "place of the dart on its edge, from the neck or the underarm",
            _SRC,
            low=0.25,
            high=0.75,
            kind=Kind.RATIO,
        ),
    ] = None
    set_back: Annotated[
        Length | None,
        Number(
            "set_back_1",
            "set-back",
            "end of the bust dart from the bust point",
            _SRC,
            low=0.0,
            high=8.0,
        ),
    ] = None
    zone: Annotated[
        Length | None,
        Number(
            "gather_zone",
            "gathers",
            "stretch of the finished edge that takes the gathers",
            _FULLNESS,
            8.0,
            3.0,
            4.0,
            14.0,
            (6.0, 12.0),
        ),
    ] = None
    stitched: Annotated[
        Length | None,
        Number(
            "tuck_sewn",
            "tuck",
            "length for which a tuck is stitched down",
            _FULLNESS,
            3.0,
            1.25,
            0.0,
            12.0,
        ),
    ] = None

    def said(self) -> str:
        says = self.sentence
        if self.second is not None:
            says = (
                f"{says[:-1]}, and the rest to the {{second}} as {{second_taken_up}}."
            )
        return says

    def forbids(self) -> Mapping[str, str]:
        out = dict(self.clashes)
        if (DartPlace.ARMHOLE, TakenUp.GATHERS) in self._places():
            out["sleeve"] = (
                "gathers in the front armhole would be drawn up against the ease of "
                "the sleeve; lead the bust dart elsewhere, or sew it as a dart"
            )
        return out

    def _places(self) -> Iterator[tuple[DartPlace, TakenUp]]:
        yield self.to, self.taken_up
        if self.second is not None:
            yield self.second, self.second_taken_up

    def tables(self) -> tuple[RuleTable, ...]:
        places = [p for p, _ in self._places()]
        whole = (self.share or 1.0) >= 1.0 and self.second is None
        at_waist = DartPlace.WAIST in places
        return (
            SIDE_DART,
            BUST_DART,
            _WHOLE if whole else _HALF,
            _FIRST[self.to],
            *((_SECOND[self.second],) if self.second else ()),
            *((AT_WAIST,) if at_waist else ()),
        )

    def stages(self) -> tuple[Stage, ...]:
        out = [Stage(Rank.FRONT_PANELS, "the darts of the front", self._apply)]
        places = list(self._places())
        if any(p is DartPlace.WAIST for p, _ in places):
            out.append(Stage(Rank.CLOSURE, "the front waist dart", self._short))
        if any(how in _LAID for _, how in places):
            out.append(Stage(Rank.LAID_OPEN, "the fullness of the front", self._lay))
        return tuple(out)

    # -- drafting ----------------------------------------------------------------------
    def _apply(self, d: Drafting) -> None:
        n = d.n
        d.part = "front"
        if self.second is self.to:
            raise PaperError(
                "the bust dart is shared between two places; name another as the second"
            )
        if n.ta > 0:
            tighten_armhole(d)
        whole = dart_angle_of(d.sheet.piece("F"), "dart low", "dart high")
        turns = [whole * n.share_1, whole * (1.0 - n.share_1)]
        places = [place for place, _ in self._places()]
        starts = [
            0.0 if p is DartPlace.WAIST else self._along(d, p, chosen=p is self.to)
            for p in places
        ]
        for i, (place, along) in enumerate(zip(places, starts, strict=True)):
            at = d["BP"]
            if place is not DartPlace.WAIST:
                at = _start(d, place, along)
            lead(d, place, at, turns[i], f"theta_{i + 1}")
        if n.share_1 >= 1.0 or self.second is not None:
            close_side(d)
        else:
            set_back(d, "dart low", "dart high", "As", "set_back")
        for i, (place, how) in enumerate(self._places()):
            o = OPENED[place]
            if place is DartPlace.WAIST:
                continue
            if how not in _LAID:
                set_back(d, o.leg_outer, o.leg_cf, f"A{i + 1}", f"set_back_{i + 1}")
        if all(p is not DartPlace.WAIST for p, _ in self._places()):
            front_waist_dart(d)

    def _along(self, d: Drafting, place: DartPlace, *, chosen: bool) -> float:
        """How far along its edge, clockwise, a dart opens. Raises PaperError."""
        path = d.sheet.edge("F", OPENED[place].edge).path
        share = d.n.along_1 if chosen and self.along is not None else 0.5
        if place is DartPlace.ARMHOLE and not (chosen and self.along is not None):
            along = path.length_to_point(d["pf"])
        elif place is DartPlace.SHOULDER:  # which runs from the tip to the neck
            along = path.length * (1.0 - share)
        else:
            along = path.length * share
        before, after = LEAST_BESIDE[place]
        if along < before or path.length - along < after:
            raise PaperError(
                f"the bust dart comes too near to the end of the {place.value}: make "
                "its place (along) another, the neck narrower, or lead it elsewhere"
            )
        return along

    def _short(self, d: Drafting) -> None:
        """The waist dart set back, after truing (the trued legs run to BP)."""
        d.part = "front"
        number = next(
            i for i, (p, _) in enumerate(self._places(), 1) if p is DartPlace.WAIST
        )
        how = dict(self._places())[DartPlace.WAIST]
        if how not in _LAID:
            set_back(d, "leg cf", "leg side", "Pf", f"set_back_{number}")

    def _lay(self, d: Drafting) -> None:
        """Draw the edges that take gathers or ease in one line over their darts."""
        d.part = "front"
        for place, how in self._places():
            if how not in _LAID:
                continue
            o, reach = OPENED[place], d.n.gather_zone / 2
            before = keep_open(d.sheet, o).unsew(o.dart)
            f = before.piece("F")
            mouths = f.edge(o.leg_outer).path.start, f.edge(o.leg_cf).path.end
            new = Edge(o.edge, bridged(f, o, reach))
            sheet = redraw(before, "F", o.run, [new])
            word = "gathers" if how is TakenUp.GATHERS else "ease"
            sheet = taken_in(before, sheet, "F", mouths, word, reach)
            d.lay(
                Verb.REDRAW,
                sheet,
                f"F.{o.edge}",
                f"{place.value} of the front in one line over the open dart",
                amounts=(("it takes in {}", distance(*mouths)),),
                detail=f"taken up as {word}, half to either side of the dart",
                lines=(new.path,),
            )

    # -- making ------------------------------------------------------------------------
    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        for place, how in self._places():
            o = OPENED[place]
            if how is not TakenUp.TUCK or not sheet.piece("F").has(o.leg_cf):
                continue
            sewn = (
                f"Stitch it down for {fmt(n.tuck_sewn)} along its legs, then leave it "
                "open."
                if n.tuck_sewn > 0
                else "Baste it in the seam allowance only."
            )
            yield Operation(
                Work.DART,
                f"Lay the tucks at the {place.value}",
                ("Leg on leg, folded towards the centre front.", sewn),
                seams=(o.dart,),
                stitch=Stitch.LOCK,
                seam_type=SeamType.PLAIN,
                length=2 * n.tuck_sewn,
                task=Task.DART,
                count=2.0,
                press="the fold only, as far as it is stitched",
            )

    # -- checking ----------------------------------------------------------------------
    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from waist_dart_findings(n)
        f = sheet.piece("F")
        for i, (place, how) in enumerate(self._places(), 1):
            o = OPENED[place]
            wide = n[f"theta_{i}"]
            if how is TakenUp.DART and wide > WIDE_DART:
                yield Finding(
                    "P6",
                    Severity.WARN,
                    f"The bust dart at the {place.value} opens by {wide:.0f}°, wide "
                    "for one dart.",
                    "share",
                    "Share it between two places, or make gathers of it.",
                    {"θ": wide},
                )
            if how is TakenUp.EASE:
                yield from _ease_findings(sheet, o, place)
        darts = [
            f.edge(first).path.end
            for first, second in _EVERY
            if f.has(first) and f.has(second)
        ]
        for a, b in combinations(darts, 2):
            if distance(a, b) < POINTS_APART - 0.05:
                yield Finding(
                    "P10",
                    Severity.WARN,
                    f"The points of two darts lie only {distance(a, b):.1f} cm apart; "
                    f"{POINTS_APART:g} cm keeps the cloth flat between them.",
                    "set-back",
                    "End one of them further from the bust point.",
                    {"apart": distance(a, b)},
                )


def _start(d: Drafting, place: DartPlace, along: float) -> Point:
    """Mark where a dart opens, so far along its edge as that lies now."""
    path = d.sheet.edge("F", OPENED[place].edge).path
    amount, frm = along, "the shoulder" if place is DartPlace.NECK else "the underarm"
    if place is DartPlace.SHOULDER:
        amount, frm = path.length - along, "the neck"
    return d.found(
        OPENED[place].mark,
        path.at_length(along),
        f"new place of the bust dart on the {place.value}",
        amounts=((f"along the {place.value} from {frm}", amount),),
    )


def _ease_findings(sheet: Sheet, o: Opened, place: DartPlace) -> Iterator[Finding]:
    a, b = (sheet.lines[f"gathered {e}"] for e in (o.leg_outer, o.leg_cf))
    wide = distance(a.start, b.end)
    if wide > MOST_EASE + 1e-6:
        yield Finding(
            "P11",
            Severity.REFUSE,
            f"The {place.value} would have to take in {wide:.1f} cm as ease; over the "
            f"bust up to {MOST_EASE:g} cm can be eased in.",
            "share",
            "Lead a smaller share of the dart there, or make gathers or a dart of it.",
            {"ease": wide},
        )


_LAID = (TakenUp.GATHERS, TakenUp.EASE)
"""What leaves no dart in the paper."""

_EVERY = (
    ("dart low", "dart high"),
    *((o.leg_outer, o.leg_cf) for o in OPENED.values()),
)


def _share_table(value: float) -> RuleTable:
    table = RuleTable(f"share of the bust dart, {value:g}")

    @table.rule(
        "share",
        "share of the bust dart that goes there",
        kind=Kind.RATIO,
        key="share_1",
        source=_SRC,
        formula=f"{value:g}",
        low=0.1,
        high=1.0,
    )
    def _share() -> float:
        return value

    return table


_WHOLE, _HALF = _share_table(1.0), _share_table(0.5)
