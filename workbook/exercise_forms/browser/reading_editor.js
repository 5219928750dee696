/* A distance read off the figure: two caliper lines, moved by slider, by typing, by arrow keys or by dragging. */

const CALIPER_STEP_MM = 0.01;

/** Where a place of the drawing lies in the picture, in per cent from its left or upper edge; and back. */
function ruler(axis, frame) {
  const { x0_mm: left, x1_mm: right, y0_mm: bottom, y1_mm: top } = frame;
  return axis === "horizontal"
    ? { percent: (mm) => (100 * (mm - left)) / (right - left), mm: (share) => left + share * (right - left) }
    : { percent: (mm) => (100 * (top - mm)) / (top - bottom), mm: (share) => top - share * (top - bottom) };
}

function clamp(value, [low, high]) {
  return Math.min(Math.max(value, low), high);
}

/** The figure with its two lines over it; `places` gives where they stand, `moveTo` is told where one is dragged. */
function caliperPicture(part, figure, places, moveTo) {
  const picture = make("div", { class: "measured" });
  picture.innerHTML = figure.html ?? "";
  const lines = ["1", "2"].map((name) => make("div", { class: `caliper ${part.axis}`, "aria-hidden": true }, make("span", {}, name)));
  if (!figure.frame) return { node: picture, draw: () => {} };
  const scale = ruler(part.axis, figure.frame);
  const side = part.axis === "horizontal" ? "left" : "top";
  const draw = () => places().forEach((mm, place) => {
    lines[place].hidden = !Number.isFinite(mm);
    lines[place].style[side] = `${clamp(scale.percent(mm), [0, 100])}%`;
  });
  const under = (event) => {
    const box = picture.getBoundingClientRect();
    return scale.mm(part.axis === "horizontal" ? (event.clientX - box.left) / box.width : (event.clientY - box.top) / box.height);
  };
  let held = null;
  picture.addEventListener("pointerdown", (event) => {
    const mm = under(event);
    const far = places().map((place) => Math.abs(place - mm));
    held = far[1] < far[0] ? 1 : 0;
    picture.setPointerCapture(event.pointerId);
    event.preventDefault();
    moveTo(held, mm);
  });
  picture.addEventListener("pointermove", (event) => { if (held !== null) moveTo(held, under(event)); });
  for (const end of ["pointerup", "pointercancel"]) picture.addEventListener(end, () => { held = null; });
  picture.append(...lines);
  return { node: picture, draw };
}

PART_MAKERS.reading = (part, changed, { figure }) => {
  const [low, high] = part.span;
  const starts = [low + (high - low) / 4, high - (high - low) / 4].map((mm) => mm.toFixed(2));
  let moved = false;
  let locked = false;
  const distance = make("p", { class: "distance", role: "status", "aria-live": "polite" });
  const places = () => lines.map((line) => numberIn(line.read()));
  const show = () => {
    const [first, second] = places();
    const apart = Math.abs(second - first);
    picture.draw();
    distance.textContent = Number.isFinite(apart) && moved ? `The lines are ${apart.toFixed(2)} ${part.unit} apart.` : "Move the lines.";
  };
  const edited = () => {
    moved = true;
    show();
    changed();
  };
  const lines = starts.map((start, place) => slide(
    { label: `Line ${place + 1}`, unit: part.unit, low, high, step: CALIPER_STEP_MM, start }, edited,
  ));
  const picture = caliperPicture(part, figure, places, (place, mm) => {
    if (locked) return;
    lines[place].write(clamp(mm, part.span).toFixed(2));
    edited();
  });
  return {
    node: group(part, picture.node, make("div", { class: "controls" }, ...lines.map((line) => line.node)), distance),
    read: () => (moved ? { from: lines[0].read(), to: lines[1].read() } : {}),
    write: (value) => {
      moved = Boolean(value && "from" in value);
      ["from", "to"].forEach((name, place) => lines[place].write(moved ? value[name] ?? "" : starts[place]));
      show();
    },
    lock: (shut) => {
      locked = shut;
      for (const line of lines) line.lock(shut);
    },
    say: (value) => `lines at ${value.from || "nothing"} and ${value.to || "nothing"}`,
  };
};
