import { type Browser, chromium, type Page } from "playwright-core";

export interface OpenedPage {
  readonly page: Page;
  /** Addresses outside of loopback that the page asked for and did not get. */
  readonly blocked: readonly string[];
  /** Errors that nothing in the page caught. */
  readonly errors: readonly string[];
  /** What the page wrote to its console, one message per entry. */
  readonly console: readonly string[];
  close(): Promise<void>;
}

const quietArguments = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  // The browser itself, which a page's routes do not see, looks up outside hosts at its start.
  "--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1",
];

/** Opens an empty page, in light colours, that reaches loopback only. `browser` is the program's path. */
export async function openPage(browser: string): Promise<OpenedPage> {
  const running: Browser = await chromium.launch({
    executablePath: browser,
    headless: true,
    args: quietArguments,
  });
  const page = await running.newPage({ viewport: { width: 1280, height: 800 }, colorScheme: "light" });
  const blocked: string[] = [];
  const errors: string[] = [];
  const console: string[] = [];
  await page.context().route(
    (url) => !isLocal(url.href),
    (route) => {
      blocked.push(route.request().url());
      return route.abort();
    },
  );
  page.on("websocket", (socket) => {
    if (!isLocal(socket.url())) blocked.push(socket.url());
  });
  page.on("pageerror", (error) => errors.push(error.stack ?? error.message));
  page.on("console", (message) => console.push(`${message.type()}: ${message.text()}`));
  return { page, blocked, errors, console, close: () => running.close() };
}

function isLocal(address: string): boolean {
  const { protocol, hostname } = new URL(address);
  return hostname === "127.0.0.1" || ["data:", "blob:", "about:"].includes(protocol);
}
