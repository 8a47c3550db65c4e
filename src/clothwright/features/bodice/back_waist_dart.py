"""The back in one piece with its waist dart, where it is drafted or led elsewhere.

It may be led to shoulder, neck, armhole, side or yoke, whole or in part, and be sewn
there or at the waist as a dart, or taken up as tucks, gathers or ease (transformations
1.1, 1.6), as the bust dart in front. It is led when all else is drafted: necks,
sleeves, facings and linings lie on the back as it was.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Path, Point, direction, distance, midpoint
from clothwright.features.base import Feature, Rank, Shown, Stage
from clothwright.features.bodice.back_princess import BACK_PANELS
from clothwright.features.bodice.back_waist_dart_rules import (
    BACK_DART,
    BACK_LED,
    LEAST_BESIDE,
    LEAST_LONG,
    MEASURED_FROM,
    NOT_AT,
    OPENED_BACK,
    SET_BACK,
    WITHOUT_DART,
    BackPlace,
)
from clothwright.features.bodice.bust_dart_rules import (
    LESS,
    WHOLE_THERE,
    TakenUp,
    check_beside,
    ease_findings,
    points_findings,
    usual_on_neck,
)
from clothwright.features.bodice.laid_dart import (
    BACK_LAID,
    LAID,
    gather_operations,
    lay,
    tuck_findings,
    tuck_operations,
)
from clothwright.features.bodice.opened_dart import (
    Opened,
    dart_angle_of,
    dart_seam,
    mouth,
    set_back,
    slashed,
    true_beside,
)
from clothwright.features.bodice.side_dart import NO_DART, without_dart
from clothwright.features.grain import longest_line
from clothwright.features.hand.hand_seams import off_corners
from clothwright.features.operations import Operation
from clothwright.features.wholes import is_kept, keep_whole
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    JOINT,
    JOINT_RIGHT,
    Drafting,
    Edge,
    NotchPair,
    PaperError,
    Seam,
    Sheet,
    Verb,
    pivot,
    redraw,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length, Ratio

_WAIST = OPENED_BACK[BackPlace.WAIST]


class BackWaistDart(Feature):
    """Back in one piece with its waist dart, there or led elsewhere."""

    kind: Literal["back waist dart"] = "back waist dart"
    title: ClassVar[str] = "Back waist dart"
    sentence: ClassVar[str] = "The back is in one piece with a [waist dart]."
    shows: ClassVar[Shown] = {
        "θb": ("B.waist",),
        "share wd": ("B.waist",),
        "set-back b": ("B.waist",),
    }
    gives: ClassVar[frozenset[str]] = frozenset({"back panels"})
    needs: ClassVar[dict[str, str]] = {
        "bodice": "this dart of the back is drawn on a bodice block; add one"
    }
    clashes: ClassVar[dict[str, str]] = {
        "back panels": "the back waist dart can go into one line only; leave one off"
    }

    to: BackPlace = BackPlace.WAIST
    """Where it opens."""

    taken_up: TakenUp = TakenUp.DART
    rest: TakenUp = TakenUp.DART
    """What becomes of what stays at the waist when only a part is led."""

    share: Annotated[Ratio | None, BACK_LED.share] = None
    along: Annotated[Ratio | None, BACK_LED.along] = None
    set_back: Annotated[Length | None, BACK_LED.set_back] = None
    zone: Annotated[Length | None, BACK_LAID.zone] = None
    tucks: Annotated[Ratio | None, BACK_LAID.tucks] = None
    apart: Annotated[Length | None, BACK_LAID.apart] = None
    stitched: Annotated[Length | None, BACK_LAID.stitched] = None

    def said(self) -> str:
        if self.to is BackPlace.WAIST:
            if self.taken_up is TakenUp.DART:
                return self.sentence
            return (
                "The back is in one piece; its [waist dart] is taken up at the waist "
                "as {taken_up}."
            )
        says = (
            "The back is in one piece; its [waist dart] goes to the {to} as {taken_up}"
        )
        part = self.share is not None and self.share < 1.0
        return f"{says}, the rest at the waist as {{rest}}." if part else f"{says}."

    def provides(self) -> frozenset[str]:
        words = set(self.gives)
        if self.to is not BackPlace.WAIST:
            words.add("led back dart")
        if any(o is _WAIST and how in LAID for o, how in self._places()):
            words.add("laid back dart")
        return frozenset(words)

    def wants(self) -> Mapping[str, str]:
        if self.to is not BackPlace.YOKE:
            return self.needs
        why = 'a back dart goes to the yoke only where there is one: add a "back yoke"'
        return {**self.needs, "back yoke": why}

    def forbids(self) -> Mapping[str, str]:
        out = dict(self.clashes)
        changed = self.to is not BackPlace.WAIST or self.taken_up in LAID
        if changed:
            out |= WITHOUT_DART
        out |= NOT_AT.get(self.to, {})
        if self.to is BackPlace.ARMHOLE and self.taken_up in LAID:
            out["sleeve"] = (
                "gathers in the back armhole would be drawn up against the ease of "
                "the sleeve; lead the back dart elsewhere, or sew it as a dart"
            )
        return out

    def _places(self) -> Iterator[tuple[Opened, TakenUp]]:
        """The dart where it is led, and what stays at the waist."""
        yield OPENED_BACK[self.to], self.taken_up
        if self.to is not BackPlace.WAIST and (self.share or 1.0) < 1.0:
            yield _WAIST, self.rest

    def tables(self) -> tuple[RuleTable, ...]:
        if self.to is BackPlace.WAIST:
            return ()
        return (BACK_PANELS, BACK_DART, SET_BACK[self.to])

    def stages(self) -> tuple[Stage, ...]:
        out = [Stage(Rank.BACK_PANELS, "the dart of the back", _plain)]
        if self.to is not BackPlace.WAIST:
            out.append(Stage(Rank.YOKE_DART, "the back dart led", self._lead))
        if any(how in LAID for _, how in self._places()):
            out.append(Stage(Rank.LAID_OPEN, "the fullness of the back", self._lay))
        return tuple(out)

    # -- drafting ----------------------------------------------------------------------
    def _lead(self, d: Drafting) -> None:
        """Slash to Pd, and turn what lies beside it until the waist dart is closed by
        its share."""
        if not d.sheet.piece("B").has(_WAIST.leg_first):
            return
        d.part = "back"
        o, pd = OPENED_BACK[self.to], d["Pd"]
        whole = dart_angle_of(d.sheet.piece("B"), *_WAIST.legs)
        degrees = whole * d.n.share_back
        path = d.sheet.edge("B", o.edge).path
        along = self._along(d, path)
        check_beside(path, o, LEAST_BESIDE[self.to], along, pd)
        at = d.found(
            o.mark,
            path.at_length(along),
            f"new place of the back dart on the {o.where}",
            amounts=(
                (f"along the {o.where} from the {MEASURED_FROM[self.to]}", along),
            ),
        )
        sheet = d.sheet if is_kept(d.sheet, "B") else keep_whole(d.sheet, "B")
        grain = d.sheet.piece("B").grain
        sheet = slashed(sheet, o, at, pd)
        says = f"back slashed from {o.mark} to Pd"
        d.lay(Verb.CUT, sheet, "B", says, lines=(Path.line(at, pd),))
        sheet = pivot(sheet, "B", o.leg_last, _WAIST.leg_first, degrees)
        sheet = sheet.sew(dart_seam(o))
        if grain is not None:
            back = sheet.piece("B")
            sheet = sheet.put(
                replace(back, grain=longest_line(back, direction(*grain)))
            )
        closed = d.n.share_back >= 1.0
        if closed:
            sheet = _ruled_through(sheet)
        d.lay(
            Verb.MOVE,
            off_corners(sheet, "B"),
            "B",
            "side of the back turned about Pd until the waist dart is "
            + ("closed" if closed else "so much narrower"),
            amounts=(
                ("by {}", "theta_back"),
                ("it is open there by {}", distance(*mouth(sheet.piece("B"), o))),
            ),
            frm=("Pd",),
        )
        if self.taken_up not in LAID:
            _check_long(d, o)
            set_back(d, o.legs, "Ab", "set_back_back", "B", "Pd")
            if self.to is BackPlace.NECK:
                true_beside(d, o, pd)

    def _along(self, d: Drafting, path: Path) -> float:
        """How far along its edge, clockwise, the dart opens."""
        if self.along is not None:
            return path.length * d.n.along_back
        match self.to:
            case BackPlace.ARMHOLE:
                return path.length_to_point(d["pb"])
            case BackPlace.YOKE:
                above = Point(d["Pd"].x, d["Yab"].y)
                return path.length_to_point(path.at(path.nearest(above)[0]))
            case BackPlace.NECK:
                return path.length - usual_on_neck(path.reversed())
        return path.length * (0.4 if self.to is BackPlace.SIDE else 0.5)

    def _lay(self, d: Drafting) -> None:
        """Draw the edges that take gathers, tucks or ease in one line over the dart."""
        d.part = "back"
        for o, how in self._places():
            if how in LAID and d.sheet.piece("B").has(o.leg_first):
                lay(d, o, how)

    # -- making ------------------------------------------------------------------------
    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        places = [
            (o, how)
            for o, how in self._places()
            if o.laid_in(sheet) or sheet.piece("B").has(o.leg_first)
        ]
        yield from tuck_operations(n, sheet, fmt, places)
        yield from gather_operations(sheet, fmt, places)

    # -- checking ----------------------------------------------------------------------
    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        if self.to is not BackPlace.WAIST and n.bd_net < NO_DART:
            yield Finding(
                "P13",
                Severity.NOTE,
                "The back waist takes in nothing at a dart, so no dart is led to the "
                f"{OPENED_BACK[self.to].where}.",
                "bd",
                "",
                {"bd": n.bd_net},
            )
        back = sheet.piece("B")
        for o, how in self._places():
            if not o.laid_in(sheet):
                continue
            if how is TakenUp.TUCKS:
                yield from tuck_findings(n, sheet, o)
            if how is TakenUp.EASE:
                yield from ease_findings(sheet, o, "share wd", self._less_ease(o))
        darts = [
            back.edge(o.leg_first).path.end
            for o in OPENED_BACK.values()
            if back.has(o.leg_first) and back.has(o.leg_last)
        ]
        to_do = "End the dart that is led further from Pd."
        yield from points_findings(darts, " of the back", "set-back b", to_do)

    def _less_ease(self, o: Opened) -> str:
        """What to do where too much is eased in."""
        if self.to is BackPlace.WAIST:
            return WHOLE_THERE
        if o is _WAIST:
            return (
                "Lead a greater share of the dart (share wd) away, or make a dart of "
                "the rest."
            )
        return LESS.replace("of the dart", "of the dart (share wd)")


def _plain(d: Drafting) -> None:
    """The dart as the block has it; the waist ruled through where it has none."""
    d.part = "back"
    if d.n.bd_net < NO_DART:
        without_dart(d, "B", "back waist dart", _WAIST.run)


def _check_long(d: Drafting, o: Opened) -> None:
    """Raises PaperError for a dart too short to run out."""
    a, b = mouth(d.sheet.piece("B"), o)
    long = distance(midpoint(a, b), d["Pd"]) - d.n.set_back_back
    if long < LEAST_LONG:
        less = "the neck (Db) less deep, " if o.edge == "neck" else ""
        raise PaperError(
            f"the back dart would be {max(0.0, long):.1f} cm long at the {o.where}; "
            f"{LEAST_LONG:g} cm is the least: make its set-back (set-back b) smaller, "
            f"{less}or lead it elsewhere"
        )


def _ruled_through(sheet: Sheet) -> Sheet:
    """The waist in one line over the closed dart; notches that stood on its seam stand
    by themselves."""
    b = sheet.piece("B")
    a, c = b.edge(_WAIST.first).path, b.edge(_WAIST.last).path
    line = a + c.pinned(a.end, c.end)
    with_joint = [s for s in sheet.seams if _joined(s)]
    sheet = redraw(sheet.unsew(_WAIST.dart), "B", _WAIST.run, [Edge("waist", line)])
    for old in with_joint:
        s = sheet.seam(old.code)
        alone = len(s.right) > 1  # the other half has a joint there
        notches = tuple(_unjoined(k, to_joint=alone) for k in s.notches)
        sheet = sheet.sew(replace(s, notches=notches))
    return sheet


def _joined(s: Seam) -> bool:
    edges = {(r.piece, r.edge) for r in s.left}
    return {("B", _WAIST.first), ("B", _WAIST.last)} <= edges


def _unjoined(k: NotchPair, *, to_joint: bool) -> NotchPair:
    if k.note != JOINT:
        return k
    return k._replace(ticks=2, note=JOINT_RIGHT if to_joint else "")
