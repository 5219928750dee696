/* How far the learner is, by objective. Drawn again whenever the kernel sends a new state. */

/** Go to an exercise of this page and put the cursor into its first field. */
function goTo(title) {
  const heading = [...document.querySelectorAll(".second-plate-form.exercise h3")].find((one) => one.textContent === title);
  const form = heading?.closest(".second-plate-form");
  form?.scrollIntoView({ block: "center" });
  form?.querySelector("input:not([disabled]), button:not([disabled])")?.focus({ preventScroll: true });
}

function exerciseLine({ title, state }) {
  const link = make("button", { type: "button", class: "link", onclick: () => goTo(title) }, title);
  return make("li", {}, link, make("span", { class: "hint" }, state));
}

function objective({ text, points, maximum, words, exercises }) {
  const id = newId("objective");
  return make(
    "div", { class: "objective" },
    make("p", { id }, make("strong", {}, text)),
    maximum > 0 ? make("progress", { max: maximum, value: points, "aria-labelledby": id }, words) : null,
    make("p", { class: "hint" }, words),
    make("ul", {}, ...exercises.map(exerciseLine)),
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
