"""What a theme may take: every figure in one place. None comes from a standard; each says why.

A theme may be another coach's work, so it is held to what a large book needs and no more.
"""

from __future__ import annotations

MEGABYTE = 1_000_000

LARGEST = {
    ".toml": 128_000,
    ".jinja": MEGABYTE,
    ".css": MEGABYTE,
    ".svg": 2 * MEGABYTE,
    ".png": 8 * MEGABYTE,
    ".ttf": 32 * MEGABYTE,
}
"""Bytes of one file by its ending. All text of the plain theme is 45 kilobytes, its table 9; a
typeface with Chinese letters is some 20 megabytes, a photograph of a whole page some 5."""

ALL_FILES = 96 * MEGABYTE
"""Bytes of all files of one theme's folder: four large faces are the most that a picture shows."""
MOST_FILES = 400
"""Files that print in one theme's folder; the plain theme has 14."""
MOST_ENTRIES = 5_000
"""Names looked at in one theme's folder, whatever they are: with more it is somebody's desk."""
DEEPEST = 4
"""Folders inside each other, the theme's own counted."""
LONGEST_CHAIN = 12
"""Themes that rest on each other: an association's, a club's, a team's, a week's, and room."""
MOST_FACES = 24
"""Faces under ``[font]``: the plain theme has four."""
LONGEST = {"picture": 2_000.0, "symbol": 20.0, "weight": 36.0, "size": 144.0, "dash": 200.0}
"""Points of a length by what it is. A poster is 2,000 wide; the plain theme's largest symbol is 7,
its heaviest line 3, its largest type 10. Far beyond that the search for room of labels and lanes
has nothing left to find and takes minutes."""
LEAST_YARD = (6.0, 3.0, 2.5)
"""Points that a yard may be at most, on a large, quarter and small picture: about half of the plain
theme's."""
LEAST_PICTURE = {"width": (360.0, 180.0, 120.0), "height": (180.0, 72.0, 72.0)}
"""Points of a large, quarter and small picture inside its margins: some two thirds of the plain
theme's. Men and words on less stand on each other, and the search for room takes minutes."""
MOST_DASHES = 12
"""Points on and off of one dash: any railway or chain line can be said in six."""
MOST_MISTAKES = 50
"""Mistakes of one theme file that are looked for: more than anybody mends before the next try."""
LONGEST_LINE = 1_000
"""Letters of a line of ``theme.toml``: a reader of TOML takes the square of a key's parts. The
longest line of the plain theme has some 100."""
LONGEST_WORD = 60
"""Letters of a wrong word that the nearest right one is sought for: no word of a theme has 20."""

MOST_ELEMENTS = 50_000
"""Elements of an SVG. A cover with every yard line of a field and its numbers has some 300."""
DEEPEST_ELEMENT = 60
"""SVG elements inside each other; drawing programs nest some ten groups."""
MOST_DOTS = 40 * MEGABYTE
"""Dots of a PNG: a letter page at 600 to the inch has 34 million."""

SECONDS = 120
"""Seconds of one processor for all pages of a theme that is not a bundled one, to begin with."""
SECONDS_A_PICTURE = 0.5
"""And for each picture of the book. A book of 212 calls and all its views takes 35 seconds."""
GRACE = 15
"""Seconds more until the process is ended without asking: a library may not listen."""
SLACK = 4
"""Seconds by the clock on the wall for each of a processor: the machine may have other work."""
TEMPLATE_SECONDS = 30
"""Seconds of one processor to fill in the templates once; the plain ones take one or two."""
MEMORY = 2_000 * MEGABYTE
"""Bytes of address space for these pages, to begin with."""
MEMORY_A_PICTURE = 4 * MEGABYTE
"""And for each picture of the book. A book of 212 calls takes 910 megabytes in all."""
LARGEST_PAGES = 64 * MEGABYTE
"""Letters of HTML that the templates may write: the plain ones write some 3 million."""
LARGEST_PDF = 500 * MEGABYTE
"""Bytes of the PDF; the bundled books are below ten megabytes."""
