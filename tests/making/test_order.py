"""The order of making against the trade's stated rules, read from edges and pieces.

Rules of cutting and costing 5: shoulder before neck and sleeve; facing before the neck
seam; a faced armhole before the side; side and all of the skirt before the waist; zip
after the waist and before the lining is joined; waist before hem; hem last but for
pressing; what crosses a seam after it.
"""

import random
from collections.abc import Iterator
from dataclasses import replace

import pytest

from bodies import BODIES
from clothwright.blocks import torso
from clothwright.features.operations import Operation, Task, Work
from clothwright.making import MakingOrder, making_order
from clothwright.making.telling import seam_line
from clothwright.order import Draft, OrderError, draft
from clothwright.paper import EdgeKind, Run, Seam, SeamKind
from combinations import combination
from features.hand.test_by_hand import CURVED_YOKE, NECK_GATHERS
from features.hand.test_by_hand import made as by_hand
from finished import ORDERS, made
from orders import order


def sewn(m: MakingOrder) -> list[Seam]:
    """Every seam in the order in which it is sewn."""
    return [s for op in m.operations for s in m.seams(op)]


def has(seam: Seam, *edges: str, of: str = "", lining: bool | None = None) -> bool:
    """True for a seam with such an edge, on pieces whose codes begin with `of`."""
    is_lining = any(r.piece.startswith("L.") for r in seam.runs())
    return (lining is None or lining == is_lining) and any(
        r.edge.split()[0] in edges and r.piece.startswith(of) for r in seam.runs()
    )


