"""The order of making: operations of seams and features, none before what it needs.

A topological sort; what is free at the same time is done by the general list: flat
before round, small before large, inside before outside (cutting and costing 5).
"""

import heapq
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from graphlib import TopologicalSorter
from itertools import permutations

from clothwright.features.about import Place
from clothwright.features.operations import (
    Hazard,
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
)
from clothwright.features.roles import Role
from clothwright.features.said import LINING
from clothwright.making.garment import Garment
from clothwright.making.sewing import seam_operations
from clothwright.order import Draft
from clothwright.order.pattern import finishing_of
from clothwright.paper import EdgeKind, Run, Seam, Sheet, own_name
from clothwright.units import pretty_length

_NEEDS: Mapping[Work, tuple[Work, ...]] = {
    Work.MARK: (Work.CUT,),
    Work.FUSE: (Work.CUT,),
    Work.UNDERLINE: (Work.MARK,),
    Work.STAY: (Work.MARK, Work.UNDERLINE),
    Work.DART: (Work.MARK, Work.UNDERLINE),
    Work.PANEL: (Work.MARK, Work.DART, Work.UNDERLINE),
    Work.BAG: (Work.MARK, Work.FUSE),
    Work.ON_EDGE: (Work.MARK, Work.FUSE, Work.STAY),
    Work.SHOULDER: (Work.STAY, Work.DART, Work.PANEL),
    Work.FLAT: (Work.SHOULDER,),
    Work.FACING: (Work.MARK, Work.FUSE),
    Work.COLLAR: (Work.MARK, Work.FUSE),
    Work.SET_COLLAR: (Work.COLLAR, Work.SHOULDER, Work.FLAT, Work.STAY),
    Work.EDGE: (
        Work.SHOULDER,
        Work.FLAT,
        Work.FACING,
        Work.STAY,
        Work.ON_EDGE,
        Work.SET_COLLAR,
    ),
    Work.SLIT: (Work.MARK,),
    Work.SLEEVE_SEAM: (Work.MARK, Work.DART, Work.SLIT, Work.FLAT),
    Work.CUFF: (Work.FUSE, Work.SLEEVE_SEAM),
    Work.SLEEVE_HEAD: (Work.SLEEVE_SEAM, Work.CUFF),
    Work.SLEEVE: (
        Work.SHOULDER,
        Work.SIDE,
        Work.SLEEVE_SEAM,
        Work.CUFF,
        Work.SLEEVE_HEAD,
    ),
    Work.SIDE: (Work.DART, Work.PANEL, Work.FLAT, Work.EDGE),
    Work.SKIRT: (Work.MARK, Work.UNDERLINE),
    Work.READY: (Work.SIDE, Work.SKIRT),
    Work.WAIST: (Work.SIDE, Work.SKIRT, Work.READY, Work.EDGE, Work.BAG),
    Work.ZIP: (Work.WAIST, Work.EDGE, Work.STAY),
    Work.CENTRE: (Work.ZIP, Work.WAIST, Work.EDGE),
    Work.LINING: (Work.MARK,),
    Work.JOIN: (Work.LINING, Work.EDGE, Work.SIDE, Work.ZIP),
    Work.LINING_ROUND: (Work.LINING, Work.SIDE),
    Work.BASTE: (
        Work.EDGE,
        Work.SIDE,
        Work.WAIST,
        Work.ZIP,
        Work.CENTRE,
        Work.LINING_ROUND,
        Work.JOIN,
    ),
    Work.BIND: (Work.BASTE, Work.CENTRE),
    Work.LINED: (
        Work.JOIN,
        Work.LINING_ROUND,
        Work.EDGE,
        Work.SIDE,
        Work.WAIST,
        Work.ZIP,
        Work.CENTRE,
        Work.BIND,
        Work.BAG,
    ),
    Work.BAND: (
        Work.DART,
        Work.PANEL,
        Work.SIDE,
        Work.SKIRT,
        Work.ZIP,
        Work.CENTRE,
        Work.READY,
    ),
    Work.BEHIND: (Work.BAG, Work.EDGE, Work.WAIST, Work.LINED),
    Work.FASTEN: (Work.EDGE, Work.WAIST, Work.ZIP, Work.LINED, Work.BEHIND),
    Work.HANG: (Work.WAIST, Work.CENTRE),
    Work.FACE_HEM: (Work.WAIST, Work.CENTRE, Work.HANG),
    Work.MITRE: (Work.WAIST, Work.CENTRE, Work.HANG, Work.FACE_HEM),
    Work.HEM: (Work.WAIST, Work.CENTRE, Work.SLEEVE_SEAM, Work.HANG, Work.MITRE),
    Work.LINING_HEM: (Work.HEM, Work.LINED),
    Work.FINISH: tuple(w for w in Work if w.place < 14),
}
"""Kinds of work that a kind of work needs done before (cutting and costing 5)."""


