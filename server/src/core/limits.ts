/**
 * Every cap in one place. A finding that meets a cap names it, so that nobody wonders why a file stopped
 * being checked.
 */
export const limits = {
  /** Longest record text in UTF-16 units (4 Mi). The longest real record seen is about a hundredth of it. */
  recordLength: 4 * 1024 * 1024,
  /** Nesting of maps and lists. Deeper text can abort the process inside the parser, so it is never composed. */
  nestingDepth: 64,
  /** Items that are read one by one. A text with more of them, which no person writes, is read as one item. */
  separateItems: 20_000,
  /** Nodes that aliases may add to one record. */
  aliasNodes: 10_000,
  /** Findings shown for one file, and of one rule in one file. */
  findingsPerFile: 500,
  findingsPerRule: 100,
  /** Remedies that are applied together without a look at each. */
  fixesTogether: 100,
  /** Records that one record may draw in, directly or not. */
  linkedRecords: 16,
  /** Records of a workspace that are looked after without being open. */
  workspaceRecords: 2000,
} as const;
