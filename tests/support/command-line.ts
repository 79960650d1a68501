import { spawn } from "node:child_process";
import { environment, programs } from "./programs";
import { demoWorkspace } from "./workspace";

export interface Outcome {
  /** Exit code; null when a signal ended the process. */
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Ends what hangs, and nothing that is only slow. */
const timeLimit = 90_000;

/** Runs the command line with `cwd` as its working folder, in a process of its own. */
export function tailcone(args: readonly string[], cwd: string): Promise<Outcome> {
  return run(process.execPath, [programs.commandLine, ...args], cwd);
}

const saidOfDemo = new Map<string, Promise<Outcome>>();

/** What a process of its own says of the demo as it is; started once, however often it is asked. */
export function tailconeOnDemo(...args: readonly string[]): Promise<Outcome> {
  const key = JSON.stringify(args);
  const said = saidOfDemo.get(key) ?? tailcone(args, demoWorkspace().folder);
  saidOfDemo.set(key, said);
  return said;
}

/** Runs any program to its end. Never rejects because of an exit code. */
export function run(program: string, args: readonly string[], cwd: string): Promise<Outcome> {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, {
      cwd,
      env: environment,
      stdio: ["ignore", "pipe", "pipe"],
      timeout: timeLimit,
    });
    const stdout: Buffer[] = [];
    const stderr: Buffer[] = [];
    child.stdout.on("data", (chunk: Buffer) => stdout.push(chunk));
    child.stderr.on("data", (chunk: Buffer) => stderr.push(chunk));
    child.on("error", reject);
    child.on("close", (code) =>
      resolve({ code, stdout: Buffer.concat(stdout).toString(), stderr: Buffer.concat(stderr).toString() }),
    );
  });
}

/** The published form of one finding, as `check --report json` prints it. */
export interface ReportedFinding {
  readonly rule: string;
  readonly severity: string;
  readonly subject: string;
  readonly field: string;
  readonly path: string;
  readonly start: ReportedPoint;
  readonly end: ReportedPoint;
  readonly message: string;
  readonly value: number | null;
  readonly limit: number | null;
  readonly unit: string | null;
  readonly source: readonly string[];
}

/** From 1; columns in UTF-16 code units. */
export interface ReportedPoint {
  readonly line: number;
  readonly column: number;
}

export interface Report {
  readonly version: string;
  readonly files: readonly { readonly path: string; readonly findings: readonly ReportedFinding[] }[];
}

/** Checks paths, and gives the report with the exit code. */
export async function report(
  args: readonly string[],
  cwd: string,
): Promise<Report & { readonly code: number | null }> {
  const { code, stdout, stderr } = await tailcone(["check", "--report", "json", ...args], cwd);
  if (stdout === "") throw new Error(`no report, exit code ${code}: ${stderr}`);
  return { ...(JSON.parse(stdout) as Report), code };
}

/** The findings of a report, all files together. */
export function findingsOf({ files }: Pick<Report, "files">): ReportedFinding[] {
  return files.flatMap(({ findings }) => findings);
}
