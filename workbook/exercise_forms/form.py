"""What all forms share: the browser's side put together from its files, and one reply to every message."""

from pathlib import Path

import anywidget
import traitlets

BROWSER_FILES = Path(__file__).parent / "browser"
STYLE = (BROWSER_FILES / "forms.css").read_text(encoding="utf-8")
FAILED = (
    "This did not work, and it is not sure that anything was saved. Run the page again to see what is saved, "
    "and tell your instructor what you pressed."
)


def script(*names):
    """Return a form's module: what all share, then its own files. One module, so nothing has to be built."""
    parts = (BROWSER_FILES / name for name in ("base.js", *names))
    return "\n".join(part.read_text(encoding="utf-8") for part in parts)


def sentence(words):
    """Write the words of a refusal as a sentence of their own."""
    text = str(words).strip()
    return f"{text[:1].upper()}{text[1:]}{'' if text.endswith('.') else '.'}"


class Form(anywidget.AnyWidget):
    """A form on the page. A message from the browser gets exactly one reply, with the message's ticket."""

    _css = STYLE
    state = traitlets.Dict().tag(sync=True)
    title = "Form"

    def __init__(self, **traits):
        """Show a state and listen to the browser."""
        super().__init__(**traits)
        self.on_msg(self._hear)

    def __repr__(self):
        """Say what to press, where no form can be drawn."""
        return f'{self.title[:40]}: press "Run", then "Run All Cells", to see this form.'

    def answer(self, message):
        """Return the reply to a message: ``kind``, ``sentence`` and what else this form needs."""
        raise KeyError(message["kind"])

    def told(self, news):
        """Hear what happened to another form; most forms have nothing to do."""

    def _hear(self, _, message, buffers):
        ticket = message.get("ticket")
        try:
            reply = {"kind": "hello"} if message["kind"] == "hello" else self.answer(message)
        except Exception:
            self.send({"kind": "problem", "sentence": FAILED, "ticket": ticket})
            raise
        self.send(reply | {"ticket": ticket})
