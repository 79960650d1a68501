import { gaugeNumber } from "../quantities/gauge";
import type { Source } from "../source";

/**
 * Wire identification codes: unit number, circuit function letter, wire number, segment letter, size,
 * ground or phase letter, material: "P215A4N" is DC power, wire 215, segment A, size 4, to ground.
 */
export const wireIdentificationSource: Source = {
  document: "MIL-W-5088L",
  at: "appendix B",
  standing: "published",
  note: "example in NAVEDTRA 14176, p. 3-4",
};

export interface WireIdentification {
  /** Tells equal items apart; undefined where there is one. */
  readonly unitNumber: number | undefined;
  readonly functionLetter: string;
  readonly wireNumber: number;
  /** Changes at each terminal or connector. */
  readonly segmentLetter: string;
  /** AWG number; 0 is 1/0, -1 is 00, -2 is 000, -3 is 0000. */
  readonly gauge: number;
  readonly end: WireEnd | undefined;
  readonly isAluminium: boolean;
}

/** N: completes the circuit to ground. A, B, C: phase of AC. */
export type WireEnd = "N" | "A" | "B" | "C";

export type WireCodePart =
  | "function letter"
  | "wire number"
  | "segment letter"
  | "size"
  | "ground or phase letter, or material";

/** A code as read, or what was expected at `offset` of the text, counted in characters from 0. */
export type WireCodeReading =
  | { readonly isRead: true; readonly identification: WireIdentification }
  | { readonly isRead: false; readonly offset: number; readonly expected: WireCodePart };

interface Pattern {
  readonly part: WireCodePart;
  readonly pattern: RegExp;
}

/** After the unit number, which may be missing, in the order in which they stand. */
const requiredParts: readonly Pattern[] = [
  { part: "function letter", pattern: /[A-Z]/y },
  { part: "wire number", pattern: /\d{1,6}/y },
  { part: "segment letter", pattern: /[A-Z]/y },
  { part: "size", pattern: /[1-4]\/0|0{1,4}(?!\d)|[1-9]\d?(?!\d)/y },
];

const unitPattern = /\d{0,4}/y;
const tailPattern = /([NABC])?(?:[ -]?(ALUMINUM|ALUM))?$/y;

/** Reads a code in capital letters without blanks; the material may stand after a blank or a hyphen. */
export function readWireIdentification(code: string): WireCodeReading {
  const unit = matchAt(unitPattern, code, 0)![0];
  const texts: string[] = [];
  let offset = unit.length;
  for (const { part, pattern } of requiredParts) {
    const text = matchAt(pattern, code, offset)?.[0];
    if (text === undefined) return { isRead: false, offset, expected: part };
    texts.push(text);
    offset += text.length;
  }
  const tail = matchAt(tailPattern, code, offset);
  if (!tail) return { isRead: false, offset, expected: "ground or phase letter, or material" };

  const [functionLetter, wireNumber, segmentLetter, size] = texts as [string, string, string, string];
  return {
    isRead: true,
    identification: {
      unitNumber: unit === "" ? undefined : Number(unit),
      functionLetter,
      wireNumber: Number(wireNumber),
      segmentLetter,
      gauge: gaugeNumber(size),
      end: tail[1] as WireEnd | undefined,
      isAluminium: tail[2] !== undefined,
    },
  };
}

function matchAt(pattern: RegExp, text: string, offset: number): RegExpExecArray | null {
  pattern.lastIndex = offset;
  return pattern.exec(text);
}

/** Letters that no segment is called by: they look like digits. */
export const unusedSegmentLetters = {
  letters: ["I", "O"],
  source: { document: "MIL-W-5088L", at: "segment letters", standing: "memory" } satisfies Source,
} as const;
