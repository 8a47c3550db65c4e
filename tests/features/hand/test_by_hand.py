"""Her own steps: recorded with how they were measured, taken again on other bodies."""

import math
import re
from pathlib import Path

import pytest

from bodies import bdims_women
from clothwright.curves import distance
from clothwright.features.hand.by_hand import ByHand
from clothwright.order import Draft, OrderError, draft
from clothwright.order.file import order_from_text
from clothwright.order.pattern import pattern
from clothwright.order.telling import tell_why
from clothwright.sheets.steps import steps_text
from clothwright.units import Unit
from orders import closed_back, order

MM = 0.1

LEGS = """
[[styles.S.step]]
do = "redraw"
piece = "F"
edges = ["dart low", "dart high"]
over = [{ mark = "BP" }]
cornered = true
"""

SLASH = """
[[styles.S.step]]
do = "cut"
piece = "F"
from = { edge = "neck", from = "cf", along = "N/12" }
to = { mark = "BP" }
keeps = "cf"
new = ["FA", "Front side"]
edge = "slash"
"""

CLOSE = """
[[styles.S.step]]
do = "tape"
seam = "side dart"
as = ["F", "Front"]
"""

GATHER = """
[[styles.S.step]]
do = "redraw"
piece = "F"
edges = ["neck 2", "slash 2", "slash", "neck"]
taken = "gathers"
[[styles.S.step]]
do = "redraw"
piece = "F"
edges = ["side low", "side high"]
"""

NECK_GATHERS = LEGS + SLASH + CLOSE + GATHER

CURVED_YOKE = """
[[styles.S.step]]
do = "cut"
piece = "F"
from = { edge = "armhole", from = "shoulder", share = "1/2" }
to = { edge = "cf", from = "neck", along = "1 1/4 in" }
bow = "-0.6 in"
keeps = "waist"
new = ["FY", "Front yoke"]
edge = "yoke"
"""

WOMEN = (3, 90, 170)
"""Three bodies of the public survey, tall and short, slim and full."""


def made(steps: str, woman: int = 3, unit: str = "cm", lines: str = "darts") -> Draft:
    house = f'unit = "{unit}"\n{steps}'
    features = (*closed_back(lines=lines), ByHand(style="S"))
    return draft(order(bdims_women()[woman], features, house=house))


@pytest.mark.parametrize("woman", WOMEN)
@pytest.mark.parametrize("steps", [NECK_GATHERS, CURVED_YOKE])
def test_a_style_kept_by_name_fits_another_body(steps: str, woman: int) -> None:
    done = pattern(made(steps, woman), words=False)
    assert not done.failed, done.drawn.failures
    assert all(p.cuts for p in done.drawn.pieces)


@pytest.mark.parametrize("woman", WOMEN)
def test_the_dart_opens_at_the_neck_by_its_angle(woman: int) -> None:
    """Transformations 1.1: at a new edge point Q the intake is 2·|PQ|·sin(θ/2)."""
    plain, cut = made(LEGS, woman), made(LEGS + SLASH, woman)
    gathered = made(NECK_GATHERS, woman)
    bp = cut.sheet.points["BP"]
    q = cut.sheet.edge("F", "neck").path.start
    legs = [plain.sheet.edge("F", e).path for e in ("dart low", "dart high")]
    mouth = distance(legs[0].start, legs[1].end)
    theta = 2 * math.asin(mouth / (2 * legs[0].length))
    opened = 2 * distance(bp, q) * math.sin(theta / 2)
    grown = gathered.sheet.length("F", "neck") - plain.sheet.length("F", "neck")
    assert grown == pytest.approx(opened, abs=MM)
    seam = gathered.sheet.seam("S8")
    assert seam.gathered
    assert {r.piece for r in seam.right} == {"F"}
    was = plain.sheet.seam("S8").ease.plan
    assert seam.ease.plan == pytest.approx(grown - was, abs=MM)


def test_cutting_and_taping_stretch_no_paper() -> None:
    """Cut and tape keep area and the length of every edge (the kernel's promise)."""
    legs, cut, taped = made(LEGS), made(LEGS + SLASH), made(LEGS + SLASH + CLOSE)
    area = legs.sheet.piece("F").area
    parts = cut.sheet.piece("F").area + cut.sheet.piece("FA").area
    assert parts == pytest.approx(area, abs=1e-6)
    assert taped.sheet.piece("F").area == pytest.approx(area, abs=1e-3)
    whole = {e.name: e.length for e in legs.sheet.piece("F").edges}
    now = {e.name: e.length for e in taped.sheet.piece("F").edges}
    for name in ("shoulder", "armhole", "side high", "side low", "waist", "cf"):
        assert now[name] == pytest.approx(whole[name], abs=1e-6)
    neck = now["neck"] + now["neck 2"]
    assert neck == pytest.approx(whole["neck"], abs=1e-6)


def test_a_yoke_keeps_every_seam_of_the_front() -> None:
    done = made(CURVED_YOKE).sheet
    armhole = done.seam("S10")
    assert {r.piece for r in armhole.left} == {"F", "FY"}
    assert done.length("F", "yoke") == pytest.approx(done.length("FY", "yoke"), abs=MM)
    (seam,) = done.seams_of("FY", "yoke")
    assert seam.notches
    # bowed: longer than straight, by the sagitta's rule 8·h²/(3·c) for a flat arc
    path = done.edge("FY", "yoke").path
    chord, bow = distance(path.start, path.end), 0.6 * 2.54
    assert path.length - chord == pytest.approx(8 * bow**2 / (3 * chord), rel=0.1)


