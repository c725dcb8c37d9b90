"""What a command writes: codes 950 to 969."""

from __future__ import annotations

from stemline.diagnostics.wording import Wording

WORDING: dict[str, Wording] = {
    "E951": Wording(
        "a file in the way",
        "this {how}, and the new output would take its place",
        "",
        "move it away or give it another name, or write elsewhere with --out; nothing was written",
    ),
    "E952": Wording(
        "output cannot be written",
        "this cannot be written: {why}",
        "",
        "what stood there is as it was",
    ),
    "E953": Wording(
        "no folder for the output",
        "this is {what}: the output needs a folder",
        "",
        "choose another place with --out",
    ),
    "E954": Wording(
        "another build is writing",
        "another build has been putting its files here for a minute",
        "",
        "wait until it is done, or end it, and build again",
    ),
    "E955": Wording(
        "a build that waits for its place",
        "the new book is whole, but not all of its files could take their place: {why}",
        "",
        "close what holds a file open or locks the folder; the next command finishes the work",
    ),
    "E956": Wording(
        "a picture that cannot be drawn",
        "this picture cannot be drawn whole: {why}",
        "",
        "nothing was written: a book lacks no picture; look at the name for an odd character, and "
        "at the theme's own pictures and styles",
    ),
    "E957": Wording(
        "a kind of file that is not made",
        "`{found}` is no kind of file that this command makes",
        "not made",
        "give a name that ends in {choices}",
    ),
    "E958": Wording(
        "output over the playbook",
        "this folder holds the playbook itself",
        "",
        "choose another place with --out",
    ),
    "E959": Wording(
        "no room to work in",
        "a book needs some megabytes here while it is made: {why}",
        "",
        "make room there, or set TMPDIR to a folder that has it; nothing was written",
    ),
    "E960": Wording(
        "output led out of the playbook",
        "a link leads this out of the playbook's folder, to {place}",
        "",
        "if the link is yours, write there with --out, or with --output for a sheet; one that came "
        "with somebody else's playbook may lead over your own files; nothing was written",
    ),
}
