/** Remedies that leave fewer wires side by side: one wire by itself, or some of them as a bundle of their own. */
import type { Change } from "../../edits/change";
import { electricalOf } from "../../graph/derivations";
import type { BundleResult } from "../../graph/electrical/bundles";
import type { WireResult } from "../../graph/electrical/wires";
import type { Project } from "../../project";
import { inUnit } from "../../quantities";
import type { Bundle } from "../../records/types";
import type { Place, Written } from "../../records/written";
import { bundleLoadings } from "../../tables/bundle-derating";
import type { Remedy } from "../rule";
import { listWords } from "../wording";

/** A bundle that can be split: what is stated of it, and its wires of this record. */
interface Splittable {
  readonly place: Place;
  readonly id: Written<string>;
  readonly count: Written<number>;
  readonly loading: NonNullable<Bundle["loading"]>;
  readonly ambient: Bundle["ambient"];
  readonly wires: readonly WireResult[];
  /** Whether all of its wires are in this record, so that its loading is computed and not only stated. */
  readonly isComplete: boolean;
}

/** Ways to leave a wire fewer neighbours: alone first, then with ever more of them in a second bundle. */
export function* fewerNeighbours(wireId: string, project: Project): Iterable<Remedy> {
  const found = electricalOf(project).bundles.find(({ wires }) => wires.some(({ id }) => id === wireId));
  const bundle = found && splittableOf(found);
  const wire = bundle?.wires.find(({ id }) => id === wireId);
  if (!bundle || !wire || bundle.count.value < 2) return;
  yield {
    title: `Run wire ${wireId} by itself, outside bundle ${bundle.id.value}${rest(bundle)}`,
    changes: [
      { place: wire.wire.place, removed: wire.wire.bundle!.place },
      { place: bundle.count.place, text: String(bundle.count.value - 1) },
    ],
    series: "alone",
  };
  const others = bundle.wires.filter((one) => one !== wire).toSorted((a, b) => loadOf(a) - loadOf(b));
  for (let size = 2; size < bundle.count.value && size <= bundle.wires.length; size++) {
    yield* splits(bundle, [wire, ...others.slice(0, size - 1)], project);
    if (size <= others.length) yield* splits(bundle, others.slice(-size), project);
  }
}

/** Takes so many wires into a second bundle that the first is left with no more than `most`. */
export function* splitToSize(bundleId: string, most: number, project: Project): Iterable<Remedy> {
  const found = electricalOf(project).bundles.find(({ id }) => id === bundleId);
  const bundle = found && splittableOf(found);
  if (!bundle) return;
  const size = bundle.count.value - most;
  if (size >= 2 && size <= Math.min(most, bundle.wires.length)) {
    yield* splits(bundle, bundle.wires.slice(-size), project);
  }
}

/** The split at the stated loading, and at each higher one that the figure has a line for. */
function* splits(bundle: Splittable, moved: readonly WireResult[], project: Project): Iterable<Remedy> {
  const stated = inUnit(bundle.loading.value, "%");
  const id = freeId(bundle.id.value, project);
  const names = moved.map((one) => one.id);
  for (const loading of [undefined, ...bundleLoadings.filter((line) => line > stated)]) {
    if (loading !== undefined && !bundle.isComplete) return;
    const text = loading === undefined ? writtenText(bundle.loading.place) : `${loading} %`;
    const changes: Change[] = [
      {
        place: project.install.place,
        list: "bundles",
        entries: [
          {
            id,
            wires: String(moved.length),
            loading: text,
            ambient: bundle.ambient && writtenText(bundle.ambient.place),
          },
        ],
      },
      { place: bundle.count.place, text: String(bundle.count.value - moved.length) },
      ...moved.map(({ wire }) => ({ place: wire.bundle!.place, text: id })),
      ...(loading === undefined ? [] : [{ place: bundle.loading.place, text }]),
    ];
    const both = loading === undefined ? rest(bundle) : `, both loaded to ${text}`;
    yield {
      title: `Run ${listWords(names, "and")} as a bundle ${id} of their own${both}`,
      changes,
      series: "split",
    };
  }
}

function splittableOf({ bundle, wires }: BundleResult): Splittable | undefined {
  const { id, wires: count, loading, ambient, place } = bundle;
  if (!id || !count || !loading) return undefined;
  return { place, id, count, loading, ambient, wires, isComplete: count.value === wires.length };
}

/** What the model can't know: how far wires are loaded that are in no record. */
function rest({ id, isComplete }: Splittable): string {
  return isComplete ? "" : `; the loading stated for ${id.value} is kept, and is yours to confirm`;
}

/** The greatest current that a wire carries in any condition, in amperes. */
function loadOf({ states }: WireResult): number {
  return Math.max(0, ...states.map(({ current }) => current?.value ?? 0));
}

/** B1 becomes B2, or the next number that no bundle has. */
function freeId(id: string, { names }: Project): string {
  const [, stem = id, digits] = /^(.*?)(\d+)$/.exec(id) ?? [];
  for (let number = digits === undefined ? 2 : Number(digits) + 1; ; number++) {
    const candidate = digits === undefined ? `${stem}-${number}` : `${stem}${number}`;
    if (names.find(["bundle"], candidate).length === 0) return candidate;
  }
}

function writtenText({ node }: Place): string {
  return node.kind === "scalar" ? node.text : "";
}
