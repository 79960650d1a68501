import type { Source, Standing } from "../source";

/** A table, figure or paragraph of chapter 11 of the advisory circular that most wire tables come from. */
export function advisoryCircular(at: string, standing: Standing, note?: string): Source {
  return {
    document: "FAA AC 43.13-1B",
    edition: "9/8/98, Change 1 of 9/27/01",
    at,
    standing,
    ...(note === undefined ? {} : { note }),
  };
}
