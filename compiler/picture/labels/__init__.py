"""Words and tiles: wanted, placed, chosen together."""
