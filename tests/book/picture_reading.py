"""A picture read back: where each man's line ends, and on which side, held against his play.

Nothing of the picture's maker is used but what it takes from the field: far men of a close picture
stand nearer (`shot`), and whoever is too deep for it stands at its edge with his depth in figures.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from stemline.football.defenders import Defender, DutyKind
from stemline.football.play import Assignment, Kind, Play
from stemline.geometry.curves import points_of
from stemline.geometry.paths import polyline
from stemline.picture.frame.board import shot
from stemline.picture.scene.metrics import extent
from stemline.picture.scene.scene import Disc, Plate, Point, Polygon, Scene, Stroke, TextRun
from stemline.theme import Size, load_theme

THEME = load_theme()
SHOULDER = 0.31
"""Yards beside a defender's middle at which each of two who double him has his place."""
Lines = dict[str, dict[str, Stroke]]
"""A man's lines after the snap, by what they are ("block", "climb", "carry")."""

MOVED = 1.6
"""Yards that a man, the end of his line or a letter may be moved to keep a picture readable."""
READ = 2.4
"""The same for the letter of a man who is read: a box stands round it."""
CARRIED = 1.0
"""The same for the end of a carrier's line, and of one who runs as if he were."""
AT_HIM = 0.9
"""Yards from a defender's letter within which a blocker's bar stands at him."""
STALKS = 1.0
"""Yards before his man at which a stalk or a crack breaks down."""
GAINED, IN_REACH = 3.0, 3.9
"""Yards past the line up to which whoever is nearer to the carrier's way than so many is blocked,
read or marked."""


def off(play: Play, scene: Scene) -> Iterator[str]:
    """Every line of a picture that does not say what ``play`` says, in words."""
    seen = shot(play, scene.size).play
    lines = lines_of(scene)
    wrong = [*_men(seen, scene)]
    for task in seen.assignments:
        mine = lines.get(task.man, {})
        if play.kind is Kind.RUN and task.hits:
            said = _block(task, mine, scene, seen)
        elif play.kind is Kind.RUN:
            said = _way(task, mine, lines, seen)
        else:
            said = _route(task, mine, seen)
        wrong += [f"{task.man} {task.job} {line}" for line in (*said, *_told(task, mine, seen))]
        if "carry" in mine and task.man != play.carrier:
            wrong.append(f"{task.man} is drawn with the ball of {play.carrier or 'nobody'}")
    if play.defence is not None:
        wrong += _defence(seen, scene)
    if play.defence is not None and play.kind is Kind.RUN and scene.size is Size.FULL:
        wrong += _unmet(play, scene)
    if play.kind is Kind.PASS:
        wrong += _tiles(seen, scene, lines)
    look = f" against {play.defence.name}" if play.defence is not None else ""
    yield from (f"{play.call.spoken}{look}: {line}" for line in wrong)


def lines_of(scene: Scene) -> Lines:
    found: Lines = {}
    for item in scene.items:
        if isinstance(item, Stroke) and item.name and item.segments:
            man, _, what = item.name.partition("-")
            found.setdefault(man, {})[what] = item
    return found


def end_of(line: Stroke) -> Point:
    return line.head[0] if line.head else line.segments[-1].end


# Ours.


def _men(play: Play, scene: Scene) -> Iterator[str]:
    stands = {
        item.name: item.centre if isinstance(item, Disc) else item.box.centre
        for item in scene.items
        if isinstance(item, Disc | Plate) and item.name
    }
    for man in play.men:
        if man.label not in stands or stands[man.label].distance(man.snap) > MOVED:
            yield f"{man.label} stands at {stands.get(man.label)}, {man.snap}"


def _told(task: Assignment, mine: dict[str, Stroke], play: Play) -> Iterator[str]:
    """Who is told what he does has a line, and who has a line is told. A quarterback may stand; a
    lineman who is told to stay goes nowhere, and without a look one who protects, and a run."""
    passer = play.passer is not None and play.passer.label == task.man
    run = play.kind is Kind.RUN
    stays = task.job.startswith("Show the run and stay")
    protects = play.man(task.man).interior and bool(play.protection)
    waits = passer or stays or (play.defence is None and (run or protects))
    if task.job and not mine and not waits:
        yield "has words and no line"
    if mine and not task.job and not (task.motion or (passer and play.feet)):
        yield "has a line and no words"


def _block(task: Assignment, mine: dict[str, Stroke], scene: Scene, play: Play) -> Iterator[str]:
    if "block" not in mine:
        yield f"has no block but {sorted(mine)}"
    if (task.climb is not None) != ("climb" in mine):
        yield "climbs in the play or in the picture alone"
    letters = letters_of(play, scene)
    for kind, hit in zip(("block", "climb"), task.hits, strict=False):
        at = letters.get(hit.defender)
        room = AT_HIM + (STALKS if hit.how in ("stalk", "crack") else 0.0)
        own = play.defence.defender(hit.defender).at if play.defence is not None else hit.at
        comes = hit.how in ("wrap", "pull", "lead", "kick") and own.distance(hit.at) > AT_HIM
        at = hit.at if comes and at is not None else at
        if kind in mine and (at is None or end_of(mine[kind]).distance(at) > room):
            yield f"{kind} of {hit.defender} at {at} is drawn to {end_of(mine[kind])}"
        # Who is kicked comes across to turn the run in, and no deeper than he lines up.
        if comes and not 0.0 < hit.at.y < own.y + (AT_HIM if hit.how == "kick" else 0.0):
            yield f"meets {hit.defender} of {own} at {hit.at}, past him"
        elif not comes and own.distance(hit.at) > SHOULDER:
            yield f"takes {hit.defender} at {hit.at}, who stands at {own}"


