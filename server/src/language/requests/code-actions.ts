/** Proven remedies as code actions: one by one on their findings, and all that are safe at once. */
import {
  type ChangeAnnotation,
  type CodeAction,
  CodeActionKind,
  LSPErrorCodes,
  type Range,
  ResponseError,
  type WorkspaceEdit,
} from "vscode-languageserver";
import type { TextDocument } from "vscode-languageserver-textdocument";
import type { Judgement } from "../../core/check";
import type { TextEdit } from "../../core/edits/text-edit";
import type { Finding } from "../../core/findings/finding";
import { fixAllSafe, mayBeFixed } from "../../core/fix-all";
import type { LoadedRecord } from "../../core/records/record";
import { outcomeWords, type ProvenRemedy } from "../../core/remedies";
import { converterOf, toDiagnostic } from "../convert";
import { idOf } from "../documents";
import { openedAt, type Room } from "../room";

const fixAllTitle = "Apply all safe remedies";
const fixAllKind = `${CodeActionKind.SourceFixAll}.tailcone`;

export const actionKinds = [CodeActionKind.QuickFix, fixAllKind] as const;

/** What is asked for at a place of one document. */
interface Question {
  readonly document: TextDocument;
  readonly judgement: Judgement;
  /** The findings at the place. */
  readonly there: readonly Finding[];
  /** Kinds that the client wants; left out: all. */
  readonly only: readonly string[] | undefined;
}

/** Ties an action to the text that it was offered for: the server keeps nothing of what it offers. */
interface ActionData {
  readonly uri: string;
  readonly version: number;
  /** A document that is opened again counts its versions anew. */
  readonly hash: number;
}

export function answerCodeActions(room: Room): void {
  const actions = new CodeActions(room);

  room.connection.onCodeAction(({ textDocument, range, context }) => {
    const opened = openedAt(room, textDocument.uri);
    const document = opened && room.documents.get(opened.id);
    if (!document) return [];
    const { judgement, converter } = opened;
    const there = judgement.findings.filter((finding) => touches(converter.squiggle(finding), range));
    return actions.offer({ document, judgement, there, only: context.only });
  });

  room.connection.onCodeActionResolve((action) => actions.resolve(action));
}

class CodeActions {
  constructor(private readonly room: Room) {}

  offer(question: Question): CodeAction[] {
    const { only } = question;
    return [
      ...(isWanted(CodeActionKind.QuickFix, only) ? this.quickFixes(question) : []),
      ...(isWanted(fixAllKind, only) ? this.fixAll(question) : []),
    ];
  }

  /** Makes the edit of an action that was offered without. */
  resolve(action: CodeAction): CodeAction {
    const data = action.data as ActionData | undefined;
    if (action.kind !== fixAllKind || !data) return action;
    const document = this.room.documents.get(idOf(data.uri));
    if (!document || document.version !== data.version || hashOf(document.getText()) !== data.hash) {
      throw new ResponseError(
        LSPErrorCodes.ContentModified,
        "The record has changed since this was offered.",
      );
    }
    const record = this.room.desk.shelf.load(idOf(data.uri));
    return record ? { ...action, edit: this.editForAll(record, document) } : action;
  }

  /** Remedies that are the same for several findings are one action. */
  private quickFixes({ document, judgement, there }: Question): CodeAction[] {
    const converter = converterOf(judgement.record);
    const offered = new Map<string, { remedy: ProvenRemedy; findings: Finding[]; isOnly: boolean }>();
    for (const finding of there) {
      const remedies = this.room.desk.remediesOf(finding, judgement);
      for (const remedy of remedies) {
        const name = JSON.stringify([remedy.title, remedy.edits]);
        const known = offered.get(name) ?? { remedy, findings: [], isOnly: true };
        known.findings.push(finding);
        known.isOnly &&= remedies.length === 1;
        offered.set(name, known);
      }
    }
    return [...offered.values()].map(({ remedy, findings, isOnly }) => ({
      title: remedy.title,
      kind: CodeActionKind.QuickFix,
      ...(isOnly && { isPreferred: true }),
      diagnostics: findings.map((finding) =>
        toDiagnostic(finding, converter, undefined, this.room.client.opensRules),
      ),
      edit: this.workspaceEdit(document, judgement.record, remedy.edits, {
        label: remedy.title,
        description: `Tried: ${outcomeWords(remedy)}.`,
        // An editor that asks lets each place be left out; what was tried is all of them together.
        needsConfirmation: false,
      }),
    }));
  }

  /** Proved when it is asked for: by the client that resolves it, or else by one that wants nothing else. */
  private fixAll({ document, judgement, only }: Question): CodeAction[] {
    if (!mayBeFixed(judgement.findings) || !(this.room.client.resolvesActions || only)) return [];
    const action: CodeAction = { title: fixAllTitle, kind: fixAllKind };
    if (this.room.client.resolvesActions) {
      const { uri, version } = document;
      return [{ ...action, data: { uri, version, hash: hashOf(document.getText()) } satisfies ActionData }];
    }
    return [{ ...action, edit: this.editForAll(judgement.record, document) }];
  }

  /** No edits where nothing proved itself. */
  private editForAll(record: LoadedRecord, document: TextDocument): WorkspaceEdit {
    const { edits, titles } = fixAllSafe(record, this.room.desk.shelf, this.room.desk.checkOptions);
    return this.workspaceEdit(document, record, edits, {
      label: fixAllTitle,
      description: titles.join(". "),
      needsConfirmation: false,
    });
  }

  private workspaceEdit(
    { uri, version }: TextDocument,
    record: LoadedRecord,
    edits: readonly TextEdit[],
    annotation: ChangeAnnotation,
  ): WorkspaceEdit {
    const converter = converterOf(record);
    const plain = edits.map((edit) => ({ range: converter.range(edit), newText: edit.newText }));
    if (!this.room.client.takesVersions) return { changes: { [uri]: plain } };
    if (!this.room.client.annotatesEdits)
      return { documentChanges: [{ textDocument: { uri, version }, edits: plain }] };
    const annotated = plain.map((edit) => ({ ...edit, annotationId: "remedy" }));
    return {
      documentChanges: [{ textDocument: { uri, version }, edits: annotated }],
      changeAnnotations: { remedy: annotation },
    };
  }
}

/** A kind that is asked for stands for all below it: "source" for "source.fixAll.tailcone". */
function isWanted(kind: string, only: readonly string[] | undefined): boolean {
  return !only || only.some((wanted) => wanted === "" || kind === wanted || kind.startsWith(`${wanted}.`));
}

function touches(a: Range, b: Range): boolean {
  const isBefore = (x: Range, y: Range) =>
    x.end.line < y.start.line || (x.end.line === y.start.line && x.end.character < y.start.character);
  return !isBefore(a, b) && !isBefore(b, a);
}

/** FNV-1a over code units: tells texts apart, hides nothing. */
function hashOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let index = 0; index < text.length; index++) {
    hash = Math.imul(hash ^ text.charCodeAt(index), 0x01000193) >>> 0;
  }
  return hash;
}
