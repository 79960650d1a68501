// The main job on the demo: checks a faulty and a sound record, and says how to see the same in the editor.
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { root } from "./schemas.mjs";

const demo = join(root, "client", "demo");

function check(record, expected) {
  console.log(`\n$ tailcone check ${record}\n`);
  const { status } = spawnSync(process.execPath, [join(root, "dist", "tailcone.js"), "check", record], {
    cwd: demo,
    stdio: "inherit",
  });
  if (status !== expected) {
    console.error(`Expected exit code ${expected}, got ${status}.`);
    process.exit(1);
  }
}

check("survey-rack-0417-faulty.install.yaml", 1);
check("survey-rack-0417.install.yaml", 0);

console.log(`
The first record is a draft with faults planted in it; the second is sound.

To see the same while you type, open this folder in VS Code and press F5: a
second window opens on client/demo. Open survey-rack-0417.install.yaml there,
change the gauge of wire P102A8 from 8 AWG to 12 AWG, and rest the pointer on it.
Or install the extension: 'npm run package', then 'Extensions: Install from
VSIX...' with dist/tailcone.vsix.`);
