import type { Project } from "../../project";
import type { Device } from "../../records/types";
import { byIdOf } from "../by-id";
import { Recurring } from "../remember";
import { derive, type Keep, type Value, written } from "../value";
import { type Inline, inlinesOf } from "./layout";

/** A breaker, fuse or contact with its rating: nothing that depends on a condition. The same object while that is. */
export interface RatedDevice {
  readonly inline: Inline;
  readonly id: string;
  /** The kit's device; undefined for a contact. */
  readonly device: Device | undefined;
  readonly rating: Value | undefined;
}

/** Everything that current runs through at a point: breakers and fuses, then contacts. */
export function rateDevices(project: Project, keep: Keep): RatedDevice[] {
  const devices = byIdOf(project.kit?.devices);
  return Array.from(inlinesOf(project).values(), (inline) => {
    const device = inline.kind === "protection" ? devices.get(inline.record.device?.value ?? "") : undefined;
    return rated.recall(inline.record, [device], keep, (own) => ({
      inline,
      id: inline.id,
      device,
      rating: own(ratingOf(inline, device)),
    }));
  });
}

const rated = new Recurring<Inline["record"], RatedDevice>();

function ratingOf(inline: Inline, device: Device | undefined): Value | undefined {
  const [name, rating, place] =
    inline.kind === "contact"
      ? ["rating of the contact", inline.record.rating, undefined]
      : [`rating of ${device?.id?.value}`, device?.rating, inline.record.device?.place];
  const operand = written(name, rating, "A");
  return derive({
    subject: { kind: inline.kind, id: inline.id },
    quantity: "device-rating",
    unit: "A",
    formula: "I_rated",
    operands: {
      I_rated: operand && { ...operand, places: [...operand.places, ...(place ? [place] : [])] },
    },
    compute: ({ I_rated }) => I_rated,
    sources: [
      {
        document: device?.data?.value ?? `${name}, ${device ? "kit" : "install"} record`,
        standing: "record",
      },
    ],
  });
}
