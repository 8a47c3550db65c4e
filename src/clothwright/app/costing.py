"""What an order costs, as far as she decides it: a leaf of its slip with her words, and
what it really took. Amounts are decimal text; the reckoning is `cost`'s."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation
from functools import lru_cache
from typing import Any

import tomli_w

from clothwright.app.bolt import Bolt
from clothwright.app.sentence import Opens, Pen, Sentence, Word
from clothwright.cost import (
    ClothBought,
    CostError,
    CostSheet,
    Outcome,
    Plan,
    Rates,
    actual_from_text,
    bought_as_said,
    bought_by_lay,
    cost_sheet,
    demo_rates,
    outcome,
    rates_from_text,
)
from clothwright.cost.money import plain
from clothwright.cost.sheet import Row
from clothwright.making import MakingOrder
from clothwright.order import OrderError
from clothwright.order.pattern import finishing_of
from clothwright.sheets.costing import cost_told, outcome_told
from clothwright.units import opening, pretty_text

LEAF = "costing"
MOST = Decimal(10_000_000)
FITTINGS = 9

Wish = Mapping[str, Any]
"""The leaf's table: `new_block`, `own_cloth`, `fittings`, `discount`, `other`, `cloth`
(metres), `minutes`, `spent`, `change`."""


@dataclass(frozen=True)
class Missing(Exception):
    """Cloths of which nobody knows how much is bought."""

    cloths: tuple[str, ...]


def read_wish(text: str) -> Wish:
    """Her words, from the leaf; the usual ones when there is none."""
    try:
        return tomllib.loads(text, parse_float=Decimal)
    except tomllib.TOMLDecodeError:
        return {}


def write_wish(wish: Wish) -> str:
    """The leaf's text."""
    return tomli_w.dumps({k: v for k, v in wish.items() if v not in ({}, [], None)})


@lru_cache(maxsize=4)
def house_rates(text: str) -> Rates:
    """Her rates, or those of an invented house. Raises CostError."""
    return rates_from_text(text, "The rates on the shelf") if text else demo_rates()


def plan_of(wish: Wish) -> Plan:
    """What of an order the pattern cannot tell."""
    return Plan(
        bool(wish.get("new_block")),
        int(wish.get("fittings", 1)),
        {str(k): Decimal(v) for k, v in dict(wish.get("other", {})).items()},
        Decimal(wish.get("discount", 0)),
    )


def reckoned(making: MakingOrder, rates: Rates, wish: Wish, bolt: Bolt) -> CostSheet:
    """The cost of an order. Raises CostError, and Missing while a cloth's length is not
    known."""
    draft = making.draft
    finishing, order = finishing_of(draft), draft.order
    wanted = dict.fromkeys(c.cloth for of in finishing.cuts.values() for c in of)
    said = wish.get("cloth", {})
    out: list[ClothBought] = []
    missing = []
    for key in () if wish.get("own_cloth") else wanted:
        article, cloth = finishing.cloths.get(key, key), order.cloths.get(key)
        laid = bolt.amount(key)
        if key in said:
            metres = Decimal(said[key])
            out.append(bought_as_said(key, article, metres, cloth, rates, order.unit))
        elif laid is not None and cloth is not None:
            out.append(bought_by_lay(key, article, laid.lay.buy, cloth, rates))
        else:
            missing.append(key)
    if missing:
        raise Missing(tuple(missing))
    return cost_sheet(making, rates, out, plan_of(wish))


def came(sheet: CostSheet, wish: Wish) -> Outcome | None:
    """Estimate and actual; None while nothing is written down. Raises CostError."""
    parts = {k: wish[k] for k in ("minutes", "spent", "change") if wish.get(k)}
    if not parts:
        return None
    return outcome(sheet, actual_from_text(tomli_w.dumps(parts), "what it took"))


