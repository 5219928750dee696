/* One exercise: what is asked, fields for every kind of part, one button that saves them all, what was saved. */

/** Tell whether two answers are the same, whatever order the names in them have: the journal sorts them. */
function same(one, other) {
  const sorted = (_, value) => (value && typeof value === "object" && !Array.isArray(value)
    ? Object.fromEntries(Object.entries(value).sort()) : value);
  return JSON.stringify(one, sorted) === JSON.stringify(other, sorted);
}

function isEmpty(value) {
  if (value === null || value === undefined || value === "") return true;
  if (Array.isArray(value)) return value.length === 0;
  return typeof value === "object" && Object.values(value).every((item) => item === "");
}

/** What was typed and not yet saved outlives a new drawing of the form (kernel restart, reload). */
const drafts = {
  key: (state, part) => `second-plate ${location.pathname} ${state.key} ${part.id}`,
  keep(state, part, value) {
    sessionStorage.setItem(drafts.key(state, part), JSON.stringify(value));
  },
  drop(state, part) {
    sessionStorage.removeItem(drafts.key(state, part));
  },
  read(state, part) {
    const text = sessionStorage.getItem(drafts.key(state, part));
    return text === null ? undefined : JSON.parse(text);
  },
};

/** The kernel's own picture: an <img> with its alt text, made by the drawings of the workbook. */
function figureNode(figure) {
  if (!figure.html) return null;
  const node = make("div", { class: "picture" });
  node.innerHTML = figure.html;
  return node;
}

class Part {
  constructor(spec, state, changed, context) {
    this.spec = spec;
    this.editor = PART_MAKERS[spec.kind](spec, () => changed(this), context);
    this.saved = make("p", { class: "saved-text" });
    this.feedback = make("div", { class: "feedback" });
    this.node = make("div", { class: "part", "data-part": spec.id }, this.editor.node, this.saved, this.feedback);
    const draft = spec.draft ? spec.steps : drafts.read(state, spec);
    this.editor.write(draft === undefined || spec.finished ? spec.saved : draft);
    this.update(spec);
  }

  get empty() {
    return isEmpty(this.spec.saved) && isEmpty(this.editor.read());
  }

  get changed() {
    return !same(this.editor.read(), this.spec.saved) && !this.empty;
  }

  update(spec) {
    this.spec = spec;
    this.editor.lock(spec.finished);
    this.editor.update?.(spec);
    this.showFeedback();
    this.showSaved();
  }

  showSaved() {
    const { saved } = this.spec;
    const has = !isEmpty(saved);
    this.saved.textContent = this.changed
      ? `Changed, not saved yet.${has ? ` Saved before: ${this.editor.say(saved)}` : ""}`
      : has ? `Saved: ${this.editor.say(saved)}` : "";
    this.saved.classList.toggle("unsaved", this.changed);
    this.feedback.classList.toggle("outdated", this.changed);
  }

  showFeedback() {
    const { feedback } = this.spec;
    this.feedback.dataset.outcome = feedback?.outcome ?? "none";
    if (!feedback) {
      this.feedback.replaceChildren();
      return;
    }
    this.feedback.replaceChildren(
      make("p", {}, make("strong", {}, feedback.headline), ` ${feedback.sentences.join(" ")}`),
    );
  }
}

class Form {
  constructor(model, el) {
    this.model = model;
    this.line = line(model, el);
    this.status = statusLine();
    this.head = make("div", { class: "head" });
    this.body = make("div", { class: "parts" });
    this.after = make("div", { class: "after" });
    this.submit = make("button", { type: "submit", class: "main" }, "Save my answer");
    this.form = make(
      "form",
      { novalidate: true, onkeydown: enterSubmits, onsubmit: (event) => { event.preventDefault(); this.send(); } },
      this.body, make("div", { class: "buttons" }, this.submit, this.status.node),
    );
    el.append(this.head, this.form, this.after);
    this.redraw = () => this.show(model.get("state"));
    model.on("change:state", this.redraw);
    this.redraw();
  }

  close() {
    this.line.close();
    this.model.off("change:state", this.redraw);
  }

  /** Show a state: new fields where the numbers are others, else only what was saved and said. */
  show(state) {
    if (this.state && state.number < this.state.number) return;
    const fresh = !this.state || this.state.key !== state.key;
    this.state = state;
    if (fresh) this.build(state);
    else this.parts.forEach((part, place) => part.update(state.parts[place]));
    this.showAfter(state);
    this.submit.disabled = state.finished;
    this.submit.hidden = state.finished;
  }

