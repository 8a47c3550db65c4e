"""Pleated skirt of a dress: knife or box pleats whose folded waist is the bodice's
(transformations §10).

The middle of a face lies at the centre front, which is on the fold, and at the centre
back, where the zip runs down through the waist. From there the pleats lie alike on both
sides: knife pleats towards the back.
"""

from collections.abc import Callable, Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.features.about import About, Place
from clothwright.features.base import Feature, Pin, Rank, Shown, Stage, Words
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
from clothwright.features.skirts.about import (
    HANGING_SEAMS,
    ONE_HANGS,
)
from clothwright.features.skirts.half_pleats import (
    SIDE,
)
from clothwright.features.skirts.hanging_seams import hanging_side
from clothwright.features.skirts.peplum import widest
from clothwright.features.skirts.peplum_rules import AT_EDGE, called
from clothwright.features.skirts.pleated_breadths import (
    BREADTH,
    SEAM_CODE,
    SIDE_FRONT,
    cut_in_breadths,
)
from clothwright.features.skirts.pleated_dress_drawing import (
    BACK,
    FRONT,
    HALVES,
    draw_closed,
    lay_open,
    pleats_of_half,
    take_in_lining,
)
from clothwright.features.skirts.pleated_dress_rules import (
    BOX,
    KNIFE,
    PLEATED_DRESS,
    pleats_all_round,
)
from clothwright.features.skirts.pleated_skirt import (
    PleatedSkirt,
    Shape,
    pleat_findings,
    pleat_operations,
)
from clothwright.features.skirts.pleated_skirt_drawing import SEAM
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    UNDER,
    Drafting,
    Piece,
    Seam,
    Sheet,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.truing import Corner, End, Joint, walk
from clothwright.truing.tolerances import SKIRT_HEM, SKIRT_WAIST
from clothwright.units.fields import Length

_P = PleatedSkirt.numbers()

_AT_EDGE = called(AT_EDGE, "skirt")


class Cut(Enum):
    """How its front is cut."""

    WHOLE = "in one"
    """On the fold."""

    BREADTHS = "in three breadths"
    """Their seams in inner folds, for a cloth that is narrower than the front."""


