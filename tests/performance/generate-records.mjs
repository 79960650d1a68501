/**
 * Records of any length for the benchmark: an airframe, a kit and an install record that draws in both. The
 * scenario is invented. The same length and seed give the same texts on every machine.
 *
 * By itself it writes them: `node tests/performance/generate-records.mjs <lines> <folder>`.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { randomNumbers } from "./statistics.mjs";

/** A load's current, and gauge and breaker that hold it over every length used here. */
const circuits = [
  { amps: 1.2, gauge: 20, device: "CB-3" },
  { amps: 2.4, gauge: 20, device: "CB-5" },
  { amps: 4.0, gauge: 18, device: "CB-7" },
  { amps: 6.5, gauge: 16, device: "CB-10" },
  { amps: 9.0, gauge: 14, device: "CB-15" },
];

/** Invented, and wide enough that every current of these records lies within. */
const openingPoints = [
  "{ at: 110 %, earliest: 100 s, latest: 3600 s }",
  "{ at: 200 %, earliest: 5 s, latest: 20 s }",
  "{ at: 1000 %, earliest: 0.05 s, latest: 0.2 s }",
  "{ at: 100000 %, earliest: 0.001 s, latest: 0.002 s }",
].join(", ");

const devices = [
  { id: "CB-3", rating: "3 A" },
  { id: "CB-5", rating: "5 A" },
  { id: "CB-7", rating: "7.5 A" },
  { id: "CB-10", rating: "10 A" },
  { id: "CB-15", rating: "15 A" },
  { id: "CB-60", rating: "60 A" },
];

/** How much of the equipment runs: every `every`th load, in `mode`. */
const conditions = [
  { id: "ground", altitude: 0, ambient: 45, mode: "standby", every: 2 },
  { id: "takeoff", altitude: 2500, ambient: 45, duration: "90 s", mode: "run", every: 2 },
  { id: "climb", altitude: 12500, ambient: 40, mode: "run", every: 1 },
  { id: "cruise", altitude: 24500, ambient: 40, mode: "run", every: 1 },
  { id: "source-failed", altitude: 24500, ambient: 40, duration: "30 min", mode: "standby", every: 3 },
];

const nouns = ["SENSOR", "RECORDER", "HEATER", "LAMP", "BLOWER", "PUMP", "DISPLAY", "VALVE"];

/** Lines of an install record without any system. */
const headLines = 31;

/** One fault in every third system, each kind in turn. */
const faultOrder = ["thin-wire", "misspelt-key", "unknown-ground", "cutout-at-edge"];

/**
 * @param {number} lines of the install record, met within about 5 % from 1,000 lines on
 * @returns `files`: name and text of each record by kind. `planted`: the faults in the install record, each
 *   as rule and subject of the finding that must come of it.
 */
export function generateRecords(lines, seed = 1) {
  const records = new Records(seed);
  do records.addSystem();
  while (records.linesWithHalfASystemMore <= lines);
  return records.result();
}

