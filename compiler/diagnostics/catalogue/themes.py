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
    "E911": Wording(
        "a theme's text that is no text",
        "the file `{file}` of the theme is not UTF-8: here stands {byte}",
        "not text",
        "save it again as UTF-8 in the editor that wrote it",
    ),
    "E912": Wording(
        "a theme's picture that cannot be drawn",
        "the picture `{file}` of the theme cannot be drawn: {why}",
        "here",
        "a picture is an SVG or a PNG; save it again in the program that made it",
    ),
    "E913": Wording(
        "a template that cannot be filled in",
        "this template cannot be filled in: {why}",
        "here",
        "",
    ),
    "E914": Wording(
        "pages without what they are measured by",
        "the pages of this theme have no element with the id `{id}`",
        "",
        "keep every id of the plain theme's templates, and hide none of them with a style: the "
        "pages are filled by the heights of these parts",
    ),
    "E915": Wording(
        "a theme that asks for too much",
        "the pages of the theme `{name}` take more than {most}",
        "",
        "templates and styles that repeat themselves do that; the limits stand in the reference, "
        "under Themes",
    ),
    "E916": Wording(
        "a theme that asks for what is not its own",
        "a page of the theme may not have that: {why}",
        "asked for here",
        "pages have the book's pictures and the files of the theme's folder; links lead inside "
        "the book",
    ),
    "E917": Wording(
        "a long chain of themes",
        "below this theme lie more than {most} others",
        "extends one more",
        "let it extend plain, and say in it what the others said",
    ),
    "E918": Wording(
        "pages that cannot be set",
        "the pages of the theme `{name}` cannot be set: {why}",
        "",
        "take out of book.css and the templates what was written last, until it can",
    ),
}
