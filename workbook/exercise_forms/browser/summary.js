/* How far the learner is, by objective. Drawn again whenever the kernel sends a new state. */

function objective({ text, points, maximum, words, exercises }) {
  const id = newId("objective");
  return make(
    "div", { class: "objective" },
    make("p", { id }, make("strong", {}, text)),
    maximum > 0 ? make("progress", { max: maximum, value: points, "aria-labelledby": id }, words) : null,
    make("p", { class: "hint" }, words),
    make("ul", {}, ...exercises.map(({ title, state }) => make("li", {}, `${title}: ${state}`))),
  );
}

export default {
  render({ model, el }) {
    takeOver(el, "summary");
    const talk = line(model, el);
    const status = statusLine();
    const list = make("div", {});
    const show = () => {
      const { heading, total, objectives, notes } = model.get("state");
      status.say("quiet", total);
      list.replaceChildren(...objectives.map(objective), ...paragraphs(notes, "note"));
      title.textContent = heading;
    };
    const title = make("h3", {});
    el.append(title, status.node, list);
    model.on("change:state", show);
    show();
    return () => {
      talk.close();
      model.off("change:state", show);
    };
  },
};
