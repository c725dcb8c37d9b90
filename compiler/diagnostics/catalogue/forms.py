"""The form of lines and blocks: codes 200 to 299."""

from __future__ import annotations

from stemline.diagnostics.wording import Wording

WORDING: dict[str, Wording] = {}
