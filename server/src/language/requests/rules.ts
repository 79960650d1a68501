import { rulePage } from "../../core/views/rule-page";
import type { Room } from "../room";

/** `tailcone/rule`: the page of a rule by its id, as Markdown; null where there is no such rule. */
export function answerRules(room: Room): void {
  room.connection.onRequest(
    "tailcone/rule",
    (id: unknown) => (typeof id === "string" ? rulePage(id) : undefined) ?? null,
  );
}
