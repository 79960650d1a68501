/** Changes of a text as a person makes them, drawn at random. */

/** Each as often as it is to come. */
export const changesOfText = [
  "digit",
  "digit",
  "digit",
  "letter",
  "drop",
  "copy",
  "swap",
  "comment",
] as const;

const letters = ["x", "-", ":", "{", "A", "9", ".", " "];

/** The text with one change; what `at` and `other` mean depends on the text. */
export function edited(
  text: string,
  kind: (typeof changesOfText)[number],
  at: number,
  other: number,
): string {
  const lines = text.split("\n");
  const line = at % lines.length;
  const digits = [...text.matchAll(/\d/g)].map(({ index }) => index);
  const place = at % (text.length + 1);
  switch (kind) {
    case "digit": {
      const digit = digits[at % Math.max(1, digits.length)] ?? 0;
      return text.slice(0, digit) + String(other % 10) + text.slice(digit + 1);
    }
    case "letter":
      return text.slice(0, place) + letters[other % letters.length] + text.slice(place);
    case "drop":
      return lines.toSpliced(line, 1).join("\n");
    case "copy":
      return lines.toSpliced(other % lines.length, 0, lines[line]!).join("\n");
    case "swap": {
      const [a, b] = [lines[line]!, lines[other % lines.length]!];
      return lines
        .with(line, b)
        .with(other % lines.length, a)
        .join("\n");
    }
    case "comment":
      return lines.with(line, `${lines[line]} # seen`).join("\n");
  }
}
