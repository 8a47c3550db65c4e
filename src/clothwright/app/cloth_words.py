"""The cloths of an order as sentences whose words are the controls."""

import re
from collections.abc import Iterable, Iterator, Mapping
from decimal import Decimal
from typing import Any

from clothwright.app.sentence import Opens, Pen, Sentence, Word
from clothwright.app.slipfile import Table
from clothwright.app.words import Reading
from clothwright.order import Cloth, Flaw, Fold, OrderError, SoldBy
from clothwright.order.cloths import CLOTHS, MOST_SHRINKAGE, SELVEDGE, WIDTHS
from clothwright.order.pattern import cuts_of
from clothwright.units import (
    Unit,
    format_length,
    opening,
    parse_length,
    parse_plain,
)

FOLDS: Mapping[Fold | None, str] = {
    None: "whichever way suits",
    Fold.SINGLE: "in a single layer, right side up",
    Fold.LENGTHWISE: "folded lengthwise",
    Fold.TWO: "with two folds, selvedges to the middle",
    Fold.ACROSS: "folded across",
}
SOLD: Mapping[SoldBy, str] = {
    SoldBy.TENTH_METRE: "the tenth of a metre",
    SoldBy.QUARTER_METRE: "the quarter of a metre",
    SoldBy.EIGHTH_YARD: "the eighth of a yard",
    SoldBy.QUARTER_YARD: "the quarter of a yard",
}
YES_NO: Mapping[str, Mapping[bool, str]] = {
    "nap": {False: "no nap", True: "a nap: all pieces head one way"},
    "steamed": {
        False: "not shrunk before it is cut, so the pieces are laid larger",
        True: "shrunk before it is cut",
    },
}
NAMES: Mapping[str, str] = {
    "name": "what it is called",
    "stuff": "what it is made of",
    "width": "its width, edge to edge, at the narrowest place",
    "selvedge": "one selvedge",
    "shrink_warp": "what it shrinks along, in a hundred",
    "shrink_weft": "what it shrinks across, in a hundred",
    "steamed": "shrunk before it is cut",
    "nap": "its nap",
    "fold": "how it lies",
    "price": "its price",
    "sold_by": "by what it is sold",
    "repeat_warp": "from one stripe to the next, along",
    "repeat_weft": "from one stripe to the next, across",
    "flaws": "its flaws, on which nothing is laid",
}
LENGTHS = ("width", "selvedge", "repeat_warp", "repeat_weft")
WIDEST_SELVEDGE = 5.0


def cloths_wanted(r: Reading) -> list[str]:
    """The cloths that something is cut from, in the order in which they are told."""
    if r.draft is None:
        return ["shell"]
    cut = {c.cloth for of in cuts_of(r.draft).values() for c in of}
    return [c for c in CLOTHS if c in cut]


def cloth_sentences(r: Reading, orders: Mapping[str, Cloth]) -> list[Sentence]:
    """Every cloth that is cut, told."""
    out = []
    for key in cloths_wanted(r):
        cloth = orders.get(key, Cloth())
        kept = r.stitched.get("cloths", {}).get(key, {})
        mine = r.table.get("cloths", {}).get(key, {})
        out.append(_Told(r, key, cloth, mine, kept).sentence())
    return out


