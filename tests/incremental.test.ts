/** Whatever was edited before: what is recalled is what would be derived and judged anew. */

import { isDeepStrictEqual } from "node:util";
import { expect, it } from "vitest";
import { check, type Judgement } from "../server/src/core/check";
import { applyEdits } from "../server/src/core/edits/text-edit";
import { proveRemedy } from "../server/src/core/remedies";
import { RecordShelf } from "../server/src/core/shelf";
import { worksheetOf } from "../server/src/core/views/worksheet";
import { changesOfText, edited } from "./support/edited";
import { fc } from "./support/random";
import { demo, demoRecords } from "./support/workspace";

/** More runs find what is rare: INCREMENTAL_RUNS=500 npx vitest run tests/incremental.test.ts */
const numRuns = Number(process.env.INCREMENTAL_RUNS ?? 4);
const timeout = 600_000 + 60_000 * numRuns;

/** One edit of a record. */
const edit = fc.record({
  file: fc.constantFrom("install", "install", "install", "kit", "airframe"),
  kind: fc.constantFrom(...changesOfText, "back", "remedy"),
  at: fc.nat(100_000),
  other: fc.nat(100_000),
});

class Session {
  readonly texts: Map<string, string>;
  private readonly shelf: RecordShelf;

  constructor(
    texts: Iterable<[string, string]>,
    private readonly install: string,
  ) {
    this.texts = new Map(texts);
    this.shelf = new RecordShelf({
      resolve: (_, path) => (this.texts.has(path) ? path : undefined),
      text: (file) => this.texts.get(file),
    });
  }

  judge(): Judgement {
    return check(this.shelf.load(this.install)!, this.shelf);
  }

  /** Changes nothing by itself: it only tries. */
  remedy(judgement: Judgement, which: number): string | undefined {
    const faults = judgement.findings.filter(({ assessment }) => assessment);
    const finding = faults[which % Math.max(1, faults.length)];
    const remedy = finding && proveRemedy(finding, judgement, this.shelf);
    return remedy && applyEdits(judgement.record.text, remedy.edits);
  }
}

/** All that can be seen of a judgement, with absolute places. */
function pictureOf(judgement: Judgement) {
  const { record, project, findings, leftOut } = judgement;
  const files = project?.files ?? [record];
  const placeOf = (anchor: (typeof findings)[number]["anchor"]) => {
    const { reading } = files.find(({ file }) => file === anchor.file)!;
    return { file: anchor.file, ...("node" in anchor ? reading.spanOf(anchor.node) : anchor.span) };
  };
  return {
    ...worksheetOf(judgement, (file) => file),
    leftOut,
    // Of the problem or the assessment all is told by the rest, but where it stands.
    findings: findings.map(({ anchor, related, problem: _, assessment, ...rest }) => ({
      ...rest,
      place: placeOf(anchor),
      related: related.map(({ place, words }) => ({ words, place: placeOf(place) })),
      isAssessed: assessment !== undefined,
      // A getter of a class, at which a comparison of objects does not look.
      options: rest.facts.options,
    })),
  };
}

/** Compares by the quick way first: `toEqual` takes longer than the check, and is there to show what differs. */
function expectSame(picture: object, expected: object): void {
  if (!isDeepStrictEqual(picture, expected)) expect(picture).toEqual(expected);
}

it.each([demo.clean, demo.faulty])("%s", { timeout }, (install) => {
  const records = demoRecords();
  const names = { install, kit: demo.kit, airframe: demo.airframe };
  const seen = new Set<string>();
  fc.assert(
    fc.property(fc.array(edit, { minLength: 4, maxLength: 8 }), (edits) => {
      const session = new Session(Object.entries(records), install);
      let judgement = session.judge();
      for (const one of edits) {
        const name = names[one.file];
        const text = session.texts.get(name)!;
        if (one.kind === "remedy") {
          const mended = session.remedy(judgement, one.at);
          if (mended !== undefined && one.other % 2 === 0) session.texts.set(install, mended);
        } else if (one.kind === "back") {
          session.texts.set(name, records[name]!);
        } else {
          session.texts.set(name, edited(text, one.kind, one.at, one.other));
        }
        judgement = session.judge();
        const picture = pictureOf(judgement);
        expectSame(picture, pictureOf(new Session(session.texts, install).judge()));
        seen.add(JSON.stringify(picture.findings.map(({ what }) => what)));
      }
    }),
    { numRuns },
  );
  expect(seen.size, "edits that change nothing would prove nothing").toBeGreaterThan(numRuns);
});

it("a remark after lines of each section, which changes nothing but what is the same object", {
  timeout,
}, () => {
  const records = demoRecords();
  const session = new Session(Object.entries(records), demo.clean);
  const untouched = pictureOf(session.judge());
  for (const name of [demo.clean, demo.kit, demo.airframe]) {
    const lines = records[name]!.split("\n");
    let end = -1;
    for (const [index, line] of lines.entries()) {
      end += line.length + 1;
      // Each check takes its time: every section has some of its lines tried.
      if (index % 6 !== 0) continue;
      session.texts.set(name, lines.with(index, `${line} # seen`).join("\n"));
      const picture = pictureOf(session.judge());
      // What stands after the remark stands further on; nothing else is another.
      const moved = <P extends { file: string; start: number; end: number }>(place: P): P => {
        const by = name === place.file && place.start > end ? " # seen".length : 0;
        return { ...place, start: place.start + by, end: place.end + by };
      };
      const findings = untouched.findings.map((one) => ({
        ...one,
        place: moved(one.place),
        related: one.related.map((other) => ({ ...other, place: moved(other.place) })),
      }));
      expectSame({ line, ...picture }, { line, ...untouched, findings });
      // Judging anew takes long: not after each line, but in every part of each record.
      if (index % 48 === 0) {
        const fresh = pictureOf(new Session(session.texts, demo.clean).judge());
        expectSame({ line, ...picture }, { line, ...fresh });
      }
    }
    session.texts.set(name, records[name]!);
  }
});
