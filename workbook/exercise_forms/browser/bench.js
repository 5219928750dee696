/* The virtual bench: set the machine, weld a stud, look, pull, adjust; what was done stands in a log.
   The log holds steps and settings only. What came of them is computed by the kernel, from the log so far. */

const BENCH_STEPS = { weld: "Weld a stud", pull: "Pull it", row: "Now the row", stop: "Stop: hand this rivet to another method" };

/** Say why a step cannot be done now, or nothing. */
function notNow(step, steps, most) {
  const last = steps.at(-1)?.do;
  if (last === "row" || last === "stop") return "The work has ended. Nothing can be welded or pulled any more.";
  if (step === "pull" && last !== "weld") return last ? "This stud is pulled already. Weld another one first." : "There is no stud to pull yet. Weld one first.";
  if (step === "row" && !last) return "Weld and pull one stud before the row.";
  if ((step === "weld" || step === "pull") && steps.length >= most - 2) return "The log is full: end the work now.";
  return "";
}

function logTable() {
  const rows = make("tbody", {});
  const heads = ["Stud", "Set", "Seen", "Pull"].map((text) => make("th", { scope: "col" }, text));
  const node = make(
    "table", { class: "log", hidden: true }, make("caption", {}, "Log of this work"), make("thead", {}, make("tr", {}, ...heads)), rows,
  );
  return {
    node,
    show(studs) {
      node.hidden = !studs.length;
      rows.replaceChildren(...studs.map(({ number, set, seen, pull }) => make(
        "tr", {}, make("th", { scope: "row" }, String(number)), ...[set, seen, pull].map((text) => make("td", {}, text)),
      )));
    },
  };
}

/** The bench itself: `ask(steps, replies)` has the kernel look at a log, `changed` hears of every new step. */
function bench(spec, ask, changed) {
  let steps = [];
  let waiting = false;
  let locked = false;
  const status = statusLine();
  const picture = make("div", { class: "picture" });
  const table = logTable();
  const controls = Object.fromEntries(spec.controls.map((each) => [each.name, control(each, () => {})]));
  const reason = pick({ label: "Why you stop", options: spec.reasons, start: spec.reasons[0]?.id }, () => {});
  const show = (view, news) => {
    table.show(view.rows);
    // The kernel's own pictures: each an <img> with its alt text, made by the drawings of the workbook.
    picture.innerHTML = view.pictures.map((each) => each.html).join("");
    node.dataset.ended = view.ended;
    status.say("quiet", news ? `${view.sentence} ${news}` : view.sentence);
    mark();
  };
  const mark = () => {
    for (const [step, button] of Object.entries(buttons)) button.setAttribute("aria-disabled", String(locked || Boolean(notNow(step, steps, spec.most_steps))));
  };
  const look = (next, then = () => {}) => {
    waiting = true;
    ask(next, {
      answered: (reply) => {
        waiting = false;
        if (reply.kind !== "bench") {
          status.say("problem", reply.sentence);
          return;
        }
        steps = next;
        then();
        show(reply.view, reply.sentence);
      },
      silent: () => {
        waiting = false;
        status.say("problem", `No reply yet, so this was not done. ${IF_NOTHING_HAPPENS}`);
      },
    });
  };
  const press = (step) => {
    const refusal = locked ? "This work is finished." : notNow(step, steps, spec.most_steps);
    if (waiting) {
      status.say("busy", "The last step is still being done.");
      return;
    }
    if (refusal) {
      status.say("problem", refusal);
      return;
    }
    const settings = () => Object.fromEntries(Object.entries(controls).map(([name, each]) => [name, each.read()]));
    const more = { weld: () => ({ settings: settings() }), stop: () => ({ why: reason.read() }) }[step]?.() ?? {};
    look([...steps, { do: step, ...more }], changed);
  };
  const buttons = Object.fromEntries(Object.entries(BENCH_STEPS).map(
    ([step, label]) => [step, make("button", { type: "button", class: step === "weld" ? "main" : "", onclick: () => press(step) }, label)],
  ));
  // Enter in a setting must not save an unfinished log with the form round it.
  const keepEnter = (event) => { if (event.key === "Enter" && event.target.type === "text") { event.preventDefault(); event.stopPropagation(); } };
  const node = make(
    "div", { class: "work", onkeydown: keepEnter },
    spec.fixed.length ? make("p", { class: "note" }, `Set already, and left alone today: ${spec.fixed.join("; ")}.`) : "",
    make("div", { class: "beside" },
      make("div", { class: "controls" }, ...Object.values(controls).map((each) => each.node)),
      make("div", { class: "shown" },
        make("div", { class: "buttons" }, buttons.weld, buttons.pull), status.node, picture, table.node,
        make("div", { class: "buttons" }, buttons.row),
        make("div", { class: "buttons stopping" }, reason.node, buttons.stop))),
  );
  const setMachine = () => {
    const last = steps.findLast((step) => step.do === "weld");
    for (const each of spec.controls) controls[each.name].write(last?.settings[each.name] ?? each.start);
  };
  return {
    node,
    read: () => steps,
    /** Lay a log on the bench, with what it shows where that is known; else the kernel is asked. */
    lay(next, view) {
      if (!view) {
        look(next, setMachine);
        return;
      }
      steps = next;
      setMachine();
      show(view);
    },
    lock(shut) {
      locked = shut;
      for (const each of Object.values(controls)) each.lock(shut);
      reason.lock(shut);
      mark();
    },
    begin: () => look([], () => { setMachine(); changed(); }),
  };
}
