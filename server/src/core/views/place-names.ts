import { type LineIndex, lineIndex } from "../reading";
import type { LoadedRecord } from "../records/record";
import type { Place } from "../records/written";

/** Places in words for people: `path:line:column`, from 1. */
export class PlaceNames {
  private readonly known = new Map<string, { readonly record: LoadedRecord; lines?: LineIndex }>();

  /** `pathOf` names a file for people; an empty name leaves the path out, for the record in front of them. */
  constructor(
    files: readonly LoadedRecord[],
    private readonly pathOf: (file: string) => string,
  ) {
    for (const record of files) this.known.set(record.file, { record });
  }

  nameOf({ file, node }: Place): string {
    const path = this.pathOf(file);
    const known = this.known.get(file);
    if (!known) return path;
    known.lines ??= lineIndex(known.record.text);
    const { line, character } = known.lines.positionAt(known.record.reading.spanOf(node).start);
    return path === "" ? `line ${line + 1}` : `${path}:${line + 1}:${character + 1}`;
  }
}
