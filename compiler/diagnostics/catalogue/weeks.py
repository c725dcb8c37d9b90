"""Weeks: codes 970 to 999."""

from __future__ import annotations

from stemline.diagnostics.diagnostic import Mistake


class E970(Mistake):
    title = "a week without its number"
    message = "a week has a number and an opponent, and `{found}` is not both"
    help = "a correct first line: week 8 Larch Bay"

    found: str


class E971(Mistake):
    title = "unknown situation"
    message = "`{found}` is no situation"
    label = "not understood"
    help = (
        "say down and distance (`2nd and 7 or more`), a place (`own 1 to 10`, `red zone`), "
        "clock, score or wind; put a name of your own in quotes"
    )

    found: str


class E973(Mistake):
    title = "said twice in one line"
    message = "`{found}` says {what} again"
    label = "the second one"
    help = "say it once"

    found: str
    what: str


class E974(Mistake):
    title = "which count"
    message = "`{found}` is no count of {what}"
    label = "not understood"
    help = "say it as in: 7, 4 to 6, 7 or more, 8 or less; a comma parts it from what follows"

    found: str
    what: str


class W974(Mistake):
    title = "nothing under an opener"
    message = "nothing stands under this `{opener}` line"
    label = "it says nothing"
    help = "put its lines under it, four spaces further in, or delete it"

    opener: str


class E975(Mistake):
    title = "a row from a spot it is not for"
    message = "{call} is never called from the {spot}"
    label = "not from the {spot}"
    help = "plan it from the {others}, or let `never` in `dress {concept}` allow it"

    call: str
    concept: str
    others: str
    spot: str


class E976(Mistake):
    title = "too many rows"
    message = "this week has more than {most} rows"
    label = "from here on nothing is read"
    help = "part it into weeks"

    most: int


class E977(Mistake):
    title = "no such date or hour"
    message = "`{found}` is no date or hour"
    label = "not understood"
    help = "a date as in 2026-10-17, an hour as in 1530"

    found: str


class E978(Mistake):
    title = "a long short name"
    message = "`{found}` has more than {most} letters"
    label = "too long"
    help = "a short name is there to fit on a sleeve"

    found: str
    most: int


class E979(Mistake):
    title = "which number"
    message = "`{found}` is no number from 1 to {most}"
    label = "not understood"
    help = "give the number that the call keeps every week"

    found: str
    most: int


class E980(Mistake):
    title = "unknown word of a week"
    message = "`{found}` is none of the words of this line"
    label = "not understood"
    help = "they are: {choices}"

    choices: str
    found: str


class E981(Mistake):
    title = "a situation that cannot be"
    message = "`{situation}` cannot be: {why}"
    help = "say another situation, or put a name of your own in quotes"

    situation: str
    why: str


class W981(Mistake):
    title = "a situation that the code may not have"
    message = "`{situation}` may not be: {why}"
    help = "ask your league, or say another situation"

    situation: str
    why: str


class E982(Mistake):
    title = "a note without a comma"
    message = "a note stands behind a comma"
    help = 'write: {call}, "{note}"'

    call: str
    note: str


class E983(Mistake):
    title = "unknown word of a row"
    message = "`{found}` is no word of a row"
    label = "not understood"
    help = (
        "behind its call a row has, by commas: a ball spot, a tempo (fast, normal, slow, "
        "look, freeze), `3 reps`, `first`, `after` a call, `kill to` a concept, a note in quotes"
    )

    found: str


class E984(Mistake):
    title = "which size of a card"
    message = "`{found}` is no size of a card from 1 to 8 inches"
    label = "not understood"
    help = "as in: size 4.75 x 2.75 inches, size adult, size youth"

    found: str


class E985(Mistake):
    title = "a period without its minutes"
    message = "{name} does not say, behind a comma, how long it is"
    help = "as in: period {name}, 12 minutes, thud (at most {most} minutes)"

    most: int
    name: str


class E986(Mistake):
    title = "unknown week"
    message = "there is no week `{found}`"
    label = "not known"
    help = "give its number, or its number and its opponent"

    found: str


class E987(Mistake):
    title = "a week from a later one"
    message = "week {number} starts from week {found}, which is not before it"
    help = "a week starts from an earlier one"

    found: int
    number: int


