"""The form of lines and blocks: codes 200 to 299."""

from __future__ import annotations

from stemline.diagnostics.diagnostic import Mistake


class UnlikeItsLine(Mistake):
    """A line whose shape the parser refused, at the word where it did."""

    word: str
    kind: str
    example: str


class E200(Mistake):
    title = "unknown kind of block"
    message = "`{word}` is no kind of block"
    label = "a line in column one opens a block"
    help = "begin a block with its kind and name, such as: concept Crossers"

    word: str


class E202(UnlikeItsLine):
    title = "block without a name"
    message = "this {kind} block has no name"
    label = "a name belongs here"
    help = "a correct first line: {example}"


class E203(Mistake):
    title = "block without a line"
    message = "this {kind} block says nothing"
    label = "no line stands under it"
    help = "add an indented line, such as: {example}"

    example: str
    kind: str


class E204(Mistake):
    title = "line outside a block"
    message = "this line belongs to no block"
    label = "nothing in column one stands above it"
    help = "open a block above it, such as: concept Crossers"


class E205(Mistake):
    title = "line not indented"
    message = "this line of a block stands in column one, where blocks begin"
    help = "put four spaces before it and before every line of its block"


class E206(Mistake):
    title = "uneven margin"
    message = "this line is indented by {found}, and the lines of its block by {wanted}"
    help = "give every line of a block the same margin; a line cannot go on in the next one"

    found: int
    wanted: int


class E207(UnlikeItsLine):
    title = "mark in a first line"
    message = "`{word}` is a mark and cannot stand in the first line of a block"
    help = 'one block has one name; put a name that holds `{word}` in quotes: {kind} "Now or Never"'


class E208(UnlikeItsLine):
    title = "joined twice"
    message = "`{word}` stands twice in the first line of this {kind} block"
    label = "the second one"
    help = "a correct first line: {example}"


class E209(UnlikeItsLine):
    title = "nothing to join"
    message = "nothing follows `{word}` in the first line of this {kind} block"
    label = "a name is wanted here"
    help = "a correct first line: {example}"


class E210(Mistake):
    title = "block without its owner"
    message = "this {kind} block does not say which concept it is {join}"
    help = "a correct first line: {example}"

    example: str
    join: str
    kind: str


class E211(Mistake):
    title = "join of another kind"
    message = "`{word}` belongs to the first line of a {kind} block, not of a {here} block"
    help = "leave it out, or put the name in quotes if the word is part of it"

    here: str
    kind: str
    word: str


class E220(Mistake):
    title = "unknown line"
    message = "no line of a {here} block reads like this: `{word}` is not one of its words"
    label = "neither a label nor a verb of such a block"
    help = "a correct line: {example}"

    example: str
    here: str
    word: str


class E221(Mistake):
    title = "line of another kind of block"
    message = "`{word}` lines belong to {kinds} blocks, and this is a {here} block"
    help = "move the line there; here a correct line: {example}"

    example: str
    here: str
    kinds: str
    word: str


class E223(UnlikeItsLine):
    title = "label without a value"
    message = "nothing follows `{word}`"
    label = "its value belongs here"
    help = "a correct line: {example}"


class E224(UnlikeItsLine):
    title = "verb without a value"
    message = "nothing follows `{word}`"
    label = "the rest of the sentence belongs here"
    help = "a correct line: {example}"


class E225(Mistake):
    title = "verb without a subject"
    message = "nobody stands before `{word}`"
    label = "a name belongs before this word"
    help = "a correct line: {example}"

    example: str
    word: str


class E226(UnlikeItsLine):
    title = "wrong mark before a verb"
    message = "`{word}` cannot part the names before a verb"
    help = "part them with `,` as in: over, under runs return"


class E227(Mistake):
    title = "unknown line of an opener"
    message = "no line under `{opener}` begins with `{found}`"
    label = "not understood"
    help = "a correct line: {example}"

    opener: str
    found: str
    example: str


class E228(Mistake):
    title = "a call out of its place"
    message = "a call belongs under `openers`, a `situation`, a `scout` or a `period`"
    label = "stands by itself"
    help = "put four more spaces before it"


class E230(UnlikeItsLine):
    title = "nothing behind a connector"
    message = "nothing follows `{word}`"
    label = "this word wants something behind it"
    help = "a correct line: {example}"


class E231(UnlikeItsLine):
    title = "nothing before a mark"
    message = "nothing stands before `{word}`"
    label = "this mark parts two things"
    help = "a correct line: {example}"


class E232(UnlikeItsLine):
    title = "nothing behind a mark"
    message = "nothing follows `{word}`"
    label = "this mark parts two things"
    help = "a correct line: {example}"


class E233(UnlikeItsLine):
    title = "empty guard"
    message = "nothing follows `when`"
    label = "a shape, a look or a place of the ball belongs here"
    help = "a correct line: settle is strong #3 when 4x1"


class E234(UnlikeItsLine):
    title = "two guards"
    message = "this line has two `when`"
    label = "the second one"
    help = "one `when` at the end takes all: clear runs out 10 when 3x2, off"


class E235(UnlikeItsLine):
    title = "guard before the verb"
    message = "`when` stands before the verb of this line"
    help = "a guard is the end of a line: settle is strong #3 when 4x1"


class E236(UnlikeItsLine):
    title = "wrong mark in a guard"
    message = "`{word}` cannot stand behind `when`"
    help = "a guard knows `,` for and, and `or`: clear runs out 10 when 3x2, off or zone"
