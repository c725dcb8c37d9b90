"""Hostile texts without end, or as many as asked for: how many there were, and what went wrong."""

from __future__ import annotations

import argparse
from itertools import count, islice

from .running import Result, results


def main() -> None:
    parser = argparse.ArgumentParser(prog="python -m tests.hostile", description=__doc__)
    parser.add_argument("--count", type=int, help="how many texts; without it, until stopped")
    parser.add_argument("--seed", type=int, default=1, help="another seed, other texts")
    parser.add_argument("--first", type=int, default=0, help="the number of the first text")
    parser.add_argument("--seconds", type=float, default=5, help="CPU seconds that a text may take")
    parser.add_argument("--jobs", type=int, default=1, help="processes at once")
    parser.add_argument("--slowest", type=int, default=10, help="how many of the slowest to tell")
    asked = parser.parse_args()
    numbers = islice(count(asked.first), asked.count)
    tally = _Tally(asked.seconds, asked.slowest)
    try:
        for result in results(asked.seed, numbers, asked.seconds, asked.jobs):
            tally.add(result)
            if tally.texts % 500 == 0:
                print(tally.line(), flush=True)
    except KeyboardInterrupt:
        print("stopped")
    print(tally.told())
    raise SystemExit(1 if tally.faults or tally.slow else 0)


class _Tally:
    """What the texts came to."""

    def __init__(self, seconds: float, most: int) -> None:
        self._seconds, self._most = seconds, most
        self.texts = self._plays = self.faults = self.slow = self.tracebacks = 0
        self._bytes = 0
        self._total = 0.0
        self._slowest: list[Result] = []

    def add(self, result: Result) -> None:
        judged = result.judged
        self.texts += 1
        self._plays += judged.play
        self._bytes += result.size
        self._total += judged.seconds
        self.tracebacks += judged.fault.startswith("Traceback")
        self.slow += judged.seconds > self._seconds
        if judged.fault:
            self.faults += 1
            print(f"{_name(result)}\n{judged.fault.rstrip()}\n", flush=True)
        self._slowest = sorted((*self._slowest, result), key=lambda r: -r.judged.seconds)
        del self._slowest[self._most :]

    def line(self) -> str:
        return (
            f"{self.texts:,} texts, {self._bytes / 1e6:.1f} MB, {self._plays:,} with a play: "
            f"{self.tracebacks} tracebacks, {self.faults} faults in all, "
            f"{self.slow} over {self._seconds:g} s; {self._total:.0f} CPU s"
        )

    def told(self) -> str:
        rows = [f"  {r.judged.seconds:5.2f} s  {_name(r)}" for r in self._slowest]
        return "\n".join((self.line(), "slowest:", *rows))


def _name(result: Result) -> str:
    return f"seed {result.seed} number {result.number}: {result.size:,} bytes, {result.done}"


main()
