/**
 * How long a large network takes: 500 branches, 10 conditions, wires that warm. Prints the time of all
 * conditions, and how many times as long a single dense solution of a matrix of that size by mathjs takes.
 * Times are printed, never judged; what is judged is that the answers are the same as ever.
 *
 * Run with: node tests/performance/network.mjs
 */
import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";
import { lusolve } from "mathjs";

/** Of the potentials to a microvolt, so that only a change of method shows. */
const expected = "fe7d969864d4f31d";

const root = fileURLToPath(new URL("../..", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "tailcone-network-"));
try {
  const outfile = join(folder, "network.mjs");
  await build({
    entryPoints: [join(root, "server/src/core/methods/network/index.ts")],
    outfile,
    bundle: true,
    format: "esm",
    logLevel: "warning",
  });
  const { prepare, reference } = await import(pathToFileURL(outfile).href);
  measure(prepare, aircraft(reference), reference);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

function measure(prepare, { topology, conditions }, reference) {
  const network = prepare(topology);
  const solveAll = () => conditions.map((condition) => network.solve(condition));
  const cold = time(() => prepare(topology).solve(conditions[0]));
  const first = solveAll();
  const rounds = first.map(({ iterations }) => iterations);
  const warm = fastest(50, solveAll);
  const planning = fastest(50, () => prepare(topology).solve({ ...conditions[0], resistanceAt: undefined }));
  const single = fastest(50, () => network.solve({ ...conditions[0], resistanceAt: undefined }));
  const dense = time(() => denseSolution(topology, conditions[0], reference));

  console.log(
    `${topology.branches.length} branches, ${topology.nodeCount} nodes, ${conditions.length} conditions`,
  );
  console.log(`factorisations per condition: ${rounds.join(" ")}`);
  console.log(`first answer, with planning, code cold: ${cold.toFixed(2)} ms`);
  console.log(
    `one condition without warming: ${single.toFixed(3)} ms, with planning ${planning.toFixed(3)} ms`,
  );
  console.log(`all conditions, warm: ${warm.toFixed(2)} ms`);
  console.log(`one dense solution by mathjs: ${dense.toFixed(0)} ms, ${(dense / warm).toFixed(0)} x as long`);

  const answers = solveAll();
  for (const answer of answers) assert.equal(answer.kind, "solved");
  const volts = answers.map(({ potentials }) => Array.from(potentials, (value) => Math.round(value * 1e6)));
  const hash = createHash("sha256").update(JSON.stringify(volts)).digest("hex").slice(0, 16);
  console.log(`answers: ${hash}`);
  assert.equal(hash, expected);
}

/** Two alternators and a battery on three main buses; distribution buses; loads by feed and return wires. */
function aircraft(reference) {
  const random = lehmer(7);
  const between = (low, high) => low + (high - low) * random();
  const branches = [];
  const loads = [];
  const ohms = [];
  let nodeCount = 0;
  const node = () => nodeCount++;
  const connect = (from, to, resistance) => {
    branches.push({ from, to });
    ohms.push(resistance);
  };
  const mains = [node(), node(), node()];
  const sources = mains.map(() => ({ node: node() }));
  for (const [index, main] of mains.entries()) connect(sources[index].node, main, between(0.001, 0.004));
  // Contactors that tie the buses; the last one opens in some conditions.
  connect(mains[0], mains[1], 0);
  const tie = branches.length;
  connect(mains[1], mains[2], 0);
  const buses = mains.flatMap((main) =>
    Array.from({ length: 6 }, () => {
      const bus = node();
      connect(main, bus, between(0.002, 0.008));
      return bus;
    }),
  );
  while (branches.length < 497) {
    const bus = buses[Math.floor(random() * buses.length)];
    const [breaker, load, back] = [node(), node(), node()];
    connect(bus, breaker, between(0.005, 0.05));
    connect(breaker, load, between(0.01, 0.1));
    connect(back, reference, between(0.005, 0.05));
    loads.push({ from: load, to: back });
  }
  // Feeders in parallel and loops between distribution buses.
  while (branches.length < 500) connect(buses[branches.length % 7], buses[(branches.length % 5) + 9], 0.02);

  const kinds = loads.map((_, index) => {
    if (index % 3 === 0) return { kind: "current", amps: between(0.1, 2) };
    if (index % 3 === 1) return { kind: "power", watts: between(5, 60) };
    return { kind: "resistance", ohms: between(15, 120) };
  });
  const conditions = Array.from({ length: 10 }, (_, phase) => ({
    ohms: ohms.map((value, branch) => (branch === tie && phase % 4 === 3 ? Number.POSITIVE_INFINITY : value)),
    loads: kinds.map((load, index) => ((index * 7 + phase * 3) % 10 < 7 ? load : undefined)),
    sources: [
      phase === 5 ? undefined : { volts: 28.2, ohms: 0, mostAmps: phase === 6 ? 40 : 150, oneWay: true },
      { volts: 28, ohms: 0.01, mostAmps: 100, oneWay: true },
      { volts: 24.6, ohms: 0.02, oneWay: phase % 2 === 0 },
    ],
    // A made-up wire that warms with the square of its current.
    resistanceAt: (branch, amps) => ohms[branch] * (1 + Math.min(0.3, 0.002 * amps * amps)),
  }));
  return { topology: { nodeCount, branches, loads, sources }, conditions };
}

/** The matrix of the same size and pattern, with every source as its conductance and loads as small leaks. */
function denseSolution({ nodeCount, branches, loads, sources }, { ohms }, reference) {
  const rows = Array.from({ length: nodeCount }, () => new Array(nodeCount).fill(0));
  const add = (from, to, siemens) => {
    for (const [a, b] of [
      [from, to],
      [to, from],
    ]) {
      if (a === reference) continue;
      rows[a][a] += siemens;
      if (b !== reference) rows[a][b] -= siemens;
    }
  };
  for (const [index, { from, to }] of branches.entries()) add(from, to, 1 / (ohms[index] || 1e-4));
  for (const { from, to } of loads) add(from, to, 0.01);
  for (const { node } of sources) add(node, reference, 100);
  return lusolve(rows, new Array(nodeCount).fill(1));
}

/** Park and Miller's generator (Communications of the ACM 31, 1988): the same numbers on every machine. */
function lehmer(seed) {
  let state = seed;
  return () => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647;
  };
}

function time(work) {
  const start = performance.now();
  work();
  return performance.now() - start;
}

/** Of many times the one that other work on the machine disturbed least. */
function fastest(times, work) {
  return Math.min(...Array.from({ length: times }, () => time(work)));
}
