"""Hem finished by a facing in its own shape: for one that curves too much to be turned
up (transformations 6: the mirror of the hem, 4 to 8 deep)."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.skirt import BACK, FRONT
from clothwright.curves import Cubic, Line, Path, Segment, distance, turned
from clothwright.features.about import About, Place
from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.features.chains import HANGING_PANELS, Chains
from clothwright.features.collars.collar_pieces import COLLAR
from clothwright.features.collars.jabot import JABOT_PIECE
from clothwright.features.grain import grained_as
from clothwright.features.operations import Operation, SeamType, Stitch, Task, Work
from clothwright.features.roles import Role, bodice_hem, skirt_hem
from clothwright.features.skirts.about import GORE, hanging_hem
from clothwright.features.skirts.slit_edges import SLIT
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    PaperError,
    Piece,
    Run,
    Seam,
    SeamKind,
    Sheet,
    Verb,
    meetings,
)
from clothwright.rules import Numbers
from clothwright.truing.outline import crosses_itself
from clothwright.units.fields import Length

_SRC = "transformations 6"

_REACH, _CRUMB = 6.0, 0.1
"""The line beside the hem is run on so far to meet the seams, cm; what is shorter is no
line of its own."""

_LEFT = 1.0
"""What a facing leaves of the seams above it at least, cm (our own)."""

_EVEN = Ease.about(0.0, 0.05)

FACED = {
    FRONT: ("HFF", "Front hem facing"),
    BACK: ("HFB", "Back hem facing"),
    GORE: ("HFG", "Hem facing of a gore"),
    "PF": ("HFF", "Front hem facing"),
    "PB": ("HFB", "Back hem facing"),
    "F": ("HFF", "Front hem facing"),
    "B": ("HFB", "Back hem facing"),
    **{
        f"{hung}{code}": (facing, f"{name} hem facing")
        for hung in ("P", "")
        for code, facing, name in (
            ("FC", "HFF", "Centre front"),
            ("FS", "HFFS", "Side front"),
            ("BS", "HFBS", "Side back"),
            ("BC", "HFB", "Centre back"),
        )
    },
}
"""Code and name of the facing of each piece that ends in a hem."""

_FACINGS = tuple(dict.fromkeys(code for code, _ in FACED.values()))

_HEMS: Mapping[str, Callable[[Piece, Edge], Role | None]] = {
    **dict.fromkeys((FRONT, BACK, GORE), skirt_hem),
    **dict.fromkeys(("PF", "PB", *HANGING_PANELS), hanging_hem),
    **dict.fromkeys(("F", "B", "FC", "FS", "BS", "BC"), bodice_hem),
}
"""What a hem is that has no facing: a lining's, behind one that has."""


def _hem_of(code: str) -> Callable[[Piece, Edge], Role | None]:
    """What the hem of a piece is: faced, or as it would be."""

    def role(piece: Piece, edge: Edge) -> Role | None:
        return Role.EDGE if edge.kind is EdgeKind.SEAM else _HEMS[code](piece, edge)

    return role