  build(state) {
    const titleId = newId("title");
    const figure = this.model.get("figure");
    this.head.replaceChildren(...[
      make("p", { class: "kind" }, state.kind_text),
      make("h3", { id: titleId }, state.title),
      ...paragraphs(state.prompt, "prompt"),
      ...paragraphs(state.notes, "note"),
      // A figure to read off stands with each of its readings, where the lines are moved.
      state.parts.some((spec) => spec.kind === "reading") ? null : figureNode(figure),
      figure.problem ? make("p", { class: "warning" }, figure.problem) : null,
    ].filter(Boolean));
    this.form.setAttribute("aria-labelledby", titleId);
    this.parts = state.parts.map((spec) => new Part(spec, state, (part) => this.edited(part), this.context(state, figure)));
    this.body.replaceChildren(...this.parts.map((part) => part.node));
    this.status.say("quiet", "");
    if (this.parts.some((part) => part.changed)) this.sayUnsaved();
  }

  /** What the editors need beside their part: the figure, and the kernel's bench and row. */
  context(state, figure) {
    const askKernel = (content, { answered, silent }) => this.line.ask(
      content,
      {
        answered: (reply) => {
          answered(reply);
          if (!reply.state) return;
          this.show(reply.state);
          this.status.say("problem", reply.sentence);
        },
        silent,
      },
    );
    const askBench = (part, steps, replies) => askKernel({ kind: "bench", key: state.key, part: part.id, steps }, replies);
    const askRow = (part, plan, replies) => askKernel({ kind: "row", key: state.key, part: part.id, plan }, replies);
    return { figure, askBench, askRow };
  }

  sayUnsaved() {
    this.status.say("unsaved", "Not saved yet.");
  }

  edited(part) {
    part.editor.update?.(part.spec);
    if (part.changed) drafts.keep(this.state, part.spec, part.editor.read());
    else drafts.drop(this.state, part.spec);
    part.showSaved();
    if (this.parts.some((other) => other.changed)) this.sayUnsaved();
    else this.status.say("quiet", "");
  }

  values() {
    return Object.fromEntries(this.parts.map((part) => [part.spec.id, part.editor.read()]));
  }

  send() {
    const answers = this.values();
    if (Object.values(answers).every(isEmpty)) {
      this.status.say("problem", "Nothing is filled in yet, so nothing was saved.");
      return;
    }
    if (this.pending && same(this.pending, answers)) return;
    this.pending = answers;
    this.status.say("busy", "Saving ...");
    this.ticket = this.line.ask({ kind: "submit", key: this.state.key, round: this.state.round, answers }, {
      answered: (reply) => this.answered(reply),
      silent: () => this.status.say(
        "problem",
        `No reply yet, so this is not saved yet. The page may still be working: wait a little. ${IF_NOTHING_HAPPENS}`,
      ),
    });
  }

  answered(reply) {
    if (reply.ticket === this.ticket) this.pending = null;
    if (reply.state) this.show(reply.state);
    this.parts.filter((part) => !part.changed).forEach((part) => drafts.drop(this.state, part.spec));
    if (reply.kind !== "saved") {
      this.status.say("problem", reply.sentence);
    } else if (this.parts.some((part) => part.changed)) {
      this.status.say("unsaved", `Saved at ${reply.at}; what you changed since then is not saved yet.`);
    } else {
      this.status.say("saved", `Saved at ${reply.at}. ${reply.sentence}`);
    }
  }

  showAfter(state) {
    const nodes = [make("p", { class: "mark" }, state.mark_text)];
    if (state.reasons.length) {
      nodes.push(make("h4", {}, "How it works out"), ...paragraphs(state.reasons, "reason"));
    }
    if (state.read_again) nodes.push(make("p", { class: "note" }, state.read_again));
    if (state.finished) {
      nodes.push(make("button", { type: "button", onclick: () => this.askFresh() }, "Try again with fresh numbers"));
    }
    this.after.replaceChildren(...nodes.filter((node) => node.textContent));
  }

  askFresh() {
    this.line.ask({ kind: "fresh" }, {
      answered: (reply) => {
        this.show(reply.state);
        this.status.say("quiet", "Fresh numbers. Nothing is saved for them yet.");
        this.body.querySelector("input, button")?.focus();
      },
      silent: () => this.status.say("problem", `No reply yet. ${IF_NOTHING_HAPPENS}`),
    });
  }
}

export default {
  render({ model, el }) {
    const form = new Form(model, takeOver(el, "exercise"));
    return () => form.close();
  },
};
