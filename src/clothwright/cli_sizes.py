"""The command `clothwright sizes`: one order for several bodies or sizes.

A size that is refused is named with its sentence, the others are still made. Exit
codes as in `cli`; 3 when a size could not be drafted, 4 when a check of one
failed.
"""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from clothwright.cli_shared import (
    FAILED,
    REFUSED,
    UNWRITTEN,
    OrderFile,
    Paper,
    RollWidth,
    Size,
    refuse,
    say,
)

if TYPE_CHECKING:
    from clothwright.order.sizes import Asked, MadeSize
    from clothwright.size_run import Done, Sheets

STOPPED = 130
"""Exit code after Ctrl-C, as shells have it."""


class Sheet(StrEnum):
    """Sheets of a size set by the word that is typed."""

    PDF = "pdf"
    SVG = "svg"
    DXF = "dxf"


class At(StrEnum):
    """Where sizes lie on each other, by the word that is typed."""

    WAIST = "waist"
    GRAIN = "grain"


def sizes(
    order: OrderFile,
    table: Annotated[
        str, typer.Option(help='Size table: "misses" or "medium height".')
    ] = "",
    sizes: Annotated[
        str, typer.Option(help="Sizes of the table, with commas; all when left out.")
    ] = "",
    bodies: Annotated[
        str, typer.Option(help="In place of a table: measures files, with commas.")
    ] = "",
    measure: Annotated[
        list[str] | None,
        typer.Option(
            help="What the table lacks: HT=65 for all sizes, H=38,39,40 for each; may "
            "be given again."
        ),
    ] = None,
    apart: Annotated[
        bool, typer.Option("--apart", help="A folder for each size, nothing nested.")
    ] = False,
    nest_at: Annotated[
        At, typer.Option(help="Sizes lie on each other at waist and centre, or grain.")
    ] = At.WAIST,
    into: Annotated[
        Path | None, typer.Option("--into", "-o", help="Folder for the sheets.")
    ] = None,
    paper: Annotated[
        Paper, typer.Option(case_sensitive=False, help="Paper of the pattern.")
    ] = Paper.A4,
    scale: Annotated[Size, typer.Option(help="Scale of the pattern.")] = Size.FULL,
    roll: RollWidth = 91.4,
    only: Annotated[
        list[Sheet] | None, typer.Option(help="Only this sheet; may be given again.")
    ] = None,
    cores: Annotated[
        int, typer.Option(help="Cores to work on; 0 is all of them.", min=0)
    ] = 0,
    dask: Annotated[
        str,
        typer.Option(
            help="Work on the machines of the dask scheduler at this address."
        ),
    ] = "",
    as_json: Annotated[
        bool, typer.Option("--json", help="Print every figure of every size as JSON.")
    ] = False,
) -> None:
    """Draft an order in several sizes, check each, and nest them or not."""
    from clothwright.order import OrderError
    from clothwright.order.sizes import read_size_set
    from clothwright.sheets import PageFormat, Scale, SheetError
    from clothwright.size_run import DXF, Sheets, SizesError, in_order, run, write_all

    try:
        wanted = read_size_set(order, _asked(order, table, sizes, bodies, measure))
    except OrderError as e:
        refuse(e.sentences)
    sheets = Sheets(
        kinds=tuple(k.value for k in only or list(Sheet)),
        page=PageFormat[paper.name],
        scale=Scale[scale.name],
        roll_width=roll,
    )
    folder = into or order.parent / f"{order.stem}-sizes"
    try:
        with _stoppable():
            working = run(
                wanted,
                sheets if apart else None,
                cores=cores or None,
                dask=dask,
                words=apart or DXF in sheets.kinds,
                figured=as_json,
            )
            done = in_order(list(_with_bar(working, len(wanted))), wanted)
            made = [d.made for d in done]
            stem = folder / order.stem
            files = (
                _apart(done, stem) if apart else _nested(made, sheets, nest_at, stem)
            )
            write_all([(target, data) for target, data, _ in files])
    except SheetError as e:
        refuse((str(e),), UNWRITTEN)
    except SizesError as e:
        refuse((str(e),), 2)
    _report(made, as_json=as_json)
    if not as_json:
        for target, _, pages in files:
            told = f"  {pages} page{'' if pages == 1 else 's'}" if pages else ""
            print(f"{target}{told}")
    if any(m.refused for m in made):
        drafted = all(m.drafted for m in made)
        raise typer.Exit(FAILED if drafted else REFUSED)


