"""A run against a pressure that the week names: its free man is told at its row, or the coach says
that he knows."""

from __future__ import annotations

import pytest
from corpus.mixing import base

from stemline.outside.store import Store
from stemline.session import Session
from stemline.source import Source

WEEK = """\
run Dive
    carrier is back
    carrier aims playside A
    line blocks on or climb
    everyone else blocks stalk

dress Dive
    in Three Two

look Storm extends Base
    M at 10, strong, 4 deep
    W at 10, weak, 4 deep
    M rushes A, strong
    W rushes A, weak

week 3 Larch Bay
    faces Base, Storm
    openers
        Three Two Right Crossers
    situation 1st and 10
        Three Two Right Dive
"""
ROW = "        Three Two Right Dive\n"


def told(text: str, store: Store | None = None) -> list[tuple[str, int, str]]:
    asked = Session((*base(), Source("week.play", text)), "book", store=store)
    found = [*asked.definitions, *(d for week in asked.weeks for d in week.found)]
    assert not [d.message for d in found if d.is_error]
    pressed = asked.pressed(asked.weeks)
    return [(d.code, d.span.line, d.message) for d in pressed if "Dive" in d.message]


def test_a_free_man_of_a_pressure_is_told_at_the_row() -> None:
    ((code, line, message),) = told(WEEK)
    assert (code, line) == ("W990", WEEK.splitlines().index(ROW[:-1]) + 1)
    assert message.startswith("no answer to Storm: Three Two Right Dive; nobody blocks or reads [")
    assert message.endswith("comes") or message.endswith("come")


@pytest.mark.parametrize(
    ("was", "now"),
    [
        ("faces Base, Storm", "faces Base"),
        (ROW, ROW.replace("\n", " when Base\n")),
        (ROW, ROW.replace("\n", ', "Storm: press the hole."\n')),
        ("    openers", '    say "Storm: J, M and W come; the fake holds them."\n    openers'),
        ("    M rushes A, strong\n    W rushes A, weak\n", ""),
        # Four come, as from every front: the run's own page shows who is free.
        ("    M rushes A, strong\n", "    E covers flat, strong\n"),
    ],
)
def test_it_is_not_told_where_it_is_known_or_cannot_be(was: str, now: str) -> None:
    assert told(WEEK.replace(was, now)) == []


@pytest.mark.parametrize("said", ["Stormy weather.", "Watch the run."])
def test_other_words_do_not_silence_it(said: str) -> None:
    assert told(WEEK.replace(ROW, ROW.replace("\n", f', "{said}"\n')))
    assert told(WEEK.replace("    openers", f'    say "{said} Storm."\n    openers'))


def test_what_is_kept_of_it_hangs_on_the_look(tmp_path_factory: pytest.TempPathFactory) -> None:
    store = Store(tmp_path_factory.mktemp("kept") / "store")
    assert told(WEEK, store) == told(WEEK, store) == told(WEEK)
    safe = WEEK.replace("    M rushes A, strong\n    W rushes A, weak\n", "")
    assert told(safe, store) == []
