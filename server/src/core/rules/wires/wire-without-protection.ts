import type { Problem } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { advisoryCircular } from "../../tables/electrical-documents";
import { defineRule } from "../rule";
import { circuitExample } from "./circuit-example";

export const wireWithoutProtection = defineRule<{ wire: string; bus: string }>({
  id: "wire-without-protection",
  severity: "error",
  area: "wires",
  title: "No breaker or fuse lies between the bus and a wire",
  why:
    "A fault anywhere on an unprotected wire is fed by the whole system until something burns open. The device " +
    "belongs as close to the bus as possible.",
  sources: [advisoryCircular("par. 11-47", "published")],
  say: ({ wire, bus }) => ({
    what: `No breaker or fuse lies between bus ${bus} and wire ${wire}.`,
    todo: `Mount the device on the bus, as in { id: CB-RACK, device: CB-50, mounted-on: ${bus} }, and start the wire there.`,
  }),
  *check(project): Iterable<Problem> {
    const { circuit } = electricalOf(project);
    const buses = new Map(circuit.paths.flatMap((path) => path.feed.map((wire) => [wire, path.buses[0]])));
    for (const wire of circuit.unguarded) {
      const bus = buses.get(wire);
      if (!wire.id || bus === undefined) continue;
      yield {
        rule: "wire-without-protection",
        subject: { kind: "wire", id: wire.id.value },
        place: (wire.from ?? wire.id).place,
        facts: { wire: wire.id.value, bus },
      };
    }
  },
  examples: [
    {
      title: "A feeder that starts at the bus itself",
      text: circuitExample({
        protection: [],
        wires: ["{ id: P1, from: MAIN, to: RACK, gauge: 10 AWG, length: 12 ft, rating: 150 degC }"],
      }),
      finds: ["between bus MAIN and wire P1"],
    },
    { title: "A breaker on the bus", text: circuitExample(), finds: [] },
  ],
});
