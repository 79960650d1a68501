import type { Locator } from "playwright-core";

/** One row of a list or tree; a tree's levels and a list's indices count from 1 and from 0. */
export type Row<Field extends string> = Readonly<Record<Field, string>> & {
  readonly index: number;
  readonly last: boolean;
  readonly level: number;
  /** What the row says to a screen reader. */
  readonly label: string;
};

/** Leaves out the copies of rows that stay on top of a list while it is scrolled. */
const row = ".monaco-list-rows > .monaco-list-row";
/** The workbench takes each turn for one notch of a wheel, two to three rows, however far it goes. */
const down = 100;
const up = -down;
const scrollLimit = 5_000;

/**
 * Reads every row of one of the workbench's lists, which holds only the rows that are scrolled into view.
 * `fields` names a selector for each text that is wanted of a row; where several elements of the row fit,
 * they become lines. The list is left at its top. Throws when the list changes so that it can't be scrolled on.
 */
export async function readRows<Field extends string>(
  list: Locator,
  fields: Readonly<Record<Field, string>>,
): Promise<Row<Field>[]> {
  const found = new Map<number, Row<Field>>();
  let rows = await readShownRows(list, fields);
  if (rows.length > 0 && rows.every(({ index }) => index > 0)) {
    await scrollToTop(list);
    rows = await readShownRows(list, fields);
  }
  const shown = rows.length;
  for (;;) {
    for (const row of rows) found.set(row.index, row);
    if (rows.length === 0 || rows.some(({ last }) => last)) break;
    await scroll(list, down);
    rows = await readShownRows(list, fields);
  }
  if (found.size > shown) {
    await scrollToTop(list);
    // A row's tooltip would cover what a screenshot is to show.
    await list.page().mouse.move(0, 0);
  }
  return [...found.values()].sort((a, b) => a.index - b.index);
}

async function readShownRows<Field extends string>(
  list: Locator,
  fields: Readonly<Record<Field, string>>,
): Promise<Row<Field>[]> {
  const rows = await list.locator(row).evaluateAll(
    (elements, fields) =>
      elements.map((element) => ({
        index: Number(element.getAttribute("data-index")),
        last: element.getAttribute("data-last-element") === "true",
        level: Number(element.getAttribute("aria-level")),
        label: element.getAttribute("aria-label") ?? "",
        ...Object.fromEntries(
          fields.map(([field, selector]) => [
            field,
            [...element.querySelectorAll(selector)].map((one) => one.textContent).join("\n"),
          ]),
        ),
      })),
    Object.entries<string>(fields),
  );
  return rows as unknown as Row<Field>[];
}

async function scrollToTop(list: Locator): Promise<void> {
  while ((await list.locator(`${row}[data-index="0"]`).count()) === 0) await scroll(list, up);
}

/** Scrolls by one notch and waits until that shows, so that no row is jumped over. */
async function scroll(list: Locator, distance: number): Promise<void> {
  const rows = list.locator(".monaco-list-rows");
  const before = await rows.getAttribute("style");
  await list.hover();
  await list.page().mouse.wheel(0, distance);
  for (const deadline = Date.now() + scrollLimit; Date.now() < deadline; ) {
    if ((await rows.getAttribute("style")) !== before) return;
  }
  throw new Error("The list could not be scrolled on");
}
