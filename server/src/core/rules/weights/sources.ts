import { advisoryCircular } from "../../tables/electrical-documents";

/** The extreme loadings that have to be looked at after a change: most forward, most aft, and heaviest. */
export const adverseLoading = advisoryCircular("chapter 10, par. 10-16 to 10-18", "published");