@dataclass(frozen=True)
class MakingOrder:
    """Every operation of a draft, in the order in which it is done."""

    draft: Draft
    garment: Garment
    operations: tuple[Operation, ...]

    def seams(self, operation: Operation) -> tuple[Seam, ...]:
        """The seams that an operation sews."""
        return tuple(self.draft.sheet.seam(code) for code in operation.seams)

    def stitched(self, operation: Operation) -> Mapping[Stitch, float]:
        """Length of each stitch that an operation takes, cm."""
        run = sum(self.garment.length(s) for s in self.seams(operation))
        edges = sum(self.garment.edge_length(r) for r in operation.edges)
        main = run + edges if operation.length is None else operation.length
        found: dict[Stitch, float] = {}
        if operation.stitch is not None and main > 0:
            found[operation.stitch] = main
        if operation.neatened:
            raw = operation.neatened * (run + edges)
            found[Stitch.OVEREDGE] = found.get(Stitch.OVEREDGE, 0.0) + raw
        return found


def making_order(draft: Draft) -> MakingOrder:
    """The making order of a draft."""
    order, sheet = draft.order, draft.sheet
    finishing = finishing_of(draft)
    garment = Garment(sheet, finishing.cuts, finishing.allowances)

    def fmt(cm: float) -> str:
        return pretty_length(cm, order.unit)

    own = [op for f in order.features for op in f.operations(draft.numbers, sheet, fmt)]
    every = [
        *_before(garment),
        *seam_operations(garment, [code for op in own for code in op.seams]),
        *_edge_operations(garment, [run for op in own for run in op.edges]),
        *own,
        _last(),
    ]
    words = {word for f in order.features for word in f.provides()}
    if words & {"side opening", "side zip"}:
        every = [_left_open(sheet, op) for op in every]
    if garment.lined:
        # no raw edge of a seam is seen under a lining
        every = [replace(op, neatened=0) if op.seams else op for op in every]
    return MakingOrder(draft, garment, tuple(_sorted(garment, every)))


def _left_open(sheet: Sheet, op: Operation) -> Operation:
    """The same operation, with what must stay open in it for a zip in the side."""
    runs = [r for code in op.seams for r in sheet.seam(code).left]
    beside = any(own_name(r.edge).startswith(("side", "seam")) for r in runs)
    if op.work not in (Work.SIDE, Work.SKIRT, Work.LINING) or not beside:
        return op
    which = "its left side" if op.work is Work.LINING else "the left one"
    says = f"Leave {which} open for the zip, as far as its notches say."
    return replace(op, says=(*op.says, says))


