"""Files and characters: codes 100 to 199."""

from __future__ import annotations

from stemline.diagnostics.wording import Wording

WORDING: dict[str, Wording] = {
    "E101": Wording(
        "no such folder",
        "there is no folder `{folder}`",
        "",
        "give the folder with your .play files; `stemline new FOLDER` makes one to start from",
    ),
    "E102": Wording(
        "not a folder",
        "`{folder}` is not a folder",
        "",
        "give the folder that holds your .play files, not one of them",
    ),
    "E103": Wording(
        "no playbook in the folder",
        "`{folder}` holds no .play file",
        "",
        "`stemline new FOLDER` makes a small playbook to start from",
    ),
    "E104": Wording(
        "not UTF-8",
        "this file is not UTF-8 text: the byte {byte} cannot stand here",
        "",
        "save the file as UTF-8 in your editor",
    ),
    "E105": Wording(
        "an empty file",
        "this file is empty",
        "",
        "write a definition into it, or delete it",
    ),
    "E106": Wording(
        "file too large",
        "this file has {size} million bytes, and no playbook has that much to say",
        "",
        "is it another kind of file with the ending .play?",
    ),
    "E107": Wording("file cannot be read", "this file cannot be read: {why}", "", ""),
    "E110": Wording(
        "tab in the margin",
        "this line is indented with something other than spaces; lines like it in this file: "
        "{count}",
        "a tab, or a blank that only looks like a space",
        "indent with spaces, four to a line, and set the editor to put spaces for the tab key",
    ),
    "E111": Wording(
        "line too long",
        "this line has {length} characters; a line may have {most}",
        "not read",
        "part it into several lines: a list may stand one item a line, each with its own label",
    ),
    "E120": Wording(
        "character without a use",
        "the notation has no use for the character `{char}`",
        "",
        'leave it out; in quotes any character may stand, as in say "Go!"; a comment opens with //',
    ),
    "E121": Wording(
        "colon",
        "the notation writes no `:`",
        "",
        "a space parts a word from what follows it: feet quick, 3, reset",
    ),
    "E122": Wording(
        "semicolon",
        "the notation writes no `;`",
        "",
        "write `,` between things that belong together, `then` between the pieces of a path, "
        "and a new fact on a new line",
    ),
    "E123": Wording(
        "equals sign",
        "the notation writes no `=`",
        "",
        "write the verb in its place: settle is strong #2",
    ),
    "E124": Wording(
        "decimal comma",
        "`{whole},{part}` may be one number or two",
        "a comma right between two figures",
        "write {whole}.{part} for one number, or `{whole}, {part}` with a space for two",
    ),
    "E125": Wording(
        "dash",
        "the dash `{char}` stands where no word or range goes on",
        "",
        "write a range with a plain hyphen and no spaces, 10-12; an offset takes no minus sign: "
        "2 inside numbers",
    ),
    "E126": Wording(
        "quote not closed",
        "this quote is opened and not closed on its line",
        "from here on",
        'close it on the same line: say "Over sets the depth."',
    ),
    "E127": Wording(
        "single quote",
        "a text or name in quotes does not open with `{char}`",
        "",
        'write double quotes: say "Over sets the depth."',
    ),
}
