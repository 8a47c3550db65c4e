"""The front armhole of a full cup, pinched into the bust dart (corrections C19)."""

import pytest

from clothwright.blocks.full_cup import FULL_CUP, armhole_length
from clothwright.body import Body
from clothwright.curves import distance
from clothwright.features import Feature
from clothwright.features.block import Block
from clothwright.features.bodice.side_dart import SideDart
from clothwright.order import Draft, draft
from clothwright.paper import Verb
from orders import closed_back, main_features, order

MM = 0.1


def with_cup(c: float) -> Body:
    return Body.of({"HT": 165, "HB": 87, "B": 87 + c, "W": 72, "H": 98})


def made(
    c: float, pinched: bool, lines: str = "armhole", block: Block | None = None
) -> Draft:
    block = (block or Block()).model_copy(update={"full_cup_pinched": pinched})
    swap: dict[str, Feature] = {"bodice block": block}
    return draft(
        order(with_cup(c), tuple(swap.get(f.kind, f) for f in closed_back(lines=lines)))
    )


@pytest.mark.parametrize(
    ("c", "plain", "raised", "sleeved"),
    # the notes' figures, [NUM]: the first of a sleeved block, the second of ours
    [(12.0, 18.5, 23.5, True), (18.0, 24.5, 29.5, False)],
)
def test_angle_as_in_the_notes(
    c: float, plain: float, raised: float, sleeved: bool
) -> None:
    block = Block()
    if sleeved:
        block = Block(bust_ease=8.0, waist_ease=3.0, depth_added=3.81)
    for pinched, angle in ((False, plain), (True, raised)):
        n = made(c, pinched, block=block).numbers
        assert n.theta == pytest.approx(angle, abs=0.15)


@pytest.mark.parametrize("lines", ["armhole", "shoulder", "darts"])
@pytest.mark.parametrize(
    ("c", "amount"), [(5.0, 0.0), (8.0, 0.35), (11.0, 1.4), (16.0, 2.0)]
)
def test_shorter_by_what_was_pinched(lines: str, c: float, amount: float) -> None:
    """min(2.0, 0.35·(c − 7)) off the front armhole; the side seams stay equal."""
    plain, pinched = made(c, False, lines), made(c, True, lines)
    assert not pinched.failed, pinched.failures()
    assert pinched.numbers.pinched == pytest.approx(amount)

    def front(d: Draft) -> float:
        pieces = (p for code, p in d.sheet.pieces.items() if code in ("F", "FC", "FS"))
        return sum(p.edge("armhole").length for p in pieces if p.has("armhole"))

    # exact on the block; narrowed tips and redrawn curves leave a little
    assert front(plain) - front(pinched) == pytest.approx(amount, abs=0.1)
    n = pinched.numbers
    needs = FULL_CUP.rules["theta"].needs[2:]
    place = [n[k] for k in needs]
    lost = armhole_length(plain.numbers.theta, *place) - armhole_length(n.theta, *place)
    assert lost == pytest.approx(amount, abs=0.02)
    side = next(w for w in pinched.report.walks if w.seam.code == "S4")
    assert abs(side.left - side.right) < 0.1


def test_off_by_default_and_said_where_it_does_nothing() -> None:
    assert made(12, False).numbers.theta < 20
    assert "pinched" not in made(12, False).numbers
    (note,) = (f for f in made(5, True).findings if f.code == "C19")
    assert "nothing is pinched" in note.sentence
    (note,) = (f for f in made(16, True).findings if f.code == "C19")
    assert "panel line takes it in one" in note.sentence
    assert not any(f.code == "C19" for f in made(16, True, "darts").findings)


def test_limit_of_the_bust_dart() -> None:
    """B17: 7° to 26°, to 30° when pinched."""
    assert not any(f.code == "B17" for f in made(15, True).findings)
    wide = Body.of({"HT": 165, "HB": 87, "B": 108, "W": 72, "H": 98})
    for pinched in (False, True):
        features = (Block(full_cup_pinched=pinched), *main_features()[1:])
        d = draft(order(wide, features))
        said = any(f.code == "B17" for f in d.findings)
        assert said == (d.numbers.theta > (30 if pinched else 26))


@pytest.mark.parametrize("c", [12.0, 15.0, 18.0])
def test_two_side_darts_over_twenty_degrees(c: float) -> None:
    d = made(c, True, "darts")
    assert d.numbers.theta > 20
    f, p = d.sheet.piece("F"), d.sheet.points
    for low, high in (("dart low", "dart high"), ("dart low 2", "dart high 2")):
        assert f.edge(low).length == pytest.approx(f.edge(high).length, abs=0.1 * MM)
    # each takes half of the angle, the strip between them stays 4 wide
    assert f.edge("side mid").length == pytest.approx(4.0)
    mouths = [
        distance(f.edge(low).path.start, f.edge(high).path.end)
        for low, high in (("dart low", "dart high"), ("dart low 2", "dart high 2"))
    ]
    whole = distance(p["U1"], p["U2"])
    assert sum(mouths) == pytest.approx(whole, rel=0.06)
    # dart points keep 2.5 apart (truing 5), the lower dart 5 from the waist (B20)
    ends = f.edge("dart low").path.end, f.edge("dart low 2").path.end
    assert distance(*ends) >= 2.5 - 0.1 * MM
    assert f.edge("side low").length >= 5.0
    assert not d.failed, d.failures()


def test_one_side_dart_up_to_twenty_degrees() -> None:
    d = made(8, True, "darts")
    assert not d.sheet.piece("F").has("dart low 2")
    assert SideDart().kind == "side dart"


def test_the_strip_keeps_its_paper() -> None:
    """Cut and move: strip and front together have the area of the front."""
    d = made(15, True, "darts")
    steps = [s for s in d.steps if s.after and s.part == "front"]
    verbs = [s.verb for s in steps]
    cut = verbs.index(Verb.CUT)
    whole, parts, moved = (s.after for s in steps[cut - 1 : cut + 2])
    assert whole is not None
    assert parts is not None
    assert moved is not None
    area = whole.piece("F").area
    for sheet in (parts, moved):
        together = sheet.piece("F").area + sheet.piece("strip").area
        assert together == pytest.approx(area, abs=1e-6)
