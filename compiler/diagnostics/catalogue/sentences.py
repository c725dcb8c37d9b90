"""The coach's own sentences, codes 890 to 899: warnings, since they go by words alone."""

from __future__ import annotations

from stemline.diagnostics.diagnostic import Mistake


class W890(Mistake):
    title = "a head in a block or a tackle"
    message = "`{words}` puts a head, helmet, face or neck into a block or a tackle"
    label = "who reads it may block so"
    help = "{care}"

    care: str
    words: str