def test_traced_spread_and_moved() -> None:
    steps = """
[[styles.S.step]]
do = "spread"
piece = "PF"
from = { edge = "hem", from = "cf", share = "1/2" }
to = { edge = "waist", from = "cf", share = "1/2" }
by = "4"
turns = "side"
[[styles.S.step]]
do = "trace"
piece = "PF"
new = ["PL", "Peplum facing"]
sewn = ["hem"]
[[styles.S.step]]
do = "move"
piece = "PL"
right = "30"
turn = 90
"""
    before, after = made(LEGS), made(steps)
    hem = after.sheet.length("PF", "hem") - before.sheet.length("PF", "hem")
    assert hem == pytest.approx(4.0, abs=MM)
    assert after.sheet.length("PL", "hem") == pytest.approx(
        after.sheet.length("PF", "hem"), abs=1e-6
    )
    waist = after.sheet.length("PF", "waist") - before.sheet.length("PF", "waist")
    assert waist == pytest.approx(0.0, abs=1e-6)


def test_every_length_can_be_followed_back() -> None:
    done = made(NECK_GATHERS)
    lines = tell_why(done, "h2.from.along") or []
    assert "N/12" in lines[0]
    assert any("neck base girth" in line for line in lines[1:])
    n = done.numbers
    assert n["h2.from.along"] == pytest.approx(n.N / 12)


def test_the_steps_are_told() -> None:
    told = "\n".join(steps_text(made(NECK_GATHERS)))
    assert "Cut the paper: front (F) from the neck to BP" in told
    assert "gathers" in told


def test_inches_are_her_inches() -> None:
    """A bare number takes the unit of the file that it stands in."""
    inch = made(CURVED_YOKE.replace('"1 1/4 in"', '"1.25"'), unit="in")
    assert inch.sheet.length("FY", "cf") == pytest.approx(1.25 * 2.54, abs=MM)


WRONG = {
    "an edge that is not there": ('edge = "armhole"', 'edge = "armhol"', "armhol"),
    "a mark that is not there": (
        'from = { edge = "armhole", from = "shoulder", share = "1/2" }',
        'from = { mark = "XX" }',
        "no mark XX",
    ),
    "beyond the end": ('along = "1 1/4 in"', 'along = "99"', "beyond its end"),
    "from the wrong end": (
        'from = "neck", along',
        'from = "waist side", along',
        "from =",
    ),
    "no such measure": ('along = "1 1/4 in"', 'along = "QQ/8"', "QQ"),
    "not arithmetic": ('along = "1 1/4 in"', 'along = "a ; b"', "cannot be read"),
    "no such word": ('do = "cut"', 'do = "glue"', "glue"),
    "no such piece": ('piece = "F"', 'piece = "Z"', "no piece Z"),
    "a code that is taken": (
        '["FY", "Front yoke"]',
        '["B", "Yoke"]',
        "piece B already",
    ),
    "nothing to keep": ('keeps = "waist"', 'keeps = "wrist"', "wrist"),
    "what is missing": ('keeps = "waist"\n', "", "keeps is missing"),
    "a share over one": ('share = "1/2"', "share = 2", "share"),
    "a word too many": ('keeps = "waist"', 'keeps = "waist"\nglue = 1', "glue"),
    "both ends in one place": (
        'to = { edge = "cf", from = "neck", along = "1 1/4 in" }',
        'to = { edge = "armhole", from = "side high", share = "1/3" }',
        "one edge to another",
    ),
}


@pytest.mark.parametrize("fault", WRONG)
def test_a_wrong_step_gets_a_sentence(fault: str) -> None:
    right, wrong, says = WRONG[fault]
    assert right in CURVED_YOKE
    with pytest.raises(OrderError) as caught:
        made(CURVED_YOKE.replace(right, wrong, 1))
    (sentence,) = caught.value.sentences
    assert says in sentence
    assert "step 1" in sentence
    assert not re.search(r"[A-Z][a-z]+Error|Traceback|None", sentence)


def test_a_style_that_is_not_in_the_house_file() -> None:
    features = (*closed_back(lines="darts"), ByHand(style="neck gather"))
    house = 'unit = "cm"\n' + NECK_GATHERS.replace("styles.S", 'styles."neck gathers"')
    with pytest.raises(OrderError, match="did you mean neck gathers"):
        draft(order(bdims_women()[0], features, house=house))


def test_steps_stand_in_the_order_file_too() -> None:
    text = """
unit = "cm"
client = "Somebody"
[measures]
"""
    women = bdims_women()[3]
    text += "".join(f"{k} = {m.value}\n" for k, m in women.values.items())
    for f in closed_back(lines="darts"):
        text += f'[[feature]]\nkind = "{f.kind}"\n'
    text += '[[feature]]\nkind = "by hand"\n'
    text += CURVED_YOKE.replace("styles.S.step", "feature.step")
    done = draft(order_from_text(text, "order", Path()))
    assert "FY" in done.sheet.pieces
    assert done.order.unit is Unit.CM


def test_the_page_on_steps_by_hand_is_right() -> None:
    """What docs/by-hand.md shows is drafted as it stands there."""
    page = (Path(__file__).parents[3] / "docs" / "by-hand.md").read_text()
    step, style = re.findall(r"```toml\n(.*?)```", page, re.DOTALL)
    steps = "[[styles" + step.split("[[feature", 2)[2]
    house = f"{style}\n{steps.replace('[[styles', '[[styles.yoke', 1)}"
    for name, code in (("neck gathers", "F"), ("yoke", "FY")):
        features = (*closed_back(lines="darts"), ByHand(style=name))
        done = draft(order(bdims_women()[0], features, house=house))
        assert code in done.sheet.pieces
        assert not pattern(done, words=False).failed
