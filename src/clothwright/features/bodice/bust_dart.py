"""The bust dart led to another place of the front, or to two.

There it is sewn as a dart, laid as a tuck, or taken up as gathers or ease
(transformations 1.1, 1.6). The front stays in one piece with its waist dart.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.full_cup import WIDE_DART
from clothwright.features.base import Feature, Rank, Stage
from clothwright.features.bodice.bust_dart_rules import (
    AT_WAIST,
    BUST_DART,
    FIRST,
    FRONT_LED,
    HALF,
    LESS,
    SECOND,
    WHOLE,
    WHOLE_THERE,
    TakenUp,
    check_place,
    ease_findings,
    points_findings,
    usual_on_neck,
)
from clothwright.features.bodice.centre_corner import AT_CORNER
from clothwright.features.bodice.centre_front import (
    AT_CENTRE,
    CENTRE_SEAM,
    centre_operations,
    notched,
)
from clothwright.features.bodice.front_dart import (
    OPENED,
    DartPlace,
    close_side,
    lead,
    tighten_armhole,
)
from clothwright.features.bodice.laid_dart import (
    FRONT_LAID,
    LAID,
    gather_operations,
    lay,
    tuck_findings,
    tuck_operations,
)
from clothwright.features.bodice.led_last import LATE, lead_last, start_of
from clothwright.features.bodice.opened_dart import dart_angle_of, set_back
from clothwright.features.bodice.side_dart import (
    SIDE_DART,
    front_waist_dart,
    waist_dart_findings,
)
from clothwright.features.necks.neck_shapes import V_FRONT
from clothwright.features.operations import Operation
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, PaperError, Sheet
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length, Ratio


class BustDart(Feature):
    """Front in one piece with its bust dart elsewhere than at the side."""

    kind: Literal["bust dart"] = "bust dart"
    title: ClassVar[str] = "Bust dart"
    sentence: ClassVar[str] = (
        "The front is in one piece with a waist dart; the [bust dart] goes to the {to} "
        "as {taken_up}, {set_back} from the bust point."
    )
    gives: ClassVar[frozenset[str]] = frozenset({"front panels"})
    seams: ClassVar[Mapping[str, str]] = {
        CENTRE_SEAM: "centre front of a front whose bust dart opens there"
    }
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
    share: Annotated[Ratio | None, FRONT_LED.share] = None
    along: Annotated[Ratio | None, FRONT_LED.along] = None
    set_back: Annotated[Length | None, FRONT_LED.set_back] = None
    zone: Annotated[Length | None, FRONT_LAID.zone] = None
    tucks: Annotated[Ratio | None, FRONT_LAID.tucks] = None
    apart: Annotated[Length | None, FRONT_LAID.apart] = None
    stitched: Annotated[Length | None, FRONT_LAID.stitched] = None

    def said(self) -> str:
        says = self.sentence
        if self.second is not None:
            says = (
                f"{says[:-1]}, and the rest to the {{second}} as {{second_taken_up}}."
            )
        return says

    def provides(self) -> frozenset[str]:
        places = {p for p, _ in self._places()}
        words = {f"{p.value} bust dart" for p in places & _BELOW}
        if self.to is DartPlace.CENTRE:
            words.add("centre front seam")
        if places - _BELOW:
            words.add("upper bust dart")
        at_waist = (DartPlace.WAIST, DartPlace.CENTRE_WAIST)
        if any(p in at_waist and how in LAID for p, how in self._places()):
            words.add("laid waist dart")
        if DartPlace.CENTRE_WAIST in places:
            words.add("waist dart led on")
        if places & {DartPlace.NECK, DartPlace.CENTRE_NECK}:
            words.add("bust dart at the neck")
        return self.gives | words

    def wants(self) -> Mapping[str, str]:
        why = 'a bust dart goes to the yoke only where there is one: add a "front yoke"'
        return {
            **self.needs,
            **({"front yoke": why} if self._at(DartPlace.YOKE) else {}),
        }

    def forbids(self) -> Mapping[str, str]:
        out = dict(self.clashes)
        full = (TakenUp.GATHERS, TakenUp.TUCKS)
        if any(p is DartPlace.ARMHOLE and how in full for p, how in self._places()):
            out["sleeve"] = (
                "gathers in the front armhole would be drawn up against the ease of "
                "the sleeve; lead the bust dart elsewhere, or sew it as a dart"
            )
        for place, _ in self._places():
            out |= AT_CENTRE if place is DartPlace.CENTRE else AT_CORNER.get(place, {})
        pointed = (DartPlace.CENTRE_NECK, TakenUp.GATHERS)
        if pointed in self._places():
            out[V_FRONT] = (
                "gathers at the centre front would lie in the point of the neck; sew "
                "the bust dart as a dart, or lead it elsewhere"
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
            WHOLE if whole else HALF,
            FIRST[self.to],
            *((SECOND[self.second],) if self.second else ()),
            *((AT_WAIST,) if at_waist else ()),
        )

    def stages(self) -> tuple[Stage, ...]:
        out = [Stage(Rank.FRONT_PANELS, "the darts of the front", self._apply)]
        places = list(self._places())
        if any(p is DartPlace.WAIST for p, _ in places):
            out.append(Stage(Rank.CLOSURE, "the front waist dart", self._short))
        if self._at(*LATE):
            at_yoke = self._at(DartPlace.YOKE)
            says = "the dart " + (
                "below the yoke" if at_yoke else "at the centre front"
            )
            out.append(Stage(Rank.YOKE_DART, says, self._lead_last))
        if any(how in LAID for _, how in places):
            out.append(Stage(Rank.LAID_OPEN, "the fullness of the front", self._lay))
        return tuple(out)

    # -- drafting ----------------------------------------------------------------------
    def _apply(self, d: Drafting) -> None:
        n = d.n
        d.part = "front"
        if self.second is self.to:
            raise PaperError(
                "the bust dart is shared between two places: set second to another "
                "place than the first, or leave it out"
            )
        late = [p for p, _ in self._places() if p in LATE]
        if late and (self.second is not None or n.share_1 < 1.0):
            where = late[0].value
            raise PaperError(
                f"a bust dart that goes to the {where} goes there whole: leave share "
                "and second blank, or lead it elsewhere"
            )
        if n.ta > 0:
            tighten_armhole(d)
        if late:  # the yoke is cut later, and the dart is led then
            front_waist_dart(d)
            return
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
                at = start_of(d, place, along)
            lead(d, place, at, turns[i], f"theta_{i + 1}")
        if n.share_1 >= 1.0 or self.second is not None:
            close_side(d)
        else:
            set_back(d, _SIDE, "As", "set_back")
        for i, (place, how) in enumerate(self._places()):
            o = OPENED[place]
            if place is DartPlace.WAIST:
                continue
            if how not in LAID:
                set_back(d, o.legs, f"A{i + 1}", f"set_back_{i + 1}")
        if all(p is not DartPlace.WAIST for p, _ in self._places()):
            front_waist_dart(d)

    def _at(self, *places: DartPlace) -> bool:
        return any(p in places for p, _ in self._places())

    def _lead_last(self, d: Drafting) -> None:
        """Lead the whole dart to a place that is there when all else is drafted."""
        own = d.n.along_1 if self.along is not None else None
        lead_last(d, self.to, self.taken_up, own)

    def _along(self, d: Drafting, place: DartPlace, *, chosen: bool) -> float:
        """How far along its edge, clockwise, a dart opens. Raises PaperError."""
        path = d.sheet.edge("F", OPENED[place].edge).path
        own = chosen and self.along is not None
        share = d.n.along_1 if own else 0.5
        if place is DartPlace.ARMHOLE and not own:
            along = path.length_to_point(d["pf"])
        elif place is DartPlace.NECK and not own:
            along = usual_on_neck(path)
        elif place is DartPlace.SHOULDER:  # which runs from the tip to the neck
            along = path.length * (1.0 - share)
        else:
            along = path.length * share
        check_place(path, place, along, d["BP"])
        return along

    def _short(self, d: Drafting) -> None:
        """The waist dart set back, after truing (the trued legs run to BP)."""
        d.part = "front"
        number = next(
            i for i, (p, _) in enumerate(self._places(), 1) if p is DartPlace.WAIST
        )
        how = dict(self._places())[DartPlace.WAIST]
        if how not in LAID:
            legs = OPENED[DartPlace.WAIST].legs
            set_back(d, legs, "Pf", f"set_back_{number}")

    def _lay(self, d: Drafting) -> None:
        """Draw the edges that take gathers or ease in one line over their darts."""
        d.part = "front"
        for place, how in self._places():
            if how not in LAID:
                continue
            lay(d, OPENED[place], how)
            if place is DartPlace.CENTRE and how is not TakenUp.TUCKS:
                gathered = how is TakenUp.GATHERS
                d.sheet = notched(d.sheet, d.n.gather_zone, gathered=gathered)

    # -- making ------------------------------------------------------------------------
    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        places = [(OPENED[p], how) for p, how in self._places()]
        yield from tuck_operations(n, sheet, fmt, places)
        yield from gather_operations(sheet, fmt, places)
        if self._at(DartPlace.CENTRE):
            yield from centre_operations(sheet, fmt, self.taken_up)

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
            if how is TakenUp.TUCKS:
                yield from tuck_findings(n, sheet, o)
            if how is TakenUp.EASE:
                yield from ease_findings(
                    sheet, o, "share", WHOLE_THERE if place in LATE else LESS
                )
        darts = [
            f.edge(first).path.end
            for first, second in _EVERY
            if f.has(first) and f.has(second)
        ]
        to_do = "End one of them further from the bust point."
        yield from points_findings(darts, "", "set-back", to_do)


_BELOW = {
    DartPlace.WAIST,
    DartPlace.YOKE,
    DartPlace.CENTRE,
    DartPlace.CENTRE_WAIST,
}
_SIDE = ("dart low", "dart high")
_EVERY = (
    _SIDE,
    *(o.legs for o in OPENED.values()),
)
