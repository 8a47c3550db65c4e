"""Reading an order file (TOML).

    garment = "Sleeveless peplum top"
    number = "1"
    unit = "in"
    measures = "brida.toml"      # beside this file, or a [measures] table here
    house = "house.toml"         # optional
    estimates = "survey"         # or "handbook": how missing measures are estimated
    nap = false
    wearer = "adult"             # or "child", "child under three": for the cautions
    use = "day"                  # or "nightwear"
    cloth_width = "54 1/4"       # between the selvedges, where it is known; all else of
                                 # the cloths under [cloths.shell] (see cloths)
    toile = true                 # once one has been made

    [[feature]]
    kind = "neckline"
    shape = "boat"

Every fault is one plain sentence with the place, collected in one `OrderError`.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from clothwright.body import (
    Body,
    BodyError,
    RuleSet,
    body_from_tables,
    one_line,
    read_body,
)
from clothwright.features import KINDS, Feature, by_its_name
from clothwright.features.called import which_feature
from clothwright.features.said import Said, said_of
from clothwright.order.cloths import Cloth, read_cloths
from clothwright.order.faults import sentences
from clothwright.order.wearer import Use, Wearer, read_wearer
from clothwright.units import (
    MiswrittenError,
    Unit,
    did_you_mean,
    format_length,
    read_toml,
)


class OrderError(ValueError):
    """An order that cannot be drafted. `sentences` are for the user."""

    def __init__(self, *sentences: str) -> None:
        self.sentences = sentences
        super().__init__("\n".join(sentences))


@dataclass(frozen=True)
class Order:
    """An order as read: features are models, house rules still text."""

    garment: str
    number: str
    unit: Unit
    body: Body
    features: tuple[Feature, ...]
    house_text: str = ""
    house_place: str = ""
    estimates: RuleSet = RuleSet.SURVEY
    cloths: Mapping[str, Cloth] = field(default_factory=lambda: {"shell": Cloth()})
    """By plain name: the shell always, the others where the order tells of them."""

    toile: bool = False
    """A toile has been made and fitted."""

    wearer: Wearer = Wearer.ADULT
    use: Use = Use.DAY
    place: str = "order"
    measures_place: str = "the measures"
    """Name of the file that they stand in."""

    @property
    def said(self) -> Said:
        """What its features say about their pieces."""
        return said_of(self.features)

    @property
    def whose(self) -> str:
        """The client, and the order's number where it has one, for the head of a
        sheet."""
        return ", order ".join(t for t in (self.body.client, self.number) if t)

    @property
    def footer(self) -> str:
        """The garment, and the client where she is named, for the foot of a sheet."""
        return ", ".join(t for t in (self.garment, self.body.client) if t)

    @property
    def shell(self) -> Cloth:
        """The cloth that is seen."""
        return self.cloths["shell"]

    def feature(self, kind: str) -> Feature | None:
        """The feature of this kind, if the order has one."""
        return next((f for f in self.features if f.kind == kind), None)


_TOP = {
    "garment",
    "number",
    "unit",
    "client",
    "measures",
    "house",
    "estimates",
    "nap",
    "cloth",
    "cloth_width",
    "wearer",
    "use",
    "cloths",
    "toile",
    "feature",
    "taken",
    "by",
    "sizes",
}

_CALLED = {
    "title": ("garment",),
    "name": ("garment", "client"),
    "customer": ("client",),
    "order": ("number",),
    "body": ("measures",),
    "rules": ("house",),
    "size": ("sizes",),
    "date": ("taken",),
    **dict.fromkeys(
        ("fabric", "fabrics", "material", "shell", "lining", "interlining"),
        ("cloth", "cloths"),
    ),
}
"""Other words for them."""


LONGEST_FILE = 1_000_000
"""Letters in a file: far more than she writes."""


def read_order(path: Path) -> Order:
    """Read an order file and the files that it names. Raises OrderError."""
    return order_from_text(read_text(path, "the order"), path.name, path.parent)


def read_text(path: Path, what: str) -> str:
    """The text of a file. Raises OrderError with a plain sentence."""
    name = path.name or str(path)
    try:
        pipe = path.is_fifo()  # opening it would wait for a writer
        if not pipe:
            with path.open(encoding="utf-8-sig") as f:
                text = f.read(LONGEST_FILE + 1)
    except FileNotFoundError:
        raise OrderError(
            f"{name}: there is no such file; check the name of {what}"
        ) from None
    except IsADirectoryError:
        raise OrderError(f"{name} is a folder; name a file for {what}") from None
    except PermissionError:
        raise OrderError(f"{name} may not be read; change its permissions") from None
    except UnicodeDecodeError:
        raise OrderError(
            f"{name} is not plain text; save {what} as UTF-8 text"
        ) from None
    except OSError as e:
        raise OrderError(
            f"{name} cannot be read ({e.strerror}); try another place for it"
        ) from None
    except ValueError:  # a character that no file's name may hold
        raise OrderError(
            f"{name!r} is no name of a file; check the name of {what}"
        ) from None
    if pipe:
        raise OrderError(f"{name} is a pipe; name a file for {what}")
    if len(text) > LONGEST_FILE:
        raise OrderError(f"{name} is far too long for {what}; name another file")
    return text


def toml_table(text: str, place: str) -> dict[str, Any]:
    """TOML as a table. Raises OrderError that points at the line."""
    try:
        return read_toml(text, 'each line is name = value, and words stand in "quotes"')
    except MiswrittenError as e:
        raise OrderError(f"{place}: {e}") from None


def order_from_text(text: str, place: str, folder: Path) -> Order:
    """An order from its text; files that it names lie in `folder`."""
    return order_from_table(toml_table(text, place), place, folder)


def order_from_table(
    table: dict[str, Any], place: str, folder: Path, body: Body | None = None
) -> Order:
    """An order from its table as TOML reads it. Raises OrderError with all faults.

    A `body` that is given stands in for the measures that the order names.
    """
    if "client" in table and not {"feature", "garment"} & table.keys():
        raise OrderError(
            f"{place} holds a client's measures; name the order that is made to them"
        )
    faults = [_unknown(k, place) for k in table if k not in _TOP]
    unit = _unit(table, place)
    if isinstance(unit, str):  # every length would be told in the wrong one
        raise OrderError(*faults, unit)
    measures_place = Order.measures_place
    if body is None:
        named = table.get("measures")
        measures_place = named if isinstance(named, str) else place
    try:
        body = body or _body(table, place, folder, unit)
    except (BodyError, OrderError) as e:
        faults += str(e).splitlines()
    house_text, house_place = "", ""
    if "house" in table:
        try:
            house_place = str(table["house"])
            house_text = read_text(folder / house_place, "the house rules")
        except OrderError as e:
            faults += e.sentences
    features, more = _features(table.get("feature"), place, unit)
    faults += more
    estimates = RuleSet.SURVEY
    if "estimates" in table:
        words = {r.value: r for r in RuleSet}
        got = table["estimates"]
        if isinstance(got, str) and got in words:
            estimates = words[got]
        else:
            faults.append(
                f'{place}: estimates = {got!r} is not known; write "survey" or '
                '"handbook"'
            )
    if not isinstance(table.get("toile", False), bool):
        faults.append(f"{place}: toile is true or false, without quotes")
    cloths, more = read_cloths(table, place, unit)
    faults += more
    wearer, use, odd = read_wearer(table, place)
    faults += odd
    garment, more = one_line(table, "garment", "Garment", place)
    faults += more
    number, more = one_line(table, "number", "", place)
    faults += more
    if faults or body is None:
        raise OrderError(*faults)
    return Order(
        garment=garment,
        number=number,
        unit=unit,
        body=body,
        features=features,
        house_text=house_text,
        house_place=house_place,
        estimates=estimates,
        wearer=wearer,
        use=use,
        cloths=cloths,
        toile=bool(table.get("toile", False)),
        place=place,
        measures_place=measures_place,
    )


def _unknown(key: str, place: str) -> str:
    if key in KINDS:
        hint = f'write it as a [[feature]] with kind = "{key}"'
    else:
        hint = did_you_mean(key, sorted(_TOP), _CALLED) or "leave it out"
    if "cloths" in hint:
        hint += ' Write cloth = "its name", or [cloths.shell] and below it its width'
    return f"{place}: {key} is not known here; {hint}"


def _unit(table: dict[str, Any], place: str) -> Unit | str:
    """The unit, or what is wrong with it."""
    words = {"cm": Unit.CM, "in": Unit.IN}
    got = table.get("unit")
    if got is None:
        return f'{place}: the unit is missing; write unit = "cm" or unit = "in"'
    odd = f'{place}: unit = {got!r} is not known; write unit = "cm" or unit = "in"'
    return words.get(str(got), odd)


def _body(table: dict[str, Any], place: str, folder: Path, unit: Unit) -> Body:
    got = table.get("measures")
    if got is None:
        raise OrderError(
            f"{place}: the measures are missing; name their file, "
            'measures = "name.toml", or write a [measures] table'
        )
    if isinstance(got, dict):
        return body_from_tables(
            {
                "client": table.get("client", ""),
                "unit": unit.value,
                "measures": got,
                **{k: table[k] for k in ("taken", "by") if k in table},
            },
            place,
        )
    if not isinstance(got, str):
        raise OrderError(f"{place}: measures names a file, in quotes")
    return read_body(read_text(folder / got, "the measures"), got)


def _features(
    rows: Any, place: str, unit: Unit
) -> tuple[tuple[Feature, ...], list[str]]:
    if rows is None:
        return (), [f"{place}: no feature is named; write at least one [[feature]]"]
    if not isinstance(rows, list) or not all(isinstance(r, dict) for r in rows):
        return (), [f"{place}: write each feature under its own [[feature]]"]
    features: list[Feature] = []
    faults: list[str] = []
    for i, row in enumerate(map(by_its_name, rows), 1):
        kind = row.get("kind")
        if not isinstance(kind, str) or kind not in KINDS:
            faults.append(_unknown_kind(row, i, place))
            continue
        try:
            feature = KINDS[kind].model_validate(row, context={"unit": unit})
        except ValidationError as e:
            where = f"{place}, feature {i} ({kind})"
            faults += sentences(e, KINDS[kind], where)
            continue
        bounds = list(out_of_bounds(feature, unit, place))
        faults += bounds
        if any(f.kind == feature.kind for f in features):
            faults.append(f"{place}: {feature.kind} stands twice; leave one off")
        features.append(feature)
    return tuple(features), faults


def out_of_bounds(feature: Feature, unit: Unit, place: str) -> list[str]:
    """Sentences for numbers outside what their feature allows."""
    out = []
    for name, number in feature.numbers().items():
        value = getattr(feature, name)
        if value is None:
            continue
        low, high = number.low, number.high
        if (low is None or value >= low - 1e-9) and (
            high is None or value <= high + 1e-9
        ):
            continue

        def show(
            v: float | None, is_length: bool = number.kind.name == "LENGTH"
        ) -> str:
            if v is None:
                return "any"
            return format_length(v, unit) if is_length else f"{v:g}"

        out.append(
            f"{place}, {feature.kind}: {name} = {show(value)} is out of reach; "
            f"write something from {show(low)} to {show(high)} ({number.name})"
        )
    return out


def _unknown_kind(row: dict[str, Any], index: int, place: str) -> str:
    if "kind" not in row:
        return (
            f"{place}, feature {index}: its kind is missing; "
            'write kind = "neckline", say'
        )
    kind = row["kind"]
    if not isinstance(kind, str):
        return (
            f"{place}, feature {index}: its kind is one word or more in quotes; "
            'write kind = "neckline", say'
        )
    return (
        f"{place}, feature {index}: there is no feature {kind!r}; {which_feature(kind)}"
    )