class HemFacing(Feature):
    """Facing of a curved hem."""

    kind: Literal["hem facing"] = "hem facing"
    title: ClassVar[str] = "Hem facing"
    sentence: ClassVar[str] = "The hem is [faced], {depth} deep."
    retells: ClassVar[Mapping[str, str]] = {
        "mitred to the hem": "folded in with the faced hem"
    }
    shows: ClassVar[Shown] = {"hem facing": ("HFF.free", "HFG.free")}
    pieces: ClassVar[tuple[About, ...]] = (
        *(
            About(c, Place.FACING, ("facing",), {"hem": Role.EDGE, SLIT: Role.VENT})
            for c in _FACINGS
        ),
        *(About(c, edges={"hem": _hem_of(c)}) for c in FACED),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S144": "hem and its facing, each piece, and the facing's own seams"
    }
    gives: ClassVar[frozenset[str]] = frozenset({"hem finish"})
    needs: ClassVar[dict[str, str]] = {
        "plain hem": "a hem facing is traced from the hem of a skirt, a dress or a "
        "peplum that is not pleated"
    }
    clashes: ClassVar[dict[str, str]] = {
        "hem finish": "the hem of a skirt ends one way only",
        "pleats": "a pleat is laid over its turned hem; leave one of the two off",
        "wrap skirt": "the front edge of a wrap skirt has a facing of its own down to "
        "the hem; turn that up",
        "wrap": "fronts that cross have an edge down to the hem; turn that up",
        "button stand": "a button stand has a facing down to the hem; turn that up",
        "open edges": "a centre that opens down to the hem has a facing there; turn "
        "the hem up",
    }

    depth: Annotated[
        Length | None,
        Number(
            "hem_facing",
            "hem facing",
            "depth of the hem facing",
            _SRC,
            6.0,
            2.5,
            2.5,
            15.0,
            (4.0, 8.0),
        ),
    ] = None

    def stages(self) -> tuple[Stage, ...]:
        # a lining is traced from the hem before that is faced
        return (Stage(Rank.CUT_ON, "the hem facing", _draft),)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        codes = [s.code for s in sheet.seams if s.code.startswith("S144")]
        yield Operation(
            Work.SKIRT,
            "Join the pieces of the hem facing",
            seams=tuple(c for c in codes if not c.startswith("S144.")),
            stitch=Stitch.LOCK,
            seam_type=SeamType.PLAIN,
            press="open",
        )
        yield Operation(
            Work.FACE_HEM,
            "Face the hem",
            (
                "Right sides together, seam on seam. Trim the allowances in layers, "
                "clip the curves, turn; stitch the allowances to the facing.",
            ),
            seams=tuple(c for c in codes if c.startswith("S144.")),
            stitch=Stitch.LOCK,
            seam_type=SeamType.PLAIN,
            press="towards the facing, then rolled to the inside",
            task=Task.FACE,
        )
        found = [c for c in _FACINGS if c in sheet.pieces]
        says = ["It lies flat: the curve is cut into it."]
        names = {e.name for c in found for e in sheet.piece(c).edges}
        for edge, words in ((SLIT, "At the slits"), ("vent", "At the vent")):
            if edge in names:
                says.append(f"{words} it is folded in with the hem that it faces.")
        yield Operation(
            Work.HEM,
            "Neaten the hem facing and fell it by hand",
            tuple(says),
            edges=tuple(Run(c, "free") for c in found),
            stitch=Stitch.HAND,
            seam_type=SeamType.HEM_ONCE,
            neatened=1,
            task=Task.HEM,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        for code in _FACINGS:
            if code not in sheet.pieces:
                continue
            facing = sheet.piece(code)
            if crosses_itself(facing.outline) is not None:
                yield Finding(
                    "HF1",
                    Severity.REFUSE,
                    f"The hem bends too sharply for a facing of {n.hem_facing:.1f} cm: "
                    "its upper edge crosses itself.",
                    "hem facing",
                    "Make it (hem facing) less deep.",
                    {"depth": n.hem_facing},
                )


def _draft(d: Drafting) -> None:
    """Trace the facing of every piece above its hem."""
    d.part = "facing"
    hems = [c for c, p in d.sheet.pieces.items() if _ends_in_hem(p)]
    odd = next((d.sheet.piece(c).name for c in hems if c not in FACED), "")
    if odd or not hems:
        raise PaperError(
            f"the hem of the {odd.lower() or 'garment'} is not yet faced; leave the "
            "hem facing off"
        )
    for code in hems:
        shell = d.sheet.piece(code)
        facing = grained_as(_above(shell, d.n.hem_facing), shell)
        hem = shell.edge("hem")
        d.lay(
            Verb.TRACE,
            d.sheet.put(
                shell.with_edge(Edge("hem", hem.path, EdgeKind.SEAM)),
                facing,
            ),
            facing.code,
            facing.name.lower(),
            amounts=(("deep", "hem_facing"),),
            detail="its lower edge is the hem, its upper edge runs beside that",
            over=(shell.outline,),
        )
    t = Chains(d.sheet)
    d.lay(
        Verb.SEW,
        d.sheet.sew(*_onto_hem(t), *_joined(t)),
        "hem facing",
        "the facing walked along the hem",
        detail="from seam to seam",
    )


def _ends_in_hem(piece: Piece) -> bool:
    """True for a piece of the body of the shell that is hemmed below."""
    return (
        piece.has("hem")
        and piece.edge("hem").kind is EdgeKind.FINISHED
        and not piece.code.startswith("L.")
        and piece.code not in _BESIDE
    )


_BESIDE = ("SL", "SLF", "SLB", "ST", "SU", COLLAR, JABOT_PIECE)
"""Sleeves, and what falls from the neck: each has a hem of its own."""


def _above(shell: Piece, deep: float) -> Piece:
    """The lower part of a piece, up to a line beside its hem. Raises PaperError where
    that does not meet the seams."""
    code, name = FACED[shell.code]
    before, hem, after = shell.before("hem"), shell.edge("hem"), shell.after("hem")
    if min(before.length, after.length) < deep + _LEFT:
        raise PaperError(
            f"the hem facing is {deep:.1f} cm deep, and the seams beside the hem only "
            f"{min(before.length, after.length):.1f} cm long: make it (hem facing) "
            "less deep"
        )
    line = _beside(hem.path, deep).run_on(_REACH)
    fault = (
        f"the facing of the hem, {deep:.1f} cm deep, does not come to the seams beside "
        "it: make it (hem facing) less deep"
    )
    start = meetings(line, before.path, fault)[0][0]
    end = meetings(line, after.path, fault)[-1][0]
    free = line.between(start, end).without_crumbs(_CRUMB)
    down, rise = (
        e.path.length_to_point(p) for e, p in ((before, free.start), (after, free.end))
    )
    first = before.path.between(down, before.length).pinned(free.start, hem.path.start)
    last = after.path.between(0.0, rise).pinned(hem.path.end, free.end)
    return Piece(
        code,
        name,
        (
            before.along(first),
            Edge("hem", hem.path),
            after.along(last),
            Edge("free", free.reversed(), EdgeKind.FINISHED),
        ),
    )


def _beside(hem: Path, deep: float) -> Path:
    """A hem's parallel inside its piece: each curve with the directions of its ends,
    its handles longer or shorter as its chord (a hem bends gently)."""
    out: list[Segment] = []
    for s in hem.segments:
        a, b = (
            p + turned(way, 90) * deep
            for p, way in ((s.start, s.start_direction), (s.end, s.end_direction))
        )
        if not isinstance(s, Cubic):
            out.append(Line(a, b))
            continue
        by = distance(a, b) / distance(s.start, s.end)
        first, last = (s.handle1 - s.start) * by, (s.handle2 - s.end) * by
        out.append(Cubic(a, a + first, b + last, b))
    path = Path((out[0],))
    for part in out[1:]:
        path += Path((part,)).pinned(path.end, part.end)
    return path


def _onto_hem(t: Chains) -> Iterable[Seam]:
    for k, (code, (facing, name)) in enumerate(FACED.items(), 1):
        left, right = (t.chain((c, "hem", False)) for c in (code, facing))
        if not (left and right) or t.sheet.edge(code, "hem").kind is not EdgeKind.SEAM:
            continue
        yield Seam(
            f"S144.{k}",
            f"hem and {name.lower()}",
            left,
            right,
            ease=_EVEN,
            kind=SeamKind.FACED,
        )


def _joined(t: Chains) -> Iterable[Seam]:
    """The pieces of the facing to each other, and to their twins."""
    pairs = (
        ("a", ("HFF", "side"), ("HFB", "side")),
        ("a", ("HFF", "side low"), ("HFB", "side")),
        ("a", ("HFFS", "side"), ("HFBS", "side")),
        ("a", ("HFFS", "side low"), ("HFBS", "side")),
        ("e", ("HFF", "panel"), ("HFFS", "panel")),
        ("f", ("HFBS", "panel"), ("HFB", "panel")),
        ("b", ("HFG", "seam"), ("HFG", "other seam")),
    )
    for letter, (one, edge), (two, other) in pairs:
        left, right = t.chain((one, edge, True)), t.chain((two, other, False))
        if left and right:
            name = "seams of the hem facing"
            yield Seam(
                f"S144{letter}",
                name,
                left,
                right,
                "upper edge",
                "hem",
                Ease.about(0.0, 0.1),
            )
    for letter, edge in (("c", "cb"), ("d", "cf")):
        code = "HFB" if edge == "cb" else "HFF"
        chain = t.chain((code, edge, edge == "cb"))
        if chain and t.sheet.edge(code, edge).kind is EdgeKind.SEAM:
            yield Seam(
                f"S144{letter}",
                "centre of the hem facing",
                chain,
                chain,
                "upper edge",
                "hem",
                _EVEN,
                kind=SeamKind.TWIN,
            )
