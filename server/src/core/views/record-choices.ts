/** Kits and airframes to choose from, each as its papers call it, and whether the one may go into the other. */
import type { Problem } from "../findings/finding";
import { eligibilityOf } from "../graph/derivations";
import { linkProject, type RecordSource } from "../project";
import { type LoadedRecord, loadRecord } from "../records/record";
import { eligibilityRules } from "../rules/eligibility";
import { componentVoltageAboveSystem } from "../rules/sources/component-voltage-above-system";

/** `unknown`: the kit names no aircraft, or the two records do not say enough. */
export type Standing = "eligible" | "lacks-something" | "not-eligible" | "unknown";

export interface RecordChoice {
  /** "Type 9, B9-0417" or "QSR-60, Survey rack"; what the record leaves out is left out. */
  readonly title: string;
  /** Of an airframe held against a kit. */
  readonly standing?: Standing;
  /** What keeps it out, or what would have to be done first. */
  readonly why?: string;
}

/** Undefined for what is neither a kit nor an airframe. With a kit, an airframe is held against it. */
export function recordChoice(record: LoadedRecord, kit?: LoadedRecord): RecordChoice | undefined {
  const typed = record.typing.typed;
  if (typed.kind === "install") return undefined;
  const { first, second } =
    typed.kind === "kit"
      ? { first: typed.record.kit?.number, second: typed.record.kit?.name }
      : { first: typed.record.aircraft?.type, second: typed.record.aircraft?.serial };
  const title = [first, second].flatMap((part) => part?.value ?? []).join(", ");
  if (typed.kind === "kit" || !kit) return { title };
  return { title, ...standingOf(record, kit) };
}

/** The rules of eligibility, and what else two records show to be in vain whatever an install record says. */
const judges = [...eligibilityRules, componentVoltageAboveSystem];

/** Judged on an install record that names the two and has nothing else. */
function standingOf(airframe: LoadedRecord, kit: LoadedRecord): { standing: Standing; why?: string } {
  const pair = loadRecord("pair.install.yaml", "install", "airframe: a.airframe.yaml\nkit: k.kit.yaml\n");
  if (pair.typing.typed.kind !== "install") return { standing: "unknown" };
  const source: RecordSource = {
    resolve: (_from, path) => path,
    load: (path) => (path === "k.kit.yaml" ? kit : airframe),
  };
  const project = linkProject(pair, pair.typing.typed.record, source);
  const problems = judges.flatMap((rule) => {
    const found = [...(rule.check?.(project) ?? [])] as Problem[];
    return found.map(({ facts }) => ({ rule: rule.id, ...rule.say(facts) }));
  });
  const [first] = problems;
  if (!first) return { standing: eligibilityOf(project) ? "eligible" : "unknown" };
  const excluding = problems.find(({ rule }) => excludes.has(rule));
  if (excluding) return { standing: "not-eligible", why: excluding.what };
  if (first.rule === "serial-not-comparable") return { standing: "unknown", why: first.what };
  return { standing: "lacks-something", why: problems.map(({ what }) => what).join(" ") };
}

/** What these find, no work on the aircraft mends; the other rules tell what could be done first. */
const excludes: ReadonlySet<string> = new Set([
  "aircraft-not-eligible",
  "modification-incompatible",
  componentVoltageAboveSystem.id,
]);
