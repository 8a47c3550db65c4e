"""Contour waistband: the top of a skirt or of trousers with its darts closed, cut off
as a shaped band, or one shaped to the body over a flared skirt (transformations §8)."""

from collections.abc import Callable, Collection, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks import trousers
from clothwright.blocks.skirt import BACK, FRONT, waist_names
from clothwright.curves import Path, left_normal
from clothwright.features.about import About, Place
from clothwright.features.base import Cuts, Feature, Number, Rank, Stage
from clothwright.features.chains import Chains
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import Operation, Work, tape_on
from clothwright.features.roles import Role
from clothwright.features.skirts.about import GORE
from clothwright.features.skirts.closed_top import below, shortest_dart, top_of
from clothwright.features.skirts.contour_flared import (
    BY_HEM_BELOW,
    FLARED_BAND,
    GORE_BAND,
    draft_over_circle,
    draft_over_gores,
    feet,
)
from clothwright.features.skirts.skirt_seams import waist_chain
from clothwright.features.skirts.skirt_sewing import contour_operations
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    InnerLine,
    PaperError,
    Piece,
    Run,
    Seam,
    SeamKind,
    Sheet,
    Verb,
    redraw,
    straight,
)
from clothwright.rules import Numbers, Rule
from clothwright.units.fields import Length

_SRC = "transformations §8"

BANDS = {
    FRONT: "WCF",
    BACK: "WCB",
    trousers.FRONT: "WCF",
    trousers.BACK: "WCB",
}
"""Code of the band of each piece of a skirt or of trousers."""

_NAMES = {"WCF": "Front band", "WCB": "Back band"}

_PARTS = {
    FRONT: "skirt front",
    BACK: "skirt back",
    trousers.FRONT: "trouser front",
    trousers.BACK: "trouser back",
    GORE: "gore",
}

_CODES = (*_NAMES, GORE_BAND)

_LEFT_OF_DART = 2.5
"""Least that is left of a dart below the band, cm; what is shorter ends in a bubble
(common practice)."""


class ContourBand(Feature):
    """Shaped band, cut off the top."""

    kind: Literal["contour waistband"] = "contour waistband"
    title: ClassVar[str] = "Contour waistband"
    sentence: ClassVar[str] = (
        "The top is a [shaped band], {depth} deep, its darts closed."
    )
    pieces: ClassVar[tuple[About, ...]] = tuple(
        About(code, Place.CONTOUR, ("waistband",)) for code in ("WCF", "WCB")
    ) + (
        About(
            GORE_BAND,
            Place.CONTOUR,
            ("waistband",),
            {"end": Role.SIDE, **{f"foot {i}": Role.WAIST for i in range(1, 7)}},
        ),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S39": "contour waistband, its seam and its upper edge",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"waist finish", "band", "shaped band"})
    needs: ClassVar[dict[str, str]] = {
        "shaped top": "a contour waistband is the top of a straight, a gored or a "
        "circle skirt, or of trousers"
    }
    clashes: ClassVar[dict[str, str]] = {
        "waist finish": "the waist is finished one way only",
        "pockets": "pockets that begin at the waist need a straight waistband",
    }

    depth: Annotated[
        Length | None,
        Number(
            "h_contour",
            "hc",
            "depth of the shaped band",
            _SRC,
            5.0,
            2.0,
            3.0,
            10.0,
            (4.0, 8.0),
        ),
    ] = None

    def rewritten(
        self,
        rules: Mapping[str, Rule],
        given: Collection[str],
    ) -> Mapping[str, Rule]:
        """A skirt from a circle begins at the foot of the band."""
        if "r_circle" not in rules:
            return {}
        by_hem = BY_HEM_BELOW.rules if "M" in rules else {}
        return {**FLARED_BAND.rules, **by_hem}

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.FACING, "the shaped band", _draft),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return _of_gores(t) if GORE_BAND in t.sheet.pieces else _bands(t, n)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        both = ("shell", "interlining")
        return {
            code: Cuts("2 on fold", 2, both)
            if sheet.piece(code).fold
            else Cuts("4 (2 pairs)", 4, both)
            for code in _CODES
            if code in sheet.pieces
        }

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        yield (
            "The shaped band is its own facing: cut it twice, tape its upper edge, and "
            "run the zip up to it."
        )

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        yield Notion(Article.HOOK, 1, "above the zip")
        yield Notion(Article.TAPE, 1, "for the upper edge", length=self._tape(sheet))

    def taped(self, sheet: Sheet) -> Iterable[Run]:
        on = (sheet.piece(code) for code in _CODES if code in sheet.pieces)
        return (Run(p.code, e.name) for p in on for e in p.edges if "waist" in e.name)

    def _tape(self, sheet: Sheet) -> float:
        return 2 * sheet.chain_length(self.taped(sheet))

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        long = self._tape(sheet)
        yield tape_on("upper edge of the shaped band", long, 1, fmt, Work.READY)
        yield from contour_operations(sheet)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        least = shortest_dart(sheet)
        if least is not None and least < _LEFT_OF_DART:
            yield Finding(
                "F4",
                Severity.REFUSE if least < 1.0 else Severity.WARN,
                f"Below the shaped band (hc) only {least:.1f} cm of a dart is left.",
                "hc",
                "Make the band less deep, or the darts longer.",
                {"left": least, "hc": n.h_contour},
            )


