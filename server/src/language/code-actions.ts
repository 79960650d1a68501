/** Proven remedies as code actions: one by one on their findings, and all that are safe at once. */
import {
  type ChangeAnnotation,
  type ClientCapabilities,
  type CodeAction,
  CodeActionKind,
  LSPErrorCodes,
  ResponseError,
  type WorkspaceEdit,
} from "vscode-languageserver";
import type { TextDocument } from "vscode-languageserver-textdocument";
import type { Judgement } from "../core/check";
import type { TextEdit } from "../core/edits/text-edit";
import type { Finding } from "../core/findings/finding";
import { fixAllSafe, mayBeFixed } from "../core/fix-all";
import type { LoadedRecord } from "../core/records/record";
import { outcomeWords, type ProvenRemedy } from "../core/remedies";
import { converterOf, toDiagnostic } from "./convert";
import type { Desk } from "./desk";
import { type Documents, idOf } from "./documents";

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

export class CodeActions {
  private canResolve = false;
  private canAnnotate = false;
  private hasVersions = false;

  constructor(
    private readonly documents: Documents,
    private readonly desk: Desk,
  ) {}

  setClient({ textDocument, workspace }: ClientCapabilities): void {
    const { codeAction } = textDocument ?? {};
    const resolved = codeAction?.resolveSupport?.properties ?? [];
    this.canResolve = codeAction?.dataSupport === true && resolved.includes("edit");
    this.canAnnotate = workspace?.workspaceEdit?.changeAnnotationSupport !== undefined;
    this.hasVersions = workspace?.workspaceEdit?.documentChanges === true;
  }

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
    const document = this.documents.get(idOf(data.uri));
    if (!document || document.version !== data.version || hashOf(document.getText()) !== data.hash) {
      throw new ResponseError(
        LSPErrorCodes.ContentModified,
        "The record has changed since this was offered.",
      );
    }
    const record = this.desk.shelf.load(idOf(data.uri));
    return record ? { ...action, edit: this.editForAll(record, document) } : action;
  }

  /** Remedies that are the same for several findings are one action. */
  private quickFixes({ document, judgement, there }: Question): CodeAction[] {
    const converter = converterOf(judgement.record);
    const offered = new Map<string, { remedy: ProvenRemedy; findings: Finding[]; isOnly: boolean }>();
    for (const finding of there) {
      const remedies = this.desk.remediesOf(finding, judgement);
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
      diagnostics: findings.map((finding) => toDiagnostic(finding, converter, undefined)),
      edit: this.workspaceEdit(document, judgement.record, remedy.edits, {
        label: remedy.title,
        description: `Tried: ${outcomeWords(remedy)}.`,
        // What touches one value is seen where it stands; what touches several places is shown first.
        needsConfirmation: remedy.edits.length > 1,
      }),
    }));
  }

  /** Proved when it is asked for: by the client that resolves it, or else by one that wants nothing else. */
  private fixAll({ document, judgement, only }: Question): CodeAction[] {
    if (!mayBeFixed(judgement.findings) || !(this.canResolve || only)) return [];
    const action: CodeAction = { title: fixAllTitle, kind: fixAllKind };
    if (this.canResolve) {
      const { uri, version } = document;
      return [{ ...action, data: { uri, version, hash: hashOf(document.getText()) } satisfies ActionData }];
    }
    return [{ ...action, edit: this.editForAll(judgement.record, document) }];
  }

  /** No edits where nothing proved itself. */
  private editForAll(record: LoadedRecord, document: TextDocument): WorkspaceEdit {
    const { edits, titles } = fixAllSafe(record, this.desk.shelf, this.desk.checkOptions);
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
    if (!this.hasVersions) return { changes: { [uri]: plain } };
    if (!this.canAnnotate) return { documentChanges: [{ textDocument: { uri, version }, edits: plain }] };
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

/** FNV-1a over code units: tells texts apart, hides nothing. */
function hashOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let index = 0; index < text.length; index++) {
    hash = Math.imul(hash ^ text.charCodeAt(index), 0x01000193) >>> 0;
  }
  return hash;
}
