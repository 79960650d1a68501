import { nodeOf } from "../../core/findings/finding";
import { nodeAt } from "../../core/reading";
import { hoverOn } from "../../core/views/hover";
import { converterOf, toHover } from "../convert";
import { idOf } from "../documents";
import type { Room } from "../room";

/** What is known of the value under the pointer, by the record that it stands in and by those that link to that. */
export function answerHover({ connection, documents, desk }: Room): void {
  connection.onHover(({ textDocument, position }) => {
    const id = idOf(textDocument.uri);
    const record = documents.get(id) && desk.shelf.load(id);
    if (!record) return null;
    const converter = converterOf(record);
    const node = nodeAt(record.reading, converter.lines.offsetAt(position)).at(-1)?.node;
    if (node?.kind !== "scalar") return null;
    const judgements = [id, ...desk.dependentsOf(id)]
      .map((one) => desk.judge(one))
      .filter((one) => one !== undefined);
    const remedies = judgements.flatMap((judgement) =>
      judgement.findings
        .filter(({ anchor }) => nodeOf(anchor) === node)
        .flatMap((finding) => desk.remediesOf(finding, judgement)),
    );
    const hover = hoverOn(id, node, judgements, remedies);
    return hover ? toHover(hover, converter) : null;
  });
}
