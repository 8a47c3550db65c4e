"""The worked example of docs/adding-a-feature.md, run as it stands there."""

import re
import sys
from pathlib import Path
from types import ModuleType

import pytest

from bodies import bdims_women
from clothwright.features import Feature
from clothwright.features.roles import Role
from clothwright.features.skirts.skirt_zip import SkirtZip
from clothwright.features.skirts.straight_skirt import StraightSkirt
from clothwright.features.skirts.waistband import Waistband
from clothwright.finishing.roles import role_of
from clothwright.making import making_order
from clothwright.order import OrderError, draft
from clothwright.order.figures import figures
from clothwright.order.pattern import pattern
from clothwright.order.telling import tell_why
from clothwright.sheets.drawing import scene
from clothwright.sheets.steps import steps_text
from orders import order

MM = 0.1


@pytest.fixture(scope="module")
def pocket() -> type[Feature]:
    page = (Path(__file__).parents[3] / "docs" / "adding-a-feature.md").read_text()
    (code,) = re.findall(r"```python\n(.*?)```", page, re.DOTALL)
    module = ModuleType("patch_pocket")
    sys.modules["patch_pocket"] = module
    exec(compile(code, "patch_pocket", "exec"), module.__dict__)
    found: type[Feature] = module.__dict__["PatchPocket"]
    return found


SKIRT = (StraightSkirt(), SkirtZip(), Waistband())


@pytest.mark.parametrize("woman", [0, 90, 200])
def test_the_example_drafts(pocket: type[Feature], woman: int) -> None:
    made = draft(order(bdims_women()[woman], (*SKIRT, pocket(kind="patch pocket"))))
    done = pattern(made, words=False)
    assert not done.failed, done.drawn.failures
    piece = made.sheet.piece("PK")
    # 7/6 of the width by its rule, an exact rectangle
    assert piece.area == pytest.approx(13.0 * 13.0 * 7 / 6, abs=MM)
    drawn = next(p for p in done.drawn.pieces if p.code == "PK")
    assert drawn.cuts[0].how == "2 (1 pair)"
    # as its file says: hemmed at the mouth, else turned in; after the waistband
    said, patch = made.order.said, made.sheet.piece("PK")
    roles = [role_of(patch, e.name, said) for e in patch.edges]
    assert roles == [Role.TURNED, Role.EDGE, Role.EDGE, Role.EDGE]
    assert [p.code for p in done.drawn.pieces] == ["SF", "SB", "WB", "PK"]
    step = next(i for i, k in enumerate(made.steps) if k.makes == "PK")
    assert len(scene(made.steps, step, said).drawn) > len(patch.edges)
    assert any("patch pocket" in line for line in steps_text(made))
    assert figures(made)["numbers"]["py"]["value"] == pytest.approx(91 / 6)
    assert "7/6" in "\n".join(tell_why(made, "py") or [])
    titles = [op.title for op in making_order(made).operations]
    assert "Stitch the patch pockets on" in titles


def test_the_example_refuses_in_words(pocket: type[Feature]) -> None:
    wide = pocket.model_validate({"kind": "patch pocket", "width": 24, "beside": 20})
    made = draft(order(bdims_women()[0], (*SKIRT, wide)))
    assert any("over the edge of the front" in f for f in made.failures())
    with pytest.raises(OrderError, match="patch pocket"):
        draft(order(bdims_women()[0], (pocket(kind="patch pocket"),)))
