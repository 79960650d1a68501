/** Part 2: a whole check from nothing, against the parser alone on the same texts. */
import { assertPlanted, checkAnew, fingerprintOfFindings } from "./core.mjs";
import { median } from "./statistics.mjs";

const rounds = 7;
/** A large record is measured fewer times. */
const longestMilliseconds = 12_000;

/** @returns medians in milliseconds, and as multiples of the parser */
export function measureFullCheck({ core, records: { files, planted } }) {
  const texts = Object.values(files).map(({ text }) => text);
  const judgement = checkAnew(core, files);
  assertPlanted(judgement, planted);
  const fingerprint = fingerprintOfFindings(core, judgement);

  const works = {
    // Without its check of keys, whose time grows with the square of a map: beside that, anything is quick.
    parse: () => texts.map((text) => core.parseDocument(text, { uniqueKeys: false })),
    read: () => texts.map((text) => core.read(text)),
    check: () => checkAnew(core, files),
  };
  const times = { parse: [], read: [], check: [] };
  const started = performance.now();
  for (let round = 0; round < rounds && performance.now() - started < longestMilliseconds; round++) {
    for (const [name, work] of Object.entries(works)) {
      const before = performance.now();
      const result = work();
      times[name].push(performance.now() - before);
      if (name === "check" && fingerprintOfFindings(core, result) !== fingerprint) {
        throw new Error("Two checks of one text differ.");
      }
      if (name === "parse" && result.some(({ errors }) => errors.length > 0)) {
        throw new Error("The parser can't read the generated records.");
      }
    }
  }
  const [parse, read, check] = [times.parse, times.read, times.check].map(median);
  return { fingerprint, parse, read, check, readMultiple: read / parse, checkMultiple: check / parse };
}
