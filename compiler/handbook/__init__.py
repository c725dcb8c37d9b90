"""The pages for coaches, with the picture of what each sample of the notation draws beside it."""
