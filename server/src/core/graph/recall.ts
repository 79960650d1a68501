/**
 * Work on a project that is done again only when something that it looked at has changed.
 *
 * A derivation or a rule is a function of a project. `recalled` lets it see the project through a glass that
 * notes each thing that it takes: a section of a record, the names of one kind, a part of what another such
 * function gives. In the next version of the project the same things are taken again; when each is the same,
 * so is the result. Nobody states what a result rests on, so nobody can forget a part of it. Typed entries,
 * and lists and maps of a record's top level, are the same while what their text says is (`records/typing.ts`).
 *
 * What a function must keep to:
 * - It sees nothing but the project, and what is in the project never changes.
 * - What a closure of its result reads later, such as the operands of a value that are listed when somebody
 *   looks, belongs to something that was read while the result was made.
 * - It takes sections, `install.wires`, and not whole records: their `place` changes at every keystroke. An
 *   entry of a record's text is asked for by `entryOf`.
 */
import { isSame } from "../is-same";
import type { Project } from "../project";
import { Recollection } from "../records/recollection";
import type { LoadedRecord, Names } from "../records/record";
import type { IdKind } from "../records/schema";
import { settled } from "./settled";

/** Something that was taken from a project, and how to take it from another one. */
interface Look {
  readonly take: (project: Project) => unknown;
  readonly seen: unknown;
}

/** A result, with all that was looked at on the way to it, in that order. */
interface Trace {
  readonly looks: readonly Look[];
  readonly result: unknown;
}

/**
 * A function of a project that is done once for each, and not even that while what it looked at is the same.
 *
 * @param compute is given what it gave the last time, to take over what is still the same; its result is the one
 *   that it would give without
 */
export function recalled<T>(
  compute: (project: Project, before: T | undefined) => T,
): (project: Project) => T {
  const recall = (seenProject: Project): T => {
    const glass = glassOf(seenProject);
    const project = glass ? glass.project : seenProject;
    const taken = glass?.taken.get(recall) as { readonly result: T } | undefined;
    if (taken) return taken.result;
    const done = project.file.recollection.doneOf(project);
    let known = done.get(recall) as { readonly result: T } | undefined;
    if (!known) {
      known = { result: again(recall, project, compute) };
      done.set(recall, known);
    }
    glass?.taken.set(recall, known);
    glass?.note(recall, known.result);
    return known.result;
  };
  return recall;
}

/**
 * Does something with each thing of a list by itself, and not again while the thing stands where an edit leaves it.
 * What is done sees nothing but the thing and what all of them share, so that it can rest on nothing else.
 *
 * @param sharedOf what they share: while it is another, nothing of what was done before holds
 */
export function ofEach<T extends object, R, S = undefined>(
  listOf: (project: Project) => readonly T[],
  act: (one: T, shared: S) => Iterable<R>,
  sharedOf: (project: Project) => S = () => undefined as S,
): (project: Project) => readonly R[] {
  let lastShared: S | undefined;
  let last: readonly T[] = [];
  // What came of all things stands in one list: that of each begins where that of the thing before it ends.
  let lastResults: readonly R[] = [];
  let lastEnds: readonly number[] = [];
  return (project) => {
    const list = listOf(project);
    const shared = sharedOf(project);
    if (!Object.is(shared, lastShared)) last = [];
    const longer = last.length - list.length;
    const results: R[] = [];
    const ends: number[] = [];
    for (let index = 0; index < list.length; index++) {
      const one = list[index]!;
      // What an edit leaves stands as far from the beginning as before, or as far from the end.
      const place = last[index] === one ? index : index + longer;
      if (last[place] === one) {
        const end = lastEnds[place]!;
        for (let at = lastEnds[place - 1] ?? 0; at < end; at++) results.push(lastResults[at]!);
      } else {
        for (const result of act(one, shared)) results.push(result);
      }
      ends.push(results.length);
    }
    lastShared = shared;
    last = list;
    lastResults = results;
    lastEnds = ends;
    return results;
  };
}

function again<T>(of: object, project: Project, compute: (project: Project, before: T | undefined) => T): T {
  const { recollection } = project.file;
  const before = recollection.get(of) as Trace | undefined;
  if (before?.looks.every(({ take, seen }) => isSame(seen, take(project)))) return before.result as T;
  const glass = new Glass(project);
  const result = settled(before?.result, compute(glass.view(), before?.result as T | undefined));
  recollection.set(of, { looks: glass.looks, result } satisfies Trace);
  glass.close();
  return result;
}

