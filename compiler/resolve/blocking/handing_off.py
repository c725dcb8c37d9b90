"""The quarterback on a run: whom he hands it to, whom he reads, what he fakes, where he keeps."""

from __future__ import annotations

from dataclasses import replace

from stemline.football.blocking.block_paths import Lane
from stemline.football.blocking.carrying import same_hole, stands_wide
from stemline.football.defenders import Level
from stemline.football.exchanges import BallMoves, said_any
from stemline.football.field import Side
from stemline.football.offence.quarterback import DROPS
from stemline.football.play import Assignment, Branch, Key, Play
from stemline.geometry.paths import Ending, Leg, Path, Point
from stemline.resolve.blocking.draw_ways import drawn

KEEPS = ("pull", "keep")
"""What a key's choice is called when the quarterback runs with the ball."""

# Yards; common practice, no published source.
_BOOT = ((3.0, -0.4), (7.0, 1.2))
"""Away from the play and forward of where he stands: a boot after the hand-off."""
_KEEP_WIDE = 1.6
"""Outside the last man of the line: where he runs when he pulls the ball."""
_KEEP_DEEP = 5.0
_TURN = 1.2
_FARTHER = 0.8
"""How much farther out another man of the front stands for the keep to go up inside of him."""
_TO_HOLE = ("Take the ball to", "Run to")
_MEETS = 2.0
"""Yards from the quarterback within which a man takes the ball or fakes that he does."""
FAKES = ", as if with the ball"
"""What the words of a man end with who aims at a hole and does not carry the ball."""


def passer_job(play: Play, through: Lane) -> Play:
    """The play with what a quarterback hands on, fakes and reads; where he is told of a hole of
    his own and reads a key, that is where his keep goes."""
    passer = play.passer
    if passer is None or not play.carrier:
        return play
    mine = play.assignment(passer.label)
    reads = any(key.choices for key in play.keys)
    if mine.job and reads and (play.carrier == passer.label or FAKES in mine.job):
        return _reading(play, mine, through.toward)
    if play.carrier == passer.label or FAKES in mine.job or (mine.job and said_any(play.exchanges)):
        return play
    if mine.job:  # he gives the ball first, then does what he is told
        told = replace(mine, job=f"{_words(play)} {mine.job}")
        return replace(play, assignments=tuple(_put(a, told) for a in play.assignments))
    made = replace(mine, job=_words(play), path=_boot(play, passer.snap, through.toward))
    if draw := drawn(play, passer, through.toward):
        return replace(
            play,
            assignments=tuple(
                replace(made, path=draw.drop) if a.man == mine.man
                else replace(a, path=draw.run) if a.man == play.carrier
                else a
                for a in play.assignments
            ),
            exchanges=(replace(play.exchanges[0], at=draw.meets),),
        )  # fmt: skip
    key = next((k for k in play.keys if any(c[0] in KEEPS for c in k.choices)), None)
    if key is not None:
        made = replace(made, branches=(_keep(play, key, passer.snap, through),))
    return replace(play, assignments=tuple(_put(a, made) for a in play.assignments))


def _reading(play: Play, mine: Assignment, toward: Side) -> Play:
    """The play with a quarterback who runs to a hole that the text says, by what he reads."""
    goes = mine.job.replace(FAKES, "")
    for words in _TO_HOLE:
        goes = goes.replace(words, "run to", 1)
    keep = next((c for k in play.keys for c in k.choices if c[0] in KEEPS), None)
    told = f"{_words(play)} {'When you keep it' if keep else 'Else'}: {goes}"
    made = replace(mine, job=told)
    if keep is not None and play.carrier != mine.man and mine.path is not None:
        start = mine.path.start
        way = Branch(f"if {keep[2]}", mine.path, "Pull it and run.", (), start)
        made = replace(made, path=_boot(play, start, toward), branches=(way,))
    return replace(play, assignments=tuple(_put(a, made) for a in play.assignments))


def given_if(play: Play) -> Play:
    """The play with each man who gets the ball off a key told when, his way drawn as one that the
    key decides."""
    for key in play.keys:
        name = key.man or f"the {key.described}"
        for does, to, when in key.choices:
            task = next((a for a in play.assignments if a.man == to), None)
            if does != "give" or task is None or to == play.carrier or FAKES not in task.job:
                continue
            said = f"{name} {when.removeprefix('he ')}" if when.startswith("he ") else when
            goes = task.job.replace(FAKES, "").replace("Run to", "run to", 1)
            job = f"Take the ball if {said}: {goes} Else the same way, without it."
            made = replace(task, job=job)
            if task.path is not None and play.passer is not None:
                made = _parted(made, task.path, when, play.passer.snap)
            play = replace(play, assignments=tuple(_put(a, made) for a in play.assignments))
    return play


def _parted(a: Assignment, path: Path, when: str, passer: Point) -> Assignment:
    """His way to the quarterback as a line of its own, and the rest as what the key decides."""
    leg = path.legs[0].to
    meets = len(path.legs) > 1 and leg.distance(passer) <= _MEETS
    way = Branch(f"if {when}", path, "Take the ball and run.", (), leg if meets else path.start)
    own = Path(path.start, (Leg(leg),), Ending.STAND) if meets else None
    return replace(a, path=own, branches=(way,))


def handed_on(play: Play) -> Play:
    """The play with the words of those whose hands the ball goes through on its way."""
    passer = play.passer
    if passer is None or not play.handoffs or not play.carrier or said_any(play.exchanges):
        return play
    hands = (passer.label, *play.handoffs, play.carrier)
    for giver, man, taker in zip(hands, hands[1:], (*hands[2:], ""), strict=False):
        task = play.assignment(man)
        rest = f", hand it to {taker}." if taker else "."
        job = task.job.replace(FAKES, "").replace("Take the ball to", "Run to")
        takes = f"Take the ball from {giver}"
        if man == passer.label:
            takes = f"Hand the ball to {play.handoffs[0]}, take it back from {giver}"
        told = replace(task, job=f"{takes}{rest} {job}".rstrip())
        play = replace(play, assignments=tuple(_put(a, told) for a in play.assignments))
    return play


