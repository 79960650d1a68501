/** Names across records: where a thing is declared, where it is used, and what another name would break. */
import type { Judgement } from "../check";
import type { Node } from "../reading";
import { type LoadedRecord, Names } from "../records/record";
import type { IdKind } from "../records/schema";
import type { Declaration, Reference } from "../records/typing";
import type { Place } from "../records/written";

/** All records among which names count: an install with what it names, or a record by itself. */
export interface Scope {
  readonly names: Names;
  readonly files: readonly LoadedRecord[];
}

export function scopeOf({ record, project }: Judgement): Scope {
  if (project) return project;
  return { names: new Names([record]), files: [record] };
}

/** The thing that is named at a node, whether it is declared or used there. */
export function declarationAt(node: Node, record: LoadedRecord, { names }: Scope): Declaration | undefined {
  const own = record.typing.declarations.find(({ id }) => id.place.node === node);
  if (own) return own;
  const reference = record.typing.references.find(({ id }) => id.place.node === node);
  const found = reference ? names.find(reference.kinds, reference.id.value) : [];
  return found.length === 1 ? found[0] : undefined;
}

/** Places at which a thing is named, its declaration first, each once, in every scope that has it. */
export function usesOf(thing: Declaration, scopes: readonly Scope[]): Place[] {
  const places = new Map<Node, Place>([[thing.id.place.node, thing.id.place]]);
  for (const { reference } of referencesTo(thing, scopes)) {
    places.set(reference.id.place.node, reference.id.place);
  }
  return [...places.values()];
}

function* referencesTo(
  thing: Declaration,
  scopes: readonly Scope[],
): Iterable<{ readonly reference: Reference; readonly scope: Scope }> {
  for (const scope of scopes) {
    if (!declares(scope, thing)) continue;
    for (const file of scope.files) {
      for (const reference of file.typing.references) {
        if (reference.id.value !== thing.id.value || !reference.kinds.includes(thing.kind)) continue;
        const found = scope.names.find(reference.kinds, reference.id.value);
        if (found.some(({ id }) => id.place.node === thing.id.place.node)) yield { reference, scope };
      }
    }
  }
}

function declares({ names }: Scope, { kind, id }: Declaration): boolean {
  return names.find([kind], id.value).some((one) => one.id.place.node === id.place.node);
}

/** Why a thing can't be called that, in words; undefined where it can. */
export function renamingRefused(
  thing: Declaration,
  name: string,
  scopes: readonly Scope[],
): string | undefined {
  if (!/^[A-Za-z][A-Za-z0-9._-]*$/.test(name))
    return `'${name}' is no name: it takes a letter, then letters, digits, and . _ -`;
  if (name === thing.id.value) return undefined;
  const taken = (kinds: readonly IdKind[], scope: Scope) => scope.names.find(kinds, name)[0];
  for (const scope of scopes) {
    if (!declares(scope, thing)) continue;
    const same = taken([thing.kind], scope);
    if (same) return `There is a ${same.kind} '${name}' already.`;
  }
  for (const { reference, scope } of referencesTo(thing, scopes)) {
    const other = taken(reference.kinds, scope);
    if (other) return `There is a ${other.kind} '${name}' already, and one place may name either.`;
  }
  return undefined;
}
