"""Where each man's symbol stands on paper."""
