"""Values that every step draws with: the board, a man's symbol, a defender's letter."""
