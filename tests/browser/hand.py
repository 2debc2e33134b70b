"""A hand that has only keys. It notes where the focus went, and whether one could see it there."""

from attrs import define, field
from playwright.sync_api import Page, TimeoutError, expect

from tests.browser.walking import answered, rest

MOST_TABS = 90
FOCUS = """() => {
  const each = document.activeElement;
  const named = document.getElementById(each.getAttribute("aria-labelledby"));
  const hasLabel = ["INPUT", "SELECT"].includes(each.tagName);
  const framed = each.closest(".option") || (each.tagName === "INPUT" && each.closest(".field > .box")) || each;
  const { outlineStyle, outlineWidth } = getComputedStyle(framed);
  const box = framed.getBoundingClientRect();
  const [x, y] = [Math.max(1, box.left + Math.min(box.width, 40) / 2), box.top + Math.min(box.height, 40) / 2];
  const above = document.elementFromPoint(x, y);
  return {
    name: (each.ariaLabel ?? (hasLabel ? each.labels[0] ?? named : each)?.textContent ?? "").trim(),
    element: each.tagName.toLowerCase(),
    isFramed: outlineStyle !== "none" && parseFloat(outlineWidth) >= 2,
    isUncovered: above !== null && (framed.contains(above) || above.contains(framed)),
  };
}"""

IS_SEEN = f"""() => {{
  const focus = ({FOCUS})();
  return focus.element === "body" || (focus.isFramed && focus.isUncovered);
}}"""


@define
class Hand:
    page: Page
    lost: list[str] = field(factory=list)
    unseen: list[str] = field(factory=list)

    def focus(self) -> dict[str, str]:
        return self.page.evaluate(FOCUS)

    def step(self, key: str = "Tab") -> dict[str, str]:
        self.page.keyboard.press(key)
        try:
            self.page.wait_for_function(IS_SEEN)  # the page scrolls to it after the key
        except TimeoutError:
            self.unseen.append(f"{self.page.locator('main h1').inner_text()}: {self.focus()}")
        return self.focus()

    def reach(self, name: str, element: str = "", key: str = "Tab") -> None:
        """Step until what has the focus begins with that name."""
        passed = []
        for _ in range(MOST_TABS):
            focus = self.step(key)
            if focus["name"].startswith(name) and focus["element"].startswith(element):
                return
            passed.append(focus["name"][:20])
        raise AssertionError(f"{name} cannot be reached with {key} among {passed}")

    def fill(self, label: str, text: str) -> None:
        self.reach(label, "input")
        self.page.keyboard.press("Control+a")
        self.page.keyboard.type(text)

    def press(self, name: str, element: str = "", key: str = "Enter", way: str = "Tab") -> None:
        self.reach(name, element, way)
        rest(self.page)
        self.page.keyboard.press(key)
        answered(self.page)

    def send(self, button: str, title: str) -> None:
        """Press a button that saves; what has the focus when the next page is there is noted."""
        before = self.page.url
        self.press(button, "button")
        self.page.wait_for_function("(before) => location.href !== before", arg=before)
        expect(self.page.locator("main h1")).to_have_text(title)
        self.page.wait_for_function("() => document.querySelector('.saved')")
        if self.focus()["element"] == "body":
            self.lost.append(f"after {button}")

    def open(self, link: str, title: str, key: str = "Tab") -> None:
        self.press(link, "a", way=key)
        expect(self.page.locator("main h1")).to_have_text(title)
        if self.focus()["element"] == "body":
            self.lost.append(f"after the link {link}")
