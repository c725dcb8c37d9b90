"""A `Play` → diagnostics, one question a file."""
