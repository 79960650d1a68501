/**
 * The file name of a new record: what was typed, with the ending that makes it a record of its kind. Undefined
 * where it is no name, names a folder, or has the ending of another kind.
 */
export function recordName(typed: string, kind: "install" | "airframe"): string | undefined {
  const name = typed.trim();
  const stem = name.replace(/\.ya?ml$/, "").replace(new RegExp(`\\.${kind}$`), "");
  if (stem === "" || /[/\\]/.test(stem) || /\.(?:install|airframe|kit)$/.test(stem)) return undefined;
  return `${stem}.${kind}.${name.endsWith(".yml") ? "yml" : "yaml"}`;
}
