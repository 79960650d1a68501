import type { Problem } from "../../findings/finding";
import { eligibilityOf } from "../../graph/derivations";
import { placeOfAircraft } from "../../graph/eligibility";
import type { Eligible } from "../../records/types";
import { defineRule } from "../rule";
import { listWords, shorten } from "../wording";
import { eligibilityExample } from "./eligibility-example";

type Reason = "type" | "serial" | "basis";

export const aircraftNotEligible = defineRule<{
  kit: string;
  reason: Reason;
  found: string;
  wanted: readonly string[];
}>({
  id: "aircraft-not-eligible",
  severity: "error",
  area: "eligibility",
  title: "The kit is not for this aircraft",
  why:
    "The kit's data were made for certain types, serial numbers and certification bases. Into another aircraft it goes " +
    "only by new data, from whoever answers for them.",
  sources: [],
  say: ({ kit, reason, found, wanted }) => ({
    what: `Kit ${shorten(kit)} is not for ${names[reason]} ${shorten(found)}; it is for ${listWords(wanted.map(shorten), "and")}.`,
    todo: "Check the aircraft's record, or ask the kit's maker for data that cover this aircraft.",
  }),
  *check(project): Iterable<Problem> {
    const eligibility = eligibilityOf(project);
    if (!eligibility || eligibility.nearest) return;
    const { groups } = eligibility;
    // That a serial number can't be compared is a finding of its own.
    if (groups.some((one) => one.isType && one.isBasis && one.serial === "unknown")) return;
    const ofType = groups.filter(({ isType }) => isType);
    const ofSerial = ofType.filter(({ serial }) => serial === "within");
    const reason: Reason = ofType.length === 0 ? "type" : ofSerial.length === 0 ? "serial" : "basis";
    const nearest = reason === "type" ? groups : reason === "serial" ? ofType : ofSerial;
    const aircraft = project.airframe?.aircraft;
    const found = { type: aircraft?.type, serial: aircraft?.serial, basis: aircraft?.certificationBasis };
    yield {
      rule: "aircraft-not-eligible",
      place: placeOfAircraft(project),
      facts: {
        kit: project.kit?.kit?.number?.value ?? "",
        reason,
        found: found[reason]?.value ?? "",
        wanted: [...new Set(nearest.flatMap(({ group }) => wantedOf(group, reason)))],
      },
      related: nearest.map(({ group }) => ({ place: group.place, words: "aircraft that the kit is for" })),
    };
  },
  examples: () => [
    {
      title: "Another type, another serial number, another basis",
      text: eligibilityExample({ groups: ["{ type: Type 11 }"] }),
      finds: ["Kit QSR-60 is not for type Type 9; it is for Type 11"],
    },
    {
      title: "A serial number below the range",
      text: eligibilityExample({
        serial: "B9-0117",
        groups: ["{ type: Type 9, serials: [{ from: B9-0300, to: B9-0499 }, { from: B9-0900 }] }"],
      }),
      finds: ["not for serial number B9-0117; it is for B9-0300 to B9-0499 and B9-0900 and on"],
    },
    {
      title: "A basis that the data do not cover",
      text: eligibilityExample({
        groups: ["{ type: Type 9, certification-bases: [14 CFR 23 before Amdt 23-64] }"],
      }),
      finds: ["not for certification basis CAR 3; it is for 14 CFR 23 before"],
    },
    {
      title: "One of two groups is for it",
      text: eligibilityExample({
        groups: [
          "{ type: Type 9, serials: [{ from: B9-0001, to: B9-0299 }] }",
          "{ type: type 9, serials: [{ from: B9-0300 }], certification-bases: [CAR 3] }",
        ],
      }),
      finds: [],
    },
  ],
});

const names: Readonly<Record<Reason, string>> = {
  type: "type",
  serial: "serial number",
  basis: "certification basis",
};

function wantedOf({ type, serials, certificationBases }: Eligible, reason: Reason): string[] {
  if (reason === "type") return type ? [type.value] : [];
  if (reason === "basis") return (certificationBases ?? []).map(({ value }) => value);
  return (serials ?? []).flatMap(({ from, to }) =>
    from ? [to ? `${from.value} to ${to.value}` : `${from.value} and on`] : [],
  );
}
