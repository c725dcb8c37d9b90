"""Themes and their files: codes 900 to 999."""

from __future__ import annotations

from stemline.diagnostics.wording import Wording

WORDING: dict[str, Wording] = {
    "E901": Wording(
        "unknown theme",
        "there is no theme `{found}`",
        "not known",
        "a theme is a folder with a theme.toml, in the playbook's folder or beside it, or comes "
        "with stemline: {choices}",
    ),
    "E902": Wording(
        "not TOML",
        "this theme cannot be read: {why}",
        "here",
        "a line is `key = value`; words stand in quotes, lists in [ ]",
    ),
    "E903": Wording(
        "unknown word of a theme",
        "{table} knows no `{key}`",
        "not known",
        "themes/plain/theme.toml holds every word that a theme can say",
    ),
    "E904": Wording("wrong value in a theme", "`{key}` is {wanted}", "not that", ""),
    "E905": Wording(
        "themes that extend each other",
        "this theme extends `{name}`, which extends this one",
        "a circle",
        "let the lower of them extend plain",
    ),
    "E906": Wording(
        "a theme's file cannot be read",
        "the file `{file}` of the theme cannot be read: {why}",
        "not read",
        "",
    ),
    "E907": Wording(
        "a font that cannot be used",
        "`{file}` cannot letter a picture: {why}",
        "",
        "a face is a TrueType file, with the ending .ttf",
    ),
}
