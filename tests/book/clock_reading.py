"""The quarterback's clock read back: the strip's picture, the printed lines, the page's order.

The strip's seconds are read off its own pale lines, as a reader does: where the ball's line begins
it leaves the hand, the tick at its end is the catch, the bar is how long the read is open.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from job_reading import holds
from word_reading import in_the_end

from stemline.book.content.answer_table import Answers, ThrowCell
from stemline.book.content.clock_lines import clock_lines, look_lines
from stemline.book.content.quarterback_strip import Quarterback
from stemline.football.play import Play, Read
from stemline.football.timing.clock import ReadClock, TimedRead, Verdict
from stemline.football.timing.coverage import TOLD, Against, Cover, Separation
from stemline.picture.scene.scene import Plate, Scene, Stroke, TextRun

MOMENT = 0.02
"""Seconds by which a moment read off the strip may be another than the clock's."""


@dataclass(frozen=True)
class _Row:
    """One read as the strip has it: its number, what and who, its moments, the words beside it."""

    number: str
    target: str
    man: str
    words: str
    ball: tuple[float, float] | None
    window: tuple[float, float] | None
    tick: float | None


def strip_off(play: Play, clock: ReadClock, scene: Scene) -> Iterator[str]:
    """What the strip of a call has other than its play and its clock."""
    rows = list(_rows(scene))
    if [r.number for r in rows] != [str(read.number) for read in play.reads]:
        yield f"rows {[r.number for r in rows]}, reads {[r.number for r in play.reads]}"
        return
    for row, read, timed in zip(rows, play.reads, clock.reads, strict=True):
        yield from (f"{row.number} {row.target}: {w}" for w in _row_off(row, read, timed, clock))
    yield from _feet_off(play, clock, scene)
    for row, timed in zip(rows, clock.reads, strict=True):
        said = f"{row.number}: {row.target}, "
        if said not in scene.description or f"{timed.arrives:.1f}" not in scene.description:
            yield f"{row.number} is not spoken of"


def _row_off(row: _Row, read: Read, timed: TimedRead, clock: ReadClock) -> Iterator[str]:
    if row.target != read.target or timed.read != read:
        yield f"is drawn for {read.target}"
    if row.man not in (read.men or ("-",)) and row.man != "-":
        yield f"{row.man}, but {read.men} are there"
    if (row.man == "-") != (timed.window is None):
        yield f"{row.man}, the clock has {timed.window}"
    if timed.window is not None:
        shown = max(timed.window.opens, 0.0), timed.window.closes
        yield from _apart("is open", row.window, shown, _last(clock))
        if timed.verdict is not Verdict.TOO_FAR:
            yield from _apart("is thrown", row.ball, (timed.thrown, timed.arrives), _last(clock))
            yield from _apart("tick", (row.tick,) * 2, (timed.arrives,) * 2, _last(clock))
    early = {Verdict.EARLY: "early", Verdict.LATE: "late"}.get(timed.verdict)
    words = f"{timed.misses:.1f} s {early}" if early else timed.verdict.value
    if row.words != f"{timed.distance:.0f} yards, {words}":
        yield f"says {row.words}"


def _last(clock: ReadClock) -> float:
    """The strip's right end: what is later is drawn there."""
    ends = [look.arrives for look in clock.reads]
    closes = [look.window.closes for look in clock.reads if look.window]
    return max(3.0, *(e + 0.3 for e in ends), min(max(closes, default=0.0), 5.0))


def _apart(
    what: str,
    drawn: Sequence[float | None] | None,
    clock: tuple[float, float],
    last: float,
) -> Iterator[str]:
    for mine, its in zip(drawn or (None, None), clock, strict=True):
        # a bar is never drawn narrower than a fifth of the strip's unit
        narrow = what == "is open" and clock[1] - clock[0] <= 0.2
        if mine is None or (abs(mine - min(its, last)) > MOMENT and not narrow):
            yield f"{what} {drawn}, the clock has {clock}"
            return


def _seconds(scene: Scene) -> tuple[float, float]:
    """x of the snap and of the first second."""
    zero = min(
        i.segments[0].start.x for i in scene.items if isinstance(i, Stroke) and i.style == "foot"
    )
    one = min(
        i.segments[0].start.x for i in scene.items if isinstance(i, Stroke) and i.style == "second"
    )
    return zero, one


