"""The command line: from an order file to all sheets.

Results go to standard output, progress and messages to standard error. Exit codes:
0 done; 2 the command was misused; 3 the order cannot be drafted; 4 a check failed
(the sheets are still written, with the failures on the first page); 5 a file could not
be written; 6 the program itself is at fault.
"""

from __future__ import annotations

import io
import json
import os
import sys
import traceback
from dataclasses import dataclass, replace
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from clothwright import (
    cli_book,
    cli_book_fitting,
    cli_fitting,
    cli_lay,
    cli_making,
    cli_serve,
    cli_sizes,
)
from clothwright.cli_shared import (
    FAILED,
    FAULTY,
    UNWRITTEN,
    OrderFile,
    Paper,
    RollWidth,
    Size,
    drafted,
    refuse,
    say,
)

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from clothwright.order import Pattern

app = typer.Typer(
    rich_markup_mode=None,
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
    help="From a client's measures and an order to a finished, proven pattern.",
)

cli_book_fitting.add_to(cli_book.app)
app.add_typer(cli_book.app, name="book")
app.command()(cli_serve.serve)
app.command()(cli_lay.lay)
app.command()(cli_sizes.sizes)
app.command()(cli_fitting.fitting)
for command in (cli_making.making, cli_making.cutting, cli_making.cost):
    app.command()(command)


class Kind(StrEnum):
    """Sheets by the word that is typed."""

    PDF = "pdf"
    SVG = "svg"
    DXF = "dxf"
    HPGL = "hpgl"
    STEPS = "steps"
    DIMENSIONS = "dimensions"
    LESSON = "lesson"


@app.command()
def make(
    order: OrderFile,
    into: Annotated[
        Path | None, typer.Option("--into", "-o", help="Folder for the sheets.")
    ] = None,
    paper: Annotated[
        Paper, typer.Option(case_sensitive=False, help="Paper of the pattern.")
    ] = Paper.A4,
    scale: Annotated[Size, typer.Option(help="Scale of the pattern.")] = Size.FULL,
    roll: RollWidth = 91.4,
    only: Annotated[
        list[Kind] | None, typer.Option(help="Only this sheet; may be given again.")
    ] = None,
    dimensions: Annotated[
        bool, typer.Option(help="Write the length of each edge on the pieces.")
    ] = True,
    frames: Annotated[
        bool,
        typer.Option(
            help="HP-GL in frames of 80 cm, for an old plotter; the roll is then at "
            "most 83.9 cm wide (--roll 83.9)."
        ),
    ] = False,
    as_json: Annotated[
        bool, typer.Option("--json", help="Print every figure of the draft as JSON.")
    ] = False,
) -> None:
    """Draft an order, check it, and write its sheets."""
    from clothwright.order import pattern
    from clothwright.sheets import SheetError
    from clothwright.sheets.write import all_or_none

    finished = pattern(drafted(order))
    wish = _Wish(paper, scale, roll, dimensions, frames)
    folder = into or order.parent / f"{order.stem}-sheets"
    wanted = only or [k for k in Kind if k is not Kind.LESSON]
    if Kind.HPGL in wanted:
        from clothwright.sheets.hpgl import roll_frame

        try:  # before anything is written
            roll_frame(roll, frames=frames)
        except SheetError as e:
            refuse((str(e),), UNWRITTEN)
    written: list[str] = []
    try:
        with all_or_none(folder) as passing:
            for kind in _with_bar(wanted):
                written += _write(kind, finished, passing / order.stem, wish)
    except SheetError as e:
        refuse((str(e),), UNWRITTEN)
    _report(finished, as_json=as_json)
    if not as_json:
        for name in written:
            print(folder / name)
    if finished.failed:
        raise typer.Exit(FAILED)


def _with_bar(kinds: Sequence[Kind]) -> Iterable[Kind]:
    """The kinds one by one, and for somebody who looks on a bar that tells how far."""
    if not sys.stderr.isatty():
        return kinds
    from rich.console import Console
    from rich.progress import track

    console = Console(stderr=True, highlight=False)
    return track(kinds, "writing", console=console)


