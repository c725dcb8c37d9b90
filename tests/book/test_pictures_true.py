"""Picture, clock and spoken words of a page say of each man what his play says, read back."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest
from bundled import BUNDLED, season_of

from stemline.describe.spoken_play import describe
from stemline.football.play import Assignment, Kind, Play
from stemline.football.players import Position
from stemline.football.timing.clock import read_clock
from stemline.football.timing.levels import LEVELS
from stemline.picture.clock_strip import clock_scene
from stemline.picture.picture import picture
from stemline.picture.scene.scene import Disc, Plate, Point, Scene, Stroke, TextRun
from stemline.theme import Size, load_theme

THEME = load_theme()
BACKS = (Position.BACK, Position.FULLBACK)
NEAR = 1.6
"""Yards that a man, or the end of his line, may be moved to keep a picture readable."""


@pytest.fixture(scope="module", params=BUNDLED)
def plays(request: pytest.FixtureRequest) -> tuple[Play, ...]:
    return season_of(request.param).plays


def _firsts(plays: tuple[Play, ...]) -> list[Play]:
    """Each pass concept's first and last call: pictures cost a tenth of a second each."""
    found: dict[str, list[Play]] = {}
    for play in plays:
        if play.kind is Kind.PASS and play.defence is None:
            found.setdefault(play.call.concept, []).append(play)
    return list({p.call.spoken: p for same in found.values() for p in (same[0], same[-1])}.values())


# The picture.


def test_a_mans_line_ends_where_his_play_takes_him(plays: tuple[Play, ...]) -> None:
    wrong = [
        line for play in _firsts(plays) for line in _off(play, picture(play, Size.FULL, THEME))
    ]
    assert "\n".join(wrong) == ""


def _off(play: Play, scene: Scene) -> Iterator[str]:
    stands = {
        item.name: item.centre if isinstance(item, Disc) else item.box.centre
        for item in scene.items
        if isinstance(item, Disc | Plate) and item.name
    }
    for man in play.men:
        if man.label not in stands or stands[man.label].distance(man.snap) > NEAR:
            yield f"{play.call.spoken}: {man.label} stands at {stands.get(man.label)}, {man.snap}"
    ends = dict(_tips(scene))
    for task in play.assignments:
        if task.path is None or not task.path.legs or play.man(task.man).interior:
            continue
        end = task.path.end
        tip = ends.get(task.man)
        if tip is None:
            yield f"{play.call.spoken}: {task.man} has no line"
        elif tip.distance(end) > NEAR or (abs(end.x) > NEAR and tip.x * end.x < 0):
            yield f"{play.call.spoken}: {task.man} drawn to {tip}, runs to {end}"


def _tips(scene: Scene) -> Iterator[tuple[str, Point]]:
    """Where the line of each man ends after the snap."""
    for item in scene.items:
        if isinstance(item, Stroke) and item.name and item.segments:
            man, _, what = item.name.partition("-")
            if what and "motion" not in what and "option" not in what and "branch" not in what:
                yield man, item.head[0] if item.head else item.segments[-1].end


def test_a_back_who_takes_the_launchs_edge_runs_to_it(plays: tuple[Play, ...]) -> None:
    wrong = [play.call.spoken for play in plays if _from_the_launch(play)]
    assert wrong == []


def _from_the_launch(play: Play) -> bool:
    """Whether a back blocks an edge from which the line does not move away, on the wrong side."""
    side = next((step.side for step in play.feet if step.side is not None), None)
    backs = (t for t in play.assignments if play.man(t.man).position in BACKS)
    return side is not None and any(
        task.job.startswith("Block the edge")
        and task.path is not None
        and "Reach" in play.protection_words
        and task.path.end.x * side.value <= 0
        for task in backs
    )


# The clock.


def test_the_clock_has_the_reads_and_feet_of_its_play(plays: tuple[Play, ...]) -> None:
    level = LEVELS["high school"]
    for play in plays:
        if play.reads and play.feet and play.kind is Kind.PASS:
            scene = clock_scene(read_clock(play, level), THEME)
            rows, feet = _clock(scene)
            wanted = [(str(r.number), r.target, set(r.men)) for r in play.reads]
            assert len(rows) == len(wanted), play.call.spoken
            for (number, target, man), (n, t, men) in zip(rows, wanted, strict=True):
                assert (number, target) == (n, t), play.call.spoken
                assert man in men or (man == "-" and not men), play.call.spoken
            assert feet <= {step.name for step in play.feet} | {"snap", ""}, play.call.spoken
            assert _in_order(scene, play), play.call.spoken


def _clock(scene: Scene) -> tuple[list[tuple[str, str, str]], set[str]]:
    words = [item for item in scene.items if isinstance(item, TextRun)]
    names = [w for w in words if w.style in ("clock-name", "clock-wrong") and " · " in w.text]
    numbers = [w.text for w in words if w.text.isdigit() and w.style != "clock-foot"]
    said = [w.text.rpartition(" · ") for w in names]
    rows = [(n, target, man) for n, (target, _, man) in zip(numbers, said, strict=True)]
    return rows, {w.text for w in words if w.style == "clock-foot"}


