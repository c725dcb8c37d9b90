"""The tables of themes/standard.md, made from a theme: what is printed how heavy and how large.

To print them anew: python tests/draw/standard_tables.py
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from stemline.theme import SIZES, Appearance, Theme, load_theme

_HEADS = {
    "Lines": ("line", "weight", "colour", "dash"),
    "Shapes": ("shape", "fill", "edge", "weight"),
    "Type": ("text", "face", "size", "colour"),
    "Marks": ("mark", *SIZES),
}
_EACH = {"weight", "dash", "size"}
"""Columns that stand once for each size."""


def tables(theme: Theme) -> dict[str, str]:
    """Each table as Markdown, by its heading."""
    looks = [theme.look(size) for size in SIZES.values()]
    full = looks[0]
    rows = {
        "Lines": [_line(name, looks) for name in full.pens],
        "Shapes": [_shape(name, looks) for name in full.grounds],
        "Type": [_text(name, looks) for name in full.types],
        "Marks": [(name, *(_number(look.symbol[name]) for look in looks)) for name in full.symbol],
    }
    return {heading: _table([_spread(head), *rows[heading]]) for heading, head in _HEADS.items()}


def _spread(head: Sequence[str]) -> tuple[str, ...]:
    cells: list[str] = []
    for name in head:
        cells += [f"{name}, {size}" for size in SIZES] if name in _EACH else [name]
    return tuple(cells)


def _line(name: str, looks: Sequence[Appearance]) -> tuple[str, ...]:
    pens = [look.pens[name] for look in looks]
    dashes = (", ".join(map(_number, pen.dash)) for pen in pens)
    return (name, *(_number(pen.weight) for pen in pens), pens[0].colour, *dashes)


def _shape(name: str, looks: Sequence[Appearance]) -> tuple[str, ...]:
    grounds = [look.grounds[name] for look in looks]
    full = grounds[0]
    fill = "none" if full.fill is None else full.fill
    if full.edge is None:
        return (name, fill, "none", *("" for _ in looks))
    return (name, fill, full.edge.colour, *(_number(each.edge_weight) for each in grounds))


def _text(name: str, looks: Sequence[Appearance]) -> tuple[str, ...]:
    types = [look.types[name] for look in looks]
    return (name, types[0].face, *(_number(each.points) for each in types), types[0].colour)


def _number(value: float) -> str:
    return f"{value:g}"


def _table(rows: Sequence[Iterable[str]]) -> str:
    head, *lines = ("| " + " | ".join(row) + " |" for row in rows)
    rule = "|" + "---|" * (head.count("|") - 1)
    return "\n".join([head, rule, *lines])


if __name__ == "__main__":
    for heading, table in tables(load_theme()).items():
        print(f"### {heading}\n\n{table}\n")
