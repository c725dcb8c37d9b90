"""Which files of tests a quick run leaves out, and which take longest.

What judges whole books, asks for a whole season or a bundled week, sets pages or starts programs is
slow. One file for both lists: there is a conftest in more than one folder.
"""

from __future__ import annotations

from pathlib import Path

TESTS = Path(__file__).parent
_SLOW = """
    book/test_clocks_true book/test_frames book/test_front_pages_true book/test_generated_true
    book/test_keys_by_look book/test_letters_true book/test_pages_true book/test_pictures_true
    book/test_said_once book/test_sentences_true book/test_words_true checks/test_timing compare
    emit/test_copied_letters emit/test_forms emit/test_ink emit/test_measuring emit/test_numbering
    emit/test_page_kinds emit/test_page_tops emit/test_pdf emit/test_renderers emit/test_times
    football/test_fronts gate hostile kills lineup/test_shipped_looks outside/test_store
    outside/test_workroom picture/test_ball picture/test_before picture/test_placing
    picture/test_recipe_order picture/test_runs proofs read/test_newcomers read/test_offered_lines
    read/test_own_words references/test_answers references/test_bundled_runs
    references/test_hard_signs references/test_legality_before_motion references/test_line_answers
    references/test_timing references/test_trade resolve/test_dress resolve/test_eyes
    resolve/test_flip resolve/test_jobs resolve/test_left_and_right resolve/test_letters
    resolve/test_protections resolve/test_run_lines syntax/test_formatting syntax/test_properties
    syntax/test_tree_as_data week/test_bands week/test_call_sheet week/test_counting week/test_data
    week/test_game_plan week/test_installs week/test_kept_papers week/test_killed_rows
    week/test_numbers week/test_papers week/test_positions week/test_quiz week/test_scout_cards
    test_alternative_text test_build test_cli_answers test_copied test_developers_examples
    test_earlier test_handbook test_mistakes test_nearest test_packaging test_reference_page
    test_theme_safety
"""
LONGEST = (
    "book/test_calls_true", "test_cli", "week/test_agreement", "compare/test_comparison_book",
    "kills/test_kills", "gate/test_gate", "emit/test_parts", "proofs/test_kept_proofs",
    "test_theme_apart", "test_session", "test_stamp", "test_starters", "compare/test_two_seasons",
    "test_errors_page", "compare/test_following", "test_drawings", "gate/test_every_copy",
    "read/test_bounds", "test_cli_themes", "compare/test_edits", "test_hostile_playbook",
    "test_facing", "test_build_output", "outside/test_folder", "hostile/test_hostile",
)  # fmt: skip
"""Files that take longest, the longest first: they are begun first, so that no process is left with
one of them when the others are done. The first brings the whole folder of books with it, the third
that of weeks."""
SLOW = frozenset((*_SLOW.split(), *LONGEST))
"""Files of tests, and whole folders of them, that are marked slow."""
