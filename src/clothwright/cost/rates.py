"""A house's rates, read from a TOML file; every fault is a sentence."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from importlib import resources
from pathlib import Path

from clothwright.cost.money import CostError
from clothwright.features.notions import Article
from clothwright.features.operations import Task
from clothwright.making.times import USUAL
from clothwright.order.file import OrderError, read_text
from clothwright.units import MiswrittenError, did_you_mean, read_toml

_REEL = Decimal(100)

_Table = Mapping[str, object]


@dataclass(frozen=True)
class Rates:
    """Rates of a house. Percentages are of 100; prices of cloth, tape and cord are for
    a metre."""

    currency: str
    places: int
    hour: Decimal
    """An hour of making."""

    overhead_percent: Decimal
    """Of the making; 0 where it is reckoned by the hour."""

    overhead_hour: Decimal
    handling_percent: Decimal
    """On cloth."""

    margin_percent: Decimal | None
    markup_percent: Decimal | None
    round_up_to: Decimal
    tax_percent: Decimal
    deposit_percent: Decimal
    valid_days: int
    cloth: Mapping[str, Decimal]
    notions: Mapping[Article, Decimal]
    reel: Decimal
    """Metres of thread on a reel."""

    minutes: Mapping[Task, Decimal]
    place: str = "rates.toml"

    def notion(self, article: Article) -> Decimal:
        """Price of an article. Raises CostError when there is none."""
        try:
            return self.notions[article]
        except KeyError:
            raise CostError(
                f"{self.place}: there is no price for {article.value}; write "
                f'"{article.value}" = 1.50, say, under [notions]'
            ) from None

    def cloth_price(self, *names: str) -> Decimal:
        """Price of a metre of the first of these names that has one. Raises
        CostError."""
        for name in names:
            if name in self.cloth:
                return self.cloth[name]
        raise CostError(
            f"{self.place}: there is no price for {names[0]}; write "
            f'"{names[0]}" = 12.50, say, under [cloth]'
        )


def read_rates(path: Path) -> Rates:
    """Rates from a file. Raises CostError."""
    try:
        text = read_text(path, "the rates")
    except OrderError as e:
        raise CostError(*e.sentences) from e
    return rates_from_text(text, path.name)


def demo_rates() -> Rates:
    """The rates of the demo's invented house."""
    return rates_from_text(demo_rates_text(), "rates.toml")


def demo_rates_text() -> str:
    """These rates as they are written."""
    return resources.files("clothwright.demo").joinpath("rates.toml").read_text("utf-8")


def rates_from_text(text: str, place: str) -> Rates:
    """Rates from TOML. Raises CostError with a sentence for every fault."""
    try:
        how = 'each line is name = value, and words stand in "quotes"'
        table = read_toml(text, how, Decimal)
    except MiswrittenError as e:
        raise CostError(f"{place}: {e}") from None
    return _Reader(place).rates(table)


_KNOWN = {
    "making": ("hour", "overhead_percent", "overhead_hour", "handling_percent"),
    "price": (
        "margin_percent",
        "markup_percent",
        "round_up_to",
        "tax_percent",
        "deposit_percent",
        "valid_days",
    ),
}


