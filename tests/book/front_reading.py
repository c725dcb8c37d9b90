"""The pages before the concepts read as they are printed, held against the plays themselves."""

from __future__ import annotations

from collections.abc import Iterator

from stemline.book.content.book import Book
from stemline.book.content.kinds.call_page import CallPage
from stemline.book.content.kinds.glance_page import GlancePage
from stemline.book.content.kinds.lineup_page import LinedUpSet, LineupPage
from stemline.book.content.kinds.motion_page import MotionPage
from stemline.football.play import Kind, Play, Season
from stemline.football.timing.clock import read_clock
from stemline.football.timing.coverage import Cover, against
from stemline.football.timing.levels import LEVELS


def misspoken(book: Book, season: Season) -> Iterator[str]:
    """Calls that the page does not let a man say: by its order of words, or by a name."""
    page = book.of(CallPage)[0]
    names = dict(page.names)
    words = {word for each in page.lists for listed, _ in each.words for word in listed.split(", ")}
    for play in season.plays:
        call = play.call
        said = [call.formation, call.side_word.capitalize(), call.motion, call.concept, *call.tags]
        said = [word for word in said if word]
        full = names.get(call.spoken, call.spoken)
        if full.replace(" + ", " ").split() != " ".join(said).split():
            yield f"{call.spoken}: {full}"
        yield from (f"{call.spoken}: {word} is in no list" for word in said if word not in words)
    for apart in page.apart:
        if " ".join(part.word for part in apart.parts) != (apart.full or apart.spoken).replace(
            " + ", " "
        ):
            yield f"{apart.spoken} taken apart otherwise"


def misplaced(book: Book, season: Season) -> Iterator[str]:
    """Men of a formation who do not stand where its table says."""
    sets = {one.entry.call: one for page in book.of(LineupPage) for one in page.sets}
    for sheet in season.formations:
        one = sets.get(sheet.name)
        if one is None:
            yield f"{sheet.name} is not there"
            continue
        for at, play in enumerate((sheet.view, sheet.to_field, sheet.to_boundary)):
            if play is not None:
                yield from _misplaced(one, play, at)


def _misplaced(one: LinedUpSet, play: Play, at: int) -> Iterator[str]:
    rows = {row.man: row for row in one.rows}
    for man in play.men:
        if man.interior:
            continue
        row = rows.get(man.label)
        if row is None:
            yield f"{one.entry.call}: {man.label} has no row"
        elif abs(float(row.yards[at]) - abs(man.at.x)) > 0.2501:
            yield f"{one.entry.call}: {man.label} {row.yards[at]}, stands {man.at.x:.1f}"
        elif (row.depth == "on") != man.on_line:
            yield f"{one.entry.call}: {man.label} {row.depth} the line"


def unmoved(book: Book, season: Season) -> Iterator[str]:
    """Motions of the calls that the page has not, or whose men it tells otherwise."""
    sets = {one.entry.call: one for page in book.of(MotionPage) for one in page.sets}
    for play in season.plays:
        name = play.call.motion
        if name and (name not in sets or play.call.concept not in sets[name].concepts):
            yield f"{play.call.spoken}: {name} is not told"
    for name, one in sets.items():
        told = {man: words for men, words in one.moves for man in men.split()}
        tasks = [task for task in one.entry.play.assignments if task.motion is not None]
        if set(told) != {task.man for task in tasks} or not tasks:
            yield f"{name}: {sorted(told)}"
        for task in tasks:
            assert task.motion is not None
            words = told.get(task.man, "?")
            way, path = words.rpartition(", ")[0], task.motion.path
            ways = {
                "across": path.start.x * path.end.x < 0,
                "out": abs(path.end.x) > abs(path.start.x),
                "in": abs(path.end.x) < abs(path.start.x) or ", then" in way,
                "off": path.start.y > path.end.y,
                "up": path.start.y < path.end.y,
            }
            how = task.motion.words.endswith(words.rpartition(", ")[2])
            if not how or not ways.get(way.split(" ")[0].rstrip(","), True):
                yield f"{name}: {task.man} {words}"


def unopened(book: Book, season: Season) -> Iterator[str]:
    """What the clock gives against each look, and the line of the look says otherwise."""
    rows = {row.name: row for page in book.of(GlancePage) for row in page.rows}
    level = LEVELS[season.level]
    for sheet in season.concepts:
        for play in sheet.faced:
            found = against(play, read_clock(play, level), level)
            best, row = found.best, rows[found.look]
            target = best.read.read.target if best and best.cover is Cover.OPEN else ""
            if dict(row.opens).get(sheet.name, "") != target:
                yield f"{found.look}: {sheet.name} {target}"
            if (sheet.name in row.nobody) != (best is None):
                yield f"{found.look}: {sheet.name} has {best}"
    firsts = {play.call.concept: play for play in reversed(season.plays)}
    for sheet in (one for one in season.concepts if one.kind is Kind.RUN):
        for play in (firsts[sheet.name], *sheet.views):
            if play.defence is not None:
                blocked = sheet.name in rows[play.defence.name].blocked
                if blocked != (not play.unblocked):
                    yield f"{play.defence.name}: {sheet.name} leaves {play.unblocked}"
    for look in season.looks:
        defence = look.views[0].defence
        assert defence is not None
        if rows[look.name].rush != sum(d.comes for d in defence.defenders):
            yield f"{look.name}: {rows[look.name].rush} rush"
