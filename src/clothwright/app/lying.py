"""What lies on one cloth; what the slip says of it; where lays are kept."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Protocol

from clothwright.order import Cloth, Draft

if TYPE_CHECKING:
    from clothwright.lay.byhand import Board, Laid, Places
    from clothwright.lay.kept import KeptLay


SECONDS = 8.0
"""How long a shorter lay is looked for while she watches."""

LONGER = 40.0
"""The same when she asks for it."""

QUICK = 2.0
"""The same where only the length is wanted, for the cost."""


class Leaves(Protocol):
    """Where lays are kept."""

    def leaf(self, name: str) -> str:
        """A text that lies with the slip; blank when there is none."""
        ...

    def put_leaf(self, name: str, text: str, *, of_state: bool = False) -> None:
        """Lay a text with the slip, or with its state on the table."""
        ...


@dataclass(frozen=True)
class Spoken:
    """What the slip says now, as far as a lay goes by it."""

    draft: Draft
    text: str
    house: str
    cloths: Mapping[str, Cloth]
    basted: bool


@dataclass
class Lying:
    """One cloth with its pieces on it."""

    board: "Board"
    laid: "Laid"
    kept: "Places | None" = None
    past: list[tuple["Board", "Laid"]] = field(default_factory=list)
    """As it lay before each move of a hand, and before a search that was asked for."""

    def beats(self, cloth: float) -> bool:
        """True when the pieces lie well, on no more cloth than this, cm."""
        lay = self.laid.lay
        taken = lay.length * lay.spread.lengths
        return not self.laid.faults and taken < cloth + 0.01


def leaf_name(key: str) -> str:
    """What the lay of a cloth is called among the leaves of its slip."""
    return f"lay {key}"


def sentence(why: object) -> str:
    """A sentence without the place in the file, which the app does not show."""
    lines = [
        line.removeprefix("the slip: ").removeprefix("the slip, ")
        for line in str(why).splitlines()
    ]
    text = ". ".join(x[:1].upper() + x[1:] for x in lines)
    return text if text.endswith(".") else f"{text}."


def kept_lay(leaves: Leaves, key: str) -> "KeptLay | None":
    """The lay of a cloth as it was kept, unless it was not, or cannot be read."""
    from clothwright.lay import LayError
    from clothwright.lay.kept import read_kept

    text = leaves.leaf(leaf_name(key))
    try:
        return read_kept(text) if text else None
    except LayError:
        return None
