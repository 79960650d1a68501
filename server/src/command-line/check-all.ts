/**
 * Many records, in one thread or in several: reports come in the order of the files, whichever thread was first,
 * and no more of them are under way than the threads need to have work.
 */
import type { Worker } from "node:worker_threads";
import { Mistake } from "./arguments";
import { os, workerThreads } from "./builtins";
import { Checker, type CheckJob } from "./check-one";
import type { RecordReport } from "./record-report";

/** Fewer records are checked sooner than a second thread has started. */
const worthThreads = 48;
/** What a thread is told by instead of a command. */
const threadWord = "serve-as-thread";
/** Records handed to a thread at a time. */
const batchSize = 8;

/** @throws {Mistake} where a file can't be read, or the revision of the job is none */
export async function* checkAll(
  files: readonly string[],
  job: CheckJob,
  jobs = files.length < worthThreads ? 1 : os().availableParallelism(),
): AsyncGenerator<RecordReport> {
  const batches = batchesOf(files);
  const threads = Math.min(jobs, batches.length);
  if (threads <= 1) {
    const checker = new Checker(job);
    for (const file of files) yield checker.check(file);
    return;
  }
  const crew = Array.from({ length: threads }, () => new Colleague(job));
  try {
    const underWay: Promise<readonly RecordReport[]>[] = [];
    let next = 0;
    const handOut = () => {
      if (next < batches.length) underWay.push(leastBusy(crew).check(batches[next++]!));
    };
    for (let count = 0; count < 2 * threads; count++) handOut();
    for (let done = underWay.shift(); done; done = underWay.shift()) {
      const reports = await done;
      handOut();
      yield* reports;
    }
  } finally {
    await Promise.all(crew.map((one) => one.leave()));
  }
}

function batchesOf(files: readonly string[]): string[][] {
  return Array.from({ length: Math.ceil(files.length / batchSize) }, (_, index) =>
    files.slice(index * batchSize, (index + 1) * batchSize),
  );
}

function leastBusy(crew: readonly Colleague[]): Colleague {
  return crew.reduce((least, one) => (one.waiting < least.waiting ? one : least));
}

interface Question {
  readonly files: readonly string[];
}

type Answer = { readonly reports: readonly RecordReport[] } | { readonly mistake: string };

/** A thread that checks batches in the order in which it gets them. */
class Colleague {
  private readonly thread: Worker;
  private readonly asked: {
    readonly resolve: (reports: readonly RecordReport[]) => void;
    readonly reject: (error: Error) => void;
  }[] = [];

  constructor(job: CheckJob) {
    const { Worker } = workerThreads();
    this.thread = new Worker(__filename, { argv: [threadWord], workerData: { job } });
    this.thread.on("message", (answer: Answer) => {
      const first = this.asked.shift();
      if ("reports" in answer) first?.resolve(answer.reports);
      else first?.reject(new Mistake(answer.mistake));
    });
    this.thread.on("error", (error: Error) => {
      for (const { reject } of this.asked.splice(0)) reject(error);
    });
  }

  get waiting(): number {
    return this.asked.length;
  }

  check(files: readonly string[]): Promise<readonly RecordReport[]> {
    const reports = new Promise<readonly RecordReport[]>((resolve, reject) => {
      this.asked.push({ resolve, reject });
      this.thread.postMessage({ files } satisfies Question);
    });
    // It is awaited in its turn; a failure before that must not count as one that nobody looks at.
    reports.catch(() => {});
    return reports;
  }

  async leave(): Promise<void> {
    await this.thread.terminate();
  }
}

/** What a thread does that this program has started; true when this is one. */
export function serveAsThread(): boolean {
  if (process.argv[2] !== threadWord) return false;
  const { isMainThread, parentPort, workerData } = workerThreads();
  if (isMainThread || !parentPort) return false;
  const port = parentPort;
  const { job } = workerData as { readonly job: CheckJob };
  let checker: Checker | undefined;
  port.on("message", ({ files }: Question) => {
    try {
      checker ??= new Checker(job);
      port.postMessage({ reports: files.map((file) => checker!.check(file)) } satisfies Answer);
    } catch (error) {
      if (!(error instanceof Mistake)) throw error;
      port.postMessage({ mistake: error.message } satisfies Answer);
    }
  });
  return true;
}
