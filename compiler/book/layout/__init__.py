"""Where it stands: page breaks, columns, room."""
