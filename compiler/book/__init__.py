"""Plays → pages."""
