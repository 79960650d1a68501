/**
 * One spelling for the many ways in which the trade writes the same unit: "LBS./FT²", "pounds per square foot"
 * and "lb/ft2" all become "lb/ft2". The result is a key to look units up by, never shown to anyone.
 */

const signs: Readonly<Record<string, string>> = {
  "\u03a9": "ohm",
  "\u2126": "ohm",
  "\u00b5": "u",
  "\u03bc": "u",
  "\u00b0": " deg ",
  "\u00ba": " deg ",
  "\u00b2": "2",
  "\u00b3": "3",
  "\u2032": "'",
  "\u2019": "'",
  "\u2033": '"',
  "\u201d": '"',
  "^": "",
};

/** The short spelling of every long one: "lb" of "pounds". */
export const longWords: ReadonlyMap<string, string> = new Map(
  Object.entries({
    a: ["amp", "amps", "ampere", "amperes"],
    ah: ["amphour", "amphours"],
    "btu/h": ["btuh"],
    deg: ["degs", "degree", "degrees"],
    ft: ["foot", "feet"],
    g: ["gram", "grams"],
    gal: ["gals", "gallon", "gallons"],
    h: ["hr", "hrs", "hour", "hours"],
    in: ["ins", "inch", "inches"],
    j: ["joule", "joules"],
    kg: ["kgs", "kilogram", "kilograms"],
    kt: ["kts", "kn", "knot", "knots"],
    l: ["liter", "liters", "litre", "litres"],
    lb: ["lbs", "pound", "pounds"],
    lbf: ["lbsf"],
    m: ["meter", "meters", "metre", "metres"],
    min: ["mins", "minute", "minutes"],
    mm: ["millimeter", "millimeters", "millimetre", "millimetres"],
    cm: ["centimeter", "centimeters", "centimetre", "centimetres"],
    n: ["newton", "newtons"],
    ohm: ["ohms"],
    kohm: ["kohms"],
    mohm: ["mohms"],
    Mohm: ["Mohms"],
    uohm: ["uohms"],
    oz: ["ounce", "ounces"],
    rad: ["radian", "radians"],
    s: ["sec", "secs", "second", "seconds"],
    v: ["volt", "volts"],
    w: ["watt", "watts"],
  }).flatMap(([word, spellings]) => spellings.map((spelling) => [spelling, word])),
);

/** Units that take both milli and mega, or could be thought to. */
const megaUnit = /^M(?:a|ah|g|j|n|ohms?|pa|v|w|wh)$/i;

/** The key of a unit's text. Linear in the length of the text. */
export function spell(text: string): string {
  return text
    .replace(
      /[\u03a9\u2126\u00b5\u03bc\u00b0\u00ba\u00b2\u00b3\u2032\u2019\u2033\u201d^]/g,
      (sign) => signs[sign]!,
    )
    .replace(/ per /gi, "/")
    .split("/")
    .map(spellFactor)
    .join("/");
}

/** One side of a fraction bar: words that multiply. */
function spellFactor(text: string): string {
  return text
    .split(/[\s.\-\u00b7\u22c5\u00d7*]+/)
    .filter((word) => word !== "")
    .map(spellWord)
    .join(" ")
    .replace(/\b(?:sq|square) (\w+)$/, "$12")
    .replace(/\b(?:cu|cubic) (\w+)$/, "$13")
    .replace(/\bdeg (c|celsius)$/, "degc")
    .replace(/\bdeg (f|fahrenheit)$/, "degf")
    .replace(/\b(?:us|u s) gal$/, "gal")
    .replace(/^(?:1,?000 ?|k)ft$/, "1000 ft");
}

/**
 * Case is forgiven, except that of an M before a unit that takes milli and mega, which are a billion times
 * apart. All capitals (MOHM) do not say which is meant, so such a word stays as it is and matches nothing.
 */
function spellWord(word: string): string {
  const folded = megaUnit.test(word) && word.startsWith("M") ? foldAfterM(word) : word.toLowerCase();
  return longWords.get(folded) ?? folded;
}

function foldAfterM(word: string): string {
  return word === word.toUpperCase() ? word : `M${word.slice(1).toLowerCase()}`;
}
