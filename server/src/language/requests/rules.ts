import { rulePage } from "../../core/views/rule-page";
import type { Room } from "../room";

/** `tailcone/rule`: the page of the rule `{ id }`, as Markdown; null where there is no such rule. */
export function answerRules(room: Room): void {
  room.connection.onRequest("tailcone/rule", (wanted: { readonly id?: unknown } | undefined) => {
    const id = wanted?.id;
    return (typeof id === "string" ? rulePage(id) : undefined) ?? null;
  });
}
