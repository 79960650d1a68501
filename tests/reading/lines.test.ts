import { describe, expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import { lineIndex } from "../../server/src/core/reading";
import { fc } from "../support/random";

describe("a line index", () => {
  const lines = lineIndex("ab\ncd\r\n\re\u2028f😀");

  test("ends lines at a line feed, a carriage return, or both", () => {
    expect(lines.lineCount).toBe(4);
    const offsets = [0, 2, 3, 5, 7, 8, 13];
    expect(offsets.map((offset) => lines.positionAt(offset))).toEqual([
      { line: 0, character: 0 },
      { line: 0, character: 2 },
      { line: 1, character: 0 },
      { line: 1, character: 2 },
      { line: 2, character: 0 },
      { line: 3, character: 0 },
      { line: 3, character: 5 },
    ]);
  });

  test("clamps what is outside", () => {
    expect(lines.positionAt(-5)).toEqual({ line: 0, character: 0 });
    expect(lines.positionAt(Number.NaN)).toEqual({ line: 0, character: 0 });
    expect(lines.positionAt(99)).toEqual({ line: 3, character: 5 });
    expect(lines.positionAt(6), "inside of a line break").toEqual({ line: 1, character: 2 });
    expect(lines.offsetAt({ line: 0, character: 99 }), "before the line break").toBe(2);
    expect(lines.offsetAt({ line: 1, character: Number.MAX_SAFE_INTEGER })).toBe(5);
    expect(lines.offsetAt({ line: 1, character: -3 })).toBe(3);
    expect(lines.offsetAt({ line: -1, character: 7 })).toBe(0);
    expect(lines.offsetAt({ line: 4, character: 0 })).toBe(13);
  });

  test("of nothing has one line", () => {
    expect(lineIndex("").lineCount).toBe(1);
    expect(lineIndex("").positionAt(3)).toEqual({ line: 0, character: 0 });
    expect(lineIndex("").offsetAt({ line: 3, character: 3 })).toBe(0);
  });

  test("agrees with the editor's own", () => {
    const text = fc.string({
      unit: fc.constantFrom("a", "é", "😀", "\n", "\r", "\r\n", "\u2028"),
      maxLength: 30,
    });
    fc.assert(
      fc.property(text, fc.integer({ min: -2, max: 70 }), fc.nat(20), (written, offset, character) => {
        const document = TextDocument.create("file:///x", "yaml", 1, written);
        const own = lineIndex(written);
        const position = own.positionAt(offset);
        expect(position).toEqual(document.positionAt(offset));
        expect(own.offsetAt({ line: position.line, character })).toBe(
          document.offsetAt({ line: position.line, character }),
        );
        expect(own.lineCount).toBe(document.lineCount);
      }),
      { numRuns: 2000 },
    );
  });
});
