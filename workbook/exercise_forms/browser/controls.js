/* Settings of an explorer, a bench or a caliper: each with its label, each to be used without a mouse. */

/** A slider beside a text field: the same value twice, because not everybody can drag. */
function slide(spec, changed) {
  const id = newId("setting");
  const range = make("input", {
    type: "range", min: spec.low, max: spec.high, step: spec.step, value: spec.start, "aria-label": `${spec.label}, slider`,
  });
  const text = make("input", { id, type: "text", autocomplete: "off", value: String(spec.start) });
  const follow = () => {
    const value = numberIn(text.value);
    if (Number.isFinite(value)) range.value = String(value);
  };
  range.addEventListener("input", () => { text.value = range.value; changed(); });
  text.addEventListener("input", () => { follow(); changed(); });
  return {
    node: make(
      "div", { class: "control" }, make("label", { for: id }, spec.label),
      make("div", { class: "both" }, range, text, make("span", { class: "unit" }, spec.unit)),
    ),
    read: () => text.value,
    write: (value) => { text.value = value; follow(); },
    lock: (locked) => { text.readOnly = locked; range.disabled = locked; },
  };
}

/** The number that a text begins with, with a decimal point or comma; NaN where there is none. */
function numberIn(text) {
  return Number.parseFloat(text.trim().replace("\u2212", "-").replace(",", "."));
}

/** One of a few things; an option is a text, or an id with its text. */
function pick(spec, changed) {
  const id = newId("setting");
  const options = spec.options.map((option) => (option.id ? option : { id: option, text: option }));
  const select = make("select", { id, onchange: changed }, ...options.map(
    (option) => make("option", { value: option.id, selected: option.id === spec.start }, option.text),
  ));
  return {
    node: make("div", { class: "control" }, make("label", { for: id }, spec.label), select),
    read: () => select.value,
    write: (value) => { select.value = value; },
    lock: (locked) => { select.disabled = locked; },
  };
}

function control(spec, changed) {
  return (spec.options ? pick : slide)(spec, changed);
}
