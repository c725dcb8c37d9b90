"""A quiz asks what its key answers, and shows nothing of it."""

from __future__ import annotations

import re
from dataclasses import replace

import pypdfium2 as pdfium
import pytest

from stemline.describe.spoken_play import describe
from stemline.emit.gallery import Art
from stemline.emit.html import filled
from stemline.emit.week_pages import a_page
from stemline.emit.week_positions import ListedCall
from stemline.emit.week_quiz import QuizPicture, QuizSheet
from stemline.football.play import Kind
from stemline.picture.picture import picture
from stemline.picture.scene.scene import TextRun
from stemline.printing.quiz_papers import question_frame
from stemline.printing.week_papers import Printing, week_papers
from stemline.theme import Size, load_theme
from stemline.week.position_book import men_of, own_book
from stemline.week.quizzing import QUESTIONS, QuizPaper, blank_of, quiz_papers
from stemline.week.week_values import PlanQuiz, Week
from stemline.week.working_out import work_out

from .plans import HERONS, LANTERNS, bundled_week, ems, pages

SECOND = 5.0
"""Yards: no linebacker of the bundled looks stands deeper."""
WEEKS = [(HERONS, 8), (LANTERNS, 4)]


def asking_all(name: str, number: int) -> Week:
    week = bundled_week(name, number)
    quiz = PlanQuiz(men_of(week.plan), "Thursday", week.plan.span)
    return replace(week, plan=replace(week.plan, quizzes=(quiz,)))


@pytest.mark.parametrize(("name", "number"), WEEKS)
def test_each_man_is_asked_of_calls_with_tasks_of_their_own(name: str, number: int) -> None:
    week = asking_all(name, number)
    papers = quiz_papers(week)
    assert [paper.man for paper in papers] == list(men_of(week.plan))
    for paper in papers:
        book = own_book(week, paper.man)
        by_call = {
            entry.call: job.task
            for job in book.jobs for alike in job.alike for entry in alike.calls
        }  # fmt: skip
        asked = [question.entry.call for question in paper.questions]
        assert len(set(asked)) == len(asked) == min(QUESTIONS, len(by_call))
        assert [q.answer for q in paper.questions] == [by_call[call] for call in asked]
        then = {(entry.call, kill.to): kill.job for kill in book.killed for entry in kill.calls}
        for q in paper.questions:
            told = {becoming.words for becoming in q.entry.play.becomes}
            assert {k.to for k in q.killed} == told
            assert all(k.job == then[q.entry.call, k.to] for k in q.killed)
        assert len({by_call[call] for call in asked}) == min(QUESTIONS, len(book.jobs))
        new = {entry.call for entry in book.came}
        firsts = [call in new for call in asked[: len({by_call[call] for call in new})]]
        assert all(firsts), (paper.man, asked)


@pytest.mark.parametrize(("name", "number"), WEEKS)
def test_a_blank_keeps_men_and_motions_and_nothing_after_the_snap(name: str, number: int) -> None:
    theme, week = load_theme(), bundled_week(name, number)
    moved = beyond = 0
    for entry in week.entries:
        play, blank = entry.play, blank_of(entry.play)
        assert blank.men == play.men and not blank.unmet
        assert [a.motion for a in blank.assignments] == [a.motion for a in play.assignments]
        moved += any(a.motion for a in blank.assignments)
        said = describe(blank).replace(play.call.spoken, "")
        for task in play.assignments:
            for words in (task.job.rstrip("."), *(b.job.rstrip(".") for b in task.branches)):
                assert not words or words not in said, (entry.call, words)
        frame = question_frame(play)
        scene = picture(blank, Size.THUMB, theme, frame, whole=True)
        layers = {layer.name: layer.items for layer in scene.layers}
        if play.defence is not None:
            assert blank.defence is not None
            there = {d.label: d.at for d in play.defence.defenders}
            assert blank.defence == play.defence  # nobody is moved to another level
            # All eleven, the deep ones at the edge: nobody can draw a block on a man who is away.
            runs = (item for items in layers.values() for item in items)
            drawn = {run.text.split()[0] for run in runs if isinstance(run, TextRun) and run.text}
            assert play.kind is not Kind.RUN or drawn >= set(there), entry.call
            # Who stands beyond the picture is seen to be deeper than the second level in it.
            letters = [r for r in layers.get("defence", ()) if isinstance(r, TextRun)]
            heights = {r.text: r.at.y for r in letters if r.text in there}
            out = {name for name, at in there.items() if at.y > frame.top + 1.0}
            if play.kind is Kind.RUN and out:
                near = max(y for name, y in heights.items() if there[name].y <= SECOND)
                assert all(heights[name] > near + 0.5 for name in out), (entry.call, heights)
                # and how deep he is, as in a large picture.
                assert {f"{round(there[name].y)}" for name in out} <= drawn, entry.call
                beyond += 1
        assert not layers["routes"] and not layers["claims"] and not layers.get("ball")
        assert bool(layers["motions"]) == any(a.motion for a in play.assignments)
    assert moved and beyond


