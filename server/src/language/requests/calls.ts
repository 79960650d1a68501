import { type CallHierarchyItem, SymbolKind } from "vscode-languageserver";
import { nodeAt } from "../../core/reading";
import { feeding, type Step, stepsAt, using } from "../../core/views/calls";
import { openedAt, type Room } from "../room";
import { locationOf } from "./navigation";

/** What an item carries: which record's calculation it is a step of, and which value. */
interface StepData {
  readonly install: string;
  readonly key: string | undefined;
}

/**
 * The call hierarchy of numbers: what calls a value is what uses it, what it calls is what feeds it. A number
 * of a kit or an airframe is followed in every open install that is linked to it.
 */
export function answerCalls(room: Room): void {
  const { desk } = room;
  const { callHierarchy } = room.connection.languages;

  callHierarchy.onPrepare(({ textDocument, position }) => {
    const opened = openedAt(room, textDocument.uri);
    if (!opened) return null;
    const node = nodeAt(opened.judgement.record.reading, opened.converter.lines.offsetAt(position)).at(
      -1,
    )?.node;
    if (!node) return null;
    const installs = opened.judgement.project ? [opened.id] : desk.dependentsOf(opened.id);
    const items = installs.flatMap((install) => {
      const judgement = desk.judge(install);
      if (!judgement) return [];
      return stepsAt(node, judgement).flatMap(
        (step) => toItem({ ...step, place: { file: opened.id, node } }, install, room) ?? [],
      );
    });
    return items.length > 0 ? items : null;
  });

  callHierarchy.onOutgoingCalls(({ item }) =>
    walk(item, feeding).map((to) => ({ to, fromRanges: [item.selectionRange] })),
  );
  callHierarchy.onIncomingCalls(({ item }) =>
    walk(item, using).map((from) => ({ from, fromRanges: [from.selectionRange] })),
  );

  function walk(item: CallHierarchyItem, way: typeof feeding): CallHierarchyItem[] {
    const { install, key } = item.data as StepData;
    const judgement = key === undefined ? undefined : desk.judge(install);
    if (!judgement || key === undefined) return [];
    return way(key, judgement).flatMap((step) => toItem(step, install, room) ?? []);
  }
}

function toItem(
  { name, detail, place, key }: Step,
  install: string,
  room: Room,
): CallHierarchyItem | undefined {
  const location = locationOf(place, room);
  if (!location) return undefined;
  const { uri, range } = location;
  const kind = key === undefined ? SymbolKind.Constant : SymbolKind.Function;
  return { name, detail, kind, uri, range, selectionRange: range, data: { install, key } satisfies StepData };
}
