"""The seams of a draft walked one by one, each with its figure."""

import pytest

from clothwright.paper import SeamKind, Verb
from clothwright.sheets.drawing import Hand
from clothwright.sheets.figure import SMALL, svg_of
from clothwright.sheets.walked import walked
from clothwright.truing import walk
from clothwright.units import pretty_length
from finished import made


@pytest.mark.parametrize("name", ["peplum-top", "panelled-top", "straight-skirt"])
def test_every_seam_is_walked_once_with_both_lengths(name: str) -> None:
    draft = made(name).draft
    unit = draft.order.unit
    seen = []
    for i, step in enumerate(draft.steps):
        for w in walked(draft.steps, i, unit):
            assert step.verb is Verb.SEW
            assert step.after is not None
            found = walk(step.after, w.seam)
            assert pretty_length(found.left, unit) in w.text
            if w.seam.kind not in (SeamKind.TWIN, SeamKind.DART):
                assert pretty_length(found.right, unit) in w.text
            assert " 0 in" not in w.text
            assert " 0.0 cm" not in w.text
            assert w.text.count("single") == sum(n.ticks == 1 for n in w.seam.notches)
            seen.append(w.seam.code)
    stated = {s.code for s in draft.sheet.seams if s.kind is not SeamKind.DART}
    assert set(seen) >= stated
    assert len(seen) == len(set(seen))


def test_its_figure_has_the_seam_and_its_notches_in_ink() -> None:
    draft = made("panelled-top").draft
    i = next(i for i, s in enumerate(draft.steps) if s.makes == "seams")
    for w in walked(draft.steps, i, draft.order.unit):
        ticks = sum(n.ticks for n in w.seam.notches)
        sides = 1 if w.seam.kind is SeamKind.TWIN else 2
        runs = len(set(w.seam.runs()))
        ink = [hand for hand, _ in w.scene.drawn if hand is Hand.INK]
        assert len(ink) == runs + sides * ticks
        assert Hand.INK.value[0] in svg_of(w.scene, SMALL)


def test_a_step_that_walks_nothing_has_none() -> None:
    draft = made("peplum-top").draft
    assert walked(draft.steps, 0, draft.order.unit) == []
