"""Lines as they are drawn: routes, blocks, motions, the ball, what crosses what."""
