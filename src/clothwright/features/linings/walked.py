"""The step in which a lining's seams are walked."""

from clothwright.paper import Drafting, Sheet, Verb

AS_SHELL = "as the shell's, and where it is sewn to the shell or the facing"


def lay_walked(
    d: Drafting,
    sheet: Sheet,
    says: str = "every seam of the lining walked and notched",
    detail: str = AS_SHELL,
) -> None:
    """Keep the table on which the lining's seams are stated."""
    d.lay(Verb.SEW, sheet, "lining seams", says, detail=detail)
