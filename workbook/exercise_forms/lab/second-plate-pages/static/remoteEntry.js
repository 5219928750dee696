/* Opens a page of the workbook as a reading page: runs it, folds its code, closes what is round it.
 *
 * Written by hand as one container of the kind that JupyterLab loads (an object with init and get), so that
 * nothing has to be built. JupyterLab's own modules come out of the scope that init is handed; the tokens
 * must be the very objects that JupyterLab uses.
 */
(() => {
  const NAME = "second-plate-pages";
  const HERE = document.currentScript.src;
  const STYLE_FILE = new URL("page.css", HERE).href;
  // A page of ours: the start page, or <number>_<folder>/<name>.ipynb, both at the top of the server's folder.
  const PAGE_PATH = /^(0_start_here|[0-9]_[a-z0-9_]+\/[a-z0-9_]+)\.ipynb$/;
  const START_PAGE = "0_start_here.ipynb";
  const ANSWERS_SAFE = "Answers that a form called saved are safe.";
  const IF_IT_STAYS = 'Press "Run the page again"; if it stays, ask your instructor.';
  const START_ANEW = "If it does not come back by itself, start it again with open.py.";
  const LOAD_ANEW = "If it does not come back by itself, load this page again.";
  const READY = "The page is ready.";
  // Cells that only carry marks for the gradebook: hidden and not run, because the forms show the marks.
  const MARK = "mark";
  const MOST_REDRAWS = 3;
  const START_BUTTON = 'button[data-commandlinker-command="notebook:run-all-cells"]';
  const NO_SHORTCUTS = "data-lm-suppress-shortcuts";

  let scope = null;

  /** Load one of JupyterLab's shared modules, the copy that is in use where there are several. */
  async function shared(name) {
    const versions = Object.values(scope[name]);
    const entry = versions.find((version) => version.loaded) ?? versions[0];
    const factory = await entry.get();
    return factory();
  }

  function isPage(panel) {
    const page = panel.context.model.getMetadata("second_plate")?.page;
    return Boolean(page) && PAGE_PATH.test(panel.context.path);
  }

  /** The first heading of a page, without what stands behind its colon. */
  function titleOf(panel) {
    const source = panel.content.widgets[0]?.model.sharedModel.getSource() ?? "";
    return source.match(/^# ([^:\n]+)/m)?.[1] ?? "";
  }

  function hasTag(cell, tag) {
    return cell.model.getMetadata("tags")?.includes(tag) ?? false;
  }

  function button(label, press) {
    const node = document.createElement("button");
    node.type = "button";
    node.textContent = label;
    node.addEventListener("click", press);
    return node;
  }

  /** The line on top of a page: where it stands, in words, and three buttons. */
  class Strip {
    constructor({ title, openStart, runAgain, showCode }) {
      this.node = document.createElement("div");
      this.node.className = "second-plate-strip";
      const name = document.createElement("span");
      name.className = "second-plate-strip-title";
      name.textContent = title;
      this.status = document.createElement("span");
      this.status.className = "second-plate-strip-status";
      this.status.setAttribute("role", "status");
      this.code = button("Show the code", () => {
        const shown = showCode();
        this.code.setAttribute("aria-pressed", String(shown));
        this.code.textContent = shown ? "Hide the code" : "Show the code";
      });
      this.code.setAttribute("aria-pressed", "false");
      const start = openStart ? [button("Start page", openStart)] : [];
      this.node.append(name, this.status, ...start, button("Run the page again", runAgain), this.code);
    }

    say(state, sentence) {
      this.node.dataset.state = state;
      this.status.textContent = sentence;
    }
  }

  /** Where the reader was, kept while the cells above are drawn again; given up when the reader moves on. */
  class ReadingPlace {
    constructor(panel) {
      this.scroller = panel.content.node.querySelector(".jp-WindowedPanel-outer");
      const top = this.scroller.getBoundingClientRect().top;
      const cells = panel.content.widgets.map((cell) => cell.node);
      this.cell = cells.find((node) => node.getBoundingClientRect().bottom > top + this.scroller.clientHeight / 3);
      this.offset = this.cell?.getBoundingClientRect().top;
      for (const event of ["wheel", "keydown", "pointerdown"]) {
        this.scroller.addEventListener(event, () => { this.cell = null; }, { once: true, passive: true });
      }
    }

    keep() {
      if (this.cell && this.scroller.scrollTop) {
        this.scroller.scrollTop += this.cell.getBoundingClientRect().top - this.offset;
      }
    }
  }

  /** One open page: runs its cells, and runs them again whenever its kernel has been started anew. */
  class OpenPage {
    constructor(panel, { CodeCell, dialogs, open, startAnew }) {
      this.panel = panel;
      this.CodeCell = CodeCell;
      this.dialogs = dialogs;
      this.startAnew = startAnew;
      this.session = panel.sessionContext;
      this.runNumber = 0;
      this.redrawn = new Map();
      this.restarting = false;
      const path = panel.context.path;
      this.strip = new Strip({
        title: titleOf(panel),
        openStart: path === START_PAGE ? null : () => open(START_PAGE),
        runAgain: () => this.runAgain(),
        showCode: () => this.showCode(),
      });
    }

    start() {
      this.panel.addClass("second-plate-page");
      for (const cell of this.panel.content.widgets) {
        if (hasTag(cell, MARK)) cell.addClass("second-plate-mark");
        if (this.isWritten(cell)) this.makeWritable(cell);
      }
      this.panel.toolbar.hide();
      this.panel.content.node.querySelector(".jp-WindowedPanel-outer").prepend(this.strip.node);
      this.session.statusChanged.connect((_, status) => this.kernelSays(status));
      this.session.connectionStatusChanged.connect((_, status) => this.connectionSays(status));
      this.dialogs.widgetAdded.connect((_, dialog) => this.answerRestart(dialog));
      this.panel.node.addEventListener("second-plate-save", (event) => {
        event.preventDefault();
        event.detail.waitFor(this.panel.context.save());
      });
      this.panel.node.addEventListener("second-plate-silent", (event) => this.redraw(event.target));
      this.panel.node.addEventListener("keydown", (event) => this.saveOnKey(event), true);
      this.panel.node.addEventListener("dblclick", (event) => this.keepRendered(event), true);
      this.panel.node.addEventListener("click", (event) => this.startOnPress(event), true);
      this.guard(true);
      this.run();
    }

    /** The page's own start button: JupyterLab would ask first whether the page is trusted. */
    startOnPress(event) {
      if (!event.target.closest(START_BUTTON)) return;
      event.preventDefault();
      event.stopPropagation();
      this.runAgain();
    }

    /** The one cell that a learner writes in. */
    isWritten(cell) {
      return cell.model.type === "markdown" && cell.model.getMetadata("nbgrader")?.solution === true;
    }

    /** Open that cell on one click, with the cursor in it; it closes when the learner goes elsewhere. */
    makeWritable(cell) {
      cell.addClass("second-plate-written");
      cell.node.addEventListener("click", () => {
        if (!cell.rendered) return;
        const notebook = this.panel.content;
        notebook.activeCellIndex = notebook.widgets.indexOf(cell);
        cell.rendered = false;
        notebook.mode = "edit";
        cell.editor?.focus();
      });
    }

    /** Keep single keys from deleting and moving the cells of a page that is only read. */
    guard(on) {
      for (const cell of this.panel.content.widgets) {
        if (on && !this.isWritten(cell)) cell.node.setAttribute(NO_SHORTCUTS, "true");
        else cell.node.removeAttribute(NO_SHORTCUTS);
      }
    }

    /** A double click on the text of a page would turn it into its source. */
    keepRendered(event) {
      const cell = this.panel.content.widgets.find((one) => one.node.contains(event.target));
      const guarded = cell?.node.hasAttribute(NO_SHORTCUTS) && cell.node.classList.contains("jp-MarkdownCell");
      if (guarded) event.stopPropagation();
    }

    /** Ctrl-S saves the page also where the other shortcuts are off. */
    saveOnKey(event) {
      if (event.key.toLowerCase() !== "s" || !(event.ctrlKey || event.metaKey)) return;
      event.preventDefault();
      event.stopPropagation();
      this.panel.context.save();
    }

    cells() {
      return this.panel.content.widgets.filter((cell) => cell instanceof this.CodeCell);
    }

    showCode() {
      const shown = this.panel.node.classList.toggle("second-plate-code-shown");
      for (const cell of this.cells()) cell.inputHidden = !shown;
      this.guard(!shown);
      return shown;
    }

    async kernelSays(status) {
      if (status === "restarting" || status === "autorestarting") {
        this.restarting = true;
        this.runNumber += 1;
        this.strip.say("busy", `The page is being started again. ${ANSWERS_SAFE}`);
      } else if (status === "idle" && this.restarting) {
        this.restarting = false;
        this.run();
      } else if (status === "dead") {
        this.strip.say("stopped", `The page has stopped. ${ANSWERS_SAFE} Press "Run the page again".`);
      }
    }

    connectionSays(status) {
      const state = this.strip.node.dataset.state;
      if (status !== "connected" && state === "ready") {
        this.strip.say("lost", `The page cannot reach the workbook. ${ANSWERS_SAFE} ${this.startAnew}`);
      } else if (status === "connected" && state === "lost") {
        this.strip.say("ready", READY);
      }
    }

    /** JupyterLab's own box on a dead kernel tells a learner nothing: the strip says what happens. */
    answerRestart(dialog) {
      const onlyToldOf = dialog.node.querySelectorAll(".jp-Dialog-button").length === 1;
      if (this.restarting && onlyToldOf) requestAnimationFrame(() => dialog.resolve(0));
    }

    async runAgain() {
      if (!this.session.session?.kernel || ["dead", "unknown"].includes(this.session.kernelDisplayStatus)) {
        await this.session.startKernel();
      }
      await this.run();
    }

    /** Run the page's cells one after the other, so that each form is drawn before the next one comes. */
    async run() {
      const number = ++this.runNumber;
      this.strip.say("busy", "The page is getting ready ...");
      await this.session.ready;
      const failures = [];
      const place = new ReadingPlace(this.panel);
      for (const cell of this.cells().filter((one) => !hasTag(one, MARK))) {
        const failure = await this.runCell(cell);
        if (number !== this.runNumber) return;
        place.keep();
        if (failure) failures.push(failure);
      }
      if (failures.length) {
        for (const { ename, evalue, message } of failures) console.error(NAME, message ?? `${ename}: ${evalue}`);
        this.strip.say("stopped", `A part of this page did not run. ${ANSWERS_SAFE} ${IF_IT_STAYS}`);
        return;
      }
      this.strip.say("ready", READY);
      for (const form of this.panel.node.querySelectorAll(".second-plate-form")) {
        form.dispatchEvent(new CustomEvent("second-plate-check"));
      }
    }

    /** Run one cell and return what went wrong, or null. */
    async runCell(cell) {
      try {
        const reply = await this.CodeCell.execute(cell, this.session);
        return reply?.content.status === "error" ? reply.content : null;
      } catch (error) {
        return error;
      }
    }

    /** Draw a form again whose line to the kernel is dead: on a slow machine its start can fail. */
    async redraw(form) {
      const cell = this.cells().find((one) => one.node.contains(form));
      const times = this.redrawn.get(cell) ?? 0;
      if (!cell || times >= MOST_REDRAWS) return;
      this.redrawn.set(cell, times + 1);
      await this.runCell(cell);
      for (const drawn of cell.node.querySelectorAll(".second-plate-form")) {
        drawn.dispatchEvent(new CustomEvent("second-plate-check"));
      }
    }
  }

  function addStyle() {
    const link = document.createElement("link");
    link.rel = "stylesheet";
    link.href = STYLE_FILE;
    document.head.append(link);
  }

  /** Close what stands round a page: side panels, their tab bars, the bar with the file's name. */
  function closeSides(shell) {
    shell.collapseLeft?.();
    shell.collapseRight?.();
    for (const side of ["left", "right"]) {
      if (shell.isSideTabBarVisible?.(side)) shell.toggleSideTabBarVisibility(side);
    }
    if (shell.isTopInSimpleModeVisible?.()) shell.toggleTopInSimpleModeVisibility();
  }

  async function extension() {
    const { INotebookTracker } = await shared("@jupyterlab/notebook");
    const { CodeCell } = await shared("@jupyterlab/cells");
    const { Dialog } = await shared("@jupyterlab/apputils");
    const { PageConfig } = await shared("@jupyterlab/coreutils");
    const startAnew = PageConfig.getOption("hubPrefix") ? LOAD_ANEW : START_ANEW;
    return {
      id: `${NAME}:plugin`,
      description: "Runs the workbook's own pages when they are opened.",
      autoStart: true,
      requires: [INotebookTracker],
      activate: (app, tracker) => {
        addStyle();
        const open = (path) => app.commands.execute("docmanager:open", { path });
        tracker.widgetAdded.connect(async (_, panel) => {
          await panel.context.ready;
          if (!isPage(panel)) return;
          closeSides(app.shell);
          new OpenPage(panel, { CodeCell, dialogs: Dialog.tracker, open, startAnew }).start();
        });
      },
    };
  }

  window._JUPYTERLAB = window._JUPYTERLAB ?? {};
  window._JUPYTERLAB[NAME] = {
    init: (sharedScope) => {
      scope = sharedScope;
    },
    get: async () => {
      const plugin = await extension();
      return () => ({ __esModule: true, default: plugin });
    },
  };
})();
