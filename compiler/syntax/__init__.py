"""Text → `Tree`: blocks, lines, words by their place. No football."""