def broken(m: MakingOrder) -> Iterator[str]:
    """Sentences for every stated rule that an order of making breaks."""
    seams = sewn(m)
    at = {s.code: i for i, s in enumerate(seams)}

    def plain(*edges: str, of: str = "", lining: bool | None = False) -> list[Seam]:
        kinds = (SeamKind.PLAIN, SeamKind.DART)
        return [
            s for s in seams if s.kind in kinds and has(s, *edges, of=of, lining=lining)
        ]

    faced = [s for s in seams if s.kind is SeamKind.FACED]
    neck = [s for s in faced if has(s, "neck", "slant")]
    armhole = [s for s in faced if has(s, "armhole")]
    # a lining is sewn together before it is bagged to the edge, else by itself
    shoulder = plain("shoulder", lining=None if m.garment.bagged else False)
    sides = [
        s
        for s in plain("side")
        if not has(s, "side", of="P")
        and not has(s, "side", of="BD")  # of a band, which comes last
        and not has(s, "side", of="HF")  # of a facing of the hem
        and "placket" not in s.name
    ]
    skirt = [s for s in plain("side", "panel") if has(s, "side", "panel", of="P")]
    flat = {c for op in m.operations if op.work is Work.FLAT for c in op.seams}
    on_flat = [s for s in seams if s.code in flat]
    caps = [  # petals lap on the table
        s for s in plain("cap") if has(s, "armhole") and s.code not in flat
    ]
    under = plain("underarm")
    overarm = [
        s
        for s in plain("shoulder", "overarm")
        if not any(r.piece in ("FF", "BF") for r in s.runs())
    ]
    band = ("WB", "WCF", "WCB")  # set on when the zip is in, or before the sides
    waist = [
        s
        for s in plain("waist")
        if s.kind is SeamKind.PLAIN and not any(r.piece in band for r in s.runs())
    ]
    joins = [s for s in seams if has(s, "join") and s.kind is SeamKind.PLAIN]

    def first(before: list[Seam], after: list[Seam], why: str) -> Iterator[str]:
        for a in before:
            for b in after:
                if a is not b and at[a.code] > at[b.code]:
                    yield f"{a.code} after {b.code}: {why}"

    yield from first(shoulder, neck, "shoulder before the neck is faced")
    yield from first(shoulder, caps, "shoulder before sleeve")
    yield from first(under, caps, "seam of the sleeve before it is set")
    yield from first(sides, caps, "side before the sleeve is set in the round")
    yield from first(overarm, on_flat, "shoulder before a sleeve sewn on flat")
    yield from first(on_flat, sides + under, "a sleeve sewn on flat before the sides")
    yield from first(armhole, sides, "a faced armhole before the side")
    yield from first(sides + skirt, waist, "side and skirt before waist")
    darts = [s for s in plain("leg", "dart") if not has(s, "front", "back", of="GU")]
    yield from first(darts, waist + sides, "dart before what crosses it")
    for s in seams:
        before = [{r.piece for r in t.runs()} for t in seams if at[t.code] < at[s.code]]
        for chain in (s.left, s.right):
            for a, b in zip(chain, chain[1:], strict=False):
                both = {a.piece, b.piece}
                # a pocket back is joined to its front by the bag that both are sewn to
                pocket = all(any({x, "TP"} <= t for t in before) for x in both)
                # a cowl's facing, in one with the front, lies beside the armhole's
                cut_on = "facing shoulder" in (a.edge, b.edge)
                if a.piece != b.piece and not (
                    pocket or cut_on or any(both <= t for t in before)
                ):
                    yield f"{s.code} runs from {a} to {b}, which are not joined yet"
    place: dict[Work, list[int]] = {}
    for i, op in enumerate(m.operations):
        place.setdefault(op.work, []).append(i)
    by_seam = {c: i for i, op in enumerate(m.operations) for c in op.seams}

    def order_of(some: list[int], others: list[int], why: str) -> Iterator[str]:
        if some and others and max(some) > min(others):
            yield why

    late = {Work.HEM, Work.LINING_HEM, Work.FINISH}  # petals, collars are not last
    waists = [by_seam[s.code] for s in waist]
    zips = [i for i, op in enumerate(m.operations) if op.task is Task.ZIP]
    hems = [
        i
        for i, op in enumerate(m.operations)
        if any(r.edge == "hem" for r in op.edges) and op.work in late
    ]
    yield from order_of(waists, zips, "zip through the waist after the waist")
    centre = [by_seam[s.code] for s in seams if s.code == "S21"]
    hidden = [i for i in zips if "concealed" in m.operations[i].title]
    yield from order_of(hidden, centre, "zip before the seam below it")
    lined = [by_seam[s.code] for s in joins]
    yield from order_of(zips, lined, "zip before the lining is joined")
    yield from order_of(waists, hems, "waist before hem")
    fused = [i for i, op in enumerate(m.operations) if "nterline" in op.title]
    edges = [by_seam[s.code] for s in neck + armhole]
    yield from order_of(fused, edges, "interlining before the facing is sewn")
    loops = [i for i, op in enumerate(m.operations) if op.task is Task.LOOP]
    yield from order_of(loops, edges, "loops before the edge is faced")
    other = [i for i, op in enumerate(m.operations) if op.work not in late]
    yield from order_of(other, hems, "hem last")
    if m.operations[-1].task is not Task.FINISH:
        yield "pressed last"


def wanted(d: Draft) -> set[tuple[str, str]]:
    """Edges that are finished by themselves."""
    return {
        (p.code, e.name)
        for p in d.sheet.pieces.values()
        for e in p.edges
        if e.kind is EdgeKind.FINISHED
        and not p.code.startswith("I")  # interlining, which has no cloth's edge
    }


def complete(m: MakingOrder) -> None:
    """Every seam is sewn once, each dart in an operation, every loose edge finished
    once, and nothing is done before what it needs."""
    d = m.draft
    codes = [s.code for s in sewn(m)]
    assert sorted(codes) == sorted(s.code for s in d.sheet.seams)
    darts = [s for s in d.sheet.seams if s.kind is SeamKind.DART]
    shell = [s for s in darts if not s.left[0].piece.startswith("L.")]
    laid = {c for op in m.operations if op.task is Task.PLEAT for c in op.seams}
    shell = [s for s in shell if s.code not in laid]
    done = [op for op in m.operations if op.task is Task.DART]
    eyes = [c for c in torso.PIECES if torso.fish_eye(d.sheet, c)]
    assert sum(op.count for op in done) == 2 * (len(shell) + len(eyes))
    ends = [(r.piece, r.edge) for op in m.operations for r in op.edges]
    assert sorted(ends) == sorted(wanted(d))
    assert not list(broken(m))


