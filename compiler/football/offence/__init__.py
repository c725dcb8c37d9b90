"""The offence: landmarks, counting, routes and their strokes, the quarterback's feet."""
