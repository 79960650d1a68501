import { Composer, type CST, type Document, Schema } from "yaml";

/** Plain scalars stay as written, so no tag is ever resolved. */
const schema = new Schema({ schema: "failsafe", resolveKnownTags: false, merge: false });

/** Told of each error: where it is in the source, the library's code for it, and what the library says. */
export type ErrorReport = (start: number, end: number, code: string, message: string) => void;

/**
 * Composes documents from concrete syntax. The nesting of the tokens has to be bounded, because this recurses.
 * Keys are not compared: the library compares each one with all before it. Nodes know their tokens.
 */
export function* compose(stream: readonly CST.Token[], report: ErrorReport): Generator<Document.Parsed> {
  const composer = new Composer({
    // The option takes a schema as well as a name; its type does not say so.
    schema: schema as never,
    uniqueKeys: false,
    keepSourceTokens: true,
    prettyErrors: false,
    logLevel: "silent",
  });
  // The composer would make an `Error` with a stack of each fault, and a text can have a million.
  Object.assign(composer, {
    onError(place: ErrorPlace, code: string, message: string, isWarning?: boolean) {
      if (!isWarning) report(...spanOf(place), code, message);
    },
  });
  for (const document of composer.compose(stream)) {
    for (const { pos, code, message } of document.errors) report(...pos, code, message);
    yield document;
  }
}

type ErrorPlace = number | readonly number[] | { readonly offset: number; readonly source?: unknown };

function spanOf(place: ErrorPlace): [start: number, end: number] {
  if (typeof place === "number") return [place, place + 1];
  if ("offset" in place) {
    const { offset, source } = place;
    return [offset, offset + (typeof source === "string" ? source.length : 1)];
  }
  const [start = 0, end = start + 1] = place;
  return [start, end];
}
