"""What is asked of a lining: its strap, its roll, its slack (first garment 14.7, 14.8,
15)."""

from collections.abc import Iterable

from clothwright.blocks.torso import in_one
from clothwright.curves import distance
from clothwright.features.bodice.dropped import runs_below
from clothwright.features.chains import FRONT_LINE, TOP
from clothwright.features.linings.facing_checks import WIDER, roll_findings
from clothwright.features.linings.lining_edge import SLACK
from clothwright.features.linings.lining_hems import shorter_by
from clothwright.features.linings.roll import corner_finding, strap_finding
from clothwright.features.linings.sewn_halves import (
    SewnHalf,
    back_half,
    front_half,
    sewn_back,
    sewn_front,
)
from clothwright.features.linings.sleeve_lining import CAPS
from clothwright.features.skirts.slit_edges import slitted
from clothwright.features.wholes import before_yoke
from clothwright.findings import Finding, Severity
from clothwright.paper import Sheet
from clothwright.rules import Numbers
from clothwright.truing import walk

_NEAR = 0.1
"""A lining's slack may differ by this much, cm."""

_ASLANT = 0.1
"""And by this share of what its top edge is laid lower: its side lies aslant to it."""

_STRETCHED = 1.0
"""A lining's cap may be stretched in by so much all round, cm (common practice)."""

_SIDES = (
    (
        "front",
        (
            ("FS", "side"),
            ("FS", "side high"),
            ("FS", "side mid"),
            ("FS", "side low"),
            ("F", "side"),
            ("F", "side high"),
            ("F", "side mid"),
            ("F", "side low"),
        ),
    ),
    ("back", (("BS", "side"), ("B", "side"))),
)


