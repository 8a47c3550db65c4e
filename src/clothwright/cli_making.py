"""The command line of the workroom: making order, cutting sheet, cost.

Exit codes are those of `cli`.
"""

from __future__ import annotations

import json
import re
from datetime import date, datetime
from decimal import Decimal, InvalidOperation
from enum import StrEnum
from functools import partial
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
    say,
)

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Mapping

    from clothwright.cost import ClothBought, Rates
    from clothwright.lay import ToBuy
    from clothwright.making import MakingOrder
    from clothwright.making.cutting import CuttingSheet
    from clothwright.order import Draft

Into = Annotated[
    Path | None, typer.Option("--into", "-o", help="Folder for the page, as PDF.")
]
AsJson = Annotated[bool, typer.Option("--json", help="Print it as JSON.")]


class Paper(StrEnum):
    """Papers by the word that is typed."""

    A4 = "a4"
    LETTER = "letter"


OnPaper = Annotated[
    Paper, typer.Option("--paper", case_sensitive=False, help="Paper of the page.")
]
RatesFile = Annotated[
    Path | None,
    typer.Option(
        "--rates",
        help="The house's rates (TOML); without it rates.toml beside the order, or the "
        "demo's.",
    ),
]


def making(
    order: OrderFile,
    into: Into = None,
    as_json: AsJson = False,
    paper: OnPaper = Paper.A4,
    rates: RatesFile = None,
) -> None:
    """Tell in which order the garment is sewn, seam by seam."""
    from clothwright.making.figures import making_figures
    from clothwright.sheets.making_order import duration, write_making_order

    made, house = _made(order), _rates(rates, order)
    minutes = {task: float(m) for task, m in house.minutes.items()}
    if as_json:
        _print(making_figures(made, minutes))
    elif into is None:
        for number, op in enumerate(made.operations, 1):
            time = op.count * minutes[op.task] if op.task else 0
            print(f"{number}. {op.title}" + (f"  {duration(time)}" if time else ""))
    if into is not None:
        page = partial(write_making_order, made, minutes, letter=paper is Paper.LETTER)
        _write(into, f"{order.stem}-making.pdf", page, quiet=as_json)
    _end(made)


def cutting(
    order: OrderFile,
    into: Into = None,
    as_json: AsJson = False,
    paper: OnPaper = Paper.A4,
    rates: RatesFile = None,
) -> None:
    """Tell what is cut from which cloth, and what is bought."""
    from clothwright.making.cutting import cutting_sheet
    from clothwright.making.figures import cutting_figures
    from clothwright.sheets.cutting_sheet import write_cutting_sheet

    made = _made(order)
    sheet, reel = cutting_sheet(made), float(_rates(rates, order).reel)
    if as_json:
        _print(cutting_figures(sheet, reel))
    elif into is None:
        print("\n".join(_cutting_lines(sheet, reel)))
    if into is not None:
        page = partial(
            write_cutting_sheet, sheet, reel=reel, letter=paper is Paper.LETTER
        )
        _write(into, f"{order.stem}-cutting.pdf", page, quiet=as_json)
    _end(made)


