"""The cutting sheet: what is cut from which cloth, what is bought; boxes to tick."""

import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from clothwright.features.notions import Article, Notion
from clothwright.features.operations import Hazard
from clothwright.making.cutting import CuttingSheet, bought
from clothwright.making.thread import REEL, WASTE, reels, thread_told
from clothwright.order.cautions import at_work
from clothwright.order.pattern import finishing_of
from clothwright.sheets.booklet import compile_to
from clothwright.units import Unit, cm_to_ligne, opening, pretty_length


def write_cutting_sheet(
    sheet: CuttingSheet, target: Path, *, reel: float = REEL, letter: bool = False
) -> None:
    """Write the cutting sheet as PDF (A4, or US Letter); `reel` is the thread on one,
    m. Raises SheetError."""
    compile_to(
        "cutting_sheet.typ",
        json.dumps(cutting_told(sheet, reel=reel, letter=letter)),
        target,
    )


def cutting_told(
    sheet: CuttingSheet, *, reel: float = REEL, letter: bool = False
) -> dict[str, Any]:
    """All that the page says."""
    draft = sheet.making.draft
    order = draft.order
    unit = order.unit
    finishing = finishing_of(draft)
    inner = [
        f"Cut {finishing.allowances.interlining} outside the stitch line, not to the "
        "cut line."
    ]
    return {
        "title": f"{order.garment}: cutting sheet",
        "subtitle": order.whose,
        "footer": order.footer,
        "paper": "us-letter" if letter else "a4",
        "nap": finishing.nap,
        "cloths": [
            {
                "name": _cloth_name(cloth, finishing.cloths),
                "total": sum(p.count for p in pieces),
                "notes": inner if cloth == "interlining" else [],
                "pieces": [[str(p.number), p.name, p.how] for p in pieces],
            }
            for cloth, pieces in sheet.cloths.items()
        ],
        "strips": [
            [
                opening(one.article.value),
                _strip(one, unit),
                one.where,
                "" if one.total is None else pretty_length(one.total, unit),
            ]
            for one in sheet.strips
        ],
        "notions": [_notion(one, unit) for one in _by_article(sheet.notions)],
        "tape": _tape(sheet, reel, unit),
        "thread": [
            [
                f"{line.stitch.words} ({line.stitch.number})",
                thread_told(line.seam / 100, unit),
                thread_told(line.thread, unit),
            ]
            for line in sheet.thread
        ],
        "thread_total": (
            f"{thread_told(sheet.metres, unit)} with {WASTE * 100:.0f} % for ends, "
            f"basting and unpicking: {_reels(reels(sheet.metres, reel))} of "
            f"{thread_told(reel, unit)}"
        ),
        "cautions": list(at_work((Hazard.BLADE,), order)),
    }


def _by_article(notions: tuple[Notion, ...]) -> list[Notion]:
    """Lines of one article together, in the order in which they come first."""
    first = list(dict.fromkeys(one.article for one in notions))
    return sorted(notions, key=lambda one: first.index(one.article))


def _cloth_name(cloth: str, names: Mapping[str, str]) -> str:
    name = names.get(cloth, cloth)
    return opening(name) if name == cloth else f"{opening(cloth)}: {name}"


def _strip(one: Notion, unit: Unit) -> str:
    length = "" if one.length is None else pretty_length(one.length, unit)
    wide = "" if one.size is None else f", {pretty_length(one.size, unit)} wide"
    return f"{one.count} × {length}{wide}"


def _notion(one: Notion, unit: Unit) -> list[str]:
    """Article, how many, size, what for."""
    many = f"{one.count}"
    if one.spare:
        many = f"{one.count - one.spare} + {one.spare} to spare"
    size = ""
    if one.size is not None:
        size = (
            f"{pretty_length(one.size, unit)}: {one.size * 10:.0f} mm, "
            f"{cm_to_ligne(one.size):g} ligne"
        )
    if one.length is not None:
        least = "at least " if one.at_least else ""
        wide = "" if one.size is None else f", {pretty_length(one.size, unit)} wide"
        size = f"{least}{pretty_length(one.length, unit)}{wide}"
    return [opening(one.article.value), many, size, one.where]


def _tape(sheet: CuttingSheet, reel: float, unit: Unit) -> str:
    """What tape comes to where it is cut for more than one edge."""
    lines = [one for one in sheet.notions if one.article is Article.TAPE]
    every = (one for one in bought(sheet, reel) if one.article is Article.TAPE)
    total = next((one.total for one in every), None)
    if len(lines) < 2 or total is None:
        return ""
    return f"Stay tape in all: {pretty_length(total, unit)}."


def _reels(count: int) -> str:
    return f"{count} reel" if count == 1 else f"{count} reels"
