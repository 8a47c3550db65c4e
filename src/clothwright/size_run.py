"""A size set from start to files: each size drafted apart, then nested or not.

Sizes are drafted on all cores, or on other machines through dask; what comes back is
plain data, so that only the caller writes files, each whole or not at all.
"""

import math
import os
import signal
from collections.abc import Generator, Iterator, Mapping, Sequence
from concurrent.futures import ProcessPoolExecutor, as_completed
from concurrent.futures.process import BrokenProcessPool
from contextlib import contextmanager
from dataclasses import dataclass
from functools import partial
from multiprocessing import active_children, get_context
from pathlib import Path

from clothwright.finishing.drawn import DrawnPattern
from clothwright.order.sizes import (
    Asked,
    MadeSize,
    Sized,
    Typed,
    make_size,
    read_size_set,
)
from clothwright.sheets import PageFormat, Scale, SheetError
from clothwright.sheets.dxf import dxf_of
from clothwright.sheets.formats import ROLL_WIDTH
from clothwright.sheets.nest import NestAt, nest
from clothwright.sheets.nest_dxf import nest_dxf_of
from clothwright.sheets.nest_pdf import nest_pdf_of
from clothwright.sheets.nest_svg import nest_svg_of
from clothwright.sheets.pdf import pdf_of
from clothwright.sheets.svg import svg_of

LEAST, LEAST_APART = 20, 3
"""Fewer sizes for each core are not worth another process, which takes as long to start
as some sizes to draft, or a few to draft and print."""

PDF, SVG, DXF = "pdf", "svg", "dxf"
KINDS = PDF, SVG, DXF


class SizesError(ValueError):
    """A run that cannot be made: one plain sentence."""


@dataclass(frozen=True)
class Sheets:
    """Which sheets are wanted, and on what paper."""

    kinds: tuple[str, ...] = KINDS
    page: PageFormat = PageFormat.A4
    scale: Scale = Scale.FULL
    roll_width: float = ROLL_WIDTH
    dimensions: bool = True

    @property
    def pdf_end(self) -> str:
        """How the name of a PDF ends: "-a4.pdf", "-a0-half.pdf"."""
        paper = "letter" if self.page is PageFormat.LETTER else self.page.name.lower()
        small = "" if self.scale is Scale.FULL else f"-{self.scale.name.lower()}"
        return f"-{paper}{small}.pdf"


@dataclass(frozen=True)
class File:
    """A sheet that is to be written."""

    end: str
    """What follows the order's name: "-a4.pdf"."""

    data: bytes
    pages: int = 0


@dataclass(frozen=True)
class Done:
    """A size that was worked on, and its own sheets where they are wanted."""

    made: MadeSize
    files: tuple[File, ...] = ()


def work(
    sized: Sized,
    apart: Sheets | None = None,
    *,
    words: bool = True,
    figured: bool = True,
) -> Done:
    """Draft one size, with the sheets of its own that are wanted."""
    made = make_size(sized, words=words, figured=figured)
    if apart is None or made.drawn is None:
        return Done(made)
    return Done(made, tuple(sheets_of(made.drawn, apart)))


def sheets_of(drawn: DrawnPattern, wanted: Sheets) -> Iterator[File]:
    """The sheets of one pattern, as they are written for it alone."""
    if PDF in wanted.kinds:
        data, pages = pdf_of(
            drawn,
            page=wanted.page,
            scale=wanted.scale,
            dimensions=wanted.dimensions,
            roll_width=wanted.roll_width,
        )
        yield File(wanted.pdf_end, data, pages)
    if SVG in wanted.kinds:
        yield File(".svg", svg_of(drawn).encode())
    if DXF in wanted.kinds:
        yield File(".dxf", dxf_of(drawn).encode("ascii"))


def nested_sheets(made: Sequence[MadeSize], wanted: Sheets, at: NestAt) -> list[File]:
    """The sheets of all sizes on each other; refused ones are left out."""
    patterns = {m.name: m.drawn for m in made if m.drawn is not None}
    laid = nest(patterns, at)
    out = []
    if PDF in wanted.kinds:
        data, pages = nest_pdf_of(
            laid, page=wanted.page, scale=wanted.scale, roll_width=wanted.roll_width
        )
        out.append(File(wanted.pdf_end, data, pages))
    if SVG in wanted.kinds:
        out.append(File(".svg", nest_svg_of(laid).encode()))
    if DXF in wanted.kinds:
        out.append(File(".dxf", nest_dxf_of(laid).encode("ascii")))
    return out


