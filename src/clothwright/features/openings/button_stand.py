"""A button stand at the centre front or the centre back (transformations 7)."""

from collections.abc import Callable, Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.features.about import About, Place
from clothwright.features.base import Feature, Number, Rank, Shown, Stage, useless
from clothwright.features.bodice.centre_back import CLOSED
from clothwright.features.bodice.front_dart import as_drafted
from clothwright.features.chains import Chains
from clothwright.features.linings.about import FACINGS
from clothwright.features.notions import Notion
from clothwright.features.openings.button_findings import buttons, stand_findings
from clothwright.features.openings.button_row import ButtonRow
from clothwright.features.openings.button_rules import DOUBLE, SINGLE, STAND
from clothwright.features.openings.button_sewing import (
    button_notions,
    button_operations,
)
from clothwright.features.openings.cut_on import INTERLINING, fold_on
from clothwright.features.openings.fastener_row import fastened, row_of
from clothwright.features.openings.stand_band import BAND, band_seams, lay_band
from clothwright.features.openings.stand_button import on_stand
from clothwright.features.openings.stand_edging import Edging
from clothwright.features.openings.stand_pieces import (
    BACK,
    FRONT,
    Centre,
    below_waist,
    led_down,
    with_stand,
)
from clothwright.features.openings.stand_seams import STAND_SEAMS, stand_seams
from clothwright.features.operations import Operation
from clothwright.features.roles import Role
from clothwright.findings import Finding
from clothwright.paper import Drafting, PaperError, Seam, Sheet, Verb
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations 7"

_SHELL = ("FC", "F", "BC", "B")
_EDGES = tuple(f"{c}.{e}" for e in ("stand", "neck stand") for c in (*_SHELL, "BD"))
_FEET = tuple(f"{c}.{e}" for c in ("FF", "BF", *_SHELL) for e in ("foot", "lower"))
"""Where a stand is seen, and how wide its facing is."""


class Where(Enum):
    """Which centre line opens."""

    FRONT = "in front"
    BACK = "at the back"


class Rows(Enum):
    """How far it laps over."""

    SINGLE = "single-breasted"
    """One row of buttons, on the centre line."""

    DOUBLE = "double-breasted"
    """Two rows, one to each side of it."""


class Lie(Enum):
    """How the buttonholes lie."""

    USUAL = "as is usual"
    """Across; along the line in a band."""

    ACROSS = "across"
    """From just beyond the line inwards: they hold under strain."""

    ALONG = "along the line"
    """On the line, as in a shirt's narrow stand."""


class AtWaist(Enum):
    """What closes the waist."""

    BUTTON = "a button"
    """Just above the waist seam: no buttonhole can be worked through it."""

    HOOK = "a hook, for a belt"
    """No button where a belt lies."""


