"""The form of lines and blocks: codes 200 to 299."""

from __future__ import annotations

from stemline.diagnostics.wording import Wording

_LINE = "a correct line: {example}"
_HEADER = "a correct first line: {example}"

WORDING: dict[str, Wording] = {
    # Blocks and their first lines.
    "E200": Wording(
        "unknown kind of block",
        "`{word}` is no kind of block",
        "a line in column one opens a block",
        "begin a block with its kind and name, such as: concept Crossers",
    ),
    "E202": Wording(
        "block without a name",
        "this {kind} block has no name",
        "a name belongs here",
        _HEADER,
    ),
    "E203": Wording(
        "block without a line",
        "this {kind} block says nothing",
        "no line stands under it",
        "add an indented line, such as: {example}",
    ),
    "E204": Wording(
        "line outside a block",
        "this line belongs to no block",
        "nothing in column one stands above it",
        "open a block above it, such as: concept Crossers",
    ),
    "E205": Wording(
        "line not indented",
        "this line of a block stands in column one, where blocks begin",
        "",
        "put four spaces before it and before every line of its block",
    ),
    "E206": Wording(
        "uneven margin",
        "this line is indented by {found}, and the lines of its block by {wanted}",
        "",
        "give every line of a block the same margin; a line cannot go on in the next one",
    ),
    "E207": Wording(
        "mark in a first line",
        "`{word}` is a mark and cannot stand in the first line of a block",
        "",
        'one block has one name; put a name that holds `{word}` in quotes: {kind} "Now or Never"',
    ),
    "E208": Wording(
        "joined twice",
        "`{word}` stands twice in the first line of this {kind} block",
        "the second one",
        _HEADER,
    ),
    "E209": Wording(
        "nothing to join",
        "nothing follows `{word}` in the first line of this {kind} block",
        "a name is wanted here",
        _HEADER,
    ),
    "E210": Wording(
        "block without its owner",
        "this {kind} block does not say which concept it is {join}",
        "",
        _HEADER,
    ),
    "E211": Wording(
        "join of another kind",
        "`{word}` belongs to the first line of a {kind} block, not of a {here} block",
        "",
        "leave it out, or put the name in quotes if the word is part of it",
    ),
    # Lines.
    "E220": Wording(
        "unknown line",
        "no line of a {here} block reads like this: `{word}` is not one of its words",
        "neither a label nor a verb of such a block",
        _LINE,
    ),
    "E221": Wording(
        "line of another kind of block",
        "`{word}` lines belong to {kinds} blocks, and this is a {here} block",
        "",
        "move the line there; here " + _LINE,
    ),
    "E223": Wording(
        "label without a value",
        "nothing follows `{word}`",
        "its value belongs here",
        _LINE,
    ),
    "E224": Wording(
        "verb without a value",
        "nothing follows `{word}`",
        "the rest of the sentence belongs here",
        _LINE,
    ),
    "E225": Wording(
        "verb without a subject",
        "nobody stands before `{word}`",
        "a name belongs before this word",
        _LINE,
    ),
    "E226": Wording(
        "wrong mark before a verb",
        "`{word}` cannot part the names before a verb",
        "",
        "part them with `,` as in: over, under runs return",
    ),
    "E227": Wording(
        "unknown line of an opener",
        "no line under `{opener}` begins with `{found}`",
        "not understood",
        "a correct line: {example}",
    ),
    "E228": Wording(
        "a call out of its place",
        "a call belongs under `openers`, a `situation`, a `scout` or a `period`",
        "stands by itself",
        "put four more spaces before it",
    ),
    # Marks and guards.
    "E230": Wording(
        "nothing behind a connector",
        "nothing follows `{word}`",
        "this word wants something behind it",
        _LINE,
    ),
    "E231": Wording(
        "nothing before a mark",
        "nothing stands before `{word}`",
        "this mark parts two things",
        _LINE,
    ),
    "E232": Wording(
        "nothing behind a mark",
        "nothing follows `{word}`",
        "this mark parts two things",
        _LINE,
    ),
    "E233": Wording(
        "empty guard",
        "nothing follows `when`",
        "a shape, a look or a place of the ball belongs here",
        "a correct line: settle is strong #3 when 4x1",
    ),
    "E234": Wording(
        "two guards",
        "this line has two `when`",
        "the second one",
        "one `when` at the end takes all: clear runs out 10 when 3x2, off",
    ),
    "E235": Wording(
        "guard before the verb",
        "`when` stands before the verb of this line",
        "",
        "a guard is the end of a line: settle is strong #3 when 4x1",
    ),
    "E236": Wording(
        "wrong mark in a guard",
        "`{word}` cannot stand behind `when`",
        "",
        "a guard knows `,` for and, and `or`: clear runs out 10 when 3x2, off or zone",
    ),
}