def following(play: Play) -> Play:
    """The play with the words of those who aim at the carrier's own hole: it is no fake, they run
    behind the ball or ahead of it."""
    own = play.assignment(play.carrier).path if play.carrier else None
    if own is None:
        return play
    made = []
    for a in play.assignments:
        aims = FAKES in a.job and a.man not in (*play.handoffs, play.carrier)
        if aims and a.path is not None and same_hole(a.path, own):
            deeper = play.man(a.man).snap.y <= play.man(play.carrier).snap.y
            goes = f"Follow {play.carrier} to" if deeper else f"Run ahead of {play.carrier} to"
            a = replace(a, job=a.job.replace(FAKES, "").replace("Run to", goes))
        made.append(a)
    return replace(play, assignments=tuple(made))


def _put(a: Assignment, made: Assignment) -> Assignment:
    return made if a.man == made.man else a


def _words(play: Play) -> str:
    feet = without_the_ball(play)
    reads = [k for k in play.keys if k.choices]
    if not reads:
        if play.passer is not None and stands_wide(play.passer):
            return f"Stand wide and still: the ball is snapped to {play.carrier}."
        if play.passer is not None and _is_passed_by(play, play.passer.label):
            shown = ", then ".join(feet)
            snap = f"{shown}, as if you had the ball: it" if shown else "the ball"
            return f"{snap[0].upper()}{snap[1:]} is snapped to {play.exchanges[0].taker}."
        first = [s.words for s in play.feet if s.name in DROPS and not play.handoffs]
        hands = f"hand the ball to {(*play.handoffs, play.carrier)[0]}"
        said = ", then ".join([", ".join([*first, hands]), *(f for f in feet if f not in first)])
        return f"{said[0].upper()}{said[1:]}."
    told = key_words(play)
    said = ", then ".join(feet)
    return " ".join([*told, f"{said[0].upper()}{said[1:]}."] if feet else told)


def _is_passed_by(play: Play, passer: str) -> bool:
    """Whether the centre snaps the ball to another man, and the quarterback never has it."""
    direct = bool(play.exchanges) and play.exchanges[0].kind is BallMoves.SNAP
    return direct and all(passer not in (x.giver, x.taker) for x in play.exchanges)


def key_words(play: Play) -> list[str]:
    """Whom the quarterback reads and what he does off him, a sentence a man."""
    told = []
    for key in play.keys:
        if key.choices:
            name = f"{key.man}, the {key.described}" if key.man else f"the {key.described}"
            choices = "; ".join(f"{does} if {when}" for does, when in key.done)
            told.append(f"Read {name}: {choices}.")
    return told


def without_the_ball(play: Play) -> list[str]:
    """What his feet do once somebody else has it: he throws nothing, and shows that he might."""
    boot = next((s.side for s in play.feet if s.name == "boot"), None)
    if boot is None:
        return ["carry out the fake" if s.name == "fake" else s.words for s in play.feet]
    way = f"to the {boot.word}" if boot is play.toward else "away from the run"
    rest = [s.words for s in play.feet if s.name not in ("boot", "fake")]
    return [f"boot out {way}, as if you had kept it", *rest]


def _boot(play: Play, start: Point, toward: Side) -> Path | None:
    boot = next((step for step in play.feet if step.name == "boot"), None)
    if boot is None:
        return None
    away = (boot.side or toward.other).value
    points = [Point(start.x + away * x, start.y + y) for x, y in _BOOT]
    return Path(start, (Leg(points[0], _TURN), Leg(points[1])))


def _is_inside(play: Play, key: Key, side: Side) -> bool:
    """Whether another man of the line stands outside the one who is read."""
    if play.defence is None or not key.man:
        return False
    read = play.defence.defender(key.man)
    front = [d for d in play.defence.defenders if d.level is Level.LINE]
    return read in front and any((d.at.x - read.at.x) * side.value > _FARTHER for d in front)


def _keep(play: Play, key: Key, start: Point, through: Lane) -> Branch:
    """Where he runs with the ball that he pulled: around the man whom he read, or straight up
    inside of those of the front who are blocked outside of him, as of a midline. Common practice,
    no published source."""
    read = play.defence.defender(key.man).at.x if play.defence and key.man else None
    side = through.toward.other
    if read is not None and read:
        side = Side.RIGHT if read > 0 else Side.LEFT
    elif "playside" in key.described:
        side = through.toward
    pitched = any(c[0] == "pitch" for k in play.keys for c in k.choices)
    if read is not None and not pitched and _is_inside(play, key, side):
        # Who is read in the middle comes down on the dive: the ball goes up where he stood.
        up = (Leg(Point(read, min(start.y * 0.5, -0.6)), 0.5), Leg(Point(read, _KEEP_DEEP)))
        when = next(c[2] for c in key.choices if c[0] in KEEPS)
        return Branch(f"if {when}", Path(start, up), "Pull it and run.", (), start)
    edge = through.edge(side) + side.value * _KEEP_WIDE
    legs = (
        Leg(Point(edge - side.value * 0.8, min(start.y * 0.5, -1.5)), _TURN),
        Leg(Point(edge, 0.5), _TURN),
        Leg(Point(edge + side.value * 0.6, _KEEP_DEEP)),
    )
    when = next(c[2] for c in key.choices if c[0] in KEEPS)
    return Branch(f"if {when}", Path(start, legs), "Pull it and run.", (), start)
