"""Walking a seam: both sides measured along the net line, notch by notch.

Terminology
    walk      one seam measured, from the start of both chains to their end.
    segment   the stretch between two notches, or between a notch and an end.
    ease      what the right side is longer than the left, cm; below 0 it is shorter.

Lengths are cm along the curve, never chords. The ease of a seam is accepted within
the seam's own band; it is refused beyond the band of our trade notes on truing,
sections 1 and 2. The planned ease of a seam with a zone lies in the zone alone; with
no zone a stretch may hold none of it or all of it.
"""

from dataclasses import dataclass
from typing import Final

from clothwright.findings import Finding, Severity
from clothwright.paper import Seam, SeamKind, Sheet
from clothwright.truing.tolerances import (
    CAP,
    DART_LEGS,
    FACING,
    LONG_SEAM,
    NOTCH,
    SEAM,
    SEAM_LONG,
    Band,
)
from clothwright.truing.words import Fmt, amounts, pair
from clothwright.units import opening

SET_IN = 1.0
"""Planned ease from here on is a sleeve's: walked by the band of a cap, cm."""

NO_EASE = 0.005
"""Less than this (cm) is told as one length."""

MUCH = 0.5
"""What is eased or gathered in by more (cm) is told in the user's unit, however near
its limits lie."""

_HAIR = 1e-6
"""Rounding: a seam on the very limit is inside it."""


@dataclass(unsafe_hash=True)
class Segment:
    """A stretch of a walk, cm: both lengths and the ease that is right for it."""

    left: Final[float]
    right: Final[float]
    low: Final[float]
    high: Final[float]

    @property
    def ease(self) -> float:
        """What the right side is longer here, cm."""
        return self.right - self.left

    @property
    def severity(self) -> Severity | None:
        """None when the notches match; by the notch band beyond the seam's own."""
        return _severity(self.ease, self.low, self.high, NOTCH.reject)


@dataclass(unsafe_hash=True)
class Walk:
    """A seam walked, cm."""

    seam: Final[Seam]
    left: Final[float]
    right: Final[float]
    segments: Final[tuple[Segment, ...]]

    @property
    def ease(self) -> float:
        """What the right side is longer than the left, cm."""
        return self.right - self.left

    @property
    def severity(self) -> Severity | None:
        """None when the seam sews; else how bad its total is."""
        low, high = self.seam.ease.low, self.seam.ease.high
        reject = reject_band(self.seam, self.left).reject
        plan = self.seam.ease.plan
        return _severity(self.ease, low, high, reject, plan)

    @property
    def holds(self) -> bool:
        """True when the total and every stretch are right."""
        return self.severity is None and all(s.severity is None for s in self.segments)

    def findings(self, fmt: Fmt) -> tuple[Finding, ...]:
        """What is wrong with it: the total first, then each stretch; or nothing."""
        out: list[Finding] = []
        if self.severity is not None:
            out.append(self._finding(self.severity, self.sentence(fmt)))
        for i, s in enumerate(self.segments):
            if s.severity is not None and len(self.segments) > 1:
                where = self._where(i)
                text = f"{opening(self.seam.name)}, {where}: "
                text += _tell(fmt, s.left, s.right, s.low, s.high)
                data = {"left": s.left, "right": s.right, "ease": s.ease}
                out.append(
                    Finding(
                        self.seam.code,
                        s.severity,
                        text,
                        self.seam.name,
                        "On the paper, move the notch on one of the two sides so that "
                        "they agree.",
                        data,
                    )
                )
        return tuple(out)

    def sentence(self, fmt: Fmt) -> str:
        """The walk in one sentence, in the user's unit, right or wrong."""
        low, high = self.seam.ease.low, self.seam.ease.high
        told = _tell(fmt, self.left, self.right, low, high)
        return f"{opening(self.seam.name)}: {told}"

    def _finding(self, severity: Severity, sentence: str) -> Finding:
        end = self.seam.end
        if severity is Severity.REFUSE:
            to_do = (
                "Find the cause (a wrong ease, two lines that differ) and redraw it; "
                "do not spread the difference over the notches."
            )
        elif end and "waist" not in end and "neck" not in end:
            to_do = f"Level it at the {end} of the paper, then walk the seam again."
        else:
            to_do = (
                "Redraw one of the two lines between its ends, on the paper or by a "
                'step of kind = "by hand", then walk it again.'
            )
        data = {"left": self.left, "right": self.right, "ease": self.ease}
        name = self.seam.name
        return Finding(self.seam.code, severity, sentence, name, to_do, data)

    def _where(self, i: int) -> str:
        last = len(self.segments) - 1
        if i == 0:
            return f"from the {self.seam.start or 'start'} to the first notch"
        if i == last:
            return f"from the last notch to the {self.seam.end or 'end'}"
        return f"between notch {i} and notch {i + 1}"


