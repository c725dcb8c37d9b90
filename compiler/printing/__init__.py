"""A season on paper: its pictures drawn once, and the book, the contact sheet and the crowded
pictures told of them. Here alone the drawing, the pages and the back ends are joined."""
