"""Pocket set on, or into, the front or back of a skirt: a patch or a welt
(transformations §9)."""

from collections.abc import Callable, Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Path
from clothwright.features.about import About
from clothwright.features.base import Cuts, Feature, Number, Rank, Stage
from clothwright.features.operations import (
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
)
from clothwright.features.skirts.set_pocket_drawing import (
    BACKS,
    BAG,
    FRONTS,
    OPENING,
    PATCH,
    PIECES,
    WELT,
    mouth,
    patch,
    welt,
)
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Sheet,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations §9"

FROM_SIDE = 3.0
"""A patch stays so far from the side, cm (§9)."""

SET = RuleTable("patch pocket or welt pocket")


@SET.rule(
    "kd",
    "depth of the pocket, below its mouth",
    source=_SRC,
    key="k_deep",
    formula="15/13 of its width",
    low=6.0,
    high=30.0,
)
def _deep(k_wide: float) -> float:
    return k_wide * 15 / 13


class Shape(Enum):
    """How it is made."""

    PATCH = "patch"
    """Stitched on, its lower corners rounded."""

    WELT = "welt"
    """A slit with a stand, the bag behind it."""


class On(Enum):
    """What it is set on."""

    FRONT = "front"
    BACK = "back"


_PIECES = {On.FRONT: FRONTS, On.BACK: BACKS}


class SetPocket(Feature):
    """A pair of patch or welt pockets."""

    kind: Literal["set pocket"] = "set pocket"
    title: ClassVar[str] = "Patch pocket or welt pocket"
    sentence: ClassVar[str] = (
        "A {shape} [pocket] lies on the {on} at each side, {width} wide, {below} below "
        "the waist."
    )
    pieces: ClassVar[tuple[About, ...]] = PIECES
    gives: ClassVar[frozenset[str]] = frozenset({"set pocket"})
    needs: ClassVar[dict[str, str]] = {
        "pocket side": "these pockets lie on a straight skirt, alone or of a dress"
    }
    clashes: ClassVar[dict[str, str]] = {
        "set pocket": "one pair of patch or welt pockets is set on",
        "pockets": "a skirt has one pair of pockets; leave the others off",
    }

    shape: Shape = Shape.PATCH
    on: On = On.FRONT
    width: Annotated[
        Length | None,
        Number(
            "k_wide",
            "kw",
            "width of the mouth",
            _SRC,
            13.0,
            5.0,
            8.0,
            22.0,
            (12.0, 15.0),
        ),
    ] = None
    depth: Annotated[
        Length | None,
        Number(
            "k_deep",
            "kd",
            "depth of the pocket, below its mouth",
            _SRC,
            low=6.0,
            high=30.0,
            usual=(12.0, 18.0),
        ),
    ] = None
    below: Annotated[
        Length | None,
        Number(
            "k_down",
            "kb",
            "mouth below the waist, down the side",
            _SRC,
            11.0,
            4.25,
            3.0,
            40.0,
        ),
    ] = None
    beside: Annotated[
        Length | None,
        Number(
            "k_side",
            "ks",
            "end of the mouth from the side",
            _SRC,
            4.0,
            1.5,
            1.0,
            15.0,
        ),
    ] = None
    corner: Annotated[
        Length | None,
        Number(
            "k_round",
            "kr",
            "radius of a patch's lower corners; 0 is mitred",
            _SRC,
            2.0,
            0.75,
            0.0,
            6.0,
        ),
    ] = None
    welt: Annotated[
        Length | None,
        Number(
            "k_welt", "kh", "height of a welt", _SRC, 2.5, 1.0, 1.0, 5.0, (2.0, 4.0)
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (SET,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.CLOSURE, f"the {self.shape.value} pocket", self._draw),)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        if WELT not in sheet.pieces:
            return {}
        pair = "2 (1 pair)"
        return {
            WELT: Cuts(pair, 2, ("shell", "interlining")),
            BAG: Cuts("4 (2 pairs)", 4, ("lining",)),
        }

    def _draw(self, d: Drafting) -> None:
        code = next(c for c in _PIECES[self.on] if c in d.sheet.pieces)
        d.part = "skirt front" if self.on is On.FRONT else "skirt back"
        a, b = mouth(d, code)
        if self.shape is Shape.PATCH:
            patch(d, code, a, b)
        else:
            welt(d, code, a, b)

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        if self.shape is Shape.WELT:
            yield (
                f"Welt pockets: stitch along both lines, {fmt(OPENING)} apart, slash "
                "between them and into the corners."
            )

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        if self.shape is Shape.PATCH:
            yield Operation(
                Work.PANEL,
                "Stitch the patch pockets on",
                (
                    f"Turn {fmt(HEM)} in at the mouth and hem it; press the other "
                    "edges in, over a card where they are round.",
                    "Lay each on its line, stitch round close to the edge, and secure "
                    "both ends of the mouth.",
                ),
                edges=finished_edges(sheet, (PATCH,)),
                stitch=Stitch.LOCK,
                seam_type=SeamType.PLACED,
                task=Task.BAG,
                count=2.0,
            )
            return
        yield Operation(
            Work.PANEL,
            "Make the welt pockets",
            (
                f"Fold the welt to {fmt(n.k_welt)}, close its ends and baste it below "
                "the mouth, its fold down; a bag above.",
                "Stitch both lines, the upper a stitch shorter at each end; slash, "
                "turn the bags through, stand the welt up and catch its ends.",
                "Sew the bags round.",
            ),
            edges=finished_edges(sheet, (WELT, BAG)),
            stitch=Stitch.LOCK,
            seam_type=SeamType.PLAIN,
            length=2 * (4 * n.k_wide + 2 * n.k_deep),
            press="flat",
            task=Task.BAG,
            count=2.0,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        if self.shape is Shape.PATCH and n.k_side < FROM_SIDE - 0.05:
            yield Finding(
                "KP1",
                Severity.WARN,
                f"The patch pocket lies {n.k_side:.1f} cm from the side; "
                f"{FROM_SIDE:g} cm keeps it clear of the seam.",
                "ks",
                "Set it (ks) further in.",
                {"ks": n.k_side},
            )
        code = next(c for c in _PIECES[self.on] if c in sheet.pieces)
        mouth = Path.line(sheet.points["Ka"], sheet.points["Kb"])
        legs = [e for e in sheet.piece(code).edges if e.name.startswith("dart")]
        if self.shape is Shape.WELT and any(e.path.meets(mouth) for e in legs):
            yield Finding(
                "KP3",
                Severity.WARN,
                "The mouth of the welt pocket crosses a dart.",
                "kb",
                "Set it (kb) lower, or make the darts shorter.",
            )
        low = sheet.points["Ka"].y + n.k_deep
        hem = sheet.edge(code, "hem").path.bounds()[1]
        if low > hem - 5.0:
            yield Finding(
                "KP2",
                Severity.REFUSE,
                f"The {self.shape.value} pocket ends {max(0.0, hem - low):.1f} cm "
                "above the hem.",
                "kd",
                "Make it (kd) less deep, or set it (kb) higher.",
                {"low": low, "hem": hem},
            )


HEM = 2.5
"""Turned in at the mouth of a patch, cm (§9)."""