def _way(task: Assignment, mine: dict[str, Stroke], lines: Lines, play: Play) -> Iterator[str]:
    """A man who follows the ball or runs ahead of it is drawn until he is in the carrier's way."""
    if task.path is None or not task.path.legs:
        return
    end = task.path.end
    if task.man == play.carrier and "carry" not in mine:
        yield "carries the ball and has no such line"
    ways = [line for kind, line in mine.items() if kind in ("carry", "fake", "route", "block")]
    ways = ways or [line for kind, line in mine.items() if "mesh" not in kind]
    if not ways:
        yield "has no line"
    carrier = lines.get(play.carrier, {}).get("carry")
    for line in ways:
        tip = end_of(line)
        if task.job.startswith(("Follow ", "Run ahead of ")) and carrier is not None:
            way = (play.man(play.carrier).snap, *points_of(carrier.segments))
            near = min(tip.distance(at) for at in way)
            if near > CARRIED:
                yield f"is drawn to {tip}, {near:.1f} from the ball"
        elif tip.distance(end) > CARRIED or (abs(end.x) > CARRIED and tip.x * end.x < 0):
            yield f"runs to {end}, drawn to {tip}"


def _route(task: Assignment, mine: dict[str, Stroke], play: Play) -> Iterator[str]:
    path = task.path
    setting = play.man(task.man).interior and not task.hits
    if path is None or not path.legs or (setting and not mine):
        return
    # The strokes of a mesh lie across a line, and the heavy part of one over it: no ways of his.
    kinds = ("motion", "option", "branch", "climb", "mesh", "ball")
    ways = [line for what, line in mine.items() if what and not what.startswith(kinds)]
    if not ways:
        yield "has no line"
    out = mine.get("climb")
    if (task.climb is not None and not task.hits) != (out is not None):
        yield "gets out after his block in the play or in the picture alone"
    elif (
        out is not None and task.climb is not None and end_of(out).distance(task.climb.end) > MOVED
    ):
        yield f"gets out to {task.climb.end}, drawn to {end_of(out)}"
    there = min(m.snap.distance(path.end) for m in play.men if m.label != task.man)
    room = MOVED + (AT_HIM if there < CARRIED else 0.0)  # whoever stands there is kept clear
    for line in ways:
        tip = end_of(line)
        if tip.distance(path.end) > room or (abs(path.end.x) > MOVED and tip.x * path.end.x < 0):
            yield f"runs to {path.end}, drawn to {tip}"


def _tiles(play: Play, scene: Scene, lines: Lines) -> Iterator[str]:
    """A read's number that stands beyond the line of another man is led to its own."""
    led = {i.span for i in scene.items if isinstance(i, Stroke) and i.style == "leader"}
    tiles = {i.span: i.box for i in scene.items if isinstance(i, Plate) and i.style == "tile"}
    for read in play.reads:
        box = tiles.get(read.span)
        if box is None or read.span in led or not read.men:
            continue
        to = Point(min(max(read.at.x, box.left), box.right),
                   min(max(read.at.y, box.bottom), box.top))  # fmt: skip
        between = {
            man
            for man, mine in lines.items()
            for line in mine.values()
            for a, b in pairwise(points_of(line.segments))
            if man not in read.men and _crosses(read.at, to, a, b)
        }
        if between:
            yield f"look {read.number} stands beyond the line of {sorted(between)}"


def _crosses(a: Point, b: Point, c: Point, d: Point) -> bool:
    def left(p: Point, q: Point, r: Point) -> bool:
        return (q.x - p.x) * (r.y - p.y) > (q.y - p.y) * (r.x - p.x)

    return left(a, b, c) != left(a, b, d) and left(c, d, a) != left(c, d, b)


# Theirs.


def letters_of(play: Play, scene: Scene) -> dict[str, Point]:
    """The middle of each defender's letter."""
    found: dict[str, Point] = {}
    spans = {d.label: d.span for d in play.defence.defenders} if play.defence is not None else {}
    for item in scene.items:
        if not isinstance(item, TextRun) or not item.style.startswith("defender"):
            continue
        if item.span == spans.get(item.text):
            room = extent(item.text, THEME.look(scene.size).types[item.style], THEME)
            half = Point(room.width / 2 / scene.scale, room.rise / 2 / scene.scale)
            found[item.text] = item.at + half
    return found


