/** Folders for one test, away from the repository. */
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll } from "vitest";
import { demoFolder } from "./programs";

type Texts = Readonly<Record<string, string | Uint8Array>>;

const homes: string[] = [];

afterAll(() => {
  for (const home of homes) rmSync(home, { recursive: true, force: true });
});

/** A temporary folder, with room beside it for what a workspace must not reach. */
export class Workspace {
  /** Absolute, with links followed. */
  readonly folder: string;

  constructor(files: Texts = {}) {
    const home = realpathSync(mkdtempSync(join(tmpdir(), "tailcone-")));
    homes.push(home);
    this.folder = join(home, "workspace");
    mkdirSync(this.folder);
    for (const [name, text] of Object.entries(files)) this.write(name, text);
  }

  /** Absolute path of a file, named with forward slashes from the workspace; `../` is beside it. */
  path(name: string): string {
    return join(this.folder, name);
  }

  uri(name: string): string {
    return pathToFileURL(this.path(name)).href;
  }

  read(name: string): string {
    return readFileSync(this.path(name), "utf8");
  }

  write(name: string, text: string | Uint8Array): void {
    mkdirSync(dirname(this.path(name)), { recursive: true });
    writeFileSync(this.path(name), text);
  }
}

/** Texts of the demo's records, by file name. */
export function demoRecords(): Record<string, string> {
  const names = readdirSync(demoFolder).filter((name) => name.endsWith(".yaml"));
  return Object.fromEntries(names.map((name) => [name, readFileSync(join(demoFolder, name), "utf8")]));
}

export const demo = {
  airframe: "brackenfell-0417.airframe.yaml",
  kit: "survey-rack.kit.yaml",
  clean: "survey-rack-0417.install.yaml",
  faulty: "survey-rack-0417-faulty.install.yaml",
} as const;

/** A copy of the demo, with other files or with some of its own changed. */
export function demoWorkspace(changes: Texts = {}): Workspace {
  return new Workspace({ ...demoRecords(), ...changes });
}

/** The text with its one occurrence of `old` replaced; a test that changes nothing would prove nothing. */
export function replaceOnce(text: string, old: string, now: string): string {
  const at = text.indexOf(old);
  if (at === -1 || text.indexOf(old, at + 1) !== -1) throw new Error(`'${old}' does not stand there once`);
  return text.slice(0, at) + now + text.slice(at + old.length);
}
