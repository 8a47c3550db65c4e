"""How a bias strip is sewn on and its corners mitred (transformations
3; cutting and costing 5; the rest common practice, no source)."""

from collections.abc import Callable, Iterable, Iterator

from clothwright.features.chains import Chains
from clothwright.features.linings.binding import (
    ON,
    Ends,
    Strip,
    at_centre,
    meets_centre,
)
from clothwright.features.linings.binding_corners import MITRE, Corner, corners
from clothwright.features.operations import Operation, SeamType, Stitch, Task, Work
from clothwright.paper import EdgeKind, Run, Seam, Sheet

_ENDS = {
    Ends.TAKEN_IN: "It runs to the raw edges of the centre back and is turned in with "
    "their allowances.",
    Ends.TURNED_IN: "Its ends are turned in first, level with the finished edges of "
    "the opening.",
    Ends.IN_BAND: "Its ends lie in the allowances of the bands, which catch them.",
}

_HOLLOW = (
    "In a hollow corner clip the cloth to the line of stitches and spread it straight; "
    "then sew the mitre across the fold, right sides together."
)
_POINT = (
    "At a corner that stands out stop as far before it as the seam is from the edge, "
    "fold the strip back in a mitre, and go on from the edge."
)


def strip_operations(
    sheet: Sheet, fmt: Callable[[float], str], strip: Strip, work: Work
) -> Iterable[Operation]:
    """The strip closed, stretched on, turned over and felled."""
    seams, ends = strip.seams(sheet), Ends.of(sheet.piece(strip.code))
    net = sum(sheet.chain_length(s.left) for s in seams)
    long = sum(sheet.chain_length(s.right) for s in seams)
    marks = ", ".join(_marks(sheet, seams))
    meet = f"; its marks meet, from the left, {marks}" if marks else ""
    says = [
        f"Stretch {fmt(long)} of a strip onto {fmt(net)}, right sides together and the "
        f"edges level{meet}; stitch {fmt(strip.width)} from the edge."
    ]
    ring = ends is Ends.JOINED
    if ring:
        says.insert(0, f"Close a strip to a ring; its joint meets the {strip.joint}.")
    else:
        late = ends is Ends.TAKEN_IN and work is Work.BIND  # the zip is in
        says.append(_ENDS[Ends.TURNED_IN if late else ends])
    names = [e.name for e in sheet.piece(strip.code).edges]
    beyond = [name for name in names if name.startswith((MITRE, ON))]
    if any(name.startswith(MITRE) for name in beyond):
        says.append(_HOLLOW)
    if any(c.turn < 0 for s in seams for c in _turns(sheet, s)):
        says.append(_POINT)
    closed = [s.code for s in sheet.seams if s.code == f"{strip.seam}a"]
    yield Operation(
        work,
        f"Bind the {strip.what}",
        tuple(says),
        seams=(*closed, *(s.code for s in seams)),
        stitch=Stitch.LOCK,
        seam_type=SeamType.BOUND,
        press="the strip away from the garment",
        task=Task.FACE,
    )
    loose = ["inside", *beyond, *(() if ring else ends.edges)]
    yield Operation(
        Work.LINED,
        f"Fell the binding of the {strip.what} inside",
        (
            f"Turned over the edge, {fmt(strip.width)} wide on both sides; its own "
            "edge turned in onto the line of stitches.",
        ),
        edges=tuple(Run(strip.code, name) for name in loose),
        stitch=Stitch.HAND,
        seam_type=SeamType.PLACED,
        task=Task.BY_HAND,
    )


def _marks(sheet: Sheet, seams: tuple[Seam, ...]) -> Iterator[str]:
    """The marks across a strip, from its left end."""
    t = Chains(sheet)
    for i, seam in enumerate(seams):
        if i:
            yield seam.start
        yield from ("corner" for _ in corners(t, seam.left))


def _turns(sheet: Sheet, seam: Seam) -> Iterator[Corner]:
    """The corners of what a seam binds, and that at a fold where it ends."""
    t, run = Chains(sheet), seam.left[-1]
    yield from corners(t, seam.left)
    piece = sheet.piece(run.piece)
    beyond = (piece.before if run.backward else piece.after)(run.edge)
    found = at_centre(meets_centre(t, run)) if beyond.kind is EdgeKind.FOLD else None
    if found is not None:
        yield found