@pytest.mark.parametrize("name", ORDERS)
def test_the_demo_s_orders(name: str) -> None:
    complete(making_order(made(name).draft))


@pytest.mark.parametrize("seed", range(40))
def test_random_orders(seed: int) -> None:
    rng = random.Random(seed)
    try:
        d = draft(order(rng.choice(BODIES), combination(rng)))
    except OrderError:
        return  # refused with a sentence (tests of orders)
    complete(making_order(d))


def test_the_rules_find_an_order_that_is_wrong() -> None:
    """Backwards, each kind of rule is broken that the garment has."""
    found: set[str] = set()
    for name in ORDERS:
        m = making_order(made(name).draft)
        wrong = replace(m, operations=m.operations[::-1])
        found |= {text.split(": ")[-1] for text in broken(wrong)}
    assert len({text for text in found if "joined yet" not in text}) == 17
    assert any("joined yet" in text for text in found)


def by_title(m: MakingOrder, words: str) -> Operation:
    (found,) = [op for op in m.operations if words in op.title]
    return found


def test_lengths_of_stitches_are_those_of_the_draft() -> None:
    """Order 1: two side front panels; a hem of 46.7246 in (row 38 of the worked
    example); cord of 51.41 in (row 34) and two slanted edges."""
    m = making_order(made("peplum-top").draft)
    sheet = m.draft.sheet
    panel = m.stitched(by_title(m, "front panel"))
    mm = 0.1
    lock, overedge = (length for _, length in sorted(panel.items(), key=str))
    assert lock == pytest.approx(2 * sheet.length("FC", "panel"), abs=mm)
    assert overedge == pytest.approx(2 * lock, abs=mm)
    (hem,) = m.stitched(by_title(m, "Hem the peplum")).values()
    assert hem == pytest.approx(46.7246 * 2.54, abs=2 * mm)
    (loops,) = m.stitched(by_title(m, "loops and sew")).values()
    slant = sheet.length("BC", "slant")
    assert loops == pytest.approx(51.41 * 2.54 + 2 * slant, abs=mm)


def test_a_lined_top_needs_no_neatening_inside() -> None:
    m = making_order(made("panelled-top").draft)
    assert all(op.neatened == 0 for op in m.operations if op.seams)


def test_a_seam_of_two_halves_is_sewn_once() -> None:
    m = making_order(made("zip-top").draft)
    opening = m.draft.sheet.length("BC", "cb") - 0.5 + 12.0  # first garment 16.3
    whole = m.draft.sheet.chain_length((Run("BC", "cb"), Run("PB", "cb")))
    below = m.stitched(by_title(m, "below the zip"))
    assert min(below.values()) == pytest.approx(whole - 0.5 - opening, abs=0.1)


@pytest.mark.parametrize("name", ORDERS)
def test_seams_and_edges_tell_themselves(
    name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """With no work told by its features every seam is sewn and every loose edge done,
    so that a feature that tells none loses nothing."""
    d = made(name).draft
    for feature in d.order.features:
        monkeypatch.setattr(type(feature), "operations", lambda *_: ())
    m = making_order(d)
    assert sorted(s.code for s in sewn(m)) == sorted(s.code for s in d.sheet.seams)
    ends = [(r.piece, r.edge) for op in m.operations for r in op.edges]
    assert sorted(ends) == sorted(wanted(d))
    assert not list(broken(m))


@pytest.mark.parametrize("steps", [NECK_GATHERS, CURVED_YOKE])
def test_what_she_made_by_hand_is_sewn(steps: str) -> None:
    """A yoke, or a dart turned to gathers at the neck (steps of the tests by hand)."""
    m = making_order(by_hand(steps))
    complete(m)
    if steps is NECK_GATHERS:
        (neck,) = [line for s in sewn(m) if (line := seam_line(m, s)).code == "S8"]
        assert neck.ease.startswith("gather in")
