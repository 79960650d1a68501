/** What a command needs of the world; tests give their own. */
export interface Surroundings {
  /** Absolute, with links followed. */
  readonly workingFolder: string;
  /** Columns of the terminal. */
  readonly width: number;
  readonly color: boolean;
  /** The day as YYYY-MM-DD, where the user is. */
  readonly today: string;
  /** Whether somebody watches the error stream, so that a progress bar makes sense. */
  readonly isWatched: boolean;
  readonly write: (text: string) => void;
  readonly complain: (text: string) => void;
  /** Puts a line in place of the last one on the error stream. */
  readonly showProgress: (line: string) => void;
}

export const exitCodes = {
  clean: 0,
  /** Findings at or above the threshold. */
  findings: 1,
  /** The tool could not do its work: wrong arguments, a file that can't be read. */
  couldNotWork: 2,
} as const;

export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];