@dataclass(frozen=True)
class _Wish:
    """How the sheets are wanted."""

    paper: Paper
    scale: Size
    roll: float
    dimensions: bool
    frames: bool


def _write(kind: Kind, finished: Pattern, stem: Path, wish: _Wish) -> list[str]:
    """Write one sheet beside `stem`; its name, and what is to be said of it."""
    from clothwright import sheets
    from clothwright.sheets import PageFormat, Scale

    page, scale = PageFormat[wish.paper.name], Scale[wish.scale.name]
    drawn, letter = finished.drawn, wish.paper is Paper.LETTER
    small = "" if wish.scale is Size.FULL else f"-{wish.scale.value}"

    def named(end: str) -> Path:
        return stem.with_name(stem.name + end)

    if kind is Kind.PDF:
        target = named(f"-{wish.paper.value}{small}.pdf")
        pages = sheets.write_pdf(
            drawn,
            target,
            page=page,
            scale=scale,
            dimensions=wish.dimensions,
            roll_width=wish.roll,
        )
        return [f"{target.name}  {pages} page{'' if pages == 1 else 's'}"]
    if kind is Kind.SVG:
        target = named(".svg")
        sheets.write_svg(drawn, target)
    elif kind is Kind.DXF:
        target = named(".dxf")
        sheets.write_dxf(drawn, target)
    elif kind is Kind.HPGL:
        target = named(".plt")
        sheets.write_hpgl(
            drawn,
            target,
            scale=scale,
            roll_width=wish.roll,
            frames=wish.frames,
            dimensions=wish.dimensions,
        )
    elif kind is Kind.STEPS:
        from clothwright.sheets.steps import write_steps

        target = named("-steps.pdf")
        write_steps(finished.draft, target, letter=letter)
    elif kind is Kind.LESSON:
        from clothwright.sheets.lesson import write_lesson

        target = named("-lesson.pdf")
        write_lesson(finished.draft, target, letter=letter)
    else:
        from clothwright.sheets.dimensions import write_dimensions

        target = named("-dimensions.pdf")
        write_dimensions(finished.draft, target, letter=letter)
    return [target.name]


def _report(finished: Pattern, *, as_json: bool) -> None:
    """Print what the checks say, in words or with every figure."""
    from clothwright.findings import Severity
    from clothwright.order.pattern import guessed_of
    from clothwright.paper import SeamKind

    if as_json:
        from clothwright.order.figures import figures

        full = replace(finished.draft, findings=finished.findings)
        print(json.dumps(figures(full), ensure_ascii=False, indent=1))
        return
    words = {
        Severity.REFUSE: "Not to be cut",
        Severity.WARN: "Look again",
        Severity.NOTE: "Note",
    }
    for severity in words:
        for f in finished.findings:
            if f.severity is severity:
                print(f"{words[severity]}: {f}")
    for sentence in guessed_of(finished.draft):
        print(f"{words[Severity.NOTE]}: {sentence}")
    if not finished.failed:
        # an edge sewn to its own twin meets by itself and proves nothing
        kinds = [s.kind for s in finished.draft.sheet.seams]
        walked = len(kinds) - kinds.count(SeamKind.TWIN)
        meet = "The seam meets." if walked == 1 else f"All {walked} seams meet."
        print(meet if walked else "Nothing is to mend.")


@app.command()
def check(
    order: OrderFile,
    as_json: Annotated[
        bool, typer.Option("--json", help="Print every figure of the draft as JSON.")
    ] = False,
) -> None:
    """Draft an order and check it; write nothing."""
    from clothwright.order import pattern

    finished = pattern(drafted(order))
    _report(finished, as_json=as_json)
    if finished.failed:
        raise typer.Exit(FAILED)


