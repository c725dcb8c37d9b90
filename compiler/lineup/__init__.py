"""Men and defenders placed: a formation and its motion, a look against it."""
