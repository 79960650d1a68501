/**
 * The benchmark: how long a keystroke, a whole check and a cold start take, and how large the bundles are. It
 * measures what was built last, and holds every answer against one made another way, so that nothing is quick
 * by doing nothing. Budgets are reported; to be over one is no failure, as the machine has its part in it.
 */
import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { availableParallelism, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { heldAgainstBudgets } from "./budgets.mjs";
import { measureBundles } from "./bundle-size.mjs";
import { measureColdStart } from "./cold-start.mjs";
import { loadCore } from "./core.mjs";
import { measureEdits } from "./edits.mjs";
import { measureFullCheck } from "./full-check.mjs";
import { generateRecords } from "./generate-records.mjs";
import { tableLines } from "./table.mjs";

const parts = ["edits", "check", "start", "size"];

const help = `Usage: node tests/performance/bench.mjs [${parts.join("|")} ...] [options]

Without a part, all of them. Build first: npm run build.

  --lines <n,n,...>    lengths of the install record; default 1000,10000,40000
  --keystrokes <n>     for each length, after those at first; default 400
  --pause <ms>         between keystrokes; default 50, faster than anybody types;
                       0 for one upon the other
  --json               results as JSON
  --help               this text
`;

process.exitCode = await main(process.argv.slice(2));

async function main(argv) {
  let wanted;
  try {
    wanted = parseWanted(argv);
  } catch (error) {
    process.stderr.write(`bench: ${error.message}\n`);
    return 2;
  }
  if (wanted.help) {
    process.stdout.write(help);
    return 0;
  }
  const measured = await measure(wanted);
  const results = { ...measured, budgets: heldAgainstBudgets(measured) };
  const report = wanted.json ? JSON.stringify(results, undefined, 2) : tableLines(results).join("\n");
  process.stdout.write(`${report}\n`);
  return 0;
}

function parseWanted(argv) {
  const { values, positionals } = parseArgs({
    args: argv,
    allowPositionals: true,
    options: {
      lines: { type: "string", default: "1000,10000,40000" },
      keystrokes: { type: "string", default: "400" },
      pause: { type: "string", default: "50" },
      json: { type: "boolean", default: false },
      help: { type: "boolean", default: false },
    },
  });
  const unknown = positionals.find((part) => !parts.includes(part));
  if (unknown) throw new Error(`there is no part '${unknown}'; there are ${parts.join(", ")}`);
  const lengths = values.lines.split(",").map(Number);
  const [keystrokes, pause] = [values.keystrokes, values.pause].map(Number);
  if (![...lengths, keystrokes].every((number) => Number.isInteger(number) && number > 0)) {
    throw new Error("--lines and --keystrokes take whole numbers above 0");
  }
  if (!(pause >= 0)) throw new Error("--pause takes milliseconds, such as 50");
  return {
    ...values,
    parts: positionals.length > 0 ? positionals : parts,
    lengths,
    keystrokes,
    pause,
  };
}

async function measure({ parts: wanted, lengths, keystrokes, pause }) {
  const folder = mkdtempSync(join(tmpdir(), "tailcone-bench-"));
  const results = {
    node: process.version,
    processors: availableParallelism(),
    load: loadavg()[0],
  };
  try {
    // The short ones first: they suffer most from a machine that is still busy with the long ones.
    if (wanted.includes("size")) results.bundles = measureBundles();
    if (wanted.includes("start")) results.coldStart = measureColdStart();
    if (!wanted.includes("edits") && !wanted.includes("check")) return results;

    const core = await loadCore(folder);
    const sizes = lengths.map((lines) => ({ lines, records: generateRecords(lines) }));
    const lengthOf = ({ files }) => files.install.text.split("\n").length - 1;
    if (wanted.includes("edits")) {
      results.edits = [];
      for (const { lines, records } of sizes) {
        const workspace = join(folder, String(lines));
        mkdirSync(workspace);
        const measured = await measureEdits({ core, folder: workspace, records, keystrokes, pause });
        results.edits.push({ asked: lines, lines: lengthOf(records), pause, ...measured });
      }
    }
    if (wanted.includes("check")) {
      results.fullCheck = sizes.map(({ lines, records }) => ({
        asked: lines,
        lines: lengthOf(records),
        ...measureFullCheck({ core, records }),
      }));
    }
    return results;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
