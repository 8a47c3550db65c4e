"""Gored skirt of a dress: six gores whose seams meet the darts or the princess lines of
its bodice (blocks G9).

The centre front gore lies on its fold, the centre back one is in two where the back has
a zip. Each gore's waist is what the bodice has between its own seams there; at every
seam both gores take in alike over the hip, and flare alike from there.
"""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.fitted_dress import FITTED
from clothwright.blocks.gore import Gore
from clothwright.curves import Motion, Path, Point, mirror_in, shift
from clothwright.features.about import About, Place
from clothwright.features.base import (
    Feature,
    Pin,
    Rank,
    Shown,
    Stage,
    Words,
)
from clothwright.features.chains import HANGING_PANELS, Chains
from clothwright.features.operations import (
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
)
from clothwright.features.roles import Role
from clothwright.features.skirts.about import (
    HANGING_SEAMS,
    ONE_HANGS,
    PANEL_SEAMS,
    hanging_hem,
    over_high_hip,
)
from clothwright.features.skirts.gored_skirt import (
    GORED,
    GoredSkirt,
    gore_of,
    rule_gore,
)
from clothwright.features.skirts.hanging_seams import (
    hanging_joints,
    hanging_panels,
    hanging_side,
)
from clothwright.features.skirts.peplum import widest
from clothwright.features.skirts.peplum_pieces import (
    BackEnd,
    closed_end,
    share_to_panel,
)
from clothwright.features.skirts.peplum_rules import AT_EDGE, called
from clothwright.features.skirts.straight_skirt import stride
from clothwright.features.wholes import waist_in_band
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    InnerLine,
    Piece,
    Seam,
    Sheet,
    Verb,
)
from clothwright.rules import Numbers, RuleError, RuleTable
from clothwright.truing import Joint
from clothwright.units.fields import Length

_SRC = "blocks G9"

_G = GoredSkirt.numbers()

_AT_EDGE = called(AT_EDGE, "skirt")

_SEAMS = 6
"""Edges of gores on the half that take in over the hip and flare: two at the front
seam, two at the side and two at the back seam."""

GORED_DRESS = RuleTable(
    "gored skirt of a dress",
    {k: FITTED.rules[k] for k in ("AB", "H_S", "half_S", "w_SF", "w_SB", "sup_S")}
    | {k: GORED.rules[k] for k in ("y0", "hem_S")},
)
_rule = GORED_DRESS.rule


@_rule(
    "gi",
    "taken in at the waist by each side of a gore",
    source=_SRC,
    formula="sup S/6: three seams of the half, two sides each",
)
def gi(sup_S: float) -> float:
    return sup_S / _SEAMS


@_rule(
    "flare",
    "flare at each side of a gore, beyond the hip",
    source=_SRC,
    key="flare_S",
    formula="(M − H − Eh)/12",
)
def _flare(M: float, half_S: float) -> float:
    if 2 * half_S - 1e-9 > M:
        raise RuleError(
            f"the hem (M) of {M:.1f} cm is less than the hip with its ease (Eh), "
            f"{2 * half_S:.1f} cm: make the hem wider"
        )
    return (M / 2 - half_S) / _SEAMS


def _about(code: str, half: str) -> About:
    place = Place.PEPLUM_FRONT if half == "front" else Place.PEPLUM_BACK
    sewn = {"side": Role.PEPLUM_SIDE, "panel": Role.PEPLUM_SIDE}
    return About(code, place, (f"skirt {half}",), {**sewn, "hem": hanging_hem})