def _in_order(scene: Scene, play: Play) -> bool:
    """Whether a read is thrown when its foot is down and arrives after that."""
    balls = [i for i in scene.items if isinstance(i, Stroke) and i.style == "ball"]
    return all(ball.segments[0].start.x < ball.segments[-1].end.x for ball in balls)


# The protection.


def test_the_protections_words_are_each_mans_own(plays: tuple[Play, ...]) -> None:
    wrong = [line for play in plays if play.protection_words for line in _unprotected(play)]
    assert "\n".join(wrong) == ""


def _unprotected(play: Play) -> Iterator[str]:
    said = dict(_places(play.protection_words))
    kept = [t.job for t in play.assignments if play.man(t.man).position in BACKS]
    for head, word in (("Scan", "Scan"), ("Edge", "Block the edge")):
        other = {"Scan": "Block the edge", "Edge": "Scan"}[head]
        if said.get("helper") == head and not any(job.startswith(word) for job in kept):
            stays = [job for job in kept if job.startswith(other)]
            yield from (f"{play.call.spoken}: {head}, but he is told {job}" for job in stays)
    if "Slide" not in play.protection_words and "Man" not in play.protection_words:
        return
    for man in play.men:
        job = play.assignment(man.label).job
        side = 0 if play.toward is None else man.snap.x * play.toward.value
        place = man.position.value
        if place in ("guard", "tackle"):
            place = f"{'playside' if side > 0 else 'backside'} {place}"
        rule = said.get(place) or said.get("line")
        judged = man.interior and play.toward is not None and not _outside(man.label, play)
        if judged and rule and not job.startswith(rule.split(" ")[0]):
            yield f"{play.call.spoken}: {man.label} {rule}, but he is told {job}"


def _outside(label: str, play: Play) -> bool:
    """A second tackle on one side has a place of his own."""
    mine = play.man(label)
    return (
        sum(
            m.interior and m.position is mine.position and m.snap.x * mine.snap.x > 0
            for m in play.men
        )
        > 1
    )


def _places(words: str) -> Iterator[tuple[str, str]]:
    """ "Slide: centre, playside guard. Scan: helper (back)." by place."""
    for rule, places in re.findall(r"([A-Z][a-z ]+): ([^.]+)\.", words):
        for place in places.split(", "):
            yield place.partition(" (")[0], rule


# The spoken words.


def test_the_spoken_words_are_those_of_the_play(plays: tuple[Play, ...]) -> None:
    wrong = [line for play in plays for line in _unsaid(play, describe(play))]
    assert "\n".join(wrong) == ""


def _unsaid(play: Play, words: str) -> Iterator[str]:
    sentences = re.split(r"(?<=\.) (?=[A-Z])", words)
    for task in play.assignments:
        man = play.man(task.man)
        if man.interior or not (task.role and task.job):
            continue
        mine = [s for s in sentences if re.match(rf"{man.label}( as |,| lines|:)", s)]
        said = " ".join(_after(sentences, mine[0])) if mine else ""
        if not said:
            yield f"{play.call.spoken}: {man.label} is not spoken of"
            continue
        yield from (
            f"{play.call.spoken}: {man.label} {what} is not in: {said}"
            for what in _parts(task, play)
            if what.casefold() not in said.casefold()
        )
    if play.protection and f"Protection: {play.protection}" not in words:
        yield f"{play.call.spoken}: no protection"
    if play.protection_words and play.protection_words.rstrip(". ") not in words:
        yield f"{play.call.spoken}: the protection is not said"


def _after(sentences: list[str], first: str) -> list[str]:
    """A man's sentence with those that belong to it: a job may be of several."""
    at = sentences.index(first)
    return sentences[at : at + 5]


def _parts(task: Assignment, play: Play) -> Iterator[str]:
    man = play.man(task.man)
    if task.motion is not None:
        yield f"before the snap: {task.motion.words}"
    if man is not play.passer and abs(man.at.x) >= 0.25:
        side = "right" if man.at.x > 0 else "left"
        counted = task.motion is None and man.rank is not None
        yield f"{_half(abs(man.at.x))} {'from' if counted else f'{side} of'} the ball"
    yield task.job.rstrip(". ")
    yield from (branch.job.rstrip(". ") for branch in task.branches)
    path = task.path
    if path is not None and path.legs and not task.hits:
        if abs(path.end.x) >= 0.25:
            side = "right" if path.end.x > 0 else "left"
            yield f"{_half(abs(path.end.x))} {side} of the ball"
        if abs(path.end.y) >= 0.25:
            yield f"{_half(abs(path.end.y))} {'past' if path.end.y > 0 else 'behind'} the line"


def _half(length: float) -> str:
    text = f"{int(2 * length + 0.5) / 2:g}"
    return {"0.5": "half a yard", "1": "1 yard"}.get(text, f"{text} yards")