def cost(
    order: OrderFile,
    into: Into = None,
    as_json: AsJson = False,
    paper: OnPaper = Paper.A4,
    rates: RatesFile = None,
    cloth: Annotated[
        list[str] | None,
        typer.Option(
            help='Metres bought: --cloth shell=1.6, or "shell=1 5/8 yd"; once for each '
            "cloth."
        ),
    ] = None,
    own_cloth: Annotated[
        bool, typer.Option(help="Somebody else pays the cloth: none is reckoned.")
    ] = False,
    new_block: Annotated[
        bool, typer.Option(help="Her block is new, with a toile.")
    ] = False,
    fittings: Annotated[int, typer.Option(min=0, max=9, help="How many.")] = 1,
    other: Annotated[
        list[str] | None,
        typer.Option(help="Other direct cost: --other dyeing=12.50."),
    ] = None,
    discount: Annotated[str, typer.Option(help="Percent off the price.")] = "0",
    quote: Annotated[bool, typer.Option(help="The client's page instead.")] = False,
    on: Annotated[
        datetime | None,
        typer.Option(formats=["%Y-%m-%d"], help="Day of the quote; today without it."),
    ] = None,
    actual: Annotated[
        Path | None, typer.Option(help="What it really took (TOML), beside it.")
    ] = None,
) -> None:
    """Reckon what the order costs; with --quote what the client reads."""
    from clothwright import cost as costs
    from clothwright.cost.figures import (
        cost_figures,
        outcome_figures,
        quote_figures,
    )
    from clothwright.sheets import costing

    made, house = _made(order), _rates(rates, order)
    plan = costs.Plan(
        new_block,
        fittings,
        dict(_amount(text, "--other", "dyeing=12.50") for text in other or ()),
        _share(discount),
    )
    try:
        sheet = costs.cost_sheet(
            made, house, _cloths(made.draft, house, cloth or (), own_cloth), plan
        )
        if quote:
            shown = costs.quote(sheet, on.date() if on else date.today())
            figures, name = quote_figures(shown), "quote"
            lines = costing.quote_text(shown)
            page = partial(costing.write_quote, shown, letter=paper is Paper.LETTER)
        elif actual is not None:
            came = costs.outcome(sheet, costs.read_actual(actual))
            figures, name = outcome_figures(came), "outcome"
            lines = costing.outcome_text(came)
            page = partial(costing.write_outcome, came, letter=paper is Paper.LETTER)
        else:
            figures, name = cost_figures(sheet), "cost"
            lines = costing.cost_text(sheet)
            page = partial(
                costing.write_cost_sheet, sheet, letter=paper is Paper.LETTER
            )
    except costs.CostError as e:
        refuse(e.sentences)
    if as_json:
        _print(figures)
    elif into is None:
        print("\n".join(lines))
    if into is not None:
        _write(into, f"{order.stem}-{name}.pdf", page, quiet=as_json)
    _end(made)


def _made(order: Path) -> MakingOrder:
    """The making order of a file's order; a warning where nothing may be cut."""
    from clothwright.making import making_order

    draft = drafted(order)
    if draft.failed:
        say("Do not cut cloth: checks of this pattern failed.")
        for failure in draft.failures():
            say(failure)
    return making_order(draft)


def _end(made: MakingOrder) -> None:
    if made.draft.failed:
        raise typer.Exit(FAILED)


def _rates(path: Path | None, order: Path) -> Rates:
    """The rates named, those beside the order, or the demo's."""
    from clothwright.cost import CostError, demo_rates, read_rates

    beside = order.parent / "rates.toml"
    if path is None and beside.is_file():
        path = beside
    try:
        return demo_rates() if path is None else read_rates(path)
    except CostError as e:
        refuse(e.sentences)


def _cloths(
    draft: Draft, rates: Rates, given: Iterable[str], own: bool
) -> list[ClothBought]:
    """The cloth of the order: as much as given, or by a lay where the width is known;
    at the order's price, or the house's. None of the garment's when somebody else pays
    it, so that only a toile's may be named."""
    from clothwright.cost import bought_as_said, bought_by_lay
    from clothwright.order.pattern import finishing_of
    from clothwright.units import Unit

    finishing, order = finishing_of(draft), draft.order
    wanted = dict.fromkeys(c.cloth for of in finishing.cuts.values() for c in of)
    if own:
        wanted.clear()
    said = dict(map(_length, given))
    for name in said:
        if name not in wanted and name != "toile":
            cloths = ", ".join((*wanted, "toile"))
            refuse((f"--cloth: nothing is cut from {name}; it has {cloths}",), MISUSED)
    missing = [name for name in wanted if name not in said]
    laid = [n for n in missing if n in order.cloths and order.cloths[n].width]
    unknown = [n for n in missing if n not in laid]
    if unknown:
        inches = order.unit is Unit.IN
        say_how = " ".join(
            f'--cloth "{n}=1 3/4 yd"' if inches else f"--cloth {n}=1.6" for n in unknown
        )
        refuse(
            (
                f"How much is bought of {' and '.join(unknown)} is not known; "
                f"write {say_how}, say, or its width in the order.",
            ),
            MISUSED,
        )
    buys = _by_lay(draft, laid) if laid else {}
    out = []
    for name in (*wanted, *(n for n in said if n not in wanted)):
        article = finishing.cloths.get(name, name)
        if name in buys:
            cloth = order.cloths[name]
            out.append(bought_by_lay(name, article, buys[name], cloth, rates))
        else:
            known, (amount, by) = order.cloths.get(name), said[name]
            out.append(
                bought_as_said(name, article, amount, known, rates, order.unit, by)
            )
    return out


