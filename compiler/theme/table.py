"""`theme.toml` against what a theme may say: tables laid over each other, then looked through.

Nothing raises for a coach's mistake: each is a diagnostic with the line that it stands on, and the
value of the theme below is kept.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from stemline.diagnostics.catalogue.themes import E902, E903, E904
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.nearest import nearest
from stemline.source import Source, Span
from stemline.theme import limits
from stemline.theme.sizing import at_size
from stemline.theme.theme import Size

Table = Mapping[str, Any]

PICTURE = ("width", "height", "yard", "margin")
_TOP = ("title", "extends", "colour", "font", "picture", "symbol", "stroke", "shape", "text")
_SIZES = (2, len(Size))
"""How many numbers a length may have: large and small, or one for each size."""
_INKS = frozenset({"grey", "colour"})
"""Two ways to say one thing: a theme that says one takes the other of the theme below away."""
_HEX = re.compile(r"#[0-9a-fA-F]{6}\Z")
_HEADER = re.compile(r"\s*\[\s*([^\[\]#]+?)\s*\]")
_AT = re.compile(r"\(at line (\d+), column (\d+)\)\Z")
_LEAST_DASH = 0.1
"""Points of a dash and its gap together: finer than any printer."""

_COLOUR = 'a colour written as "#0a5fb4", or the name of one under [colour]'
_FILL = 'a grey from 0 to 1, a colour such as "#0a5fb4", or "none"'


@dataclass
class TableReader:
    """One theme file as it is looked through; ``found`` collects its mistakes."""

    source: Source
    colours: frozenset[str]
    faces: frozenset[str]
    found: list[Diagnostic] = field(default_factory=list)

    def span(self, table: str, key: str) -> Span:
        """The line of a key of a table, as such files are usually written; else the whole file."""
        return span_of(self.source, table, key)

    def unknown(self, table: str, key: str, right: tuple[str, ...]) -> None:
        if len(self.found) >= limits.MOST_MISTAKES:
            return
        near = nearest(key, right) if len(key) <= limits.LONGEST_WORD else ()
        where = f"[{table}]" if table else "theme.toml"
        span = self.span(table, key)
        self.found.append(E903(key=key, table=where).at(span, nearest=near))

    def wrong(self, table: str, key: str, wanted: str) -> None:
        if len(self.found) >= limits.MOST_MISTAKES:
            return
        span = self.span(table, key)
        self.found.append(E904(key=key, wanted=wanted).at(span))


def parsed(source: Source) -> tuple[dict[str, Any], tuple[Diagnostic, ...]]:
    """The file as TOML; an empty table with the reason where it is none."""
    long = (n for n, text in enumerate(source.lines, 1) if len(text) > limits.LONGEST_LINE)
    if number := next(long, 0):
        why = f"a line is longer than {limits.LONGEST_LINE:,} letters"
        return {}, (E902(why=why).at(Span(source.name, number, 1, 2)),)
    try:
        return tomllib.loads(source.text), ()
    except (ValueError, RecursionError) as error:
        why = str(error)
        if not isinstance(error, tomllib.TOMLDecodeError):
            why = "a number of thousands of figures, or lists in lists without end"
        at = _AT.search(why)
        line, column = (int(at[1]), int(at[2])) if at else (len(source.lines), 1)
        span = Span(source.name, line, column, column + 1)
        said = why[: at.start()].strip() if at else why.removesuffix("(at end of document)").strip()
        return {}, (E902(why=said[:1].casefold() + said[1:]).at(span),)


def span_of(source: Source, table: str, key: str) -> Span:
    """Where ``key`` of ``table`` is written; a table's own header where it holds no such line."""
    inside, header = not table, Span(source.name, 0, 0, 0)
    wanted = re.compile(rf"""\s*(["']?){re.escape(key)}\1\s*=""")
    for number, line in enumerate(source.lines, 1):
        if opened := _HEADER.match(line):
            name = re.sub(r"\s|[\"']", "", opened[1])
            inside = name == table
            if name in (table, f"{table}.{key}".lstrip(".")):
                header = Span(source.name, number, 1, len(line) + 1)
        elif inside and wanted.match(line):
            start = len(line) - len(line.lstrip())
            return Span(source.name, number, start + 1, len(line.rstrip()) + 1)
    return header


def laid_over(below: Table, above: Table) -> dict[str, Any]:
    """Two theme tables as one, value by value; in a row, grey and colour replace each other."""
    made = dict(below)
    for key, value in above.items():
        if isinstance(value, Mapping) and isinstance(made.get(key), Mapping):
            under = made[key]
            if _INKS & value.keys():
                under = {k: v for k, v in under.items() if k not in _INKS}
            made[key] = laid_over(under, value)
        else:
            made[key] = value
    return made


def sound(source: Source, own: Table, below: Table) -> tuple[dict[str, Any], list[Diagnostic]]:
    """What of a theme's own table can be laid over ``below``, and what is wrong with the rest.

    ``below`` is the table of the theme that it extends: it knows every role, symbol and key.
    """
    said = {k: v for k, v in own.items() if isinstance(v, Mapping)}
    colours = {"ground", "ink", *said.get("colour", {}), *below.get("colour", {})}
    faces = {*said.get("font", {}), *below["font"]}
    on = TableReader(source, frozenset(colours), frozenset(faces))
    kept: dict[str, Any] = {}
    for key, value in own.items():
        if key not in _TOP:
            on.unknown("", key, _TOP)
        elif key in ("title", "extends"):
            if isinstance(value, str):
                kept[key] = value
            else:
                on.wrong("", key, "words in quotes")
        elif not isinstance(value, Mapping):
            on.wrong("", key, f"a table: [{key}] on a line of its own, its lines under it")
        else:
            kept[key] = SECTIONS[key](on, key, value, below.get(key, {}))
    _picture_holds(on, kept, below)
    return kept, on.found


