"""The comparison book of the Herons' two seasons, read back from its PDF."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from functools import cache
from pathlib import Path

import pypdfium2
import pytest
from click.testing import CliRunner
from compare.both_seasons import seasons
from corpus.mixing import base

from stemline.commands import main
from stemline.compare.comparing import compared
from stemline.compare.on_paper import on_paper
from stemline.compare.teaching import teaching
from stemline.football.timing.levels import HIGH_SCHOOL
from stemline.outside.texts import read_files
from stemline.printing.comparison_book import comparison_book
from stemline.session import Session
from stemline.source import Source
from stemline.theme import load_theme

ROOT = Path(__file__).parents[2]


@cache
def _book() -> bytes:
    pages, drawn = on_paper(seasons()[2])
    return comparison_book(
        pages, drawn, load_theme("plain"), HIGH_SCHOOL, "letter", "foot", "2026-11-01"
    )


@cache
def _texts() -> tuple[str, ...]:
    read = pypdfium2.PdfDocument(_book())
    return tuple(" ".join(page.get_textpage().get_text_range().split()) for page in read)


def test_every_man_with_something_new_has_a_page_with_all_of_it() -> None:
    rows = [row for row in teaching(seasons()[2]) if row.new]
    heads = {text.split(" ")[0]: text for text in _texts() if " new thing" in text[:20]}
    assert list(heads) == [row.man for row in rows]
    for row in rows:
        for topic, job in (*row.new, *row.gone):
            assert topic in heads[row.man] and job in heads[row.man], (row.man, topic, job)


def test_every_changed_call_is_drawn_or_told_once() -> None:
    found = seasons()[2]
    _, drawn = on_paper(found)
    named = [call for both in drawn for call in (both.title, *both.also.split(", "))]
    for change in found.changed:
        assert named.count(change.spoken) == 1, change.spoken
    for both in drawn:
        if both.was is not None:
            assert both.now.call.formation and both.now.call.concept == both.was.call.concept
    assert 0 < sum(both.was is not None for both in drawn) < len(found.changed)


def test_who_only_blocks_in_another_way_is_told_and_not_drawn() -> None:
    """And each call under what is true of it: the other guard has it to the other side."""
    texts = read_files(ROOT / "playbooks" / "cedar-flats-lanterns").sources
    was = "    backside guard, backside tackle blocks scoop\n"
    now = "    backside guard blocks cut off\n    backside tackle blocks scoop\n"
    edited = [Source(s.name, s.text.replace(was, now, 1)) for s in texts]
    old = Session(texts, "was")
    found = compared(old, Session(edited, "is", beside=old))
    _, drawn = on_paper(found)
    assert drawn and not any(both.was or both.his for both in drawn)
    said = {both.also: both.notes for both in drawn}
    assert {call for also in said for call in also.split(", ")} == {c.spoken for c in found.changed}
    assert said["I Left Stretch"] == ("RG was: scoop N; is: cut off N.",)


def test_a_man_has_the_pictures_of_what_moves_him_and_no_others() -> None:
    _, drawn = on_paper(seasons()[2])
    heads = [n for n, text in enumerate(_texts()) if " new thing" in text[:20]]
    pages = zip(heads, [*heads[1:], len(_texts())], strict=True)
    own = {_texts()[a].split(" ")[0]: " ".join(_texts()[a:b]) for a, b in pages}
    moved = {man for both in drawn for man, _ in both.his}
    assert moved and moved <= own.keys()
    for man, text in own.items():
        his = [both.title for both in drawn if man in dict(both.his)]
        pictures = text.partition("Goes another way in ")[2].partition(".")[2]
        assert [call for call in his if call not in pictures] == []
        assert sum(pictures.count(both.title) for both in drawn) == len(his), man


def test_the_numbers_are_those_of_the_comparison() -> None:
    found = seasons()[2]
    assert (
        f"All {found.same} {len(found.changed)} {len(found.added)} {len(found.dropped)}"
        in (_texts()[0])
    )
    before = found.same + len(found.changed) + len(found.dropped)
    assert f"{found.same} of the {before} calls" in _texts()[0]


@pytest.mark.parametrize("threshold", (0.5, 0.64))
def test_what_was_stays_on_a_photocopy_and_stays_dashed(threshold: float) -> None:
    """A copier makes each point black or white: the old route must leave dashes on either."""
    document = pypdfium2.PdfDocument(_book())
    redrawn = next(n for n, text in enumerate(_texts()) if text.startswith("Doubles Right Dagger"))
    assert _dashes(document[redrawn], threshold) >= 10


def _dashes(page: pypdfium2.PdfPage, threshold: float) -> int:
    """The most dashes of one length in a row of a page's points, copied."""
    grey = page.render(scale=3.0).to_pil().convert("L")
    kept = grey.point(lambda v: 255 if 40 <= v < 255 * threshold else 0)
    rows = (kept.crop((0, y, kept.width, y + 1)).tobytes() for y in range(kept.height))
    return max(map(_alike, rows))


def _alike(row: bytes) -> int:
    """How many stretches of a row of points are of one length, and as long as a dash is."""
    lengths = Counter(len(part) for part in row.split(b"\0") if 7 <= len(part) <= 20)
    return max(lengths.values(), default=0)


def test_the_same_comparison_gives_the_same_bytes() -> None:
    """Of its first man and pictures, so that it is set twice in little time."""
    pages, drawn = on_paper(seasons()[2])
    few = replace(pages, men=pages.men[:1])
    once, again = (
        comparison_book(
            few, drawn[:2], load_theme("plain"), HIGH_SCHOOL, "letter", "foot", "2026-11-01"
        )
        for _ in range(2)
    )
    assert once == again


def test_the_command_writes_it_and_refuses_another_kind(tmp_path: Path) -> None:
    was, now = tmp_path / "was", tmp_path / "now"
    for folder in (was, now):
        folder.mkdir()
        for source in base():
            file = folder / Path(source.name).name
            file.write_text(
                source.text.replace("dig 12", "dig 14") if folder is now else source.text
            )
    sides = [str(was), str(now)]
    unread = ["compare", "nowhere", "neither", "--book", str(tmp_path / "a.txt")]
    wrong = CliRunner().invoke(main, unread)
    assert wrong.exit_code == 2 and "E957" in wrong.stderr, "told before a side is read"
    made = CliRunner().invoke(main, ["compare", *sides, "--book", str(tmp_path / "a.pdf")])
    assert made.exit_code == 1 and (tmp_path / "a.pdf").read_bytes().startswith(b"%PDF")
