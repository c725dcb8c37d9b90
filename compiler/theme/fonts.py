"""Whether a file is a font that pictures can be lettered with.

The directory of tables is looked at, and of the tables those figures that a reader would take room
and time by: its letters are read when they are first drawn. Field names and sizes are those of
ISO/IEC 14496-22, the Open Font Format.
"""

from __future__ import annotations

import struct
from array import array
from collections.abc import Iterator, Mapping
from itertools import pairwise

_VERSIONS = (b"\x00\x01\x00\x00", b"true")
_NEEDED = ("cmap", "glyf", "head", "hhea", "hmtx", "loca", "maxp")
"""Tables that measuring and outlines are read from."""
_CODES = 0x110000
"""Code points there are (Unicode 15, D9)."""
_UNICODE = {(3, 1), (3, 10), *((0, encoding) for encoding in range(5)), (0, 6)}
"""Platform and encoding of the subtables that letters are looked up in."""
_SEGMENTS, _TRIMMED, _TRIMMED_32, _GROUPS = 4, 6, 10, 12
"""Formats of a subtable: all that a typeface of today has for letters."""

_DAMAGED = "it is damaged: "


def unfit(data: bytes) -> str:
    """Why the file cannot be used as a face; "" where it can."""
    if data[:4] == b"OTTO":
        return "its letters are PostScript curves; save it as TrueType"
    if data[:4] in (b"wOFF", b"wOF2"):
        return "it is packed for the web; unpack it to TrueType"
    if data[:4] not in _VERSIONS or len(data) < 12:
        return "it is no TrueType font"
    (count,) = struct.unpack(">H", data[4:6])
    tables: dict[str, bytes] = {}
    for at in range(12, 12 + 16 * count, 16):
        if at + 16 > len(data):
            return "it is cut off"
        tag, _, offset, length = struct.unpack(">4sLLL", data[at : at + 16])
        if offset + length > len(data):
            return "it is cut off"
        name = tag.decode("latin-1")
        if name in _NEEDED:
            tables[name] = data[offset : offset + length]
    missing = [tag for tag in _NEEDED if tag not in tables]
    if missing:
        return f"it has no table {missing[0]}"
    try:
        return _damage(tables)
    except struct.error:
        return _DAMAGED + "a table is too short"


def _damage(tables: Mapping[str, bytes]) -> str:
    (em,) = struct.unpack_from(">H", tables["head"], 18)
    (long_offsets,) = struct.unpack_from(">h", tables["head"], 50)
    if not 16 <= em <= 16_384:
        return _DAMAGED + f"{em} units to the em"
    (glyphs,) = struct.unpack_from(">H", tables["maxp"], 4)
    if not _ascending(tables["loca"], glyphs + 1, len(tables["glyf"]), bool(long_offsets)):
        return _DAMAGED + "its outlines are not where it says"
    found = False
    for spans in _letters(tables["cmap"]):
        if spans is None:
            return "its table of letters has a form that is not read"
        if sum(last - first + 1 for first, last in spans if last >= first) > _CODES:
            return _DAMAGED + "it claims more letters than there are"
        found = True
    return "" if found else "it has no table of letters"


def _ascending(loca: bytes, count: int, end: int, long_offsets: bool) -> bool:
    """Whether each outline begins where the one before it ends, or later, inside the table."""
    size = 4 if long_offsets else 2
    if len(loca) < size * count:
        return False
    at = struct.unpack(f">{count}{'L' if long_offsets else 'H'}", loca[: size * count])
    scaled = array("Q", at if long_offsets else (2 * n for n in at))
    return all(a <= b for a, b in pairwise(scaled)) and scaled[-1] <= end


def _letters(cmap: bytes) -> Iterator[tuple[tuple[int, int], ...] | None]:
    """The runs of code points of each subtable for Unicode; None for one of another form."""
    (count,) = struct.unpack_from(">H", cmap, 2)
    seen: set[int] = set()
    for number in range(count):
        platform, encoding, at = struct.unpack_from(">HHL", cmap, 4 + 8 * number)
        if (platform, encoding) not in _UNICODE or at in seen:
            continue
        seen.add(at)
        (form,) = struct.unpack_from(">H", cmap, at)
        if form == _SEGMENTS:
            (twice,) = struct.unpack_from(">H", cmap, at + 6)
            half = f">{twice // 2}H"
            ends = struct.unpack_from(half, cmap, at + 14)
            starts = struct.unpack_from(half, cmap, at + 16 + twice)
            yield tuple(zip(starts, ends, strict=True))
        elif form == _GROUPS:
            (groups,) = struct.unpack_from(">L", cmap, at + 12)
            if at + 16 + 12 * groups > len(cmap):
                raise struct.error
            spans = struct.iter_unpack(">LLL", cmap[at + 16 : at + 16 + 12 * groups])
            yield tuple((first, last) for first, last, _ in spans)
        elif form in (_TRIMMED, _TRIMMED_32):
            place = ">HH" if form == _TRIMMED else ">LL"
            first, how_many = struct.unpack_from(place, cmap, at + (6 if form == _TRIMMED else 12))
            yield ((first, first + how_many - 1),)
        else:
            yield None
