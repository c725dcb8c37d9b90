"""The program's door: an interrupt ends it the same wherever it falls, whatever became of it."""

from __future__ import annotations

import gc
import signal
import sys


def main() -> None:
    """Run the commands."""
    try:
        from stemline.outside.interrupts import Interrupts

        # Left to the system once all is done: what Python still clears away would print it.
        with Interrupts(then=signal.SIG_DFL) as interrupts:
            try:
                from stemline.commands import main as commands

                commands()
            finally:
                # All that is left goes with the process: looking through it for circles takes half
                # a second after a build.
                gc.freeze()
                interrupts.heed()
    except KeyboardInterrupt:
        # An interrupt inside a class being made stays marked as nobody's, though it was told, and
        # Python would end by the signal: the mark goes when it next runs a text.
        exec("")
        sys.exit(130)


if __name__ == "__main__":
    main()
