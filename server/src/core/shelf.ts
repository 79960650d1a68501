import type { RecordSource } from "./project";
import { type LoadedRecord, loadRecord } from "./records/record";
import { recordKindOf } from "./records/schema";

/** How the shelf gets texts and follows paths; the only door to the world outside the core. */
export interface TextSource {
  resolve(from: string, path: string): string | undefined;
  /** Text of a record as it is now, or undefined when there is none. */
  text(file: string): string | undefined;
}

/** Loaded records by file. A record is read again only when its text is another one. */
export class RecordShelf implements RecordSource {
  private readonly records = new Map<string, LoadedRecord>();

  constructor(private readonly texts: TextSource) {}

  resolve(from: string, path: string): string | undefined {
    return this.texts.resolve(from, path);
  }

  load(file: string): LoadedRecord | undefined {
    const kind = recordKindOf(file);
    const text = kind && this.texts.text(file);
    if (kind === undefined || text === undefined) {
      this.records.delete(file);
      return undefined;
    }
    const record = loadRecord(file, kind, text, this.records.get(file));
    this.records.set(file, record);
    return record;
  }

  forget(file: string): void {
    this.records.delete(file);
  }
}
