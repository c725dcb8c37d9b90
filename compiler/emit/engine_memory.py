"""What the engine works out again and again, worked out once: the same values, sooner.

A document is laid out many times over: columns are tried at one height after another, cells are
measured before they are set, and a section is laid out to be measured and again to be set. Each
time the engine breaks the same words into lines and reads the same lengths off the same styles.
`remember` puts memories before some of its functions; what they answer is what the functions
would. An engine of another version than these were read in is left as it is.

One more is put aside: a leader of spaces draws nothing, and is hundreds of boxes a page. One says
more: the foot of a sheet tells the signs of all its pictures, and with another version of the
engine those of the last.

The memories of lines hang on the fonts that they were set in, and go with them; the others hang on
a style. The engine changes no style that a box has been laid out by: it changes a copy.
"""

from __future__ import annotations

import re
import sys
from collections.abc import Callable, Collection
from functools import lru_cache, wraps
from typing import Any

from stemline.diagnostics.in_words import each_sign_once
from stemline.emit.engine_kinds import memory_of
from stemline.emit.engine_styles import copied, first_looks, in_normal_flow

_KNOWN = (("70.0", "0.13.0"),)
"""The versions whose functions were read, of the engine and of what writes its objects."""
_MOST = 40_000
"""Lines that are remembered at a time: those of a book of some hundred pages."""
_OF_LINES = (
    "direction", "font_family", "font_feature_settings", "font_kerning", "font_language_override",
    "font_size", "font_stretch", "font_style", "font_variant_alternates", "font_variant_caps",
    "font_variant_east_asian", "font_variant_ligatures", "font_variant_numeric",
    "font_variant_position", "font_variation_settings", "font_weight", "hyphenate_character",
    "hyphenate_limit_chars", "hyphenate_limit_zone", "hyphens", "lang", "letter_spacing",
    "overflow_wrap", "tab_size", "text_decoration_line", "white_space", "word_break",
    "word_spacing",
)  # fmt: skip
"""What of a style the breaking of lines looks at."""
_WIDE = (
    "margin_left", "margin_right", "margin_top", "margin_bottom", "padding_left", "padding_right",
    "padding_top", "padding_bottom", "width", "min_width", "max_width",
)  # fmt: skip
_TALL = ("height", "min_height", "max_height")
_BORDERS = tuple(f"border_{side}_width" for side in ("top", "right", "bottom", "left"))
_CORNERS = tuple(
    f"border_{side}_radius" for side in ("top_left", "top_right", "bottom_right", "bottom_left")
)
_LINES, _STRUT, _LENGTHS = "stemline lines", "stemline strut", "stemline lengths"
_DESCRIPTION, _SQUARE = "stemline description", "stemline square"
"""Where on fonts and styles the memories are."""
_MARKS = "marks"
"""The named string of the signs of a sheet's pictures, as in `book.css`."""

_Lengths = tuple[dict[str, Any], tuple[tuple[str, float], ...]]


def remember() -> bool:
    """Put the memories before the engine's functions, once in a process; whether it is a version
    whose functions were read."""
    import pydyf
    import tinyhtml5.inputstream
    import weasyprint
    from weasyprint.css import ComputedStyle
    from weasyprint.formatting_structure.boxes import Box
    from weasyprint.layout import LayoutContext, leader, percent
    from weasyprint.text import fonts, line_break

    if (weasyprint.__version__, pydyf.__version__) not in _KNOWN:
        return False
    if hasattr(line_break, _LINES):
        return True
    setattr(line_break, _LINES, True)
    _put(line_break.split_first_line, lines_remembered(line_break.split_first_line))
    _put(line_break.strut, asked_once(line_break.strut, _STRUT))
    _put(percent.resolve_percentages, lengths_remembered(percent.resolve_percentages))
    _put(leader.handle_leader, blank_left_out(leader.handle_leader))
    _put(fonts.get_font_description, asked_once(fonts.get_font_description, _DESCRIPTION))
    _put(line_break.can_break_text, lru_cache(maxsize=_MOST)(line_break.can_break_text))
    _put(percent.resolve_radii_percentages, round_corners(percent.resolve_radii_percentages))
    tinyhtml5.inputstream.characters_until_regex = RunsOfLetters()
    pydyf._to_bytes = written_remembered(pydyf._to_bytes)
    ComputedStyle.__missing__ = first_looks(ComputedStyle.__missing__)
    ComputedStyle.copy = copied(ComputedStyle.copy)
    Box.is_in_normal_flow = in_normal_flow(Box.is_in_normal_flow)
    LayoutContext.get_string_set_for = marks_together(LayoutContext.get_string_set_for)
    return True


def _put(function: Callable[..., Any], before: Callable[..., Any]) -> None:
    """``before`` wherever the engine's modules have ``function`` by its name."""
    name = function.__name__
    for module in [*sys.modules.values()]:
        if module.__name__.startswith("weasyprint.") and vars(module).get(name) is function:
            setattr(module, name, before)


def marks_together(get: Callable[..., Any]) -> Callable[..., Any]:
    """As `get_string_set_for`, but that the `marks` of a page are those that all its boxes say,
    each sign once, and "" where none does: a style sheet asks for the first or the last alone."""

    @wraps(get)
    def get_string_set_for(self: Any, page: Any, name: str, keyword: str = "first") -> Any:
        if name != _MARKS:
            return get(self, page, name, keyword)
        return (each_sign_once(*self.string_set[name].get(self.current_page, ())),)

    return get_string_set_for


