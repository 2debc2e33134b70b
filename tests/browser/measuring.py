"""What is measured on a page, as functions to run in it. Each returns what is wrong, in words."""

LEAST_TARGET_PX = 47.5  # half a pixel for rounding
LEAST_GAP_PX = 7.5
CORNER_PX = 16

_TARGETS = """
  const CONTROLS = "a, button, input:not([type=hidden]), select, summary, label.option";
  const isShown = (each) => each.checkVisibility({ checkVisibilityCSS: true });
  const inSentence = (each) => each.tagName === "A" && getComputedStyle(each).display === "inline";
  const targets = [...document.querySelectorAll(CONTROLS)]
    .filter((each) => isShown(each) && !inSentence(each) && !each.matches(".skip, .unseen, .option input"))
    .map((each) => ({ each, box: each.getBoundingClientRect() }));
  const words = ({ each }) => (each.ariaLabel || each.textContent.trim() || each.name || each.type).slice(0, 40);
  if (targets.length < 5) return ["There is nothing to tap: the page is not there yet."];
"""

SMALL = f"""(least) => {{ {_TARGETS}
  return targets.filter(({{ box }}) => box.height < least || box.width < least)
    .map((one) => `${{words(one)}}: ${{Math.round(one.box.width)}} × ${{Math.round(one.box.height)}}`);
}}"""

CLOSE = f"""(least) => {{ {_TARGETS}
  const PINNED = "nav.places, form.entry > .actions, form.entry > .pane, #device"; // the page slides under these
  const isPinned = ({{ each }}) => each.closest(PINNED);
  const gap = (a, b) => Math.max(b.left - a.right, a.left - b.right, b.top - a.bottom, a.top - b.bottom);
  return targets.flatMap((one, at) => targets.slice(at + 1)
    .filter((other) => isPinned(one) === isPinned(other) && gap(one.box, other.box) < least)
    .map((other) => `${{words(one)}} | ${{words(other)}}: ${{gap(one.box, other.box).toFixed(1)}}`));
}}"""

CORNERED = f"""(reach) => {{ {_TARGETS}
  const isAside = (box) => box.left < reach || box.right > innerWidth - reach;
  const isAtTop = (box) => box.top < reach && box.bottom > 0;
  const isAtFoot = (box) => box.bottom > innerHeight - reach && box.top < innerHeight;
  return targets.filter(({{ box }}) => isAside(box) && (isAtTop(box) || isAtFoot(box))).map(words);
}}"""

COVERED = f"""(pinned) => {{ {_TARGETS}
  const isPinned = ({{ each }}) => each.matches(pinned);
  const isInSight = ({{ box }}) => box.top >= 0 && box.bottom <= innerHeight;
  const atMiddle = ({{ x, y, width, height }}) => document.elementFromPoint(x + width / 2, y + height / 2);
  const isOnTop = ({{ each, box }}) => each.contains(atMiddle(box));
  return targets.filter((one) => isPinned(one) && isInSight(one) && !isOnTop(one)).map(words);
}}"""

OUT_OF_ORDER = f"""() => {{ {_TARGETS}
  const boxes = targets.filter(({{ each }}) => each.closest("form.entry .typing, form.entry:not(:has(.typing))"));
  const isAbove = (one, other) => one.box.bottom <= other.box.top; // the next one with the Tab key stands above
  return [...targets.filter(({{ each }}) => each.tabIndex > 0).map(words), ...boxes.slice(1)
    .filter((one, at) => isAbove(one, boxes[at])).map((one) => `${{words(one)}} stands above what it follows`)];
}}"""

LONELY_SMALL_LINKS = """() => [...document.querySelectorAll("main a")]
  .filter((each) => getComputedStyle(each).display === "inline")
  .filter((each) => each.parentElement.textContent.trim() === each.textContent.trim())
  .map((each) => each.textContent.trim())
"""

CONTRASTS = """(selector) => {
  const channel = (value) => (value /= 255) <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  const luminance = (color) => {
    const [red, green, blue] = color.match(/[\\d.]+/g).map(Number);
    return 0.2126 * channel(red) + 0.7152 * channel(green) + 0.0722 * channel(blue);
  };
  const behind = (each) => {
    const color = getComputedStyle(each).backgroundColor;
    return color === "rgba(0, 0, 0, 0)" && each.parentElement ? behind(each.parentElement) : color;
  };
  return [...document.querySelectorAll(selector)].filter((each) => each.checkVisibility()).map((each) => {
    const [dim, bright] = [getComputedStyle(each).color, behind(each)].map(luminance).sort((a, b) => a - b);
    return [each.textContent.trim().slice(0, 40), (bright + 0.05) / (dim + 0.05)];
  });
}"""
"""WCAG 2.2, contrast ratio (1.4.6)."""

FRAMES = """(all) => Object.fromEntries(
  all.map((each) => [each.textContent.trim(), getComputedStyle(each).borderTopStyle]))"""

MOVING = """() => [...document.querySelectorAll("*")]
  .map((each) => [each.tagName, getComputedStyle(each)])
  .filter(([, style]) => style.transitionDuration !== "0s" || style.animationName !== "none")
  .map(([name]) => name)"""

TOO_WIDE = """() => [...document.querySelectorAll("body *")]
  .filter((each) => each.getBoundingClientRect().right > innerWidth + 1)
  .filter((each) => !each.closest(".skip, .sideways, pre, svg"))
  .map((each) => `${each.tagName.toLowerCase()}.${each.className}: ${each.textContent.trim().slice(0, 40)}`)
"""

OUT_OF_SIGHT = f"""(isTyping) => {{ {_TARGETS}
  const onTop = (each) => {{
    const {{ left, top, width, height }} = each.getBoundingClientRect();
    const there = document.elementFromPoint(left + width / 2, top + Math.min(height, 48) / 2);
    return there && (each.contains(there) || each.labels?.[0]?.contains(there));
  }};
  const ANSWER = ".pane .figures :is(.answer .value, .refusal, .verdict, .load-word, .figure .value)";
  const kept = {{ answer: document.querySelector(ANSWER), button: document.querySelector("main > form.entry .main") }};
  const hidden = [];
  const look = (from) => {{
    const lost = Object.keys(kept).filter((name) => kept[name] && !onTop(kept[name]));
    hidden.push(...lost.map((name) => `the ${{name}}, at ${{from}}`));
  }};
  for (const [where, at] of isTyping ? [] : [["the top", 0], ["the end", document.documentElement.scrollHeight]]) {{
    scrollTo(0, at);
    look(where);
  }}
  for (const one of targets) {{
    one.each.scrollIntoView({{ block: "nearest" }});
    if (!onTop(one.each)) hidden.push(words(one));
    if (one.each.matches("main > form.entry [type=text]")) look(words(one));
  }}
  for (const pane of document.querySelectorAll(".pane, .pane .figures")) pane.scrollTop = 0;
  scrollTo(0, 0);
  return hidden;
}}"""
"""Targets that something lies on when they are brought into view; the answer and the main button where one does not see
them from the page's top, its end, or a box one types in. isTyping: a keyboard is on the screen."""

HEAD_AND_FOOT = """() => {
  const bars = [...document.querySelectorAll("body > *")].filter((each) => {
    const { position, display } = getComputedStyle(each);
    return display !== "none" && ["sticky", "fixed"].includes(position);
  }).map((each) => each.getBoundingClientRect()).filter(({ width }) => width > innerWidth / 2);
  return bars.reduce((sum, { height }) => sum + height, 0) / innerHeight;
}"""
"""What share of the height the bars take that reach across."""
