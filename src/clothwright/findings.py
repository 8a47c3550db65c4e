"""Findings: what a check has to say. Checks collect them; they never stop at the first.

Terminology
    refuse   a fault: nothing should be cut (E).
    warn     doubtful: look again before cutting (W).
    note     worth knowing (N).
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from enum import Enum


class Severity(Enum):
    """How bad a finding is."""

    REFUSE = "E"
    """Nothing may be cut so."""

    WARN = "W"
    """Look again before cutting."""

    NOTE = "N"
    """Worth knowing."""


@dataclass(frozen=True)
class Finding:
    """One finding. `sentence` is plain and complete, in the user's unit."""

    code: str
    """Stable code: "R9", "S3", "B13"."""

    severity: Severity
    sentence: str
    place: str = ""
    """What it is about: a measure's code, a seam, an edge, a feature's kind."""

    to_do: str = ""
    """What to do about it, as a sentence."""

    data: Mapping[str, float] = field(default_factory=dict)
    """The numbers behind it, cm or degrees."""

    def __str__(self) -> str:
        return " ".join(s for s in (self.sentence, self.to_do) if s)


def worst(findings: Iterable[Finding]) -> Severity | None:
    """The gravest severity among findings; None when there are none."""
    order = (Severity.REFUSE, Severity.WARN, Severity.NOTE)
    present = {f.severity for f in findings}
    return next((s for s in order if s in present), None)
