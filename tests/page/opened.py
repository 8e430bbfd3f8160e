"""A live page in a browser, read and changed as its user does."""

import re

from playwright.sync_api import BrowserContext, Page, expect

WAITS = 30_000
"""For an answer, on a machine that does much else [ms]."""

expect.set_options(timeout=WAITS)


class Live:
    """A page, and what it asked for and complained of."""

    def __init__(
        self, window: BrowserContext, address: str, width: int = 1400, height: int = 900
    ) -> None:
        """Open the address in a window and wait until all of it shows."""
        self.context = window
        self.page: Page = window.new_page()
        self.page.set_default_timeout(WAITS)
        self.page.set_viewport_size({"width": width, "height": height})
        self.complaints: list[str] = []
        self.asked: list[str] = []
        self.page.on("pageerror", lambda error: self.complaints.append(str(error)))
        self.page.on("request", lambda request: self.asked.append(request.url))
        # Leaving with unsaved changes asks; whoever tests wants to leave.
        self.page.on("dialog", lambda dialog: dialog.accept())
        self.page.goto(address)
        self.ready()

    def ready(self) -> None:
        """Wait until the page works."""
        self.page.wait_for_selector("html[data-ready=yes]", state="attached")

    def box(self, field: str):
        """The box of a field, its group open."""
        box = self.page.locator(f"#field-{field.replace('.', '-')}")
        group = box.locator("xpath=ancestor::details[1]")
        if group.get_attribute("open") is None:
            group.locator("summary").first.click()
        return box

    def slider(self, field: str):
        """The slider below a box."""
        return (
            self.box(field)
            .locator("xpath=ancestor::div[contains(concat(@class,' '),'field ')]")
            .locator("input[type=range]")
        )

    def type(self, field: str, text: str) -> None:
        """Type into a box and leave it."""
        self.box(field).fill(text)
        self.page.keyboard.press("Enter")

    def shows(self, field: str, value: str) -> None:
        """Wait until a box has this value."""
        expect(self.box(field)).to_have_value(value)

    def number(self, field: str) -> float:
        """The number in a box."""
        return float(self.box(field).input_value())

    def figure(self, label: str) -> str:
        """A card of the first screen, its units parted from their numbers by plain blanks."""
        return self.page.locator(".figure", has_text=label).inner_text().replace("\xa0", " ")

    def verdict(self) -> str:
        """The verdict in one line."""
        return re.sub(r"\s+", " ", self.page.locator("#verdict").inner_text())

    def taps_asked(self) -> int:
        """How many designs were asked for."""
        return sum(url.endswith("/tap") for url in self.asked)

    def close(self) -> None:
        """Close it; nothing may have gone wrong on the way."""
        self.page.close()
        assert self.complaints == []
