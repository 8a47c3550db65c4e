"""A drop shoulder: the shoulder runs on over the arm, and a sleeve with a low, wide cap
is sewn on there (transformations 4)."""

from collections.abc import Callable, Collection, Iterable, Mapping
from dataclasses import replace
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Cubic
from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.features.bodice import sleeved_armhole
from clothwright.features.bodice.armhole import outlines
from clothwright.features.bodice.drop_shoulder_rules import DROP, LENGTH, SRC
from clothwright.features.bodice.extended_shoulder import (
    EXTENDED,
    ROOM,
    run_on,
)
from clothwright.features.bodice.shoulder import SHOULDER, SHOULDER_STAGE
from clothwright.features.operations import Operation, Stitch, Task, Work
from clothwright.features.sleeves.sleeve_ends import both_sides
from clothwright.findings import Finding, Severity
from clothwright.paper import Sheet
from clothwright.rules import Given, Numbers, Rule, RuleTable
from clothwright.truing.outline import wrong_way
from clothwright.truing.tolerances import WRONG_WAY
from clothwright.units import Unit
from clothwright.units.fields import Length


class DropShoulder(Feature):
    """Shoulder run on over the arm, for a sleeve with a low cap."""

    kind: Literal["drop shoulder"] = "drop shoulder"
    title: ClassVar[str] = "Drop shoulder"
    sentence: ClassVar[str] = (
        "The [shoulder is dropped]: run on by {out} over the arm and {drop} down "
        "there, the underarm {lowered} lower; the cap of the sleeve is low and wide, "
        "eased in by {cap_ease}."
    )
    page: ClassVar[int] = 2
    shows: ClassVar[Shown] = {"A": ("F.armhole", "B.armhole")}
    gives: ClassVar[frozenset[str]] = frozenset({"armhole", "sleeved", "drop shoulder"})
    needs: ClassVar[dict[str, str]] = {
        "bodice": "a shoulder is run on from a bodice block; add one",
        "set-in sleeve": 'the armhole is open: add a "set-in sleeve", or take an '
        '"extended shoulder"',
    }
    clashes: ClassVar[dict[str, str]] = {
        "armhole": "an order has one kind of armhole",
        "raglan": 'a raglan has no shoulder over the arm; take a "sleeved armhole" for '
        "it",
        "cowl": "a cowl hangs from its own shoulders; leave one off",
        "sleeve in two": "a two-piece sleeve has a high cap; leave the two pieces off",
        "front panel seam": "a panel line would start in the armhole over the arm; "
        "take a side dart in place of the princess line",
        "back panel seam": "a panel line would start in the armhole over the arm; "
        "take a back waist dart in place of the princess line",
        "upper bust dart": "the shoulder and the armhole lie off the body; leave the "
        "bust dart at the side or lead it to the waist",
    }

    out: Annotated[
        Length | None,
        Number("ext", "ext", "shoulder run on over the arm", SRC, 5, 2, 2, 12, (3, 8)),
    ] = None
    drop: Annotated[
        Length | None,
        Number(
            "ext_drop",
            "ext drop",
            "drop of the extended shoulder at its end",
            "common practice, no source",
            1.0,
            0.375,
            0.0,
            3.5,
            (0.5, 2.0),
        ),
    ] = None
    lowered: Annotated[
        Length | None,
        Number(
            "ul",
            "ul",
            "underarm lowered",
            "common practice, no source",
            low=0.0,
            high=8.0,
            usual=(1.0, 4.0),
        ),
    ] = None
    cap_ease: Annotated[
        Length | None,
        Number(
            "E_cap",
            "E",
            "ease of the cap over the armhole",
            f"{SRC}, blocks B1",
            0.3,
            0.125,
            0.0,
            2.0,
            (0.0, 0.6),
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (SHOULDER, EXTENDED, DROP)

    def given(self, unit: Unit) -> Iterable[Given]:
        yield from super().given(unit)
        yield from (number.usually(unit) for number in sleeved_armhole.USUAL)

    def rewritten(
        self, rules: Mapping[str, Rule], given: Collection[str]
    ) -> Mapping[str, Rule]:
        """The length of the sleeve, which the shoulder takes a part of."""
        if "lh" in given or "lh" not in rules:
            return {}
        plain = replace(
            rules["lh"],
            key="lh_0",
            symbol="lh0",
            name="length of a set-in sleeve from T",
        )
        return {"lh_0": plain, "lh": LENGTH.rules["lh"]}

    def stages(self) -> tuple[Stage, ...]:
        return (
            SHOULDER_STAGE,
            Stage(Rank.ARMHOLE, "necks and armholes", outlines),
            Stage(Rank.ARMHOLE, "the shoulders run on", run_on),
        )

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        if n.puff > 0:
            return
        yield Operation(
            Work.FLAT,
            "Sew the sleeves on flat",
            (
                "Before the sides are closed: the cap on the armhole, notch on notch, "
                "its little ease above the notches.",
            ),
            seams=both_sides(sheet, "S23", "S24"),
            stitch=Stitch.LOCK,
            neatened=1,
            press="towards the body",
            task=Task.SLEEVES,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        if n.A_hole < n.UA + ROOM:
            yield Finding(
                "A2",
                Severity.WARN,
                f"The armhole is {n.A_hole:.1f} cm round; over the arm (UA) it wants "
                f"{n.UA + ROOM:.1f} cm.",
                "ul",
                "Lower the underarm (ul), or run the shoulder on less (ext).",
                {"A": n.A_hole, "UA": n.UA},
            )
        yield from _wobbles(sheet, n)
        lower = n.h_0 - n.h_cap
        share = lower / n.ext
        if not 0.6 - 0.02 <= share <= 0.7 + 0.02:
            yield Finding(
                "DS1",
                Severity.NOTE,
                f"The cap is {lower:.1f} cm lower than a set-in one; on a shoulder run "
                f"on by {n.ext:.1f} cm, {0.6 * n.ext:.1f} to {0.7 * n.ext:.1f} cm is "
                "usual.",
                "e",
                "Lower the underarm (ul) more, or leave the ease of the arm out."
                if lower > 0.7 * n.ext
                else "Leave the ease of the arm out to have it so.",
                {"lower": lower},
            )


def _wobbles(sheet: Sheet, n: Numbers) -> Iterable[Finding]:
    """A cap so low for its width does not run from hollow to crown in one sweep."""
    caps = [
        s
        for p in sheet.pieces.values()
        for e in p.edges
        if p.code == "SL" and e.name.startswith("cap ")
        for s in e.path.segments
        if isinstance(s, Cubic)
    ]
    worst = max([wrong_way(s) for s in caps], default=0.0)
    severity = WRONG_WAY.severity(worst)
    if severity is not None:
        yield Finding(
            "DS2",
            severity,
            f"The cap of {n.h_cap:.1f} cm is low for a sleeve {n.Wb:.1f} cm wide: its "
            "curve wobbles.",
            "h",
            "Run the shoulder on less (ext), or give the arm less ease (e).",
            {"h": n.h_cap, "Wb": n.Wb},
        )
