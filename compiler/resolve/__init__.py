"""A call of a `Playbook` → a `Play`."""