class Records {
  #random;
  #systems = 0;
  #loads = 0;
  #planted = [];
  #airframe = { equipment: [], panels: [] };
  #kit = { components: [] };
  #install = {
    conditions: conditions.map(() => []),
    placement: [],
    removed: [],
    added: [],
    bundles: [],
    protection: [],
    junctions: [],
    wires: [],
    cutouts: [],
  };

  constructor(seed) {
    this.#random = randomNumbers(seed);
  }

  get linesWithHalfASystemMore() {
    const { conditions: loads, ...sections } = this.#install;
    const ofLoads = loads.reduce((sum, lines) => sum + lines.length, 0);
    const ofSections = Object.values(sections).reduce((sum, lines) => sum + lines.length + 2, 0);
    return headLines + (ofLoads + ofSections) * (1 + 0.5 / this.#systems);
  }

  /** A feeder from the bus to a terminal strip, loads behind breakers on it, and their common return. */
  addSystem() {
    const number = String(++this.#systems).padStart(3, "0");
    const fault =
      this.#systems % 3 === 2 ? faultOrder[Math.floor(this.#systems / 3) % faultOrder.length] : undefined;
    const { bundles, junctions, protection, wires } = this.#install;
    const loads = 3 + this.#below(4);

    wires.push("", `  # System ${number}: feeder, branches and returns along frame ${3 + this.#below(40)}.`);
    protection.push(`  - { id: CB-F${number}, device: CB-60, mounted-on: ${this.#pick(["MAIN", "AUX"])} }`);
    junctions.push(
      `  - { id: TB${number}, location: terminal strip of system ${number} }`,
      `  - { id: TR${number} }`,
    );
    const feeds = `BF${number}`;
    const returns = `BR${number}`;
    // Some bundles hold existing wires too, so that only the others' loading can be computed.
    const existing = this.#systems % 2 === 0 ? 2 : 0;
    bundles.push(
      `  - { id: ${feeds}, wires: ${loads + 1 + existing}, loading: 40 %, ambient: 50 degC }`,
      `  - { id: ${returns}, wires: ${loads + 1}, loading: 40 % }`,
    );
    this.#blockWire(`P${number}F4`, `CB-F${number}`, `TB${number}`, 4, 6, feeds);
    for (let index = 0; index < loads; index++) this.#load(number, index, { feeds, returns }, fault);
    this.#blockWire(`P${number}R4N`, `TR${number}`, "GND-AFT", 4, 4, returns);
    this.#weights(number);
    this.#cutouts(number, fault);
  }

  #load(number, index, bundles, systemFault) {
    const fault = index === 1 ? systemFault : undefined;
    const circuit = circuits[this.#below(circuits.length)];
    const id = `${this.#pick(nouns)}-${number}${"ABCDEF"[index]}`;
    const suffix = `${number}${"ABCDEF"[index]}`;
    const { protection, placement } = this.#install;
    this.#kit.components.push(
      `  - id: ${id}`,
      `    part: QSR-90-${1000 + this.#loads} ${id.split("-")[0].toLowerCase()}`,
      `    weight: ${this.#decimal(0.4, 4)} lb`,
      "    draws:",
      `      - { mode: standby, current: ${(circuit.amps / 4).toFixed(2)} A }`,
      `      - { mode: run, current: ${circuit.amps} A }`,
    );
    for (const [at, condition] of conditions.entries()) {
      if (this.#loads % condition.every === 0)
        this.#install.conditions[at].push(`      ${id}: ${condition.mode}`);
    }
    this.#loads++;
    placement.push(`  - { component: ${id}, arm: ${this.#decimal(330, 160)} in }`);
    protection.push(`  - { id: CB-${suffix}, device: ${circuit.device}, mounted-on: TB${number} }`);

    const gauge = fault === "thin-wire" ? 24 : circuit.gauge;
    const wire = `P${suffix}${gauge}`;
    this.#blockWire(
      wire,
      `CB-${suffix}`,
      id,
      gauge,
      3,
      bundles.feeds,
      fault === "misspelt-key" ? "raiting" : "rating",
    );
    if (fault === "thin-wire") this.#planted.push({ rule: "wire-not-covered", subject: `wire ${wire}` });
    if (fault === "misspelt-key") this.#planted.push({ rule: "key-unknown", subject: `wire ${wire}` });

    const back = `P${suffix}${circuit.gauge}N`;
    const to = fault === "unknown-ground" ? "GND-AFFT" : `TR${number}`;
    if (fault === "unknown-ground")
      this.#planted.push({ rule: "reference-unknown", subject: `wire ${back}` });
    if (index % 2 === 0) this.#blockWire(back, id, to, circuit.gauge, 2, bundles.returns);
    else this.#flowWire(back, id, to, circuit.gauge, 2, bundles.returns);
  }

  #blockWire(id, from, to, gauge, least, bundle, ratingKey = "rating") {
    const remark = this.#below(6) === 0 ? " # measured on the mock-up" : "";
    this.#install.wires.push(
      `  - id: ${id}`,
      `    from: ${from}`,
      `    to: ${to}`,
      `    gauge: ${gauge} AWG`,
      `    length: ${this.#decimal(least, 5)} ft${remark}`,
      `    ${ratingKey}: 150 degC`,
      `    bundle: ${bundle}`,
    );
  }

  #flowWire(id, from, to, gauge, least, bundle) {
    const length = `${this.#decimal(least, 4)} ft`;
    this.#install.wires.push(
      `  - { id: ${id}, from: ${from}, to: ${to}, gauge: ${gauge} AWG, length: ${length}, rating: 150 degC, bundle: ${bundle} }`,
    );
  }

  #weights(number) {
    this.#install.added.push(
      `  - { id: harness-${number}, part: HM-0731-${number} harness, weight: ${this.#decimal(1, 3)} lb, arm: ${this.#decimal(360, 80)} in }`,
    );
    if (this.#systems % 4 !== 1) return;
    this.#airframe.equipment.push(
      `  - { id: unit-${number}, part: B9-${number} unit, weight: ${this.#decimal(2, 6)} lb, arm: ${this.#decimal(360, 80)} in }`,
    );
    this.#install.removed.push(`  - { equipment: unit-${number} }`);
  }

  #cutouts(number, fault) {
    const panel = `PNL-${number}`;
    this.#airframe.panels.push(
      `  - id: ${panel}`,
      "    material: 2024-T3 clad",
      "    thickness: 0.040 in",
      "    outline: { shape: rectangle, width: 24 in, height: 16 in, corner-radius: 1 in }",
      "    fastener-rows:",
      "      - { from: { x: -11.5 in, y: -7.5 in }, to: { x: 11.5 in, y: -7.5 in }, count: 24, diameter: 1/8 in }",
      "      - { from: { x: -11.5 in, y: 7.5 in }, to: { x: 11.5 in, y: 7.5 in }, count: 24, diameter: 1/8 in }",
      '    minimums: { edge: 1.0 in, between: 1.5 in, corner-radius: 0.5 in, data: "Brackenfell repair data B9-51" }',
    );
    const place = (x, y) => `at: { x: ${x} in, y: ${this.#decimal(y, 2)} in }`;
    const isAtEdge = fault === "cutout-at-edge";
    if (isAtEdge) this.#planted.push({ rule: "cutout-edge-distance", subject: `cutout C${number}A` });
    this.#install.cutouts.push(
      `  - id: C${number}A`,
      `    panel: ${panel}`,
      "    purpose: Outlet of the cooling air",
      `    opening: { shape: slot, length: 6 in, width: 3 in, ${place(isAtEdge ? "-8.8" : this.#decimal(-6, 1), -1)}, angle: 20 deg }`,
    );
    if (this.#systems % 2 === 0) return;
    this.#install.cutouts.push(
      `  - id: C${number}B`,
      `    panel: ${panel}`,
      "    purpose: Pass-through of the harness",
      `    opening: { shape: circle, diameter: 2.25 in, ${place(this.#decimal(5, 1), -2)} }`,
    );
  }

  result() {
    return {
      files: {
        airframe: { name: "bench.airframe.yaml", text: this.#airframeText() },
        kit: { name: "bench.kit.yaml", text: this.#kitText() },
        install: { name: "bench.install.yaml", text: this.#installText() },
      },
      planted: this.#planted,
    };
  }

  #installText() {
    const { conditions: loads, ...sections } = this.#install;
    return joined([
      "# An invented installation, written by the benchmark's generator.",
      "document:",
      "  number: HM-0731",
      "  revision: A",
      "  title: Survey system QSR-90 in B9-0502",
      "  status: draft",
      "",
      "airframe: bench.airframe.yaml",
      "kit: bench.kit.yaml",
      "",
      "conditions:",
      ...conditions.flatMap(({ id, altitude, ambient, duration }, index) => [
        `  - id: ${id}`,
        ...(duration ? [`    duration: ${duration}`] : []),
        `    altitude: ${altitude} ft`,
        `    ambient: ${ambient} degC`,
        "    loads:",
        ...loads[index],
      ]),
      ...Object.entries(sections).flatMap(([key, lines]) =>
        lines.length > 0 ? ["", `${key}:`, ...lines] : [],
      ),
    ]);
  }

  #kitText() {
    return joined([
      "kit:",
      "  number: QSR-90",
      "  revision: A",
      "  name: Survey system",
      "  maker: Quillon Instruments",
      "",
      "components:",
      ...this.#kit.components,
      "",
      "devices:",
      ...devices.map(
        ({ id, rating }) =>
          `  - { id: ${id}, kind: breaker, rating: ${rating}, opening: [${openingPoints}] }`,
      ),
    ]);
  }

  #airframeText() {
    return joined([
      "aircraft:",
      "  maker: Brackenfell Works",
      "  type: Type 40",
      "  serial: B9-0502",
      "  kind: aeroplane",
      "  certification-basis: 14 CFR 23 before Amdt 23-64",
      "",
      "datum: Front face of the nose bulkhead",
      "",
      "empty:",
      "  weight: 41200 lb",
      "  arm: 408.0 in",
      "",
      "limits:",
      "  takeoff: 64000 lb",
      "",
      "mac:",
      "  leading-edge: 360.0 in",
      "  length: 130.0 in",
      "",
      "envelopes:",
      "  - id: normal",
      "    forward:",
      "      - { weight: 40000 lb, or-less: true, arm: 385.0 in }",
      "      - { weight: 64000 lb, arm: 390.0 in }",
      "    aft:",
      "      - { weight: 40000 lb, or-less: true, arm: 430.0 in }",
      "      - { weight: 64000 lb, arm: 426.0 in }",
      "",
      "stations:",
      "  - { id: crew, kind: seat, arm: 120.0 in, limit: 600 lb }",
      "  - { id: tanks, kind: fuel, arm: 410.0 in, capacity: 1800 gal, density: 6.7 lb/gal }",
      "",
      "loadings:",
      "  - id: ferry",
      "    envelope: normal",
      "    load:",
      "      - { station: crew, weight: 340 lb }",
      "      - { station: tanks, volume: 300 gal }",
      "  - id: survey",
      "    envelope: normal",
      "    load:",
      "      - { station: crew, weight: 510 lb }",
      "      - { station: tanks, volume: 1500 gal }",
      "",
      "equipment:",
      ...this.#airframe.equipment,
      "",
      "electrical:",
      "  nominal: 28 V",
      "  buses:",
      "    - { id: MAIN, location: behind the right-hand breaker panel }",
      "    - { id: AUX, location: right-hand side of the aft bay }",
      "  grounds:",
      "    - { id: GND-AFT, location: right-hand side of frame 31 }",
      "",
      "panels:",
      ...this.#airframe.panels,
    ]);
  }

  #below(count) {
    return Math.floor(this.#random() * count);
  }

  #pick(things) {
    return things[this.#below(things.length)];
  }

  /** From `least` up, over a range of `width`, with one decimal. */
  #decimal(least, width) {
    return (least + this.#random() * width).toFixed(1);
  }
}

function joined(lines) {
  return `${lines.join("\n")}\n`;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const [lines = "1000", folder = "."] = process.argv.slice(2);
  mkdirSync(folder, { recursive: true });
  for (const { name, text } of Object.values(generateRecords(Number(lines)).files)) {
    writeFileSync(join(folder, name), text);
  }
}
