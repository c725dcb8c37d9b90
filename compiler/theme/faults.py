"""A theme that fails while it is used: one message, with its place, that ends the command."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from stemline.diagnostics.diagnostic import Mistake
from stemline.diagnostics.render import render
from stemline.source import Source, Span
from stemline.theme.theme import Theme, ThemeFolder

_TEXTS = (".jinja", ".css", ".svg")


class Refused(ValueError):
    """A page asked for what it may not have, or a file of the theme cannot be used. The message is
    written out whole, as it is printed."""


def refusal(said: Mistake, span: Span, *sources: Source) -> Refused:
    """The exception that says so at ``span``, with the line where ``sources`` have it."""
    shown = {source.name: source for source in sources}
    return Refused(render([said.at(span)], shown).rstrip("\n"))


def refused_at(theme: Theme, file: str, line: int, said: Mistake) -> Refused:
    """The same at a line of a file of the theme, of the first folder that has it; line 0 for all
    of the file. Of a file that no folder has, the theme's own folder is named."""
    layer = next((layer for layer in theme.layers if file in layer.files), None)
    if layer is None:
        return refusal(said, Span(theme.layers[0].place, 0, 0, 0))
    source = text_of(layer, file)
    if not 0 < line <= len(source.lines):
        return refusal(said, Span(source.name, 0, 0, 0))
    written = source.lines[line - 1]
    start = len(written) - len(written.lstrip())
    span = Span(source.name, line, start + 1, max(len(written.rstrip()), start + 1) + 1)
    return refusal(said, span, source)


def where_said(theme: Theme, words: Iterable[str]) -> tuple[str, int]:
    """The file and line where one of ``words`` stands first in the theme's texts, the coach's own
    before the bundled; the first own text and line 0 where none has it."""
    for word in filter(None, words):
        for layer, file in _texts(theme):
            for number, line in enumerate(text_of(layer, file).lines, 1):
                if word in line:
                    return file, number
    own = next((file for layer, file in _texts(theme) if not layer.bundled), "theme.toml")
    return own, 0


def text_of(layer: ThemeFolder, file: str) -> Source:
    """A text of the theme under the name that messages give it."""
    text = layer.files[file].decode("utf-8-sig", "replace")
    return Source(layer.named(file), text.replace("\r\n", "\n"))


def _texts(theme: Theme) -> Iterator[tuple[ThemeFolder, str]]:
    for layer in theme.layers:
        yield from ((layer, file) for file in layer.files if file.endswith(_TEXTS))
