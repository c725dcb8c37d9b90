"""Rule codes: every figure with its source and how sure it is; what is said about health."""
