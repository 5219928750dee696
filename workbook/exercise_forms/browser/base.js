/* What every form shares: making elements, and asking the kernel so that no answer is lost or mistaken.
   The text of this file is put in front of each form's own file: a form arrives in the browser as one module. */

const PATIENCE_MS = 5000;
const IF_NOTHING_HAPPENS =
  'If nothing happens, press "Run the page again" at the top of the page (or Run, then Run All Cells, in the menu).';

// JupyterLab deletes, cuts and moves cells on single keys while a button or a radio button of a form has the
// focus. It looks for this mark on the focused element itself, so each of them carries it.
const TAKES_FOCUS = new Set(["button", "input", "select", "summary"]);
const NO_SHORTCUTS = "data-lm-suppress-shortcuts";

/** Make an element: make("p", { class: "note" }, "text", otherElement). Text never becomes markup. */
function make(tag, attributes = {}, ...children) {
  const node = document.createElement(tag);
  if (TAKES_FOCUS.has(tag)) node.setAttribute(NO_SHORTCUTS, "true");
  for (const [name, value] of Object.entries(attributes)) {
    if (value === false || value === null || value === undefined) continue;
    if (name.startsWith("on")) node.addEventListener(name.slice(2), value);
    else node.setAttribute(name, value === true ? "" : value);
  }
  node.append(...children.filter((child) => child !== null && child !== undefined));
  return node;
}

let lastNumber = 0;
/** An id that no other element of the page has. */
function newId(stem) {
  lastNumber += 1;
  return `${stem}-${Date.now().toString(36)}-${Math.random().toString(36).slice(2, 8)}-${lastNumber}`;
}

/** Prepare the root of a form. */
function takeOver(el, className) {
  el.classList.add("second-plate-form", className);
  el.setAttribute(NO_SHORTCUTS, "true");
  el.setAttribute("data-jp-suppress-context-menu", "true");
  return el;
}

/** A place for status sentences that is in the page before any text is put in, so that it is read out. */
function statusLine() {
  const node = make("p", { class: "status", role: "status", "aria-live": "polite" });
  return {
    node,
    say(kind, sentence) {
      node.dataset.kind = kind;
      node.textContent = sentence;
    },
  };
}

/** Ask the kernel over the form's own line. One answer belongs to one ticket; silence is told after 5 s. */
function line(model, el) {
  const waiting = new Map();
  const hear = (message) => {
    const ask = waiting.get(message.ticket);
    if (!ask) return;
    waiting.delete(message.ticket);
    clearTimeout(ask.timer);
    ask.answered(message);
  };
  const ask = (content, { answered, silent }) => {
    const ticket = newId("ticket");
    const timer = setTimeout(silent, PATIENCE_MS);
    waiting.set(ticket, { answered, timer });
    model.send({ ...content, ticket });
    return ticket;
  };
  // The page asks each form, once all are drawn, whether its line is alive; a dead one is drawn again.
  const check = () => ask({ kind: "hello" }, {
    answered: () => {},
    silent: () => el.dispatchEvent(new CustomEvent("second-plate-silent", { bubbles: true })),
  });
  model.on("msg:custom", hear);
  el.addEventListener("second-plate-check", check);
  return {
    ask,
    close() {
      for (const { timer } of waiting.values()) clearTimeout(timer);
      waiting.clear();
      model.off("msg:custom", hear);
      el.removeEventListener("second-plate-check", check);
    },
  };
}

function paragraphs(texts, className) {
  return texts.map((text) => make("p", { class: className }, text));
}

/** Let Enter in a text field submit its form: JupyterLab swallows the browser's own way of doing so. */
function enterSubmits(event) {
  if (event.key === "Enter" && !event.isComposing && event.target.type === "text") {
    event.preventDefault();
    event.currentTarget.requestSubmit();
  }
}
