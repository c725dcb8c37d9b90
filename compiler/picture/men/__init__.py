"""Where each man stands on paper: symbols, letters of the defence, and the hole of a run."""
