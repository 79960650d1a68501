/** Imports run one way: client and language and command line to the core, nothing out of it, no circles in it. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, sep } from "node:path";
import { transform } from "esbuild";
import { beforeAll, describe, expect, it } from "vitest";
import { root } from "./support/programs";

interface Import {
  /** Paths from the repository's root, with forward slashes; a package by its name. */
  readonly from: string;
  readonly to: string;
  /** Gone when the program runs. */
  readonly isTypeOnly: boolean;
}

/** Files of `server/src` and `client/src`, by path from the root. */
const sources = ["server/src", "client/src"].flatMap((folder) =>
  readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
    .map((name) => `${folder}/${name.split(sep).join("/")}`)
    .filter((name) => /(?<!\.d)\.m?ts$/.test(name)),
);

let imports: readonly Import[];

beforeAll(async () => {
  const found = await Promise.all(
    sources.map(async (from) => {
      const text = readFileSync(join(root, from), "utf8");
      // What is left when the types are gone is what is imported when the program runs.
      const { code } = await transform(text, { loader: "ts", tsconfigRaw: { compilerOptions } });
      const lasting = new Set(importsIn(code));
      return importsIn(text).map((specifier) => ({
        from,
        to: targetOf(from, specifier),
        isTypeOnly: !lasting.has(specifier),
      }));
    }),
  );
  imports = found.flat();
});

const compilerOptions = { verbatimModuleSyntax: true } as const;

/** Every name that a text imports from, each once. */
function importsIn(text: string): string[] {
  const found = [
    ...text.matchAll(/^(?:import|export)\s(?:[\w\s{},*$]*?\sfrom\s)?\s*"([^"]+)"/gm),
    ...text.matchAll(/\b(?:import|require)\(\s*["'`]([^"'`]+)["'`]\s*\)/g),
  ];
  return [...new Set(found.map(([, specifier]) => specifier!))];
}

function targetOf(from: string, specifier: string): string {
  if (!specifier.startsWith(".")) return specifier;
  const path = relative(root, join(root, dirname(from), specifier))
    .split(sep)
    .join("/");
  return withoutExtension(sources.includes(`${path}/index.ts`) ? `${path}/index.ts` : path);
}

function withoutExtension(path: string): string {
  return path.replace(/\.(?:d\.)?m?[tj]s$/, "");
}

/** The part of the program that a file belongs to; a package and a file elsewhere are their own. */
function areaOf(path: string): string {
  const [, part] = /^server\/src\/([^/]+)\//.exec(path) ?? [];
  if (part) return part;
  if (path.startsWith("client/src/")) return "client";
  return path.startsWith("schemas/") ? "schemas" : path.startsWith("node:") ? "node" : path;
}

it("every import is seen", () => {
  expect(sources.length).toBeGreaterThan(100);
  expect(imports.length).toBeGreaterThan(sources.length);
  expect(imports.filter(({ to }) => to === "yaml").length).toBeGreaterThan(0);
  expect(imports.some(({ isTypeOnly }) => isTypeOnly)).toBe(true);
  const lost = imports
    .filter(({ to }) => /^(server|client)\/src\//.test(to))
    .filter(({ to }) => !existsAs(to));
  expect(lost).toEqual([]);
});

function existsAs(target: string): boolean {
  if (target.endsWith(".json")) return existsSync(join(root, target));
  return sources.some((source) => withoutExtension(source) === target) || target.endsWith("/validators");
}

describe("each area imports only what it may", () => {
  const allowed: Readonly<Record<string, readonly (string | RegExp)[]>> = {
    core: ["core", "schemas", "yaml"],
    files: ["files", "core", "node"],
    language: [
      "language",
      "core",
      "files",
      "node",
      "package.json",
      /^vscode-languageserver(-textdocument)?(\/\w+)?$/,
    ],
    "command-line": ["command-line", "core", "files", "node", "package.json"],
    client: ["client", "vscode", "node", /^vscode-languageclient(\/\w+)?$/],
  };

  it("there is no other area", () => {
    expect(new Set(sources.map(areaOf))).toEqual(new Set(Object.keys(allowed)));
  });

  it.each(Object.keys(allowed))("%s", (area) => {
    const strange = imports
      .filter(({ from }) => areaOf(from) === area)
      .filter(
        ({ to }) =>
          !allowed[area]!.some((one) => (one instanceof RegExp ? one.test(to) : one === areaOf(to))),
      );
    expect(strange).toEqual([]);
  });

  it("only the reading imports yaml, types too", () => {
    const users = imports.filter(({ to }) => to === "yaml" || to.startsWith("yaml/")).map(({ from }) => from);
    expect(users.filter((from) => !from.startsWith("server/src/core/reading/"))).toEqual([]);
  });

  it("only the records import schemas", () => {
    const users = imports.filter(({ to }) => areaOf(to) === "schemas").map(({ from }) => from);
    expect(users.filter((from) => !from.startsWith("server/src/core/records/"))).toEqual([]);
  });

  it("of the core, the files take only the limits", () => {
    const taken = imports.filter(({ from, to }) => areaOf(from) === "files" && areaOf(to) === "core");
    expect(taken.map(({ to }) => to)).toEqual(["server/src/core/limits"]);
  });

  it("nothing is loaded by a name that is made while running", () => {
    const dynamic = sources.filter((source) =>
      /\b(?:import|require)\((?!\s*["'`][^"'`$]+["'`]\s*\))/.test(readFileSync(join(root, source), "utf8")),
    );
    expect(dynamic).toEqual([]);
  });
});

