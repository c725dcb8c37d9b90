"""Which files of tests a quick run leaves out, and which take longest.

What judges whole books, asks for a whole season or a bundled week, sets pages or starts programs is
slow. One file for both lists: there is a conftest in more than one folder.
"""

from __future__ import annotations

from pathlib import Path

TESTS = Path(__file__).parent
_SLOW = """
    book/test_calls_true book/test_clocks_true book/test_frames book/test_front_pages_true
    book/test_generated_true book/test_keys_by_look book/test_letters_true book/test_pages_true
    book/test_pictures_true book/test_said_once book/test_sentences_true book/test_words_true
    checks/test_timing compare/test_git compare/test_seasons emit/test_forms emit/test_measuring
    emit/test_numbering emit/test_page_kinds emit/test_pdf emit/test_renderers emit/test_times
    football/test_fronts gate hostile kills lineup/test_shipped_looks outside/test_store
    outside/test_workroom picture/test_ball picture/test_before picture/test_placing
    picture/test_recipe_order picture/test_runs read/test_bounds read/test_newcomers
    read/test_own_words references/test_answers references/test_bundled_runs
    references/test_hard_signs references/test_legality_before_motion references/test_line_answers
    references/test_timing references/test_trade resolve/test_dress resolve/test_eyes
    resolve/test_flip resolve/test_left_and_right resolve/test_letters resolve/test_protections
    resolve/test_run_lines syntax/test_formatting week/test_bands week/test_call_sheet
    week/test_counting week/test_data week/test_installs week/test_killed_rows week/test_numbers
    week/test_positions week/test_quiz week/test_scout_cards test_alternative_text test_build
    test_cli_answers test_cli_themes test_copied test_errors_page test_handbook
    test_hostile_playbook test_mistakes test_packaging test_reference_page test_session
    test_starters test_theme_apart test_theme_safety
"""
LONGEST = (
    "gate/test_gate", "kills/test_kills", "compare/test_two_seasons", "emit/test_parts",
    "test_cli", "week/test_papers", "gate/test_every_copy", "proofs/test_kept_proofs",
    "compare/test_edits", "test_build_output", "compare/test_comparison_book",
    "week/test_game_plan", "week/test_kept_papers", "test_drawings", "week/test_agreement",
    "compare/test_following", "hostile/test_hostile", "test_stamp", "outside/test_folder",
    "test_facing",
)  # fmt: skip
"""Files that take longest, the longest first: they are begun first, so that no process is left with
one of them when the others are done."""
SLOW = frozenset((*_SLOW.split(), *LONGEST))
"""Files of tests, and whole folders of them, that are marked slow."""
