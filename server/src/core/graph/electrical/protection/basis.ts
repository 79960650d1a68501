import type { Project } from "../../../project";
import type { Source } from "../../../source";
import { type ProtectionDemand, protectionParagraph } from "../../../tables/protection-paragraphs";

/** The paragraph on protective devices that holds for the aircraft of a project. */
export function paragraphFor({ airframe }: Project, demand: ProtectionDemand): Source {
  const { kind, certificationBasis } = airframe?.aircraft ?? {};
  return protectionParagraph(
    {
      ...(kind && { kind: kind.value }),
      ...(certificationBasis && { certificationBasis: certificationBasis.value }),
    },
    demand,
  );
}
