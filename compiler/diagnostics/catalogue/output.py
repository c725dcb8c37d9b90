"""What a command writes: codes 950 to 969."""

from __future__ import annotations

from stemline.diagnostics.diagnostic import Mistake


class E951(Mistake):
    title = "a file in the way"
    message = "this {how}, and the new output would take its place"
    help = (
        "move it away or give it another name, or write elsewhere with --out; nothing was written"
    )

    how: str


class E952(Mistake):
    title = "output cannot be written"
    message = "this cannot be written: {why}"
    help = "what stood there is as it was"

    why: str


class E953(Mistake):
    title = "no folder for the output"
    message = "this is {what}: the output needs a folder"
    help = "choose another place with --out"

    what: str


class E954(Mistake):
    title = "another build is writing"
    message = "another build has been putting its files here for a minute"
    help = "wait until it is done, or end it, and build again"


class E955(Mistake):
    title = "a build that waits for its place"
    message = "the new book is whole, but not all of its files could take their place: {why}"
    help = "close what holds a file open or locks the folder; the next command finishes the work"

    why: str


class E956(Mistake):
    title = "a picture that cannot be drawn"
    message = "this picture cannot be drawn whole: {why}"
    help = (
        "nothing was written: a book lacks no picture; look at the name for an odd character, and "
        "at the theme's own pictures and styles"
    )

    why: str


class E957(Mistake):
    title = "a kind of file that is not made"
    message = "`{found}` is no kind of file that this command makes"
    label = "not made"
    help = "give a name that ends in {choices}"

    choices: str
    found: str


class E958(Mistake):
    title = "output over the playbook"
    message = "this folder holds the playbook itself"
    help = "choose another place with --out"


class E959(Mistake):
    title = "no room to work in"
    message = "a book needs some megabytes here while it is made: {why}"
    help = "make room there, or set TMPDIR to a folder that has it; nothing was written"

    why: str


class E960(Mistake):
    title = "output led out of the playbook"
    message = "a link leads this out of the playbook's folder, to {place}"
    help = (
        "if the link is yours, write there with --out, or with --output for a sheet; one that came "
        "with somebody else's playbook may lead over your own files; nothing was written"
    )

    place: str
