/** What a command needs of the world; tests give their own. */
export interface Surroundings {
  /** Absolute, with links followed. */
  readonly workingFolder: string;
  /** Columns of the terminal. */
  readonly width: number;
  readonly color: boolean;
  readonly write: (text: string) => void;
  readonly complain: (text: string) => void;
}

export const exitCodes = {
  clean: 0,
  /** Findings at or above the threshold. */
  findings: 1,
  /** The tool could not do its work: wrong arguments, a file that can't be read. */
  couldNotWork: 2,
} as const;

export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];