def _defence(play: Play, scene: Scene) -> Iterator[str]:
    assert play.defence is not None
    letters = letters_of(play, scene)
    for man in play.defence.defenders:
        if man.label in letters:
            read = any(key.man == man.label for key in play.keys)
            yield from _stands(man, letters[man.label], READ if read else MOVED, scene)
        elif scene.size is Size.FULL:
            yield f"{man.label} has no letter"


def _unmet(play: Play, scene: Scene) -> Iterator[str]:
    """Who stands near the carrier's way at the line and is neither blocked nor read is marked, and
    nobody is marked whom somebody takes."""
    assert play.defence is not None
    taken = {hit.defender for task in play.assignments for hit in task.hits}
    taken |= {key.man for key in play.keys}
    marked = {i.span for i in scene.items if isinstance(i, Polygon) and i.style == "free"}
    task = play.assignment(play.carrier) if play.carrier else None
    corners = polyline(task.path) if task is not None and task.path is not None else ()
    steps = [a + (b - a).scaled(n / 10) for a, b in pairwise(corners) for n in range(11)]
    way = [at for at in steps if 0.0 <= at.y <= GAINED]
    for man in play.defence.defenders:
        near = min((at.distance(man.at) for at in way), default=IN_REACH)
        if man.label in taken:
            if man.span in marked:
                yield f"{man.label} is taken and marked as free"
        elif near < IN_REACH and man.span not in marked:
            yield f"{man.label} is {near:.1f} yards from the ball's way and nobody's"


def _stands(man: Defender, at: Point, moved: float, scene: Scene) -> Iterator[str]:
    if at.distance(man.at) <= moved:
        return
    depths = {
        item.text
        for item in scene.items
        if isinstance(item, TextRun) and item.span == man.span and item.text.isdigit()
    }
    if abs(at.x - man.at.x) > MOVED or at.y > man.at.y or f"{round(man.at.y)}" not in depths:
        yield f"{man.label} stands at {man.at}, drawn at {at} {sorted(depths)}"


def duties_off(play: Play, scene: Scene) -> Iterator[str]:
    """Each man of a look whose rush, drop or man is drawn elsewhere; on a large picture of it."""
    assert play.defence is not None
    letters = letters_of(play, scene)
    for man in play.defence.defenders:
        duty = man.duty
        if duty is None:
            continue
        own = [i for i in scene.items if i.span == man.span and isinstance(i, Stroke | Polygon)]
        mine = {i.style: i for i in reversed(own)}
        kinds = {"rush", "drop", "man", "zone"} & set(mine)
        if duty.kind is DutyKind.RUSH:
            wrong = _rush(man, letters[man.label], mine.pop("rush", None), play)
        elif duty.kind is DutyKind.MAN:
            wrong = _covers(man, mine.pop("man", None), play)
        else:
            wrong = _drops(man, mine.pop("drop", None), mine.pop("zone", None), scene)
        yield from (f"{man.label} {duty.words} {line}" for line in wrong)
        if kinds & set(mine):
            yield f"{man.label} {duty.words} is drawn to {sorted(kinds & set(mine))} too"


def _rush(man: Defender, at: Point, line: object, play: Play) -> Iterator[str]:
    """His arrow goes to his gap, or to the man who meets him."""
    duty = man.duty
    assert duty is not None
    if not isinstance(line, Stroke):
        yield "has no arrow"
        return
    if duty.to is None:
        return
    tip = end_of(line)
    met = [
        task.path.end
        for task in play.assignments
        if task.hits and task.hits[0].defender == man.label and task.path is not None
    ]
    away = min(abs(tip.x - x) for x in (duty.to.x, *(p.x for p in met)))
    toward = abs(tip.x - duty.to.x) <= abs(at.x - duty.to.x) + 0.3 or (away <= MOVED)
    if away > MOVED and not (tip.y > 0.3 and toward):
        yield f"rushes {duty.to}, is drawn to {tip}"
    if tip.y > at.y:
        yield "is drawn going back"


def _covers(man: Defender, line: object, play: Play) -> Iterator[str]:
    duty = man.duty
    assert duty is not None
    if not duty.man:
        return
    his = play.man(duty.man).snap
    if not isinstance(line, Stroke):
        if his.distance(man.at) > 3.0:
            yield "has no line"
    elif end_of(line).distance(his) > 2.2:
        yield f"has {duty.man} at {his}, is drawn to {end_of(line)}"


def _drops(man: Defender, line: object, ground: object, scene: Scene) -> Iterator[str]:
    duty = man.duty
    assert duty is not None
    if duty.to is None:
        return
    if not isinstance(ground, Polygon):
        yield "has no ground"
        return
    xs, ys = [p.x for p in ground.points], [p.y for p in ground.points]
    middle = Point((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
    cut = max(ys) > scene.frame.top - MOVED and middle.y < duty.to.y
    if abs(middle.x - duty.to.x) > 0.1 or (abs(middle.y - duty.to.y) > 0.1 and not cut):
        yield f"drops to {duty.to}, is drawn to {middle}"
    if isinstance(line, Stroke):
        if end_of(line).distance(middle) > 1.0:
            yield f"has his ground at {middle} and his line at {end_of(line)}"
    elif man.at.distance(duty.to) > 2.5 + MOVED:
        yield "has no line to his ground"
