"""What the lining is sewn to: itself as the shell is, the facing, the shell's edges
(first garment 15 and 21).
"""

from dataclasses import replace

from clothwright.paper import Ease, EdgeKind, Run, Seam, SeamKind, Sheet

_LOOSE = 0.5
"""A lining seam may differ from its partner by this much, cm: lining is slack."""

_JOIN = 0.5
"""Lining and facing meet along a free curve; half a centimetre eases in unseen."""


def with_lining_seams(sheet: Sheet) -> Sheet:
    """The lining is sewn as the shell is, and to the facing or the shell's edges."""
    made = []
    for s in sheet.seams:
        left, right = _lined(sheet, s.left), _lined(sheet, s.right)
        if s.kind is SeamKind.FACED or not left or not right:
            continue
        whole = all(
            abs(sheet.length(r.piece, r.edge) - sheet.length(r.piece[2:], r.edge)) < 1
            for r in (*left, *right)
        ) and (len(left), len(right)) == (len(s.left), len(s.right))
        # where the facing takes the place of a part, the rest is as long as it is
        over = sheet.chain_length(right) - sheet.chain_length(left)
        plan = s.ease.plan if whole else over
        made.append(
            Seam(
                f"L{s.code}",
                f"lining, {s.name}",
                left,
                right,
                s.start,
                s.end,
                Ease(plan, plan - _LOOSE, plan + _LOOSE),
                kind=s.kind,
            )
        )
    on = [c for c in ("L.PB", "L.PBC") if c in sheet.pieces]
    if on and sheet.piece(on[0]).has("waist on"):
        shell = sheet.seam("S22")
        made.append(replace(shell, code="LS22", left=(Run(on[0], "waist on"),)))
    for code, half, facing in (
        ("LF", ("FC", "F", "FS"), "FF"),
        ("LB", ("BS", "B", "BC"), "BF"),
    ):
        join = tuple(
            Run(f"L.{c}", "join")
            for c in half
            if f"L.{c}" in sheet.pieces and sheet.piece(f"L.{c}").has("join")
        )
        if join:
            free = sheet.edge(facing, "free")
            p = sheet.piece(facing)
            sheet = sheet.put(p.with_edge(replace(free, kind=EdgeKind.SEAM)))
            made.append(
                Seam(
                    code,
                    f"lining to {p.name.lower()}",
                    join,
                    (Run(facing, "free"),),
                    ease=Ease.about(0.0, _JOIN),
                )
            )
    sheet = sheet.sew(*made)
    return sheet.sew(*_to_shell(sheet))


def _lined(sheet: Sheet, chain: tuple[Run, ...]) -> tuple[Run, ...]:
    """The same chain on the lining, as far as it has those edges."""
    return tuple(
        Run(f"L.{r.piece}", r.edge, r.backward)
        for r in chain
        if f"L.{r.piece}" in sheet.pieces
        and sheet.piece(f"L.{r.piece}").has(r.edge)
        and sheet.edge(f"L.{r.piece}", r.edge).kind is EdgeKind.SEAM
    )


_BAGGED = (
    ("front neck", (("FC", "neck"), ("F", "neck"))),
    (
        "back neck",
        (
            ("BC", "slant"),
            ("BC", "neck"),
            ("BC", "neck side"),
            ("B", "neck"),
            ("B", "neck side"),
        ),
    ),
    ("front armhole", (("FC", "armhole"), ("F", "armhole"), ("FS", "armhole"))),
    ("back armhole", (("BC", "armhole"), ("B", "armhole"), ("BS", "armhole"))),
)
"""Chains of the shell's finished edges that a lining to the edge is bagged to."""


def _to_shell(sheet: Sheet) -> list[Seam]:
    """Lining bagged to the shell's own neck, armhole and slanted edge."""
    out = []
    for number, (name, edges) in enumerate(_BAGGED, 1):
        shell = tuple(
            Run(c, e) for c, e in edges if c in sheet.pieces and sheet.piece(c).has(e)
        )
        lining = tuple(
            Run(f"L.{r.piece}", r.edge)
            for r in shell
            if f"L.{r.piece}" in sheet.pieces
            and sheet.piece(f"L.{r.piece}").has(r.edge)
        )
        faced = shell and any(
            s.kind is SeamKind.FACED and (shell[0].piece, shell[0].edge) in s
            for s in sheet.seams
        )
        if shell and len(lining) == len(shell) and not faced:
            out.append(
                Seam(
                    f"LE{number}",
                    f"lining to shell, {name}",
                    shell,
                    lining,
                    ease=Ease(0.0, -0.5, 0.5),
                    kind=SeamKind.FACED,
                )
            )
    return out
