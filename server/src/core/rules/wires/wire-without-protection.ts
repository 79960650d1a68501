import type { Problem } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { edgesOf } from "../../graph/electrical/layout";
import type { WireResult } from "../../graph/electrical/wires";
import type { Project } from "../../project";
import { advisoryCircular } from "../../tables/electrical-documents";
import { wireChartBreaker, wireChartFuse } from "../../tables/wire-chart";
import { defineRule } from "../rule";
import { circuitExample } from "./circuit-example";

/** The largest device of the kit that neither the wire chart nor what the wire may carry speaks against. */
function largestBorne({ wire, states }: WireResult, { kit }: Project): string | undefined {
  const allowed = Math.min(...states.flatMap((state) => state.allowed?.value ?? []));
  if (!wire.gauge || !Number.isFinite(allowed)) return undefined;
  const gauge = wire.gauge.value.si;
  const hasChart = wire.material?.value !== "aluminium";
  const borne = (kit?.devices ?? []).flatMap(({ id, kind, rating }) => {
    const chart = kind?.value === "fuse" ? wireChartFuse(gauge) : wireChartBreaker(gauge);
    const amps = rating?.value.si;
    const isAboveChart = hasChart && chart.covered && amps !== undefined && amps > chart.value;
    const isBorne = amps !== undefined && amps <= allowed && !isAboveChart;
    return id && isBorne ? [{ id: id.value, amps }] : [];
  });
  return borne.toSorted((a, b) => b.amps - a.amps)[0]?.id;
}

/** What a wire can start at or lead to: a name among them has to be one's own. */
const points = ["bus", "protection", "contact", "junction", "component", "ground"] as const;

/** A name for the device of a wire: CB-P1, or CB-P1-2 where that is taken. */
function freeId(wire: string, { names }: Project): string {
  const isTaken = (id: string) => names.find(points, id).length > 0;
  let id = `CB-${wire}`;
  for (let count = 2; isTaken(id); count++) id = `CB-${wire}-${count}`;
  return id;
}

export const wireWithoutProtection = defineRule<{
  wire: string;
  bus: string;
  /** An id that nothing has yet. */
  free: string;
  /** The largest device of the kit that the wire bears; undefined where there is none, or it is not known. */
  device?: string;
}>({
  id: "wire-without-protection",
  severity: "error",
  area: "wires",
  title: "No breaker or fuse lies between the bus and a wire",
  why:
    "A fault anywhere on an unprotected wire is fed by the whole system until something burns open. The device " +
    "belongs as close to the bus as possible.",
  sources: [advisoryCircular("par. 11-47", "published")],
  say: ({ wire, bus, free, device }) => ({
    what: `No breaker or fuse lies between bus ${bus} and wire ${wire}.`,
    todo: device
      ? `Mount a device on the bus, as in { id: ${free}, device: ${device}, mounted-on: ${bus} }, and start the wire there.`
      : `Mount a breaker or fuse that the wire bears on ${bus}, and start the wire there.`,
  }),
  *check(project): Iterable<Problem> {
    const { trace } = electricalOf(project);
    for (const edge of trace.unguarded) {
      const { wire } = edgesOf(project)[edge]!;
      const bus = trace.paths.findLast(({ feed }) => feed.includes(edge))?.buses[0];
      if (!wire?.id || bus === undefined) continue;
      const result = electricalOf(project).wires.find((one) => one.wire === wire);
      const device = result && largestBorne(result, project);
      yield {
        rule: "wire-without-protection",
        subject: { kind: "wire", id: wire.id.value },
        place: (wire.from ?? wire.id).place,
        facts: { wire: wire.id.value, bus, free: freeId(wire.id.value, project), ...(device && { device }) },
      };
    }
  },
  examples: () => [
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
