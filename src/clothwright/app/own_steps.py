"""Her own steps in the app: what they are, and what the next one may be made of."""

from collections.abc import Mapping
from typing import Any

from clothwright.app.slipfile import add_feature, row
from clothwright.app.words import Reading
from clothwright.order import OrderError
from clothwright.paper import EdgeKind, SeamKind
from clothwright.sheets.telling import tell

KIND = "by hand"
MOST = 200
"""Steps that one order may have."""


def behind_steps(r: Reading) -> dict[str, Any]:
    """The steps as written and as told, and the pieces, marks and seams that lie on
    the table after them."""
    written = [dict(s) for s in row(r.table, KIND).get("step", ())]
    out: dict[str, Any] = {"opens": "own steps", "name": "steps by hand"}
    out["steps"] = [
        {"say": say, "step": step}
        for say, step in zip(_told(r, written), written, strict=True)
    ]
    if r.draft is not None:
        sheet = r.draft.sheet
        out["pieces"] = [
            {
                "code": p.code,
                "name": p.name,
                "edges": [e.name for e in p.edges],
                "fold": any(e.kind is EdgeKind.FOLD for e in p.edges),
            }
            for p in sheet.pieces.values()
        ]
        out["marks"] = list(sheet.points)
        out["seams"] = [
            [s.code, s.name] for s in sheet.seams if s.kind is not SeamKind.TWIN
        ]
    return out


def _told(r: Reading, written: list[dict[str, Any]]) -> list[str]:
    plain = [f"{s.get('do', '')} {s.get('piece', '')}".strip() for s in written]
    if r.draft is None:
        return plain
    mine = [s for s in r.draft.steps if s.feature == KIND]
    if len(mine) != len(written):  # a style of the house file is shown by its name
        return plain
    return [tell(s, r.unit, r.draft.numbers, r.draft.sheet) for s in mine]


def with_steps(table: Mapping[str, Any], steps: object) -> dict[str, Any]:
    """The slip with these steps in place of those it has. Raises OrderError."""
    if not isinstance(steps, list) or not all(isinstance(s, dict) for s in steps):
        raise OrderError("the steps cannot be read")
    if len(steps) > MOST:
        raise OrderError(f"more than {MOST} steps are too many for one order")
    out = dict(table)
    if not any(f.get("kind") == KIND for f in table.get("feature", ())):
        out = add_feature(table, KIND)
    out["feature"] = [
        {"kind": KIND, "step": steps} if f.get("kind") == KIND else f
        for f in out["feature"]
    ]
    return out


def steps_of_slip(table: Mapping[str, Any]) -> list[dict[str, Any]]:
    """The steps that stand on a slip. Raises OrderError when there are none."""
    steps = list(row(table, KIND).get("step", ()))
    if not steps:
        raise OrderError("there are no steps yet to keep under a name")
    return steps
