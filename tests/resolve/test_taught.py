"""Signals, words, situations and tempos change no play, and stand where they are looked for."""

from __future__ import annotations

from functools import cache

from resolve.texts import THREE_TWO, TWELVE, codes, compiled, said
from stemline.book.content.drawn_calls import left_out
from stemline.football.field import BallSpot
from stemline.resolve.sealing import seal
from stemline.session import Session

HITCHES = """concept Hitches
    each #1 runs hitch 6
    everyone else runs seam
    back blocks edge
    read strong #1
    protect six slide
"""
TAUGHT = '    suits 2nd and 7 or more, red zone\n    signal "fists"\n    word Maple\n'
SUGAR = 'tag Sugar for any call\n    tempo fast\n    signal "hand"\n'
DRESS = "dress Hitches\n    in Three Two with plain, Sugar\n"


@cache
def book(taught: str = "") -> Session:
    return compiled(TWELVE, THREE_TWO, HITCHES.replace("\n", f"\n{taught}", 1), SUGAR, DRESS)


def test_what_is_taught_changes_no_play() -> None:
    plain, taught = book(), book(TAUGHT)
    assert codes(plain) == codes(taught), said(taught.diagnostics)
    for one, two in zip(plain.calls.orders, taught.calls.orders, strict=True):
        first, second = (
            s.play(order, BallSpot.MIDDLE)[0] for s, (_, order) in ((plain, one), (taught, two))
        )
        assert seal(first) == seal(second)


def test_a_tempo_is_a_call_and_no_picture() -> None:
    season = book().season
    assert season is not None
    plain, sugar = season.plays
    assert sugar.call.spoken == f"{plain.call.spoken} Sugar" and sugar.call.tempo == "fast"
    assert sugar.assignments == plain.assignments
    (left,) = left_out(season.plays)
    assert (left.call, left.of) == (1, (0,))


def test_signals_words_and_situations_are_told() -> None:
    season = book(TAUGHT).season
    assert season is not None
    assert set(season.signs) == {("concept Hitches", "fists", "Maple"), ("tag Sugar", "hand", "")}
    assert season.concepts[0].suits == ("2nd and 7 or more", "red zone")


def test_a_call_of_a_tempo_repeats_no_message_of_the_call_without_it() -> None:
    wrong = HITCHES.replace("    everyone else runs seam\n", "")
    result = compiled(TWELVE, THREE_TWO, wrong, SUGAR, DRESS)
    calls = [getattr(d.said, "call", "") for d in result.diagnostics if d.code == "W650"]
    assert calls == ["Three Two Right Hitches"]