def _before(garment: Garment) -> Iterator[Operation]:
    """What is done before anything is sewn."""
    sheet, cuts = garment.sheet, garment.cuts
    cloths = {c.cloth for of in cuts.values() for c in of}
    yield Operation(
        Work.CUT,
        "Cut the shell",
        ("Every piece by the cutting sheet, grain measured at both ends.",),
        task=Task.CUT,
        hazards=(Hazard.BLADE,),
    )
    if "underlining" in cloths:
        yield Operation(Work.CUT, "Cut the underlining", task=Task.CUT_LINING)
    if "lining" in cloths:
        few = not garment.lined
        what = "the lining of the small parts" if few else "the lining"
        yield Operation(
            Work.CUT,
            f"Cut {what}",
            task=Task.CUT_LINING,
            count=0.25 if few else 1.0,
        )
    with_inside = (
        c for c, of in cuts.items() if any(k.cloth == "interlining" for k in of)
    )
    fused = _names(sheet, with_inside)
    yield Operation(
        Work.MARK,
        "Mark notches, darts and points",
        ("Clip no notch deeper than a third of the allowance.",),
        task=Task.MARK if fused else Task.MARK_ALONE,
        hazards=(Hazard.NEEDLE,),
    )
    if fused:
        yield Operation(
            Work.FUSE,
            f"Interline the {_listed(fused)}",
            ("Try the iron on a scrap; let each piece cool flat.",),
            hazards=(Hazard.IRON,),
        )
    edges = _stayed(garment)
    if edges:
        yield Operation(
            Work.STAY,
            "Stay-stitch necks and armholes",
            ("Just outside the net line, from the shoulder down.",),
            stitch=Stitch.LOCK,
            length=sum(garment.edge_length(r) for r in edges),
            task=Task.STAY,
        )


def _stayed(garment: Garment) -> list[Run]:
    """Necks and armholes of the shell; not what else is faced: straps, fronts."""
    return [
        run
        for p in garment.sheet.pieces.values()
        if garment.place(p.code) not in (Place.FACING, Place.COLLAR)
        and not p.code.startswith(LINING)
        for e in p.edges
        if garment.role(run := Run(p.code, e.name)) is Role.EDGE
        and e.kind is EdgeKind.SEAM
        and own_name(e.name).startswith(("neck", "armhole"))
    ]


def _edge_operations(garment: Garment, told: list[Run]) -> Iterator[Operation]:
    """Hems, and edges to be neatened before they are sewn, that no feature tells."""
    pieces = garment.sheet.pieces.values()
    edges = [
        run
        for p in pieces
        for e in p.edges
        if e.kind is EdgeKind.FINISHED and (run := Run(p.code, e.name)) not in told
        if garment.role(run) is not Role.INTERLINING
    ]
    narrow = tuple(r for r in edges if garment.role(r) is Role.HEM)
    deep = tuple(r for r in edges if own_name(r.edge) == "hem" and r not in narrow)
    raw = tuple(r for r in edges if r not in (*narrow, *deep))
    if narrow:
        yield Operation(
            Work.HEM,
            f"Hem the {_named(garment, narrow)}",
            ("Turned twice, narrow.",),
            edges=narrow,
            stitch=Stitch.LOCK,
            seam_type=SeamType.HEM_TWICE,
            task=Task.CIRCLE_HEM,
        )
    if deep:
        yield Operation(
            Work.HEM,
            f"Hem the {_named(garment, deep)}",
            ("Turned up once, its raw edge neatened first, and felled by hand.",),
            edges=deep,
            stitch=Stitch.HAND,
            seam_type=SeamType.HEM_ONCE,
            neatened=1,
            task=Task.HEM,
        )
    if raw:
        yield Operation(
            Work.STAY,
            f"Neaten the loose edges of the {_named(garment, raw)}",
            edges=raw,
            stitch=Stitch.OVEREDGE,
            seam_type=SeamType.NEATENED,
        )


def _named(garment: Garment, runs: tuple[Run, ...]) -> str:
    """The pieces of these edges, as they are numbered."""
    codes = garment.allowances.said.in_order(dict.fromkeys(r.piece for r in runs))
    return _listed(_names(garment.sheet, codes))


