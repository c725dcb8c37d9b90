"""A file packed by hand holds what the library's own writer would have written."""

from __future__ import annotations

import io
import re

import pydyf
from pypdf import PdfReader
from pypdf.generic import StreamObject

from stemline.emit.pdf_file import file_of

_MEMORY = re.compile(r", \d+\)")
"""Which file a reference is of, by where the reader has it."""


def document(count: int) -> pydyf.PDF:
    """A page with words, and so many other objects, with one that is free among them."""
    pdf = pydyf.PDF()
    words = pydyf.Stream([b"BT (words) Tj ET"], compress=True)
    pdf.add_object(words)
    for number in range(count):
        pdf.add_object(pydyf.Dictionary({"At": number, "Said": pydyf.String(f"({number}) ü")}))
    page = pydyf.Dictionary({
        "Type": "/Page", "Parent": pdf.pages.reference, "Contents": words.reference,
        "MediaBox": pydyf.Array([0, 0, 9, 9]),
    })  # fmt: skip
    pdf.add_page(page)
    pdf.info["Title"] = pydyf.String("A title")
    return pdf


def test_every_object_is_read_back_as_the_library_writes_it() -> None:
    for count in (1, 300):  # places in one byte, and in more
        theirs = io.BytesIO()
        document(count).write(theirs, compress=True)
        made = file_of(document(count))
        ours, other = PdfReader(io.BytesIO(made), strict=True), PdfReader(theirs, strict=True)
        assert ours.metadata == other.metadata and len(ours.pages) == 1
        assert ours.pages[0].get_contents().get_data() == b"BT (words) Tj ET"  # type: ignore[union-attr]
        for number in range(1, count + 6):
            one, two = ours.get_object(number), other.get_object(number)
            assert one is not None and two is not None
            assert _MEMORY.sub("", repr(one)) == _MEMORY.sub("", repr(two)), number
            assert isinstance(one, StreamObject) == isinstance(two, StreamObject)
        assert made == file_of(document(count)), "the same bytes for the same objects"
