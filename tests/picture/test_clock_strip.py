"""The quarterback's clock under a picture: a row a read, in his order, on one axis of seconds."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest
from football.timed import clocked, family, plays
from syrupy.assertion import SnapshotAssertion

from picture.scene_text import scene_text
from stemline.football.timing.clock import ReadClock, TimedRead, Verdict, Window
from stemline.geometry.box import Box
from stemline.geometry.paths import Line
from stemline.picture.clock_strip import clock_scene, sentence, verdict
from stemline.picture.scene.scene import Plate, Scene, Stroke, TextRun
from stemline.theme import load_theme

THEME = load_theme()
CALLS = {p.call.spoken: p for p in plays(family())}


def clock(call: str = "Three Two Right Crossers") -> ReadClock:
    return clocked(CALLS[call])


def strip(made: ReadClock) -> Scene:
    return clock_scene(made, THEME)


def texts(scene: Scene, style: str = "") -> list[TextRun]:
    runs = [i for layer in scene.layers for i in layer.items if isinstance(i, TextRun)]
    return [run for run in runs if style in ("", run.style)]


def strokes(scene: Scene, style: str) -> Iterator[Line]:
    for layer in scene.layers:
        for item in layer.items:
            if isinstance(item, Stroke) and item.style == style:
                (piece,) = item.segments
                assert isinstance(piece, Line)
                yield piece


def first(**values: object) -> ReadClock:
    """A clock whose first read is otherwise."""
    made = clock()
    look: TimedRead = replace(made.reads[0], **values)  # type: ignore[arg-type]
    return replace(made, reads=(look, *made.reads[1:]))


def test_scene(snapshot: SnapshotAssertion) -> None:
    assert scene_text(strip(clock())) == snapshot


@pytest.mark.parametrize("call", CALLS)
def test_rows_stand_in_the_order_of_the_reads(call: str) -> None:
    made = clock(call)
    names = texts(strip(made), "clock-name")
    rows = sorted((t for t in names if " · " in t.text), key=lambda t: -t.at.y)
    assert [t.text for t in rows] == [
        f"{look.read.target} · {look.window.man}" for look in made.reads if look.window
    ]


@pytest.mark.parametrize("call", CALLS)
def test_nothing_is_outside_the_frame(call: str) -> None:
    scene = strip(clock(call))
    frame = scene.frame
    for layer in scene.layers:
        for item in layer.items:
            match item:
                case Plate():
                    box = item.box
                case TextRun():
                    width, rise = _extent(item, scene)
                    box = Box(item.at.x, item.at.y, item.at.x + width, item.at.y + rise)
                case Stroke():
                    ends = [p for piece in item.segments for p in (piece.start, piece.end)]
                    xs, ys = [p.x for p in ends], [p.y for p in ends]
                    box = Box(min(xs), min(ys), max(xs), max(ys))
                case _:
                    continue
            assert frame.left <= box.left and box.right <= frame.right, item
            assert frame.bottom <= box.bottom and box.top <= frame.top, item


def _extent(run: TextRun, scene: Scene) -> tuple[float, float]:
    from stemline.picture.paper.surface import Board

    found = Board(scene.frame, scene.scale, scene.size, THEME).extent(run.text, run.style)
    return found.width, found.rise


def test_a_ball_is_a_line_from_the_hand_to_a_tick_on_the_axis_of_the_feet() -> None:
    made = clock()
    scene = strip(made)
    balls, ticks = list(strokes(scene, "ball")), list(strokes(scene, "arrival"))
    assert len(balls) == len(ticks) == 4
    seconds = sorted(line.start.x for line in strokes(scene, "second"))
    a_second = seconds[1] - seconds[0]
    snap = seconds[0] - a_second
    for look, ball, tick in zip(made.reads, balls, ticks, strict=True):
        assert (ball.start.x - snap) / a_second == pytest.approx(look.thrown)
        assert (ball.end.x - snap) / a_second == pytest.approx(look.arrives)
        assert tick.start.x == ball.end.x
    downs = sorted(line.start.x for line in strokes(scene, "foot-down"))
    assert {round((x - snap) / a_second, 6) for x in downs} >= {
        round(foot.time, 6) for foot in made.feet
    }


def test_a_read_in_its_window_has_its_tick_in_its_bar() -> None:
    made = clock()
    scene = strip(made)
    bars = [
        i for layer in scene.layers for i in layer.items
        if isinstance(i, Plate) and i.style == "window"
    ]  # fmt: skip
    for bar, tick in zip(bars, strokes(scene, "arrival"), strict=True):
        assert bar.box.left <= tick.start.x <= bar.box.right
        assert bar.box.bottom <= (tick.start.y + tick.end.y) / 2 <= bar.box.top


def missed(verdict: Verdict, arrives: float, opens: float, closes: float) -> dict[str, object]:
    off = arrives - (opens if verdict is Verdict.EARLY else closes)
    window = Window("R", opens, closes)
    return {"verdict": verdict, "arrives": arrives, "window": window, "off": off}


@pytest.mark.parametrize(
    ("values", "words"),
    [
        ({}, "on time"),
        # The moments are told to a tenth, and what is said is the difference of those.
        (missed(Verdict.EARLY, arrives=1.96, opens=2.44, closes=5.0), "0.4 s early"),
        (missed(Verdict.LATE, arrives=1.96, opens=0.1, closes=1.74), "0.3 s late"),
        ({"verdict": Verdict.TOO_FAR}, "too far"),
        ({"verdict": Verdict.NOBODY, "window": None}, "nobody"),
    ],
)
def test_what_does_not_fit_is_said_and_marked(values: dict[str, object], words: str) -> None:
    made = first(**values)
    assert verdict(made.reads[0]) == words
    scene = strip(made)
    wrong = [t.text for t in texts(scene, "clock-wrong")]
    assert wrong == ([] if words == "on time" else [f"{made.reads[0].distance:.0f} yards, {words}"])
    gone = made.reads[0].verdict in (Verdict.TOO_FAR, Verdict.NOBODY)
    assert len(list(strokes(scene, "ball"))) == (3 if gone else 4)


def test_a_sentence_says_a_row_to_those_who_hear_it() -> None:
    made = clock()
    assert sentence(made.reads[0]) == (
        "1: flat, R; thrown at 1.4 seconds, there at 2.0: on time."
    )  # fmt: skip
    late = first(verdict=Verdict.LATE, off=0.26, window=None).reads[0]
    assert sentence(late).startswith("1: flat, nobody;") and sentence(late).endswith("0.3 s late.")
    assert all(sentence(look) in strip(made).description for look in made.reads)


def test_a_free_rusher_stands_on_it_only_where_a_look_frees_one() -> None:
    made = clock()
    assert made.pressure and made.rusher is None

    def crosses(one: ReadClock) -> int:
        lines = [line for line in strokes(strip(one), "foot") if abs(line.end.y - line.start.y) < 1]
        return len(lines)

    assert crosses(made) == 0
    assert crosses(replace(made, rusher=1.8)) == 2
    assert crosses(replace(made, rusher=1.8, pressure=())) == 2
