import type { Problem } from "../../findings/finding";
import type { Wire } from "../../records/types";
import { zonesWithoutAluminium } from "../../tables/wire-installation-limits";
import { defineRule } from "../rule";
import { circuitExample } from "./circuit-example";
import { ofEachWire } from "./recorded";

type Zone = NonNullable<Wire["zone"]>["value"];
type ZoneWithoutAluminium = (typeof zonesWithoutAluminium.zones)[number];

/** The zones of a record in the words of the table; frequent disconnection is no zone, and is not recorded. */
const zones: Readonly<Partial<Record<Zone, { name: ZoneWithoutAluminium; words: string }>>> = {
  engine: { name: "engine-mounted-accessory", words: "at engine-mounted accessories" },
  corrosive: { name: "corrosive-fumes", words: "among corrosive fumes" },
  "severe-vibration": { name: "severe-vibration", words: "in severe vibration" },
};

export const aluminiumZone = defineRule<{ wire: string; zone: string }>({
  id: "aluminium-zone",
  severity: "error",
  area: "wires",
  title: "Aluminium wire runs where it is not to be used",
  why:
    "Aluminium breaks by vibration and handling sooner than copper, and it corrodes. It is not for engine-mounted " +
    "accessories, corrosive fumes, severe vibration, or joints that are taken apart often.",
  sources: [zonesWithoutAluminium.source],
  say: ({ wire, zone }) => ({
    what: `Wire ${wire} is aluminium and runs ${zone}.`,
    todo: "Take copper, or another route.",
  }),
  check: ofEachWire(function* (wire, subject): Iterable<Problem> {
    const zone = wire.zone && zones[wire.zone.value];
    if (wire.material?.value !== "aluminium" || !zone) return;
    if (!zonesWithoutAluminium.zones.includes(zone.name)) return;
    yield {
      rule: "aluminium-zone",
      subject,
      place: wire.material.place,
      facts: { wire: subject.id, zone: zone.words },
      related: [{ place: wire.zone!.place, words: "where it runs" }],
    };
  }),
  examples: () => [
    {
      title: "Aluminium to an accessory on the engine",
      text: circuitExample({ material: "aluminium", gauge: "8 AWG", keys: "zone: engine" }),
      finds: ["P1 is aluminium and runs at engine-mounted accessories"],
    },
    {
      title: "Aluminium in the cabin",
      text: circuitExample({ material: "aluminium", gauge: "8 AWG", keys: "zone: cabin" }),
      finds: [],
    },
    { title: "Copper at the engine", text: circuitExample({ keys: "zone: engine" }), finds: [] },
  ],
});