class ButtonStand(Feature):
    """Button stand with its facing, from the neck to the hem."""

    kind: Literal["button stand"] = "button stand"
    title: ClassVar[str] = "Button stand"
    sentence: ClassVar[str] = (
        "It closes {where} over a [button stand] {stand} wide, {edge}, {rows}."
    )
    shows: ClassVar[Shown] = {
        "b": _EDGES,
        "bf": _FEET,
        "b spacing": _EDGES,
        "b hem": ("PF.stand", "PFC.stand", "PB.stand", "PBC.stand", *_EDGES),
    }
    pieces: ClassVar[tuple[About, ...]] = (
        *FACINGS,
        About("FFP", Place.STAND, ("facing",), cloths=("shell", "interlining")),
        About("BFP", Place.STAND, ("facing",), cloths=("shell", "interlining")),
        *(
            About(
                code,
                Place.STAND,
                ("facing",),
                others=Role.INTERLINING,
                cloths=("interlining",),
            )
            for code in INTERLINING.values()
        ),
        About(
            BAND,
            Place.PLACKET,
            ("front", "back"),
            others=Role.BAND,
            cloths=("shell", "interlining"),
        ),
    )
    seams: ClassVar[Mapping[str, str]] = STAND_SEAMS
    gives: ClassVar[frozenset[str]] = frozenset(
        {"button stand", "closure", "opening", "dress opening"}
    )
    needs: ClassVar[dict[str, str]] = {
        "waist line": "a button stand runs down a fitted top; add a waist seam, or a "
        '"torso" to cut it in one',
        "inside finish": 'its facing joins that of the neck; add a "neck facing", a '
        '"facing", or a collar whose stand covers that seam',
    }
    clashes: ClassVar[dict[str, str]] = {
        "closure": "a top closes in one place; leave the other closing off",
        "open back": "a back that stands open needs no buttons in front; leave one "
        "of the two off",
        "vent": "a vent is cut in a centre back seam, which a top that buttons lacks; "
        'take a "side slit", or leave it off',
        "lining to the edge": "a button stand has a facing behind it; line below the "
        "facing",
        "empire seam": "a button stand is not yet led over an empire seam; take a "
        "princess line or darts",
    }

    where: Where = Where.FRONT
    rows: Rows = Rows.SINGLE
    edge: Edging = Edging.FACED
    lie: Lie = Lie.USUAL
    at_waist: AtWaist = AtWaist.BUTTON
    button: Annotated[
        Length | None,
        Number(
            "d_button",
            "d button",
            "diameter of the buttons of the stand",
            _SRC,
            1.5,
            0.625,
            0.8,
            4.0,
            (1.0, 2.8),
        ),
    ] = None
    stand: Annotated[
        Length | None,
        Number(
            "b_stand",
            "b",
            "button stand beyond the centre line",
            _SRC,
            low=0.8,
            high=12.0,
            usual=(1.3, 9.0),
        ),
    ] = None
    spacing: Annotated[
        Length | None,
        Number(
            "b_spacing",
            "b spacing",
            "wanted distance from button to button",
            _SRC,
            8.0,
            3.0,
            3.0,
            16.0,
            (7.0, 10.0),
        ),
    ] = None
    above_hem: Annotated[
        Length | None,
        Number(
            "b_hem",
            "b hem",
            "last button at least so far above the hem",
            _SRC,
            10.0,
            4.0,
            3.0,
            60.0,
            (8.0, 12.0),
        ),
    ] = None
    facing: Annotated[
        Length | None,
        Number(
            "b_facing",
            "bf",
            "facing of the button stand inside the centre line",
            _SRC,
            low=2.0,
            high=14.0,
        ),
    ] = None

    @property
    def centre(self) -> Centre:
        """The centre line that opens."""
        return FRONT if self.where is Where.FRONT else BACK

    @property
    def across(self) -> bool:
        """True for buttonholes that lie across."""
        if self.lie is Lie.USUAL:
            return self.edge is not Edging.BAND
        return self.lie is Lie.ACROSS

    def _row(self, n: Numbers) -> ButtonRow:
        hook = self.at_waist is AtWaist.HOOK
        return row_of(n, self.centre, across=self.across, belt=hook)

    def provides(self) -> frozenset[str]:
        front = self.where is Where.FRONT
        words = {"front opening" if front else "back opening"}
        made = {Edging.CUT_ON: {"cut-on facing"}, Edging.BAND: {"band"}}
        double = {"two rows"} if self.rows is Rows.DOUBLE else set()
        return self.gives | words | double | made.get(self.edge, set())

    def forbids(self) -> dict[str, str]:
        if self.where is Where.BACK:
            return self.clashes
        return {
            **self.clashes,
            "wrap": "fronts that cross are not buttoned at the centre; leave one of "
            "the two off",
            "cowl": "a cowl falls over the centre front; button it at the back",
            "winding neck": "a sweetheart or a keyhole does not run on over a button "
            "stand; take another neck, or button it at the back",
        }

    def tables(self) -> tuple[RuleTable, ...]:
        return (STAND, SINGLE if self.rows is Rows.SINGLE else DOUBLE, CLOSED)

    def stages(self) -> tuple[Stage, ...]:
        if self.edge is Edging.BAND:
            return (Stage(Rank.STAND, "the band", self._draw_band),)
        stand = Stage(Rank.STAND, "the button stand", self._draw)
        if self.edge is Edging.FACED:
            return (stand,)
        fold = Stage(Rank.CUT_ON, "the facing cut on", self._fold_on)
        return (stand, fold)

    def _fold_on(self, d: Drafting) -> None:
        fold_on(d, self.centre)

    def _draw_band(self, d: Drafting) -> None:
        """Cut front or back to the band; draw the band; mark the buttons."""
        n, c, sheet = d.n, self.centre, d.sheet
        if self.rows is not Rows.SINGLE:
            raise PaperError(
                "a band is sewn on for one row of buttons: set rows = "
                f'"{Rows.SINGLE.value}", or edge = "{Edging.FACED.value}"'
            )
        upper, lower = c.on(sheet, c.upper), c.on(sheet, c.lower)
        shell = sheet.piece(upper)
        hung = sheet.piece(lower) if lower else None
        waist = shell.edge(c.edge).length
        row = self._row(n)
        found = row.places(n, shell, hung)
        lay_band(d, c)
        at = (*found.upper, *(waist + y for y in found.lower))
        piece = row.marked(d.sheet.piece(BAND), n, at, 1)
        row.lay(d, d.sheet.put(piece), row.first(n, shell), len(at))

    def _draw(self, d: Drafting) -> None:
        """Lead the facing down; set every piece out; mark the buttons."""
        n, c = d.n, self.centre
        sheet = d.sheet
        upper, lower = c.on(sheet, c.upper), c.on(sheet, c.lower)
        was = as_drafted(sheet) if upper == "F" else sheet.piece(upper)
        facing = led_down(sheet.pieces.get(c.facing), was, c, n.b_facing)
        shell = with_stand(sheet.piece(upper), c, n.b_stand)
        new = [shell, with_stand(facing, c, n.b_stand, shell)]
        hung = sheet.piece(lower) if lower else None
        if hung is not None:
            strip = below_waist(
                hung,
                c,
                facing.edge("foot").length,
                f"{c.words.capitalize()} facing, lower",
            )
            skirt = with_stand(hung, c, n.b_stand)
            new += [skirt, with_stand(strip, c, n.b_stand, skirt)]
        row = self._row(n)
        found = row.places(n, sheet.piece(upper), hung)
        new[0] = row.marked(new[0], n, found.upper, 1)
        if hung is not None:
            new[2] = row.marked(new[2], n, found.lower, 1 + len(found.upper))
        d.part = c.words
        d.lay(
            Verb.REDRAW,
            d.sheet.put(*new[::2]),
            ", ".join(p.code for p in new[::2]),
            f"button stand at the centre {c.words}",
            amounts=(("wide", "b_stand"),),
            detail="the neck, the waist and the hem run on to its edge",
            lines=tuple(p.edge("stand").path for p in new[::2]),
        )
        count = len(found.upper) + len(found.lower)
        row.lay(d, d.sheet, row.first(n, was), count)
        d.part = "facing"
        d.lay(
            Verb.TRACE,
            d.sheet.put(*new[1::2]),
            ", ".join(p.code for p in new[1::2]),
            f"facing led down the {c.words} edge",
            amounts=(
                ("inside the centre line", "b_facing"),
                ("and beyond it", "b_stand"),
            ),
            detail="its free edge turns from the neck's into a line beside the centre; "
            "below the waist it is a strip of what hangs there",
        )

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return (*stand_seams(t), *band_seams(t))

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        if fastened(n):  # told by what takes the buttons' place
            return
        which = "front" if self.where is Where.FRONT else "back"
        yield (
            f"Right over left: work the buttonholes in the right {which} only, sew the "
            f"buttons to the crosses of the left {which} only."
        )
        if on_stand(sheet):
            yield (
                "So on the collar's stand: the buttonhole in its right end, the button "
                "on the cross of its left."
            )
        if self.rows is Rows.DOUBLE:
            yield (
                f"Double-breasted: the crosses of the right {which} carry buttons for "
                "show; one more button inside holds the left edge at the waist."
            )

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        return button_notions(
            n,
            sheet,
            buttons(sheet),
            self.centre.words,
            double=self.rows is Rows.DOUBLE,
            hook=self.at_waist is AtWaist.HOOK,
        )

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        return button_operations(
            n,
            sheet,
            fmt,
            self.centre,
            buttons(sheet),
            double=self.rows is Rows.DOUBLE,
            hook=self.at_waist is AtWaist.HOOK,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from stand_findings(n, sheet, self.centre, across=self.across)
        if fastened(n):
            so = "A stand that closes with press studs or hooks"
            yield from useless(self, ("button", "spacing"), so, "Leave it out.")
