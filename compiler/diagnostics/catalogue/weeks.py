"""Weeks: codes 970 to 999."""

from __future__ import annotations

from stemline.diagnostics.wording import Wording

WORDING: dict[str, Wording] = {
    # The text.
    "E970": Wording(
        "a week without its number",
        "a week has a number and an opponent, and `{found}` is not both",
        "",
        "a correct first line: week 8 Larch Bay",
    ),
    "E971": Wording(
        "unknown situation",
        "`{found}` is no situation",
        "not understood",
        "say down and distance (`2nd and 7 or more`), a place (`own 1 to 10`, `red zone`), clock, "
        "score or wind; put a name of your own in quotes",
    ),
    "E973": Wording(
        "said twice in one line",
        "`{found}` says {what} again",
        "the second one",
        "say it once",
    ),
    "E974": Wording(
        "which count",
        "`{found}` is no count of {what}",
        "not understood",
        "say it as in: 7, 4 to 6, 7 or more, 8 or less",
    ),
    "W974": Wording(
        "nothing under an opener",
        "nothing stands under this `{opener}` line",
        "it says nothing",
        "put its lines under it, four spaces further in, or delete it",
    ),
    "E976": Wording(
        "too many rows",
        "this week has more than {most} rows",
        "from here on nothing is read",
        "part it into weeks",
    ),
    "E977": Wording(
        "no such date or hour",
        "`{found}` is no date or hour",
        "not understood",
        "a date as in 2026-10-17, an hour as in 1530",
    ),
    "E978": Wording(
        "a long short name",
        "`{found}` has more than {most} letters",
        "too long",
        "a short name is there to fit on a sleeve",
    ),
    "E979": Wording(
        "which number",
        "`{found}` is no number from 1 to {most}",
        "not understood",
        "give the number that the call keeps every week",
    ),
    "E980": Wording(
        "unknown word of a week",
        "`{found}` is none of the words of this line",
        "not understood",
        "they are: {choices}",
    ),
    # Situations and rows.
    "E981": Wording(
        "a situation that cannot be",
        "`{situation}` cannot be: {why}",
        "",
        "say another situation, or put a name of your own in quotes",
    ),
    "W981": Wording(
        "a situation that the code may not have",
        "`{situation}` may not be: {why}",
        "",
        "ask your league, or say another situation",
    ),
    "E982": Wording(
        "a note without a comma",
        "a note stands behind a comma",
        "",
        'write: {call}, "{note}"',
    ),
    "E983": Wording(
        "unknown word of a row",
        "`{found}` is no word of a row",
        "not understood",
        "behind its call a row has, by commas: a ball spot, a tempo (fast, normal, slow, look, "
        "freeze), `3 reps`, `first`, `after` a call, a note in quotes",
    ),
    "W983": Wording(
        "kill not read yet",
        "`{found}` is not read yet; the row is printed without it",
        "",
        "say it in a note until then",
    ),
    "E984": Wording(
        "which size of a card",
        "`{found}` is no size of a card from 1 to 8 inches",
        "not understood",
        "as in: size 4.75 x 2.75 inches, size adult, size youth",
    ),
    "E985": Wording(
        "a period without its minutes",
        "{name} does not say how long it is",
        "",
        "as in: period {name}, 12 minutes, thud (at most {most} minutes)",
    ),
    # Weeks and what they are made of.
    "E986": Wording(
        "unknown week",
        "there is no week `{found}`",
        "not known",
        "give its number, or its number and its opponent",
    ),
    "E987": Wording(
        "a week from a later one",
        "week {number} starts from week {found}, which is not before it",
        "",
        "a week starts from an earlier one",
    ),
    "E988": Wording(
        "two weeks of one number",
        "two weeks have the number {number}",
        "the second one",
        "number them in the order of the games",
    ),
    "E989": Wording(
        "a call that cannot be run from there",
        "{call} cannot be run from the {spot}: {why}",
        "",
        "plan it from another spot, or call it from another formation",
    ),
    "E990": Wording(
        "a row from another spot than its head",
        "this row is from the {found}, and its situation from the {spot}",
        "",
        "take the spot out of one of them",
    ),
    "W990": Wording(
        "a pressure without an answer",
        "no answer to {look}: {calls}; {why}",
        "",
        "give a hot throw, keep one more in, or do not call it against {look}; by the clock, whose "
        "figures are for planning",
    ),
    "E991": Wording(
        "a call twice in one list",
        "{call} stands twice in {situation}",
        "the second one",
        "delete one of them",
    ),
    "W991": Wording(
        "more contact than the limit",
        "{who} has {found} minutes of thud and live {when}, and the limit is {limit} ({source})",
        "",
        "make a period shorter or its contact less; your league's rule and your medical staff "
        "decide",
    ),
    "E992": Wording(
        "nothing like this in the plan",
        "{what} is not in {where}",
        "not there",
        "look at what the week starts from",
    ),
    "W992": Wording(
        "situations left empty",
        "no call is kept for {situations}",
        "",
        "every caller meets them (common practice): plan a call, or know that you have none",
    ),
    "E993": Wording(
        "a situation that the week has not",
        "this week has no calls for `{situation}`",
        "not planned",
        "plan it, or leave it out here; it has {choices}",
    ),
    "W993": Wording(
        "practised and not on the sheet",
        "{call} is practised, and stands on no list of the week: it has no number",
        "",
        "put it into a situation, or leave it out of practice",
    ),
    "E994": Wording(
        "a short name for two things",
        "`{short}` would be short for {first} and for {second}",
        "two things",
        "shorten one of them otherwise",
    ),
    "W994": Wording(
        "full contact on two days running",
        "thud or live on {first} and on {second}",
        "",
        "a day between them is usual; your league's rule and your medical staff decide",
    ),
    "E995": Wording(
        "numbers that clash",
        "{first} and {second} are kept as {numbers}: {why}",
        "",
        "keep another number for one of them",
    ),
    # Papers.
    "E996": Wording(
        "a wristband too small to read",
        "{band} holds {calls} calls, and at {points} points its card has room for {room}",
        "",
        "take a larger card, more windows, or fewer calls",
    ),
    "W996": Wording(
        "small type on a wristband",
        "{band} is set in {points} points, and under {least} nobody reads it in a game",
        "",
        "take a larger card, more windows, or fewer calls",
    ),
    "E997": Wording(
        "a call sheet that does not fit",
        "at {points} points, the least that is read at arm's length, {over} rows of {rows} do not "
        "fit on {paper}: from {where} on",
        "",
        "take legal paper or two sides, or call fewer plays",
    ),
    "E998": Wording(
        "nobody of that letter",
        "nobody of this playbook is called `{man}`",
        "not known",
        "the letters are {choices}",
    ),
}
