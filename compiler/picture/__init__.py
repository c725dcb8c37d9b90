"""A `Play` → a `Scene`.

The rooms, lowest first: scene, paper, ways, frame, men, lines, labels, overlay, legend.
"""
