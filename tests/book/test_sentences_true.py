"""Coaches' own sentences in the bundled books: a yard or a number they name is the drawn play's."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from stemline.football.play import Assignment, Kind, LookSheet, Play, Season

_WORDS = tuple(
    word
    for row in (
        "zero one two three four five six seven eight nine ten",
        "eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty",
    )
    for word in row.split()
)
_NUMBER = rf"({'|'.join(_WORDS[1:])}|\d+)"
_DEPTH = re.compile(
    rf"(?:\b(?:at|to|than) {_NUMBER}(?=[,.;: ]|$)(?! (?:step|count|second|of|yards off|wide))"
    rf"|^{_NUMBER}(?= (?:hard|before|and (?:in|back|out))\b|,)| {_NUMBER}(?=, (?:out|then)\b))",
    re.IGNORECASE,
)
_SIDELINE = re.compile(
    rf"{_NUMBER} (?:yards )?(?:off|from|of grass between you and) the sideline", re.IGNORECASE
)
_WAITS = ("Slow screen", "Block", "Scan", "Chip", "Slide")
_HIGHER = re.compile(rf"{_NUMBER} yards higher", re.IGNORECASE)


def _numbers(pattern: re.Pattern[str], line: str) -> Iterator[int]:
    for sentence in re.split(r"(?<=[.:!?]) ", line):
        for found in pattern.finditer(sentence.strip()):
            word = next(group for group in found.groups() if group)
            yield int(word) if word.isdigit() else _WORDS.index(word.casefold())


def _depths(task: Assignment) -> set[int]:
    """Yards past the line at which anything happens on a man's way."""
    said = " ".join((task.job, *(branch.job for branch in task.branches)))
    paths = [p for p in (task.path, *(b.path for b in task.branches)) if p is not None]
    return {int(n) for n in re.findall(r"\b\d+\b", said)} | {
        round(point.y) for path in paths for point in path.corners
    }


def test_a_depth_in_a_mans_sentence_is_on_his_path(season: Season) -> None:
    wrong = [
        f"{play.call.spoken} {task.man}: {line} {sorted(_depths(task))}"
        for play in season.plays
        for task in play.assignments
        for line in task.says
        for number in _numbers(_DEPTH, line)
        if number > 1 and number not in _depths(task) and not _of_another(number, task, play)
    ]
    assert "\n".join(wrong) == ""


def _of_another(number: int, task: Assignment, play: Play) -> bool:
    """A depth that he passes on his way: under or over it he is told to be."""
    path = task.path
    return path is not None and number < max(point.y for point in path.corners) - 2


def test_a_depth_in_a_tags_sentence_is_on_a_path_of_its_calls(season: Season) -> None:
    wrong = []
    for sheet in season.concepts:
        for tag, lines in sheet.tags:
            calls = [p for p in season.plays if p.call.concept == sheet.name and tag in p.call.tags]
            for call in calls:
                known = {n for task in call.assignments for n in _depths(task)}
                wrong += [
                    f"{call.call.spoken}: {line}"
                    for line in lines
                    for number in _numbers(_DEPTH, line)
                    if number > 1 and number not in known
                ]
    assert "\n".join(wrong) == ""


def test_who_runs_from_the_snap_is_told_of_no_count(season: Season) -> None:
    """The clock has him on his way at once; a screen waits, and who blocks may count."""
    wrong = [
        f"{play.call.spoken} {task.man}: {line}"
        for play in season.plays
        for task in play.assignments
        for line in task.says
        if play.kind is Kind.PASS and task.path is not None and not task.hits
        and not task.job.startswith(_WAITS) and re.search(r"\bcount(?:s| one)?\b", line)
    ]  # fmt: skip
    assert "\n".join(wrong) == ""


def test_yards_from_the_sideline_are_those_of_the_path(season: Season) -> None:
    """Within a yard: where he ends up, counted from the sideline he runs along."""
    wrong = []
    for play in season.plays:
        edge = abs(play.field.sideline(play.strong))
        for task in play.assignments:
            for line in task.says:
                for number in _numbers(_SIDELINE, line):
                    wide = max(abs(point.x) for point in task.path.corners) if task.path else 0
                    if "as wide as" in line:
                        fits = edge - wide >= number - 1
                    else:
                        fits = abs(edge - wide - number) <= 1
                    if not fits:
                        wrong.append(f"{play.call.spoken} {task.man}: {line} {edge - wide:.1f}")
    assert "\n".join(wrong) == ""


def test_yards_higher_than_another_man_are_so(season: Season) -> None:
    for play in season.plays:
        others = {n for task in play.assignments for n in _depths(task)}
        for task in play.assignments:
            for line in task.says:
                for number in _numbers(_HIGHER, line):
                    mine = max(_depths(task) & {int(n) for n in re.findall(r"\d+", task.job)})
                    assert mine - number in others, f"{play.call.spoken} {task.man}: {line}"


_LOOK = re.compile(r"\b(first|second|third|fourth|last) look\b", re.IGNORECASE)
_RANKS = ("first", "second", "third", "fourth")


def test_the_look_that_a_man_is_said_to_be_is_his(season: Season) -> None:
    """First to fourth, or the last, in the quarterback's order of that call."""
    wrong = []
    for play in season.plays:
        looks = {man: read.number for read in play.reads for man in read.men}
        for task in play.assignments:
            for line in task.says:
                for rank in _LOOK.findall(line):
                    word = rank.casefold()
                    want = len(play.reads) if word == "last" else _RANKS.index(word) + 1
                    if looks.get(task.man) != want:
                        wrong.append(f"{play.call.spoken} {task.man}: {line} {looks}")
    assert "\n".join(wrong) == ""


_COUNTS = {
    "come": rf"\b{_NUMBER} come\b",
    "deep": rf"\b{_NUMBER} deep\b",
    "line": rf"\b{_NUMBER} on the line\b",
    "man": rf"\b{_NUMBER} in man\b",
}


def test_numbers_in_a_looks_sentences_are_those_of_its_men(season: Season) -> None:
    wrong = []
    for sheet in season.looks:
        have = _men(sheet)
        for what, pattern in _COUNTS.items():
            for line in sheet.says:
                for number in _numbers(re.compile(pattern, re.IGNORECASE), line):
                    if number != have[what]:
                        wrong.append(f"{sheet.name}: {line} ({what} {have[what]})")
    assert "\n".join(wrong) == ""


def _men(sheet: LookSheet) -> dict[str, int]:
    """How many of the look's men come, are deep, stand on the line and have a man."""
    look = sheet.views[0].defence
    assert look is not None
    duties = [d.duty for d in look.defenders if d.duty is not None]
    return {
        "come": sum(d.rushes for d in look.defenders),
        "deep": sum("deep" in duty.words or "quarter" in duty.words for duty in duties),
        "line": sum(d.level.name == "LINE" for d in look.defenders),
        "man": sum(bool(duty.man) for duty in duties),
    }


def test_no_sentence_is_said_twice_in_a_row(season: Season) -> None:
    for play in season.plays:
        for task in play.assignments:
            said = re.split(r"(?<=[.!?]) ", " ".join((task.job, *task.says)))
            assert all(a != b for a, b in pairwise(said)), task
            assert len(set(task.says)) == len(task.says), task
            assert not re.search(r"[a-z][.!?][A-Z]", " ".join(task.says)), task