def test_the_questions_follow_from_week_seed_day_and_man() -> None:
    week = asking_all(HERONS, 8)

    def calls(of: Week) -> dict[str, list[str]]:
        papers: tuple[QuizPaper, ...] = quiz_papers(of)
        return {p.man: [q.entry.call for q in p.questions] for p in papers}

    assert calls(week) == calls(week)
    other = replace(week, plan=replace(week.plan, seed="another"))
    assert calls(other) != calls(week)
    (quiz,) = week.plan.quizzes
    day = replace(week, plan=replace(week.plan, quizzes=(replace(quiz, day="Tuesday"),)))
    assert calls(day) != calls(week)


def test_the_key_has_the_answers_on_sheets_of_its_own() -> None:
    week = bundled_week(HERONS, 8)
    plan = replace(week.plan, quizzes=(PlanQuiz(("H", "Q"), "Thursday", week.plan.span),))
    week = work_out(plan, {}, pages(plan), ems())
    made = week_papers(week, Printing(load_theme()), ("quiz",))
    assert made.counts == ["quiz: 2 sheets (H, Q); key to it: 2 sheets"]
    quiz, key = (_words(made.files[name]) for name in ("quiz.pdf", "quiz-key.pdf"))
    for paper, blank, told in zip(quiz_papers(week), quiz, key, strict=True):
        for question in paper.questions:
            call = _tight(question.entry.call)
            assert f"{question.order}.{call}" in blank
            assert f"{question.order}.{call}no.{question.entry.number}," in told
            assert _tight(question.answer.job)[:40].casefold() in told.casefold()
            assert _tight(question.answer.job)[:40].casefold() not in blank.casefold()


def test_each_answer_of_a_key_ends_before_the_next_begins() -> None:
    """ "Alert, press: clear (Z) Pressure: 1 stick" was one run of words."""
    theme, art = load_theme(), Art("a", "", "", 10, 10)
    told = (("alert, press", "clear (Z)"), ("pressure", "1 stick on quick."))
    asked = QuizPicture(1, ListedCall("7", "Trey Right Stick", "57"), art, 1.0, "hitch up", told)
    html = filled(
        theme, "week-quiz.html.jinja", sheets=(QuizSheet("Q", "", True, (asked,)),), tall=200.0,
        footer="", **a_page(theme, "", "letter"),
    )  # fmt: skip
    words = " ".join(re.sub(r"<[^>]*>", "", html).split())
    assert "Hitch up. Alert, press: clear (Z). Pressure: 1 stick on quick." in words
    assert ".." not in words.rpartition("Hitch")[2]


def _words(pdf: bytes) -> list[str]:
    return [_tight(page.get_textpage().get_text_bounded()) for page in pdfium.PdfDocument(pdf)]


def _tight(words: str) -> str:
    return "".join(words.split())