def told(sheet: CostSheet, wish: Wish, *, invented: bool) -> dict[str, Any]:
    """The cost as a page shows it: every line with what it came to, and the totals."""
    both = came(sheet, wish)
    rows = cost_told(sheet)["rows"]
    lines = iter(sheet.lines[i] for i in _by_row(sheet))
    for row in rows:
        row["lines"] = [
            {"cells": cells, **_came(next(lines), wish)} for cells in row["lines"]
        ]
    data = cost_told(sheet)
    return {
        "currency": sheet.rates.currency,
        "note": data["note"],
        "rows": rows,
        "totals": data["totals"],
        "came": outcome_told(both)["totals"] if both else [],
        "changes": [
            {"what": str(c["what"]), "price": str(c["price"])}
            for c in wish.get("change", ())
        ],
        "invented": invented,
    }


def _by_row(sheet: CostSheet) -> list[int]:
    """Indices of the lines as a page lists them."""
    return [i for row in Row for i, x in enumerate(sheet.lines) if x.row is row]


def _came(line: Any, wish: Wish) -> dict[str, Any]:
    """Where what a line came to is written, and what is."""
    if line.row is Row.OVERHEAD:
        return {"of": "", "came": ""}
    part = "minutes" if line.row is Row.MAKING else "spent"
    got = wish.get(part, {}).get(line.name)
    return {
        "of": f"{part}.{line.name}",
        "came": "" if got is None else plain(Decimal(got)),
        "unit": "min" if part == "minutes" else "",
    }


# -- her words ----------------------------------------------------------------------
def sentences(wish: Wish, cloths: list[str], bolt: Bolt) -> list[Sentence]:
    """What she decides, told."""
    plan = plan_of(wish)
    new = "drafted anew, with a toile" if plan.new_block else "drawn already"
    often = {0: "no fitting", 1: "one fitting"}.get(
        plan.fittings, f"{plan.fittings} fittings"
    )
    there = "is" if plan.fittings < 2 else "are"
    off = plan.discount_percent
    off_said = f"a discount of {plain(off)} in the hundred" if off else "no discount"
    others = ", ".join(f"{k} {plain(v)}" for k, v in plan.other.items())
    own = "her own" if wish.get("own_cloth") else "bought for her"
    out = [
        Sentence(
            "cost plan",
            (
                "Her block is ",
                _word("new_block", new, wish, Opens.CHOICE),
                f", and there {there} ",
                _word("fittings", often, wish),
                ".",
            ),
        ),
        Sentence(
            "cost besides",
            (
                "There is ",
                _word("discount", off_said, wish),
                " and ",
                _word("other", others or "no other cost", wish),
                ".",
            ),
        ),
        Sentence(
            "cost whose",
            ("The cloth is ", _word("own_cloth", own, wish, Opens.CHOICE), "."),
        ),
    ]
    if not wish.get("own_cloth"):
        runs: list[str | Word] = ["Bought: "]
        for key in cloths:
            said = wish.get("cloth", {}).get(key)
            laid = bolt.amount(key)
            say = (
                "not known yet"
                if laid is None
                else f"{pretty_text(laid.lay.buy.told)} by its lay"
            )
            if said is not None:
                say = f"{plain(Decimal(said))} m"
            pen = Pen.PENCIL if said is None else Pen.INK
            runs += [f"{key} ", _word(f"cloth.{key}", say, wish, pen=pen), ", "]
        out.append(Sentence("cost cloth", (*runs[:-1], ".")))
    return out


def _word(
    field: str, say: str, wish: Wish, opens: Opens = Opens.WRITE, pen: Pen | None = None
) -> Word:
    mine = Pen.INK if field in wish else Pen.PENCIL
    return Word(f"cost:{field}", say, pen or mine, opens, _NAMES.get(field, field))


_NAMES = {
    "new_block": "her block",
    "own_cloth": "who pays the cloth",
    "fittings": "how many fittings",
    "discount": "what is taken off the price, in the hundred",
    "other": "other direct cost: dyeing 12.50, courier 8",
}


