"""Files and characters: codes 100 to 199."""

from __future__ import annotations

from stemline.diagnostics.diagnostic import Mistake


class NoPlaybook(Mistake):
    """A command was given no playbook at all."""

    folder: str


class Stray(Mistake):
    """A character that the notation has no use for where it stands."""

    char: str


class E101(NoPlaybook):
    title = "no such folder"
    message = "there is no folder `{folder}`"
    help = "give the folder with your .play files; `stemline new FOLDER` makes one to start from"


class E102(NoPlaybook):
    title = "not a folder"
    message = "`{folder}` is not a folder"
    help = "give the folder that holds your .play files, not one of them"


class E103(Mistake):
    title = "no playbook in the folder"
    message = "`{folder}` holds no .play file"
    help = "`stemline new FOLDER` makes a small playbook to start from"

    folder: str


class E104(Mistake):
    title = "not UTF-8"
    message = "this file is not UTF-8 text: the byte {byte} cannot stand here"
    help = "save the file as UTF-8 in your editor"

    byte: str


class E105(Mistake):
    title = "an empty file"
    message = "this file is empty"
    help = "write a definition into it, or delete it"


class E106(Mistake):
    title = "file too large"
    message = "this file has {size} million bytes, and no playbook has that much to say"
    help = "is it another kind of file with the ending .play?"

    size: str


class E107(Mistake):
    title = "file cannot be read"
    message = "this file cannot be read: {why}"

    why: str


class E108(Mistake):
    title = "not a file of the playbook"
    message = "this is {what}, so it is not read"
    help = "put a file in its place, rename it, or move it out of the playbook"

    what: str


class E109(Mistake):
    title = "folder cannot be read"
    message = "this folder cannot be read: {why}"
    help = "let yourself read it, or move it out of the playbook"

    why: str


class W101(Mistake):
    title = "file that is not read"
    message = "this file is not read: only names that end in `.play` are, in small letters"
    help = "rename it, or move it out of the playbook"


class W102(Mistake):
    title = "linked folder"
    message = "this folder is a link, and what it leads to is not read"
    help = "put the files themselves into the playbook"


class W103(Mistake):
    title = "no calls"
    message = "this playbook makes no call, so its book would have no picture"
    help = "write a concept, a formation, and a `dress` block that puts the one into the other"


class E110(Mistake):
    title = "tab in the margin"
    message = (
        "this line is indented with {what}, not with spaces; lines like it in this file: {count}"
    )
    label = "it only looks like spaces"
    help = "indent with spaces, four to a line, and set the editor to put spaces for the tab key"

    count: int
    what: str


class E111(Mistake):
    title = "line too long"
    message = "this line has {length} characters; a line may have {most}"
    label = "not read"
    help = "part it into several lines: a list may stand one item a line, each with its own label"

    length: int
    most: int


class E120(Stray):
    title = "character without a use"
    message = "the notation has no use for the character `{char}`"
    help = (
        'leave it out; in quotes any character may stand, as in say "Go!"; a comment opens with //'
    )


class E121(Stray):
    title = "colon"
    message = "the notation writes no `:`"
    help = (
        "a space parts a word from what follows it: feet quick, 3, reset; a time has four figures: "
        "1530"
    )


class E122(Stray):
    title = "semicolon"
    message = "the notation writes no `;`"
    help = (
        "write `,` between things that belong together, `then` between the pieces of a path, and a "
        "new fact on a new line"
    )


class E123(Stray):
    title = "equals sign"
    message = "the notation writes no `=`"
    help = "write the verb in its place: settle is strong #2"


class E124(Mistake):
    title = "decimal comma"
    message = "`{whole},{part}` may be one number or two"
    label = "a comma right between two figures"
    help = "write {whole}.{part} for one number, or `{whole}, {part}` with a space for two"

    part: str
    whole: str


class E125(Stray):
    title = "dash"
    message = "the dash `{char}` stands where no word or range goes on"
    help = (
        "write a range with a plain hyphen and no spaces, 10-12; an offset takes no minus sign: 2 "
        "inside numbers"
    )


class E126(Stray):
    title = "half a quote"
    message = "a text stands between two quotes, and here is one of them"
    label = "where is the other"
    help = 'write both on one line: say "Over sets the depth."'


class E127(Stray):
    title = "single quote"
    message = "a text or name in quotes does not open with `{char}`"
    help = 'write double quotes: say "Over sets the depth."'


class E130(Mistake):
    title = "soft return"
    message = "a {name} ({point}) stands in this line"
    label = "a word processor writes it, and a plain text has none"
    help = "delete it; press Enter where a new line belongs, the space bar where words are parted"

    name: str
    point: str


class E131(Mistake):
    title = "control character"
    message = "the control character {point} stands in this line"
    label = "no screen shows it"
    help = "delete it; if it is in your way, write the line anew in a plain editor"

    point: str


class E132(Mistake):
    title = "invisible character"
    message = "a {name} ({point}) stands in this line"
    label = "nobody sees it, and with it two names that look alike are two"
    help = "delete it and the letters beside it, and write them again"

    name: str
    point: str


class E133(Mistake):
    title = "unfinished merge"
    message = "version control could not merge this file; places left to settle: {count}"
    label = "from here to the line of `>` both versions stand"
    help = "keep the lines that are right, and delete the others and the lines of `<`, `=` and `>`"

    count: str