def _rows(scene: Scene) -> Iterator[_Row]:
    zero, one = _seconds(scene)

    def time(x: float) -> float:
        return (x - zero) / (one - zero)

    texts = [i for i in scene.items if isinstance(i, TextRun)]
    for name in sorted((t for t in texts if " · " in t.text), key=lambda t: -t.at.y):
        beside = [t for t in texts if abs(t.at.y - name.at.y) < 0.3]
        target, _, man = name.text.rpartition(" · ")
        level = [i for i in scene.items if isinstance(i, Stroke) and _on(i, name.at.y)]
        ball = next((i for i in level if i.style == "ball"), None)
        tick = next((i for i in level if i.style == "arrival"), None)
        bar = next(
            (i for i in scene.items if isinstance(i, Plate) and i.style == "window"
             and i.box.bottom < name.at.y + 0.2 < i.box.top), None,
        )  # fmt: skip
        yield _Row(
            number=next((t.text for t in beside if t.text.isdigit()), ""),
            target=target,
            man=man,
            words=next((t.text for t in beside if " yards, " in t.text), ""),
            ball=(time(ball.segments[0].start.x), time(ball.segments[-1].end.x)) if ball else None,
            window=(time(bar.box.left), time(bar.box.right)) if bar else None,
            tick=time(tick.segments[0].start.x) if tick else None,
        )


def _on(line: Stroke, y: float) -> bool:
    ends = (line.segments[0].start.y, line.segments[-1].end.y)
    return abs(sum(ends) / 2 - y) < 0.6


def _feet_off(play: Play, clock: ReadClock, scene: Scene) -> Iterator[str]:
    zero, one = _seconds(scene)
    last = _last(clock)
    drawn = {
        round((i.segments[0].start.x - zero) / (one - zero), 2)
        for i in scene.items
        if isinstance(i, Stroke) and i.style == "foot-down"
    }
    wanted = {foot.time for foot in clock.feet} | {look.ready for look in clock.reads}
    for time in wanted:
        if not any(abs(min(time, last) - x) <= MOMENT for x in drawn):
            yield f"no foot at {time:.2f}, only {sorted(drawn)}"
    for x in drawn:
        if not any(abs(min(time, last) - x) <= MOMENT for time in wanted):
            yield f"a foot at {x}, the clock has {sorted(wanted)}"
    names = {i.text for i in scene.items if isinstance(i, TextRun) and i.style == "clock-foot"}
    given = [x.in_short for x in play.exchanges if x.said]
    told = {step.name for step in play.feet} | {look.foot for look in clock.reads} | {"snap"}
    told |= set(given)
    if not names <= told:
        yield f"feet {names - told} are no step of his"
    steps = [foot.name for foot in clock.feet]
    own = [step.name for step in play.feet if step.said != "hand-off"]
    if [s for s in steps if s not in given] != own or [s for s in steps if s in given] != given:
        yield f"the clock's feet {steps}"


# Lines of a terminal.


def printed_off(play: Play, clock: ReadClock) -> Iterator[str]:
    """What the printed lines of a call have other than its play and its clock."""
    head, *lines = clock_lines(play, clock)
    feet = dict(re.findall(r"(\w[\w ]*) (\d+\.\d)", head.partition("feet down at")[2]))
    wanted = {foot.name: f"{foot.time:.1f}" for foot in clock.feet}
    if feet != wanted:
        yield f"feet {feet}, the clock has {wanted}"
    rows = [re.split(r" {2,}", line.strip()) for line in lines[: len(play.reads)]]
    for row, read, timed in zip(rows, play.reads, clock.reads, strict=True):
        window = timed.window
        said = [
            str(read.number), read.target, window.man if window else "-", f"off {timed.foot}",
            f"thrown {timed.thrown:.1f}", f"{timed.distance:.0f} yards",
        ]  # fmt: skip
        if row[:6] != said:
            yield f"{row[:6]}, not {said}"
        if (
            window is not None
            and f"open {max(window.opens, 0):.1f} to {window.closes:.1f}" not in row
        ):
            yield f"{row}: no window"
        if timed.thrown_to and f"there {timed.arrives:.1f}" not in row:
            yield f"{row}: not there at {timed.arrives:.1f}"
        if window is not None and read.men and window.man not in read.men:
            yield f"{row}: {window.man} is not of {read.men}"
    for pressed in clock.pressure:
        if f"{pressed.read.target} {pressed.thrown:.1f}" not in "\n".join(lines):
            yield f"{pressed.read.target} under pressure is not printed"


# The page's order of reads, call by call.


def order_off(page: Quarterback, base: Play, play: Play, plays: Sequence[Play]) -> Iterator[str]:
    """What the page's strip and its exceptions tell the quarterback other than ``play`` does."""
    mine = [c for c in page.but if holds(c.calls, play, plays)]
    heads = {
        "feet": "steps: ", "reads": "reads: ", "pressure": "under pressure: ",
        "alert": "alert: ", "claim": "shape: ", "last": "nobody open: ",
    }  # fmt: skip
    nothing = {
        "feet": "no steps said", "reads": "no reads", "pressure": "no read under pressure",
        "alert": "no alert", "claim": "no shape to read",
        "last": "nothing said for when nobody is open",
    }  # fmt: skip
    for part, own in _own(play).items():
        said = [c.words.removeprefix(heads[part]) for c in mine if c.part == part]
        if len(said) > 1:
            yield f"two say his {part}: {said}"
            continue
        told = said[0] if said else _own(base)[part]
        if (told if told != nothing[part] else "") != own:
            yield f"{part} {told}, not {own}"
    if play is base:
        yield from _strip_off(page, play)


