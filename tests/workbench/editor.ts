import { mkdirSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Locator, Page } from "playwright-core";
import { type OpenedPage, openPage } from "./browser";
import { readRows } from "./list";
import { type Server, type ServerOptions, startServer } from "./server";
import { findTools } from "./tools";

/**
 * One entry of the Problems view, which lists the whole workspace. `file` is a name without its folder;
 * `severity` is "error", "warning" or "info"; places count from 1.
 */
export interface Problem {
  readonly file: string;
  readonly severity: string;
  readonly message: string;
  readonly source: string;
  readonly code: string;
  readonly line: number;
  readonly column: number;
}

/** One squiggle in the open file. `severity` is "error", "warning", "info" or "hint"; lines count from 1. */
export interface Squiggle {
  readonly severity: string;
  readonly line: number;
}

/** One row of the Outline view; the record's own sections are at level 1. */
export interface OutlineRow {
  readonly name: string;
  readonly level: number;
}

/**
 * Where a text is looked for: its first occurrence, or its first one after the end of another text. The
 * search goes on from the top when it comes to the end of the file, and takes no note of upper case.
 */
export interface Search {
  readonly after?: string;
}

type Box = NonNullable<Awaited<ReturnType<Locator["boundingBox"]>>>;

/** One entry of the list of completions. */
const suggestedRow = ".suggest-widget.visible .monaco-list-row";
/** The list that the light bulb opens. */
const quickFixList = ".action-widget:not(.action-list-submenu-panel)";
const yes = () => true;
const no = () => false;
const shots = fileURLToPath(new URL("shots/", import.meta.url));
const startLimit = 90_000;
/** Generous, for a machine that has much else to do: nothing waits so long where all is well. */
const stepLimit = 60_000;
const findLimit = 10_000;
const closeLimit = 1_000;
const hoverLimit = 2_000;
const hoverTries = 5;
const pickLimit = 6_000;
const pickTries = 10;
const undoLimit = 50;
const typingDelay = 15;

const group = ".editor-group-container.active";
const openedFile = `${group} .editor-instance`;
/** The hover over the text of a file; the workbench's own tooltips have the other class. */
const shownHover = ".monaco-hover:not(.hidden, .workbench-hover):visible .monaco-hover-content";

/**
 * The editor's workbench with one extension installed and a copy of one folder open, as a user sees it.
 * A method that reads tells what is shown now, so a test polls it; a method that acts waits until its
 * action has shown, and throws where that does not happen.
 */
export class Editor {
  readonly page: Page;
  readonly #opened: OpenedPage;
  readonly #server: Server;

  constructor(opened: OpenedPage, server: Server) {
    this.page = opened.page;
    this.#opened = opened;
    this.#server = server;
  }

  /** The copied folder; what the editor saves lands here. */
  get workspace(): string {
    return this.#server.workspace;
  }

  /** Addresses outside of loopback that were asked for. A good run has none. */
  get blocked(): readonly string[] {
    return this.#opened.blocked;
  }

  /** Errors that nothing in the page caught. A good run has none. */
  get pageErrors(): readonly string[] {
    return this.#opened.errors;
  }

  /** What the workbench wrote to the browser's console; what went wrong in the extension is among it. */
  get console(): readonly string[] {
    return this.#opened.console;
  }

  /** Runs a command of the command palette by its full English title. */
  async command(title: string): Promise<void> {
    await this.#pick("F1", `>${title}`, `[aria-label="${title}"], [aria-label^="${title}, "]`);
    await this.page.locator(".quick-input-widget").waitFor({ state: "hidden" });
  }

  /** Runs a command that asks for something in the place where it was typed. */
  async commandThatAsks(title: string, question: string): Promise<void> {
    await this.#pick("F1", `>${title}`, `[aria-label="${title}"], [aria-label^="${title}, "]`);
    await this.page.locator(`.quick-input-widget input[placeholder^="${question}"]`).waitFor();
  }

