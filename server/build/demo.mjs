// The main job on the demo: checks a faulty and a sound record, and says how to see the same in the editor.
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { root } from "./schemas.mjs";

const demo = join(root, "client", "demo");

function check(expected, ...args) {
  console.log(`\n$ tailcone check ${args.join(" ")}\n`);
  const { status } = spawnSync(process.execPath, [join(root, "dist", "tailcone.js"), "check", ...args], {
    cwd: demo,
    stdio: "inherit",
  });
  if (status !== expected) {
    console.error(`Expected exit code ${expected}, got ${status}.`);
    process.exit(1);
  }
}

const faulty = "survey-rack-0417-faulty.install.yaml";
check(1, "--brief", faulty);
check(1, "--only", "wire-voltage-drop", faulty);
check(0, "survey-rack-0417.install.yaml");

console.log(`
The first record is a draft with faults planted in it: all of them in a line
each, then one at length, with its calculation and sources. The second is sound.
To see every finding at length, from client/demo:

  node ../../dist/tailcone.js check ${faulty}

To see the same while you type, open this folder in VS Code and press F5: a
second window opens on client/demo. Open survey-rack-0417.install.yaml there,
change the gauge of wire P102A8 from 8 AWG to 12 AWG, and rest the pointer on
it. Or install the extension: 'npm run package', then 'Extensions: Install from
VSIX...' with dist/tailcone.vsix.`);
