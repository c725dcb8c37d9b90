"""Quizzes of a week on paper, and the key on sheets of its own."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from stemline.emit.week_pages import FOOT, MARGIN
from stemline.emit.week_positions import ListedCall
from stemline.emit.week_quiz import QuizPicture, QuizSheet
from stemline.football.defenders import Level
from stemline.football.play import Kind, Play
from stemline.geometry.box import Box
from stemline.picture.frame.board import frame_of
from stemline.printing.drawings import Drawings, Showing
from stemline.printing.position_papers import listed, look_of, picture_width
from stemline.theme import Size
from stemline.week.call_sheet import PAPERS
from stemline.week.quizzing import QuizPaper, QuizQuestion

_ACROSS, _DOWN = 2, 3
_HEAD = 44.0
"""Points that a sheet's title and its line for a name take."""
_BESIDE = 10.0
"""Points left free beside a picture, so that its line does not run on into its neighbour's."""
_LINES = 58.0
"""Points under a picture: the call, and three lines to write on or the answer."""

_DEEPER = 1.6
"""Yards added in front for the deep men of a run's look, who would else stand at the edge on a
yard line and its hash, no deeper than the men before them."""


def question_height(paper: str) -> float:
    """Points that a question takes on a page of ``paper``."""
    _, height = PAPERS[paper]
    return (height - 2 * MARGIN - FOOT - _HEAD) / _DOWN - 8


def quiz_sheets(
    papers: Sequence[QuizPaper], drawings: Drawings, paper: str
) -> tuple[tuple[QuizSheet, ...], tuple[QuizSheet, ...]]:
    """The quizzes, and the keys in the same order. No quiz names the page of its answer."""
    asked, keys = [], []
    for number, each in enumerate(papers, 1):
        blank, told = [], []
        for question in each.questions:
            one, other = _both(question, f"{number}-{question.order}", each.man, drawings, paper)
            blank.append(one)
            told.append(other)
        asked.append(QuizSheet(each.man, each.day, False, tuple(blank)))
        keys.append(QuizSheet(each.man, each.day, True, tuple(told)))
    return tuple(asked), tuple(keys)


def question_frame(play: Play) -> Box:
    """The frame of a question and of its key: as a small picture's, with room where a whole look
    has deep men whom a small picture leaves out."""
    frame = frame_of((play,))
    look = play.defence
    if play.kind is not Kind.RUN or look is None:
        return frame
    deep = any(man.level is Level.DEEP and man.at.y > frame.top for man in look.defenders)
    return replace(frame, top=frame.top + _DEEPER) if deep else frame


def _both(
    question: QuizQuestion, id_: str, man: str, drawings: Drawings, paper: str
) -> tuple[QuizPicture, QuizPicture]:
    """A question as it is asked and as it is answered, in one frame: room is left for his line."""
    play, call = question.entry.play, listed(question.entry)
    frame = question_frame(play)
    blank = drawings.art(f"quiz-{id_}", question.blank, Showing(Size.THUMB, frame, whole=True))
    full = drawings.art(f"key-{id_}", play, Showing(Size.THUMB, frame, only=man))
    wide, tall = picture_width(paper, _ACROSS) - _BESIDE, question_height(paper) - _LINES
    factor = min(wide / full.width, tall / full.height)
    task = question.answer
    words = ". ".join(part for part in (task.motion, task.job) if part)
    changes = (*task.looks, *((f"{k.to}, {k.when}", k.job) for k in question.killed))
    asked = ListedCall(call.number, call.call, "")
    return (
        QuizPicture(question.order, asked, blank, factor, against=look_of(play)),
        QuizPicture(question.order, call, full, factor, words, changes, look_of(play)),
    )
