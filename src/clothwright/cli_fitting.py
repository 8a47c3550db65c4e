"""The command line of a fitting: `clothwright fitting …`.

What was seen gives candidate alterations for the order's own draft; two orders, before
and after, give the page of what changed. Exit codes: 0 done; 2 misused; 3 the order
cannot be drafted, or nothing cures it here; 4 a check failed after the alteration; 5 a
file could not be written.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from clothwright.cli_shared import FAILED, MISUSED, UNWRITTEN, drafted, refuse

if TYPE_CHECKING:
    from clothwright.order import Draft
    from clothwright.order.fittings import Candidate
    from clothwright.units import Unit


def fitting(
    order: Annotated[
        Path | None,
        typer.Argument(help="Order file (TOML); without one, lists what can be seen."),
    ] = None,
    seen: Annotated[
        str, typer.Option(help='What is seen on her: "gape at front neck".')
    ] = "",
    by: Annotated[
        str, typer.Option(help='How much, each half: "3/8 in"; else the usual start.')
    ] = "",
    take: Annotated[
        int, typer.Option(help="Take this candidate of the list; with --write.")
    ] = 0,
    write: Annotated[
        Path | None, typer.Option(help="File for the altered order.")
    ] = None,
    before: Annotated[
        Path | None, typer.Option(help="The order as it was before the fitting.")
    ] = None,
    into: Annotated[
        Path | None, typer.Option("--into", "-o", help="Folder for the pages.")
    ] = None,
    letter: Annotated[bool, typer.Option(help="US Letter pages.")] = False,
    as_json: Annotated[
        bool, typer.Option("--json", help="Print what was found as JSON.")
    ] = False,
) -> None:
    """What is seen at a fitting, what cures it, and what changed."""
    if order is None:
        _list(as_json)
    elif before is not None:
        _compare(order, before, into, letter=letter, as_json=as_json)
    elif seen:
        _cures(order, seen, by, take, write, as_json=as_json)
    else:
        refuse(
            (
                "say what was seen, with --seen, or what the order was before, with "
                "--before; `clothwright fitting` alone lists what can be seen",
            ),
            MISUSED,
        )


def _list(as_json: bool) -> None:
    from clothwright.features.fittings.seen import all_seen

    if as_json:
        rows = [{"place": s.place, "seen": s.words} for s in all_seen()]
        print(json.dumps(rows, ensure_ascii=False, indent=1))
        return
    place = ""
    for s in all_seen():
        if s.place != place:
            place = s.place
            print(place.capitalize())
        print(f"  {s.words}")


def _cures(
    path: Path, words: str, by: str, take: int, write: Path | None, *, as_json: bool
) -> None:
    from clothwright.features.fittings.seen import seen_by
    from clothwright.order import OrderError, read_order
    from clothwright.order.fittings import candidates
    from clothwright.units import LengthError, parse_length

    try:
        seen = seen_by(words)
        order = read_order(path)
        amount = parse_length(by, order.unit) if by else None
        if amount is not None and amount <= 0:
            refuse(("--by is how much, more than nothing",), MISUSED)
        found = candidates(order, seen, amount)
    except OrderError as e:
        refuse(e.sentences)
    except LengthError as e:
        refuse((f"--by: {e}",), MISUSED)
    except ValueError as e:
        refuse((str(e),), MISUSED)
    if not found:
        refuse((f"{path.name}: nothing here cures “{seen.words}” on this order",))
    if as_json:
        rows = [_data(c, order.unit) for c in found]
        print(json.dumps({"seen": seen.words, "candidates": rows}, indent=1))
    else:
        print(f"Seen: {seen.words}.")
        for i, c in enumerate(found, 1):
            print("\n".join(told(i, c, order.unit)))
    if take or write:
        _write(path, found, take, write)


def told(i: int, c: Candidate, unit: Unit) -> list[str]:
    """A candidate in plain lines, with its number in the list."""
    from clothwright.units import opening, pretty_length

    def show(cm: float) -> str:
        return pretty_length(cm, unit)

    low, high = c.usual
    limit = f"; at most {show(c.most)} in one place" if c.most else ""
    limit += f", {show(c.in_two)} in two" if c.in_two else ""
    lines = [f"{i}. {opening(c.said)}."]
    lines.append(f"   Usual: {show(low)} to {show(high)} {c.counted}{limit}.")
    if c.refused:
        return [*lines, *(f"   It cannot be drawn so: {s}" for s in c.refused)]
    lines.append(f"   Follows: {c.follows}.")
    assert c.draft is not None
    sheet = c.draft.sheet
    lines.append(f"   Moves: {c.changes.pieces_told(sheet) or 'no outline'}.")
    lines += [f"     {told}" for told in c.changes.edges_told(sheet, unit)]
    row = ", ".join(f'{k} = "{v}"' for k, v in c.row.items())
    lines += ["   All seams meet.", f'   Write under kind = "{c.kind}": {row}']
    return lines


def _data(c: Candidate, unit: Unit) -> dict[str, object]:
    return {
        "said": c.said,
        "kind": c.kind,
        "write": dict(c.row),
        "amount": c.amount,
        "unit": unit.value,
        "usual": list(c.usual),
        "most": c.most,
        "follows": c.follows,
        "moves": list(c.changes.moved),
        "edges": {e.edge: [e.before, e.after] for e in c.changes.edges},
        "refused": list(c.refused),
    }


def _write(
    path: Path, found: tuple[Candidate, ...], take: int, write: Path | None
) -> None:
    import tomli_w

    from clothwright.order.file import read_text, toml_table
    from clothwright.order.fittings import in_table
    from clothwright.sheets.write import SheetError, write_file

    if write is None or not 1 <= (take or 1) <= len(found):
        refuse(
            (
                f"say which candidate to take, --take 1 to {len(found)}, and where to "
                "write the altered order, --write",
            ),
            MISUSED,
        )
    chosen = found[(take or 1) - 1]
    if chosen.refused:
        refuse(chosen.refused)
    table = in_table(toml_table(read_text(path, "the order"), path.name), chosen)
    try:
        write_file(write, tomli_w.dumps(table).encode())
    except SheetError as e:
        refuse((str(e),), UNWRITTEN)
    print(write)


def _compare(
    path: Path, before: Path, into: Path | None, *, letter: bool, as_json: bool
) -> None:
    from clothwright.order.fittings import compared
    from clothwright.sheets.fitting import write_fitting
    from clothwright.sheets.write import SheetError, write_file

    old, new = drafted(before), drafted(path)
    told = json.dumps(compared(old, new), ensure_ascii=False, indent=1)
    if as_json:
        print(told)
    if into is not None:
        stem = into / path.stem
        try:
            into.mkdir(parents=True, exist_ok=True)
            page = stem.with_name(f"{stem.name}-fitting.pdf")
            write_fitting(old, new, page, letter=letter)
            data = stem.with_name(f"{stem.name}-fitting.json")
            write_file(data, told.encode())
        except OSError as e:
            refuse(
                (f"{into}: this folder cannot be made ({e.strerror}); name another",),
                UNWRITTEN,
            )
        except SheetError as e:
            refuse((str(e),), UNWRITTEN)
        if not as_json:
            print(page)
            print(data)
    elif not as_json:
        for line in _summary(old, new):
            print(line)
    if new.failed:
        refuse(new.failures(), FAILED)


def _summary(old: Draft, new: Draft) -> list[str]:
    from clothwright.order.fittings import amounts, changes
    from clothwright.units import opening

    lines = [f"{opening(a)}." for a in amounts(old, new)]
    edges = changes(old.sheet, new.sheet).edges_told(new.sheet, new.order.unit)
    lines += [f"  {told}" for told in edges]
    return lines or ["Nothing has changed."]
