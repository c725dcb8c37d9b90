"""A value of which a part is known is the value itself, made when somebody asks for more."""

from __future__ import annotations

from collections.abc import Callable

from stemline.football.later import later
from stemline.football.play import Man
from stemline.football.players import Position
from stemline.geometry.paths import Point
from stemline.resolve.sealing import seal
from stemline.source import NOWHERE

MAN = Man("Q", Position.QUARTERBACK, Point(0, -5), Point(0, -5), False, None, NOWHERE)


def known(asked: list[str]) -> Man:
    def fill(name: str) -> dict[str, object]:
        asked.append(name)
        return vars(MAN)

    return later(Man, {"label": "Q", "under_centre": False}, fill)


def test_what_is_known_asks_for_nothing() -> None:
    asked: list[str] = []
    man = known(asked)
    assert (man.label, man.under_centre) == ("Q", False)
    assert isinstance(man, Man) and asked == []
    assert (man.on_line, man.at, man.number) == (False, Point(0, -5), None)
    assert asked == ["on_line"], "it is made once"
    assert type(man) is Man


def test_it_is_the_value_whoever_asks() -> None:
    alike: tuple[Callable[[Man], bool], ...] = (
        lambda man: man == MAN,
        lambda man: man == MAN,
        lambda man: man == known([]),
        lambda man: hash(man) == hash(MAN),
        lambda man: repr(man) == repr(MAN),
        lambda man: seal(man) == seal(MAN),
        lambda man: not man.interior,
        lambda man: man != Man("R", *[getattr(MAN, name) for name in REST]),
    )
    assert [asks(known([])) for asks in alike] == [True] * len(alike)


REST = ("position", "at", "snap", "on_line", "rank", "span")
