"""The look team's cards: a look spread out until each letter stands free, at its size on paper."""
