/* Work at the bench as a part of an exercise: its log is the answer. */

function countText(count, thing) {
  return `${count} ${thing}${count === 1 ? "" : "s"}`;
}

PART_MAKERS.bench = (part, changed, { askBench }) => {
  if (!part.controls.length) return { node: group(part, make("p", { class: "warning" }, "The bench cannot be shown; please tell your instructor.")), read: () => null, write: () => {}, lock: () => {}, say: () => "a log" };
  const works = bench(part, (steps, replies) => askBench(part, steps, replies), changed);
  const again = make("button", { type: "button", hidden: true, onclick: () => works.begin() }, "Begin a new log");
  const hint = make("p", { class: "hint" }, "When the work has ended, press \"Save my answer\". The log is kept until then, also if the page is closed.");
  return {
    node: group(part, works.node, hint, make("div", { class: "buttons" }, again)),
    read: works.read,
    write: (value) => works.lay(value ?? [], same(value ?? [], part.steps) ? part.view : null),
    lock: works.lock,
    // A log grows only; a new one can be begun once the old one was saved and judged.
    update: (spec) => {
      const ended = ["row", "stop"].includes(spec.saved?.at?.(-1)?.do);
      again.hidden = spec.finished || !ended || !same(works.read(), spec.saved);
    },
    say: (steps) => {
      const count = (step) => steps.filter((each) => each.do === step).length;
      const end = { row: "then the row", stop: "then stopped" }[steps.at(-1)?.do] ?? "not ended yet";
      return `${countText(count("weld"), "stud")} welded, ${count("pull")} pulled, ${end}`;
    },
  };
};
