import type { Rule } from "../rule";
import { batteryCapacityMissing } from "./battery-capacity-missing";
import { batteryEnduranceShort } from "./battery-endurance-short";
import { batteryFeedsBus } from "./battery-feeds-bus";
import { componentVoltageAboveSystem } from "./component-voltage-above-system";
import { conditionsNotRecorded } from "./conditions-not-recorded";
import { feederVoltageDrop } from "./feeder-voltage-drop";
import { idleSpeedTooLow } from "./idle-speed-too-low";
import { inrushAboveSource } from "./inrush-above-source";
import { inrushNotMomentary } from "./inrush-not-momentary";
import { loadVoltageLow } from "./load-voltage-low";
import { networkIsland } from "./network-island";
import { networkUnsolved } from "./network-unsolved";
import { sourceAboveShare } from "./source-above-share";
import { sourceFeedsNothing } from "./source-feeds-nothing";
import { sourceLossNotCovered } from "./source-loss-not-covered";
import { sourceOutputUnknown } from "./source-output-unknown";
import { sourceOverloaded } from "./source-overloaded";
import { sourcesNotRecorded } from "./sources-not-recorded";

/** Rules of sources, their loads and the network as a whole, by id. */
export const sourceRules: readonly Rule[] = [
  batteryCapacityMissing,
  batteryEnduranceShort,
  batteryFeedsBus,
  componentVoltageAboveSystem,
  conditionsNotRecorded,
  feederVoltageDrop,
  idleSpeedTooLow,
  inrushAboveSource,
  inrushNotMomentary,
  loadVoltageLow,
  networkIsland,
  networkUnsolved,
  sourceAboveShare,
  sourceFeedsNothing,
  sourceLossNotCovered,
  sourceOutputUnknown,
  sourceOverloaded,
  sourcesNotRecorded,
];
