/** Lines whose key has nothing after it but a comment, and no deeper line below. */
export function blanksOf(text: string): string[] {
  const lines = text.split("\n");
  const indentOf = (line = "") => line.replace("- ", "  ").search(/\S/);
  return lines.filter(
    (line, at) =>
      /^[\s-]*[\w-]+:(?: +#.*)?$/.test(line) &&
      !line.trimStart().startsWith("#") &&
      indentOf(lines[at + 1]) <= indentOf(line),
  );
}
