/** How much longer a hose is than its way. */
import type { Line } from "../../records/types";
import type { Source } from "../../source";
import { hoseShortening, hoseSlack } from "../../tables/fluid-lines";
import { covered } from "../../tables/lookup";
import type { QuantityName } from "../quantity-names";
import { derive, type Keep, type Operand, type Subject, tabled, type Value, written } from "../value";

/** In the unit of in. */
export interface HoseSlack {
  readonly slack: Value;
  readonly least: Value;
  readonly most: Value;
  /** How much of it the hose takes when it shortens under pressure. */
  readonly shortening: Value | undefined;
}

export function hoseSlackOf({ length, way }: Line, subject: Subject, keep: Keep): HoseSlack | undefined {
  const L = written("length of the hose", length, "in");
  const w = written("way that it has to go", way, "in");
  const slack = keep(
    derive({
      subject,
      quantity: "hose-slack",
      unit: "in",
      formula: "L - w",
      operands: { L, w },
      compute: (numbers) => numbers.L - numbers.w,
    }),
  );
  const share = (quantity: QuantityName, name: string, value: number, of: Operand, symbol: Source) =>
    keep(
      derive({
        subject,
        quantity,
        unit: "in",
        formula: "k * l",
        operands: { k: tabled(name, covered(value, symbol), "1", []), l: of },
        compute: ({ k, l }) => k * l,
        sources: [symbol],
      }),
    );
  const least = share("least-hose-slack", "least share of the way", hoseSlack.least, w, hoseSlack.source);
  const most = share("most-hose-slack", "most of the way", hoseSlack.most, w, hoseSlack.source);
  if (!slack || !least || !most) return undefined;
  const { value, source } = hoseShortening;
  return {
    slack,
    least,
    most,
    shortening: share("hose-shortening", "share of its length", value, L, source),
  };
}
