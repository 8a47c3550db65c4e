"""The cloths of an order: what is cut from what, how wide it lies, what it costs.

    [cloths.shell]
    name = "Ink crêpe"
    stuff = "viscose crêpe"
    width = "140 cm"        # measured at its narrowest place, edge to edge
    selvedge = "1 cm"       # each side
    shrink_warp = 3         # percent, along the cloth
    shrink_weft = 2         # percent, across it
    steamed = true          # shrunk before it is cut: the pieces do not grow
    nap = false
    price = "18.40"         # for a metre, or a yard, as it is sold
    sold_by = "0.1 m"
    fold = "lengthwise"
    flaws = [{ along = "80 cm", across = "20 cm", length = "3 cm", width = "2 cm" }]

Terminology
    along    in the direction of the warp, from the cut end of the cloth.
    across   in the direction of the weft, from one outer edge.
    growth   what a piece is cut longer and wider by because its cloth will shrink.

Lengths are cm. Ranges of width, selvedge and shrinkage: cutting and costing §1.1, 1.2.
"""

from collections.abc import Mapping
from decimal import Decimal
from enum import Enum
from typing import Annotated, Any

from pydantic import BaseModel, BeforeValidator, ConfigDict, StrictBool, ValidationError

from clothwright.order.faults import sentences
from clothwright.units import (
    CM_PER_INCH,
    Unit,
    did_you_mean,
    format_length,
    parse_plain,
)
from clothwright.units.fields import Length

CLOTHS = ("shell", "underlining", "lining", "interlining", "rib")
"""The cloths that pieces are cut from, by their plain names."""

WIDTHS = 20.0, 400.0
"""Narrowest and widest cloth that an order may name, cm."""

SELVEDGE = 1.0
"""A selvedge that nobody measured, cm each side (cutting and costing §1.1: 0.6–1.5)."""

MOST_SHRINKAGE = 20.0
"""Percent; the most that §1.2 of cutting and costing lists is 10."""


class Fold(Enum):
    """How the cloth lies while it is cut."""

    SINGLE = "single"
    """One layer, right side up."""

    LENGTHWISE = "lengthwise"
    """Selvedge on selvedge; the fold runs along the warp."""

    ACROSS = "across"
    """End on end; the fold runs along the weft. Not with a nap."""

    TWO = "two folds"
    """Both selvedges brought to the middle; a fold on either side."""


class SoldBy(Enum):
    """The least length by which a shop sells."""

    TENTH_METRE = "0.1 m"
    QUARTER_METRE = "0.25 m"
    EIGHTH_YARD = "1/8 yd"
    QUARTER_YARD = "1/4 yd"

    @property
    def step(self) -> float:
        """That length in cm."""
        parts, unit = self.value.split()
        return parse_plain(parts) * (100.0 if unit == "m" else 36 * CM_PER_INCH)

    @property
    def unit(self) -> str:
        """What a price is for: "m" or "yd"."""
        return self.value.split()[1]


def _percent(value: object) -> object:
    if isinstance(value, str):
        return parse_plain(value.removesuffix("%"))
    if isinstance(value, bool):
        raise ValueError("write a number of percent, like 3")
    return value


def _price(value: object) -> object:
    """Money as it was typed: text, so that no cent is lost."""
    if value is None or isinstance(value, Decimal):
        return value
    text = str(value).strip()
    if (
        isinstance(value, bool)
        or not text.isascii()
        or not text.replace(".", "", 1).isdigit()
        or len(text) > 12
    ):
        raise ValueError('write a sum of money in quotes, like "18.40"')
    return Decimal(text)


Percent = Annotated[float, BeforeValidator(_percent)]
Price = Annotated[Decimal, BeforeValidator(_price)]


class _Model(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)


class Flaw(_Model):
    """A place to lay nothing on: a rectangle of the open cloth, cm."""

    along: Length
    """From the cut end of the cloth to its near side."""

    across: Length
    """From one outer edge of the cloth to its near side."""

    length: Length
    width: Length


class Cloth(_Model):
    """A cloth as it lies on the table."""

    name: str = ""
    """What the article is called; the plain name of the cloth when empty."""

    stuff: str = ""
    """Fibre and construction: "viscose crêpe"."""

    width: Length | None = None
    """Between the outer edges at the narrowest place, as measured, cm."""

    selvedge: Length = SELVEDGE
    """Each side, cm."""

    shrink_warp: Percent = 0.0
    shrink_weft: Percent = 0.0
    """Percent of the length and of the width that is lost in steam or wash."""

    steamed: StrictBool = False
    """Shrunk before it is cut."""

    nap: StrictBool = False
    """One way: all pieces head the same way (§1.3)."""

    repeat_warp: Length | None = None
    repeat_weft: Length | None = None
    """From one stripe to the same stripe again, along and across, cm."""

    price: Price | None = None
    """For a metre, or for a yard where it is sold by parts of one."""

    sold_by: SoldBy | None = None
    """None: by the unit of the order, 0.1 m or 1/8 yd."""

    fold: Fold | None = None
    """None: whichever way suits the pieces."""

    flaws: tuple[Flaw, ...] = ()

    @property
    def usable(self) -> float | None:
        """Width between the selvedges, cm."""
        return None if self.width is None else self.width - 2 * self.selvedge

    @property
    def growth(self) -> tuple[float, float]:
        """What to multiply a piece by, along the warp and along the weft: 1/(1 − s)
        unless the cloth is shrunk first (cutting and costing §1.2; never both)."""
        if self.steamed:
            return 1.0, 1.0
        return 1 / (1 - self.shrink_warp / 100), 1 / (1 - self.shrink_weft / 100)

    def sold(self, unit: Unit) -> SoldBy:
        """By what length it is sold, in an order of this unit."""
        usual = SoldBy.EIGHTH_YARD if unit is Unit.IN else SoldBy.TENTH_METRE
        return self.sold_by or usual


