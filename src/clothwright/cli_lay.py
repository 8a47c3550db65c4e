"""`clothwright lay`: the pieces on the cloth, and how much of it to buy."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from clothwright.cli_shared import (
    FAILED,
    MISUSED,
    UNWRITTEN,
    OrderFile,
    drafted,
    refuse,
)

if TYPE_CHECKING:
    from clothwright.lay import Lay, Progress
    from clothwright.order import Pattern


class Way(StrEnum):
    """Ways to fold a cloth by the word that is typed."""

    SINGLE = "single"
    LENGTHWISE = "lengthwise"
    ACROSS = "across"
    TWO = "two folds"


def lay(
    order: OrderFile,
    cloth: Annotated[
        list[str] | None,
        typer.Option(help="Only this cloth: shell, lining or interlining."),
    ] = None,
    fold: Annotated[
        Way | None, typer.Option(help="How the cloth is folded; else as suits.")
    ] = None,
    seconds: Annotated[
        float, typer.Option(help="How long to look in all, 0.1–3600 s.")
    ] = 2.0,
    gap: Annotated[
        float, typer.Option(help="Between two pieces, cm: 0.3 shears, 0.5–1 knife.")
    ] = 0.3,
    tilt: Annotated[
        float, typer.Option(help="Degrees off the grain that are allowed, 0–1.")
    ] = 0.0,
    into: Annotated[
        Path | None, typer.Option("--into", "-o", help="Folder for the plan.")
    ] = None,
    letter: Annotated[bool, typer.Option(help="The plan on US Letter.")] = False,
    as_json: Annotated[
        bool, typer.Option("--json", help="Print every figure of the lay as JSON.")
    ] = False,
) -> None:
    """Lay an order's pieces on its cloths; Ctrl-C keeps the best so far."""
    from clothwright.order import pattern

    for name, value, low, high in (
        ("seconds", seconds, 0.1, 3600.0),
        ("gap", gap, 0.0, 5.0),
        ("tilt", tilt, 0.0, 1.0),
    ):
        if not low <= value <= high:
            said = (
                f"--{name} {value:g} is out of reach; write something from {low:g} to "
                f"{high:g}"
            )
            refuse((said,), MISUSED)
    finished = pattern(drafted(order))
    if finished.failed:
        refuse(finished.drawn.failures, FAILED)
    made = _laid(finished, cloth, fold, seconds, gap, tilt)
    folder = into or order.parent / f"{order.stem}-sheets"
    target = _write(made, finished, folder, order.stem, letter)
    if as_json:
        from clothwright.lay.figures import figures

        print(json.dumps([figures(k) for k in made], ensure_ascii=False, indent=1))
        return
    for k in made:
        print("\n".join(_told(k)))
    print(target)


def _laid(
    finished: Pattern,
    cloth: list[str] | None,
    fold: Way | None,
    seconds: float,
    gap: float,
    tilt: float,
) -> list[Lay]:
    from clothwright.lay import Budget, LayError, cloths_of
    from clothwright.lay import lay as lay_out
    from clothwright.order import Fold

    order = finished.draft.order
    if cloth:
        wanted = list(dict.fromkeys(cloth))
    else:  # all whose width is known, and the shell at least
        known = [k for k, c in order.cloths.items() if c.width is not None]
        wanted = [k for k in cloths_of(finished) if k in known or k == "shell"]
    # a cloth with many pieces is looked at longer than one with few
    many = {
        name: sum(k.cloth == name for p in finished.drawn.pieces for k in p.cuts)
        for name in wanted
    }
    share = seconds / max(sum(many.values()), 1)
    made = []
    try:
        for name in wanted:
            with _bar(name, order.cloths) as told:
                made.append(
                    lay_out(
                        finished,
                        name,
                        fold=None if fold is None else Fold(fold.value),
                        gap=gap,
                        tilt=tilt,
                        budget=Budget(seconds=share * many[name]),
                        told=told,
                    )
                )
    except LayError as e:
        refuse(tuple(str(e).splitlines()))
    return made


@contextmanager
def _bar(name: str, cloths: object) -> Iterator[Callable[[Progress], None] | None]:
    """For somebody who looks on: a bar with the length of the best lay so far."""
    if not sys.stderr.isatty():
        yield None
        return
    from rich.console import Console
    from rich.progress import BarColumn, TextColumn, TimeRemainingColumn
    from rich.progress import Progress as Bar

    columns = (
        TextColumn("{task.description}"),
        BarColumn(),
        TextColumn("{task.fields[length]}"),
        TimeRemainingColumn(),
    )
    with Bar(*columns, console=Console(stderr=True, highlight=False)) as bar:
        task = bar.add_task(f"laying the {name}", total=1.0, length="")

        def told(p: Progress) -> None:
            said = f"{p.length:.1f} cm, not below {p.bound:.1f}; Ctrl-C keeps it"
            bar.update(task, completed=p.share, length=said)

        yield told


def _write(
    made: list[Lay], finished: Pattern, folder: Path, stem: str, letter: bool
) -> Path:
    from clothwright.sheets.layplan import write_lay_plan
    from clothwright.sheets.write import SheetError

    target = folder / f"{stem}-lay.pdf"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        write_lay_plan(made, finished.drawn.title, target, letter=letter)
    except OSError as e:
        said = f"{folder}: this folder cannot be made ({e.strerror}); name another"
        refuse((said,), UNWRITTEN)
    except SheetError as e:
        refuse((str(e),), UNWRITTEN)
    return target


def _told(k: Lay) -> Iterator[str]:
    """A lay in sentences."""
    from clothwright.lay import told_fold
    from clothwright.units import format_length

    def show(cm: float) -> str:
        return format_length(cm, k.unit)

    yield (
        f"{k.name} ({k.of}): {show(k.length)}, {told_fold(k.spread.fold)}; "
        f"{k.efficiency * 100:.0f} % of the cloth is used."
    )
    yield f"  {k.bound_told}"
    for said in (k.saving, k.grown_told, k.loose_told):
        if said:
            yield f"  {said}"
    if k.spare:
        yield f"  One spare copy is cut of: {', '.join(k.spare)}."
    price = "" if k.buy.price is None else f", for {k.buy.price}"
    yield f"  To buy: {k.buy.told}{price}, namely"
    for part in k.buy.parts:
        yield f"    {show(part.cm)} {part.reason}"
    if k.solved.stopped:
        yield "  Stopped by hand; this is the best lay that was found until then."
