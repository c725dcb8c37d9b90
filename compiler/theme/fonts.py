"""Whether a file is a font that pictures can be lettered with.

Only its directory of tables is looked at: its letters are read when they are first drawn.
"""

from __future__ import annotations

import struct

_VERSIONS = (b"\x00\x01\x00\x00", b"true")
_NEEDED = (b"cmap", b"glyf", b"head", b"hmtx", b"loca", b"maxp")
"""Tables that measuring and outlines are read from (ISO/IEC 14496-22, the Open Font Format)."""


def unfit(data: bytes) -> str:
    """Why the file cannot be used as a face; "" where it can."""
    if data[:4] == b"OTTO":
        return "its letters are PostScript curves; save it as TrueType"
    if data[:4] in (b"wOFF", b"wOF2"):
        return "it is packed for the web; unpack it to TrueType"
    if data[:4] not in _VERSIONS or len(data) < 12:
        return "it is no TrueType font"
    (count,) = struct.unpack(">H", data[4:6])
    tags: set[bytes] = set()
    for at in range(12, 12 + 16 * count, 16):
        if at + 16 > len(data):
            return "it is cut off"
        tag, _, offset, length = struct.unpack(">4sLLL", data[at : at + 16])
        if offset + length > len(data):
            return "it is cut off"
        tags.add(tag)
    missing = [tag.decode() for tag in _NEEDED if tag not in tags]
    return f"it has no table {missing[0]}" if missing else ""
