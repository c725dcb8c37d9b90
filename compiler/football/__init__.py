"""The trade and nothing else: no text, no page, no picture."""