class _Told:
    """One cloth's sentence and the rest behind its name."""

    def __init__(
        self, r: Reading, key: str, cloth: Cloth, mine: Table, kept: Table
    ) -> None:
        self.r, self.key, self.cloth = r, key, cloth
        self.mine, self.kept = mine, kept

    def sentence(self) -> Sentence:
        c = self.cloth
        runs: list[str | Word] = [f"The {self.key} is ", self._word("name", c.name)]
        if c.width is None:
            runs += [", ", self._word("width", "its width not known"), ", laid "]
        else:
            width = self._length(c.width)
            runs += [", ", self._word("width", width), " wide, laid "]
        runs += [self._word("fold", FOLDS[c.fold]), "; it has "]
        runs += [self._word("nap", YES_NO["nap"][c.nap]), ". "]
        more = Word(f"cloth:{self.key}", "More of it", Pen.INK, Opens.REST, "its rest")
        runs += [more, "."]
        return Sentence(f"cloth:{self.key}", tuple(runs), tuple(self._rest()))

    def _rest(self) -> Iterator[str | Word]:
        c = self.cloth
        yield from ("It is made of ", self._word("stuff", c.stuff))
        yield from (", with ", self._word("selvedge", self._length(c.selvedge)))
        yield " of selvedge at either side. Of a hundred it shrinks by "
        yield from (self._word("shrink_warp", f"{c.shrink_warp:g}"), " along and ")
        yield from (self._word("shrink_weft", f"{c.shrink_weft:g}"), " across; it is ")
        yield from (self._word("steamed", YES_NO["steamed"][c.steamed]), ". ")
        sold = c.sold(self._order_unit())
        unit = "yard" if sold.unit == "yd" else "metre"
        price = "nobody knows what" if c.price is None else str(c.price)
        yield from ("It costs ", self._word("price", price), f" a {unit}, sold by ")
        yield from (self._word("sold_by", SOLD[sold]), ". Its stripes come every ")
        yield from (self._word("repeat_warp", self._length(c.repeat_warp)), " along, ")
        yield from (self._word("repeat_weft", self._length(c.repeat_weft)), " across. ")
        yield from ("It has ", self._word("flaws", self._flaws()), " to lie around.")

    def _flaws(self) -> str:
        told = [
            "a flaw of {} by {}, {} from the cut end and {} from the edge".format(
                *(format_length(v, self.r.unit) for v in _sizes(f))
            )
            for f in self.cloth.flaws
        ]
        return ", and ".join(told) or "no flaw"

    def _word(self, field: str, say: str) -> Word:
        pen = Pen.INK if self._said(field) else Pen.PENCIL
        if self.mine.get(field) != self.kept.get(field):
            pen = Pen.THREAD
        how = Opens.CHOICE if _choices(field) else Opens.WRITE
        if field in ("width", "selvedge"):
            how = Opens.TAPE
        say = say or "not written down"
        return Word(f"cloth:{self.key}.{field}", say, pen, how, NAMES[field])

    def _said(self, field: str) -> bool:
        if self.key == "shell" and _short_of(field) in self.r.table:
            return True
        return field in self.mine

    def _length(self, cm: float | None) -> str:
        return "none" if cm is None else format_length(cm, self.r.unit)

    def _order_unit(self) -> Unit:
        return Unit.IN if self.r.table.get("unit") == "in" else Unit.CM


def bought_sentence(buys: Mapping[str, str], loose: list[str]) -> list[Sentence]:
    """What to buy of each cloth that is laid; `loose` are those whose lay is not
    kept."""
    if not buys:
        return []
    told = ", ".join(f"{much} of the {key}" for key, much in buys.items())
    said = ""
    if loose:
        *most, last = loose
        which = f"{', the '.join(most)} and the {last}" if most else last
        said = f" The lay of the {which} is not kept yet."
    return [Sentence("buy", (f"To buy: {told}.{said}",))]


def _choices(field: str) -> Mapping[Any, str]:
    every: dict[str, Mapping[Any, str]] = {"fold": FOLDS, "sold_by": SOLD, **YES_NO}
    return every.get(field, {})


def behind_cloth(r: Reading, cloths: Mapping[str, Cloth], of: str) -> dict[str, Any]:
    """The tape, the choices or the line to write on behind a cloth's word."""
    key, field = cloth_word(of)
    cloth = cloths.get(key, Cloth())
    value = getattr(cloth, field)
    choices = _choices(field)
    if choices:
        now = cloth.sold(Unit.CM) if field == "sold_by" and not value else value
        words = [
            {"say": say, "to": getattr(v, "value", v)} for v, say in choices.items()
        ]
        return {
            "opens": "choice",
            "name": NAMES[field],
            "now": choices[now],
            "words": words,
        }
    if field in ("width", "selvedge"):
        low, high = WIDTHS if field == "width" else (0.0, WIDEST_SELVEDGE)
        usual = 140.0 if field == "width" else SELVEDGE
        said = (
            "Between its outer edges, at the narrowest place."
            if field == "width"
            else "One of the two; nothing is laid on it."
        )
        return {
            "opens": "tape",
            "name": NAMES[field],
            "value": usual if value is None else value,
            "low": low,
            "high": high,
            "grain": 2.54 / 16 if r.unit is Unit.IN else 0.1,
            "length": True,
            "line": said,
            "hers": value is not None,
        }
    typed = "" if value in (None, "", ()) else str(value)
    if field in LENGTHS and value is not None:
        typed = format_length(value, r.unit)
    if field == "flaws":
        typed = flaws_written(cloth.flaws, r.unit)
    line = f"{opening(NAMES[field])}."
    if field == "flaws":
        line += f" {HOW_FLAWS} Leave it blank where there are none."
    if field in ("repeat_warp", "repeat_weft"):
        line += " Leave it blank where there are no stripes to match."
    return {"opens": "write", "name": NAMES[field], "typed": typed, "line": line}


