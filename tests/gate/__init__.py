"""The measured quality of every diagram: emitted SVG read back and judged for overlaps.

    python -m tests.gate                     both playbooks, the whole table
    python -m tests.gate --sheet OUT.png     and a contact sheet of the worst ones
    python -m tests.gate --copied            what is left of them, copied black and white at 64 %

Nothing here knows how a diagram was drawn: only its bytes are read.
"""
