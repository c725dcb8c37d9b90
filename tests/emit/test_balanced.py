"""Two columns that stand as one to be measured are as tall as the engine makes the two."""

from __future__ import annotations

import random

from stemline.emit.balanced import balanced, in_one_column, in_two_columns
from stemline.emit.parts import Part, Press
from stemline.theme import load_theme

HEAD = """<!DOCTYPE html><html lang="en"><link rel="stylesheet" href="stemline:theme/book.css">
<style>@page { size: 8.5in 60in; margin: 30pt 43.2pt }
.change { font-family: sans-serif }</style>"""


def section(name: str, lines: list[int]) -> str:
    said = "".join(
        f'<p class="change"><b class="which">{n}</b> {"he runs on " * words}</p>\n'
        for n, words in enumerate(lines)
    )
    head = f'<section class="changes" id="{name}-changes">\n<h3>Other calls</h3>'
    return f'{head}\n<div class="two-across">\n{said}</div></section>\n'


def test_columns_are_as_tall_as_the_engine_makes_them() -> None:
    dice = random.Random(2)
    some = [[dice.choice((1, 2, 9, 20, 45)) for _ in range(count)] for count in (1, 2, 3, 5, 8, 13)]
    some += [[45, 1, 1], [1, 1, 45], [1, 45, 1, 45, 1]]
    html = HEAD + "".join(section(f"p{n}", lines) for n, lines in enumerate(some))
    press = Press(load_theme())
    by_engine = press.measure(Part("", html))
    one = in_one_column(html)
    assert one.count("-change-") == sum(map(len, some))
    ours = in_two_columns(press.measure(Part("", one)))
    assert ours.keys() == by_engine.keys()
    assert all(abs(ours[id_] - by_engine[id_]) < 0.01 for id_ in by_engine)


def test_what_holds_more_than_lines_stays_in_its_columns() -> None:
    keyed = section("p", [1, 2]).replace("</div>", '<section class="strip"></section></div>')
    assert in_one_column(keyed) == keyed


def test_lines_stand_in_order_and_no_column_is_taller_than_it_must_be() -> None:
    assert balanced([10.0, 10.0, 10.0]) == 20.0
    assert balanced([30.0, 10.0, 10.0, 10.0]) == 30.0
    assert balanced([5.0]) == 5.0