class _Reader:
    """Reads a table and collects what is wrong with it."""

    def __init__(self, place: str) -> None:
        self.place = place
        self.faults: list[str] = []

    def rates(self, table: _Table) -> Rates:
        known = ("currency", "places", *_KNOWN, "cloth", "notions", "minutes")
        self._unknown(table, known, "")
        making, price = (self._part(table, name) for name in ("making", "price"))
        self._unknown(making, _KNOWN["making"], "making")
        self._unknown(price, _KNOWN["price"], "price")
        self._one_of(making, "making", "overhead_percent", "overhead_hour", "overhead")
        self._one_of(price, "price", "margin_percent", "markup_percent", "the price")
        margin = self._choice(price, "margin_percent")
        if margin is not None and margin >= 100:
            self._say("price", "margin_percent leaves nothing; write less than 100")
        notions = dict(self._part(table, "notions"))
        reel = self._number(notions, "reel", "notions", _REEL, _POSITIVE)
        notions.pop("reel", None)
        found = Rates(
            currency=self._currency(table),
            places=int(self._number(table, "places", "", Decimal(2), _PLACES)),
            hour=self._needed(making, "hour", "making"),
            overhead_percent=self._number(making, "overhead_percent", "making"),
            overhead_hour=self._number(making, "overhead_hour", "making"),
            handling_percent=self._number(making, "handling_percent", "making"),
            margin_percent=margin,
            markup_percent=self._choice(price, "markup_percent"),
            round_up_to=self._number(price, "round_up_to", "price"),
            tax_percent=self._number(price, "tax_percent", "price"),
            deposit_percent=self._number(
                price, "deposit_percent", "price", Decimal(0), _SHARE
            ),
            valid_days=int(
                self._number(price, "valid_days", "price", Decimal(30), _DAYS)
            ),
            cloth=self._prices(self._part(table, "cloth"), "cloth"),
            notions={
                Article(name): amount
                for name, amount in self._prices(notions, "notions", _ARTICLES).items()
            },
            reel=reel,
            minutes=self._minutes(table),
            place=self.place,
        )
        if self.faults:
            raise CostError(*self.faults)
        return found

    def _minutes(self, table: _Table) -> Mapping[Task, Decimal]:
        """The house's, or else the usual; marking alone as with interlining."""
        part = self._part(table, "minutes")
        said = {
            Task(name): amount
            for name, amount in self._prices(part, "minutes", _TASKS).items()
        }
        if Task.MARK in said:
            said.setdefault(Task.MARK_ALONE, said[Task.MARK])
        return {**{task: Decimal(repr(m)) for task, m in USUAL.items()}, **said}

    def _say(self, part: str, text: str) -> None:
        where = f"{self.place}, [{part}]" if part else self.place
        self.faults.append(f"{where}: {text}")

    def _part(self, table: _Table, name: str) -> _Table:
        part = table.get(name, {})
        if isinstance(part, dict):
            return part
        self._say("", f"{name} is a table; write [{name}] and its lines below")
        return {}

    def _unknown(self, table: _Table, known: tuple[str, ...], part: str) -> None:
        for key in table:
            if key not in known:
                hint = did_you_mean(key, known) or "leave it out"
                self._say(part, f"{key} is not known here; {hint}")

    def _one_of(self, table: _Table, part: str, a: str, b: str, what: str) -> None:
        if a in table and b in table:
            self._say(part, f"{what} is reckoned one way; keep {a} or {b}, not both")

    def _currency(self, table: _Table) -> str:
        got = table.get("currency")
        if isinstance(got, str) and len(got) == 3 and got.isascii() and got.isupper():
            return got
        self._say("", 'the currency is three capitals; write currency = "EUR", say')
        return ""

    def _needed(self, table: _Table, key: str, part: str) -> Decimal:
        if key not in table:
            self._say(part, f"{key} is missing; write {key} = 27.00, say")
            return Decimal(0)
        return self._number(table, key, part)

    def _choice(self, table: _Table, key: str) -> Decimal | None:
        return self._number(table, key, "price") if key in table else None

    def _number(
        self,
        table: _Table,
        key: str,
        part: str,
        usual: Decimal = Decimal(0),
        allowed: "_Allowed | None" = None,
    ) -> Decimal:
        if key not in table:
            return usual
        got = table[key]
        number = Decimal(got) if isinstance(got, int | Decimal) else None
        fits, write = allowed or _NOT_NEGATIVE
        if isinstance(got, bool) or number is None or not number.is_finite():
            self._say(part, f"{key} = {got!s} is no number; write {key} = 12.50, say")
        elif not fits(number):
            self._say(part, f"{key} = {got!s} cannot be; write {write}")
        else:
            return number
        return usual

    def _prices(
        self, table: _Table, part: str, known: tuple[str, ...] = ()
    ) -> dict[str, Decimal]:
        if known:
            self._unknown(table, known, part)
        return {
            key: self._number(table, key, part)
            for key in table
            if not known or key in known
        }


_Allowed = tuple[Callable[[Decimal], bool], str]
_NOT_NEGATIVE: _Allowed = (lambda n: n >= 0, "0 or more")
_POSITIVE: _Allowed = (lambda n: n > 0, "more than 0")
_SHARE: _Allowed = (lambda n: 0 <= n <= 100, "0 to 100")
_PLACES: _Allowed = (lambda n: n in (0, 2, 3), "0, 2 or 3")
_DAYS: _Allowed = (lambda n: n == int(n) and 1 <= n <= 365, "whole days, 1 to 365")
_ARTICLES = tuple(a.value for a in Article if not a.cut)
_TASKS = tuple(t.value for t in Task)
