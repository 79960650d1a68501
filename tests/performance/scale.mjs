/**
 * A fleet at once: so many records of so many lines, checked as users do, against a general-purpose YAML linter
 * with its own rules on the same files in the same run (`yamllint`, of Debian's package of that name). Time is that of the
 * processor, so that a busy machine changes it less; memory is the most that was held at once.
 */
import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { availableParallelism, tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { generateRecords } from "./generate-records.mjs";

const { values } = parseArgs({
  options: {
    records: { type: "string", default: "1000" },
    lines: { type: "string", default: "1000" },
    json: { type: "boolean", default: false },
  },
});
const records = Number(values.records);
const program = new URL("../../dist/tailcone.js", import.meta.url).pathname;
const folder = mkdtempSync(join(tmpdir(), "tailcone-scale-"));
try {
  const lines = writeFleet(folder);
  const runs = {
    "one thread": await measure(process.execPath, [program, "check", "--brief", "--jobs", "1", folder]),
    "every processor": await measure(process.execPath, [program, "check", "--brief", folder]),
    ...(spawnSync("yamllint", ["--version"]).status === 0 && {
      yamllint: await measure("yamllint", ["--format", "parsable", folder]),
    }),
  };
  const linter = runs.yamllint;
  const results = {
    records,
    lines,
    processors: availableParallelism(),
    runs: Object.fromEntries(
      Object.entries(runs).map(([name, run]) => [
        name,
        { ...run, ...(linter && { timesLinter: run.processorSeconds / linter.processorSeconds }) },
      ]),
    ),
  };
  process.stdout.write(values.json ? `${JSON.stringify(results, undefined, 2)}\n` : table(results));
} finally {
  rmSync(folder, { recursive: true, force: true });
}

/** Install records that share an airframe and a kit; gives the lines of all files together. */
function writeFleet(target) {
  const { install, ...others } = generateRecords(Number(values.lines)).files;
  let lines = 0;
  const write = (name, text) => {
    writeFileSync(join(target, name), text);
    lines += text.split("\n").length - 1;
  };
  for (const { name, text } of Object.values(others)) write(name, text);
  for (let number = 1; number <= records; number++) {
    write(`record-${String(number).padStart(4, "0")}.install.yaml`, `# ${number}\n${install.text}`);
  }
  return lines;
}

/** Runs a program to its end; what it prints is counted and dropped. */
function measure(command, args) {
  return new Promise((resolve, reject) => {
    const started = performance.now();
    const child = spawn(command, args, { stdio: ["ignore", "pipe", "inherit"] });
    let printed = 0;
    let kilobytes = 0;
    let ticks = 0;
    // The last look at a process that is still there: no more than a tenth of a second is missed.
    const look = setInterval(() => {
      try {
        const status = readFileSync(`/proc/${child.pid}/status`, "utf8");
        kilobytes = Math.max(kilobytes, Number(/VmHWM:\s+(\d+)/.exec(status)?.[1] ?? 0));
        const stat = readFileSync(`/proc/${child.pid}/stat`, "utf8").split(") ")[1].split(" ");
        ticks = Number(stat[11]) + Number(stat[12]);
      } catch {
        // it has ended
      }
    }, 100);
    child.stdout.on("data", (chunk) => {
      printed += chunk.toString().split("\n").length - 1;
    });
    child.on("error", reject);
    child.on("close", (code) => {
      clearInterval(look);
      // 1 is findings, for each of them; anything else is no measurement.
      if (code !== 0 && code !== 1)
        return reject(new Error(`${command} ${args.join(" ")} ended with ${code}`));
      const seconds = (performance.now() - started) / 1000;
      process.stderr.write(`${command} ${args.slice(0, -1).join(" ")}: ${seconds.toFixed(1)} s\n`);
      resolve({
        code,
        seconds,
        processorSeconds: ticks / 100,
        megabytes: kilobytes / 1024,
        linesPrinted: printed,
      });
    });
  });
}

function table({ records: count, lines, processors, runs }) {
  const rows = Object.entries(runs).map(
    ([name, { seconds, processorSeconds, megabytes, linesPrinted, timesLinter }]) =>
      `${name.padEnd(16)} ${seconds.toFixed(1).padStart(8)} s ${processorSeconds.toFixed(1).padStart(8)} s of processor` +
      ` ${megabytes.toFixed(0).padStart(6)} MB ${String(linesPrinted).padStart(7)} lines printed${timesLinter === undefined ? "" : `  ${timesLinter.toFixed(2)} x the linter`}`,
  );
  return `${[`${count} records, ${lines} lines in all, ${processors} processors`, ...rows].join("\n")}\n`;
}