def _asked(
    order: Path, table: str, sizes: str, bodies: str, measure: list[str] | None
) -> Asked:
    """What was typed, as the set is asked for."""
    from clothwright.order.sizes import Asked

    measures: dict[str, tuple[str, ...]] = {}
    for typed in measure or ():
        name, equals, values = typed.partition("=")
        if not equals:
            refuse((f"--measure {typed}: write NAME=value, like HT=65",), 2)
        measures[name.strip()] = _listed(values)
    return Asked(
        table=table,
        sizes=_listed(sizes),
        bodies=tuple(_beside(order, name) for name in _listed(bodies)),
        measures=measures,
    )


def _listed(text: str) -> tuple[str, ...]:
    return tuple(part.strip() for part in text.split(",") if part.strip())


def _beside(order: Path, name: str) -> str:
    """A file beside the order, or else where the command was typed."""
    here = Path(name)
    if not (order.parent / here).exists() and here.exists():
        return str(here.absolute())
    return name


@contextmanager
def _stoppable() -> Iterator[None]:
    """Ctrl-C ends the command with a sentence; files are written whole or not."""
    try:
        yield
    except KeyboardInterrupt:
        say("Stopped; no file was left half-written.")
        raise typer.Exit(STOPPED) from None


def _with_bar(working: Iterable[Done], total: int) -> Iterable[Done]:
    """The sizes as they are ready, for somebody who looks on with a bar."""
    if not sys.stderr.isatty():
        return working
    from rich.console import Console
    from rich.progress import track

    console = Console(stderr=True, highlight=False)
    return track(working, "sizes", total=total, console=console)


def _apart(done: Iterable[Done], stem: Path) -> list[tuple[Path, bytes, int]]:
    """Every size's sheets in a folder of its own."""
    out = []
    for d in done:
        name = f"size-{d.made.name}"
        for f in d.files:
            target = stem.parent / name / f"{stem.name}-{name}{f.end}"
            out.append((target, f.data, f.pages))
    return out


def _nested(
    made: list[MadeSize], sheets: Sheets, at: At, stem: Path
) -> list[tuple[Path, bytes, int]]:
    """The sheets of all sizes that may be cut, on each other."""
    from clothwright.sheets.nest import NestAt
    from clothwright.size_run import nested_sheets

    if not any(m.drawn for m in made):
        return []
    return [
        (stem.with_name(f"{stem.name}-sizes{f.end}"), f.data, f.pages)
        for f in nested_sheets(made, sheets, NestAt[at.name])
    ]


def _report(made: list[MadeSize], *, as_json: bool) -> None:
    """What the checks of every size say, in words or with every figure."""
    if as_json:
        told = {
            m.name: {"told": m.told, "refused": list(m.refused), "figures": m.figures}
            for m in made
        }
        print(json.dumps({"format": 1, "sizes": told}, ensure_ascii=False, indent=1))
        return
    for whose, sentence in _together(made, lambda m: m.refused):
        print(f"Not made, {whose}: {sentence}")
    fine = [m.name for m in made if not m.refused]
    if fine:
        print(f"Made, {_named(fine)}: all seams meet.")
    for whose, sentence in _together(made, lambda m: m.doubts):
        print(f"Look again, {whose}: {sentence}")
    if any(" is missing" in sentence for m in made for sentence in m.refused):
        print(
            "What a size table lacks is given for all sizes, --measure HT=65, or for "
            "each, --measure H=38,39,40."
        )


def _together(
    made: Iterable[MadeSize], said: Callable[[MadeSize], Iterable[str]]
) -> Iterable[tuple[str, str]]:
    """Every sentence once, with the sizes of which it is said."""
    whose: dict[str, list[str]] = {}
    for m in made:
        for sentence in said(m):
            whose.setdefault(sentence, []).append(m.name)
    return ((_named(of), sentence) for sentence, of in whose.items())


def _named(of: list[str]) -> str:
    return f"size{'s' if len(of) > 1 else ''} {', '.join(of)}"
