"""A zip that separates, down the whole front or back of a top: edge to edge, between
cloth and facing (transformations §6 and §7)."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.torso import in_one
from clothwright.features.about import About, Place
from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.features.bodice.centre_back import CLOSED
from clothwright.features.bodice.front_dart import as_drafted
from clothwright.features.chains import Chains
from clothwright.features.linings.about import FACINGS
from clothwright.features.notions import Article, Notion
from clothwright.features.openings.button_sewing import across_hem
from clothwright.features.openings.button_stand import Where
from clothwright.features.openings.stand_pieces import (
    BACK,
    FRONT,
    STAND,
    Centre,
    below_waist,
    led_down,
)
from clothwright.features.openings.stand_seams import (
    EDGE_CODES,
    STAND_SEAMS,
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
from clothwright.features.roles import Role
from clothwright.features.sleeves.sleeve_ends import both_sides
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Edge, EdgeKind, Piece, Seam, Sheet, Verb
from clothwright.rules import Numbers, RuleTable
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


def _edges(centre: Centre, low: tuple[str, ...]) -> tuple[About, ...]:
    """What the edges of the pieces at a centre are beside the zip."""
    said = {STAND: f"centre {centre.words}"}
    return tuple(
        About(code, edges={STAND: Role.ZIP}, centres=said)
        for code in (*centre.upper, *centre.lower, centre.facing, *low)
    )


class OpenZip(Feature):
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
    pieces: ClassVar[tuple[About, ...]] = (
        *FACINGS,
        About("FFP", Place.STAND, ("facing",), cloths=("shell", "interlining")),
        About("BFP", Place.STAND, ("facing",), cloths=("shell", "interlining")),
        *_edges(FRONT, ("FFP",)),
        *_edges(BACK, ("BFP",)),
    )
    seams: ClassVar[Mapping[str, str]] = STAND_SEAMS
    gives: ClassVar[frozenset[str]] = frozenset(
        {"open zip", "closure", "opening", "dress opening"}
    )
    needs: ClassVar[dict[str, str]] = {
        "waist line": "a zip that separates runs down a fitted top; add a waist seam, "
        'or a "torso" to cut it in one',
        "inside finish": 'its facing joins that of the neck; add a "neck facing", a '
        '"facing", or a collar whose stand covers that seam',
    }
    clashes: ClassVar[dict[str, str]] = {
        "closure": "a top closes in one place; leave the other closing off",
        "open back": "a back that stands open needs no zip in front; leave one of the "
        "two off",
        "vent": "a vent is cut in a centre back seam, which a top with a zip that "
        "separates lacks; leave one of the two off",
        "lining to the edge": "a zip that separates has a facing behind it; line below "
        "the facing",
        "empire seam": "a zip that separates is not yet led over an empire seam; take "
        "a princess line or darts",
    }

    where: Where = Where.FRONT
    facing: Annotated[
        Length | None,
        Number(
            "b_facing",
            "bf",
            "facing beside the zip",
            "transformations §6",
            6.0,
            2.5,
            3.0,
            14.0,
            (5.0, 9.0),
        ),
    ] = None

    @property
    def centre(self) -> Centre:
        """The centre line that opens."""
        return FRONT if self.where is Where.FRONT else BACK

    def provides(self) -> frozenset[str]:
        front = self.where is Where.FRONT
        return self.gives | {"front opening" if front else "back opening"}

    def forbids(self) -> dict[str, str]:
        if self.where is Where.BACK:
            return self.clashes
        return {
            **self.clashes,
            "wrap": "fronts that cross have no zip at the centre; leave one of the two "
            "off",
            "cowl": "a cowl falls over the centre front; open it at the back",
            "winding neck": "a sweetheart or a keyhole is not divided by a zip; take "
            "another neck, or open it at the back",
        }

    def tables(self) -> tuple[RuleTable, ...]:
        return (CLOSED,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.STAND, "the edges of the zip", self._draw),)

    def _draw(self, d: Drafting) -> None:
        """Lead the facing down; open shell and facing at the centre."""
        c, sheet = self.centre, d.sheet
        upper, lower = c.on(sheet, c.upper), c.on(sheet, c.lower)
        was = as_drafted(sheet) if upper == "F" else sheet.piece(upper)
        facing = led_down(sheet.pieces.get(c.facing), was, c, d.n.b_facing)
        shells, facings = [sheet.piece(upper)], [facing]
        if lower:
            hung = sheet.piece(lower)
            name = f"{c.words.capitalize()} facing, lower"
            wide = facing.edge("foot").length
            shells.append(hung)
            facings.append(below_waist(hung, c, wide, name))
        shells, facings = (
            [_opened(p, c) for p in pieces] for pieces in (shells, facings)
        )
        d.part = c.words
        d.lay(
            Verb.REDRAW,
            sheet.put(*shells),
            ", ".join(p.code for p in shells),
            f"centre {c.words}, open from the neck to the hem",
            detail="it is no fold now: the two edges meet over the zip, from which "
            "nothing is taken off",
            lines=tuple(p.edge(STAND).path for p in shells),
        )
        d.part = "facing"
        d.lay(
            Verb.TRACE,
            d.sheet.put(*facings),
            ", ".join(p.code for p in facings),
            f"facing led down the {c.words} edge",
            amounts=(("inside the centre line", "b_facing"),),
            detail="its free edge turns from the neck's into a line beside the centre; "
            "below the waist it is a strip of what hangs there",
        )

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


def _opened(piece: Piece, centre: Centre) -> Piece:
    """The piece with its centre as an edge that is sewn."""
    old = piece.edge(centre.edge)
    return piece.with_edges(
        Edge(STAND, e.path, EdgeKind.SEAM) if e is old else e for e in piece.edges
    )


def _zip(sheet: Sheet, centre: Centre) -> float:
    """Length of the zip, cm: of the edge, but for what is left free at its ends."""
    codes = (*centre.upper, *centre.lower)
    long = sum(
        sheet.length(c, STAND)
        for c in codes
        if c in sheet.pieces and sheet.piece(c).has(STAND)
    )
    return long - _BELOW_NECK - _ABOVE_HEM
