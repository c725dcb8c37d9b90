"""Builds that are killed and interrupted at random moments, and what they leave behind.

`python -m tests.kills playbooks/saltmarsh-herons` kills 200 builds of a book and interrupts 100.
"""
