"""A coach's words by man, look and spot, codes 770 to 779, and his own sentences, 890 to 899:
warnings, since they go by words alone."""

from __future__ import annotations

from stemline.diagnostics.diagnostic import Mistake
from stemline.diagnostics.misspelt import Misspelt


class E771(Misspelt):
    title = "a position that nobody has"
    message = "nobody of this playbook is a {found}"
    label = "no man of the personnel"
    help = "one of: {choices}; a man is spoken to by his role or where he stands too"


class E772(Mistake):
    title = "a position has no job"
    message = "a position is spoken to; what a man does is said by where he stands"
    label = "`{who}` only `says`"
    help = "write {line}"

    who: str
    line: str


class W890(Mistake):
    title = "a head in a block or a tackle"
    message = "`{words}` puts a head, helmet, face or neck into a block or a tackle"
    label = "who reads it may block so"
    help = "{care}"

    care: str
    words: str
