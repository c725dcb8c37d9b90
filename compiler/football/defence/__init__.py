"""The defence: techniques and gaps, zones, a front lined up against the line."""
