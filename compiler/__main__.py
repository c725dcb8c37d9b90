"""The program's door: an interrupt while it is still being loaded ends it as quietly as later."""

from __future__ import annotations

import gc
import sys


def main() -> None:
    """Run the commands."""
    try:
        from stemline.commands import main as commands

        commands()
    except KeyboardInterrupt:
        sys.exit(130)
    finally:
        # All that is left goes with the process: looking through it for circles takes half a second
        # after a build.
        gc.freeze()
        # An interrupt inside a class being made stays marked as nobody's, though it was told, and
        # Python would end by the signal: the mark goes when it next runs a text.
        exec("")


if __name__ == "__main__":
    main()
