"""Every rule, table and handbook we quote, named once: title, edition, section, and how we know it.

`verified` says what was read: "seen" (the document itself), "copy" (a faithful copy or quotation of it), "memory"
(known, text not found), "practice" (common practice of the trade, no source), "computed" (our own arithmetic on a
definition). Only the first two are evidence.
"""

from typing import Literal

from attrs import frozen

Verified = Literal["seen", "copy", "memory", "practice", "computed"]


@frozen
class Source:
    title: str
    section: str
    verified: Verified

    def cite(self) -> str:
        """One line for the foot of a figure."""
        if self.verified == "practice":
            return "Common practice, no source."
        where = f"{self.title}, {self.section}" if self.section else self.title
        return {
            "seen": f"{where}.",
            "copy": f"{where} (read in a copy).",
            "memory": f"{where} (from memory, not checked).",
            "computed": f"{where} (worked out from the definition).",
        }[self.verified]


COMMON_PRACTICE = Source("Common practice", "", "practice")
DEFINITION = Source("By definition", "", "computed")
