import type { Source } from "../source";

const part23 = (at: string, note?: string): Source => ({
  document: `14 CFR ${at}`,
  edition: "CFR 2015, Amdt 23-62 level",
  standing: "published",
  ...(note !== undefined && { note }),
});

/** What asks for controls and breakers within reach; none of it gives a distance. */
export const reachParagraphs: readonly Source[] = [
  part23("23.1357(d)", "breakers and fuses whose reset is essential to safety"),
  part23("23.1367", "switches accessible to the crew"),
  part23("23.785(e)", "all functions, belted"),
];

/** What asks for room to be kept free; none of it gives a distance. */
export const freeRoomParagraphs: readonly Source[] = [
  part23("23.685(a)", "controls: no jamming, chafing or interference"),
  part23("23.777(b)", "full movement of the controls with the pilot seated"),
  part23("23.785(i)", "striking distance of head and torso, no radius given"),
];

/** What asks for a way to what has to be serviced; the text that was read gives no distance. */
export const accessParagraph = part23("23.611", "access for inspection and servicing; read in part");