  /** Runs a command of the command palette with keys alone. */
  async commandByKeys(title: string): Promise<void> {
    await this.page.keyboard.press("F1");
    await this.#pickByKeys(title, `[aria-label="${title}"], [aria-label^="${title}, "]`);
  }

  /** Opens a file of the workspace by its name, with keys alone. */
  async openByKeys(name: string): Promise<void> {
    await this.page.keyboard.press("Control+p");
    await this.#pickByKeys(name, `[aria-label^="${name}"]`);
    await this.page.locator(`${openedFile}[aria-label^="${name}"] .view-line`).first().waitFor();
  }

  /** Opens a file of the workspace by its name, or by its path where names repeat. */
  async open(file: string): Promise<void> {
    const name = basename(file);
    const folder = dirname(file);
    const row = folder === "." ? name : `${name} ${folder},`;
    await this.#pick("Control+p", file, `[aria-label^="${row}"]`);
    await this.page.locator(".quick-input-widget").waitFor({ state: "hidden" });
    await this.page.locator(`${group} .tab.active[data-resource-name="${name}"]`).waitFor();
    await this.page.locator(`${openedFile}[aria-label^="${name}"] .view-line`).first().waitFor();
  }

  /** Closes the open file and drops what was typed. */
  async discard(): Promise<void> {
    const tab = this.page.locator(`${group} .tab.active`);
    const name = await tab.getAttribute("data-resource-name");
    await this.command("View: Revert and Close Editor");
    await this.page.locator(`${group} .tab[data-resource-name="${name}"]`).waitFor({ state: "detached" });
  }

  /** The language that the editor takes the open file for, e.g. "yaml". */
  async language(): Promise<string | null> {
    return this.page.locator(openedFile).getAttribute("data-mode-id");
  }

  /** Selects a text of the open file and scrolls to it. The text lies within one line. */
  async select(text: string, { after }: Search = {}): Promise<void> {
    await this.page.keyboard.press("Control+1");
    await this.page.keyboard.press("Control+Home");
    if (after !== undefined) await this.#find(after);
    await this.#find(text);
  }

  /** Types at the cursor, over what is selected. */
  async type(text: string): Promise<void> {
    await this.page.keyboard.type(text, { delay: typingDelay });
  }

  async replace(text: string, by: string, search?: Search): Promise<void> {
    await this.select(text, search);
    await this.type(by);
  }

  /** Undoes until the file is as it was saved. */
  async undo(): Promise<void> {
    await this.page.keyboard.press("Control+1");
    const changed = this.page.locator(`${group} .tab.active.dirty`);
    for (let presses = 0; (await changed.count()) > 0; presses += 1) {
      if (presses === undoLimit) throw new Error(`The file was still changed after ${undoLimit} undos`);
      await this.page.keyboard.press("Control+z");
      await this.page.waitForTimeout(50);
    }
  }

  async squiggles(): Promise<Squiggle[]> {
    return this.page.locator(openedFile).evaluate((file) => {
      const middle = (box: { top: number; height: number }) => box.top + box.height / 2;
      const numbers = [...file.querySelectorAll(".margin-view-overlays .line-numbers")];
      return [...file.querySelectorAll(".view-overlays [class*=squiggly-]")].map((mark) => {
        const at = middle(mark.getBoundingClientRect());
        const number = numbers.find((one) => {
          const box = one.getBoundingClientRect();
          return box.top <= at && at <= box.bottom;
        });
        return {
          severity: /squiggly-(\w+)/.exec(mark.className)?.[1] ?? "",
          line: Number(number?.textContent),
        };
      });
    });
  }

