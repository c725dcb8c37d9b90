"""Templates see frozen page models, in a sandbox, and all text is escaped."""

from __future__ import annotations

import re
from dataclasses import replace
from html import unescape

import pytest
from jinja2 import UndefinedError
from jinja2.exceptions import SecurityError

from stemline.book.content.book import Book
from stemline.book.layout.fit import Arrangement, FrontMatter
from stemline.book.paper import TEXT_WIDTH
from stemline.emit.fetch import theme_files
from stemline.emit.gallery import Gallery
from stemline.emit.html import book_html, environment
from stemline.picture.scene.metrics import faces
from stemline.theme import Theme


def render(text: str, **values: object) -> str:
    page = "page.jinja"
    return environment({page: text.encode()}).get_template(page).render(**values)


@pytest.mark.parametrize(
    "text",
    [
        "{{ names.append('x') }}",
        "{{ by_id.update({'a': 'b'}) }}",
        "{{ book.__class__.__mro__ }}",
        "{{ ''.__class__ }}",
        "{{ '{0.__class__}'.format(book) }}",
    ],
)
def test_the_sandbox_refuses(text: str, book: Book) -> None:
    with pytest.raises((SecurityError, UndefinedError)):
        render(text, names=["a"], by_id={}, book=book)


def test_a_page_model_cannot_be_set(book: Book) -> None:
    with pytest.raises(Exception, match="assign"):
        render("{% set book.title = 'x' %}", book=book)


def test_a_name_that_is_not_there_is_an_error() -> None:
    with pytest.raises(UndefinedError):
        render("{{ nobody }}")


def test_templates_come_from_the_theme_alone() -> None:
    from jinja2 import TemplateNotFound

    with pytest.raises(TemplateNotFound):
        render("{% include '../../etc/passwd' %}")


def test_words_are_escaped(book: Book, gallery: Gallery, theme: Theme) -> None:
    cover = replace(book.cover, team="<b>Herons</b> & Co")
    layout = {page.id: Arrangement(len(page.dressups), runs_on=True) for page in book.pages}
    html = book_html(replace(book, cover=cover), gallery, layout, theme, FrontMatter())
    assert "<b>Herons</b>" not in html
    assert "&lt;b&gt;Herons&lt;/b&gt; &amp; Co" in html


def test_a_mark_in_a_value_fails_whatever_test_it_is_written_in() -> None:
    made = environment({"page": b'<img alt="{{ words }}">{{ words }}'}).get_template("page")
    assert "".join(made.generate(words="M comes")) == '<img alt="M comes">M comes'
    with pytest.raises(AssertionError, match="<span class="):
        "".join(made.generate(words="[M] comes"))


def test_the_measuring_pass_leaves_cover_and_indexes_out(
    book: Book, gallery: Gallery, theme: Theme
) -> None:
    layout = {page.id: Arrangement(len(page.dressups), runs_on=True) for page in book.pages}
    html = book_html(book, gallery, layout, theme)
    assert 'class="cover"' not in html
    assert 'class="index"' not in html
    assert html.count('<article class="concept') == len(book.pages)


def test_the_theme_has_its_templates(theme: Theme) -> None:
    assert {
        "book.html.jinja",
        "page.html.jinja",
        "call.html.jinja",
        "concept.html.jinja",
        "dressed.html.jinja",
        "glance.html.jinja",
        "lineup.html.jinja",
        "look.html.jinja",
        "motion.html.jinja",
        "protection.html.jinja",
        "macros.html.jinja",
    } <= theme_files(theme, ".jinja").keys()
    assert "book.css" in theme_files(theme, ".css")


def test_the_typeface_has_every_letter_that_a_template_writes(theme: Theme) -> None:
    """Else the system's own faces would be asked, and a cell be of another width on each."""
    regular = faces(theme)["regular"]
    missing = regular.glyph("\N{RIGHTWARDS ARROW}").outline
    for name, written in theme_files(theme, ".jinja").items():
        text = re.sub(r"\{#.*?#\}", "", written.decode(), flags=re.DOTALL)
        lacking = {c for c in text if ord(c) > 126 and regular.glyph(c).outline == missing}
        assert not lacking, name


def test_a_heading_is_short_only_where_its_widest_letters_leave_room(
    book: Book, gallery: Gallery, theme: Theme
) -> None:
    """Else it and what it serves, which stands over it at the right, might meet."""
    letters = [chr(code) for code in range(32, 127)]
    for face, points, widest in (("bold", 24, 19.1), ("regular", 8.6, 7.1)):
        assert max(faces(theme)[face].glyph(each).advance for each in letters) * points <= widest
    layout = {page.id: Arrangement(len(page.dressups)) for page in book.pages}
    html = book_html(book, gallery, layout, theme, FrontMatter())
    found = re.findall(r'<header[^>]*?( class="short")?>\s*<h2>(.*?)</h2>\s*<p[^>]*>(.*?)<', html)
    assert {bool(short) for short, _, _ in found} == {True, False}
    for short, name, serves in found:
        number = len("page 100") if serves.endswith(" dressed up on ") else 0
        over = len(unescape(serves)) + number
        assert bool(short) == (len(name) * 19.1 + over * 7.1 < 520)
    assert TEXT_WIDTH > 520
