"""Walking slits at the foot of both side seams, each edge with a facing cut in one
(transformations §7)."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.slit import SLIT_FOLD
from clothwright.curves import Path, left_normal, mirror_in, mix
from clothwright.features.about import About
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.chains import Chains
from clothwright.features.operations import (
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
)
from clothwright.features.roles import Role
from clothwright.features.skirts.slit_edges import (
    BACKS,
    FRONTS,
    SLIT,
    TOP,
    at_hem,
    slit_in,
)
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    InnerLine,
    PaperError,
    Seam,
    Sheet,
    Verb,
    redraw,
)
from clothwright.rules import Numbers
from clothwright.units.fields import Length

_SRC = "transformations §7"

_BETWEEN = 6.0
"""Seam left between a zip in the side and the slit, cm (common practice)."""

_TUNIC = 15.0
"""What ends nearer to the hip is a top, whose slits may reach over it, cm (our own)."""

_BENDS = 0.3
"""A facing is pressed in along a side that bends by so much, cm (our own)."""

_PIECES = (*FRONTS, *BACKS)

_PARTS = {"S": "skirt", "P": "skirt"}


class SideSlit(Feature):
    """A slit in each side seam."""

    kind: Literal["side slit"] = "side slit"
    title: ClassVar[str] = "Slits in the side seams"
    sentence: ClassVar[str] = (
        "Each side seam [ends] in a slit, {height} high, its facings {width} wide and "
        "mitred to the hem."
    )
    pieces: ClassVar[tuple[About, ...]] = tuple(
        About(c, edges={SLIT: Role.VENT, TOP: Role.VENT}) for c in _PIECES
    )
    seams: ClassVar[Mapping[str, str]] = {"S160": "top of a slit in a side seam"}
    gives: ClassVar[frozenset[str]] = frozenset({"side slit"})
    needs: ClassVar[dict[str, str]] = {
        "straight back": "a walking slit is for a straight skirt, alone or of a dress, "
        "or a torso in one; a flared skirt needs none"
    }
    clashes: ClassVar[dict[str, str]] = {
        "closed hem": "a flounce or godets close the hem: leave the slits off",
    }

    height: Annotated[
        Length | None,
        Number(
            "v_side",
            "vs",
            "height of the side slits from the hem",
            _SRC,
            18.0,
            7.0,
            4.0,
            60.0,
            (15.0, 30.0),
        ),
    ] = None
    width: Annotated[
        Length | None,
        Number(
            "v_faced",
            "vf",
            "width of the facings of the side slits",
            _SRC,
            4.0,
            1.5,
            2.5,
            6.0,
            (3.0, 6.0),
        ),
    ] = None

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.CLOSURE, "the side slits", _draw),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam | None]:
        front, back = at_hem(t.sheet)
        yield Seam(
            "S160",
            "top of the side slit",
            t.chain((front, TOP, True)),
            t.chain((back, TOP, False)),
            "side",
            "edge",
            Ease.about(0.0, 0.05),
        )

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        corner = "the faced hem with them" if _faced(sheet) else _MITRED
        yield (
            f"Sew the sides down to the slits, {fmt(n.v_side)} above the hem, and on "
            f"along their tops; the facings fold in along the side, {corner}."
        )

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        yield Operation(
            Work.READY,
            "Sew on along the tops of the side slits",
            (
                "From the side's last stitch out to the edge; clip the back's "
                "allowance in to that stitch, so that the seam above lies open.",
            ),
            seams=("S160",),
            stitch=Stitch.LOCK,
            seam_type=SeamType.PLAIN,
        )
        yield Operation(
            Work.MITRE,
            "Turn the side slits in",
            _FOLDED if _faced(sheet) else _STITCHED_OFF,
            edges=finished_edges(sheet, at_hem(sheet), SLIT),
            stitch=Stitch.HAND,
            seam_type=SeamType.HEM_ONCE,
            neatened=1,
            press="flat",
            task=Task.BY_HAND,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        if n.L > n.WH + _TUNIC and n.L - n.v_side < n.WH + 5.0:
            yield Finding(
                "V3",
                Severity.WARN,
                "The side slits reach up to the hip, where they will pull open.",
                "vs",
                "Make the slits (vs) lower.",
                {"vs": n.v_side, "WH": n.WH},
            )
        held = _held(n, sheet)
        if held is not None and n.L - n.v_side - held < _BETWEEN:
            left = max(0.0, n.L - n.v_side - held)
            yield Finding(
                "V4",
                Severity.REFUSE,
                f"The slit leaves {left:.1f} cm of seam below the zip in the side.",
                "vs",
                "Make the slits (vs) lower, or the zip shorter.",
                {"left": left, "zip": held},
            )


_BAR = "ell the facing down by hand, with a short bar across the top of the slit."

_FOLDED = (
    "Neaten the facings and press them in along the side, the hem with its own facing "
    "in them; trim what is thick in the corner.",
    f"F{_BAR}",
)
_STITCHED_OFF = (
    "Neaten the facings and press them in along the side; press the hem up, mark where "
    "it meets the facing's edge, and stitch the corner off from that mark to the "
    "corner of the folds, right sides together.",
    f"Trim and turn the mitre; f{_BAR}",
)

_MITRED = "and their corners at the hem are mitred"


def _faced(sheet: Sheet) -> bool:
    """True when the hem beside the slits has a facing."""
    return sheet.edge(at_hem(sheet)[0], "hem").kind is EdgeKind.SEAM


def _held(n: Numbers, sheet: Sheet) -> float | None:
    """How far below the waist a zip in the side ends, cm; None without one."""
    if "Zs" in sheet.points:
        return n.z_S
    if "z_top" in n:  # from below the armhole
        return n.z
    return None


def _draw(d: Drafting) -> None:
    """Both halves alike."""
    n = d.n
    front, back = at_hem(d.sheet)
    for code in (front, back):
        piece = d.sheet.piece(code)
        half = "front" if code == front else "back"
        d.part = f"{_PARTS[code[0]]} {half}" if code[0] in _PARTS else half
        side = slit_in(piece)
        path = side.path if code == front else side.path.reversed()  # up from the hem
        if n.v_side > path.length - 5.0:
            raise PaperError(
                f"the side is {path.length:.1f} cm long, and a slit of "
                f"{n.v_side:.1f} cm (vs) leaves no seam above it: make it lower"
            )
        foot, mark = path.start, "f" if code == front else "b"
        top = d.found(
            f"Vs{mark}",
            path.at_length(n.v_side),
            f"top of the slit on the side of the {half}",
            amounts=(("up from the hem", "v_side"),),
        )
        fold, ruled = path.between(0.0, n.v_side), Path.line(foot, top)
        bend = max(ruled.nearest(p)[1] for p in fold.flatten(0.05))
        if bend > _BENDS:
            raise PaperError(
                f"the side bends by {bend:.1f} cm beside the slit, and a facing folds "
                "in flat along a straight line only: make the slits (vs) lower"
            )
        out = left_normal(ruled.start_direction)
        if piece.contains(mix(top, foot, 0.5) + out):
            out = out * -1.0
        hem = piece.edge("hem").path
        inner = Path.line(foot - out * n.v_faced, top - out * n.v_faced).run_on(5.0)
        hits = hem.meets(inner)
        if not hits:
            raise PaperError(
                "the hem is too narrow for the facings of the side slits: make them "
                "(vf) narrower"
            )
        at = hits[0][0]
        mirror = mirror_in(foot, top)
        if code == front:  # the hem runs up to the side
            turned = hem.between(at, hem.length).moved(mirror).reversed()
            edge = Path.line(turned.end, top + out * n.v_faced)
            run = ["hem", side.name]
            new = (
                Edge("hem", hem + turned.pinned(hem.end, turned.end), _DONE),
                Edge(SLIT, edge, _DONE),
                Edge(TOP, Path.line(edge.end, top)),
                side.along(path.between(n.v_side, path.length).pinned(top, path.end)),
            )
        else:
            turned = hem.between(0.0, at).moved(mirror).reversed()
            edge = Path.line(top + out * n.v_faced, turned.start)
            run = [side.name, "hem"]
            rest = path.between(n.v_side, path.length).pinned(top, path.end)
            new = (
                side.along(rest.reversed()),
                Edge(TOP, Path.line(top, edge.start)),
                Edge(SLIT, edge, _DONE),
                Edge("hem", turned.pinned(turned.start, hem.start) + hem, _DONE),
            )
        sheet = redraw(d.sheet, code, run, list(new))
        marked = sheet.piece(code).with_lines(InnerLine(SLIT_FOLD, fold))
        d.lay(
            Verb.REDRAW,
            sheet.put(marked),
            f"{code}.{SLIT}",
            f"facing of the slit on the {half}",
            frm=(f"Vs{mark}",),
            amounts=(("{} wide", "v_faced"),),
            detail="beside the side, which is its fold: its top square to that, its "
            "hem the hem's mirror image; where they fold in, the corner is mitred",
            lines=(edge, turned),
        )


_DONE = EdgeKind.FINISHED
