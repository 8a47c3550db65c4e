"""The seams and joints of a garment, asked of its features once all shapes are final
(first garment 19, 21, 22).

A feature says what it sews (`Feature.sewn`) and which corners then run on into each
other (`Feature.joints`). Here stands what belongs to none of them: that all is stated
at one time, that a dart which no panel line has taken up stays as it is, that every
piece gets its grain, and that seams run on over a button stand. Walk, notches, making
order and checks are read from what is stated. Only seams whose pieces are on the table
are.
"""

import re
from collections.abc import Iterable

from clothwright.features.base import Feature, Rank, Stage
from clothwright.features.chains import Chains
from clothwright.features.grain import with_grain
from clothwright.features.openings.stand_seams import over_stands
from clothwright.features.said import in_turn
from clothwright.paper import Drafting, Seam, SeamKind, Sheet, Verb
from clothwright.rules import Numbers
from clothwright.truing import Joint


def seams_of(features: Iterable[Feature]) -> Stage:
    """The stage that states every seam of a garment and gives its pieces their
    grain."""
    asked = in_turn(features)

    def state(d: Drafting) -> None:
        d.part = "seams"
        sheet = with_grain(d.sheet)
        kept = {s.code for s in sheet.seams if s.kind is SeamKind.DART and _open(s)}
        sheet = sheet.unsew(*(s.code for s in sheet.seams if s.code not in kept))
        t = Chains(sheet)
        by_feature = [[s for s in f.sewn(t, d.n) if s is not None] for f in asked]
        by_feature.sort(key=_number)
        seams = over_stands(sheet, (s for stated in by_feature for s in stated))
        d.lay(
            Verb.SEW,
            sheet.sew(*seams),
            "seams",
            "every seam walked and notched",
            detail="both partners together, from the end named first",
        )

    return Stage(Rank.SEAMS, "the seams", state)


def _number(stated: list[Seam]) -> int:
    """The number of the first: S5 before S23, whatever the features are called."""
    return int(_NUMBER.findall(stated[0].code)[0]) if stated else 0


_NUMBER = re.compile(r"\d+")


def _open(dart: Seam) -> bool:
    """True for a dart that no panel line has taken up."""
    words = ("leg", "dart", "pleat")
    return all(any(w in r.edge for w in words) for r in dart.runs())


def joints_of(features: Iterable[Feature], sheet: Sheet, n: Numbers) -> list[Joint]:
    """Every joint of a garment whose edges are on the table."""
    asked = in_turn(features)
    words = {word for f in asked for word in f.provides()}
    return [joint for f in asked for joint in f.joints(sheet, n, words)]