def read_cloths(
    table: Mapping[str, Any], place: str, unit: Unit
) -> tuple[dict[str, Cloth], list[str]]:
    """The cloths of an order's table by their plain names, the shell always among
    them, and sentences for all that cannot be.

    The keys `cloth`, `cloth_width` (between the selvedges) and `nap` are the short way
    to tell the shell.
    """
    rows = table.get("cloths", {})
    if not isinstance(rows, dict) or not all(
        isinstance(r, dict) for r in rows.values()
    ):
        return {}, [f"{place}: write each cloth under its own [cloths.shell], say"]
    rows = dict(rows)
    faults = [
        f"{place}: cloths.{k} is not known; "
        f"{did_you_mean(k, CLOTHS, _CALLED) or 'the cloths are ' + ', '.join(CLOTHS)}"
        for k in rows
        if k not in CLOTHS
    ]
    short, more = _short(table, rows.get("shell", {}), place)
    faults += more
    rows["shell"] = rows.get("shell", {}) | short
    cloths: dict[str, Cloth] = {}
    for key in CLOTHS:
        if key not in rows:
            continue
        where = f"{place}, cloths.{key}"
        said = {v: k for k, v in _SHORT.items() if v in short} if key == "shell" else {}
        try:
            cloth = Cloth.model_validate(rows[key], context={"unit": unit})
        except ValidationError as e:
            if set(rows[key]) == set(short):
                where = place
            faults += sentences(e, Cloth, where, said)
            continue
        faults += _out_of_reach(cloth, unit, where, said)
        cloths[key] = cloth
    return cloths, faults


_CALLED = {
    **dict.fromkeys(("fabric", "main", "outer", "self"), ("shell",)),
    **dict.fromkeys(("interfacing", "fusible"), ("interlining",)),
    "mounting": ("underlining",),
    "ribbing": ("rib",),
}
"""Other words for the cloths."""

_SHORT = {"cloth": "name", "cloth_width": "width", "nap": "nap"}


def _short(
    table: Mapping[str, Any], shell: Mapping[str, Any], place: str
) -> tuple[dict[str, Any], list[str]]:
    """The shell's settings that stand at the top of the order."""
    out: dict[str, Any] = {}
    faults = []
    for key, field in _SHORT.items():
        if key not in table:
            continue
        if key == "cloth" and not isinstance(table[key], str):
            faults.append(
                f'{place}: cloth is the name of the shell, cloth = "ink crêpe"; its '
                "width, its price and other cloths stand under [cloths.shell] and the "
                "like"
            )
            continue
        if field in shell:
            faults.append(
                f"{place}: {key} and cloths.shell.{field} say the same; leave one out"
            )
            continue
        out[field] = table[key]
    if "width" in out:
        out["selvedge"] = 0.0  # measured between them
        if "selvedge" in shell:
            faults.append(
                f"{place}: cloth_width is between the selvedges; write width in "
                "[cloths.shell] beside selvedge instead"
            )
    return out, faults


def _out_of_reach(
    cloth: Cloth, unit: Unit, where: str, said: Mapping[str, str]
) -> list[str]:
    faults = []

    def within(
        field: str, value: float | None, low: float, high: float, length: bool = True
    ) -> None:
        if value is None or low <= value <= high:
            return
        shown = [
            format_length(v, unit) if length else f"{v:g} percent"
            for v in (value, low, high)
        ]
        name = said.get(field, field)
        place = where.partition(",")[0] if field in said else where
        faults.append(
            f"{place}: {name} = {shown[0]} is out of reach; "
            f"write something from {shown[1]} to {shown[2]}"
        )

    within("width", cloth.width, *WIDTHS)
    widest = 5.0 if cloth.width is None else min(5.0, cloth.width / 4)
    within("selvedge", cloth.selvedge, 0.0, widest)
    within("shrink_warp", cloth.shrink_warp, 0.0, MOST_SHRINKAGE, False)
    within("shrink_weft", cloth.shrink_weft, 0.0, MOST_SHRINKAGE, False)
    within("repeat_warp", cloth.repeat_warp, 0.1, 100.0)
    within("repeat_weft", cloth.repeat_weft, 0.1, 100.0)
    for i, flaw in enumerate(cloth.flaws, 1):
        for field, low in (("along", 0.0), ("across", 0.0), ("length", 0.1)):
            within(f"flaw {i}, {field}", getattr(flaw, field), low, 10000.0)
        within(f"flaw {i}, width", flaw.width, 0.1, cloth.width or WIDTHS[1])
    if cloth.nap and cloth.fold is Fold.ACROSS:
        faults.append(
            f"{where}: with a nap the cloth cannot be folded across, for the two "
            'layers would head opposite ways; write fold = "lengthwise" or "single"'
        )
    return faults
