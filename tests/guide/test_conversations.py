"""What the guide says, records, listens for and waits for in whole attempts, word for word: see `conversations`."""

import pytest

from tests.guide.conversations import CONVERSATIONS, WRITTEN, Conversation, held

BLOCKS = {block.partition("\n")[0]: block for block in WRITTEN.read_text(encoding="utf-8").split("==== ")[1:]}


@pytest.mark.parametrize("conversation", CONVERSATIONS, ids=lambda conversation: conversation.title)
def test_a_conversation_goes_as_it_was_written_down(conversation: Conversation) -> None:
    """Nothing else is said, shown, recorded or listened for than what was read and found right."""
    heading = f"{conversation.title} ({conversation.mode.value}, {conversation.checklist.name})"
    assert "\n".join(held(conversation)) == "==== " + BLOCKS[heading].rstrip("\n") + "\n"
