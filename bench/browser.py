"""From a change to the new drawing, in a real browser, for the main garment.

A number's tape is pulled as a hand pulls it; the time runs from the change until the
outlines of all its pieces are others and the frame that shows them has been painted:
the pieces come in one message, so a MutationObserver on one of them sees all, and a
message posted in the next animation frame comes back after its layout and painting.

On a machine with other work: chrt -r 5 python bench/browser.py
"""

import statistics
import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent / "tests"))

from app.browsing import browser, served

ROUNDS = 120
PULLS = {
    "neckline.depth": ("FC", 8.0, 0.15875),
    "peplum.length": ("PF", 15.0, 0.15875),
    "low open back.depth": ("BC", 15.0, 0.15875),
}

TIMED = """async ([of, code, from, grain, rounds]) => {
  const times = [];
  await room.slip.show(of);
  const { tape } = room.slip.open;
  tape.pulling = { x: 0, v: from }; // a hand holds it
  for (let i = 0; i < rounds; i++) {
    const g = () => document.querySelector(`[data-code="${code}"]`);
    const layer = g().parentNode, posted = new MessageChannel();
    const before = g().querySelector('.cutout').getAttribute('d');
    const t0 = performance.now();
    await new Promise((done) => {
      const seen = new MutationObserver(() => {
        if (g()?.querySelector('.cutout').getAttribute('d') !== before) {
          seen.disconnect();
          posted.port1.onmessage = () => {
            times.push(performance.now() - t0);
            done();
          };
          requestAnimationFrame(() => posted.port2.postMessage(0));
        }
      });
      seen.observe(layer, { subtree: true, childList: true, attributes: true });
      tape.pull(from + grain * (1 + i % 12), true);
    });
    await new Promise((rest) => setTimeout(rest, 20)); // a hand is no faster
  }
  return times;
}"""


def main() -> None:
    """Print the median and the 95th of a hundred for each number pulled."""
    with (
        tempfile.TemporaryDirectory() as folder,
        served(Path(folder) / "book.db") as home,
        browser() as chromium,
    ):
        page = chromium.new_page(viewport={"width": 1440, "height": 900})
        page.goto(home)
        page.get_by_role("button", name="try it with a made-up client").click()
        page.wait_for_selector("[data-code=FC]", state="attached")
        page.wait_for_timeout(1500)
        for of, (code, start, grain) in PULLS.items():
            times = page.evaluate(TIMED, [of, code, start, grain, ROUNDS])[5:]
            cuts = statistics.quantiles(times, n=100)
            print(
                f"{of:22} median {statistics.median(times):5.1f} ms, "
                f"95 of 100 within {cuts[94]:5.1f} ms"
            )


if __name__ == "__main__":
    main()
