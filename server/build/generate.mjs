// Everything that is made from the schemas. `--check` changes nothing and fails when a committed file is old.
import { writeRecordTypes } from "./record-types.mjs";
import { writeValidators } from "./validators.mjs";

const check = process.argv.includes("--check");
writeValidators();
if (!writeRecordTypes({ check })) {
  console.error("server/src/core/records/types.ts is not current: run `npm run generate`.");
  process.exit(1);
}
