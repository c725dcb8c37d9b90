"""Print what each stage costs a call, and how long a season against many looks takes.

CPU time of all processes, so that a busy machine changes little, but where a row says "by the
clock". No file of the program may change meanwhile: it would keep nothing. The figures of two
machines are compared by the last column: times divided by that of a fixed piece of work done in
the same run.
"""

from __future__ import annotations

import argparse
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from stemline.football.field import BallSpot
from stemline.football.timing.clock import read_clock
from stemline.football.timing.coverage import against
from stemline.outside.project import read_files
from stemline.resolve.expand import Expander
from stemline.resolve.order import Order
from stemline.session import Session
from stemline.syntax.parser import parse

from .calls import PLAYBOOKS, fresh_book, many_orders
from .commands import BOOKS, BRIEF, PARTS, Asked, compared
from .papers import built
from .revisions import revisions
from .season import checked


@dataclass(frozen=True)
class Row:
    """What was measured: CPU seconds in all, for so many pieces."""

    what: str
    seconds: float
    pieces: int


def main() -> None:
    parser = argparse.ArgumentParser(prog="python -m tests.bench", description=__doc__)
    parser.add_argument("--playbook", default="saltmarsh-herons", help="a bundled one")
    parser.add_argument("--calls", type=int, default=600)
    parser.add_argument("--looks", type=int, default=8)
    parser.add_argument("--build", action="store_true", help="build the book too, which takes long")
    parser.add_argument("--commands", action="store_true", help="time whole commands instead")
    parser.add_argument(
        "--revisions", action="store_true", help="compare two of a playbook instead"
    )
    parser.add_argument("--against", default="", help="a git revision, timed in the same run")
    parser.add_argument("--of", default="", help="the git revision that is timed, not the files")
    parser.add_argument("--books", default=",".join(BOOKS), help="of so many calls, or bundled")
    parser.add_argument("--only", default=",".join(PARTS), help="what of each book is timed")
    parser.add_argument("--times", type=int, default=1, help="the best of so many is told")
    parser.add_argument(
        "--brief", action="store_true", help="one book, which the other revision builds only once"
    )
    asked = parser.parse_args()
    if asked.commands or asked.against or asked.brief:
        books, parts = (tuple(each.split(",")) for each in (asked.books, asked.only))
        if asked.brief:
            books, parts = (BRIEF[0],), BRIEF[1]
        whole = Asked(books, parts, asked.of, asked.against, asked.times, once=asked.brief)
        for line in compared(whole):
            print(line, flush=True)
        return
    if asked.revisions:
        for line in revisions(asked.playbook, asked.calls):
            print(line, flush=True)
        return
    orders = many_orders(asked.playbook, asked.calls)
    reference = _reference()
    rows = [*_check(asked.playbook), *_season(asked.playbook, orders, asked.looks)]
    rows += (Row(*row) for row in checked(asked.playbook, orders, asked.looks))
    if asked.build:
        rows += (Row(what, seconds, 1) for what, seconds in built(asked.playbook))
    print(f"{'':36}{'pieces':>8}{'seconds':>10}{'ms each':>10}{'ratio':>10}")
    for row in rows:
        each = 1000 * row.seconds / row.pieces
        print(f"{row.what:36}{row.pieces:8}{row.seconds:10.2f}{each:10.3f}"
              f"{row.seconds / reference:10.2f}")  # fmt: skip
    print(f"the reference took {reference:.3f} s; ratio is seconds by it")


def _check(name: str) -> list[Row]:
    sources = read_files(PLAYBOOKS / name).sources
    parsing = _took(lambda: [parse(source) for source in sources])
    reading = _took(lambda: fresh_book(name))
    compiled = Session(sources, name)
    checking = _took(lambda: Session(sources, name))
    calls = len(compiled.calls.orders)
    return [
        Row("parse, a call", parsing, calls),
        Row("parse and read, a call", reading, calls),
        Row("parse, read, expand and prove", checking, calls),
    ]


def _season(name: str, orders: Sequence[Order], most: int) -> list[Row]:
    """Stage by stage: every call alone, then every call against each look."""
    book = fresh_book(name)
    keys = list(book.looks)[:most]
    if not keys:
        raise SystemExit(f"{name} has no looks")
    level, spot = book.settings.level, BallSpot.MIDDLE

    def alone() -> None:
        expander = Expander(book)
        for order in orders:
            expander.expand(order, spot)

    rows = [Row("expand", _took(alone), len(orders))]
    expander = Expander(book)
    pairs = [(order, key) for order in orders for key in keys]
    spent = {"expand against a look": 0.0, "clock": 0.0, "coverage": 0.0}
    passes = 0
    for order, key in pairs:
        began = time.process_time()
        play, _ = expander.expand(order, spot, (), key)
        spent["expand against a look"] += time.process_time() - began
        if play is None or play.defence is None or not play.reads:
            continue
        passes += 1
        began = time.process_time()
        clock = read_clock(play, level)
        spent["clock"] += time.process_time() - began
        began = time.process_time()
        against(play, clock, level)
        spent["coverage"] += time.process_time() - began
    pieces = {"expand against a look": len(pairs), "clock": passes, "coverage": passes}
    rows += [Row(what, seconds, pieces[what]) for what, seconds in spent.items()]
    what = f"{len(orders)} calls x {len(keys)} looks, in all"
    every = sum(spent.values())
    one = sum(seconds / pieces[what] for what, seconds in spent.items())
    # A pass costs all three: its own figure, whatever part of the calls are runs.
    return [*rows, Row("a pass against a look", one, 1), Row(what, every, len(pairs))]


def _took(work: Callable[[], object]) -> float:
    """CPU seconds of the better of two runs."""
    times = []
    for _ in range(2):
        began = time.process_time()
        work()
        times.append(time.process_time() - began)
    return min(times)


def _reference() -> float:
    """CPU seconds of a fixed piece of work much like ours: small objects, sorted and looked up."""

    def work() -> int:
        found = 0
        for n in range(40_000):
            rows = tuple(Row(str(k), float((k * n) % 7), k) for k in range(6))
            ordered = sorted(rows, key=lambda row: (row.seconds, row.what))
            found += {row.what: row.pieces for row in ordered}[str(n % 6)]
        return found

    return _took(work)


if __name__ == "__main__":  # the processes that a check starts read this file too
    main()
