"""The cutting sheet: pieces by cloth, strips, interlining, notions and thread."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from clothwright.features.notions import Article, Notion
from clothwright.features.operations import Stitch
from clothwright.making.order import MakingOrder
from clothwright.making.thread import RATIO, REEL, reels, thread
from clothwright.order.cloths import CLOTHS
from clothwright.order.pattern import finishing_of


@dataclass(frozen=True)
class CutPiece:
    """A piece as it is cut from one cloth."""

    code: str
    name: str
    number: int
    """Its number among all pieces of the pattern."""

    count: int
    how: str
    """"1 on fold", "2 (1 pair)"."""


@dataclass(frozen=True)
class ThreadLine:
    """Thread of one stitch: length of seam, cm, and thread without waste, m."""

    stitch: Stitch
    seam: float
    thread: float


@dataclass(frozen=True)
class CuttingSheet:
    """What is cut and what is bought for an order."""

    making: MakingOrder
    cloths: Mapping[str, tuple[CutPiece, ...]]
    """Pieces by cloth: "shell", "underlining", "lining", "interlining"."""

    strips: tuple[Notion, ...]
    """Cut without a pattern from cloths at hand."""

    notions: tuple[Notion, ...]
    """Bought; thread is told by itself."""

    thread: tuple[ThreadLine, ...]
    metres: float
    """Thread in all, waste included, m."""


def cutting_sheet(making: MakingOrder) -> CuttingSheet:
    """The cutting sheet of an order."""
    draft = making.draft
    finishing = finishing_of(draft)
    cloths: dict[str, list[CutPiece]] = {}
    for number, code in enumerate(finishing.order, 1):
        for cut in finishing.cuts[code]:
            piece = CutPiece(
                code, draft.sheet.piece(code).name, number, cut.count, cut.how
            )
            cloths.setdefault(cut.cloth, []).append(piece)
    every = [
        notion
        for f in draft.order.features
        for notion in f.notions(draft.numbers, draft.sheet)
    ]
    lengths = stitch_lengths(making)
    return CuttingSheet(
        making,
        {cloth: tuple(cloths[cloth]) for cloth in CLOTHS if cloth in cloths},
        tuple(one for one in every if one.article.cut),
        tuple(one for one in every if not one.article.cut),
        tuple(
            ThreadLine(stitch, cm, cm * RATIO[stitch] / 100)
            for stitch, cm in lengths.items()
        ),
        thread(lengths),
    )


def stitch_lengths(making: MakingOrder) -> Mapping[Stitch, float]:
    """Length of every stitch of the garment, cm."""
    found: dict[Stitch, float] = {}
    for operation in making.operations:
        for stitch, cm in making.stitched(operation).items():
            found[stitch] = found.get(stitch, 0.0) + cm
    return {stitch: found[stitch] for stitch in Stitch if stitch in found}


def bought(sheet: CuttingSheet, reel: float = REEL) -> tuple[Notion, ...]:
    """All that is bought, each article once: counts and lengths added, and reels."""
    found: dict[Article, Notion] = {}
    for one in sheet.notions:
        known = found.get(one.article)
        if known is None:
            found[one.article] = replace(one, in_all=one.total)
        elif one.article.by_length and one.total and known.total:
            found[one.article] = replace(known, in_all=known.total + one.total)
        else:
            count = known.count + one.count
            found[one.article] = replace(known, count=count)
    reels_ = Notion(Article.THREAD, reels(sheet.metres, reel), "for every seam")
    return (*found.values(), reels_)
