"""Whether a theme's picture can be drawn: looked through before anything is built.

The page setter leaves a picture out that it cannot read. Nothing is expanded here: a document that
declares entities is refused as it stands, and a PNG is unpacked a piece at a time.
"""

from __future__ import annotations

import struct
import zlib
from collections.abc import Iterator
from xml.parsers import expat

from stemline.theme import limits

_SVG = "http://www.w3.org/2000/svg"
_SIGNATURE = b"\x89PNG\r\n\x1a\n"
_CHANNELS = {0: 1, 2: 3, 3: 1, 4: 2, 6: 4}
"""Values a dot by colour type (ISO/IEC 15948, the PNG specification, 11.2.2)."""
_PIECE = 1 << 20


class Unsound(ValueError):
    """A picture that cannot be drawn: why, and where in a text; line 0 in a file of bytes."""

    def __init__(self, why: str, line: int = 0, column: int = 0) -> None:
        super().__init__(why)
        self.why, self.line, self.column = why, line, column


def prove_svg(data: bytes) -> None:
    """Raises `Unsound` unless it is one SVG element, well formed, without declarations."""
    parser = expat.ParserCreate(namespace_separator=" ")
    depth = count = 0

    def here(why: str) -> Unsound:
        return Unsound(why, parser.CurrentLineNumber, parser.CurrentColumnNumber + 1)

    def declared(*_: object) -> None:
        raise here("a picture declares no document type and no entities")

    def opened(name: str, _: object) -> None:
        nonlocal depth, count
        depth, count = depth + 1, count + 1
        if count == 1 and name != f"{_SVG} svg":
            raise here(f'its outermost element is not svg with xmlns="{_SVG}"')
        if count > limits.MOST_ELEMENTS:
            raise here(f"it has more than {limits.MOST_ELEMENTS:,} elements")
        if depth > limits.DEEPEST_ELEMENT:
            raise here(f"elements lie more than {limits.DEEPEST_ELEMENT} deep")

    def closed(_: str) -> None:
        nonlocal depth
        depth -= 1

    parser.StartDoctypeDeclHandler = parser.EntityDeclHandler = declared
    parser.StartElementHandler, parser.EndElementHandler = opened, closed
    try:
        parser.Parse(data, True)
    except expat.ExpatError as error:
        raise Unsound(expat.ErrorString(error.code), error.lineno, error.offset + 1) from error
    except (LookupError, ValueError) as error:
        if isinstance(error, Unsound):
            raise
        raise here(" ".join(str(error).split())) from error  # an encoding nobody knows


def prove_png(data: bytes) -> None:
    """Raises `Unsound` unless it is a whole PNG whose dots are all there."""
    if not data.startswith(_SIGNATURE):
        raise Unsound("it is no PNG")
    chunks = _chunks(data)
    kind, head = next(chunks, (b"", b""))
    if kind != b"IHDR" or len(head) != 13:
        raise Unsound("it does not begin as a PNG does")
    width, height, bits, colour, _, _, interlaced = struct.unpack(">IIBBBBB", head)
    if not width or not height or width * height > limits.MOST_DOTS:
        most = limits.MOST_DOTS // limits.MEGABYTE
        raise Unsound(f"it is {width} by {height} dots; {most} million are the most")
    if colour not in _CHANNELS or bits not in (1, 2, 4, 8, 16):
        raise Unsound("its dots are of no known kind")
    row = (width * bits * _CHANNELS[colour] + 7) // 8
    # The passes of an interlaced picture have up to seven times as many row heads.
    most = (row + 1) * height + (8 * (height + width) if interlaced else 0)
    got = _unpacked(chunks, most)
    if not interlaced and got < (row + 1) * height:
        raise Unsound("dots are missing at its end")


def _chunks(data: bytes) -> Iterator[tuple[bytes, bytes]]:
    at = len(_SIGNATURE)
    while at < len(data):
        if at + 12 > len(data):
            raise Unsound("it is cut off")
        length, kind = struct.unpack(">I4s", data[at : at + 8])
        body = data[at + 8 : at + 8 + length]
        tail = data[at + 8 + length : at + 12 + length]
        if len(tail) < 4:
            raise Unsound("it is cut off")
        if zlib.crc32(kind + body) != struct.unpack(">I", tail)[0]:
            raise Unsound("its bytes are damaged")
        yield kind, body
        if kind == b"IEND":
            return
        at += 12 + length
    raise Unsound("it is cut off")


def _unpacked(chunks: Iterator[tuple[bytes, bytes]], most: int) -> int:
    """How many bytes of dots there are; stops where there are more than ``most``."""
    unpack, got = zlib.decompressobj(), 0
    try:
        for kind, body in chunks:
            left = body if kind == b"IDAT" else b""
            while left:
                got += len(unpack.decompress(left, _PIECE))
                left = unpack.unconsumed_tail
                if got > most:
                    raise Unsound("it holds more dots than its size says")
    except zlib.error as error:
        raise Unsound("its bytes are damaged") from error
    return got
