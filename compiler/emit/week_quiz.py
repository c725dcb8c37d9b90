"""Quizzes of a week and their keys → PDF."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from stemline.emit.gallery import Art, Gallery
from stemline.emit.html import filled
from stemline.emit.pdf import pages_pdf
from stemline.emit.week_pages import a_page
from stemline.emit.week_positions import ListedCall
from stemline.theme import Theme


@dataclass(frozen=True)
class QuizPicture:
    """One question: its number, the call, the picture and by how much it is enlarged; on a key
    what the man is told (his motion, his job, what changes it), on a quiz none of it."""

    order: int
    call: ListedCall
    art: Art
    factor: float
    told: str = ""
    looks: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True)
class QuizSheet:
    """A man's quiz, or with ``key`` the answers to it; ``day`` is "" where none is said."""

    man: str
    day: str
    key: bool
    questions: tuple[QuizPicture, ...]


def quiz_pdf(
    sheets: Sequence[QuizSheet], title: str, theme: Theme, paper: str, tall: float, footer: str,
    date: str,
) -> bytes:  # fmt: skip
    """Each sheet on a page of its own; ``tall`` are the points that a question takes. Raises what
    `pages_pdf` does."""
    html = filled(
        theme, "week-quiz.html.jinja", sheets=tuple(sheets), tall=tall, footer=footer,
        **a_page(theme, title, paper),
    )  # fmt: skip
    arts = tuple(question.art for sheet in sheets for question in sheet.questions)
    return pages_pdf(html, Gallery(arts), theme, date)
