/** Part 4: what has to be loaded. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { root } from "./core.mjs";

const bundles = ["checker.js", "server.js", "extension.js"];
/** No bundle that holds its program is smaller. */
const leastBytes = 1_000;

/** @returns bytes of each bundle, as it is and packed */
export function measureBundles() {
  return bundles.map((name) => {
    const content = readFileSync(join(root, "dist", name));
    if (content.length < leastBytes) throw new Error(`dist/${name} holds no program.`);
    return { name, bytes: content.length, gzipBytes: gzipSync(content).length };
  });
}
