"""Trees → a `Playbook`: every value checked against its closed list, all mistakes collected."""
