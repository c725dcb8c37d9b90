"""Mistakes as data, and their wording."""
