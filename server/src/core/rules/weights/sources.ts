import type { Source } from "../../source";
import { advisoryCircular } from "../../tables/electrical-documents";

/** The extreme loadings that have to be looked at after a change: most forward, most aft, and heaviest. */
export const adverseLoading = advisoryCircular("chapter 10, par. 10-16 to 10-18", "published");

/** Permanent ballast: where it may stand, how it is marked. */
export const ballastPlaces: Source = {
  document: "FAA-H-8083-30",
  edition: "2008",
  at: "chapter 4, p. 4-23",
  standing: "published",
};
