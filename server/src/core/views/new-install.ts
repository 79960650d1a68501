/**
 * The beginning of an install record, from a kit and an airframe: what follows from the two is filled in, and
 * everything else is a blank.
 */
import { inUnit } from "../quantities";
import type { AirframeRecord, Component, Device, InstallRecord, KitRecord } from "../records/types";
import { voltageDropLimit } from "../tables/voltage-drop-limits";
import { blanksNote, comment, blank as makeBlank, schemaIn } from "./blanks";

/** What a new record is made from; the paths are as the record will name them. */
export interface Beginning {
  readonly kit: KitRecord;
  readonly airframe: AirframeRecord;
  readonly kitPath: string;
  readonly airframePath: string;
}

type Section = keyof InstallRecord & string;

/** Text of the record. Pure; whatever the two records lack becomes a blank. */
export function newInstall({ kit, airframe, kitPath, airframePath }: Beginning): string {
  const serial = airframe.aircraft?.serial?.value;
  const name = kit.kit?.number?.value ?? kit.kit?.name?.value;
  const title = name && serial ? [`  title: ${quoted(`${name} in ${serial}`)}`] : [];
  const components = (kit.components ?? []).filter(({ id }) => id);
  const loads = components.filter(({ draws }) => (draws ?? []).length > 0);
  const circuits = loads.map((load) => circuitOf(load, kit, airframe));
  const parts = [
    [
      blanksNote,
      "document:",
      blank("number", "document", 2),
      "  revision: A",
      ...title,
      "  status: in-work # blanks warn; with any other status they are errors",
    ],
    [`airframe: ${quoted(airframePath)}`, `kit: ${quoted(kitPath)}`],
    list(
      "conditions",
      phasesOf(airframe).map((phase) => condition(phase, loads, airframe)),
    ),
    list(
      "placement",
      components.map(({ id, servicing }) => [
        `component: ${id!.value}`,
        blank("arm", "placement"),
        ...(servicing?.length ? [blank("served-through", "placement")] : []),
      ]),
    ),
    removable(airframe),
    list(
      "protection",
      circuits.map((circuit) => protection(circuit, airframe)),
    ),
    list(
      "wires",
      circuits.flatMap((circuit) => wires(circuit, airframe)),
    ),
  ];
  return `${parts
    .filter((part) => part.length > 0)
    .map((part) => part.join("\n"))
    .join("\n\n")}\n`;
}

/** A section with its entries, each given as lines. */
function list(key: Section, entries: readonly (readonly string[])[]): string[] {
  if (entries.length === 0) return [];
  return [
    `${key}:`,
    ...entries.flatMap((lines) => lines.map((line, at) => `${at === 0 ? "  - " : "    "}${line}`)),
  ];
}

function blank(key: string, section: Section, indent = 0): string {
  return makeBlank(key, schemaIn("install", section)?.properties?.[key], indent);
}

/** Phases that the airframe's own loads know; a flight without them has a cruise at least. */
function phasesOf({ electrical }: AirframeRecord): string[] {
  const order = schemaIn("install", "conditions")?.properties?.phase?.enum ?? [];
  const named = new Set(
    (electrical?.existingLoads ?? []).flatMap(({ currents }) => Object.keys(currents ?? {}).map(kebab)),
  );
  const known = order.filter((phase) => named.has(phase));
  return known.length > 0 ? known : ["cruise"];
}

function kebab(key: string): string {
  return key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}

function condition(phase: string, loads: readonly Component[], { electrical }: AirframeRecord): string[] {
  const sources = electrical?.sources ?? [];
  const turning = sources.filter(({ kind, id }) => kind?.value === "alternator" && id);
  const lost = phase === "source-failed" ? turning.map(({ id }) => id!.value) : [];
  const runs = turning.length > 0 && phase !== "ground-power" && phase !== "source-failed";
  return [
    `id: ${phase}`,
    `phase: ${phase}`,
    blank("altitude", "conditions"),
    blank("ambient", "conditions"),
    ...(runs ? [blank("engine-speed", "conditions")] : []),
    ...(lost.length === 1 ? [`failed: [${lost[0]}]`] : []),
    ...(lost.length > 1 ? [blank("failed", "conditions")] : []),
    ...loadsOf(phase, loads),
  ];
}