LAID = 2.0
"""How long a lay is looked for where only the cloth to buy is wanted, s."""


def _by_lay(draft: Draft, cloths: Iterable[str]) -> Mapping[str, ToBuy]:
    """Cloth to buy by a quick lay of each; says so."""
    from clothwright.lay import Budget, LayError
    from clothwright.lay import lay as lay_out
    from clothwright.order import pattern

    finished = pattern(draft)
    out = {}
    for name in cloths:
        try:
            made = lay_out(finished, name, budget=Budget(seconds=LAID))
        except LayError as e:
            refuse((*str(e).splitlines(), f"Or say it: --cloth {name}=1.6."))
        out[name] = made.buy
        say(
            f"{name}: {made.buy.told}, by a lay of {LAID:g} s; "
            f"--cloth {name}=… says otherwise."
        )
    return out


def _length(text: str) -> tuple[str, tuple[Decimal, str]]:
    """A cloth's name and how much of it, in metres or in yards: "m" or "yd"."""
    from clothwright.units import LengthError, parse_plain

    name, _, said = text.partition("=")
    match = re.fullmatch(r"(.*?)\s*(yd|yards?)", said.strip())
    if match is None:
        name, metres = _amount(text, "--cloth", 'shell=1.6 or "shell=1 3/4 yd"')
        return name, (metres, "m")
    try:
        return name.strip(), (Decimal(repr(parse_plain(match[1]))), "yd")
    except LengthError as e:
        refuse((f"--cloth {text}: {e}",), MISUSED)


def _amount(text: str, option: str, like: str) -> tuple[str, Decimal]:
    """A name and an amount."""
    name, _, number = text.partition("=")
    try:
        amount = Decimal(number.strip())
    except InvalidOperation:
        amount = Decimal(-1)
    if not name.strip() or not amount.is_finite() or amount < 0:
        refuse((f"{option} {text}: cannot be read; write {option} {like}",), MISUSED)
    return name.strip(), amount


def _share(text: str) -> Decimal:
    """Percent, 0 to 100."""
    share = _amount(f"discount={text}", "--discount", "10")[1]
    if share > 100:
        refuse((f"--discount {text}: write 0 to 100",), MISUSED)
    return share


def _print(figures: Mapping[str, object]) -> None:
    print(json.dumps(figures, ensure_ascii=False, indent=1))


def _write(into: Path, name: str, page: Callable[[Path], None], *, quiet: bool) -> None:
    from clothwright.sheets import SheetError

    try:
        into.mkdir(parents=True, exist_ok=True)
        page(into / name)
    except OSError as e:
        refuse(
            (f"{into}: this folder cannot be made ({e.strerror}); name another",),
            UNWRITTEN,
        )
    except SheetError as e:
        refuse((str(e),), UNWRITTEN)
    if not quiet:
        print(into / name)


def _cutting_lines(sheet: CuttingSheet, reel: float) -> Iterator[str]:
    from clothwright.making.cutting import bought
    from clothwright.making.thread import thread_told
    from clothwright.units import pretty_length

    unit = sheet.making.draft.order.unit
    for cloth, pieces in sheet.cloths.items():
        yield f"{cloth}:"
        yield from (f"  {p.number}. {p.name}: cut {p.how}" for p in pieces)
    for one in (*sheet.strips, *sheet.notions):
        yield one.told(lambda cm: pretty_length(cm, unit))
    reels = bought(sheet, reel)[-1].count
    yield (
        f"Thread: {thread_told(sheet.metres, unit)}, {reels} of "
        f"{thread_told(reel, unit)}."
    )
