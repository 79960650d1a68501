/**
 * The number of a wire size as written: 8 for "8", 0 for "0" and "1/0", -1 for "00" and "2/0", down to -3 for
 * "0000" and "4/0". NaN for what no size is written like ("8.5", "-2").
 */
export function gaugeNumber(size: string): number {
  const aughts = /^([1-9]\d*)\/0$/.exec(size)?.[1];
  if (aughts !== undefined) return 1 - Number(aughts);
  if (/^0+$/.test(size)) return 1 - size.length;
  return /^\d+$/.test(size) ? Number(size) : Number.NaN;
}

/** A wire size as records write it: "8", "1/0", "4/0". */
export function gaugeSize(gauge: number): string {
  return gauge > 0 ? String(gauge) : `${1 - gauge}/0`;
}

/** Where the size starts in a text that has the unit first, as in "AWG 8"; undefined for any other text. */
export function sizeAfterUnit(text: string): number | undefined {
  return /^\s*awg[\s-]*(?=\d)/i.exec(text)?.[0].length;
}