  /** The entries of the Problems view, which it opens when it is not shown. */
  async problems(): Promise<Problem[]> {
    const list = await this.#view(".markers-panel", "Problems: Focus on Problems View");
    // Until it shows either, the view has not made up its mind.
    await this.page
      .locator(".markers-panel :is(.monaco-list-row, .message-box-container):visible")
      .first()
      .waitFor();
    const rows = await readRows(list, {
      file: ".label-name",
      message: ".marker-message",
      source: ".marker-source",
      code: ".marker-code",
      place: ".marker-line",
    });
    let file = "";
    return rows.flatMap((row) => {
      // A row for the file comes before the rows of its entries.
      if (row.level === 1) file = row.file;
      if (row.level !== 2) return [];
      const { label, message, source, code, place } = row;
      const severity = label.slice(0, label.indexOf(":")).toLowerCase();
      const [, line, column] = /Ln (\d+), Col (\d+)/.exec(place) ?? [];
      return [{ file, severity, message, source, code, line: Number(line), column: Number(column) }];
    });
  }

  /** The rows of the Outline view, which it opens when it is not shown. */
  async outline(): Promise<OutlineRow[]> {
    const list = await this.#view(".outline-pane", "Explorer: Focus on Outline View");
    const rows = await readRows(list, { name: ".label-name" });
    return rows.map(({ name, level }) => ({ name, level }));
  }

  /** What is offered at the cursor, from the top as far as it is shown; asks for it where no list is open. */
  async suggestions(): Promise<string[]> {
    const rows = this.page.locator(suggestedRow);
    // While the list is open, the same keys would open and shut what it tells of one entry.
    if (!(await rows.first().isVisible())) await this.page.keyboard.press("Control+Space");
    await rows.first().waitFor();
    return this.suggested();
  }

  /** What the editor offers by itself at the cursor; nothing while no list is open. */
  async suggested(): Promise<string[]> {
    return this.page
      .locator(suggestedRow)
      .evaluateAll((all) => all.map((row) => row.getAttribute("aria-label") ?? ""));
  }

  /** Puts the cursor behind a text of the open file. */
  async goBehind(text: string, search?: Search): Promise<void> {
    await this.select(text, search);
    await this.page.keyboard.press("ArrowRight");
  }

  /** Gives the thing at the cursor another name. */
  async rename(name: string): Promise<void> {
    await this.page.keyboard.press("F2");
    const box = this.page.locator(".rename-box input").first();
    await box.waitFor();
    await box.fill(name);
    await this.page.keyboard.press("Enter");
    await box.waitFor({ state: "hidden" });
  }

  /** The rows of the view of installs, as a screen reader tells them; opens it when it is not shown. */
  async installs(): Promise<string[]> {
    await this.command("Explorer: Focus on Installs View");
    const rows = this.page.locator(".customview-tree .monaco-list-row");
    await rows.first().waitFor();
    return rows.evaluateAll((all) => all.map((row) => row.getAttribute("aria-label") ?? ""));
  }

  /** Rests the pointer on a text of the open file until a hover shows. */
  async hoverOn(text: string, search?: Search): Promise<void> {
    await this.select(text, search);
    const word = await this.#selectionBox();
    await this.page.keyboard.press("ArrowRight");
    for (let tries = 0; tries < hoverTries; tries += 1) {
      // A hover asked for before the language server was ready stays away until the pointer comes anew.
      await this.page.mouse.move(word.x, 1);
      await this.page.mouse.move(word.x + word.width / 2, word.y + word.height / 2, { steps: 4 });
      const came = this.page.locator(shownHover).filter({ hasText: /\S/ }).first();
      if (await came.waitFor({ timeout: hoverLimit }).then(yes, no)) return;
    }
    throw new Error(`No hover came on: ${text}`);
  }

  /** Titles of the quick fixes offered at the cursor, whose list it leaves open. */
  async quickFixes(): Promise<string[]> {
    const rows = this.page.locator(`${quickFixList} .monaco-list-row.action`);
    if (!(await rows.first().isVisible())) {
      await this.page.keyboard.press("Control+.");
      await rows.first().waitFor({ timeout: findLimit }).catch(no);
    }
    return (await rows.allInnerTexts()).map((title) => title.trim());
  }