/** After the loss of a source only what is essential runs on, until the engineer says otherwise. */
function loadsOf(phase: string, loads: readonly Component[]): string[] {
  if (loads.length === 0) return ["loads: {}"];
  const running =
    phase === "source-failed" ? loads.filter(({ essential }) => essential?.value === true) : loads;
  return running.length === 0
    ? ["loads: {} # what still runs: nothing of this kit is essential"]
    : ["loads: # leave out what is off", ...running.map(modeOf)];
}

/** The one mode that a load has, or a blank with all of them. */
function modeOf({ id, draws }: Component): string {
  const modes = (draws ?? []).flatMap(({ mode }) => mode?.value ?? []);
  if (modes.length === 1) return `  ${id!.value}: ${modes[0]}`;
  return comment(`  ${id!.value}:`, [modes.join(" or ")]);
}

/** Only whoever fits the kit knows what comes out; what might is told. */
function removable({ equipment }: AirframeRecord): string[] {
  const ids = (equipment ?? []).flatMap(({ id }) => id?.value ?? []);
  if (ids.length === 0) return [];
  return [
    "# Equipment that is taken out, if any:",
    "# removed:",
    ...ids.map((id) => `#   - { equipment: ${id} }`),
  ];
}

/** A load that draws current, and the kit's device that it gets. */
interface Circuit {
  readonly load: Component;
  readonly device: Device | undefined;
  /** What the device is called in its place. */
  readonly guard: string;
}

function circuitOf(load: Component, kit: KitRecord, { electrical }: AirframeRecord): Circuit {
  const device = smallestDevice(load, kit, electrical?.nominal && inUnit(electrical.nominal.value, "V"));
  return { load, device, guard: `${device?.kind?.value === "fuse" ? "F" : "CB"}-${load.id!.value}` };
}

function protection({ device, guard }: Circuit, { electrical }: AirframeRecord): string[] {
  const buses = (electrical?.buses ?? []).flatMap(({ id }) => id?.value ?? []);
  return [
    `id: ${guard}`,
    device ? `device: ${device.id!.value}` : blank("device", "protection"),
    buses.length === 1
      ? `mounted-on: ${buses[0]}`
      : comment("mounted-on:", [buses.length > 0 ? buses.join(" or ") : undefined]),
  ];
}

/**
 * The kit's smallest device that carries the load's largest draw; which of them it is to be is checked later. A
 * constant power draws more the lower its voltage: it is taken at the lowest that the allowed drop leaves it.
 */
function smallestDevice(
  { draws }: Component,
  { devices }: KitRecord,
  volts: number | undefined,
): Device | undefined {
  const drop = volts === undefined ? undefined : voltageDropLimit(volts, "continuous");
  const lowest = volts === undefined ? undefined : volts - (drop?.covered ? drop.value : 0);
  const amps = (draws ?? []).map(({ current, power }) => {
    if (current) return inUnit(current.value, "A");
    return power && lowest !== undefined ? inUnit(power.value, "W") / lowest : undefined;
  });
  if (amps.length === 0 || amps.some((one) => one === undefined)) return undefined;
  const needed = Math.max(...(amps as number[]));
  const fitting = (devices ?? []).filter(
    ({ id, rating }) => id && rating && inUnit(rating.value, "A") >= needed,
  );
  return fitting.toSorted((a, b) => a.rating!.value.si - b.rating!.value.si)[0];
}

/** A run from the breaker to the load and, where the airframe has ground points, one from the load to ground. */
function wires({ load, guard }: Circuit, { electrical }: AirframeRecord): string[][] {
  const grounds = (electrical?.grounds ?? []).flatMap(({ id }) => id?.value ?? []);
  const run = (from: string, to: string) => [
    blank("id", "wires"),
    `from: ${from}`,
    to,
    blank("gauge", "wires"),
    blank("length", "wires"),
    blank("rating", "wires"),
  ];
  const supply = run(guard, `to: ${load.id!.value}`);
  if (grounds.length === 0) return [supply];
  const ground = grounds.length === 1 ? `to: ${grounds[0]}` : comment("to:", [grounds.join(" or ")]);
  return [supply, run(load.id!.value, ground)];
}

/** Plain where YAML takes it as it is. */
function quoted(text: string): string {
  return /^[A-Za-z0-9][\w ./-]*$/.test(text) && !/^[\d.]+$/.test(text) ? text : JSON.stringify(text);
}
