"""Ink on a PDF canvas, told in the cutter's terms: cm, y down, from the upper left.

Only this module and `pdf` know that PDF counts points upwards.
"""

from typing import TYPE_CHECKING

from clothwright.curves import Path
from clothwright.finishing.drawn import DrawnText
from clothwright.sheets import letters
from clothwright.sheets.looks import Look, Stroke

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas
    from reportlab.pdfgen.pathobject import PDFPathObject

CM = 72 / 2.54
"""Points in a centimetre."""

MM = CM / 10
"""Points in a millimetre."""


class InkPen:
    """Listens to a path and tells it to a PDF path object."""

    def __init__(self, path: "PDFPathObject", height: float) -> None:
        self.path, self.height = path, height

    def _at(self, p: tuple[float, float]) -> tuple[float, float]:
        return p[0] * CM, (self.height - p[1]) * CM

    def moveTo(self, pt: tuple[float, float]) -> None:
        """Lift the pen and set it down."""
        self.path.moveTo(*self._at(pt))

    def lineTo(self, pt: tuple[float, float]) -> None:
        """A straight line."""
        self.path.lineTo(*self._at(pt))

    def curveTo(self, *points: tuple[float, float]) -> None:
        """A cubic."""
        a, b, c = (self._at(p) for p in points)
        self.path.curveTo(*a, *b, *c)

    def closePath(self) -> None:
        """Close the loop."""
        self.path.close()

    def endPath(self) -> None:
        """Leave the line open."""


class Ink:
    """Draws on a canvas whose upper left corner lies `height` cm above its foot."""

    def __init__(self, canvas: "Canvas", height: float) -> None:
        self.canvas, self.height = canvas, height
        canvas.setLineJoin(1)

    def _pen(self, look: Look) -> "Canvas":
        c = self.canvas
        c.setLineWidth(look.width * MM)
        c.setDash([d * MM for d in look.dashes], look.phase * MM)
        c.setStrokeGray(look.grey)
        return c

    def draw(self, path: Path, look: Look, *, solid: bool = False) -> None:
        """A line in its look, or a filled figure."""
        c = self._pen(look)
        told = c.beginPath()
        path.draw(InkPen(told, self.height))
        c.drawPath(told, stroke=1, fill=int(solid))

    def stroke(self, stroke: Stroke) -> None:
        """A stroke of a piece."""
        self.draw(stroke.path, stroke.look, solid=stroke.solid)

    def line(self, a: tuple[float, float], b: tuple[float, float], look: Look) -> None:
        """A straight line."""
        c = self._pen(look)
        y0, y1 = self.height - a[1], self.height - b[1]
        c.line(a[0] * CM, y0 * CM, b[0] * CM, y1 * CM)

    def box(self, x: float, y: float, width: float, height: float, look: Look) -> None:
        """An upright rectangle by its upper left corner."""
        c = self._pen(look)
        foot = (self.height - y - height) * CM
        c.rect(x * CM, foot, width * CM, height * CM)

    def ring(self, x: float, y: float, radius: float, look: Look) -> None:
        """A circle."""
        c = self._pen(look)
        c.circle(x * CM, (self.height - y) * CM, radius * CM)

    def write(
        self,
        text: str,
        x: float,
        y: float,
        height: float,
        *,
        bold: bool = False,
        middle: bool = False,
    ) -> None:
        """Words whose foot line is at `y`, starting (or centred) at `x`."""
        c = self.canvas
        line = letters.in_order(text, bold=bold)
        font = letters.BOLD if bold else letters.PLAIN
        c.setFont(font, height / letters.CAPITAL * CM)
        say = c.drawCentredString if middle else c.drawString
        say(x * CM, (self.height - y) * CM, line)

    def blank(self, text: DrawnText) -> None:
        """White paper where words are to stand in a line."""
        c = self.canvas
        wide = letters.width(text.text, text.height, bold=text.bold) + text.height * 0.5
        c.saveState()
        c.translate(text.at.x * CM, (self.height - text.at.y) * CM)
        c.rotate(-text.degrees)
        c.setFillGray(1)
        tall = text.height * 1.2
        c.rect(-wide / 2 * CM, -tall / 2 * CM, wide * CM, tall * CM, stroke=0, fill=1)
        c.restoreState()

    def words(self, text: DrawnText) -> None:
        """Words of a piece: centred on their place, turned clockwise."""
        c = self.canvas
        line = letters.in_order(text.text, bold=text.bold)
        font = letters.BOLD if text.bold else letters.PLAIN
        c.saveState()
        c.translate(text.at.x * CM, (self.height - text.at.y) * CM)
        c.rotate(-text.degrees)
        c.setFont(font, text.height / letters.CAPITAL * CM)
        c.drawCentredString(0, -text.height / 2 * CM, line)
        c.restoreState()
