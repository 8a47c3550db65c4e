"""How a strapless bodice is held up: net layer, bones, waist stay, taped top edge
(cutting and costing 3, transformations 6)."""

from collections.abc import Callable, Iterable, Iterator, Mapping

from clothwright.features.chains import TOP
from clothwright.features.linings.underlining import UNDERLINING
from clothwright.features.notions import Article, Notion
from clothwright.features.openings.stand_pieces import STAND
from clothwright.features.operations import Operation, SeamType, Stitch, Task, Work
from clothwright.paper import EdgeKind, Sheet, own_piece
from clothwright.rules import Numbers

SHORT = 1.2
"""A bone ends so far short of each end of its seam, cm (cutting and costing 3)."""

_LONGEST, _LEAST = 40.0, 5.0
"""A bone is no longer, cm: below the waist of a torso none is needed; and what is
shorter holds nothing (our own choice)."""

_BODICE = ("FC", "FS", "F", "BC", "BS", "B")


def mounted(sheet: Sheet) -> Mapping[str, str]:
    """The pieces of the bodice, mounted on coutil or net."""
    return {c: UNDERLINING for c in sheet.pieces if own_piece(c) in _BODICE}


def bones(n: Numbers, sheet: Sheet) -> list[tuple[str, float]]:
    """Where the bones of one half lie, in words, and how long each is, cm."""
    out = []
    for words, code, name in (
        ("front panel seam", "FC", "panel"),
        ("front waist dart", "F", "leg cf"),
        ("side", "BS", "side"),
        ("side", "B", "side"),
        ("back panel seam", "BC", "panel"),
        ("back waist dart", "B", "leg cb"),
        ("centre back, beside the zip", "BC", "cb"),
        ("centre back, beside the zip", "B", "cb"),
        *(("edge that opens", code, STAND) for code in ("FC", "F", "BC", "B")),
    ):
        if code not in sheet.pieces or not sheet.piece(code).has(name):
            continue
        edge = sheet.edge(code, name)
        if edge.kind is EdgeKind.FOLD:
            continue
        long = _above_waist(n, edge.path.bounds(), edge.length) - 2 * SHORT
        if long >= _LEAST:
            out.append((words, min(long, _LONGEST)))
    return out


def _above_waist(
    n: Numbers, bounds: tuple[float, float, float, float], length: float
) -> float:
    """Of a seam that runs on below the waist, what lies above it."""
    _, top, _, bottom = bounds
    return length if bottom <= n.yW + 3.0 else min(length, n.yW - top)


def strapless_notions(n: Numbers, sheet: Sheet) -> Iterator[Notion]:
    """Bones with their channels, waist stay, tape for the top edge."""
    for words, long in bones(n, sheet):
        yield Notion(Article.BONE, 2, f"for the {words}", length=long, size=n.bone)
    yield Notion(
        Article.CHANNEL,
        1,
        "for the bones",
        length=2 * sum(long + 2 * SHORT for _, long in bones(n, sheet)),
    )
    yield Notion(
        Article.STAY,
        1,
        "for the waist stay, its ends lapped at the opening",
        length=n.stay,
    )
    yield Notion(Article.HOOK, 2, "for the waist stay")
    yield Notion(
        Article.TAPE,
        2,
        "for each half of the top edge, a hundredth shorter than the edge",
        length=0.99 * _edge(sheet),
    )


def _edge(sheet: Sheet) -> float:
    return sum(
        sheet.length(c, TOP)
        for c in sheet.pieces
        if own_piece(c) in _BODICE and sheet.piece(c).has(TOP)
    )


def strapless_operations(
    n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
) -> Iterable[Operation]:
    """What no seam of the pattern tells."""
    tape = 0.99 * _edge(sheet)
    yield Operation(
        Work.UNDERLINE,
        "Mount the bodice on its net layer",
        (
            "Each piece of coutil or firm net on the wrong side of its shell, raw "
            "edges level; baste within the allowances. From then on the two are one.",
        ),
        stitch=Stitch.HAND,
        seam_type=SeamType.PLACED,
        task=Task.BY_HAND,
        count=float(len(mounted(sheet))),
    )
    yield Operation(
        Work.STAY,
        "Tape the top edge",
        (
            f"Tape of {fmt(tape)} on the net line of each half, a hundredth shorter "
            "than the edge, which is eased to it: so it stays close to the body.",
        ),
        stitch=Stitch.LOCK,
        seam_type=SeamType.SET_ON,
        length=2 * tape,
        task=Task.STAY,
    )
    placed = bones(n, sheet)
    lines = "; ".join(f"{words}, {fmt(long)}" for words, long in placed)
    yield Operation(
        Work.READY,
        "Sew the channels on and put in the bones",
        (
            "A channel on the opened allowances of each seam, stitched to them and to "
            "the net layer alone, not to the shell.",
            f"Bones {fmt(n.bone)} wide, two of each: {lines}. Each ends {fmt(SHORT)} "
            "short of the seam's ends; round their ends or cap them.",
        ),
        stitch=Stitch.LOCK,
        seam_type=SeamType.SET_ON,
        length=4 * sum(long + 2 * SHORT for _, long in placed),
        task=Task.BONE,
        count=2.0 * len(placed),
    )
    yield Operation(
        Work.LINED,
        "Sew in the waist stay",
        (
            f"Petersham ribbon of {fmt(n.stay)}, hems included, tacked to the "
            "allowances of the seams at the waist; its ends are left free beside the "
            "opening, and hooked before that is closed.",
        ),
        stitch=Stitch.HAND,
        task=Task.BY_HAND,
    )
    yield Operation(
        Work.FASTEN,
        "Sew the hooks to the waist stay",
        ("Two, its ends lapped.",),
        stitch=Stitch.HAND,
        task=Task.HOOK,
        count=2.0,
    )
