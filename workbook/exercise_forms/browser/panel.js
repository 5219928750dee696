/* An explorer: change a setting, see what the library computes from it. The newest setting always wins. */

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
      const values = Object.fromEntries(Object.entries(controls).map(([name, each]) => [name, each.read()]));
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
    for (const each of spec.controls) controls[each.name] = control(each, ask);
    const settings = make("div", { class: "controls" }, ...Object.values(controls).map((each) => each.node));
    const table = make("table", { class: "readouts" }, make("caption", { class: "unseen" }, `${spec.title}: computed values`), readouts);
    el.append(
      make("h3", {}, spec.title), ...paragraphs(spec.intro, "note"),
      make("div", { class: "beside" }, settings, make("div", { class: "shown" }, status.node, picture, table)),
    );
    show(spec.view);
    return () => talk.close();
  },
};