def _flat(
    check: Callable[[TableReader, Any], bool], wanted: str, closed: bool
) -> Callable[..., Any]:
    def read(on: TableReader, table: str, own: Table, below: Table) -> dict[str, Any]:
        kept: dict[str, Any] = {}
        for key, value in own.items():
            if closed and key not in below:
                on.unknown(table, key, tuple(below))
            elif not check(on, value):
                on.wrong(table, key, wanted)
            else:
                kept[key] = value
        return kept

    return read


def _rows(row: Mapping[str, tuple[Callable[[TableReader, Any], bool], str]]) -> Callable[..., Any]:
    def read(on: TableReader, table: str, own: Table, below: Table) -> dict[str, Any]:
        kept: dict[str, Any] = {}
        for role, said in own.items():
            if role not in below:
                on.unknown(table, role, tuple(below))
                continue
            if not isinstance(said, Mapping):
                on.wrong(table, role, f"a table: [{table}.{role}] on a line of its own")
                continue
            kept[role] = {}
            for key, value in said.items():
                check, wanted = row.get(key, (None, ""))
                if check is None:
                    on.unknown(f"{table}.{role}", key, tuple(row))
                elif not check(on, value):
                    on.wrong(f"{table}.{role}", key, wanted)
                else:
                    kept[role][key] = value
        return kept

    return read


def _number(value: Any) -> bool:
    """A number that can be a length; TOML's true, inf and nan are none."""
    is_number = isinstance(value, int | float) and not isinstance(value, bool)
    return is_number and 0 <= value <= max(limits.LONGEST.values())


def _length(what: str) -> tuple[Callable[[TableReader, Any], bool], str]:
    """The check of such a length, and what is wanted in its place."""
    most = limits.LONGEST[what]

    def check(on: TableReader, value: Any) -> bool:
        each = value if isinstance(value, list) and len(value) in _SIZES else [value]
        return all(_number(n) and n <= most for n in each)

    return check, (
        f"a number of points from 0 to {most:,g}, or [large, small] or [large, quarter, small]"
    )


def _is_dash(on: TableReader, value: Any) -> bool:
    """Points on and off in turn, or two or three such lists; an empty list is a solid line."""
    if not isinstance(value, list):
        return False
    if len(value) in _SIZES and all(isinstance(part, list) for part in value):
        return all(_is_dash(on, part) and not any(isinstance(n, list) for n in part)
                   for part in value)  # fmt: skip
    if len(value) > limits.MOST_DASHES:
        return False
    most = limits.LONGEST["dash"]
    return all(_number(n) and n <= most for n in value) and (not value or sum(value) > _LEAST_DASH)


def _is_grey(on: TableReader, value: Any) -> bool:
    return _number(value) and 0 <= value <= 1


def _is_hex(on: TableReader, value: Any) -> bool:
    return isinstance(value, str) and _HEX.match(value) is not None


def _is_colour(on: TableReader, value: Any) -> bool:
    return _is_hex(on, value) or (isinstance(value, str) and value in on.colours)


def _is_fill(on: TableReader, value: Any) -> bool:
    return _is_grey(on, value) or _is_colour(on, value) or value == "none"


def _is_face(on: TableReader, value: Any) -> bool:
    return isinstance(value, str) and value in on.faces


_WEIGHT = _length("weight")
_GREY = (_is_grey, "a grey from 0, the ink, to 1, the ground")
_DASH = (_is_dash, "points on, points off and so on, or two such lists: [[5.0, 2.6], [3.2, 1.8]]")
_FILLED = (_is_fill, _FILL)

SECTIONS: Mapping[str, Callable[[TableReader, str, Table, Table], dict[str, Any]]] = {
    "colour": _flat(_is_hex, 'a colour written as "#0a5fb4"', closed=False),
    "font": _flat(lambda _, v: isinstance(v, str), "the name of a font file", closed=False),
    "picture": _flat(*_length("picture"), closed=True),
    "symbol": _flat(*_length("symbol"), closed=True),
    "stroke": _rows(
        {"weight": _WEIGHT, "grey": _GREY, "colour": (_is_colour, _COLOUR), "dash": _DASH}
    ),
    "shape": _rows({"fill": _FILLED, "edge": _FILLED, "weight": _WEIGHT, "dash": _DASH}),
    "text": _rows(
        {
            "face": (_is_face, "the name of a face under [font]"),
            "size": _length("size"),
            "grey": _GREY,
            "colour": (_is_colour, _COLOUR),
        }
    ),
}


def _picture_holds(on: TableReader, kept: dict[str, Any], below: Table) -> None:
    """A picture must have room inside its margins, and a yard some length."""
    if "picture" not in kept:
        return
    whole = {**below["picture"], **kept["picture"]}
    for size in Size:
        wide, tall, yard, margin = (at_size(whole[key], size) for key in PICTURE)
        for key, room in (("width", wide), ("height", tall)):
            least = limits.LEAST_PICTURE[key][size.value]
            if room < 2 * margin + least:
                at = key if key in kept["picture"] else "margin"
                on.wrong("picture", at, f"at least {least:g} points more than the margins")
                kept["picture"] = {}
                return
        if yard < (least := limits.LEAST_YARD[size.value]):
            on.wrong("picture", "yard", f"at least {least:g} points")
            kept["picture"] = {}
            return
