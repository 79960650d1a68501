import type { Source } from "../source";
import type { CertificationBasis } from "./load-factors";

/** What decides which paragraph applies, in the words of a record. */
export interface CertificatedAs {
  readonly kind?: "aeroplane" | "rotorcraft";
  readonly certificationBasis?: CertificationBasis;
}

/** What the paragraph on protective devices asks for, by its letter. */
export type ProtectionDemand = "b" | "d" | "e";

/**
 * The paragraph that asks it of an aircraft. Where the text of its certification basis was not read, the same
 * demand stands as memory: it warns only.
 */
export function protectionParagraph(
  { kind, certificationBasis }: CertificatedAs,
  demand: ProtectionDemand,
): Source {
  if (kind === "rotorcraft") {
    return { document: "14 CFR 27.1357", at: `(${demand})`, standing: "published" };
  }
  switch (certificationBasis) {
    case "14 CFR 23 before Amdt 23-64":
      return {
        document: "14 CFR 23.1357",
        edition: "before Amdt 23-64",
        at: `(${demand})`,
        standing: "secondary",
      };
    case "14 CFR 23 from Amdt 23-64":
      return {
        document: "14 CFR 23.1357",
        edition: "before Amdt 23-64",
        at: `(${demand})`,
        standing: "memory",
        note: "the aircraft's basis has 23.2525 in its place, which states the aim only",
      };
    default:
      return {
        document: "14 CFR 23.1357",
        edition: "before Amdt 23-64",
        at: `(${demand})`,
        standing: "memory",
        note: "not the aircraft's own basis; what its basis asks was not read",
      };
  }
}
