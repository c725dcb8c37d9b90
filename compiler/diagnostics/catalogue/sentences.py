"""The coach's own sentences, codes 890 to 899: warnings, since they go by words alone."""

from __future__ import annotations

from stemline.diagnostics.wording import Wording

WORDING: dict[str, Wording] = {
    "W890": Wording(
        "a head in a block or a tackle",
        "`{words}` puts a head, helmet, face or neck into a block or a tackle",
        "who reads it may block so",
        "{care}",
    ),
}
