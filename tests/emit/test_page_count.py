"""How many pages a file has, whatever bytes its page tree is packed to."""

from __future__ import annotations

import zlib

from stemline.emit.pdf import page_count


def _packed(last: int) -> bytes:
    """A packed page tree of 7 pages whose last byte is ``last``."""
    # The last byte is that of the sum of all bytes (RFC 1950): four letters make any of them.
    for n in range(4 * 90):
        letters = bytes(33 + min(max(n - 90 * place, 0), 89) for place in range(4))
        packed = zlib.compress(b"1 0 <</Type /Pages /Count 7>>" + letters)
        if packed[-1] == last:
            return packed
    raise AssertionError("no text of these ends so")


def test_a_page_tree_is_read_whatever_it_ends_in() -> None:
    for last in range(256):
        for line in (b"\n", b"\r\n"):
            stream = line.join((b"<</Type /ObjStm>> stream", _packed(last), b"endstream"))
            assert page_count(b"%PDF-1.7\n5 0 obj\n" + stream + b"\nendobj") == 7, last
