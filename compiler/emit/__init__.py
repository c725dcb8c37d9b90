"""Scenes and page models → SVG, HTML and PDF: translated, nothing decided."""
