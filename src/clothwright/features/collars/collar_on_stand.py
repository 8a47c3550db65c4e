"""Collars whose stand may cover the seam of the neck by itself (transformations 6)."""

from collections.abc import Iterable, Mapping

from clothwright.features.chains import Chains
from clothwright.features.collars.collar import Collar
from clothwright.features.collars.collar_inside import GIVEN, NOT_BESIDE, WANTED, Inside
from clothwright.features.linings.facing_seams import facing_seams
from clothwright.paper import Seam
from clothwright.rules import Numbers


class CollarOnStand(Collar):
    """Base of the collars with a stand: what the seam of the neck lies in decides what
    they finish, need and clash with."""

    inside: Inside = Inside.FACED

    def provides(self) -> frozenset[str]:
        return self.gives | GIVEN[self.inside]

    def wants(self) -> Mapping[str, str]:
        return {**self.needs, **WANTED[self.inside]}

    def forbids(self) -> Mapping[str, str]:
        return {**self.clashes, **NOT_BESIDE[self.inside]}

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        faced = facing_seams(t, n) if self.inside is Inside.IN_STAND else ()
        return (*faced, *super().sewn(t, n))
