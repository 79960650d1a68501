import { switchRating, wireMethods } from "../../../methods/wires";
import type { Condition, Contact } from "../../../records/types";
import type { Lookup } from "../../../tables/lookup";
import { type SwitchLoad, switchFactor } from "../../../tables/switch-derating";
import { derive, derived, type Operand, sumOf, tabled, type Value } from "../../value";
import type { ElectricalBasis } from "../basis";
import type { DeviceResult } from "../devices";
import type { LoadCurrents } from "../load-currents";

/** A contact with a rating, and what it needs in every condition in which it carries current. */
export interface ContactResult {
  readonly contact: Contact;
  readonly id: string;
  readonly rating: Value;
  readonly states: readonly {
    readonly condition: Condition;
    readonly current: Value;
    /** The current itself, or for a switch or relay the current times the factors of its loads. */
    readonly required: Value;
  }[];
}

/** Contacts that make and break a load; the others carry only. */
const derated: ReadonlySet<string | undefined> = new Set(["switch", "relay"]);

/** What each rated contact needs. */
export function deriveContacts(
  basis: ElectricalBasis,
  currents: LoadCurrents,
  devices: readonly DeviceResult[],
): ContactResult[] {
  return devices.flatMap((device): ContactResult[] => {
    const { inline, id, rating } = device;
    if (inline.kind !== "contact" || !rating) return [];
    const isDerated = derated.has(inline.record.kind?.value);
    const states = device.currents.flatMap(({ condition, current }) => {
      const required = isDerated ? requirement(device, condition, current, currents, basis) : current;
      return required ? [{ condition, current, required }] : [];
    });
    return [{ contact: inline.record, id, rating, states }];
  });
}

function requirement(
  device: DeviceResult,
  condition: Condition,
  current: Value,
  currents: LoadCurrents,
  basis: ElectricalBasis,
): Value | undefined {
  const index = basis.conditions.indexOf(condition);
  const paths = basis.fed.flatMap((load, position) =>
    device.components.includes(load.id) ? [{ ...load, current: currents[position]![index] }] : [],
  );
  const running = paths.filter((load) => load.current);
  const factors = new Map(
    running.map(({ id, component }) => [id, factorOf(component.loadType?.value, basis)]),
  );
  const common = {
    subject: { kind: "contact", id: device.id },
    condition: condition.id?.value,
    quantity: "contact-requirement",
    unit: "A",
    sources: [wireMethods.switchRating.source],
  } as const;
  if (!paths.every(({ isSingle }) => isSingle)) {
    const largest = [...factors.values()].reduce<Factor | undefined>(
      (most, one) => (!most || (one.operand?.value ?? 0) > (most.operand?.value ?? 0) ? one : most),
      undefined,
    );
    return basis.keep(
      derive({
        ...common,
        formula: "I * f",
        operands: { I: derived("current through the contact", current), f: largest?.operand },
        compute: ({ I, f }) => switchRating({ amps: I, factor: f }),
        notes: [
          "The current has more than one way, so the largest factor of its loads counts for all of it.",
        ],
      }),
    );
  }
  const kinds = [...new Set([...factors.values()].map(({ kind }) => kind))];
  const terms = kinds.map((kind) => {
    const ofKind = running.filter(({ id }) => factors.get(id)?.kind === kind);
    const loads = ofKind.map((load) => derived(`current of ${load.id}`, load.current));
    return { kind, loads, factor: factors.get(ofKind[0]!.id)!.operand };
  });
  return basis.keep(
    derive({
      ...common,
      formula: kinds.map((kind) => `sum(I_${kind}) * f_${kind}`).join(" + "),
      operands: Object.fromEntries(
        terms.flatMap(({ kind, loads, factor }): [string, Operand | readonly Operand[]][] => [
          [`I_${kind}`, loads],
          [`f_${kind}`, factor],
        ]),
      ),
      compute: () =>
        sumOf(
          terms.map(({ loads, factor }) =>
            switchRating({
              amps: sumOf(loads.map((load) => load?.value ?? Number.NaN)),
              factor: factor?.value ?? Number.NaN,
            }),
          ),
        ),
    }),
  );
}

interface Factor {
  readonly kind: SwitchLoad | "plain";
  readonly operand: Operand;
}

function factorOf(load: SwitchLoad | undefined, { project }: ElectricalBasis): Factor {
  const nominal = project.airframe?.electrical?.nominal;
  const lookup: Lookup<number> | undefined = nominal && load && switchFactor(nominal.value.si, load);
  if (lookup?.covered) {
    return { kind: load!, operand: tabled(`factor of a ${load} load`, lookup, "1", [nominal?.place]) };
  }
  const reason = load
    ? `Table 11-4 does not hold this nominal voltage: the ${load} load is not derated.`
    : "No load type is recorded: the load is not derated.";
  return {
    kind: "plain",
    operand: {
      name: "factor of a load that is not derated",
      value: 1,
      unit: "1",
      places: [],
      notes: [reason],
    },
  };
}
