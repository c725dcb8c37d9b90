"""Every code with its wording, put together from one file a group."""

from stemline.diagnostics.catalogue import calls, files, football, forms, names
from stemline.diagnostics.wording import Wording

CATALOGUE: dict[str, Wording] = {
    **files.WORDING,
    **forms.WORDING,
    **names.WORDING,
    **football.WORDING,
    **calls.WORDING,
}
