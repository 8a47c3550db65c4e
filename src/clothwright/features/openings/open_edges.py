"""A centre that opens from the neck to the hem and does not lap over: its two edges
meet or stand apart, and are faced (transformations §6 and §7)."""

from collections.abc import Mapping
from typing import ClassVar

from clothwright.curves import Vector
from clothwright.features.about import About, Place
from clothwright.features.base import Feature, Number
from clothwright.features.bodice.centre_back import CLOSED
from clothwright.features.bodice.front_dart import as_drafted
from clothwright.features.linings.about import FACINGS
from clothwright.features.linings.sleeve_lining import sunk
from clothwright.features.openings.button_stand import Where
from clothwright.features.openings.stand_band import set_back
from clothwright.features.openings.stand_pieces import (
    BACK,
    FRONT,
    STAND,
    Centre,
    below_waist,
    led_down,
)
from clothwright.features.openings.stand_seams import STAND_SEAMS
from clothwright.features.roles import Role
from clothwright.features.wholes import WAIST_IN_BAND
from clothwright.paper import Drafting, Edge, EdgeKind, Piece, Sheet, Verb
from clothwright.rules import RuleTable


def facing(cm: float, inch: float) -> Number:
    """How far the facing reaches inside the edge, by its defaults."""
    name = "facing inside the open edge"
    src = "transformations §6"
    return Number("b_facing", "bf", name, src, cm, inch, 2.0, 14.0)


class OpenEdge(Feature):
    """Base of what opens a centre so."""

    gives: ClassVar[frozenset[str]] = frozenset(
        {"open edges", "closure", "opening", "dress opening"}
    )
    needs: ClassVar[Mapping[str, str]] = {
        "waist line": "an edge that opens runs down a fitted top; add a waist seam, or "
        'a "torso" to cut it in one',
        "inside finish": 'its facing joins that of the neck; add a "neck facing", a '
        '"facing", or a collar whose stand covers that seam',
    }
    seams: ClassVar[Mapping[str, str]] = STAND_SEAMS

    what: ClassVar[str]
    """What it opens for: "a zip that separates"."""

    where: Where = Where.BACK

    @property
    def centre(self) -> Centre:
        """The centre line that opens."""
        return FRONT if self.where is Where.FRONT else BACK

    def provides(self) -> frozenset[str]:
        front = self.where is Where.FRONT
        return self.gives | {"front opening" if front else "back opening"}

    def forbids(self) -> Mapping[str, str]:
        return _clashes(self.what, self.centre)

    def tables(self) -> tuple[RuleTable, ...]:
        return (CLOSED,)


def pieces(words: str) -> tuple[About, ...]:
    """What is said of the facings, and of the edges: `words` are written along them,
    "centre {}"."""
    edges = (
        About(code, edges={STAND: Role.OPENING}, centres={STAND: words.format(c.words)})
        for c in (FRONT, BACK)
        for code in (*c.upper, *c.lower, c.facing, c.low_facing)
    )
    strips = (
        About(c.low_facing, Place.STAND, ("facing",), cloths=("shell", "interlining"))
        for c in (FRONT, BACK)
    )
    return (*FACINGS, *strips, *edges)


def _clashes(what: str, centre: Centre) -> Mapping[str, str]:
    """What does not go with an edge that opens for `what`: "a zip that separates"."""
    found = {
        "closure": "a top closes in one place; leave the other closing off",
        "open back": f"a back that stands open needs no more than that; leave {what} "
        "off",
        "vent": "a vent is cut in a centre back seam, which a top without a zip behind "
        "lacks; leave one of the two off",
        "lining to the edge": f"{what} has a facing behind it; line below the facing",
        "empire seam": f"{what} is not yet led over an empire seam; take a princess "
        "line or darts",
    }
    if centre is BACK:
        return found
    return {
        **found,
        "wrap": f"fronts that cross have no edge for {what}; leave one of the two off",
        "cowl": "a cowl falls over the centre front; open it at the back",
        "winding neck": f"a sweetheart or a keyhole is not divided for {what}; take "
        "another neck, or open it at the back",
    }


def open_at_centre(d: Drafting, c: Centre, apart: float, says: str) -> None:
    """Lead the facing down; open shell and facing at the centre, each edge set back by
    `apart` cm from it."""
    sheet = d.sheet
    upper, lower = c.on(sheet, c.upper), c.on(sheet, c.lower)
    was = as_drafted(sheet) if upper == "F" else sheet.piece(upper)
    wide = "it (bf) or the gap (lg)" if apart else "it (bf)"
    inside = apart + d.n.b_facing
    facing = led_down(sheet.pieces.get(c.facing), was, c, inside, wide)
    shells, facings = [sheet.piece(upper)], [facing]
    if lower:
        hung = sheet.piece(lower)
        name = f"{c.words.capitalize()} facing, lower"
        shells.append(hung)
        facings.append(below_waist(hung, c, facing.edge("foot").length, name))
    whole = shells[0]
    shells, facings = ([_opened(p, c, apart) for p in ps] for ps in (shells, facings))
    facings = [_on_edge(p, s) for p, s in zip(facings, shells, strict=True)]
    sheet = sheet.put(*shells)
    if apart:
        waist = whole.after("cf") if c is FRONT else whole.before("cb")
        left = shells[0].edge(waist.name).length
        ends = (0.0, waist.length - left)
        gap = waist.path if c is FRONT else waist.path.reversed()
        sheet = sheet.drawn(**{f"{WAIST_IN_BAND}, {c.words}": gap.between(*ends)})
    d.part = c.words
    d.lay(
        Verb.REDRAW,
        sheet,
        ", ".join(p.code for p in shells),
        f"centre {c.words}, open from the neck to the hem",
        amounts=(("each edge set back from the centre line by {}", apart),)
        if apart
        else (),
        detail=says,
        lines=tuple(p.edge(STAND).path for p in shells),
    )
    d.part = "facing"
    d.lay(
        Verb.TRACE,
        d.sheet.put(*facings),
        ", ".join(p.code for p in facings),
        f"facing led down the {c.words} edge",
        amounts=(("inside the edge", "b_facing"),),
        detail="its free edge turns from the neck's into a line beside the edge; below "
        "the waist it is a strip of what hangs there",
    )


def _opened(piece: Piece, centre: Centre, apart: float) -> Piece:
    """The piece with its centre as an edge that is sewn, set back so far."""
    if apart:
        return set_back(piece, apart, centre, STAND)
    old = piece.edge(centre.edge)
    return piece.with_edges(
        Edge(STAND, e.path, EdgeKind.SEAM) if e is old else e for e in piece.edges
    )


def _on_edge(facing: Piece, shell: Piece) -> Piece:
    """The facing with its edge on the shell's: the roll of a neck begins there."""
    edge = shell.edge(STAND).path
    before, after = facing.before(STAND), facing.after(STAND)
    moved = {
        before.name: sunk(before.path, _HERE, edge.start - before.path.end),
        STAND: edge,
        after.name: sunk(after.path, edge.end - after.path.start, _HERE),
    }
    return facing.with_edges(e.along(moved.get(e.name, e.path)) for e in facing.edges)


_HERE = Vector(0.0, 0.0)


def edge_length(sheet: Sheet, centre: Centre, *, below: bool = True) -> float:
    """Length of the edge that opens, cm, with or without what hangs on the waist."""
    codes = (*centre.upper, *(centre.lower if below else ()))
    return sum(
        sheet.length(c, STAND)
        for c in codes
        if c in sheet.pieces and sheet.piece(c).has(STAND)
    )
