import type { Rule } from "../rule";
import { bundleCountTooSmall } from "./bundle-count-too-small";
import { bundleLoadingUnderstated } from "./bundle-loading-understated";
import { circuitLoop } from "./circuit-loop";
import { loadModeUnknown } from "./load-mode-unknown";
import { loadNotConnected } from "./load-not-connected";
import { protectionAboveChart } from "./protection-above-chart";
import { protectionAboveWire } from "./protection-above-wire";
import { protectionBelowLoad } from "./protection-below-load";
import { wireNotCovered } from "./wire-not-covered";
import { wireOverAmpacity } from "./wire-over-ampacity";
import { wireVoltageDrop } from "./wire-voltage-drop";
import { wireWithoutProtection } from "./wire-without-protection";

/** Rules of wires, bundles and their protection, by id. */
export const wireRules: readonly Rule[] = [
  bundleCountTooSmall,
  bundleLoadingUnderstated,
  circuitLoop,
  loadModeUnknown,
  loadNotConnected,
  protectionAboveChart,
  protectionAboveWire,
  protectionBelowLoad,
  wireNotCovered,
  wireOverAmpacity,
  wireVoltageDrop,
  wireWithoutProtection,
];
