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
    "E108": Wording(
        "not a file of the playbook",
        "this is {what}, so it is not read",
        "",
        "put a file in its place, rename it, or move it out of the playbook",
    ),
    "E109": Wording(
        "folder cannot be read",
        "this folder cannot be read: {why}",
        "",
        "let yourself read it, or move it out of the playbook",
    ),
    "W101": Wording(
        "file that is not read",
        "this file is not read: only names that end in `.play` are, in small letters",
        "",
        "rename it, or move it out of the playbook",
    ),
    "W102": Wording(
        "linked folder",
        "this folder is a link, and what it leads to is not read",
        "",
        "put the files themselves into the playbook",
    ),
    "W103": Wording(
        "no calls",
        "this playbook makes no call, so its book would have no picture",
        "",
        "write a concept, a formation, and a `dress` block that puts the one into the other",
    ),
    "E110": Wording(
        "tab in the margin",
        "this line is indented with {what}, not with spaces; lines like it in this file: {count}",
        "it only looks like spaces",
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
    "E130": Wording(
        "soft return",
        "a {name} ({point}) stands in this line",
        "a word processor writes it, and a plain text has none",
        "delete it; press Enter where a new line belongs, the space bar where words are parted",
    ),
    "E131": Wording(
        "control character",
        "the control character {point} stands in this line",
        "no screen shows it",
        "delete it; if it is in your way, write the line anew in a plain editor",
    ),
    "E132": Wording(
        "invisible character",
        "a {name} ({point}) stands in this line",
        "nobody sees it, and with it two names that look alike are two",
        "delete it and the letters beside it, and write them again",
    ),
    "E133": Wording(
        "unfinished merge",
        "version control could not merge this file; places left to settle: {count}",
        "from here to the line of `>` both versions stand",
        "keep the lines that are right, and delete the others and the lines of `<`, `=` and `>`",
    ),
}