def behind_cost(wish: Wish, of: str) -> dict[str, Any]:
    """The choices or the line behind a word of the cost. Raises OrderError."""
    field = of.removeprefix("cost:")
    if field in ("new_block", "own_cloth"):
        says = {
            "new_block": ("drawn already", "drafted anew, with a toile"),
            "own_cloth": ("bought for her", "her own"),
        }[field]
        return {
            "opens": "choice",
            "name": _NAMES[field],
            "now": says[bool(wish.get(field))],
            "words": [{"say": s, "to": bool(i)} for i, s in enumerate(says)],
        }
    typed = str(wish.get(field, ""))
    if field == "other":
        typed = ", ".join(f"{k} {v}" for k, v in wish.get("other", {}).items())
    if field.startswith("cloth."):
        key = field.removeprefix("cloth.")
        typed = str(wish.get("cloth", {}).get(key, ""))
        line = "In metres; leave it blank to go by the lay."
        return {"opens": "write", "name": f"{key} bought", "typed": typed, "line": line}
    if field not in _NAMES:
        raise OrderError(f"the cost has no word called {of}")
    name = _NAMES[field]
    line = f"{opening(name)}."
    return {"opens": "write", "name": name, "typed": typed, "line": line}


def changed(wish: Wish, op: Mapping[str, Any]) -> Wish:
    """Her words with one of them changed. Raises OrderError."""
    of, to = str(op.get("of", "")).removeprefix("cost:"), op.get("to")
    out = dict(wish)
    part, _, name = of.partition(".")
    if of in ("new_block", "own_cloth"):
        out[of] = bool(to)
    elif of == "fittings":
        out[of] = int(_amount(to, "how many fittings", most=Decimal(FITTINGS)) or 0)
    elif of == "discount":
        out[of] = _amount(to, "what is taken off", most=Decimal(100)) or Decimal(0)
    elif of == "other":
        out[of] = _others(str(to or ""))
    elif of == "change":
        out[of] = _changes(list(wish.get(of, ())), op)
    elif part in ("cloth", "minutes", "spent") and name:
        rows = dict(wish.get(part, {}))
        amount = _amount(to, name)
        rows.pop(name, None)
        if amount is not None:
            rows[name] = amount
        out[part] = rows
    else:
        raise OrderError(f"the cost has no word called {of}")
    return out


def _changes(rows: list[Any], op: Mapping[str, Any]) -> list[Any]:
    if isinstance(op.get("away"), int) and 0 <= op["away"] < len(rows):
        return [*rows[: op["away"]], *rows[op["away"] + 1 :]]
    what = " ".join(str(op.get("what", "")).split())[:200]
    price = str(op.get("price", "")).strip()
    less = price.startswith(("-", "−"))
    amount = _amount(price.lstrip("-−"), "the price of the change")
    if not what or amount is None:
        raise OrderError("write what was changed, and its price beside it")
    return [*rows, {"what": what, "price": -amount if less else amount}]


def _others(text: str) -> dict[str, Decimal]:
    out = {}
    for part in filter(None, (p.strip() for p in text.split(","))):
        name, _, sum_ = part.rpartition(" ")
        amount = _amount(sum_, "other cost") if name else None
        if amount is None:
            raise OrderError("write what and how much, like dyeing 12.50, courier 8")
        out[name.strip()] = amount
    return out


def _amount(to: object, what: str, *, most: Decimal = MOST) -> Decimal | None:
    """A number that was typed, None when it is blank. Raises OrderError."""
    text = str(to if to is not None else "").strip().replace(",", ".")
    for mark in ("metres", "min", "m", "%"):
        text = text.removesuffix(mark).strip()
    if not text:
        return None
    try:
        amount = Decimal(text) if text.isascii() else Decimal(-1)
    except InvalidOperation:
        amount = Decimal(-1)
    if not amount.is_finite() or not 0 <= amount <= most:
        raise OrderError(f"{what}: write a number from 0 to {most:f}, like 12.50")
    return amount


__all__ = [
    "LEAF",
    "CostError",
    "Missing",
    "Wish",
    "behind_cost",
    "came",
    "changed",
    "house_rates",
    "read_wish",
    "reckoned",
    "sentences",
    "told",
    "write_wish",
]
