"""A week: from its text and the calls of the book to one plan that every paper is made from."""
