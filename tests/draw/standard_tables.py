"""The tables of themes/standard.md, made from a theme: what is printed how heavy and how large.

To print them anew: python tests/draw/standard_tables.py
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from stemline.theme import Ground, Look, Pen, Size, Theme, load_theme

_HEADS = {
    "Lines": ("line", "weight, large", "weight, small", "colour", "dash, large", "dash, small"),
    "Shapes": ("shape", "fill", "edge", "weight, large", "weight, small"),
    "Type": ("text", "face", "size, large", "size, small", "colour"),
    "Marks": ("mark", "large", "small"),
}


def tables(theme: Theme) -> dict[str, str]:
    """Each table as Markdown, by its heading."""
    full, thumb = theme.look(Size.FULL), theme.look(Size.THUMB)
    rows = {
        "Lines": [_line(name, full.pens[name], thumb.pens[name]) for name in full.pens],
        "Shapes": [_shape(name, full.grounds[name], thumb.grounds[name]) for name in full.grounds],
        "Type": [_text(name, full, thumb) for name in full.types],
        "Marks": [
            (name, _number(full.symbol[name]), _number(thumb.symbol[name])) for name in full.symbol
        ],
    }
    return {heading: _table([head, *rows[heading]]) for heading, head in _HEADS.items()}


def _line(name: str, full: Pen, thumb: Pen) -> tuple[str, ...]:
    large, small = _number(full.weight), _number(thumb.weight)
    return (name, large, small, full.colour, _dash(full), _dash(thumb))


def _shape(name: str, full: Ground, thumb: Ground) -> tuple[str, ...]:
    fill = "none" if full.fill is None else full.fill
    if full.edge is None:
        return (name, fill, "none", "", "")
    edge = full.edge.colour
    return (name, fill, edge, _number(full.edge_weight), _number(thumb.edge_weight))


def _text(name: str, full: Look, thumb: Look) -> tuple[str, ...]:
    large, small = full.types[name], thumb.types[name]
    return (name, large.face, _number(large.points), _number(small.points), large.colour)


def _dash(pen: Pen) -> str:
    return ", ".join(map(_number, pen.dash))


def _number(value: float) -> str:
    return f"{value:g}"


def _table(rows: Sequence[Iterable[str]]) -> str:
    head, *lines = ("| " + " | ".join(row) + " |" for row in rows)
    rule = "|" + "---|" * (head.count("|") - 1)
    return "\n".join([head, rule, *lines])


if __name__ == "__main__":
    for heading, table in tables(load_theme()).items():
        print(f"### {heading}\n\n{table}\n")