class PleatedDressSkirt(Feature):
    """Pleated skirt at the waist seam of a bodice."""

    kind: Literal["pleated dress skirt"] = "pleated dress skirt"
    title: ClassVar[str] = "Pleated skirt of a dress"
    sentence: ClassVar[str] = (
        "From the waist seam hangs a [pleated skirt], {length} long, in {shape} about "
        "{face} wide."
    )
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("length", (FRONT,), ("hem", "cf"), (0.0, 1.0)),
    )
    shows: ClassVar[Shown] = {
        "Eh": ("PF.side",),
        "HH": ("PF.side",),
        "pv0": ("PF.waist 1",),
        "pu": ("PF.waist 1",),
        "ease at the waist": ("PF.waist 1",),
    }
    pieces: ClassVar[tuple[About, ...]] = tuple(
        About(
            code,
            place,
            (f"skirt {half}",),
            {"side": Role.PEPLUM_SIDE, BREADTH: Role.PEPLUM_SIDE, "hem": Role.DEEP_HEM},
        )
        for code, place, half in (
            (FRONT, Place.PEPLUM_FRONT, "front"),
            (SIDE_FRONT, Place.PEPLUM_FRONT, "front"),
            (BACK, Place.PEPLUM_BACK, "back"),
        )
    )
    seams: ClassVar[Mapping[str, str]] = {
        **HANGING_SEAMS,
        "S54": "pleats of a skirt, stitched down",
        SEAM_CODE: "seam of two breadths of a pleated front, in an inner fold",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"skirt", "pleated hem"})
    needs: ClassVar[dict[str, str]] = {
        "waist seam": "the skirt of a dress needs a waist seam",
        "centre back zip": "a dress is put on through a zip at its back; add a "
        '"concealed zip"',
    }
    clashes: ClassVar[dict[str, str]] = {
        "skirt": ONE_HANGS,
        "torso seam": "the pleats are taken in from the hip to the waist; to a torso's "
        "seam sew a flared or a gathered skirt",
    }

    shape: Shape = Shape.KNIFE
    front: Cut = Cut.WHOLE
    length: Annotated[Length | None, _P["length"]] = None
    face: Annotated[Length | None, _P["face"]] = None
    depth: Annotated[Length | None, _P["depth"]] = None
    gap: Annotated[Length | None, _P["gap"]] = None
    stitched: Annotated[Length | None, _P["stitched"]] = None
    hip_ease: Annotated[Length | None, _P["hip_ease"]] = None

    @property
    def box(self) -> bool:
        """True for box pleats."""
        return self.shape is Shape.BOX

    def said(self) -> str:
        said = self.sentence[:-1]
        if self.front is Cut.BREADTHS:
            return f"{said}; its front is cut {{front}}."
        if self.box and self.gap:
            return f"{said}; they lie {{gap}} apart."
        return self.sentence

    def tables(self) -> tuple[RuleTable, ...]:
        return (_AT_EDGE, PLEATED_DRESS, BOX if self.box else KNIFE)

    def stages(self) -> tuple[Stage, ...]:
        return (
            Stage(Rank.BELOW_WAIST, "the skirt as its pleats lie", self._close),
            Stage(Rank.CUT_ON, "the lining of the skirt", take_in_lining),
            Stage(Rank.LAID_OPEN, "the pleats of the skirt", self._lay_open),
        )

    def _close(self, d: Drafting) -> None:
        draw_closed(d, box=self.box)

    def _lay_open(self, d: Drafting) -> None:
        lay_open(d, box=self.box)
        if self.front is Cut.BREADTHS:
            cut_in_breadths(d, pleats_of_half(d.n, "F", box=self.box))

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam | None]:
        return (hanging_side(t, n),)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return pleated_joints(sheet)

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        folds = 2 if self.box else 1
        halves = " and ".join(
            f"{round(n[f'pn_{k}'])} on each side of the face at the centre {half}, "
            f"{fmt(n[f'pv_{k}'])} wide"
            for k, half in (("F", "front"), ("B", "back"))
        )
        lie = "" if self.box else " They lie towards the back on both sides."
        yield (
            f"Pleats: {halves}, all {fmt(n.pu)} deep.{lie} Fold on the solid line, lay "
            "it to the dashed one as the arrow points, and stitch down to "
            f"{fmt(n.p_down)} below the waist; each fold takes "
            f"{fmt(n.pt_F / folds)} (front) or {fmt(n.pt_B / folds)} (back) more at "
            "the waist than at the hip."
        )
        if f"L.{FRONT}" in sheet.pieces:
            yield (
                "The lining of the skirt hangs straight: lay the waist of each half in "
                "small pleats, and leave its sides open for a step, a hand's length "
                "above the hem."
            )

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        folds = pleats_all_round(n, box=self.box)
        yield Operation(
            Work.SKIRT,
            "Hem the skirt",
            (
                "Its sides sewn, before the pleats are pressed in: turned up once, its "
                "raw edge neatened first, and felled by hand to a hand's breadth from "
                "the centre back, the rest when that is closed.",
            ),
            edges=finished_edges(sheet, (FRONT, BACK), "hem"),
            stitch=Stitch.HAND,
            seam_type=SeamType.HEM_ONCE,
            neatened=1,
            task=Task.HEM,
        )
        yield from pleat_operations(
            sheet,
            (
                "Baste every fold onto its placement line from waist to hem and press.",
                f"Stitch down to {fmt(n.p_down)} below the waist. The waist is then as "
                "long as the bodice's.",
            ),
            n.p_down * folds,
            folds,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from self._girths(n, sheet)
        for k in ("F", "B"):
            yield from pleat_findings(n, n[f"pv_{k}"], n[f"pt_{k}"], box=self.box)
            yield from self._folds(n, sheet, k)
        code, wide = widest(sheet)
        if "Cw" in n and wide > n.Cw:
            yield Finding(
                "Q3",
                Severity.WARN,
                f"{sheet.piece(code).name} is {wide:.1f} cm wide with its allowances; "
                f"the cloth is {n.Cw:.1f} cm between its selvedges.",
                "pu",
                (
                    'Set front = "in three breadths", or fold less under (pu).'
                    if code == FRONT and self.front is Cut.WHOLE
                    else "Fold less under (pu), or lay it across the cloth."
                ),
                {"wide": wide, "cloth": n.Cw},
            )

    def _folds(self, n: Numbers, sheet: Sheet, k: str) -> Iterable[Finding]:
        """Few pleats that take in much at the waist lie so aslant that the two lines
        of one are not alike."""
        half = {"F": "front", "B": "back"}[k]
        own = (f"{SEAM}{half}", f"{SEAM}side") if k == "F" else (f"{SEAM}{half}",)
        walks = [walk(sheet, s) for s in sheet.seams if s.code.startswith(own)]
        taken = n[f"pt_{k}"]
        if any(w.severity is Severity.REFUSE for w in walks):
            apart = max(abs(w.ease) for w in walks)
            yield Finding(
                "PL4",
                Severity.REFUSE,
                f"Each pleat of the {half} takes in {taken:.1f} cm at the waist, and "
                f"lies so aslant that its two folds are {apart * 10:.1f} mm apart.",
                "pv0",
                "Make the pleats narrower (pv wanted), so that more of them share it.",
                {"apart": apart},
            )

    def _girths(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        """The folded waist is the bodice's (K1); room over the high hip (K8)."""
        waist = sum(
            2 * e.length
            for c in (FRONT, SIDE_FRONT, BACK)
            if c in sheet.pieces
            for e in sheet.piece(c).edges
            if e.name.startswith("waist")
        )
        off = waist - 2 * (n.w_SF + n.w_SB)
        if abs(off) > 0.1:
            yield Finding(
                "K1",
                Severity.REFUSE,
                f"The waist of the folded pleats is off the bodice's by {off:.1f} cm.",
                "ease at the waist",
                "Measure W and H again.",
                {"off": off},
            )
        halves = (pleats_of_half(n, k, box=self.box) for k in ("F", "B"))
        room = 2 * sum(k.width_at(n.WHH) for k in halves) - n.HH
        if room < 1.0:
            yield Finding(
                "K8",
                Severity.WARN,
                f"Over the high hip (HH) the pleats leave {room:.1f} cm of room.",
                "HH",
                "Measure HH and WHH again, or give the hip more ease (Eh).",
                {"room": room},
            )


# -- corners --------------------------------------------------------------------------
def pleated_joints(sheet: Sheet) -> Iterable[Joint]:
    """Waist and hem square to fold and centre back; the waist runs on across each pleat
    as it lies, the hem over the side."""
    for code, _, half, _ in HALVES:
        piece = sheet.piece(code)
        if not piece.has("waist 1"):
            continue
        inner, outer = (End.START, End.END) if half == "back" else (End.END, End.START)
        where = f"at the centre {half}"
        yield Joint.fold(f"skirt waist {where}", Corner(code, "waist 1", inner))
        yield Joint.fold(f"skirt hem {where}", Corner(code, "hem", outer))
        yield from _over_pleats(sheet, half, inner, outer)
    fronts, backs = (_last(sheet, half) for half in ("front", "back"))
    (front, f), (back, b) = fronts, backs
    ends = Corner(front, f, End.START), Corner(back, b, End.END)
    if f == SIDE:
        ends = Corner(front, SIDE, End.END), Corner(back, SIDE, End.START)
        yield Joint("waist over the pleat at the side", ends, 360.0, SKIRT_WAIST)
    elif f.startswith("waist"):
        yield Joint("skirt waist over the side", ends, 180.0, SKIRT_WAIST)
    hems = Corner(front, "hem", End.END), Corner(back, "hem", End.START)
    yield Joint("skirt hem over the side", hems, 180.0, SKIRT_HEM)


def _over_pleats(sheet: Sheet, half: str, inner: End, outer: End) -> Iterable[Joint]:
    """The waist across each pleat of a half."""
    of = {e.name: p.code for p in _pieces(sheet, half) for e in p.edges}
    _, last = _last(sheet, half)
    for name, code in of.items():
        over = f"{name} over"
        if not (name.startswith(UNDER) and over in of):
            continue
        corners = [Corner(code, name, inner), Corner(of[over], over, outer)]
        if over == last:  # the rest of the placement is the other half's
            other = "back" if half == "front" else "front"
            corners.append(Corner(*_last(sheet, other), inner))
        says = f"waist over pleat {name.removeprefix(UNDER).strip()}, {half}"
        yield Joint(says, tuple(corners), 360.0, SKIRT_WAIST)


def _pieces(sheet: Sheet, half: str) -> list[Piece]:
    """Pieces of a half, from its centre."""
    codes = (FRONT, SIDE_FRONT) if half == "front" else (BACK,)
    return [sheet.pieces[c] for c in codes if c in sheet.pieces]


def _last(sheet: Sheet, half: str) -> tuple[str, str]:
    """Piece and name of the edge beside the side seam at the waist."""
    piece = _pieces(sheet, half)[-1]
    beside = piece.after if half == "front" else piece.before
    return piece.code, beside("side").name
