"""Every code with its wording, put together from one file a group."""

from stemline.diagnostics.catalogue import (
    bounds,
    calls,
    files,
    football,
    forms,
    legality,
    looks,
    names,
    output,
    protections,
    runs,
    sentences,
    themes,
    timing,
    weeks,
)
from stemline.diagnostics.wording import Wording

CATALOGUE: dict[str, Wording] = {
    **files.WORDING,
    **bounds.WORDING,
    **forms.WORDING,
    **names.WORDING,
    **football.WORDING,
    **legality.WORDING,
    **looks.WORDING,
    **calls.WORDING,
    **runs.WORDING,
    **protections.WORDING,
    **timing.WORDING,
    **sentences.WORDING,
    **themes.WORDING,
    **output.WORDING,
    **weeks.WORDING,
}
