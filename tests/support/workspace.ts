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
import { demoFolder } from "./programs";

type Texts = Readonly<Record<string, string | Uint8Array>>;

const homes: string[] = [];

export function removeWorkspaces(): void {
  for (const home of homes.splice(0)) rmSync(home, { recursive: true, force: true });
}

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

/** An install record of the demo's kind, with faults whose places and rules the tests know. */
export const planted = "planted.install.yaml";

/** The clean record with a fault of each kind planted in it: a slip, a size, a lack, a place, a count. */
export function plantedText(): string {
  const faults: readonly (readonly [sound: string, faulty: string])[] = [
    ["gauge: 8 AWG\n    length: 14.5 ft", "gauge: 12 AWG\n    length: 14.5 ft"],
    ["gauge: 16 AWG\n    length: 4 ft", "guage: 16 AWG\n    length: 4 ft"],
    ["device: CB-30, mounted-on", "device: CB-15, mounted-on"],
    ["  - { component: FANS, arm: 128.0 in, butt-line: -6.0 in, water-line: 16.5 in, turn: 90 deg }\n", ""],
    ["at: { x: 8 in, y: 6 in }", "at: { x: 15 in, y: 9 in }"],
    ["wires: 3\n", "wires: 1\n"],
    ["from: F-FANS", "from: AUX"],
  ];
  return faults.reduce(
    (text, [sound, faulty]) => replaceOnce(text, sound, faulty),
    demoRecords()[demo.clean]!,
  );
}

/** The demo, and beside it the record with the planted faults. */
export function plantedWorkspace(): Workspace {
  return demoWorkspace({ [planted]: plantedText() });
}

/** The text with its one occurrence of `old` replaced; a test that changes nothing would prove nothing. */
export function replaceOnce(text: string, old: string, now: string): string {
  const at = text.indexOf(old);
  if (at === -1 || text.indexOf(old, at + 1) !== -1) throw new Error(`'${old}' does not stand there once`);
  return text.slice(0, at) + now + text.slice(at + old.length);
}
