/* One button that makes the hand-in file and says where it lies. */

const SAVE_YOURSELF =
  "If you wrote in the page itself, save it with Ctrl and S and press the button again: only what is saved is handed in.";

/** Ask the page to save itself, so that the written answer in it travels too; tell whether somebody did. */
async function savePage(el) {
  let saved = Promise.resolve();
  const event = new CustomEvent("second-plate-save", {
    bubbles: true, cancelable: true, detail: { waitFor: (promise) => { saved = promise; } },
  });
  const heard = !el.dispatchEvent(event);
  await saved;
  return heard;
}

/** Say in how many exercises something was changed and not saved: that does not travel. */
function unsavedNote() {
  const count = document.querySelectorAll(".second-plate-form.exercise:has(.saved-text.unsaved)").length;
  if (!count) return "";
  return `Not in the file: what you changed and did not save in ${count} exercise${count > 1 ? "s" : ""} of this page.`;
}

export default {
  render({ model, el }) {
    takeOver(el, "hand-in");
    const talk = line(model, el);
    const status = statusLine();
    const where = make("div", {});
    const problem = (sentence) => status.say("problem", sentence);
    const press = async () => {
      where.replaceChildren();
      status.say("busy", "Making the file ...");
      let pageSaved = false;
      try {
        pageSaved = await savePage(el);
      } catch (error) {
        problem(`The page itself could not be saved, so no file was made: ${error.message}`);
        return;
      }
      talk.ask({ kind: "hand in" }, {
        answered: (reply) => {
          status.say(reply.kind, reply.sentence);
          if (reply.kind !== "saved") return;
          where.replaceChildren(
            make("p", {}, "File: ", make("strong", { class: "file" }, reply.file)),
            make("p", {}, "Folder: ", make("strong", { class: "folder" }, reply.folder)),
            make("p", { class: "warning" }, unsavedNote()),
            make("p", { class: "note" }, pageSaved ? reply.next : `${reply.next} ${SAVE_YOURSELF}`),
          );
        },
        silent: () => problem(`No reply yet, so no file is made yet. ${IF_NOTHING_HAPPENS}`),
      });
    };
    el.append(
      make("h3", {}, "Hand in"),
      ...paragraphs(model.get("state").notes, "note"),
      make("div", { class: "buttons" }, make("button", { type: "button", class: "main", onclick: press }, "Make the hand-in file"), status.node),
      where,
    );
    return () => talk.close();
  },
};
