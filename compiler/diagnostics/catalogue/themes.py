"""Themes and their files: codes 900 to 999."""

from __future__ import annotations

from stemline.diagnostics.diagnostic import Mistake


class E901(Mistake):
    title = "unknown theme"
    message = "there is no theme `{found}`"
    label = "not known"
    help = (
        "a theme is a folder with a theme.toml, in the playbook's folder or beside it, or comes "
        "with stemline: {choices}"
    )

    choices: str
    found: str


class E902(Mistake):
    title = "not TOML"
    message = "this theme cannot be read: {why}"
    label = "here"
    help = "a line is `key = value`; words stand in quotes, lists in [ ]"

    why: str


class E903(Mistake):
    title = "unknown word of a theme"
    message = "{table} knows no `{key}`"
    label = "not known"
    help = "themes/plain/theme.toml holds every word that a theme can say"

    key: str
    table: str


class E904(Mistake):
    title = "wrong value in a theme"
    message = "`{key}` is {wanted}"
    label = "not that"

    key: str
    wanted: str


class E905(Mistake):
    title = "themes that extend each other"
    message = "this theme extends `{name}`, which extends this one"
    label = "a circle"
    help = "let the lower of them extend plain"

    name: str


class E906(Mistake):
    title = "a theme's file cannot be read"
    message = "the file `{file}` of the theme cannot be read: {why}"
    label = "not read"

    file: str
    why: str


class E907(Mistake):
    title = "a font that cannot be used"
    message = "`{file}` cannot letter a picture: {why}"
    help = "a face is a TrueType file, with the ending .ttf"

    file: str
    why: str


class E911(Mistake):
    title = "a theme's text that is no text"
    message = "the file `{file}` of the theme is not UTF-8: here stands {byte}"
    label = "not text"
    help = "save it again as UTF-8 in the editor that wrote it"

    byte: str
    file: str


class E912(Mistake):
    title = "a theme's picture that cannot be drawn"
    message = "the picture `{file}` of the theme cannot be drawn: {why}"
    label = "here"
    help = "a picture is an SVG or a PNG; save it again in the program that made it"

    file: str
    why: str


class E913(Mistake):
    title = "a template that cannot be filled in"
    message = "this template cannot be filled in: {why}"
    label = "here"

    why: str


class E914(Mistake):
    title = "pages without what they are measured by"
    message = "the pages of this theme have no element with the id `{id}`"
    help = (
        "keep every id of the plain theme's templates, and hide none of them with a style: the "
        "pages are filled by the heights of these parts"
    )

    id: str


class E915(Mistake):
    title = "a theme that asks for too much"
    message = "the pages of the theme `{name}` take more than {most}"
    help = (
        "templates and styles that repeat themselves do that; the limits stand in "
        "grammar/figures.md, under Themes"
    )

    most: str
    name: str


class E916(Mistake):
    title = "a theme that asks for what is not its own"
    message = "a page of the theme may not have that: {why}"
    label = "asked for here"
    help = (
        "pages have the book's pictures and the files of the theme's folder; links lead inside the "
        "book"
    )

    why: str


class E917(Mistake):
    title = "a long chain of themes"
    message = "below this theme lie more than {most} others"
    label = "extends one more"
    help = "let it extend plain, and say in it what the others said"

    most: int


class E918(Mistake):
    title = "pages that cannot be set"
    message = "the pages of the theme `{name}` cannot be set: {why}"
    help = "take out of book.css and the templates what was written last, until it can"

    name: str
    why: str
