"""A play against time: men on their paths, the quarterback's clock, throws and who can be there."""
