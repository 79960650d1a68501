import type { Problem } from "../../findings/finding";
import { airOf } from "../../graph/derivations";
import { formatMeasure } from "../../quantities";
import { defineRule } from "../rule";
import { airExample } from "./air-example";

export const outletAirRecirculates = defineRule<{ path: string; apart: number; unit: string }>({
  id: "outlet-air-recirculates",
  severity: "warning",
  area: "air",
  title: "Outlet air can reach the inlet",
  why:
    "Warm air that is drawn in again lifts the inlet's temperature, and the equipment gets hotter than the outside air says. " +
    "No published distance was found; the record says where the outlet blows, and toward the inlet is a risk at any distance.",
  sources: [],
  say: ({ path, apart }) => ({
    what:
      `The outlet of ${path} blows toward its inlet` +
      (apart > 0 ? `, ${formatMeasure(apart, "in")} away` : "") +
      "; its air can be drawn in again.",
    todo: "Turn the outlet away or across, put a deflector between, or measure the inlet temperature after installation.",
  }),
  *check(project): Iterable<Problem> {
    for (const { path, id } of airOf(project).paths) {
      if (path.outletBlows?.value !== "toward") continue;
      const apart = path.apart ? path.apart.value.si / 0.0254 : 0;
      yield {
        rule: "outlet-air-recirculates",
        subject: { kind: "air-path", id },
        place: path.outletBlows.place,
        facts: { path: id, apart, unit: "in" },
      };
    }
  },
  examples: () => [
    {
      title: "18 in apart, toward the inlet",
      text: airExample({
        path: "inlet-loss: 0.5, outlet-loss: 1, data: Duct test HM-0412-T3, apart: 18 in, outlet-blows: toward",
      }),
      finds: ["blows toward its inlet, 18 in away"],
    },
    { title: "Away from it", text: airExample(), finds: [] },
  ],
});
