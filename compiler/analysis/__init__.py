"""Plays of a playbook held against its looks."""