  /** Makes the edit of one of the quick fixes in the open list. */
  async takeQuickFix(title: string): Promise<void> {
    const row = this.page.locator(`${quickFixList} .monaco-list-row.action`).filter({ hasText: title });
    await row.first().click();
    await this.page.locator(quickFixList).waitFor({ state: "hidden" });
  }

  async save(): Promise<void> {
    await this.page.keyboard.press("Control+s");
    await this.page.locator(`${group} .tab.active.dirty`).waitFor({ state: "detached" });
  }

  /** What the language status says while it is open; leaves it open. */
  async languageStatus(): Promise<string> {
    const shown = this.page.locator(".hover-language-status");
    if (!(await shown.first().isVisible())) {
      await this.page.locator('[id="status.languageStatus"] a').click();
      await shown.first().waitFor();
    }
    return (await shown.allInnerTexts()).join("\n");
  }

  /** What the hover says. Its parts come one by one. */
  async hover(): Promise<string> {
    return (await this.page.locator(shownHover).allInnerTexts()).join("\n");
  }

  /** The text of the page that an extension shows in a tab of its own; nothing while there is none. */
  async panelText(): Promise<string> {
    // The page stands in a frame of its own, in one that keeps it apart from the workbench.
    const page = this.page.frameLocator("iframe.webview").frameLocator("iframe#active-frame");
    return (await page.locator("h1, h2, h3, p, td, li, summary").allInnerTexts()).join("\n");
  }

  /** What the tabs are called that are open, those beside each other included. */
  async tabs(): Promise<string[]> {
    return this.page.locator(".editor-group-container .tab .label-name").allInnerTexts();
  }

  /** The lines of the open comparison of two texts that are new in the later one. */
  async newLines(): Promise<string[]> {
    return this.page.locator(".monaco-diff-editor .editor.modified").evaluate((editor) => {
      const top = (element: Element) => Math.round(element.getBoundingClientRect().top);
      const marks = [...editor.querySelectorAll(".view-overlays .line-insert")].map(top);
      const lines = [...editor.querySelectorAll(".lines-content .view-line")];
      return lines.filter((line) => marks.includes(top(line))).map((line) => line.textContent.trim());
    });
  }

  /** The messages that popped up over the workbench, gone from sight or not. */
  async notifications(): Promise<string[]> {
    await this.command("Notifications: Show Notifications");
    const centre = this.page.locator(".notifications-center.visible");
    await centre.waitFor();
    const messages = await centre.locator(".notification-list-item-message").allInnerTexts();
    await this.command("Notifications: Hide Notifications");
    await centre.waitFor({ state: "hidden" });
    return messages;
  }

  /** What the cursor stands in: "Ln 12, Col 5", or how much is selected. */
  async cursor(): Promise<string> {
    return (await this.page.locator('[id="status.editor.selection"]').allInnerTexts()).join("");
  }

  /** What the box says that stands in the text after a step to the next problem. */
  async problemBox(): Promise<string> {
    return (await this.page.locator(".marker-widget .descriptioncontainer").allInnerTexts()).join("\n");
  }

  /** Keeps `shots/<name>-light.png` and `shots/<name>-dark.png`. */
  async screenshot(name: string): Promise<void> {
    for (const [colorScheme, shown] of [
      ["dark", ":is(.vs-dark, .hc-black)"],
      ["light", ":is(.vs, .hc-light)"],
    ] as const) {
      await this.page.emulateMedia({ colorScheme });
      await this.page.locator(`.monaco-workbench${shown}`).waitFor();
      await this.page.screenshot({ path: join(shots, `${name}-${colorScheme}.png`), animations: "disabled" });
    }
  }

  /** What the editor's server wrote since its start. */
  serverLog(): string {
    return this.#server.log();
  }

