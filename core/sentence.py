"""What is said, apart from how it is said: a constant text, and what goes into it.

Only `Sentence.say` knows the reader's units, decimal mark and words.
"""

from __future__ import annotations

from attrs import field, frozen

from core.quantities import Amount, Reader


@frozen
class Sentence:
    """A text that names its values in braces: Sentence("{salt} × {strength} = {nitrite}", {"salt": …}).

    Its amounts stay in SI; each is shown in the reader's own units when the sentence is said.
    """

    text: str
    values: dict[str, Amount] = field(factory=dict[str, Amount])

    def say(self, reader: Reader, significant: int = 6) -> str:
        """In the reader's units. A sentence wants fewer digits than a sum that is to be checked."""
        shown = {name: amount.show_exact(reader, significant) for name, amount in self.values.items()}
        return self.text.format_map(shown)
