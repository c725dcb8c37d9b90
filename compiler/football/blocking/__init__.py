"""Blocking: runs against a front, protections against a rush, ways of blockers and carriers."""
