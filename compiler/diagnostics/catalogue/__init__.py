"""The codes of the stages, one file a group; those of a check stand in its own file."""
