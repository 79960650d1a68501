import { nodeOf } from "../../core/findings/finding";
import { nodeAt } from "../../core/reading";
import { hoverOn } from "../../core/views/hover";
import { meaningOfKey, withMeaning } from "../../core/views/key-meaning";
import { converterOf, toHover } from "../convert";
import { idOf } from "../documents";
import type { Room } from "../room";

/** What the key under the pointer means, and what is known of the value there, by the record that it stands in and by those that link to that. */
export function answerHover({ connection, documents, desk }: Room): void {
  connection.onHover(({ textDocument, position }) => {
    const id = idOf(textDocument.uri);
    const record = documents.get(id) && desk.shelf.load(id);
    if (!record) return null;
    const converter = converterOf(record);
    const offset = converter.lines.offsetAt(position);
    const { node, entry } = nodeAt(record.reading, offset).at(-1)!;
    const isOnKey = entry !== undefined && offset <= record.reading.spanOf(entry.key).end;
    const meaning = isOnKey ? meaningOfKey(record, entry) : undefined;
    if (node.kind !== "scalar") return meaning ? toHover(meaning, converter) : null;
    const judgements = [id, ...desk.dependentsOf(id)]
      .map((one) => desk.judge(one))
      .filter((one) => one !== undefined);
    const remedies = judgements.flatMap((judgement) =>
      judgement.findings
        .filter(({ anchor }) => nodeOf(anchor) === node)
        .flatMap((finding) => desk.remediesOf(finding, judgement)),
    );
    const hover = withMeaning(meaning, hoverOn(id, node, judgements, remedies));
    return hover ? toHover(hover, converter) : null;
  });
}
