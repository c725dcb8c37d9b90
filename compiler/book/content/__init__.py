"""What stands on each page, as values."""
