"""Which sentences put a head into contact, and which only have the word.

Common practice, no published source, for what coaches say; the ban itself is Football Canada's
(release of 20 May 2014) and NFHS 2-20-1.
"""

from __future__ import annotations

from together import together

from stemline.football.rulebook.head_contact import head_contact

CONTACT = {
    "Down block for a count, head in his ribs.": "head in his ribs",
    "Inside out, head on his upfield side.": "head on his upfield side",
    "Inside foot up, chin on his near shoulder.": "chin on his near shoulder",
    "Playside foot first, face to his outside number.": "face to his outside number",
    "Helmet across the bow.": "Helmet across the bow",
    "Put your head on him and drive.": "Put your head on him",
    "Get your face into the end's chest.": "Get your face into the end",
    "F puts his helmet through the linebacker's ribs.": "puts his helmet through",
    "Stick your hat in his numbers.": "hat in his numbers",
    "Hit him in the head.": "Hit him in the head",
    "Hit him high in the neck.": "Hit him high in the neck",
    "Block him with your helmet.": "Block him with your helmet",
    "Tackle with the crown of the helmet.": "Tackle with the crown",
    "Punch up under his chin.": "Punch up under his chin",
    "Hands to the face until he lets go.": "Hands to the face",
    "Forearm under his chin.": "Forearm under his chin",
    "Shoulder into the neck.": "Shoulder into the neck",
    "Grab his face mask if you must.": "Grab his face mask",
    "Lead with your head.": "Lead with your head",
    "Go in with the helmet.": "Go in with the helmet",
    "Tackle head first.": "head first",
    "Helmet to helmet, every time.": "Helmet to helmet",
    "Spear him.": "Spear him",
    "Take his head off.": "Take his head off",
    "Ear-hole the end.": "Ear-hole the",
    "Feet first. Then your helmet on the ball.": "helmet on the ball",
}

HARMLESS = (
    "Head up on the guard.",
    "He plays head-up on the tackle, so you are covered.",
    "The head coach calls it.",
    "Turn your head to the quarterback.",
    "Turn your head to his inside shoulder.",
    "Show the stick, turn the linebacker's head, go by him.",
    "Eyes on his numbers, head up.",
    "Block him with your head up.",
    "Hit him with the near shoulder, head up.",
    "Eyes inside the kick.",
    "Face the quarterback and show your numbers.",
    "Stop over the ball and face him.",
    "Square cut, stay flat, come across his face.",
    "Slant across his face to the numbers.",
    "He must not cross your face.",
    "Do not cross his face until you have the depth.",
    "The narrow neck of the field is ours.",
    "Listen on the headset.",
    "Break over the corner's head.",
    "He jumps it, the dig is behind his head.",
    "The twelve is behind his ear.",
    "Chest high, behind his ear.",
    "Read the corner's feet, not his face.",
    "Follow his hat: he goes in, you go out.",
    "A hat on a hat: everybody has one man.",
    "Head to the flat and look early.",
    "Head for the pylon.",
    "Head at the corner's inside shoulder, then break.",
    "Get your head around early.",
    "Head on a swivel.",
    "Keep your head out of the block.",
    "Keep your head up and your eyes on his hip.",
    "Never lead with the head.",
    "No contact with the head, given or led with.",
    "Nobody goes in with the helmet.",
    "Do not put your head in his chest.",
    "Hands first, never the face.",
    "Throw it at his face mask: he catches it or nobody does.",
    "Hit him in the face with the ball if he does not look.",
    "A head start of half a yard.",
    "Head first down the sideline to the sticks.",
    "A player who takes a knock to the head is out of practice until medical staff clear him.",
    "Mouth open for the ball, eyes on the hole.",
    "Get a hand in the passer's face.",
)


@together("sentence", CONTACT)
def test_a_head_in_a_block_is_found_with_its_words(sentence: str) -> None:
    found = head_contact(sentence)
    assert found is not None
    assert sentence[slice(*found)].startswith(CONTACT[sentence])


@together("sentence", HARMLESS)
def test_the_word_alone_is_no_contact(sentence: str) -> None:
    assert head_contact(sentence) is None
