"""A tailored sleeve of two pieces: a top sleeve, and an undersleeve that is hidden
(transformations 4).

A straight sleeve is cut plumb in front and behind, the two strips are taped together at
the seam under the arm, and both pieces get new seams that follow the bent arm.
"""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import replace
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.sleeve_lower import LEAST_BELOW, WIDTHS
from clothwright.blocks.trial import by_trial
from clothwright.curves import (
    Path,
    Point,
    Vector,
    direction,
    distance,
    mirror_in,
    unit,
)
from clothwright.features.about import About, Place
from clothwright.features.base import Feature, Number, Rank, Stage, Words
from clothwright.features.chains import Chains
from clothwright.features.sleeves.about import SLEEVE_HEM
from clothwright.features.sleeves.sleeve_joints import two_piece_joints
from clothwright.features.sleeves.sleeve_lengths import long_where_left_out
from clothwright.features.sleeves.sleeve_seams import two_piece_seams
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    InnerLine,
    PaperError,
    Run,
    Seam,
    Sheet,
    Verb,
    cut,
    meetings,
    redraw,
    spot_on,
    tape,
)
from clothwright.rules import Given, Hand, Kind, Numbers, Rule, RuleError, RuleTable
from clothwright.truing import Joint
from clothwright.units import Unit
from clothwright.units.fields import Length, Ratio

_SRC = "transformations 4"

TWO = RuleTable("two-piece sleeve")

HOLLOW, FORWARD = 1.0, 1.0
"""The front is hollowed so far at the elbow, and comes so far forward at the wrist, cm
(common practice, no source)."""


@TWO.rule(
    "below",
    "length of the sleeve below the elbow",
    source=_SRC,
    key="below_elbow",
    formula="lh − h − yE",
)
def _below(under_arm: float, y_E: float, h_cap: float, tp: float) -> float:
    if tp > 0.05:
        raise RuleError(
            "a two-piece sleeve is narrowed in its own two seams: leave the taper of "
            "the set-in sleeve out"
        )
    if under_arm - y_E < 2 * LEAST_BELOW:
        raise RuleError(
            f"a two-piece sleeve goes on well below the elbow: set its length to "
            f"{h_cap + y_E + 2 * LEAST_BELOW:.1f} cm or more, or its reach to the wrist"
        )
    return under_arm - y_E


@TWO.rule(
    "forward",
    "end of the front seam before the fold",
    source=_SRC,
    key="two_forward",
    formula="from 1 cm behind it at the elbow to 1 cm before it at the wrist, as far "
    "down as the sleeve goes",
)
def _forward(below_elbow: float, AL: float, SE: float) -> float:
    share = min(1.0, below_elbow / (AL - SE - 0.5))
    return (HOLLOW + FORWARD) * share - HOLLOW


