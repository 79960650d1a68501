import type { Facts, Problem } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import type { Network, NetworkState } from "../../graph/electrical/network";
import { defineRule } from "../rule";
import { conditionName, listWords } from "../wording";
import { conditionPlace } from "./places";
import { runningIn, sourceExample } from "./source-example";

type NoSolution = Extract<NetworkState["answer"], { kind: "no-solution" }>;

interface Unsolved extends Facts {
  readonly condition: string;
  readonly reason: NoSolution["reason"];
  /** The loads or sources that it comes from; empty where it comes from no one of them. */
  readonly names: readonly string[];
}

const meanwhile = "Until then its currents and voltages are missing.";

export const networkUnsolved = defineRule<Unsolved>({
  id: "network-unsolved",
  severity: "error",
  area: "sources",
  title: "The network has no working point in a condition",
  why:
    "Sources, wires and loads must agree on voltages and currents. Where they can't, the aircraft's system would not " +
    "settle either: breakers open or the voltage breaks down. Nothing that rests on the solution is checked there.",
  sources: [{ document: "Kirchhoff's laws for the whole network", standing: "derived" }],
  say: ({ condition, reason, names }) => {
    const who = listWords(names.slice(0, 3), "and");
    switch (reason) {
      case "voltage-collapse":
        return {
          what: `The voltage breaks down in ${condition}: the wires can't bring ${who} what it asks for.`,
          todo: `Fit thicker or shorter wires to ${who}, or run less of it. ${meanwhile}`,
        };
      case "overloaded":
        return {
          what: `The loads ask for more than ${who} together can give in ${condition}.`,
          todo: `Run fewer loads in this condition, or have larger sources. ${meanwhile}`,
        };
      case "unlimited-current":
        return {
          what: `Nothing limits the current of ${who} in ${condition}: a short circuit, or two voltages on one bus.`,
          todo: `Correct what connects ${who}, or record its resistance and rating. ${meanwhile}`,
        };
      case "did-not-converge":
        return {
          what: `No working point of the network was found in ${condition}.`,
          todo: `Look for loads or resistances out of all proportion in this condition. ${meanwhile}`,
        };
      case "invalid-input":
        return {
          what: `The network can't be computed in ${condition}: a figure of ${names.length > 0 ? who : "a wire, feeder or contact"} is impossible.`,
          todo: `Correct the figure: a resistance is 0 or at least 1 nohm, and no current or power is negative. ${meanwhile}`,
        };
    }
  },
  *check(project): Iterable<Problem> {
    const { network, states } = electricalOf(project);
    for (const [condition, { answer }] of states) {
      if (answer.kind === "solved") continue;
      const name = conditionName(condition);
      const facts: Unsolved = { condition: name, reason: answer.reason, names: namesIn(answer, network) };
      yield {
        rule: "network-unsolved",
        subject: { kind: "condition", id: name },
        place: conditionPlace(condition),
        facts,
      };
    }
  },
  examples: () => [
    {
      title: "250 A of loads on a 60 A alternator and a 50 A battery",
      text: sourceExample({
        battery: "bus: MAIN, rating: 50 A, resistance: 20 mohm",
        draw: "current: 230 A",
      }),
      finds: ["ask for more than ALT and BATT together can give in cruise"],
    },
    {
      title: "3 kW over 40 ft of 20 AWG",
      text: sourceExample({ draw: "power: 3000 W", gauge: "20 AWG", length: "40 ft" }),
      finds: ["The voltage breaks down in cruise: the wires can't bring RACK what it asks for"],
    },
    {
      title: "300 W over 10 ft of 8 AWG",
      text: sourceExample({ draw: "power: 300 W", conditions: [runningIn("cruise")] }),
      finds: [],
    },
  ],
});

function namesIn(answer: NoSolution, { loads, sources }: Network): readonly string[] {
  const named = (list: readonly string[], indices: readonly number[]) =>
    indices.flatMap((index) => list[index] ?? []);
  switch (answer.reason) {
    case "voltage-collapse":
      return named(loads, [answer.load]);
    case "overloaded":
    case "unlimited-current":
      return named(sources, answer.sources);
    case "did-not-converge":
      return [];
    case "invalid-input":
      return answer.problems.flatMap((problem) => {
        if (!("index" in problem) || problem.of === "branch") return [];
        return named(problem.of === "load" ? loads : sources, [problem.index]);
      });
  }
}
