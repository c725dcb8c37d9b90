"""Where output meets the disk: what a file is called, and how a whole book takes its place.

Nothing here knows what it writes. A mistake of the outside world is a `NotWritten`.
"""
