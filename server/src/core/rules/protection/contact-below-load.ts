import { holds } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { formatMeasure } from "../../quantities";
import { switchDeratingSource } from "../../tables/switch-derating";
import { defineRule } from "../rule";
import { governing } from "../wires/governing";
import { conditionName, sentence } from "../wording";
import { peakExample, protectionExample } from "./protection-example";

export const contactBelowLoad = defineRule<{
  contact: string;
  kind: string;
  current: number;
  required: number;
  rating: number;
  condition: string;
  /** Of the condition, in s; undefined where it lasts. */
  duration: number | undefined;
}>({
  id: "contact-below-load",
  severity: "error",
  area: "protection",
  title: "A switch, relay or connector is rated below what its loads ask of it",
  why:
    "A lamp, motor or coil draws or throws back far more at switching than it draws when it runs, and the contact " +
    "burns or welds. A switch or relay therefore needs its running current times a factor that depends on the load " +
    "and the system's voltage; a part that only carries needs the current itself.",
  sources: [switchDeratingSource],
  say: ({ contact, kind, current, required, rating, condition, duration }) => ({
    what:
      `${sentence(kind)} ${contact} is rated ${formatMeasure(rating, "A")}; its ${formatMeasure(current, "A")} ` +
      `${required === current ? "is more" : `needs ${formatMeasure(required, "A")}`} (${condition}${duration === undefined ? "" : `, for ${formatMeasure(duration, "s")}`}).`,
    todo:
      "Take a part with a larger rating, or let it switch a relay or contactor that carries the load." +
      (duration === undefined ? "" : " What it carries for so short a time only its maker's data tell."),
  }),
  *check(project) {
    for (const { contact, id, rating, states } of electricalOf(project).protection.contacts) {
      const worst = governing(
        states,
        "at-most",
        ({ required }) => required,
        () => rating,
      );
      if (!worst || !contact.rating) continue;
      yield {
        rule: "contact-below-load",
        subject: { kind: "contact", id },
        place: contact.rating.place,
        value: worst.value,
        limit: rating,
        sense: "at-most",
        holds: holds(worst.value.value, "at-most", rating.value),
        facts: {
          contact: id,
          kind: contact.kind?.value ?? "contact",
          current: worst.state.current.value,
          required: worst.value.value,
          rating: rating.value,
          condition: conditionName(worst.state.condition),
          duration: worst.state.condition.duration?.value.si,
        },
        related: [],
      };
    }
  },
  examples: () => [
    {
      title: "A 10 A relay for a motor of 5 A on 28 V",
      text: protectionExample({
        components: ["{ id: RACK, weight: 31.2 lb, load-type: motor, draws: [{ mode: run, current: 5 A }] }"],
        wires: [
          "{ id: P1, from: K-1, to: RACK, gauge: 10 AWG, length: 10 ft, rating: 150 degC }",
          "{ id: P2N, from: RACK, to: GND-AFT, gauge: 10 AWG, length: 2 ft, rating: 150 degC }",
        ],
        sections: ["contacts:", "  - { id: K-1, kind: relay, rating: 10 A, mounted-on: CB-RACK }"],
      }),
      finds: ["Relay K-1 is rated 10 A; its 5 A needs 15 A \\(cruise\\)"],
    },
    {
      title: "A peak of 40 A for 20 s through a contactor of 30 A",
      text: peakExample(
        {
          wires: [
            "{ id: P1, from: K-1, to: RACK, gauge: 10 AWG, length: 10 ft, rating: 150 degC }",
            "{ id: P2N, from: RACK, to: GND-AFT, gauge: 10 AWG, length: 2 ft, rating: 150 degC }",
          ],
          sections: ["contacts:", "  - { id: K-1, kind: contactor, rating: 30 A, mounted-on: CB-RACK }"],
        },
        "20 s",
      ),
      finds: ["Contactor K-1 is rated 30 A; its 40 A is more \\(burst, for 20 s\\)"],
    },
    {
      title: "A connector carries, and is not derated",
      text: protectionExample({
        components: ["{ id: RACK, weight: 31.2 lb, load-type: motor, draws: [{ mode: run, current: 5 A }] }"],
        wires: [
          "{ id: P1, from: J-1, to: RACK, gauge: 10 AWG, length: 10 ft, rating: 150 degC }",
          "{ id: P2N, from: RACK, to: GND-AFT, gauge: 10 AWG, length: 2 ft, rating: 150 degC }",
        ],
        sections: ["contacts:", "  - { id: J-1, kind: connector, rating: 10 A, mounted-on: CB-RACK }"],
      }),
      finds: [],
    },
  ],
});
