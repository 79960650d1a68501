/**
 * Direct-current networks: node voltages and currents of wires, loads and sources in steady state.
 *
 * Plain numbers in ohm, volt, ampere and watt; nothing of records. Loads draw constant current, go through a
 * constant resistance or take constant power; sources have a voltage, an internal resistance and a current
 * limit, and may be one-way; wires may warm. Where constant power allows several voltages, the answer is the
 * highest, which is the one that a network settles at when its loads are switched on. Nothing throws:
 * what can't be solved says why.
 *
 * Source: Ohm's and Kirchhoff's laws; the methods are named in the files that use them.
 */
export {
  type Condition,
  type InputProblem,
  type Island,
  type Load,
  type NetworkAnswer,
  type NoSolution,
  type Part,
  type Residual,
  reference,
  type Solved,
  type Source,
  type SourceState,
  type Terminals,
  type Topology,
} from "./model";
export { type Network, prepare } from "./prepare";
export { leastOhms, mostNodes } from "./problems";
