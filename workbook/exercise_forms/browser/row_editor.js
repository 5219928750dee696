/* A plan for a whole row: a few whole numbers, and a button that runs them on the row of the day.
   The answer is the plan alone. What comes of the row is computed by the kernel. */

function rowTable() {
  const rows = make("tbody", {});
  const heads = ["Rivet", "How", "What came of it"].map((text) => make("th", { scope: "col" }, text));
  const table = make(
    "table", { class: "log" }, make("caption", {}, "The row, rivet by rivet"), make("thead", {}, make("tr", {}, ...heads)), rows,
  );
  const node = make("details", { hidden: true }, make("summary", {}, "The row as a table"), table);
  return {
    node,
    show(lines) {
      node.hidden = !lines.length;
      rows.replaceChildren(...lines.map(({ number, how, came }) => make(
        "tr", {}, make("th", { scope: "row" }, String(number)), make("td", {}, how), make("td", {}, came),
      )));
    },
  };
}

PART_MAKERS.row_run = (part, changed, { askRow }) => {
  const status = statusLine();
  const pictures = make("div", { class: "picture" });
  const table = rowTable();
  let waiting = false;
  const edited = () => {
    status.say("quiet", pictures.childElementCount ? "The run below is of an earlier plan." : "");
    changed();
  };
  const fields = part.fields.map((spec) => ({ ...spec, ...textField(spec.label, spec.hint, edited) }));
  const read = () => Object.fromEntries(fields.map(({ name, input }) => [name, input.value]));
  const show = (view) => {
    // The kernel's own pictures: each an <img> with its alt text, made by the drawings of the workbook.
    pictures.innerHTML = view.pictures.map((each) => each.html).join("");
    table.show(view.rows);
    status.say("quiet", view.sentence);
  };
  const runRow = () => {
    if (waiting) return;
    waiting = true;
    status.say("busy", "Running the row ...");
    askRow(part, read(), {
      answered: (reply) => {
        waiting = false;
        if (reply.kind === "row") show(reply.view);
        else status.say("problem", reply.sentence);
      },
      silent: () => {
        waiting = false;
        status.say("problem", `No reply yet, so nothing was run. ${IF_NOTHING_HAPPENS}`);
      },
    });
  };
  const button = make("button", { type: "button", onclick: runRow }, "Run this plan on today's row");
  return {
    node: group(
      part, ...fields.map(({ node }) => node),
      make("div", { class: "work" }, make("div", { class: "buttons" }, button), status.node, pictures, table.node),
    ),
    read,
    write: (value) => {
      for (const { name, input } of fields) input.value = value?.[name] ?? "";
    },
    lock: (locked) => {
      for (const { input } of fields) input.readOnly = locked;
    },
    say: (value) => fields.map(({ name, label }) => `${label}: ${value[name] || "nothing"}`).join("; "),
  };
};
