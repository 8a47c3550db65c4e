"""Band at the waist of a knit skirt, stretched on (truing 2; transformations 8)."""

from collections.abc import Iterable

from clothwright.blocks.knit_skirt import passes, waist_edge
from clothwright.curves import Point
from clothwright.features.base import Number
from clothwright.features.knits.knit_band import BELOW, BandCloth, lay_band, stretch_of
from clothwright.features.skirts.elastic_casing import ELASTIC
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting
from clothwright.rules import Kind, Numbers, RuleTable

WAISTBAND = "KV"
"""Code of the piece."""

_SRC = "truing 2"
_USUAL = 0.80, 0.92
"""A band of elastic or rib is so long for each cm of its edge (truing 2)."""

HEIGHT = Number(
    "band_w", "wb", "finished width of the waistband", _SRC, 5.0, 2.0, 2.0, 15.0, (3, 8)
)
SHARE = Number(
    "waist_share",
    "rw",
    "length of the waistband, share of the waist",
    _SRC,
    low=0.6,
    high=1.0,
    usual=_USUAL,
    kind=Kind.RATIO,
)

BANDED = RuleTable("waistband of a knit skirt")
_rule = BANDED.rule
_STRETCH = stretch_of("s_waist", "sw", "waistband")


@_rule(
    "casing",
    "depth of the casing below the fold",
    source="the order",
    key="casing",
    formula="none: a band",
)
def _no_casing() -> float:
    return 0.0


@_rule(
    "rw",
    "length of the waistband, share of the waist",
    kind=Kind.RATIO,
    source=f"{_SRC}, transformations 8",
    key="waist_share",
    formula="0.85, or as much as stretches to H, at most all of it",
    low=0.6,
    high=1.0,
)
def _share(H: float, s_waist: float, knit_waist: float) -> float:
    return min(1.0, max(0.85, passes(H, s_waist) / knit_waist))


@_rule(
    "waist edge",
    "waist of the skirt, all round",
    source="blocks F1",
    key="knit_waist",
    formula="as drawn: four quarters",
)
def _edge(q_waist: float, q_hip: float, knit_raise: float, WH_knit: float) -> float:
    return 4 * waist_edge(q_waist, q_hip, knit_raise, WH_knit).length


@_rule(
    "band",
    "length of the waistband, all round",
    source=_SRC,
    key="band_waist",
    formula="the waist·rw",
)
def _length(knit_waist: float, waist_share: float) -> float:
    return knit_waist * waist_share


@_rule(
    "half band",
    "length of each half of the waistband",
    source="our own",
    key="band_half",
    formula="half of it: it has a seam at each side",
)
def _half(band_waist: float) -> float:
    return band_waist / 2


def tables_of(cloth: BandCloth | None) -> tuple[RuleTable, ...]:
    """The rules of what draws the waist in: an elastic, or a band of this cloth."""
    return (ELASTIC,) if cloth is None else (BANDED, _STRETCH[cloth])


def lay_waistband(d: Drafting) -> None:
    """Draw half of a half band, its centre on the fold (KV)."""
    d.part = "band"
    lay_band(
        d,
        WAISTBAND,
        "Waistband, front and back",
        ("Ve", "Vg"),
        Point(0.0, -BELOW - 2 * d.n.band_w),
        "band_half",
        "band_w",
        "waist",
        folded=True,
        at_end="side",
    )


def waistband_findings(n: Numbers) -> Iterable[Finding]:
    """The band passes the hip (transformations 8)."""
    opened = n.band_waist * (1 + n.s_waist / 100)
    if opened < n.H - 0.05:
        yield Finding(
            "KN17",
            Severity.REFUSE,
            f"The waistband stretches to {opened:.1f} cm and does not pass the hip (H) "
            f"of {n.H:.1f} cm.",
            "rw",
            "Cut it less short (rw), or take a cloth that stretches more (s).",
            {"band": n.band_waist, "H": n.H},
        )
