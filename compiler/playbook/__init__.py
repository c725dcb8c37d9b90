"""What a coach's text says, as values: names known, conditions still open. No text, no play."""