def _names(sheet: Sheet, codes: Iterable[str]) -> list[str]:
    """Names of pieces, one name for the two sides, as there are several of some."""
    names = (sheet.piece(c).name.lower() for c in codes)
    both = (n.removesuffix(", right").removesuffix(", left") for n in names)
    return list(
        dict.fromkeys(
            f"{n}s" if n.endswith(_SEVERAL) else _LOWER.sub(r"lower \1", n)
            for n in both
        )
    )


_SEVERAL = (
    *("sleeve", "cuff", "sleeve band", "petal", "jet", "godet", "gore"),
    *("trouser front", "trouser back"),
)
"""Pieces that a garment has of each side alike, or of every seam."""


_LOWER = re.compile(r"^(.*), lower$")


def _last() -> Operation:
    return Operation(
        Work.FINISH,
        "Press, sew in the label, inspect",
        (
            "Every seam once more from the right side; threads cut, chalk brushed out; "
            "pins and needles counted.",
        ),
        task=Task.FINISH,
        hazards=(Hazard.IRON, Hazard.LOST_PIN),
    )


def _listed(words: list[str]) -> str:
    return ", ".join(words[:-1]) + " and " + words[-1] if len(words) > 1 else words[0]


# -- sorting -------------------------------------------------------------------------
_WORKS = list(Work)


def _sorted(garment: Garment, every: list[Operation]) -> Iterator[Operation]:
    """By what each needs; ties by the general list, then as stated."""
    graph = TopologicalSorter(_graph(garment, every))
    graph.prepare()
    ready: list[tuple[int, int, int]] = []
    while graph.is_active():
        for i in graph.get_ready():
            work = every[i].work
            heapq.heappush(ready, (work.place, _WORKS.index(work), i))
        i = heapq.heappop(ready)[2]
        yield every[i]
        graph.done(i)


def _graph(garment: Garment, every: list[Operation]) -> dict[int, set[int]]:
    """For each operation, those that must be done before."""
    sheet = garment.sheet
    made_by: dict[str, int] = {c: i for i, op in enumerate(every) for c in op.seams}
    graph: dict[int, set[int]] = {}
    for i, op in enumerate(every):
        needs = _NEEDS.get(op.work, ())
        if op.work is Work.EDGE and garment.bagged:
            needs = (*needs, Work.LINING)  # bagged out by the lining, with shoulders
        before = {j for j, b in enumerate(every) if b.work in needs}
        for code in op.seams:
            for joint in crossed(sheet, sheet.seam(code)):
                before.add(made_by[joint])
        before |= {made_by[code] for code in op.after if code in made_by}
        graph[i] = before - {i}
    for i, op in enumerate(every):
        for code in op.before:
            if code in made_by:
                graph[made_by[code]].add(i)
    return graph


def crossed(sheet: Sheet, seam: Seam) -> Iterable[str]:
    """Codes of the seams that a seam runs over: each makes a joint of its chains, and
    is pressed before it is crossed."""
    for chain in (seam.left, seam.right):
        for a, b in zip(chain, chain[1:], strict=False):
            yield from (s.code for s in sheet.seams if _joins(sheet, s, a, b))


def _joins(sheet: Sheet, seam: Seam, a: Run, b: Run) -> bool:
    """True for the seam that ends where two neighbours of a chain meet."""
    last, first = beside(sheet, a), beside(sheet, b._replace(backward=not b.backward))
    if a.piece == b.piece and last == b.edge:
        return False  # they meet at a corner of their piece
    ends = {(a.piece, last), (b.piece, first)}
    sides = ({(r.piece, r.edge) for r in side} for side in (seam.left, seam.right))
    left, right = sides
    return any(x in left and y in right for x, y in permutations(ends, 2))


def beside(sheet: Sheet, run: Run) -> str:
    """The edge of its piece that a run comes to."""
    piece = sheet.piece(run.piece)
    return (piece.before if run.backward else piece.after)(run.edge).name
