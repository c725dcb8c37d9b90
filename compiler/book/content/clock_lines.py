"""The quarterback's clock as lines of a terminal: a call, a concept's sameness, reads by looks."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from stemline.book.content.letters import mark
from stemline.football.play import Play
from stemline.football.timing.clock import ReadClock, TimedRead, Verdict
from stemline.football.timing.coverage import TOLD, Against, Cover, Separation
from stemline.football.timing.space import Measured, MenCross, crossings, measured

_MARKS = {Cover.OPEN: "open", Cover.TIGHT: "tight", Cover.COVERED: "-", Cover.LATE: "late",
          Cover.NEVER: "no"}  # fmt: skip


def clock_lines(play: Play, clock: ReadClock) -> Iterator[str]:
    """One call: its feet, a line a read, what crosses and what it claims."""
    feet = ", ".join(f"{foot.name} {foot.time:.1f}" for foot in clock.feet)
    yield f"{play.call.spoken}, ball {_place(play)}; feet down at {feet or 'no time said'}"
    yield from _table([_row(look) for look in (*clock.reads, *clock.beside)])
    if clock.pressure:
        order = " > ".join(f"{p.read.target} {p.thrown:.1f}" for p in clock.pressure)
        free = "" if clock.rusher is None else f"; a free rusher is there at {clock.rusher:.1f}"
        yield f"    pressure {order}{free}"
    last = max((look.arrives for look in clock.reads), default=0.0)
    yield from (f"    {_met(met)}" for met in crossings(clock.men) if met.time <= last)
    yield from (f"    {_claimed(shape)}" for shape in measured(play, clock))


def _place(play: Play) -> str:
    return play.ball.value if play.ball.value == "middle" else f"on the {play.ball.value}"


def _row(look: TimedRead) -> tuple[str, ...]:
    window = look.window
    return (
        str(look.read.number or "key"),
        look.read.target,
        window.man if window else "-",
        f"off {look.foot}",
        f"thrown {look.thrown:.1f}",
        f"{look.distance:.0f} yards",
        f"there {look.arrives:.1f}" if look.thrown_to else "",
        f"open {max(window.opens, 0):.1f} to {window.closes:.1f}" if window else "",
        verdict(look),
    )


def verdict(look: TimedRead) -> str:
    """On time; early or late and by how much; out of reach; nobody there."""
    if look.verdict in (Verdict.EARLY, Verdict.LATE):
        return f"{look.verdict.value} by {look.misses:.1f} s"
    return str(look.verdict.value)


def _met(crossing: MenCross) -> str:
    return (
        f"{crossing.over} over {crossing.under} at {crossing.time:.1f} s, "
        f"{crossing.apart:.1f} yards apart: {crossing.meeting.value}"
    )


def _claimed(shape: Measured) -> str:
    holds = "holds" if shape.holds else f"does not hold, {shape.wish} are wanted"
    return f"{shape.claim.kind} of {', '.join(shape.claim.targets)}: {shape.words}; {holds}"


def sameness_lines(plays: Sequence[Play], clocks: Mapping[str, ReadClock]) -> Iterator[str]:
    """Every call of a concept against its first: feet, the order of the eyes, what is on time."""
    base = plays[0]
    yield f"{base.call.concept}: the quarterback's job in {len(plays)} calls"
    rows = [_same(play, clocks[play.call.spoken], base, clocks[base.call.spoken]) for play in plays]
    yield from _table([("call", "feet", "reads", "rhythm", "on time"), *rows])
    wrong = sum(any(cell.startswith("not ") for cell in row[1:]) for row in rows)
    yield "    all equal" if not wrong else f"    {wrong} of {len(rows)} differ"


def _same(play: Play, clock: ReadClock, base: Play, first: ReadClock) -> tuple[str, ...]:
    feet = tuple(step.name for step in play.feet)
    reads = tuple(read.target for read in play.reads)
    rhythm = [round(look.thrown, 2) for look in clock.reads]
    late, before = _late(clock), _late(first)
    return (
        play.call.spoken,
        _cell(feet == tuple(step.name for step in base.feet), ", ".join(feet)),
        _cell(reads == tuple(read.target for read in base.reads), " > ".join(reads)),
        _cell(
            rhythm == [round(look.thrown, 2) for look in first.reads], " ".join(map(str, rhythm))
        ),
        _cell(late == before, "; ".join(late) or "yes"),
    )


def _late(clock: ReadClock) -> list[str]:
    """Each read that is not on time, and how."""
    late = [look for look in clock.reads if look.verdict is not Verdict.ON_TIME]
    return [f"{look.read.target} {verdict(look)}" for look in late]


def _cell(same: bool, words: str) -> str:
    return "same" if same else f"not the same: {words}"


def look_lines(rows: Sequence[Against], checks: Mapping[str, str]) -> Iterator[str]:
    """Reads by looks: how far the nearest defender is at the catch, and who is thrown to first.

    A free rusher stands with his time and what the pressure order throws before he is there;
    ``checks`` are what to check to against the looks that leave nobody.
    """
    if not rows:
        return
    targets = [part.read.read.target for part in rows[0].reads]
    free = ("free rusher",) if any(row.rusher is not None for row in rows) else ()
    table = [("against", *targets, "thrown to", *free)]
    for row in rows:
        cells = [_separation(part) for part in row.reads]
        first = first_of(row, checks)
        table.append((row.look, *cells, first, *((_rusher(row),) if free else ())))
    yield from _table(table)


def first_of(row: Against, checks: Mapping[str, str]) -> str:
    """Who is thrown to against a look; nobody, and what to check to."""
    best = row.best or row.hot
    if best is not None:
        return best.read.read.target
    to = checks.get(row.look, "")
    return f"nobody: check to {to}" if to else "nobody"


def _separation(part: Separation) -> str:
    """Yards, the nearest defender and how the read is covered; a screen is behind the line."""
    if part.cover is Cover.NEVER:
        return _MARKS[part.cover]
    behind = " behind" if part.behind and part.cover is Cover.OPEN else ""
    yards = f"{TOLD:.0f}+ " if part.yards > TOLD else f"{part.yards:.1f}"
    return f"{yards} {mark(part.nearest)} {_MARKS[part.cover]}{behind}"


def _rusher(row: Against) -> str:
    if row.rusher is None:
        return ""
    return f"{row.rusher:.1f} s: {row.hot_words or 'nobody'}"


def _table(rows: Sequence[tuple[str, ...]]) -> Iterator[str]:
    """Cells in columns, four spaces in."""
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    for row in rows:
        cells = (cell.ljust(width) for cell, width in zip(row, widths, strict=True))
        yield ("    " + "  ".join(cells)).rstrip()