class TwoPieceSleeve(Feature):
    """Top sleeve and undersleeve, shaped at the elbow in both seams."""

    kind: Literal["two pieces"] = "two pieces"
    title: ClassVar[str] = "Two-piece sleeve"
    sentence: ClassVar[str] = (
        "The sleeve is cut in [two pieces], the front seam {front} under the arm, "
        "{wrist} wide at the wrist."
    )
    page: ClassVar[int] = 2
    pieces: ClassVar[tuple[About, ...]] = (
        *(About(c, Place.SLEEVE, ("sleeve",), SLEEVE_HEM) for c in ("ST", "SU")),
        *(About(c, shown=("sleeve",)) for c in ("strip F", "strip B")),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S32": "front seam of a two-piece sleeve",
        "S33": "back seam of a two-piece sleeve",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"sleeve hem", "sleeve in two"})
    needs: ClassVar[dict[str, str]] = {
        "straight sleeve": 'it is cut of a straight sleeve; set elbow = "straight" of '
        'the "set-in sleeve": its two seams shape the elbow'
    }
    clashes: ClassVar[dict[str, str]] = {
        "sleeve hem": "a sleeve has one kind of hem",
        "sleeve end": "a two-piece sleeve is hemmed; leave the band or cuff off",
        "sleeve cap": "a two-piece sleeve has a plain cap; leave the puffed cap off",
    }

    front: Annotated[
        Length | None,
        Number(
            "two_front",
            "front seam",
            "top sleeve beyond the front fold",
            _SRC,
            2.0,
            0.75,
            1.0,
            3.5,
            (1.5, 2.5),
        ),
    ] = None
    back: Annotated[
        Ratio | None,
        Number(
            "two_back",
            "back seam",
            "back seam from the underarm, share of the back width",
            _SRC,
            0.37,
            None,
            0.28,
            0.48,
            (0.33, 0.4),
            Kind.RATIO,
        ),
    ] = None
    wrist: Annotated[
        Length | None,
        Number(
            "Ww",
            "Ww",
            "width of the sleeve at the wrist",
            "blocks B10",
            low=12.0,
            high=50.0,
        ),
    ] = None
    ease: Annotated[
        Length | None,
        Number(
            "two_ease",
            "back ease",
            "top sleeve eased onto the undersleeve at the elbow",
            _SRC,
            0.8,
            0.3125,
            0.0,
            1.5,
            (0.6, 1.0),
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (TWO, WIDTHS)

    def rewritten(
        self,
        rules: Mapping[str, Rule],
        given: Collection[str],
    ) -> Mapping[str, Rule]:
        """A sleeve whose length is left out goes to the wrist."""
        return long_where_left_out(rules, given)

    def given(self, unit: Unit) -> Iterable[Given]:
        yield from super().given(unit)
        name = "taper of a straight sleeve, each side"
        yield Given("tp", "tp", name, Kind.LENGTH, 0.0, Hand.DEFAULT, _SRC)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.SLEEVE_HEM, "the two pieces of the sleeve", _draft),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return two_piece_seams(t, n)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return two_piece_joints(sheet)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        if n.We < n.EL + 2.5 - 1e-6:
            yield Finding(
                "SL9",
                Severity.WARN,
                f"The sleeve is {n.We:.1f} cm round at the elbow, less than 2.5 cm "
                "more than the bent arm.",
                "We",
                "Make it wider there.",
                {"We": n.We, "EL": n.EL},
            )


def _draft(d: Drafting) -> None:
    """Cut the sleeve SL in front and behind, tape the strips, shape the seams."""
    n = d.n
    d.part = "sleeve"
    sheet, at_front, at_back = _cut(d)
    d.lay(
        Verb.CUT,
        sheet,
        "ST, strips",
        "plumb from the cap to the hem, once beyond the front fold and once behind",
        amounts=(("beyond the middle of the front", "two_front"),),
        detail=f"behind at {n.two_back:g} of the back width from the underarm",
    )
    under = Seam(
        "strips",
        "strips",
        (Run("strip F", "underarm front"),),
        (Run("strip B", "underarm back", True),),
    )
    sheet = tape(sheet.sew(under), "strips", code="SU", name="Undersleeve")
    level = InnerLine("biceps line", Path.line(Point(-60.0, 0.0), Point(60.0, 0.0)))
    sheet = sheet.put(replace(sheet.piece("SU"), lines=(level,)))  # it was in two
    d.lay(Verb.TAPE, sheet, "SU", "the two strips at the seam under the arm")
    fold = n.b_F / 2
    turned_over = mirror_in(Point(fold, 0.0), Point(fold, 1.0))
    lines = _Lines(n, at_front, at_back)
    top = lines.front(n.two_front), lines.back(-1)
    below = lines.front(-n.two_front), lines.back(1)
    hem = Path.line(top[0].end, top[1].end)
    sheet = redraw(
        sheet,
        "ST",
        ["front seam", "hem", "back seam"],
        [
            Edge("front seam", top[0]),
            Edge("hem", hem, EdgeKind.FINISHED),
            Edge("back seam", top[1].reversed()),
        ],
    )
    front, back = (path.moved(turned_over) for path in below)
    sheet = redraw(
        sheet,
        "SU",
        ["back seam", "hem 2", "hem", "front seam"],
        [
            Edge("back seam", back),
            Edge("hem", Path.line(back.end, front.end), EdgeKind.FINISHED),
            Edge("front seam", front.reversed()),
        ],
    )
    d.lay(
        Verb.REDRAW,
        sheet,
        "ST, SU",
        "both seams of both pieces: the front hollowed at the elbow and forward at the "
        "wrist, the back round at the elbow; the hem square to the front",
        amounts=(
            ("wide at the elbow", "We"),
            ("at its end", "hem_sleeve"),
            ("of hollow at the elbow", HOLLOW),
            ("forward at its end", "two_forward"),
        ),
        lines=top,
    )


_MISSED = (
    "the {0} seam of the two-piece sleeve lies beside the cap or the hem: set it ({0} "
    "seam) nearer to the middle, or make the sleeve wider (e)"
)


def _cut(d: Drafting) -> tuple[Sheet, Point, Point]:
    """The sleeve cut in three; where the two cuts meet the cap."""
    n, sl = d.n, d.sheet.piece("SL")
    low = n.y_E + n.below_elbow + 10.0

    def cut_at(x: float, cap: str) -> Path:
        plumb = Path.line(Point(x, -60.0), Point(x, low))
        top, foot = (
            meetings(plumb, sl.edge(e).path, _MISSED.format(cap.split()[1]))[0][0]
            for e in (cap, "hem")
        )
        return Path.line(plumb.at_length(top), plumb.at_length(foot))

    front = cut_at(n.b_F / 2 + n.two_front, "cap front")
    back = cut_at(-n.b_B * (1 - n.two_back), "cap back").reversed()
    sheet = cut(
        d.sheet,
        "SL",
        front,
        spot_on(sl, "cap front", front.start),
        spot_on(sl, "hem", front.end),
        edge="front seam",
        seam="front seam",
        seam_name="front seam",
        into=(("strip F", "Front strip"), ("rest", "Sleeve")),
    )
    rest = sheet.piece("rest")
    sheet = cut(
        sheet,
        "rest",
        back,
        spot_on(rest, "hem", back.start),
        spot_on(rest, "cap back", back.end),
        edge="back seam",
        seam="back seam",
        seam_name="back seam",
        into=(("strip B", "Back strip"), ("ST", "Top sleeve")),
    )
    return sheet, front.start, back.end


class _Lines:
    """The seams as they lie when the sleeve is folded flat: top and undersleeve differ
    only by what a seam is shifted to one side and the other."""

    def __init__(self, n: Numbers, at_front: Point, at_back: Point) -> None:
        self.n, self.at_front, self.at_back = n, at_front, at_back
        fold = n.b_F / 2
        self.elbow = Point(fold - HOLLOW, n.y_E)
        low = Point(fold + n.two_forward, n.y_E + n.below_elbow)
        self.down = direction(self.elbow, low)
        behind = Vector(-self.down.y, self.down.x)
        self.wrist = low - self.down * (behind.y * n.hem_sleeve / 4)
        self.wrist_back = self.wrist + behind * (n.hem_sleeve / 2)
        self.bulge = self._bulge()

    def front(self, aside: float) -> Path:
        """The front seam, `aside` of the fold towards the front."""
        shift = Vector(aside, 0.0)
        fold = Point(self.n.b_F / 2, 0.0) + shift
        top = Point(fold.x, self.at_front.y)
        elbow, wrist = self.elbow + shift, self.wrist + shift
        way = unit(direction(fold, elbow) + self.down)
        reach = self.n.y_E
        on = distance(elbow, wrist)
        return (
            Path.line(top, fold)
            + Path.cubic(
                fold,
                fold + Vector(0.0, 0.35 * reach),
                elbow - way * (0.35 * reach),
                elbow,
            )
            + Path.cubic(
                elbow, elbow + way * (0.3 * on), wrist - self.down * (0.3 * on), wrist
            )
        )

    def back(self, side: int, bulge: float | None = None) -> Path:
        """The back seam of the top sleeve (−1) or of the undersleeve (1)."""
        n = self.n
        fold = -n.b_B / 2
        off = abs(self.at_back.x - fold)
        top = Point(fold + side * off, self.at_back.y)
        aside = side * (self.bulge if bulge is None else bulge)
        elbow = Point(self.elbow.x - n.We / 2 + aside, n.y_E)
        way = unit(direction(top, elbow) + direction(elbow, self.wrist_back))
        first, last = distance(top, elbow), distance(elbow, self.wrist_back)
        return Path.cubic(
            top, top + Vector(0.0, 0.35 * first), elbow - way * (0.3 * first), elbow
        ) + Path.cubic(
            elbow,
            elbow + way * (0.3 * last),
            self.wrist_back - self.down * (0.35 * last),
            self.wrist_back,
        )

    def _bulge(self) -> float:
        """How far the two back seams lie apart at the elbow, each from the fold, so
        that the top one is longer by its ease."""

        def over(bulge: float) -> float:
            longer = self.back(-1, bulge).length - self.back(1, bulge).length
            return longer - self.n.two_ease

        found = by_trial(over, -3.0, 6.0)
        if found is None:
            raise PaperError(
                "no back seam of the two pieces has this ease; leave back and ease of "
                "the two pieces to their usual amounts"
            )
        return found
