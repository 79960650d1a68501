/** A thing in every condition: what a pointer on its name, wherever it stands, wants to know. */
import { valuesOf } from "../graph/derivations";
import type { QuantityName } from "../graph/quantity-names";
import type { Subject, Value } from "../graph/value";
import type { Project } from "../project";
import type { Node } from "../reading/tree";
import type { IdKind } from "../records/schema";

export interface Overview {
  readonly subject: Subject;
  readonly quantities: readonly QuantityName[];
  /** A row for each condition in which anything is known. */
  readonly rows: readonly { readonly condition: string; readonly values: readonly (Value | undefined)[] }[];
}

/** What is shown of each kind of thing; what stands for the whole aircraft is shown with its sources. */
const shown: Partial<Record<IdKind, readonly QuantityName[]>> = {
  component: ["load-voltage", "load-current", "path-drop"],
  source: ["source-output", "source-current", "source-demand", "source-capacity"],
  wire: ["wire-current", "allowed-current", "conductor-temperature", "wire-drop"],
  protection: ["device-current", "device-drop"],
  contact: ["device-current", "device-drop"],
  bundle: ["bundle-loading"],
  bus: ["bus-voltage", "bus-demand"],
  space: ["cooling-load", "cooling-capacity", "steady-temperature", "time-to-set-point"],
};
const ofAircraft: readonly QuantityName[] = ["source-demand", "source-capacity"];

/** The thing that is named at a node, in every condition; undefined where none is named that has such values. */
export function overviewAt(node: Node, project: Project): Overview | undefined {
  const named = nameAt(node, project);
  const quantities = named && shown[named.kind];
  if (!named || !quantities) return undefined;
  const values = valuesOf(project).filter(
    ({ subject, quantity, condition }) =>
      condition !== undefined &&
      quantities.includes(quantity) &&
      ((subject.kind === named.kind && subject.id === named.id) || ofAircraft.includes(quantity)),
  );
  const conditions = [...new Set(values.map(({ condition }) => condition!))];
  if (conditions.length === 0) return undefined;
  return {
    subject: named,
    quantities,
    rows: conditions.map((condition) => ({
      condition,
      values: quantities.map((quantity) =>
        values.find((value) => value.quantity === quantity && value.condition === condition),
      ),
    })),
  };
}

/** The thing with an id that is named at a node, where it is declared or used. */
export function nameAt(node: Node, project: Project): { kind: IdKind; id: string } | undefined {
  for (const { typing } of project.files) {
    const declared = typing.declarations.find(({ id }) => id.place.node === node);
    if (declared) return { kind: declared.kind, id: declared.id.value };
    const used = typing.references.find(({ id }) => id.place.node === node);
    const target = used && project.names.find(used.kinds, used.id.value)[0];
    if (target) return { kind: target.kind, id: target.id.value };
  }
  return undefined;
}