/**
 * Rooms of the core, from the ground up; a file of the core's own folder is a room by itself. A room imports
 * only rooms above it in this list.
 */
const rooms = [
  "limits",
  "rounding",
  "source",
  "quantities",
  "is-same",
  "none",
  "nearest",
  "once-each",
  "tables",
  "methods",
  "reading",
  "findings",
  "records",
  "edits",
  "project",
  "graph",
  "rules",
  "identity",
  "deviations",
  "check",
  "run-example",
  "remedies",
  "fix-all",
  "shelf",
  "views",
];

function roomOf(path: string): string | undefined {
  return /^server\/src\/core\/([^/.]+)/.exec(path)?.[1];
}

describe("the rooms of the core stand in one order", () => {
  const crossings = () =>
    imports.flatMap(({ from, to, isTypeOnly }) => {
      const [user, used] = [roomOf(from), roomOf(to)];
      return user && used && user !== used ? [{ user, used, isTypeOnly, from, to }] : [];
    });
  const isAgainst = ({ user, used }: { user: string; used: string }) =>
    rooms.indexOf(used) >= rooms.indexOf(user);

  it("every room is in the list", () => {
    const found = new Set(sources.map(roomOf).filter((room) => room !== undefined));
    expect([...found].sort()).toEqual([...rooms].sort());
  });

  it("what runs", () => {
    const against = crossings().filter((one) => !one.isTypeOnly && isAgainst(one));
    expect(against.map(({ from, to }) => `${from} -> ${to}`)).toEqual([]);
  });

  it("types, but for those that are known to look up", () => {
    const against = crossings().filter((one) => one.isTypeOnly && isAgainst(one));
    expect([...new Set(against.map(({ user, used }) => `${user} -> ${used}`))].sort()).toEqual([
      "findings -> graph",
      "findings -> records",
      "records -> graph",
    ]);
  });
});

describe("no file imports itself by way of others", () => {
  it("when the program runs", () => {
    expect(circlesIn(imports.filter(({ isTypeOnly }) => !isTypeOnly))).toEqual([]);
  });
});

/** Each group of files that lead to each other, sorted. */
function circlesIn(edges: readonly Import[]): string[][] {
  const next = new Map<string, string[]>();
  for (const { from, to } of edges) {
    const file = withoutExtension(from);
    next.set(file, [...(next.get(file) ?? []), to]);
  }
  const reach = (start: string): Set<string> => {
    const seen = new Set<string>();
    const open = [...(next.get(start) ?? [])];
    for (let at = open.pop(); at !== undefined; at = open.pop()) {
      if (seen.has(at)) continue;
      seen.add(at);
      open.push(...(next.get(at) ?? []));
    }
    return seen;
  };
  const reached = new Map([...next.keys()].map((file) => [file, reach(file)]));
  const circles = [...reached]
    .filter(([file, seen]) => seen.has(file))
    .map(([file, seen]) =>
      [...seen]
        .filter((other) => reached.get(other)?.has(file))
        .sort()
        .join(" "),
    );
  return [...new Set(circles)].map((circle) => circle.split(" "));
}
