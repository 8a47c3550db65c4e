"""Notions: what is bought beside the cloth, and strips cut without a pattern.

Lengths and sizes are cm.
"""

from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum

from clothwright.units import opening


class Article(Enum):
    """What is bought, as the house rates name it; or cut from a cloth at hand."""

    BALL_BUTTON = "ball button"
    FLAT_BUTTON = "flat button"
    ZIP = "concealed zip"
    VISIBLE_ZIP = "visible zip"
    TROUSER_ZIP = "trouser zip"
    OPEN_ZIP = "separating zip"
    HOOK = "hook and eye"
    HOOK_TAPE = "hook-and-eye tape"
    STUD = "press stud"
    TAPE = "stay tape"
    LACING = "lacing cord"
    EYELET = "eyelet"
    ELASTIC = "elastic"
    DRAWSTRING = "drawstring cord"
    BONE = "bone"
    CHANNEL = "boning channel"
    STAY = "petersham ribbon"
    PLEATING = "sunburst pleating"
    """Work that is given away."""

    THREAD = "thread"
    BIAS = "bias cord"
    """Cut from the shell."""

    PLACKET = "placket strip"
    """Cut from the shell."""

    STRIP = "interlining strip"
    """Cut from the interlining."""

    @property
    def cut(self) -> bool:
        """True for what is cut from a cloth at hand and not bought."""
        return self in (Article.BIAS, Article.PLACKET, Article.STRIP)

    @property
    def by_length(self) -> bool:
        """True for what a shop cuts to length; all else is bought by the piece."""
        return self in (
            Article.TAPE,
            Article.HOOK_TAPE,
            Article.LACING,
            Article.DRAWSTRING,
            Article.CHANNEL,
            Article.STAY,
        )


@dataclass(frozen=True)
class Notion:
    """So many of an article, or such a length of it."""

    article: Article
    count: int
    where: str
    """What it is for: words that follow the amount."""

    length: float | None = None
    """Length of each, cm."""

    size: float | None = None
    """Diameter of a button, or width of a strip, cm."""

    at_least: bool = False
    """True when a longer one serves as well."""

    spare: int = 0
    """How many of the count are to spare."""

    in_all: float | None = None
    """Length to buy or to cut where it is more than the sum, cm."""

    @property
    def total(self) -> float | None:
        """Length in all, cm."""
        if self.in_all is not None or self.length is None:
            return self.in_all
        return self.count * self.length

    def amount(self, fmt: Callable[[float], str]) -> str:
        """How many, how long, in the user's unit."""
        size = "" if self.size is None else fmt(self.size)
        if self.length is None:
            return f"{self.count}{' of ' if size else ''}{size}"
        length = ("at least " if self.at_least else "") + fmt(self.length)
        wide = f", {size} wide" if size else ""
        if self.count == 1:
            return length + wide
        return f"{_COUNTED.get(self.count, self.count)} of {length}{wide}"

    def told(self, fmt: Callable[[float], str]) -> str:
        """One line for the pattern's first page."""
        what = self.article.value
        if self.length is None:
            size = "" if self.size is None else f" of {fmt(self.size)}"
            spare = f" ({_COUNTED[self.spare]} to spare)" if self.spare else ""
            many = str(_COUNTED.get(self.count, self.count)).capitalize()
            return f"{many} {self.named}{size}, {self.where}{spare}."
        in_all = "" if self.in_all is None else f"; in all {fmt(self.in_all)}"
        what = opening(what)
        return f"{what}: {self.amount(fmt)}, {self.where}{in_all}."

    @property
    def named(self) -> str:
        """The article, in the number in which it is bought."""
        what = self.article.value
        if self.count == 1:
            return what
        return "hooks and eyes" if self.article is Article.HOOK else f"{what}s"


_COUNTED = {1: "one", 2: "two", 3: "three", 4: "four"}
