/** Part 1: from a keystroke to the diagnostics of its version, over stdio. */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout } from "node:timers/promises";
import { fileURLToPath, pathToFileURL } from "node:url";
import { assertPlanted, checkAnew, fingerprintOfDiagnostics, fingerprintOfFindings, root } from "./core.mjs";
import { Typist } from "./keystrokes.mjs";
import { LanguageSession } from "./language-session.mjs";
import { quantile } from "./statistics.mjs";

/** What the extension starts its server with. */
const serverFlags = JSON.parse(readFileSync(join(root, "client/src/server-flags.json"), "utf8"));
/**
 * Keystrokes until the engine has compiled what is hot, some twenty seconds of typing: they are told apart from those
 * of the hours that follow.
 */
const warmUp = 200;
/** With a large record the typing ends here, after fewer keystrokes. */
const longestMilliseconds = 30_000;
/** And the warming up here. */
const longestWarmUpMilliseconds = 20_000;
/** Answers that are compared with a check made anew. */
const comparisons = 4;

/**
 * Types into one record with the server in front of it, and by turns into the same with the empty server.
 *
 * @param pause before each keystroke, in milliseconds. What a server leaves to its helper threads, such as compiling
 *   what is hot, is done in a person's pauses; without any it delays the next answer.
 *
 * @returns times in milliseconds. `floor` is the empty server; `beyondFloor` is the server less the median of
 *   the floor.
 */
export async function measureEdits({ core, folder, records: { files, planted }, keystrokes, pause }) {
  for (const { name, text } of Object.values(files)) writeFileSync(join(folder, name), text);
  const uri = pathToFileURL(join(folder, files.install.name)).href;
  const server = new LanguageSession([...serverFlags, join(root, "dist/server.js"), "--stdio"]);
  const empty = new LanguageSession([fileURLToPath(new URL("empty-server.mjs", import.meta.url)), "--stdio"]);
  try {
    await Promise.all([server, empty].map((session) => session.initialize(pathToFileURL(folder).href)));
    await empty.open(uri, files.install.text);
    const opened = await server.open(uri, files.install.text);
    const fresh = checkAnew(core, files);
    assertPlanted(fresh, planted);
    assertSame(
      fingerprintOfDiagnostics(opened.diagnostics),
      fingerprintOfFindings(core, fresh),
      "at opening",
    );

    const typed = await type({ core, files, keystrokes, pause, server, empty });
    return { opening: opened.milliseconds, ...typed };
  } finally {
    await Promise.all([server.close(), empty.close()]);
  }
}

async function type({ core, files, keystrokes, pause, server, empty }) {
  const typist = new Typist(files.install.text);
  const strike = async (order) => {
    await setTimeout(pause);
    const { kind, ...change } = typist.next();
    const answers = new Map();
    for (const session of order) answers.set(session, await session.change(change));
    return { kind, server: answers.get(server), empty: answers.get(empty) };
  };

  const started = performance.now();
  const hasTime = (until) => performance.now() - started < until;
  const sampled = async (samples) => {
    // Taking turns at being first, so that neither has the quieter machine.
    const { kind, ...answers } = await strike(samples.length % 2 === 0 ? [server, empty] : [empty, server]);
    samples.push({ kind, server: answers.server.milliseconds, floor: answers.empty.milliseconds });
    return answers.server.diagnostics;
  };
  const first = [];
  while (first.length < warmUp && hasTime(longestWarmUpMilliseconds)) await sampled(first);

  const samples = [];
  let last;
  do {
    last = await sampled(samples);
    if (samples.length % Math.ceil(keystrokes / comparisons) === 0 && samples.length < keystrokes) {
      compare(core, files, typist, last, samples.length);
    }
  } while (samples.length < keystrokes && hasTime(longestWarmUpMilliseconds + longestMilliseconds));
  const fingerprint = compare(core, files, typist, last, samples.length);
  return { fingerprint, atFirst: timesOf(first), ...timesOf(samples) };
}

function timesOf(samples) {
  const floor = summary(samples.map((sample) => sample.floor));
  const beyond = (some) => summary(some.map((sample) => sample.server - floor.p50));
  const kinds = [...new Set(samples.map(({ kind }) => kind))].sort();
  return {
    keystrokes: samples.length,
    floor,
    server: summary(samples.map((sample) => sample.server)),
    beyondFloor: beyond(samples),
    beyondFloorByKind: Object.fromEntries(
      kinds.map((kind) => [kind, beyond(samples.filter((sample) => sample.kind === kind))]),
    ),
  };
}

function compare(core, files, typist, diagnostics, count) {
  const answered = fingerprintOfDiagnostics(diagnostics);
  const fresh = fingerprintOfFindings(core, checkAnew(core, files, typist.text));
  assertSame(answered, fresh, `after keystroke ${count}`);
  return answered;
}

function assertSame(answered, fresh, when) {
  if (answered !== fresh) {
    throw new Error(`The server's answer ${when} is not that of a fresh check: ${answered}; ${fresh}.`);
  }
}

function summary(samples) {
  return { p50: quantile(samples, 0.5), p95: quantile(samples, 0.95), max: Math.max(...samples) };
}
