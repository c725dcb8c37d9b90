"""Colours as people see them: contrast, and what colour-blind eyes and grey printers make of them.

A colour is red, green and blue from 0 to 1 as sRGB writes them.
"""

from __future__ import annotations

import math
from enum import Enum

Rgb = tuple[float, float, float]
Matrix = tuple[Rgb, Rgb, Rgb]

# WCAG 2.2 (W3C Recommendation), "relative luminance"; the same weights as IEC 61966-2-1's.
_LUMINANCE: Rgb = (0.2126, 0.7152, 0.0722)

# IEC 61966-2-1, linear sRGB to CIE XYZ for the white D65.
_TO_XYZ: Matrix = (
    (0.4124, 0.3576, 0.1805),
    (0.2126, 0.7152, 0.0722),
    (0.0193, 0.1192, 0.9505),
)
_WHITE: Rgb = (0.9505, 1.0, 1.089)


class Vision(Enum):
    """Ways of seeing; the value works on linear red, green and blue.

    Protanopia, deuteranopia and tritanopia: G. M. Machado, M. M. Oliveira and L. A. F. Fernandes,
    "A Physiologically-based Model for Simulation of Color Vision Deficiency", IEEE Transactions on
    Visualization and Computer Graphics 15(6), 2009, the matrices of severity 1.0. Grey is a
    monochrome printer: each channel is the luminance.
    """

    PLAIN = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
    PROTANOPIA = (
        (0.152286, 1.052583, -0.204868),
        (0.114503, 0.786281, 0.099216),
        (-0.003882, -0.048116, 1.051998),
    )
    DEUTERANOPIA = (
        (0.367322, 0.860646, -0.227968),
        (0.280085, 0.672501, 0.047413),
        (-0.011820, 0.042940, 0.968881),
    )
    TRITANOPIA = (
        (1.255528, -0.076749, -0.178779),
        (-0.078411, 0.930809, 0.147602),
        (0.004733, 0.691367, 0.303900),
    )
    GREY = (_LUMINANCE, _LUMINANCE, _LUMINANCE)


def rgb(colour: str) -> Rgb:
    """A colour written as #rrggbb."""
    if len(colour) != 7 or not colour.startswith("#"):
        raise ValueError(f"not a colour: {colour}")
    red, green, blue = (int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5))
    return red, green, blue


def contrast(one: Rgb, other: Rgb) -> float:
    """The contrast ratio of WCAG 2.2, from 1 to 21."""
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def luminance(colour: Rgb) -> float:
    """The relative luminance of WCAG 2.2, from 0 (black) to 1 (white)."""
    return _dot(_LUMINANCE, _linear(colour))


def seen(colour: Rgb, vision: Vision) -> Rgb:
    """The colour as ``vision`` sees it; what falls out of the gamut is cut off."""
    line = _linear(colour)
    red, green, blue = (_curved(min(1.0, max(0.0, _dot(row, line)))) for row in vision.value)
    return red, green, blue


def difference(one: Rgb, other: Rgb) -> float:
    """CIE 1976 colour difference: the distance in CIELAB (ISO/CIE 11664-4), black to white 100."""
    return math.dist(_lab(one), _lab(other))


def _linear(colour: Rgb) -> Rgb:
    red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in colour)
    return red, green, blue


def _curved(c: float) -> float:
    return 12.92 * c if c <= 0.0031308 else 1.055 * c ** (1 / 2.4) - 0.055


def _lab(colour: Rgb) -> Rgb:
    line = _linear(colour)
    x, y, z = (_root(_dot(row, line) / white) for row, white in zip(_TO_XYZ, _WHITE, strict=True))
    return 116 * y - 16, 500 * (x - y), 200 * (y - z)


def _root(t: float) -> float:
    return math.cbrt(t) if t > (6 / 29) ** 3 else t / (3 * (6 / 29) ** 2) + 4 / 29


def _dot(a: Rgb, b: Rgb) -> float:
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
