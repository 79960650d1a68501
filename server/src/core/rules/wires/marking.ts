import type { Project } from "../../project";
import { inUnit } from "../../quantities";
import type { Wire } from "../../records/types";
import type { Written } from "../../records/written";
import type { Lookup } from "../../tables/lookup";
import { type MarkingDocument, type WireMarking, wireMarking } from "../../tables/wire-installation-limits";

/** The document that the marking of wires follows, as the record names it. */
type NamedDocument = Written<MarkingDocument> | undefined;

export function markingDocument({ install }: Project): NamedDocument {
  return install.document?.wireMarking;
}

export function documentName(named: NamedDocument): MarkingDocument {
  return named?.value ?? "AC 43.13-1B";
}

/** How a wire whose marking is recorded must be marked; undefined where it is not, or has no length. */
export function markingOf(wire: Wire, named: NamedDocument): Lookup<WireMarking> | undefined {
  if (!wire.length || !wire.markingInterval) return undefined;
  const document = documentName(named);
  const method = wire.marking?.value ?? (document === "MIL-W-5088L" ? "sleeve" : "direct");
  return wireMarking(document, method, inUnit(wire.length.value, "in"));
}
