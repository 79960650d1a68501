import type { Source } from "../../source";

/** What a source has to give, and how that is shown. */
export const sourceCapacity: Source = {
  document: "14 CFR 23.1351(a)",
  edition: "before Amdt 23-64",
  standing: "published",
  note: "sources give the power of each essential circuit, shown by load analysis or measurement",
};

/** Why a record has to say what an alternator gives at low speed. */
export const outputAtLowSpeed: Source = {
  document: "Output of an alternator against its speed",
  standing: "common-practice",
  note: "accounts of the output at idle differ widely, so only its maker's data can tell",
};
