/* Who is at work: one field, one button. Without a name the page uses practice numbers and says so. */

export default {
  render({ model, el }) {
    takeOver(el, "sign-in");
    const talk = line(model, el);
    const status = statusLine();
    const id = newId("name");
    const input = make("input", { id, type: "text", autocomplete: "off", spellcheck: "false", maxlength: "200" });
    const who = make("p", {});
    const problem = (sentence) => status.say("problem", sentence);
    const send = () => talk.ask({ kind: "sign in", name: input.value }, {
      answered: (reply) => status.say(reply.kind, reply.sentence),
      silent: () => problem(`No reply yet, so nothing is saved. ${IF_NOTHING_HAPPENS}`),
    });
    const form = make(
      "form", { novalidate: true, onkeydown: enterSubmits, onsubmit: (event) => { event.preventDefault(); send(); } },
      make("div", { class: "field" }, make("label", { for: id }, "Your name or number"), input),
      make("div", { class: "buttons" }, make("button", { type: "submit", class: "main" }, "Sign in"), status.node),
    );
    const show = () => {
      const { name, sentence } = model.get("state");
      who.textContent = sentence;
      input.value = name;
    };
    model.on("change:state", show);
    show();
    el.append(make("h3", {}, "Who is at work?"), who, form);
    return () => {
      talk.close();
      model.off("change:state", show);
    };
  },
};