def cloth_word(of: str) -> tuple[str, str]:
    """The cloth and the field of a word like "cloth:shell.width". Raises OrderError."""
    key, _, field = of.removeprefix("cloth:").partition(".")
    if key not in CLOTHS or field not in NAMES:
        raise OrderError(f"no cloth has a word called {of}")
    return key, field


def changed_cloth(
    table: Table, of: str, op: Mapping[str, Any], unit: Unit
) -> tuple[dict[str, Any], str]:
    """The order's table with a cloth's word changed, and what is said of it.

    Raises OrderError, LengthError.
    """
    key, field = cloth_word(of)
    value = _written(field, op, unit)
    out = dict(table)
    cloths = {k: dict(v) for k, v in table.get("cloths", {}).items()}
    row = cloths.setdefault(key, {})
    short = _short_of(field)
    if key == "shell" and "cloth_width" in out and field in ("width", "selvedge"):
        row.update(width=out.pop("cloth_width"), selvedge="0 cm")
    if key == "shell" and short in out:
        out.pop(short)
    if value is None:
        row.pop(field, None)
    else:
        row[field] = value
    out["cloths"] = cloths
    choices = {getattr(v, "value", v): say for v, say in _choices(field).items()}
    plain = op.get("to") if field == "flaws" else value
    said = choices.get(op.get("to"), "" if value is None else str(plain))
    told = f"{key.capitalize()}, {NAMES[field]}: {said or 'left blank'}"
    return out, told


def _short_of(field: str) -> str:
    return {"name": "cloth", "width": "cloth_width", "nap": "nap"}.get(field, "")


def _written(field: str, op: Mapping[str, Any], unit: Unit) -> Any:
    """A value as it stands in the order's file; None: leave it out."""
    if op.get("do") == "rule":
        return None
    if "cm" in op:
        return format_length(float(op["cm"]), unit)
    to = op.get("to")
    if field in YES_NO:
        return bool(to)
    if field in ("fold", "sold_by"):
        return to or None
    text = " ".join(str(to or "").split())
    if not text:
        return None
    if field in LENGTHS:
        in_unit = {"in": Unit.IN, "cm": Unit.CM}.get(str(op.get("unit")), unit)
        return format_length(parse_length(text, in_unit), unit)
    if field in ("shrink_warp", "shrink_weft"):
        share = parse_plain(text.removesuffix("%"))
        if not 0 <= share <= MOST_SHRINKAGE:
            raise OrderError(
                f"a cloth shrinks by 0 to {MOST_SHRINKAGE:g} in a hundred; write that"
            )
        return share
    if field == "flaws":
        in_unit = {"in": Unit.IN, "cm": Unit.CM}.get(str(op.get("unit")), unit)
        return flaws_read(text, in_unit)
    if field == "price":
        text = text.replace(",", ".")
        if not text.replace(".", "", 1).isdigit() or not text.isascii():
            raise OrderError("write a price as a number, like 18.40")
        return str(Decimal(text))
    return text


# -- flaws ---------------------------------------------------------------------------
HOW_FLAWS = (
    "Each as its length by its width, and how far it is from the cut end and from the "
    "edge: 3 by 2 at 80 and 20; 5 by 5 at 130 and 60."
)
_FLAW = re.compile(r"(.+) by (.+) at (.+) and (.+)")


def _sizes(flaw: Flaw) -> tuple[float, float, float, float]:
    return flaw.length, flaw.width, flaw.along, flaw.across


def flaws_written(flaws: Iterable[Flaw], unit: Unit) -> str:
    """Flaws as they are typed."""
    each = [[format_length(v, unit) for v in _sizes(f)] for f in flaws]
    return "; ".join(f"{a} by {b} at {c} and {d}" for a, b, c, d in each)


def flaws_read(text: str, unit: Unit) -> list[dict[str, str]]:
    """Flaws as they stand in the order's file, from what was typed, in that unit.

    Raises OrderError, LengthError.
    """
    out = []
    for one in filter(None, (part.strip() for part in text.split(";"))):
        found = _FLAW.fullmatch(one)
        if found is None:
            raise OrderError(
                "write each flaw as its length by its width at its place, like 3 by 2 "
                "at 80 and 20"
            )
        names = ("length", "width", "along", "across")
        sizes = (format_length(parse_length(g, unit), unit) for g in found.groups())
        out.append(dict(zip(names, sizes, strict=True)))
    return out
