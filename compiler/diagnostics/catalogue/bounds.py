"""More than a playbook says: codes 134 and 140 to 149."""

from __future__ import annotations

from stemline.diagnostics.wording import Wording

WORDING: dict[str, Wording] = {
    "E134": Wording(
        "figure out of bounds",
        "the figure {figure} is none that a line of a playbook can mean",
        "0, or {least} to {most}",
        "the longest field with its end zones has {field} yards: is it a slip of the finger?",
    ),
    "E140": Wording(
        "too many mistakes in a file",
        "this file has more than {most} mistakes; lines that were not read from here on: {rest}",
        "",
        "is it a playbook's text? mend what is said first and check again",
    ),
    "E141": Wording(
        "too much text",
        "a playbook has at most {most} characters outside comments, and this one has {found}",
        "one block too many",
        "part it into several playbooks, or leave out the files that are not this season's",
    ),
    "E142": Wording(
        "too many calls",
        "the dress-ups up to this one make {found} calls, and a playbook has at most {most}",
        "one dress-up too many",
        "dress each concept up for what you call: fewer formations, tags or motions a line",
    ),
    "E143": Wording(
        "too long a chain of blocks",
        "this {kind} extends more than {most} others, one through the other",
        "one too many",
        "let it extend the first of them, and say here what is different",
    ),
    "E144": Wording(
        "too many of one kind",
        "a playbook has at most {most} {kind} blocks, and this one has {found}",
        "one too many",
        "take out what is not called this season",
    ),
    "W104": Wording(
        "looks not tried against every formation",
        "the looks and formations of this playbook make {pairs} pairs, of which {most} were tried",
        "",
        "leave out looks and formations that are not this season's; those of the last blocks "
        "were not tried",
    ),
    "E145": Wording(
        "too many lines in a block",
        "a block has at most {most} lines, and this {kind} has {found}, with those it extends",
        "",
        "part it into several blocks",
    ),
}