  /** Ends the browser and the server, drops the copied folder and keeps their logs in `shots/`. */
  async stop(): Promise<void> {
    try {
      await this.#opened.close();
    } finally {
      await this.#server.stop();
    }
    mkdirSync(shots, { recursive: true });
    writeFileSync(join(shots, "server.log"), this.serverLog());
    writeFileSync(join(shots, "browser.log"), this.#opened.console.join("\n"));
  }

  /** Calls the box at the top of the workbench, fills it and takes the row that it offers. */
  async #pick(keys: string, entry: string, row: string): Promise<void> {
    const box = this.page.locator(".quick-input-widget");
    // By a key: under a pointer the rows change places, as what was opened before is listed until others are found.
    const offered = box.locator(`.quick-input-list .monaco-list-row.focused:is(${row})`);
    for (let tries = 1; ; tries += 1) {
      await this.page.keyboard.press(keys);
      try {
        await box.locator(".quick-input-box input").fill(entry, { timeout: pickLimit });
        await offered.waitFor({ timeout: pickLimit });
        await this.page.keyboard.press("Enter");
        return;
      } catch (problem) {
        // Called while a file is being opened, the box goes again with the focus that the file takes.
        if (tries === pickTries) throw problem;
        // In a box that is still open the same keys would go to the next row, and take it.
        for (let presses = 0; presses < 3 && (await box.isVisible()); presses += 1)
          await this.page.keyboard.press("Escape");
      }
    }
  }

  async #pickByKeys(entry: string, row: string): Promise<void> {
    const box = this.page.locator(".quick-input-widget");
    await box.waitFor();
    await this.type(entry);
    await box.locator(`.quick-input-list .monaco-list-row.focused:is(${row})`).waitFor();
    await this.page.keyboard.press("Enter");
    await box.waitFor({ state: "hidden" });
  }

  /** Selects the next occurrence, from the cursor on, with the editor's own search. */
  async #find(text: string): Promise<void> {
    await this.page.keyboard.press("Control+f");
    const widget = this.page.locator(`${group} .find-widget.visible`);
    const count = widget.locator(".matchesCount");
    const input = widget.locator(".find-part textarea");
    // Emptied first, so that the count which follows is of this search and not of the one before.
    await input.fill("");
    await count.filter({ hasText: "No results" }).waitFor();
    await input.fill(text);
    await count
      .filter({ hasText: /\d+ of \d+/ })
      .waitFor({ timeout: findLimit })
      .catch((cause: unknown) => {
        throw new Error(`Not in the open file: ${text}`, { cause });
      });
    // A hover that happens to show takes the first Escape for itself.
    for (let presses = 0; presses < 3 && (await widget.isVisible()); presses += 1) {
      await this.page.keyboard.press("Escape");
      await widget.waitFor({ state: "hidden", timeout: closeLimit }).catch(no);
    }
  }

  async #selectionBox(): Promise<Box> {
    const selection = this.page.locator(`${openedFile} .selected-text`).first();
    for (const deadline = Date.now() + stepLimit; Date.now() < deadline; ) {
      // There is none for as long as the editor draws the selection anew.
      const box = await selection.boundingBox();
      if (box !== null) return box;
    }
    throw new Error("No selection is to be seen in the open file");
  }

  /** The list inside a view, which is opened when it is not shown. */
  async #view(view: string, command: string): Promise<Locator> {
    const shown = this.page.locator(`${view} .monaco-list`);
    if (!(await this.page.locator(view).isVisible())) await this.command(command);
    return shown;
  }
}

/** Installs the extension, starts the editor and waits for its workbench. The caller stops it. */
export async function startEditor(options: ServerOptions): Promise<Editor> {
  const server = await startServer(options);
  const opened = await openPage(findTools().browser).catch(async (problem: unknown) => {
    await server.stop();
    throw problem;
  });
  const editor = new Editor(opened, server);
  const { page } = opened;
  page.setDefaultTimeout(stepLimit);
  try {
    await page.goto(server.url, { timeout: startLimit });
    await page
      .locator(".monaco-workbench .explorer-folders-view .monaco-list-row")
      .first()
      .waitFor({ timeout: startLimit });
  } catch (problem) {
    await editor.screenshot("failed-start").catch(() => undefined);
    await editor.stop();
    throw problem;
  }
  return editor;
}
