"""What lies over or under a play: claims, and the play as it was."""