class E988(Mistake):
    title = "two weeks of one number"
    message = "two weeks have the number {number}"
    label = "the second one"
    help = "number them in the order of the games"

    number: int


class E989(Mistake):
    title = "a call that cannot be run from there"
    message = "{call} cannot be run from the {spot}: {why}"
    help = "plan it from another spot, or call it from another formation"

    call: str
    spot: str
    why: str


class E990(Mistake):
    title = "a row from another spot than its head"
    message = "this row is from the {found}, and its situation from the {spot}"
    help = "take the spot out of one of them"

    found: str
    spot: str


class W990(Mistake):
    title = "a pressure without an answer"
    message = "no answer to {look}: {calls}; {why}"
    help = (
        "give a hot throw, keep one more in, block or read the free man, call it `when` they show "
        "another look, or say in the row's note what to do against {look}, or in a `say` of the "
        "week with the letters of the free men; times are for planning"
    )

    calls: str
    look: str
    why: str


class E991(Mistake):
    title = "a call twice in one list"
    message = "{call} stands twice in {situation}"
    label = "the second one"
    help = "delete one of them"

    call: str
    situation: str


class W991(Mistake):
    title = "more contact than the limit"
    message = (
        "{who} has {found} minutes of thud and live {when}, and the limit is {limit} ({source})"
    )
    help = (
        "make a period shorter or its contact less; your league's rule and your medical staff "
        "decide"
    )

    found: int
    limit: int
    source: str
    when: str
    who: str


class E992(Mistake):
    title = "nothing like this in the plan"
    message = "{what} is not in {where}"
    label = "not there"
    help = (
        "`drop` and `move` take what the week starts from; a call of its own is written where it "
        "belongs"
    )

    what: str
    where: str


class W992(Mistake):
    title = "situations left empty"
    message = "no call is kept for {situations}"
    help = "every caller meets them (common practice): plan a call, or know that you have none"

    situations: str


class E993(Mistake):
    title = "a situation that the week has not"
    message = "this week has no calls for `{situation}`"
    label = "not planned"
    help = "plan it, or leave it out here; it has {choices}"

    choices: str
    situation: str


class W993(Mistake):
    title = "practised and not on the sheet"
    message = "{call} is practised, and stands on no list of the week: it has no number"
    help = "put it into a situation, or leave it out of practice"

    call: str


class E994(Mistake):
    title = "a short name for two things"
    message = "`{short}` would be short for {first} and for {second}"
    label = "two things"
    help = "shorten one of them otherwise"

    first: str
    second: str
    short: str


class W994(Mistake):
    title = "full contact on two days running"
    message = "thud or live on {first} and on {second}"
    help = "a day between them is usual; your league's rule and your medical staff decide"

    first: str
    second: str


class E995(Mistake):
    title = "numbers that clash"
    message = "{first} and {second} are kept as {numbers}: {why}"
    help = "keep another number for one of them"

    first: str
    numbers: str
    second: str
    why: str


class W995(Mistake):
    title = "last week's look"
    message = "{what} {look}, which {week} does not face"
    help = "write these lines anew, `drop` them, or add the look to `faces`"

    what: str
    look: str
    week: str


class E996(Mistake):
    title = "a wristband too small to read"
    message = "{band} holds {calls} calls, and at {points} points its card has room for {room}"
    help = "take a larger card, more windows, or fewer calls"

    band: str
    calls: int
    points: float
    room: int


class W996(Mistake):
    title = "small type on a wristband"
    message = "{band} is set in {points} points, and under {least} nobody reads it in a game"
    help = "take a larger card, more windows, or fewer calls"

    band: str
    least: float
    points: float


class E997(Mistake):
    title = "a call sheet that does not fit"
    message = (
        "at {points} points, the least that is read at arm's length, {over} rows of {rows} do "
        "not fit on {paper}: from {where} on"
    )
    help = "take legal paper or two sides, or call fewer plays"

    over: int
    paper: str
    points: float
    rows: int
    where: str


class E998(Mistake):
    title = "nobody of that letter"
    message = "nobody of this playbook is called `{man}`"
    label = "not known"
    help = "the letters are {choices}"

    choices: str
    man: str