/**
 * Asks something of a record in a way that is noted as what it is: the answer is looked at, not the record.
 *
 * @param ask keeps its identity from call to call
 */
export function askOf<O extends object, R>(owner: O, ask: (owner: O, key: string) => R, key: string): R {
  const part = (owner as Viewed)[partKey];
  if (!part) return ask(owner, key);
  const { glass, of, whole } = part;
  return glass.note(askFrom(of, ask, key), ask(whole as O, key));
}

// How a thing is taken is kept for as long as what came of it: each of these holds what it is given and no more,
// which a function inside another would not.

function askFrom<O, R>(of: Part, ask: (owner: O, key: string) => R, key: string): Look["take"] {
  return (project) => {
    const now = project[of];
    return now && ask(now as unknown as O, key);
  };
}

function takePart(of: Part, key: PropertyKey): Look["take"] {
  return (project) => {
    const now = project[of];
    return now && Reflect.get(now, key);
  };
}

function takeOwn(key: keyof Project): Look["take"] {
  return (project) => project[key];
}

function lacks(key: keyof Project): Look["take"] {
  return (project) => project[key] === undefined;
}

function takeNames(kind: IdKind): Look["take"] {
  return (project) => project.names.ofKind(kind);
}

/** All of a record that work on a project asks for. What it remembers is of no use any more. */
function withoutText({ file }: LoadedRecord): LoadedRecord {
  return { file, recollection: new Recollection() } as LoadedRecord;
}

/** Parts of a project whose own parts are looked at one by one. */
type Part = "install" | "airframe" | "kit" | "file";
const looksInto: ReadonlySet<PropertyKey> = new Set<Part>(["install", "airframe", "kit", "file"]);

/**
 * Views tell what stands behind them under these keys. A table beside them would do the same, but a weak map that
 * has grown old keeps what is new in it alive through every small collection: all results of each keystroke.
 */
const glassKey = Symbol("glass");
const partKey = Symbol("part");

interface Viewed {
  readonly [glassKey]?: Glass;
  readonly [partKey]?: { readonly glass: Glass; readonly of: Part; readonly whole: object };
}

function glassOf(project: Project): Glass | undefined {
  return (project as Viewed)[glassKey];
}

/** Shows one project, and notes what is taken from it. */
class Glass {
  readonly looks: Look[] = [];
  /** What other such functions gave, for those who ask again when the glass is closed. */
  readonly taken = new Map<object, { readonly result: unknown }>();

  constructor(public project: Project) {}

  view(): Project {
    const shown = new Map<PropertyKey, unknown>();
    // The project itself is no part of the view: what outlives a version must not keep all of it alive.
    return new Proxy({} as Project, {
      get: (_, key) => {
        if (key === glassKey) return this;
        if (!shown.has(key)) shown.set(key, this.show(key as keyof Project));
        return shown.get(key);
      },
    });
  }

  note<T>(take: Look["take"], seen: T): T {
    this.looks.push({ take, seen });
    return seen;
  }

  /** What is looked at later may show the project as it was, but must not keep alive all that came before it. */
  close(): void {
    const { file } = this.project;
    this.project = { ...this.project, files: [], file: withoutText(file) };
  }

  private show(key: keyof Project): unknown {
    const value = this.project[key];
    if (key === "names") return this.names(this.project.names);
    if (!looksInto.has(key)) return this.note(takeOwn(key), value);
    this.note(lacks(key), value === undefined);
    return value && this.part(key as Part, value);
  }

  private part(of: Part, whole: object): object {
    const part = { glass: this, of, whole };
    const taken = new Set<PropertyKey>();
    return new Proxy(whole, {
      get: (target, key) => {
        if (key === partKey) return part;
        const seen = Reflect.get(target, key);
        if (!taken.has(key)) this.note(takePart(of, key), seen);
        taken.add(key);
        return seen;
      },
    });
  }

  private names(names: Names): Pick<Names, "find"> {
    const taken = new Set<IdKind>();
    const look = (kind: IdKind) => {
      if (!taken.has(kind)) this.note(takeNames(kind), names.ofKind(kind));
      taken.add(kind);
    };
    return {
      find: (kinds, id) => {
        for (const kind of kinds) look(kind);
        return names.find(kinds, id);
      },
    };
  }
}
