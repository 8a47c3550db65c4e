"""Where the command begins, before anything else is loaded: a Ctrl-C meanwhile ends it
without a word."""

import os
import signal
from types import FrameType

STOPPED = 130
"""Exit code of a command that Ctrl-C ended."""


def _stop(signum: int, frame: FrameType | None) -> None:
    os._exit(STOPPED)  # an exception could be caught halfway through a module


def main() -> None:
    """Load the command line and run it."""
    signal.signal(signal.SIGINT, _stop)
    from clothwright.cli import main as run

    signal.signal(signal.SIGINT, signal.default_int_handler)
    run()


if __name__ == "__main__":
    main()
