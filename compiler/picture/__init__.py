"""A `Play` → a `Scene`.

The rooms, lowest first: scene, frame, men, ways, spacing, lines, labels, overlay, legend.
"""
