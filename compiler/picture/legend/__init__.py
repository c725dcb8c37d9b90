"""Small pictures that explain pictures."""
