"""A play, a look, and what changed, in words."""
