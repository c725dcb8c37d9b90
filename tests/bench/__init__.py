"""How long the compiler takes: `python -m tests.bench`. No test: figures are for a person."""