def lines_remembered(split: Callable[..., Any]) -> Callable[..., Any]:
    """As `split_first_line`, each line broken once for alike styles."""

    @wraps(split)
    def split_first_line(
        text: str,
        style: Any,
        context: Any,
        max_width: float | None,
        justification_spacing: float,
        is_line_start: bool = True,
        minimum: bool = False,
    ) -> Any:
        fonts = vars(style.font_config)
        known = fonts.get(_LINES)
        if known is None:
            known = fonts[_LINES] = ({}, {})
        lines, kinds = known
        held = memory_of(style)
        kind = held.get(_LINES)
        if kind is None:
            said = repr([style[name] for name in _OF_LINES])
            kind = held[_LINES] = kinds.setdefault(said, len(kinds))
        key = text, kind, max_width, justification_spacing, is_line_start, minimum
        made = lines.get(key)
        if made is None:
            if len(lines) >= _MOST:
                lines.clear()
            made = lines[key] = split(
                text, style, context, max_width, justification_spacing, is_line_start, minimum
            )
        layout, *rest = made
        own = object.__new__(type(layout))  # a line is drawn with its own, and may be shortened
        vars(own).update(vars(layout))
        return own, *rest

    return split_first_line


def asked_once(made: Callable[[Any], Any], name: str) -> Callable[[Any], Any]:
    """As a function of a style, asked once of each, which holds the answer under ``name``; who is
    given a font's description takes a copy."""

    @wraps(made)
    def asked(style: Any) -> Any:
        memory = memory_of(style)
        held = memory.get(name)
        if held is None:
            held = memory[name] = made(style)
        return held

    return asked


def lengths_remembered(resolve: Callable[[Any, Any], None]) -> Callable[[Any, Any], None]:
    """As `resolve_percentages`, the lengths of a style read once; one with sums, with heights in
    percent, or whose borders collapse or count as its width, is left to the engine."""
    from weasyprint.formatting_structure.boxes import Box, PageBox

    @wraps(resolve)
    def resolve_percentages(box: Any, containing_block: Any) -> None:
        style = box.style
        held = memory_of(style)
        lengths: _Lengths | bool | None = held.get(_LENGTHS)
        if lengths is None:
            lengths = held[_LENGTHS] = _lengths(style) or False
        if isinstance(lengths, bool) or isinstance(box, PageBox):
            resolve(box, containing_block)
            return
        fixed, shares = lengths
        vars(box).update(fixed)
        if shares:
            width = (
                containing_block.width if isinstance(containing_block, Box) else containing_block[0]
            )
            for name, share in shares:
                setattr(box, name, width * share / 100)

    return resolve_percentages


def round_corners(resolve: Callable[[Any], None]) -> Callable[[Any], None]:
    """As `resolve_radii_percentages`, at once where no corner of the style is round."""

    @wraps(resolve)
    def resolve_radii_percentages(box: Any) -> None:
        style = box.style
        held = memory_of(style)
        square = held.get(_SQUARE)
        if square is None:
            square = held[_SQUARE] = all((0, "px") in style[name] for name in _CORNERS)
        if square:
            for name in _CORNERS:  # of who stands for another, it is the other's
                setattr(box, name, (0, 0))
        else:
            resolve(box)

    return resolve_radii_percentages


class RunsOfLetters(dict[tuple[Collection[str], bool], re.Pattern[str]]):
    """The parser's patterns for a run of some letters, or of all but these. It looks for each in
    such a table, and after it has made one puts it under another key."""

    def __missing__(self, key: tuple[Collection[str], bool]) -> re.Pattern[str]:
        letters, those = key
        said = "".join(f"\\x{ord(letter):02x}" for letter in letters)
        made = self[key] = re.compile(f"[{said}]+" if those else f"[^{said}]+")
        return made


def blank_left_out(handle: Callable[[Any, Any, Any], None]) -> Callable[[Any, Any, Any], None]:
    """As `handle_leader`; one of spaces keeps its width, and what it holds is left out."""
    from weasyprint.layout.leader import leader_index

    @wraps(handle)
    def handle_leader(context: Any, line: Any, containing_block: Any) -> None:
        handle(context, line, containing_block)
        index, box = leader_index(line)
        if index is not None and all(not child.text.strip() for child in box.children):
            box.children = ()

    return handle_leader


def written_remembered(written: Callable[[Any], bytes]) -> Callable[[Any], bytes]:
    """As `_to_bytes`, by what kind of thing it is, and each number written once."""

    @lru_cache(maxsize=_MOST)
    def number(value: float) -> bytes:
        return written(value)

    @wraps(written)
    def _to_bytes(item: Any) -> bytes:
        kind = type(item)
        if kind is float:
            return number(item)
        if kind is bytes or kind is str:
            told: bytes = item if kind is bytes else item.encode("ascii")
            return told
        return written(item)

    return _to_bytes


def _lengths(style: Any) -> _Lengths | None:
    """What a box has of a style by name, and what it has in hundredths of the width around it."""
    if style["box_sizing"] != "content-box" or style["border_collapse"] == "collapse":
        return None
    fixed: dict[str, Any] = {name: style[name] for name in _BORDERS}
    shares: list[tuple[str, float]] = []
    for name in (*_WIDE, *_TALL):
        value = style[name]
        unit = getattr(value, "unit", None)
        if value is None or value == "auto":
            fixed[name] = 0 if value == "auto" and name in ("min_width", "min_height") else value
        elif unit == "px":
            fixed[name] = value.value
        elif unit == "%" and name in _WIDE:
            shares.append((name, value.value))
        else:
            return None
    return fixed, tuple(shares)
