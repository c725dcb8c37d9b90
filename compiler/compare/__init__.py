"""Two playbooks, or one at two times, and what is different between them in football."""
