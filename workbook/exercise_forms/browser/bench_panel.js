/* The virtual bench to play with: as many days as anybody likes, and the truth about the machine after each. */

export default {
  render({ model, el }) {
    takeOver(el, "panel");
    const talk = line(model, el);
    const head = make("div", { class: "head" });
    const body = make("div", {});
    const told = make("ul", { class: "truth" });
    const news = statusLine();
    let key = null;
    let works = null;

    const tell = (truth) => {
      told.hidden = !truth.length;
      told.replaceChildren(...truth.map((text) => make("li", {}, text)));
    };
    const silent = () => news.say("problem", `No reply yet. ${IF_NOTHING_HAPPENS}`);
    const ask = (steps, replies) => talk.ask({ kind: "bench", key, steps }, {
      answered: (reply) => {
        replies.answered(reply);
        if (reply.kind === "bench") tell(reply.truth);
      },
      silent: replies.silent,
    });
    const fresh = () => talk.ask({ kind: "fresh" }, {
      answered: (reply) => news.say("quiet", `Another rivet, another machine. ${reply.sentence}`),
      silent,
    });
    const show = () => {
      const state = model.get("state");
      if (state.key === key) return;
      key = state.key;
      works = bench(state, ask, () => news.say("quiet", ""));
      head.replaceChildren(
        make("h3", {}, state.title), ...paragraphs(state.intro, "note"), make("p", { class: "kind" }, `Day ${state.day}`),
      );
      body.replaceChildren(works.node);
      works.lay(state.steps, state.view);
      tell(state.truth);
    };
    const buttons = [
      make("button", { type: "button", onclick: () => { works.begin(); tell([]); } }, "Begin this day again"),
      make("button", { type: "button", onclick: fresh }, "Another day: another rivet and machine"),
    ];
    el.append(head, body, told, make("div", { class: "buttons" }, ...buttons), news.node);
    model.on("change:state", show);
    show();
    return () => {
      talk.close();
      model.off("change:state", show);
    };
  },
};
