"""What an alteration is made on: the paper of one block, its numbers, and how it is
drafted again from these to be trued."""

from collections.abc import Callable
from dataclasses import dataclass

from clothwright.blocks import bodice, skirt, sleeve, trousers
from clothwright.features.base import Rank
from clothwright.features.sleeves.sleeve_pieces import draft_bent, draft_straight
from clothwright.paper import Drafting

_FRONT = "X xs yB yW a fd x_BP y_BP x_hf y_hf fw dep sigma_f theta xfw dl"
_BACK = "bd bw nr sigma_b xb y_Pd sd se Dm sway"
_SKIRT = "half_S xs_S xf_S a_S r_S db_S df_S bd_S fd_S fl_S WH L Ew"
_TROUSERS = (
    "BRe hip_F hip_B fork_F fork_B off_F tl rq cf_in cf_down KW HW yk leg sh fd_0 bd_T "
    "Ew"
)


@dataclass(frozen=True)
class Ground:
    """One block as alterations see it."""

    word: str
    """What a feature of the order must give."""

    needs: str
    """The sentence when none does."""

    numbers: frozenset[str]
    """What the block is drawn from: an alteration changes some of these, and the others
    keep their values."""

    rank: Rank
    pieces: tuple[tuple[str, str], ...]
    """Codes of its pieces, and the part of the body that each is."""

    lay: Callable[[Drafting], None]
    """Drafts the block from the numbers as they are, on what lies on the table."""


def _sleeve(d: Drafting) -> None:
    if "swing" in d.n:
        draft_bent(d, dart=d.n.elbow_ease < d.n.elbow_in)
    else:
        draft_straight(d)


BODICE = Ground(
    "bodice",
    "it alters a bodice block; add one",
    frozenset(f"half front_half sup {_FRONT} {_BACK}".split()),
    Rank.FITTING,
    (("B", "back"), ("F", "front")),
    bodice.lay,
)
SKIRT = Ground(
    "fitted skirt",
    "it alters a straight skirt; add one",
    frozenset(_SKIRT.split()),
    Rank.FITTING,
    ((skirt.BACK, "skirt back"), (skirt.FRONT, "skirt front")),
    skirt.draft,
)
TROUSERS = Ground(
    "trouser block",
    "it alters trousers; add them",
    frozenset(_TROUSERS.split()),
    Rank.FITTING,
    ((trousers.FRONT, "trouser front"), (trousers.BACK, "trouser back")),
    trousers.draft,
)
SLEEVE = Ground(
    "set-in sleeve",
    'it alters a sleeve; add a "set-in sleeve"',
    frozenset((*sleeve.ALTERED, "lh")),
    Rank.SLEEVE_FITTING,
    (("SL", "sleeve"),),
    _sleeve,
)
