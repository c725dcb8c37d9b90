"""The display list and the paper it lies on: items, words measured, ink."""
