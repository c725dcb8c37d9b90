"""What the rule code says of a formation, of a motion and of a call: one rule a file.

A rule whose figure is published, or is the league's own, gives an error when it is broken; one that
rests on a report or on memory gives a warning with the same words and the doubt behind them.
"""
