"""Minutes: what each task takes, from the trade's ranges (cutting and costing 4).

A house's own times stand in its rates; these are the usual ones, the first third of
the range for a single maker of medium skill.
"""

from collections.abc import Mapping

from clothwright.features.operations import Task

RANGES: Mapping[Task, tuple[float, float]] = {
    Task.MEASURE: (20, 40),
    Task.OWN_BLOCK: (15, 30),
    Task.NEW_BLOCK: (60, 150),
    Task.TOILE: (90, 240),
    Task.FITTING: (30, 60),
    Task.CUT: (30, 90),
    Task.CUT_LINING: (20, 45),
    Task.MARK: (20, 60),
    Task.DART: (6, 12),
    Task.PANEL: (15, 30),
    Task.FACE: (20, 35),
    Task.LOOP: (4, 8),
    Task.SLEEVES: (40, 75),
    Task.ZIP: (25, 45),
    Task.VISIBLE_ZIP: (15, 30),
    Task.FLY: (45, 75),
    Task.BUTTONHOLE: (3, 5),
    Task.SIDE_POCKET: (20, 35),
    Task.SLANT_POCKET: (30, 45),
    Task.PATCH_POCKET: (15, 25),
    Task.WELT_POCKET: (45, 90),
    Task.LINING: (60, 150),
    Task.BAND: (25, 50),
    Task.CUFFS: (25, 50),
    Task.PLACKETS: (20, 40),
    Task.FLAT_COLLAR: (40, 60),
    Task.STAND_COLLAR: (30, 45),
    Task.SHIRT_COLLAR: (60, 90),
    Task.SHAWL_COLLAR: (60, 120),
    Task.HEM: (20, 40),
    Task.CIRCLE_HEM: (45, 120),
    Task.FINISH: (20, 45),
    # "boning bodice (12 bones)", 90 to 180
    Task.BONE: (7.5, 15),
    # half of "shoulder and side seams", 15 to 30
    Task.SEAMS: (7.5, 15),
    # common practice, no source
    Task.ACROSS: (15, 30),
    Task.MARK_ALONE: (20, 60),
    Task.STAY: (6, 15),
    Task.BAG: (10, 25),
    Task.PLEAT: (4, 8),
    Task.BUTTON: (2, 5),
    Task.HOOK: (3, 6),
    Task.GATHER: (10, 25),
    Task.WAIST: (15, 30),
    Task.NARROW_HEM: (8, 20),
    Task.BY_HAND: (10, 25),
}
"""Shortest and longest usual time of each task, minutes."""


def usual(task: Task) -> float:
    """The first third of the task's range, to whole minutes."""
    low, high = RANGES[task]
    return float(int((2 * low + high) / 3 + 0.5))


USUAL: Mapping[Task, float] = {task: usual(task) for task in Task}
"""Minutes of every task where a house says nothing else."""
