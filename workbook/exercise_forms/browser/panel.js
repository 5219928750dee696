/* An explorer: change a setting, see what the library computes from it. The newest setting always wins. */

/** A slider beside a text field: the same value twice, because not everybody can drag. */
function slide(spec, changed) {
  const id = newId("setting");
  const range = make("input", {
    type: "range", min: spec.low, max: spec.high, step: spec.step, value: spec.start, "aria-label": `${spec.label}, slider`,
  });
  const text = make("input", { id, type: "text", autocomplete: "off", value: String(spec.start) });
  range.addEventListener("input", () => { text.value = range.value; changed(); });
  text.addEventListener("input", () => {
    const value = Number(text.value.trim().replace(",", "."));
    if (Number.isFinite(value)) range.value = String(value);
    changed();
  });
  return {
    node: make(
      "div", { class: "control" }, make("label", { for: id }, spec.label),
      make("div", { class: "both" }, range, text, make("span", { class: "unit" }, spec.unit)),
    ),
    read: () => text.value,
  };
}

function pick(spec, changed) {
  const id = newId("setting");
  const select = make("select", { id, onchange: changed }, ...spec.options.map(
    (option) => make("option", { value: option, selected: option === spec.start }, option),
  ));
  return {
    node: make("div", { class: "control" }, make("label", { for: id }, spec.label), select),
    read: () => select.value,
  };
}

export default {
  render({ model, el }) {
    takeOver(el, "panel");
    const spec = model.get("state");
    const talk = line(model, el);
    const status = statusLine();
    const picture = make("div", { class: "picture" });
    const readouts = make("tbody", {});
    const controls = {};
    let asked = false;
    let again = false;

    const show = (view) => {
      if (view.problem) {
        status.say("problem", view.problem);
        return;
      }
      status.say("quiet", view.sentence);
      // The kernel's own pictures: each an <img> with its alt text, made by the drawings of the workbook.
      picture.innerHTML = view.pictures.join("");
      readouts.replaceChildren(...view.rows.map(([name, value]) => make("tr", {}, make("th", { scope: "row" }, name), make("td", {}, value))));
    };
    const ask = () => {
      if (asked) {
        again = true;
        return;
      }
      asked = true;
      const values = Object.fromEntries(Object.entries(controls).map(([name, control]) => [name, control.read()]));
      talk.ask({ kind: "change", values }, {
        answered: (reply) => {
          asked = false;
          show(reply.view);
          if (again) {
            again = false;
            ask();
          }
        },
        silent: () => {
          asked = false;
          status.say("problem", `No reply yet. ${IF_NOTHING_HAPPENS}`);
        },
      });
    };
    for (const control of spec.controls) controls[control.name] = (control.options ? pick : slide)(control, ask);
    const settings = make("div", { class: "controls" }, ...Object.values(controls).map((control) => control.node));
    const table = make("table", { class: "readouts" }, make("caption", { class: "unseen" }, `${spec.title}: computed values`), readouts);
    el.append(
      make("h3", {}, spec.title), ...paragraphs(spec.intro, "note"),
      make("div", { class: "bench" }, settings, make("div", { class: "shown" }, status.node, picture, table)),
    );
    show(spec.view);
    return () => talk.close();
  },
};
