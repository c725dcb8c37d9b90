"""How crowded a picture is: measured on the labels' own places."""

from __future__ import annotations

from dataclasses import replace

import pytest

from picture.sample_plays import quads, three_two
from stemline.football.play import Play
from stemline.picture.labels.labels import Trouble
from stemline.picture.labels.placing import ALL, WORST, Crowding, Tight
from stemline.picture.picture import how_crowded, picture
from stemline.picture.scene.scene import Stroke
from stemline.theme import Size, load_theme

THEME = load_theme()


def crowd(play: Play, copies: int) -> Play:
    """The play with each read asked for so many times at one place."""
    return replace(play, reads=tuple(read for read in play.reads for _ in range(copies)))


@pytest.mark.parametrize("size", Size)
def test_more_at_one_place_costs_more(size: Size) -> None:
    one, four = how_crowded(quads(), size, THEME), how_crowded(crowd(quads(), 4), size, THEME)
    assert four.cost > one.cost
    assert four.worst > one.worst
    assert four.crowded and not one.crowded


@pytest.mark.parametrize("size", Size)
def test_the_leaders_are_those_of_the_picture(size: Size) -> None:
    play = crowd(three_two(), 4)
    scene = picture(play, size, THEME)
    drawn = [i for i in scene.items if isinstance(i, Stroke) and i.style == "leader"]
    assert how_crowded(play, size, THEME).leaders == len(drawn) > 0


def test_every_label_is_told_the_dearest_first() -> None:
    found = how_crowded(quads(), Size.FULL, THEME)
    costs = [label.cost for label in found.labels]
    assert costs == sorted(costs, reverse=True)
    assert found.cost == pytest.approx(sum(costs))
    assert {label.role for label in found.labels} == {"read", "alert", "depth", "words"}
    assert {label.text for label in found.labels if label.role == "read"} == {"1", "2", "3", "4"}


@pytest.mark.parametrize(
    ("costs", "crowded"),
    [
        ((), False),
        ((WORST,), False),
        ((WORST + 0.1,), True),
        ((ALL / 4,) * 4, False),
        ((ALL / 4,) * 4 + (0.1,), True),
    ],
)
def test_what_counts_as_crowded(costs: tuple[float, ...], crowded: bool) -> None:
    labels = tuple(Tight("read", "1", cost, Trouble.AWAY, "") for cost in costs)
    assert Crowding(sum(costs), 0, labels).crowded is crowded
