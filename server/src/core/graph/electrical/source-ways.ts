import type { Project } from "../../project";
import type { Source } from "../../records/types";
import { layoutOf } from "./layout";

/** Whether a source's current leads anywhere: it is on a bus, or a feeder or a wire starts at it. */
export function isConnected({ id, bus }: Source, project: Project): boolean {
  const name = id?.value;
  const { feeders = [] } = project.airframe?.electrical ?? {};
  return (
    bus !== undefined ||
    feeders.some(({ from, to }) => from?.value === name || to?.value === name) ||
    (name !== undefined && layoutOf(project).from.includes(name))
  );
}