class GoredDressSkirt(Feature):
    """Skirt of six gores at the waist seam of a bodice."""

    kind: Literal["gored dress skirt"] = "gored dress skirt"
    title: ClassVar[str] = "Gored skirt of a dress"
    sentence: ClassVar[str] = (
        "From the waist seam hangs a skirt of six [gores], {length} long and {hem} "
        "round the hem, with {hip_ease} of ease at the hip; its seams meet the "
        "bodice's."
    )
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("length", ("PFC",), ("hem", "cf"), (0.0, 1.0)),
    )
    shows: ClassVar[Shown] = {
        "Eh": ("PFS.side",),
        "HH": ("PFS.side",),
        "M": ("PFC.hem",),
        "ease at the waist": ("PFC.waist",),
    }
    pieces: ClassVar[tuple[About, ...]] = (
        *(_about(c, "front") for c in ("PFC", "PFS")),
        *(_about(c, "back") for c in ("PBC", "PBS")),
    )
    seams: ClassVar[Mapping[str, str]] = {**HANGING_SEAMS, **PANEL_SEAMS}
    gives: ClassVar[frozenset[str]] = frozenset(
        {"skirt", "gores on a bodice", "gores", "plain hem"}
    )
    needs: ClassVar[dict[str, str]] = {
        "waist seam": "the skirt of a dress needs a waist seam",
        "dress opening": "a dress is put on through its back, side or front; add a "
        '"concealed zip", an "underarm zip" or a "button stand"',
    }
    clashes: ClassVar[dict[str, str]] = {
        "skirt": ONE_HANGS,
        "torso seam": "gores are shaped over the hip from the waist down; to a torso's "
        "seam sew a flared or a gathered skirt",
    }

    length: Annotated[Length | None, _G["length"]] = None
    hem: Annotated[Length | None, _G["hem"]] = None
    flare_from: Annotated[Length | None, _G["flare_from"]] = None
    hip_ease: Annotated[Length | None, _G["hip_ease"]] = None

    def said(self) -> str:
        if self.flare_from is not None:
            return f"{self.sentence[:-1]}; it flares from {{flare_from}} down."
        return self.sentence

    def tables(self) -> tuple[RuleTable, ...]:
        return (_AT_EDGE, GORED_DRESS)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.BELOW_WAIST, "the gores", _draft),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam | None]:
        return (hanging_side(t, n), *hanging_panels(t, n))

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return hanging_joints(sheet)

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        yield (
            f"Each side of a gore takes {fmt(n.gi)} in over the hip and flares by "
            f"{fmt(n.flare_S)}; the centres are plumb."
        )

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        yield Operation(
            Work.HANG,
            "Let the skirt hang a day, then level the hem",
            ("The seams of the gores lie a little on the bias, and may drop there.",),
        )
        hems = finished_edges(sheet, ("P",), "hem")
        if not hems:  # faced
            return
        yield Operation(
            Work.HEM,
            "Hem the skirt",
            (
                f"Level it from the floor, {fmt(n.L)} below the waist; neaten it, turn "
                "it up and fell it by hand, its fullness eased away.",
            ),
            edges=hems,
            stitch=Stitch.HAND,
            seam_type=SeamType.HEM_ONCE,
            task=Task.HEM,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from _girths(n, sheet)
        yield from stride(n, n.hem_S, opens=False)
        code, wide = widest(sheet)
        if "Cw" in n and wide > n.Cw:
            yield Finding(
                "Q3",
                Severity.WARN,
                f"{sheet.piece(code).name} is {wide:.1f} cm wide with its allowances; "
                f"the cloth is {n.Cw:.1f} cm between its selvedges.",
                code,
                "Choose a smaller hem (M).",
                {"wide": wide, "cloth": n.Cw},
            )


def half_at(sheet: Sheet, level: float) -> float:
    """Width of all gores of the half together at a level, from centre to centre, cm."""
    line = Path.line(Point(-60.0, level), Point(400.0, level))
    total = 0.0
    for code in HANGING_PANELS:
        outline = sheet.piece(code).outline
        across = [line.at_length(s).x for s, _ in line.meets(outline)]
        left, right = min(across), max(across)
        if code == "PFC":  # a stand lies beyond, a band is cut off before
            right = sheet.points["Ofc"].x
        elif code == "PBC":
            left = sheet.points["Obc"].x
        total += right - left
    return total


def _girths(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """Hip (K1), waist and hem (K2) are as asked; room over the high hip (K8)."""
    # a band, or the gap of a lacing, takes as much of both
    off = 2 * sum(waist_in_band(sheet, half) for half in ("front", "back"))
    hem = off + 2 * sum(sheet.length(c, "hem") for c in HANGING_PANELS)
    waist = off + 2 * sum(sheet.length(c, "waist") for c in HANGING_PANELS)
    for code, place, is_, aim, symbol in (
        ("K1", "hip", 2 * half_at(sheet, n.WH), 2 * n.half_S, "Eh"),
        ("K2", "waist", waist, 2 * (n.w_SF + n.w_SB), "ease at the waist"),
        ("K2", "hem", hem, n.M, "M"),
    ):
        if abs(is_ - aim) > 0.1:
            yield Finding(
                code,
                Severity.REFUSE,
                f"The {place} of the gores measures {is_:.1f} cm and should be "
                f"{aim:.1f} cm.",
                symbol,
                "Measure W, H and WH again, or choose another hem (M).",
                {"is": is_, "aim": aim},
            )
    yield from over_high_hip(2 * half_at(sheet, n.WHH) - n.HH)


# -- drafting --------------------------------------------------------------------------
_GAP = 4.0
"""Bare paper between two gores, cm."""

_OVER = mirror_in(Point(0.0, 0.0), Point(0.0, 1.0))
"""Turns a gore's seam over its centre."""


def _draft(d: Drafting) -> None:
    """From the centre back: the back gores, then the front's, the centre front at the
    right."""
    n = d.n
    end = closed_end(d.sheet)
    x = 0.0
    for half, waist in (("back", n.w_SB), ("front", n.w_SF)):
        back = half == "back"
        inner = waist * share_to_panel(d.sheet, half)
        centre, side = inner, waist - inner
        pair = [
            (f"P{half[0].upper()}C", f"Centre {half}", 2 * centre, True),
            (f"P{half[0].upper()}S", f"Side {half}", side, False),
        ]
        for code, name, wide, cut in pair if back else reversed(pair):
            d.part = f"skirt {half}"
            most = 2 * (n.gi + n.flare_S)
            gore = gore_of(n, wide, wide + 2 * n.gi, wide + most)
            reach = gore.hem / 2
            x += 0.0 if cut and back else reach
            _lay(d, gore, code, name, x, end if cut else None)
            x += 0.0 if cut and not back else reach + _GAP


def _lay(
    d: Drafting, gore: Gore, code: str, name: str, x: float, end: BackEnd | None
) -> None:
    """A gore with its centre at `x`; with an `end` only the half of it beside the
    centre of the skirt."""
    back = code[1] == "B"
    k, word = code[1:].lower(), f"{name.lower()} gore"
    onto = shift((x, 0.0))
    left = onto @ _OVER
    half_left = end is not None and not back
    seam, waist, hem = rule_gore(
        d, gore, k, word, f"{word} seam", left if half_left else onto
    )
    if end is None:
        # the panel's seam is the one towards the centre
        names = ("side", "panel") if back else ("panel", "side")
        edges: tuple[Edge, ...] = (
            Edge("waist", waist.moved(left).reversed() + waist.moved(onto)),
            Edge(names[0], seam.moved(onto)),
            Edge(
                "hem", hem.moved(onto) + hem.moved(left).reversed(), EdgeKind.FINISHED
            ),
            Edge(names[1], seam.moved(left).reversed()),
        )
    else:
        edges = _half(seam, waist, hem, left if half_left else onto, end)
    hip = [onto(gore.hip_point), left(gore.hip_point)]
    if end is not None:
        hip[half_left ^ True] = onto(Point(0.0, gore.hip_level))
    lines = (InnerLine("hip", Path.line(*hip)),)
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(Piece(code, f"{name} skirt", edges, lines=lines)),
        code,
        word,
        amounts=(
            ("along the waist", sum(e.length for e in edges if e.name == "waist")),
            ("along the hem", sum(e.length for e in edges if e.name == "hem")),
        ),
        detail="waist and hem meet the seams at right angles"
        + (
            ""
            if end is None
            else f"; its centre is the centre {'back' if back else 'front'}"
        ),
    )


def _half(
    seam: Path, waist: Path, hem: Path, onto: Motion, end: BackEnd
) -> tuple[Edge, ...]:
    """Edges of a gore's half, clockwise: the front's centre at its right, a fold."""
    waist, seam, hem = (p.moved(onto) for p in (waist, seam, hem))
    if not onto.flips:
        cb = Path.line(hem.end, waist.start)
        return (
            Edge("waist", waist),
            Edge("panel", seam),
            Edge("hem", hem, EdgeKind.FINISHED),
            Edge("cb", cb, end.kind),
        )
    return (
        Edge("waist", waist.reversed()),
        Edge("cf", Path.line(waist.start, hem.end), EdgeKind.FOLD),
        Edge("hem", hem.reversed(), EdgeKind.FINISHED),
        Edge("panel", seam.reversed()),
    )