@app.command()
def why(
    order: OrderFile,
    name: Annotated[
        str,
        typer.Argument(
            help="A number, point, edge or seam; without one, all are listed."
        ),
    ] = "",
) -> None:
    """Follow a number, a point or an edge back to measures, rules and choices."""
    from clothwright.order.telling import tell_all, tell_near, tell_why

    draft = drafted(order)
    if not name:
        print("\n".join(tell_all(draft)))
        return
    lines = tell_why(draft, name)
    if lines is None:
        near = tell_near(draft, name)
        come = "these come near, and " if near else ""
        refuse(
            (
                f"{order.name}: there is nothing called {name}; {come}"
                f"`clothwright why {order}` lists all names",
                *(f"  {line}" for line in near),
            )
        )
    print("\n".join(lines))


@app.command()
def measures(
    file: Annotated[Path, typer.Argument(help="Measures file (TOML).")],
) -> None:
    """Check a client's measures against each other."""
    from clothwright.body import BodyError, check_body, lacking, read_body
    from clothwright.body import measures as known
    from clothwright.findings import Severity, worst
    from clothwright.order.file import OrderError, read_text

    try:
        body = read_body(read_text(file, "the measures"), file.name)
    except (BodyError, OrderError) as e:
        refuse(tuple(str(e).splitlines()))
    findings = check_body(body)
    words = {
        Severity.REFUSE: "Cannot be",
        Severity.WARN: "Measure again",
        Severity.NOTE: "Note",
    }
    for f in findings:
        print(f"{words[f.severity]}: {f}")
    missing = lacking(body)
    for code, use in missing:
        name = known()[code].name
        print(f"Missing: the {name} ({code}), without which {use} cannot be drafted.")
    if not findings:
        far = " as far as they go" if missing else ""
        print(f"The {len(body.values)} measures of {body.client} fit together{far}.")
    if worst(findings) is Severity.REFUSE:
        raise typer.Exit(FAILED)


@app.command()
def features(
    kind: Annotated[
        str, typer.Argument(help="One feature, with its settings; without it, all.")
    ] = "",
) -> None:
    """Tell what features an order may name, and the settings of one."""
    from clothwright.features.called import which_feature
    from clothwright.order.telling import tell_feature, tell_features

    lines = tell_feature(kind) if kind else tell_features()
    if lines is None:
        refuse((f"there is no feature {kind}; {which_feature(kind)}",), 2)
    print("\n".join(lines))


@app.command()
def starter(
    folder: Annotated[Path, typer.Argument(help="Folder for the files.")],
) -> None:
    """Write orders and measures to start from: the invented clients of the demo."""
    from importlib import resources

    from clothwright.sheets.write import SheetError, write_file

    source = resources.files("clothwright.demo")
    names = sorted(p.name for p in source.iterdir() if p.name.endswith(".toml"))
    try:
        folder.mkdir(parents=True, exist_ok=True)
        targets = [folder / name for name in names]
        for there in (t for t in targets if t.exists() or t.is_symlink()):
            refuse((f"{there} is there already; name another folder",), UNWRITTEN)
        for name, target in zip(names, targets, strict=True):
            write_file(target, source.joinpath(name).read_bytes())
            print(target)
    except OSError as e:
        refuse(
            (f"{folder}: cannot be written ({e.strerror}); name another folder",),
            UNWRITTEN,
        )
    except SheetError as e:
        refuse((str(e),), UNWRITTEN)


def main() -> None:
    """Entry point. What cannot be said on the standard output (a full disk, a reader
    that went away) is told in a sentence, and so is a fault of the program's own, with
    its place for who mends it; letters that it cannot show are replaced."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")
    try:
        try:
            app()
        finally:
            sys.stdout.flush()
    except OSError as e:
        if not isinstance(e, BrokenPipeError):  # that reader has read enough
            why = f"could not be written out ({e.strerror})"
            say(f"The answer {why}; send it elsewhere.")
        os._exit(UNWRITTEN)  # what still waits to be written would fail again
    except Exception as e:
        if os.environ.get("CLOTHWRIGHT_TRACE"):  # for who mends it
            traceback.print_exc()
        place = traceback.extract_tb(e.__traceback__)[-1]
        say(
            f"Clothwright itself is at fault: {type(e).__name__}, {e} "
            f"({Path(place.filename).name}, line {place.lineno}). Nothing was "
            "written. Keep the order file and send both to who looks after the program."
        )
        sys.exit(FAULTY)