def reject_band(seam: Seam, length: float) -> Band:
    """The band of our trade notes for a seam of this kind and length (cm)."""
    if seam.kind is SeamKind.DART:
        return DART_LEGS
    if seam.kind is SeamKind.FACED:
        return FACING
    if seam.ease.plan >= SET_IN:
        return CAP
    return SEAM_LONG if length > LONG_SEAM else SEAM


def walk(sheet: Sheet, seam: Seam) -> Walk:
    """Measure both sides of a seam, in all and between its notches.

    Raises PaperError when the seam names an edge that is not on the sheet.
    """
    left, right = sheet.chain_length(seam.left), sheet.chain_length(seam.right)
    notches = sorted(seam.notches)
    marks = [(0.0, 0.0), *((n.left, n.right) for n in notches), (left, right)]
    low, high = seam.ease.low - seam.ease.plan, seam.ease.high - seam.ease.plan
    segments: list[Segment] = []
    for (a, x), (b, y) in zip(marks, marks[1:], strict=False):
        least, most = _share(seam, a, b, left)
        segments.append(Segment(b - a, y - x, least + low, most + high))
    return Walk(seam, left, right, tuple(segments))


def walk_all(sheet: Sheet) -> tuple[Walk, ...]:
    """Every seam of the sheet walked, in the order stated."""
    return tuple(walk(sheet, s) for s in sheet.seams)


def _share(seam: Seam, a: float, b: float, whole: float) -> tuple[float, float]:
    """Least and most of the planned ease that belongs between two lengths."""
    plan = seam.ease.plan
    if seam.zone is None:
        whole_seam = a <= 0.0 and b >= whole
        return (plan, plan) if whole_seam else (min(0.0, plan), max(0.0, plan))
    z0, z1 = sorted(seam.zone)
    inside = max(0.0, min(b, z1) - max(a, z0))
    plan -= seam.free
    if z1 - z0 > _HAIR:
        part = plan * inside / (z1 - z0)
    else:
        part = plan if a <= z0 < b or z0 == b == whole else 0.0
    part += seam.free if b >= whole else 0.0
    return part, part


def _severity(
    ease: float, low: float, high: float, reject: float, plan: float | None = None
) -> Severity | None:
    if low - _HAIR <= ease <= high + _HAIR:
        return None
    centre = (low + high) / 2 if plan is None else plan
    bottom, top = min(low, centre - reject), max(high, centre + reject)
    inside = bottom - _HAIR <= ease <= top + _HAIR
    return Severity.WARN if inside else Severity.REFUSE


def _tell(fmt: Fmt, left: float, right: float, low: float, high: float) -> str:
    ease = right - left
    lengths = pair(fmt, left, right)
    if abs(low + high) <= _HAIR:
        apart, limit = amounts(fmt, (ease, high))
        if abs(ease) < NO_EASE:
            return f"{lengths}, of one length; up to {limit} apart is right."
        return f"{lengths}, {apart} apart; up to {limit} is right."
    off, least, most = amounts(fmt, (ease, low, high))
    planned = abs(ease - (low + high) / 2) < NO_EASE
    if planned and abs(ease) > MUCH and off != fmt(abs(ease)):
        more = "longer" if ease > 0 else "shorter"
        by = f"{(high - low) * 5:.1f} mm"
        return (
            f"{lengths}, the second {fmt(abs(ease))} {more}; up to {by} more or less "
            "is right."
        )
    way = f"the second {off} {'longer' if ease > 0 else 'shorter'}"
    if abs(ease) < NO_EASE:
        way = "of one length"
    if low >= 0:
        right_is = f"{least} to {most} longer"
    elif high <= 0:
        right_is = f"{most} to {least} shorter"
    else:
        right_is = f"from {least} shorter to {most} longer"
    return f"{lengths}, {way}; {right_is} is right."
