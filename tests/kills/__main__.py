"""Stop many builds of a playbook, and print what they left."""

from __future__ import annotations

import argparse
import sys
import tempfile
from pathlib import Path

from .harness import stopped, two_books, whole_builds


def main() -> None:
    parser = argparse.ArgumentParser(prog="python -m tests.kills", description=__doc__)
    parser.add_argument("playbook", type=Path)
    parser.add_argument("--kills", type=int, default=200, help="a quarter of them by SIGTERM")
    parser.add_argument("--interrupts", type=int, default=100)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--whole", type=int, default=0, help="processes of their own to kill too")
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as work:
        books = two_books(asked.playbook, Path(work))
        report = stopped(books, Path(work), asked.kills, asked.interrupts, asked.seed)
        if asked.whole:
            whole_builds(books, Path(work), asked.whole, asked.seed, report)
    print("\n".join(report.lines()))
    sys.exit(bool(report.faults))


if __name__ == "__main__":
    main()
