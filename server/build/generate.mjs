// Everything that is made from the schemas and the rules. `--check` fails when a committed file is not current.
import { writeRecordTypes } from "./record-types.mjs";
import { writeReferencePages } from "./reference-pages.mjs";
import { writeValidators } from "./validators.mjs";

const check = process.argv.includes("--check");
writeValidators();
const current = [writeRecordTypes({ check }), await writeReferencePages({ check })];
if (current.includes(false)) {
  console.error("A generated file is not current: run `npm run generate` and commit what it changes.");
  process.exit(1);
}
