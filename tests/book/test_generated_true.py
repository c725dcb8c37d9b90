"""Two hundred drawn playbooks, passes, runs, protections and screens, read back as the bundled
books are: rows, pictures, clocks, protections' words and what is spoken. A run takes a seventh.

Pictures are a sample, since each costs a tenth of a second; all else is read whole.
"""

from __future__ import annotations

from collections.abc import Iterator

from clock_reading import order_off, printed_off, strip_off
from generated import SEEDS, generated_seasons
from letter_reading import misread
from page_reading import paged, wrong
from picture_reading import THEME, duties_off, off
from printed_texts import badly_said
from word_reading import unprotected, unsaid

from stemline.book.content.book import Edition, make_book
from stemline.describe.spoken_play import describe
from stemline.football.play import Kind, Play, Season
from stemline.football.timing.clock import read_clock
from stemline.football.timing.levels import LEVELS
from stemline.picture.clock_strip import clock_scene
from stemline.picture.picture import picture
from stemline.theme import Size


def _numbered() -> Iterator[tuple[int, Season]]:
    return zip(SEEDS, generated_seasons(), strict=True)


def _kinds(season: Season) -> list[Play]:
    """The first call of each concept with each of its tags."""
    found: dict[object, Play] = {}
    for play in season.plays:
        found.setdefault((play.call.concept, play.call.tags), play)
    return list(found.values())


def test_the_drawn_playbooks_hold_what_a_coach_writes() -> None:
    plays = [play for season in generated_seasons() for play in season.plays]
    share = len(SEEDS) / 200
    runs = [play for play in plays if play.kind is Kind.RUN]
    assert len(runs) > 800 * share
    assert len(plays) - len(runs) > 1000 * share
    assert (
        sum(any(c[0] == "pull" for k in play.keys for c in k.choices) for play in runs) > 50 * share
    )
    assert sum(any(k.throws for k in play.keys) for play in plays) > 50 * share
    assert sum("as if with the ball" in t.job for p in plays for t in p.assignments) > (
        20 if share == 1 else 0
    )
    assert len({play.protection for play in plays}) > 5
    assert sum(play.call.concept == "Slip" for play in plays) > 30 * share
    assert sum(bool(play.call.motion) for play in runs) > 200 * share


def test_rows_and_lines_of_drawn_playbooks_are_read_back() -> None:
    found = [f"{n} {line}" for n, season in _numbered() for line in wrong(paged(season))]
    assert "\n".join(found) == ""


def test_pages_of_drawn_playbooks_say_a_thing_once() -> None:
    found = []
    for n, season in _numbered():
        book = make_book(season, Edition("", ""), ("",))
        found += [f"{n} {line}" for line in (*badly_said(book.pages), *misread(book, season))]
    assert "\n".join(found) == ""


def test_words_of_drawn_playbooks_are_read_back() -> None:
    found = []
    for n, season in _numbered():
        for play in season.plays:
            said = (*unsaid(play, describe(play)), *unprotected(play))
            found += [f"{n} {line}" for line in said]
    assert "\n".join(found) == ""


def test_clocks_of_drawn_playbooks_are_read_back() -> None:
    found = []
    for n, season in _numbered():
        for page, plays in paged(season):
            for play in plays if page.quarterback is not None else ():
                assert page.quarterback is not None
                lines = order_off(page.quarterback, plays[0], play, plays)
                found += [f"{n} {play.call.spoken}: {line}" for line in lines]
        for play in _kinds(season):
            if play.reads:
                clock = read_clock(play, LEVELS[season.level])
                lines = (
                    *strip_off(play, clock, clock_scene(clock, THEME)),
                    *printed_off(play, clock),
                )
                found += [f"{n} {play.call.spoken}: {line}" for line in lines]
    assert "\n".join(found) == ""


def test_pictures_of_drawn_playbooks_are_read_back() -> None:
    """Of each playbook one run and one pass, another kind of them each time; and against looks."""
    found, drawn = [], 0
    for n, season in _numbered():
        kinds = _kinds(season)
        for kind in Kind:
            mine = [play for play in kinds if play.kind is kind]
            faced = [v for s in season.concepts for v in (*s.faced, *s.views)
                     if v.kind is kind and v.defence is not None]  # fmt: skip
            for play in (mine[n // 2 % len(mine)], *faced[n % 8 : n % 8 + 1]):
                duties = play.kind is Kind.PASS and play.defence is not None
                scene = picture(play, Size.FULL, THEME, duties=duties)
                lines = (*off(play, scene), *(duties_off(play, scene) if duties else ()))
                found += [f"{n} {line}" for line in lines]
                drawn += 1
    assert drawn > 2 * len(SEEDS)
    assert "\n".join(found) == ""
