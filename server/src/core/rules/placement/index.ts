import type { Rule } from "../rule";
import { clearanceNotRecorded } from "./clearance-not-recorded";
import { clearanceTooSmall } from "./clearance-too-small";
import { componentWiderThanAccess } from "./component-wider-than-access";
import { componentsOverlap } from "./components-overlap";
import { controlOutOfReach } from "./control-out-of-reach";
import { headRoomNotRecorded } from "./head-room-not-recorded";
import { keepOutEntered } from "./keep-out-entered";
import { placementDataMissing } from "./placement-data-missing";
import { reachNotRecorded } from "./reach-not-recorded";
import { serviceOutOfReach } from "./service-out-of-reach";
import { servicePanelMissing } from "./service-panel-missing";

/** Rules of clearances, reach and access, by id. */
export const placementRules: readonly Rule[] = [
  clearanceNotRecorded,
  clearanceTooSmall,
  componentWiderThanAccess,
  componentsOverlap,
  controlOutOfReach,
  headRoomNotRecorded,
  keepOutEntered,
  placementDataMissing,
  reachNotRecorded,
  serviceOutOfReach,
  servicePanelMissing,
];