def _own(play: Play) -> dict[str, str]:
    """A play's feet, reads, pressure, alerts and shapes in the fewest words."""
    feet = (f"{s.name} to the {s.side.word}" if s.side is not None else s.called for s in play.feet)
    reads = (
        f"{r.number} {r.target}"
        + (f" with {r.partner}" if r.partner else "")
        + (f" on {r.foot}" if r.foot else "")
        for r in play.reads
    )
    return {
        "feet": ", ".join(feet),
        "reads": ", ".join(reads),
        "pressure": ", ".join(f"{r.number} {r.target}" for r in play.pressure),
        "alert": ", ".join(a.target + (f", when {a.when}" if a.when else "") for a in play.alerts),
        "claim": "; ".join(
            f"{c.kind}{f' on {c.on}' if c.on else ''}: {', '.join(c.targets)}" for c in play.claims
        ),
        "last": in_the_end(play),
    }


def _strip_off(page: Quarterback, play: Play) -> Iterator[str]:
    """The first call's own strip: every read once, in order, under the step that throws it."""
    under = [(look, stop.name) for stop in page.stops for look in stop.looks]
    under += [(look, "") for look in page.loose]
    under.sort(key=lambda one: one[0].number)
    drawn = [(look.number, look.target, look.men, foot) for look, foot in under]
    names = {step.name for step in play.feet}
    own = [
        (r.number, r.target, " ".join(r.men), r.foot if r.foot in names else "") for r in play.reads
    ]
    if drawn != own:
        yield f"strip {drawn}, the play {own}"
    if [stop.name for stop in page.stops] != [step.called for step in play.feet]:
        yield f"steps {[stop.name for stop in page.stops]}"
    pressed = [(look.number, look.target) for look in page.pressure]
    if pressed != [(r.number, r.target) for r in play.pressure]:
        yield f"under pressure {pressed}"
    kept = {r.target for r in play.pressure}
    left = tuple(r.target for r in play.reads if kept and r.target not in kept)
    if page.skipped != left:
        yield f"pressure leaves out {page.skipped}, not {left}"
    ends = "".join(note.words for note in page.notes if note.label == "nobody open")
    if ends != in_the_end(play):
        yield f"nobody open: {ends}, not {in_the_end(play)}"


# Reads by looks.


def table_off(page: Answers, rows: Sequence[Against], play: Play) -> Iterator[str]:
    """What the page's table of reads by looks has other than the clock's own answers."""
    if page.looks != tuple(row.look for row in rows):
        yield f"looks {page.looks}"
        return
    if [(n, target) for n, target, _ in page.rows] != [
        (str(r.number), r.target) for r in play.reads
    ]:
        yield f"reads {[row[:2] for row in page.rows]}"
    for at, row in enumerate(rows):
        cells = [cells[at] for _, _, cells in page.rows]
        for cell, part in zip(cells, row.reads, strict=False):
            own = _cell(part)
            if (cell.words, cell.nearest.strip("[]"), cell.cover) != own:
                yield f"{row.look}: {part.read.read.target} {cell}, not {own}"
        first = [cell for cell in cells if cell.first]
        best = row.best.read.read.target if row.best else None
        said = [t for (_, t, cells) in page.rows if cells[at].first]
        if said != ([best] if best else []) or len(first) > 1:
            yield f"{row.look}: thrown to {said}, the clock says {best}"
        when = page.rushers[at][0] if page.rushers else ""
        if when != ("" if row.rusher is None else f"{row.rusher:.1f} s"):
            yield f"{row.look}: a free rusher at {when or 'no time'}, the clock says {row.rusher}"
        yield from _column_off(cells, row)


def _cell(part: Separation) -> tuple[str, str, str]:
    """A cell as its legend says it: bold yards are open, brackets beaten by a good throw."""
    yards = "6+" if part.yards > TOLD else f"{part.yards:.0f}"
    words = {Cover.OPEN: yards, Cover.TIGHT: f"({yards})", Cover.LATE: "late"}.get(part.cover, "–")
    if part.cover is Cover.NEVER and not part.read.read.men:
        words = "blocks"
    return words, "" if part.cover is Cover.LATE else part.nearest, part.cover.name.lower()


def _column_off(cells: Sequence[ThrowCell], row: Against) -> Iterator[str]:
    """The printed table of the terminal beside the page's column."""
    _, line = look_lines([row], {})
    said = re.split(r" {2,}", re.sub(r"\+ +", "+ ", line.strip()))
    if not all(f"[{part.nearest}]" in line for part in row.reads if part.nearest):
        yield f"{row.look}: a letter of theirs has no mark: {line}"
    marks = {"open": "open", "tight": "tight", "covered": "-", "late": "late", "never": "no"}
    for cell, text in zip(cells, said[1:], strict=False):
        if cell.cover in marks and marks[cell.cover] not in text.split():
            yield f"{row.look}: the page says {cell}, the terminal {text}"
