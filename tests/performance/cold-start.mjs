/** Part 3: the command line from a standing start, against Node with nothing to do. */
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "./core.mjs";
import { median } from "./statistics.mjs";

const rounds = 15;

const program = join(root, "dist/tailcone.js");
const { version } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));

const commands = {
  node: { arguments: ["-e", "0"], isRight: ({ status }) => status === 0 },
  version: {
    arguments: [program, "--version"],
    isRight: ({ status, stdout }) => status === 0 && stdout === `${version}\n`,
  },
  check: {
    arguments: [program, "check", "client/demo/survey-rack-0417.install.yaml", "--report", "json"],
    isRight: ({ status, stdout }) => status === 0 && findingsIn(stdout) === 0,
  },
};

/** Says that a check which finds nothing has looked. */
const faulty = [program, "check", "client/demo/survey-rack-0417-faulty.install.yaml", "--report", "json"];

/** @returns medians in milliseconds, and as multiples of `node -e 0` */
export function measureColdStart() {
  const { status, stdout } = run(faulty);
  if (status !== 1 || !(findingsIn(stdout) > 0)) throw new Error("The faulty demo record passes its check.");

  const times = { node: [], version: [], check: [] };
  // The first round only brings the files into memory.
  for (let round = 0; round <= rounds; round++) {
    for (const [name, command] of Object.entries(commands)) {
      const before = performance.now();
      const result = run(command.arguments);
      const milliseconds = performance.now() - before;
      if (!command.isRight(result)) {
        throw new Error(`'${command.arguments.join(" ")}' ended with ${result.status}: ${result.stdout}`);
      }
      if (round > 0) times[name].push(milliseconds);
    }
  }
  const [node, version, check] = [times.node, times.version, times.check].map(median);
  return {
    findingsInFaulty: findingsIn(stdout),
    node,
    version,
    check,
    versionMultiple: version / node,
    checkMultiple: check / node,
  };
}

/**
 * Without what the surroundings make every Node load, such as certificates: that is no part of the check, and a
 * multiple of a start that is slow for its own reasons flatters.
 */
const { NODE_EXTRA_CA_CERTS, NODE_OPTIONS, ...env } = process.env;

function run(argv) {
  return spawnSync(process.execPath, argv, { cwd: root, encoding: "utf8", env });
}

function findingsIn(report) {
  return JSON.parse(report).files.reduce((sum, { findings }) => sum + findings.length, 0);
}
