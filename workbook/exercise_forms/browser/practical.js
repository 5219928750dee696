/* What an instructor saw at the bench: who, by whom, when, and a level for each line of the rubric. */

export default {
  render({ model, el }) {
    takeOver(el, "practical");
    const state = model.get("state");
    const talk = line(model, el);
    const status = statusLine();
    const changed = () => status.say("", "");
    const fields = {
      learner: textField("Learner: name or number", "", changed),
      by: textField("Judged by", "", changed),
      when: textField("Day", "such as 2026-12-02", changed),
      note: textField("Note, if there is something to say", "", changed),
    };
    fields.when.input.value = state.today;
    const editors = state.parts.map((part) => [part.id, PART_MAKERS[part.kind](part, changed)]);
    const send = () => {
      const message = { kind: "judge", levels: Object.fromEntries(editors.map(([id, editor]) => [id, editor.read()])) };
      for (const [name, { input }] of Object.entries(fields)) message[name] = input.value;
      talk.ask(message, {
        answered: (reply) => {
          status.say(reply.kind, reply.sentence);
          if (reply.kind !== "saved") return;
          // The next learner begins with an empty form: nobody gets the levels of the one before.
          fields.learner.input.value = fields.note.input.value = "";
          for (const [, editor] of editors) editor.write("");
        },
        silent: () => status.say("problem", `No reply yet, so nothing is saved yet. ${IF_NOTHING_HAPPENS}`),
      });
    };
    el.append(
      make("h3", {}, state.heading),
      ...paragraphs(state.notes, "note"),
      make(
        "form", { novalidate: true, onkeydown: enterSubmits, onsubmit: (event) => { event.preventDefault(); send(); } },
        fields.learner.node, fields.by.node, fields.when.node,
        ...editors.map(([, editor]) => make("div", { class: "part" }, editor.node)),
        fields.note.node,
        make("div", { class: "buttons" }, make("button", { type: "submit", class: "main" }, "Save these levels"), status.node),
      ),
    );
    return () => talk.close();
  },
};
