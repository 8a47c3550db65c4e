"""The sheets of what is done with a slip: its lay, cutting, making, cost, quote."""

import tempfile
from datetime import date
from pathlib import Path

from clothwright.app import costing
from clothwright.app.work import Work
from clothwright.cost import quote
from clothwright.making.cutting import cutting_sheet
from clothwright.order import OrderError
from clothwright.sheets.costing import write_cost_sheet, write_outcome, write_quote
from clothwright.sheets.cutting_sheet import write_cutting_sheet
from clothwright.sheets.making_order import write_making_order

WORKED = (
    "lay.pdf",
    "cutting.pdf",
    "making.pdf",
    "cost.pdf",
    "quote.pdf",
    "outcome.pdf",
)
COSTS = ("cost.pdf", "quote.pdf", "outcome.pdf")


def worked(work: Work, name: str, letter: bool) -> bytes:
    """One of these sheets as PDF. Raises OrderError, CostError, SheetError."""
    with tempfile.TemporaryDirectory() as folder:
        target = Path(folder) / name
        if name == "lay.pdf":
            _lay(work, target, letter)
        elif name in COSTS:
            _cost(work, name, target, letter)
        else:
            rates = work.rates()
            if name == "making.pdf":
                minutes = {task: float(m) for task, m in rates.minutes.items()}
                write_making_order(work.making(), minutes, target, letter=letter)
            else:
                sheet = cutting_sheet(work.making())
                reel = float(rates.reel)
                write_cutting_sheet(sheet, target, reel=reel, letter=letter)
        return target.read_bytes()


def _lay(work: Work, target: Path, letter: bool) -> None:
    """Every lay that is kept, a page for each."""
    from clothwright.sheets.layplan import write_lay_plan

    lays = work.kept_lays()
    if not lays:
        raise OrderError(
            "No lay is kept of this slip yet; look at its cloth, and keep the lay."
        )
    write_lay_plan(lays, work.title(), target, letter=letter)


def _cost(work: Work, name: str, target: Path, letter: bool) -> None:
    try:
        sheet = work.cost_sheet()
    except costing.Missing as e:
        cloths = " and ".join(e.cloths)
        raise OrderError(
            f"How much is bought of the {cloths} is not known yet; lay it, or write "
            "it in Cost."
        ) from None
    if name == "cost.pdf":
        write_cost_sheet(sheet, target, letter=letter)
    elif name == "quote.pdf":
        write_quote(quote(sheet, date.today()), target, letter=letter)
    else:
        both = costing.came(sheet, work.wish())
        if both is None:
            raise OrderError("What it really took is not written down yet; see Cost.")
        write_outcome(both, target, letter=letter)