def edge_findings(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """Every check of a lining to the edge."""
    if FRONT_LINE in sheet.lines:
        yield from top_findings(n, sheet)
    else:
        yield from _rolled_edges(n, sheet)
    lower = n.rho_l if FRONT_LINE in sheet.lines else 0.0
    yield from _slack_findings(n, sheet, lower)


def bound_findings(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """What a lining that is bound with the shell has to say."""
    if "L.SL" in sheet.pieces:  # whose underarms are raised
        return _sleeve_findings(sheet)
    return _slack_findings(n, sheet, 0.0)


def _slack_findings(n: Numbers, sheet: Sheet, lower: float) -> Iterable[Finding]:
    """Whether a lining that goes up to the shell's edges has its slack at the side; its
    top edge lies `lower` cm lower."""
    for name, edges in _SIDES:
        shell, mine = (_side(sheet, before, edges) for before in ("", "L."))
        slack = mine - shell
        right = -shorter_by(n) if in_one(sheet) else SLACK
        if any(slitted(sheet, c) for c, _ in edges):  # both end at the slit
            right = 0.0
        right -= lower
        if abs(slack - right) > _NEAR + _ASLANT * lower:
            yield Finding(
                "N1",
                Severity.REFUSE,
                f"The {name} lining is {slack:.2f} cm longer at the side than the "
                f"shell; {right:.1f} cm is right.",
                "lining",
                "Lower its lower edge by that.",
                {"slack": slack},
            )


def _side(sheet: Sheet, before: str, edges: tuple[tuple[str, str], ...]) -> float:
    """The length of a side, cm: of a half remembered whole, before a dart was led there
    or a seam cut it, as it was then."""
    length = 0.0
    for code, edge in edges:
        if f"{before}{code}" in sheet.pieces:
            piece = before_yoke(sheet, f"{before}{code}")
            length += piece.edge(edge).length if piece.has(edge) else 0.0
    return length


def _rolled_edges(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """Straps and rolls, and the corner of an open back."""
    front, back = sewn_front(sheet), sewn_back(sheet)
    rho = n.rho_l
    for half, inner, most in (
        (front, front_half(sheet, "L."), rho),
        (back, back_half(sheet, "L."), rho * (1 + WIDER)),
    ):
        name = inner.centre.name.lower()
        if inner.cut_away:  # not rolled
            continue
        narrow = strap_finding(_strap(inner), name, "lining")
        if narrow:
            yield narrow
        rolled = (inner.neck, inner.armhole, inner.slant)
        yield from roll_findings(rho, most, half, rolled, name, "lining")
    tight = corner_finding(n.rc) if back.slant is not None else None
    if tight:
        yield tight


_TOP_NEAR = 0.15
"""A top edge that is laid lower may be so much shorter, cm: the walk's bound."""


def top_findings(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """Whether the lining's top edge, laid lower by the roll, is still the shell's."""
    for piece in [p for p in sheet.pieces.values() if p.has(TOP)]:
        if f"L.{piece.code}" not in sheet.pieces:
            continue
        lost = piece.edge(TOP).length - sheet.length(f"L.{piece.code}", TOP)
        if abs(lost) > _TOP_NEAR:
            yield Finding(
                "N4",
                Severity.REFUSE,
                f"Laid lower by the roll, the top edge of the lining of the "
                f"{piece.name.lower()} is {abs(lost) * 10:.0f} mm "
                f"{'shorter' if lost > 0 else 'longer'} than the shell's.",
                "lining",
                "Make the roll (ρ lining) smaller.",
                {"lost": lost},
            )


def hung_findings(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """What a lining below the facing has to say."""
    yield from _shoulder_findings(n, sheet)
    if "L.SL" in sheet.pieces:
        yield from _sleeve_findings(sheet)
    if "L.F" not in sheet.pieces or not sheet.piece("L.F").has("leg cf"):
        return
    if runs_below(sheet.piece("F")):  # its bust dart stays at the side
        return
    p = sheet.piece("L.F")
    wide = distance(p.edge("leg cf").path.start, p.edge("leg side").path.end)
    yield Finding(
        "N2",
        Severity.NOTE,
        f"The bust dart of the front lining is closed into its waist dart, {wide:.1f} "
        "cm in all.",
        "lining",
        "Sew it as a dart, or lay it in a pleat at the waist.",
        {"dart": wide},
    )


def _shoulder_findings(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """Whether facings that end beside panel seams of the shoulder leave front and back
    alike: the same panels of both go up to it."""
    halves = (("FC", "FS"), ("BC", "BS"))
    if not all(_has(sheet, c, "shoulder") for half in halves for c in half):
        return
    front, back = (_has(sheet, f"L.{c}", "shoulder") for c in ("FC", "BC"))
    if front is not back:
        left = sheet.length("L.FC" if front else "L.BC", "shoulder")
        yield Finding(
            "N5",
            Severity.REFUSE,
            f"On the shoulder the facing ends {left:.1f} cm before the panel seam of "
            f"the {'front' if front else 'back'}, and beyond that of the other half.",
            "lining",
            "Make it (nf shoulder) 0.5 cm wider or narrower.",
        )
    elif not front:
        yield from _beyond_panel(n, sheet)


def _beyond_panel(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """Whether the lining's shoulders still go together where the facings end beyond
    both panel seams: what the back is eased in by under the facing, which has no ease,
    is then left to the little beside it."""
    seam = next((s for s in sheet.seams if s.code == "LS3a"), None)
    if seam is None:
        return
    walked = walk(sheet, seam)
    if walked.severity is Severity.REFUSE:
        yield Finding(
            "N5",
            Severity.REFUSE,
            "On the shoulder the facing ends beyond the panel seams: beside it the "
            f"lining's shoulder is {walked.left:.1f} cm long in front and "
            f"{walked.right:.1f} cm at the back, which is not eased in over so little.",
            "lining",
            "Make it (nf shoulder) "
            f"{sheet.length('FC', 'shoulder') - _BEFORE_PANEL:.1f} cm wide or less, so "
            "that it ends before them, or ease the back shoulder (se) in by less.",
            {"front": walked.left, "back": walked.right},
        )


_BEFORE_PANEL = 0.5
"""A facing that ends so far before a panel seam of the shoulder leaves a shoulder to
both panels of the lining, cm (our own)."""


def _has(sheet: Sheet, code: str, edge: str) -> bool:
    return code in sheet.pieces and sheet.piece(code).has(edge)


def _sleeve_findings(sheet: Sheet) -> Iterable[Finding]:
    """Whether the sleeve's lining goes into its armhole (transformations 6)."""
    eased = 0.0
    for code in CAPS:
        seam = sheet.seam(f"L{code}")
        eased += sheet.chain_length(seam.right) - sheet.chain_length(seam.left)
    if eased < -_STRETCHED:
        yield Finding(
            "N3",
            Severity.WARN,
            f"The cap of the sleeve lining is {-eased:.1f} cm shorter than its "
            "armhole: its underarm is raised, and the sleeve has little ease.",
            "lining",
            "Stretch it in, on the bias under the arm; or give the cap more ease.",
            {"ease": eased},
        )


def _strap(half: SewnHalf) -> float:
    """Length of a half's shoulder."""
    pieces = [half.centre] + ([half.flank] if half.flank is not None else [])
    return sum(p.edge("shoulder").length for p in pieces if p.has("shoulder"))
