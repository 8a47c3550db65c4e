"""Faced waist of a skirt or of trousers: facings traced from the trued waist with its
darts closed (transformations §6)."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks import trousers
from clothwright.blocks.skirt import BACK, FRONT
from clothwright.features.about import About, Place
from clothwright.features.base import Cuts, Feature, Number, Rank, Stage
from clothwright.features.chains import Chains
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import Operation, Work, tape_on
from clothwright.features.skirts.about import GORE, GORE_FACING
from clothwright.features.skirts.closed_top import shortest_dart, top_of
from clothwright.features.skirts.pocket_drawing import HIP_PIECE
from clothwright.features.skirts.skirt_seams import waist_chain
from clothwright.features.skirts.skirt_sewing import facing_operations
from clothwright.features.wholes import before_yoke
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Ease,
    Run,
    Seam,
    SeamKind,
    Sheet,
    Verb,
)
from clothwright.rules import Numbers
from clothwright.truing.outline import crosses_itself
from clothwright.units.fields import Length

_SRC = "transformations §6"

FACINGS = {
    FRONT: "WFF",
    BACK: "WFB",
    GORE: GORE_FACING,
    trousers.FRONT: "WFF",
    trousers.BACK: "WFB",
}
"""Code of the facing of each piece of a skirt or of trousers."""

_NAMES = {
    FRONT: "Front waist facing",
    BACK: "Back waist facing",
    trousers.FRONT: "Front waist facing",
    trousers.BACK: "Back waist facing",
}

SHORT_OF_ZIP = 0.5
"""A facing ends so far beside the line of a zip, cm (first garment 16.4)."""

_ABOVE_POINT = 1.0
"""A facing ends so far above the point of the shortest dart, cm: the dart can be closed
on it (our own choice)."""


class WaistFacing(Feature):
    """Facing of the waist, in place of a band."""

    kind: Literal["waist facing"] = "waist facing"
    title: ClassVar[str] = "Waist facing"
    sentence: ClassVar[str] = "The waist is [faced], {depth} deep, without a band."
    pieces: ClassVar[tuple[About, ...]] = tuple(
        About(code, Place.WAIST_FACING, ("waist facing",))
        for code in ("WFF", "WFB", "WFG")
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S38": "facing of a waist, to it and at its centre",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"waist finish"})
    needs: ClassVar[dict[str, str]] = {
        "waist": "a waist facing needs a skirt or trousers to be sewn to"
    }
    clashes: ClassVar[dict[str, str]] = {
        "waist finish": "the waist is finished one way only",
        "gathered waist": "a gathered waist is set into a band",
        "pleated waist": "sunburst pleats are set into a band",
        "fly": "the shield of a fly is held by a waistband: close faced trousers with "
        "a side zip",
    }

    depth: Annotated[
        Length | None,
        Number(
            "wf",
            "wf",
            "depth of the waist facing",
            _SRC,
            6.0,
            2.5,
            3.0,
            10.0,
            (5.0, 7.0),
        ),
    ] = None

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.FACING, "the waist facing", draft_facing),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return _faced(t)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        both = ("shell", "interlining")
        out = {}
        for code in ("WFF", "WFB"):
            if code in sheet.pieces:
                fold = sheet.piece(code).fold is not None
                out[code] = Cuts("1 on fold", 1, both) if fold else _PAIR
        return out

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        yield Notion(Article.HOOK, 1, "above the zip")
        yield Notion(Article.TAPE, 1, "for the waist", length=self._tape(n, sheet))

    def _tape(self, n: Numbers, sheet: Sheet) -> float:
        """The whole waist, its darts closed, cm."""
        half = sheet.chain_length(self.taped(sheet))
        return half * (n.gores if GORE in sheet.pieces else 2)

    def taped(self, sheet: Sheet) -> Iterable[Run]:
        shells = (*FACINGS, HIP_PIECE)
        on = (p for code, p in sheet.pieces.items() if code in shells)
        return (Run(p.code, e.name) for p in on for e in p.edges if "waist" in e.name)

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        yield tape_on("waist", self._tape(n, sheet), 1, fmt, Work.READY)
        yield from facing_operations(sheet)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        least = shortest_dart(sheet)
        if least is not None and n.wf > least - _ABOVE_POINT + 1e-6:
            yield Finding(
                "F4",
                Severity.REFUSE,
                f"The waist facing (wf) is {n.wf:.1f} cm deep and the shortest dart "
                f"{least:.1f} cm long: it cannot be closed on the facing.",
                "wf",
                "Make the facing less deep, or the darts longer.",
                {"wf": n.wf, "dart": least},
            )
        for code in {"WFF", "WFB", GORE_FACING} & sheet.pieces.keys():
            if crosses_itself(sheet.piece(code).outline) is not None:
                yield Finding(
                    "F8",
                    Severity.REFUSE,
                    f"The waist bends too sharply for a facing (wf) of {n.wf:.1f} cm: "
                    "its lower edge crosses itself.",
                    "wf",
                    "Make the facing (wf) less deep, divide the skirt into more "
                    "panels, or take a waistband.",
                    {"wf": n.wf},
                )


_PAIR = Cuts("2 (1 pair)", 2, ("shell", "interlining"))


def draft_facing(d: Drafting) -> None:
    """Trace the facings below the closed waist."""
    d.part = "waist facing"
    for code, facing in FACINGS.items():
        if code not in d.sheet.pieces:
            continue
        piece = top_of(
            before_yoke(d.sheet, code),
            d.n.wf,
            facing,
            _NAMES.get(code) or f"Waist facing of a {d.sheet.piece(code).name.lower()}",
            beside=SHORT_OF_ZIP,
        )
        darted = any(e.name.startswith("dart") for e in d.sheet.piece(code).edges)
        d.lay(
            Verb.TRACE,
            d.sheet.put(piece),
            facing,
            piece.name.lower(),
            amounts=(("deep", "wf"),),
            detail=("with the darts closed, " if darted else "")
            + "its lower edge along the waist",
            over=(before_yoke(d.sheet, code).outline,),
        )


def _faced(t: Chains) -> list[Seam]:
    """The facings sewn to the waist and to each other."""
    out: list[Seam] = []
    for i, (code, facing) in enumerate(FACINGS.items(), 1):
        if not {code, facing} <= set(t.sheet.pieces):
            continue
        outwards = code not in (FRONT, trousers.FRONT)
        left = waist_chain(t, code, outwards=outwards)
        right = t.chain((facing, "waist", False))
        short = (
            -SHORT_OF_ZIP
            if t.has(facing, "cb") and t.sheet.piece(facing).fold is None
            else 0.0
        )
        out.append(
            Seam(
                f"S38.{i}",
                t.sheet.piece(facing).name.lower(),
                left,
                right,
                *(("centre", "side") if outwards else ("side", "centre")),
                Ease.about(short, 0.05),
                kind=SeamKind.FACED,
            )
        )
    pairs = (
        (("WFF", "side", True), ("WFB", "side", False)),
        (("WFG", "seam", False), ("WFG", "other seam", True)),
    )
    for first, second in pairs:
        left, right = t.chain(first), t.chain(second)
        if left and right:  # of trousers the foot, which is loose, is levelled
            ease = Ease.about(0.0, 0.5 if trousers.FRONT in t.sheet.pieces else 0.1)
            out.append(Seam("S38", "waist facing", left, right, "waist", "edge", ease))
    for facing, edge, backward in (("WFF", "crotch", False), ("WFB", "seat", True)):
        chain = t.chain((facing, edge, backward))  # of trousers
        if chain:
            says = f"centre of the {t.sheet.piece(facing).name.lower()}"
            even = Ease.about(0.0, 0.05)
            ends = "waist", "edge"
            out.append(
                Seam(f"S38 {edge}", says, chain, chain, *ends, even, kind=SeamKind.TWIN)
            )
    return out
