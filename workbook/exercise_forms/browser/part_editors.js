/* Fields for every kind of part: made of native inputs, each with its label. */

/** Fields of one text each, for a number with its unit. */
function textField(label, hint, changed) {
  const id = newId("field");
  const input = make("input", {
    id, type: "text", autocomplete: "off", autocapitalize: "off", spellcheck: "false",
    "aria-describedby": hint ? `${id}-hint` : null, oninput: changed,
  });
  const node = make(
    "div", { class: "field" },
    make("label", { for: id }, label), input,
    hint ? make("span", { id: `${id}-hint`, class: "hint" }, hint) : null,
  );
  return { node, input };
}

function unitHint(unit) {
  return unit ? `a number with its unit (${unit})` : "a number";
}

function group(part, ...children) {
  return make("fieldset", { class: `part-fields ${part.kind}` }, make("legend", {}, part.ask), ...children);
}

/* Every maker below returns { node, read, write, lock, say }: read gives exactly what a submission carries. */
const PART_MAKERS = {
  number(part, changed) {
    const { node, input } = textField(part.ask, unitHint(part.unit), changed);
    return {
      node: make("div", { class: "part-fields number" }, node),
      read: () => input.value,
      write: (value) => { input.value = value ?? ""; },
      lock: (locked) => { input.readOnly = locked; },
      say: (value) => value,
    };
  },

  range(part, changed) {
    const low = textField("Lowest", unitHint(part.unit), changed);
    const high = textField("Highest", unitHint(part.unit), changed);
    return {
      node: group(part, make("div", { class: "pair" }, low.node, high.node)),
      read: () => ({ low: low.input.value, high: high.input.value }),
      write: (value) => {
        low.input.value = value?.low ?? "";
        high.input.value = value?.high ?? "";
      },
      lock: (locked) => { low.input.readOnly = high.input.readOnly = locked; },
      say: (value) => `lowest ${value.low || "empty"}, highest ${value.high || "empty"}`,
    };
  },

  choice(part, changed) {
    return choosing(part, changed, "radio", "", {
      read: (inputs) => inputs.find((input) => input.checked)?.value ?? "",
      holds: (value, id) => value === id,
      say: (value) => textOf(part.options, value),
    });
  },

  choices(part, changed) {
    return choosing(part, changed, "checkbox", "Tick every one that fits.", {
      read: (inputs) => inputs.filter((input) => input.checked).map((input) => input.value),
      holds: (value, id) => Array.isArray(value) && value.includes(id),
      say: (value) => (value.length ? value.map((id) => textOf(part.options, id)).join("; ") : "none ticked"),
    });
  },

  order(part, changed) {
    let order = part.options.map((option) => option.id);
    let moved = false;
    let locked = false;
    const list = make("ol", {});
    const news = make("p", { class: "unseen", role: "status", "aria-live": "polite" });
    const move = (id, step) => {
      const from = order.indexOf(id);
      const to = from + step;
      if (to < 0 || to >= order.length) return;
      order.splice(from, 1);
      order.splice(to, 0, id);
      moved = true;
      draw();
      const buttons = [...list.children[to].querySelectorAll("button")];
      const pressed = buttons[step < 0 ? 0 : 1];
      (pressed.disabled ? buttons.find((button) => !button.disabled) : pressed).focus();
      news.textContent = `${textOf(part.options, id)}: now number ${to + 1} of ${order.length}.`;
      changed();
    };
    const draw = () => {
      list.replaceChildren(...order.map((id, place) => {
        const text = textOf(part.options, id);
        const mover = (label, step, end) => make(
          "button",
          { type: "button", "aria-label": `${label}: ${text}`, disabled: locked || end, onclick: () => move(id, step) },
          label,
        );
        return make(
          "li", { "data-option": id },
          make("span", { class: "order-text" }, text),
          make("span", { class: "order-buttons" },
            mover("Move up", -1, place === 0), mover("Move down", 1, place === order.length - 1)),
        );
      }));
    };
    draw();
    return {
      node: group(part, make("p", { class: "hint" }, "First comes on top."), list, news),
      read: () => (moved ? [...order] : []),
      write: (value) => {
        moved = Array.isArray(value) && value.length > 0;
        order = moved ? [...value] : part.options.map((option) => option.id);
        draw();
      },
      lock: (shut) => {
        if (locked !== shut) {
          locked = shut;
          draw();
        }
      },
      say: (value) => (value.length ? value.map((id, place) => `${place + 1}. ${textOf(part.options, id)}`).join(" ") : "not put in order yet"),
    };
  },

  verdicts(part, changed) {
    const rows = part.rows.map((row) => ({ ...row, ...radios("radio", part.verdicts, changed) }));
    return {
      node: group(part, ...rows.map((row) => make(
        "fieldset", { class: "row", "data-row": row.id },
        make("legend", {}, row.text), make("div", { class: "side-by-side" }, ...row.labels),
      ))),
      read: () => Object.fromEntries(
        rows.map((row) => [row.id, row.inputs.find((input) => input.checked)?.value]).filter(([, verdict]) => verdict),
      ),
      write: (value) => {
        for (const row of rows) for (const input of row.inputs) input.checked = value?.[row.id] === input.value;
      },
      lock: (locked) => {
        for (const input of rows.flatMap((row) => row.inputs)) input.disabled = locked;
      },
      say: (value) => part.rows
        .map((row) => `${row.text}: ${value[row.id] ? textOf(part.verdicts, value[row.id]) : "no verdict"}`).join("; "),
    };
  },
};

function textOf(options, id) {
  return options.find((option) => option.id === id)?.text ?? String(id);
}

/** Radio buttons or tick boxes of one name, each inside its label. */
function radios(type, options, changed) {
  const name = newId("choice");
  const inputs = options.map((option) => make("input", { type, name, value: option.id, onchange: changed }));
  const labels = options.map((option, place) => make("label", { class: "option" }, inputs[place], make("span", {}, option.text)));
  return { inputs, labels };
}

/** One or several of the options, under one legend. */
function choosing(part, changed, type, hint, { read, holds, say }) {
  const { inputs, labels } = radios(type, part.options, changed);
  return {
    node: group(part, hint ? make("p", { class: "hint" }, hint) : null, ...labels),
    read: () => read(inputs),
    write: (value) => {
      for (const input of inputs) input.checked = holds(value, input.value);
    },
    lock: (locked) => {
      for (const input of inputs) input.disabled = locked;
    },
    say,
  };
}
