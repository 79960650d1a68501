/** The benchmark's results for a terminal of 80 columns. */

export function tableLines({ node, processors, load, edits, fullCheck, coldStart, bundles, budgets }) {
  return [
    `Node ${node}, ${processors} processors, load ${load.toFixed(1)} before the run`,
    ...(load > processors / 2 ? ["The machine is busy: times are longer than they need be."] : []),
    ...(edits ? editLines(edits) : []),
    ...(fullCheck ? checkLines(fullCheck) : []),
    ...(coldStart ? startLines(coldStart) : []),
    ...(bundles ? bundleLines(bundles) : []),
    ...(budgets.length > 0 ? budgetLines(budgets) : []),
  ];
}

function budgetLines(budgets) {
  const rows = budgets.map(({ name, value, limit, unit, isWithin }) => [
    name,
    short(value),
    `of ${limit} ${unit}`,
    isWithin ? "within" : "OVER",
  ]);
  return ["", "Budgets", ...columns(rows, ["left", "right", "left", "left"])];
}

function editLines(edits) {
  const rows = edits.map(({ lines, keystrokes, opening, floor, server, beyondFloor }) => [
    count(lines),
    count(keystrokes),
    ...[opening, floor.p50, floor.p95, server.p50, server.p95, server.max].map(short),
    ...[beyondFloor.p50, beyondFloor.p95].map(short),
  ]);
  const kinds = Object.keys(edits[0].beyondFloorByKind);
  return [
    "",
    `From a keystroke to its diagnostics over stdio, ms; ${edits[0].pause} ms between keystrokes`,
    "The floor is an empty server; beyond is the server less the floor's median.",
    ...columns([["lines", "keys", "open", "floor", "p95", "server", "p95", "max", "beyond", "p95"], ...rows]),
    "At first, while the server's code is compiled, beyond the floor, ms",
    ...columns([
      ["lines", "keys", "beyond", "p95"],
      ...edits.map(({ lines, atFirst: { keystrokes, beyondFloor } }) => [
        count(lines),
        count(keystrokes),
        ...[beyondFloor.p50, beyondFloor.p95].map(short),
      ]),
    ]),
    "By what is typed later, p95 beyond the floor, ms",
    ...columns([
      ["lines", ...kinds],
      ...edits.map(({ lines, beyondFloorByKind }) => [
        count(lines),
        ...kinds.map((kind) => short(beyondFloorByKind[kind]?.p95)),
      ]),
    ]),
    "Answers equal a fresh check; at the end:",
    ...edits.map(({ lines, fingerprint }) => `  ${count(lines)} lines: ${fingerprint}`),
  ];
}

function checkLines(fullCheck) {
  return [
    "",
    "A whole check from nothing, ms, and against the parser on the same texts",
    ...columns([
      ["lines", "parser", "reading", "", "check", "", "found"],
      ...fullCheck.map(({ lines, parse, read, check, readMultiple, checkMultiple, fingerprint }) => [
        count(lines),
        short(parse),
        short(read),
        times(readMultiple),
        short(check),
        times(checkMultiple),
        fingerprint,
      ]),
    ]),
  ];
}

function startLines({ node, version, check, versionMultiple, checkMultiple }) {
  return [
    "",
    "The command line from a standing start, ms",
    ...columns(
      [
        ["node -e 0", short(node), ""],
        ["tailcone --version", short(version), times(versionMultiple)],
        ["tailcone check, a clean demo record", short(check), times(checkMultiple)],
      ],
      ["left"],
    ),
  ];
}

function bundleLines(bundles) {
  return [
    "",
    "Bundles, bytes",
    ...columns(
      bundles.map(({ name, bytes, gzipBytes }) => [name, count(bytes), `${count(gzipBytes)} gzip`]),
      ["left"],
    ),
  ];
}

/** Rows of cells as lines; columns stand right unless `sides` says otherwise. */
function columns(rows, sides = []) {
  const widths = rows[0].map((_, column) => Math.max(...rows.map((row) => row[column].length)));
  return rows.map((row) =>
    `  ${row
      .map((cell, column) =>
        sides[column] === "left" ? cell.padEnd(widths[column]) : cell.padStart(widths[column]),
      )
      .join("  ")}`.trimEnd(),
  );
}

/** Three digits or so, as far as they mean something. */
function short(milliseconds) {
  if (milliseconds === undefined) return "-";
  return milliseconds.toFixed(milliseconds < 10 ? 2 : milliseconds < 100 ? 1 : 0);
}

function times(multiple) {
  return `${multiple.toFixed(1)}x`;
}

function count(number) {
  return number.toLocaleString("en-US");
}
