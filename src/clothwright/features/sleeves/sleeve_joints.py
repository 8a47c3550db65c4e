"""Corners of a sleeve that flow when it is sewn (first garment 17.3, 22; blocks S3,
S4)."""

from collections.abc import Iterator

from clothwright.features.chains import on_table
from clothwright.paper import Sheet
from clothwright.truing import Corner, End, Joint
from clothwright.truing.tolerances import NECK_SUM, SLEEVE_HEM, TIP, Band

_START, _END = End.START, End.END

Over = tuple[str, tuple[str, End], tuple[str, End], Band]
"""A name, the corner of either side, each an edge and its end, and how exact."""


def sleeve_joints(sheet: Sheet, code: str = "SL") -> Iterator[Joint]:
    """The cap of a sleeve in one piece runs on at the shoulder notch and under the
    arm, its hem over the seam."""
    if on_table(sheet, code, "hem"):
        last = "hem back" if on_table(sheet, code, "hem back") else "hem"
        yield from halves_joints((code, "hem"), (code, last))
        top = (Corner(code, "cap back", _END),)
        yield Joint("cap at the shoulder notch", top, 180.0)


def petal_joints(sheet: Sheet) -> Iterator[Joint]:
    """The caps of two petals run on under the arm, their hems over the seam."""
    if on_table(sheet, "SLF", "hem"):
        yield from halves_joints(("SLF", "hem"), ("SLB", "hem"))


def halves_joints(front: tuple[str, str], back: tuple[str, str]) -> Iterator[Joint]:
    """The cap runs on under the arm and the hem over its seam; `front` and `back` are
    the hem there, its piece and its edge."""
    under = Corner(front[0], "cap front", _END), Corner(back[0], "cap back", _START)
    yield Joint("cap under the arm", under, 180.0, NECK_SUM)
    yield Joint(
        "sleeve hem over the seam",
        (Corner(*front, _START), Corner(*back, _END)),
        180.0,
        SLEEVE_HEM,
        (90.0, 90.0),
    )


def between(front: str, back: str, *joints: Over) -> Iterator[Joint]:
    """Joints of one piece with the other."""
    for name, a, b, band in joints:
        yield Joint(name, (Corner(front, *a), Corner(back, *b)), 180.0, band)


def neck_over(sheet: Sheet, front: str, back: str, tilt: float) -> Joint:
    """The neck runs on over a seam along shoulder and arm, on either side at the tilt
    of the neck; beside a dart in it, by its part there."""
    mine, its = (
        "neck side" if on_table(sheet, code, "neck side") else "neck"
        for code in (front, back)
    )
    return Joint(
        "neck over the shoulder",
        (Corner(front, mine, _START), Corner(back, its, _END)),
        180.0,
        NECK_SUM,
        (90.0 - tilt, 90.0 + tilt),
        TIP,
    )


def kimono_joints(sheet: Sheet, tilt: float) -> Iterator[Joint]:
    """The neck runs on over a kimono's overarm seam, its hem over both seams."""
    if on_table(sheet, "F", "overarm"):
        hem, over, under = "sleeve hem", "the overarm seam", "the seam under the arm"
        yield neck_over(sheet, "F", "B", tilt)
        yield from between(
            "F",
            "B",
            (f"{hem} over {over}", (hem, _END), (hem, _START), SLEEVE_HEM),
            (f"{hem} over {under}", (hem, _START), (hem, _END), SLEEVE_HEM),
        )


def raglan_joints(sheet: Sheet, tilt: float) -> Iterator[Joint]:
    """The neck runs on over the three seams of a raglan, the raglan line under the arm
    on body and sleeve, the hem over both seams."""
    if not on_table(sheet, "SLF", "raglan"):
        return
    neck, line = "neck", "raglan"
    last = "hem back" if on_table(sheet, "SLB", "hem back") else "hem"
    yield neck_over(sheet, "SLF", "SLB", tilt)
    for name, body, sleeve, a, b in (
        ("neck over the front raglan", "F", "SLF", _START, _END),
        ("neck over the back raglan", "B", "SLB", _END, _START),
    ):
        yield from between(body, sleeve, (name, (neck, a), (neck, b), NECK_SUM))
    yield from between("F", "B", ("underarm", (line, _START), (line, _END), NECK_SUM))
    yield from between(
        "SLF",
        "SLB",
        ("sleeve under the arm", (line, _END), (line, _START), NECK_SUM),
        (
            "hem over the seam under the arm",
            ("hem", _START),
            (last, _END),
            SLEEVE_HEM,
        ),
        ("hem over the overarm seam", ("hem", _END), ("hem", _START), SLEEVE_HEM),
    )


def two_piece_joints(sheet: Sheet) -> Iterator[Joint]:
    """Cap and hem run on over both seams of a two-piece sleeve."""
    if on_table(sheet, "ST", "front seam"):
        front, back = ("cap front", _END), ("cap back", _START)
        yield from between(
            "ST",
            "SU",
            ("cap over the front seam", front, ("cap front", _START), NECK_SUM),
            ("cap over the back seam", back, ("cap back", _END), NECK_SUM),
            ("hem over the front seam", ("hem", _START), ("hem", _END), SLEEVE_HEM),
            ("hem over the back seam", ("hem", _END), ("hem", _START), SLEEVE_HEM),
        )