def run(
    sizes: Sequence[Sized],
    apart: Sheets | None = None,
    *,
    cores: int | None = None,
    dask: str = "",
    words: bool = True,
    figured: bool = True,
) -> Generator[Done, None, None]:
    """Work on every size, each as it is ready.

    On `cores` processes (with one, in this process; unless told on all cores where that
    is worth it), or on the
    workers of a dask scheduler at the address `dask`. More than one process needs a
    main module that can be imported without running. `words` and `figured` as
    `make_size`. Raises SheetError, and SizesError
    when the scheduler cannot be used.
    """
    job = partial(work, apart=apart, words=words, figured=figured)
    if dask:
        yield from _on_dask(dask, job, sizes)
        return
    least = LEAST if apart is None else LEAST_APART
    hands = cores or min(_cores(), math.ceil(len(sizes) / least))
    if hands <= 1:
        yield from map(job, sizes)
        return
    others = active_children()
    pool = ProcessPoolExecutor(hands, get_context("spawn"), _undisturbed)
    try:
        with _deaf():
            futures = [pool.submit(job, s) for s in sizes]
        for done in as_completed(futures):
            yield done.result()
    except BrokenProcessPool as e:
        raise SizesError(
            "a process ended before its work was done, for want of memory perhaps; try "
            "--cores 1"
        ) from e
    except BaseException:  # Ctrl-C: nobody waits for what was begun; no worker writes
        for worker in active_children():
            if worker not in others:
                worker.terminate()
        raise
    finally:
        pool.shutdown(cancel_futures=True)


def make_sizes(
    order: Path,
    *,
    table: str = "",
    sizes: Sequence[str] = (),
    bodies: Sequence[str] = (),
    measures: Mapping[str, Typed | Sequence[Typed]] | None = None,
    cores: int = 1,
) -> tuple[MadeSize, ...]:
    """An order file drafted in several sizes, each checked, in the order asked.

    `table` and `sizes`, or `bodies` (files beside the order's), or else what the file
    says under [sizes]; `measures` are what the table lacks, one for all sizes or one
    for each. On more than one of `cores` the calling module must be importable. Raises
    OrderError when the set itself is at fault; a refused size says why.
    """
    asked = Asked(table, tuple(sizes), tuple(bodies), measures or {})
    wanted = read_size_set(order, asked)
    done = in_order(list(run(wanted, cores=cores)), wanted)
    return tuple(d.made for d in done)


def _cores() -> int:
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def _undisturbed() -> None:
    """Ctrl-C is the caller's to answer; a worker ends what it has begun."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)


@contextmanager
def _deaf() -> Iterator[None]:
    """Processes that are begun here do not hear Ctrl-C even while they start; it is
    answered afterwards. Where a system knows no masks they hear it."""
    if not hasattr(signal, "pthread_sigmask"):
        yield
        return
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)


def _on_dask(
    address: str, job: "partial[Done]", sizes: Sequence[Sized]
) -> Iterator[Done]:
    """Work on the machines of a dask scheduler; they need this program too."""
    try:
        from distributed import Client, KilledWorker
        from distributed import as_completed as ready
    except ImportError:
        raise SizesError(
            "--dask needs the package distributed, which is not installed; install "
            'it with pip install "clothwright[sizes]", or leave --dask out'
        ) from None
    try:
        client = Client(address, timeout=10)
    except (OSError, ValueError) as e:
        raise SizesError(
            f"--dask {address}: no scheduler answers there; start one, and workers, "
            "or leave --dask out"
        ) from e
    with client:
        futures = client.map(job, sizes, pure=False)
        try:
            for future in ready(futures):
                yield future.result()
        except (OSError, KilledWorker) as e:
            raise SizesError(
                f"--dask {address}: the scheduler or its workers were lost; no file "
                "was written"
            ) from e
        finally:
            client.cancel(futures)


def in_order(done: Sequence[Done], sizes: Sequence[Sized]) -> list[Done]:
    """What was done, in the order of the set."""
    by_name = {d.made.name: d for d in done}
    return [by_name[s.name] for s in sizes if s.name in by_name]


def write_all(files: Sequence[tuple[Path, bytes]]) -> None:
    """Write files, each whole or not at all. Raises SheetError."""
    from clothwright.sheets.write import write_file

    for target, data in files:
        try:
            target.parent.mkdir(parents=True, exist_ok=True)
        except OSError as e:
            raise SheetError(
                f"{target.parent}: this folder cannot be made ({e.strerror}); name "
                "another"
            ) from e
        write_file(target, data)
