"""How a path begins, bends round men, keeps to its lane and ends."""
