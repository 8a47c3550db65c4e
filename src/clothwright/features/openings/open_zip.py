"""A zip that separates, down the whole front or back of a top: edge to edge, between
cloth and facing (transformations §6 and §7)."""

from collections.abc import Callable, Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.torso import in_one
from clothwright.features.about import About
from clothwright.features.base import Rank, Shown, Stage
from clothwright.features.chains import Chains
from clothwright.features.notions import Article, Notion
from clothwright.features.openings.button_sewing import across_hem
from clothwright.features.openings.button_stand import Where
from clothwright.features.openings.open_edges import (
    OpenEdge,
    edge_length,
    open_at_centre,
    pieces,
)
from clothwright.features.openings.open_edges import (
    facing as _facing,
)
from clothwright.features.openings.stand_pieces import Centre
from clothwright.features.openings.stand_seams import (
    EDGE_CODES,
    stand_seams,
)
from clothwright.features.operations import (
    Hazard,
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
)
from clothwright.features.sleeves.sleeve_ends import both_sides
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Seam, Sheet
from clothwright.rules import Numbers
from clothwright.units.fields import Length

_SRC = "transformations §7"

_BELOW_NECK = 0.5
"""A zip begins so far below the neck, cm (first garment 16.3)."""

_ABOVE_HEM = 0.3
"""Its lower end lies so far above the finished hem, cm (common practice, no source)."""

_CLEAR = 0.3
"""The facing is turned in by so much more than the cloth, cm (common practice, no
source)."""

_TOPSTITCHED = 0.6
"""The edges are stitched so far beside the zip, cm (common practice, no source)."""

_SOLD = 80.0
"""Longer ones are seldom sold, cm (common practice, no source)."""


class OpenZip(OpenEdge):
    """Separating zip from the neck to the hem."""

    kind: Literal["open zip"] = "open zip"
    title: ClassVar[str] = "Zip that separates"
    sentence: ClassVar[str] = (
        "It opens {where} from the neck to the hem, with a [separating zip] between "
        "its edges and a facing {facing} wide."
    )
    shows: ClassVar[Shown] = {
        "zip": ("FC.stand", "F.stand", "BC.stand", "B.stand"),
        "bf": tuple(f"{c}.{e}" for c in ("FF", "BF") for e in ("foot", "lower")),
    }
    pieces: ClassVar[tuple[About, ...]] = pieces("centre {}")
    what: ClassVar[str] = "a zip that separates"

    where: Where = Where.FRONT
    facing: Annotated[Length | None, _facing(6.0, 2.5)] = None

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.STAND, "the edges of the zip", self._draw),)

    def _draw(self, d: Drafting) -> None:
        open_at_centre(d, self.centre, 0.0, _MEET)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return stand_seams(t)

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        yield (
            f"The edges at the centre {self.centre.words} meet over the zip, "
            f"{fmt(_zip(sheet, self.centre))} long: buy it first; a longer one is "
            "shortened at its top."
        )

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        words = self.centre.words
        long = _zip(sheet, self.centre)
        yield Notion(Article.OPEN_ZIP, 1, f"down the {words}", length=long)
        yield Notion(Article.HOOK, 1, "at the top of the zip")

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        c = self.centre
        words, work = c.words, Work.EDGE if in_one(sheet) else Work.CENTRE
        yield Operation(
            work,
            f"Stitch the {words} facings across at the hem",
            ("Right sides together on the hem's line; trim and turn.",),
            edges=across_hem(sheet, c),
            stitch=Stitch.LOCK,
            seam_type=SeamType.PLAIN,
            task=Task.FACE,
        )
        meets = "the marks of the waist" if in_one(sheet) else "the waist seams"
        yield Operation(
            work,
            f"Put the separating zip between the {words} edges and their facings",
            (
                "Press both edges in along the net line, those of the facing "
                f"{fmt(_CLEAR)} more, clear of the teeth.",
                "Take the zip apart; baste each half between cloth and facing, the "
                f"teeth at the folded edge, from {fmt(_BELOW_NECK)} below the neck to "
                f"{fmt(_ABOVE_HEM)} above the hem, the upper ends of the tape turned "
                f"in. Close it once: the edges meet over the teeth, and {meets} meet.",
                f"Stitch from the right side, {fmt(_TOPSTITCHED)} from each edge, "
                "through cloth, tape and facing.",
            ),
            seams=both_sides(sheet, *EDGE_CODES[c][:2]),
            stitch=Stitch.LOCK,
            seam_type=SeamType.SET_ON,
            press="the edges, not the teeth",
            task=Task.VISIBLE_ZIP,
            count=2.0,
        )
        yield Operation(
            Work.FASTEN,
            "Sew a hook and eye at the top of the zip",
            stitch=Stitch.HAND,
            task=Task.HOOK,
            hazards=(Hazard.SMALL_PART,),
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        long = _zip(sheet, self.centre)
        if long > _SOLD:
            yield Finding(
                "OZ1",
                Severity.WARN,
                f"The zip that separates would be {long:.1f} cm long; few longer than "
                f"{_SOLD:.0f} cm are sold.",
                "zip",
                "Ask for one before you cut, or make the garment shorter.",
                {"zip": long},
            )


_MEET = (
    "it is no fold now: the two edges meet over the zip, from which nothing is "
    "taken off"
)


def _zip(sheet: Sheet, centre: Centre) -> float:
    """Length of the zip, cm: of the edge, but for what is left free at its ends."""
    return edge_length(sheet, centre) - _BELOW_NECK - _ABOVE_HEM
