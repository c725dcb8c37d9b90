"""More than a playbook says: codes 134 and 140 to 149."""

from __future__ import annotations

from stemline.diagnostics.diagnostic import Mistake


class E134(Mistake):
    title = "figure out of bounds"
    message = "the figure {figure} is none that a line of a playbook can mean"
    label = "0, or {least} to {most}"
    help = "the longest field with its end zones has {field} yards: is it a slip of the finger?"

    field: int
    figure: str
    least: float
    most: int


class E140(Mistake):
    title = "too many mistakes in a file"
    message = (
        "this file has more than {most} mistakes; lines that were not read from here on: {rest}"
    )
    help = "is it a playbook's text? mend what is said first and check again"

    most: int
    rest: int


class E141(Mistake):
    title = "too much text"
    message = "a playbook has at most {most} characters outside comments, and this one has {found}"
    label = "one block too many"
    help = "part it into several playbooks, or leave out the files that are not this season's"

    found: str
    most: str


class E142(Mistake):
    title = "too many calls"
    message = "the dress-ups up to this one make {found} calls, and a playbook has at most {most}"
    label = "one dress-up too many"
    help = "dress each concept up for what you call: fewer formations, tags or motions a line"

    found: str
    most: str


class E143(Mistake):
    title = "too long a chain of blocks"
    message = "this {kind} extends more than {most} others, one through the other"
    label = "one too many"
    help = "let it extend the first of them, and say here what is different"

    kind: str
    most: int


class E144(Mistake):
    title = "too many of one kind"
    message = "a playbook has at most {most} {kind} blocks, and this one has {found}"
    label = "one too many"
    help = "take out what is not called this season"

    found: int
    kind: str
    most: int


class E145(Mistake):
    title = "too many lines in a block"
    message = "a block has at most {most} lines, and this {kind} has {found}, with those it extends"
    help = "part it into several blocks"

    found: int
    kind: str
    most: int
