"""The list of body measures, read from `measures.toml` once."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib import resources

from clothwright.rules import Kind

BUST = "B"
"""Code of the bust girth, by which most other measures are judged."""


@dataclass(frozen=True)
class Measure:
    """One body measure; values in cm (SS in degrees)."""

    code: str
    iso: str
    """Term after ISO 8559-1, as remembered; may be empty."""

    names: tuple[str, ...]
    """Other names, the trade's usual one first."""

    how: str
    kind: str
    """"girth", "length" or "angle"."""

    group: str
    low: float
    typical: float
    high: float

    @property
    def name(self) -> str:
        """The standard's term without its remarks, or the trade's name."""
        return self.iso.partition(" (")[0] or self.names[0]

    @property
    def full_name(self) -> str:
        """The name, and the trade's beside it where that is another word."""
        trade = self.names[0] if self.names else ""
        return self.name if trade in self.name else f"{self.name} ({trade})"

    @property
    def said(self) -> str:
        """Its name in a sentence: "waist" for the waist girth."""
        return self.name.removesuffix(" girth")

    @property
    def number_kind(self) -> Kind:
        """What it counts, for showing."""
        return Kind.ANGLE if self.kind == "angle" else Kind.BODY


@cache
def measures() -> Mapping[str, Measure]:
    """Every measure by code."""
    text = (
        resources.files("clothwright.body")
        .joinpath("measures.toml")
        .read_text(encoding="utf-8")
    )
    return {
        code: Measure(
            code,
            row["iso"],
            tuple(row["names"]),
            row["how"],
            row["kind"],
            row["group"],
            float(row["low"]),
            float(row["typical"]),
            float(row["high"]),
        )
        for code, row in tomllib.loads(text).items()
    }


@cache
def by_name() -> Mapping[str, str]:
    """Code of a measure by any of its names in lower case (codes included)."""
    out: dict[str, str] = {}
    for m in measures().values():
        for name in (m.iso, m.name, *m.names):
            if name:
                out.setdefault(name.lower(), m.code)
    for code in measures():
        out[code.lower()] = code
    return out
