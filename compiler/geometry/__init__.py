"""Plane geometry of paths and lines. Yards; it knows no football and no paper."""