def _draft(d: Drafting) -> None:
    """Trace the bands with the darts closed, then cut the skirt back to their foot."""
    n = d.n
    if "w_foot" in n:
        draft_over_circle(d)
        return
    if GORE in d.sheet.pieces:
        _cut_back(d, GORE)
        draft_over_gores(d)
        return
    least = shortest_dart(d.sheet)
    for code, band in BANDS.items():
        if code not in d.sheet.pieces:
            continue
        d.part = "waistband"
        skirt = d.sheet.piece(code)
        piece = top_of(skirt, n.h_contour, band, _NAMES[band], square=True)
        foot = piece.edge("free")
        piece = piece.with_edges(
            Edge("foot of band", foot.path, EdgeKind.SEAM) if e is foot else e
            for e in piece.edges
        )
        if piece.has("fly"):
            piece = _with_lap(piece, n.lap_band)
        d.lay(
            Verb.TRACE,
            d.sheet.put(piece),
            band,
            piece.name.lower(),
            amounts=(("deep", "h_contour"),),
            detail=f"the top of the {skirt.name.lower()}"
            + (" with the darts closed" if least is not None else ""),
            over=(skirt.outline,),
        )
        _cut_back(d, code)


def _cut_back(d: Drafting, code: str) -> None:
    """The upper edge of what hangs from the band, at the band's foot."""
    deep = d.n.h_contour
    sheet, skirt = d.sheet, d.sheet.piece(code)
    drawn = []
    for name in (e.name for e in skirt.edges if e.name in waist_names(2)):
        up, down = (e.path for e in (skirt.before(name), skirt.after(name)))
        line = below(skirt.edge(name).path, deep, up, down, square=True)
        if line is None:
            raise PaperError(
                "the shaped band (hc) is deeper than the darts are long: make it less "
                "deep"
            )
        sheet = redraw(sheet, code, [name], [Edge(name, line)])
        drawn.append(line)
    d.part = _PARTS[code]
    darted = len(drawn) > 1
    d.lay(
        Verb.REDRAW,
        sheet,
        f"{code}.waist",
        f"upper edge of the {skirt.name.lower()}, below the band",
        amounts=(("below the waist", "h_contour"),),
        detail="along it, each dart cut back" if darted else "along it",
        lines=tuple(drawn),
    )


def _with_lap(piece: Piece, wide: float) -> Piece:
    """The front band with its underlap beyond the fly, as wide as the fly's shield; the
    right band is cut off at the centre front."""
    fly = piece.edge("fly").path
    a, b = fly.start, fly.end
    out = left_normal(fly.start_direction) * wide
    done = EdgeKind.FINISHED
    lap = (
        straight("top of lap", a, a + out, done),
        straight("end", a + out, b + out, done),
        straight("underlap", b + out, b, done),
    )
    loop = [e for e in piece.rolled_to("fly") if e.name != "fly"]
    return piece.with_edges((*lap, *loop)).with_lines(
        InnerLine("CF, the right band ends here", Path.line(b, a))
    )


def _of_gores(t: Chains) -> list[Seam]:
    """The shaped band to each gore, and to itself as its facing."""
    even, out = Ease.about(0.0, 0.05), []
    for i in range(1, feet(t.sheet) + 1):
        gore, foot = (
            t.chain((GORE, "waist", False)),
            t.chain((GORE_BAND, f"foot {i}", True)),
        )
        name = f"shaped band to gore {i}"
        out.append(Seam(f"S39.{i}", name, gore, foot, "seam", "next seam", even))
    top = t.chain((GORE_BAND, "waist", False))
    name, ends = "shaped band, upper edge", ("opening", "fold")
    out.append(Seam("S39.1t", name, top, top, *ends, even, kind=SeamKind.TWIN))
    return out


def _bands(t: Chains, n: Numbers) -> list[Seam]:
    """Each shaped band to its half, and to the same band as its facing."""
    out: list[Seam] = []
    halves = [(c, b) for c, b in BANDS.items() if {c, b} <= set(t.sheet.pieces)]
    for i, (code, band) in enumerate(halves, 1):
        says, ease = t.sheet.piece(band).name.lower(), Ease.about(0.0, 0.05)
        ends = ("centre", "side")
        left = waist_chain(t, code, outwards=True)
        front = band == BANDS[FRONT]
        right = t.chain((band, "foot of band", not front))
        name = t.sheet.piece(code).name.lower()
        stretched = n.by_S / 4 if "w_foot" in n else 0.0  # the bias below the band
        on = Ease.about(stretched, 0.05)
        out.append(Seam(f"S39.{i}", f"{says} to the {name}", left, right, *ends, on))
        top = t.chain((band, "waist", front))
        out.append(
            Seam(
                f"S39.{i}t",
                f"{says}, upper edge",
                top,
                top,
                *ends,
                ease,
                kind=SeamKind.TWIN,
            )
        )
    return out
