from collections.abc import Sequence
from datetime import timedelta
from enum import IntEnum

class Item:
    def __init__(
        self,
        id: str,
        shape: Sequence[tuple[float, float]],
        demand: int,
        allowed_orientations: Sequence[float] | None,
    ) -> None: ...

class PlacedItem:
    id: str
    translation: tuple[float, float]
    rotation: float

class StripPackingSolution:
    width: float
    density: float
    placed_items: list[PlacedItem]

class ReportType(IntEnum):
    ExplFeas = 0
    ExplInfeas = 1
    ExplImproving = 2
    CmprFeas = 3
    Final = 4

class ProgressQueue:
    def drain(self) -> list[tuple[ReportType, StripPackingSolution]]: ...

class StripPackingConfig:
    exploration_time: timedelta
    compression_time: timedelta
    def __init__(
        self,
        early_termination: bool = ...,
        quadtree_depth: int = ...,
        total_computation_time: int | None = ...,
        num_workers: int | None = ...,
        seed: int | None = ...,
    ) -> None: ...

class StripPackingInstance:
    def __init__(
        self, name: str, strip_height: float, items: Sequence[Item]
    ) -> None: ...
    def solve(
        self, config: StripPackingConfig, progress: ProgressQueue | None = None
    ) -> StripPackingSolution: ...
