import type { Connection } from "vscode-languageserver";
import type { Judgement } from "../core/check";
import { type Converter, converterOf } from "./convert";
import type { Desk } from "./desk";
import { type Documents, idOf } from "./documents";

/** What the client can do, as far as an answer depends on it. */
export interface Client {
  /** Send `tailcone/status` after each check, and `tailcone/fleetChanged` when an install's results may be others. */
  readonly wantsStatus: boolean;
  /** Has the editor's command that opens the list of completions. */
  readonly canSuggest: boolean;
  /** Opens `tailcone-rule:` documents. */
  readonly opensRules: boolean;
  readonly showsRelated: boolean;
  readonly takesSnippets: boolean;
  readonly refreshesHints: boolean;
  /** Asks for the edit of an action when it is taken. */
  readonly resolvesActions: boolean;
  /** Shows what an edit is for before it is made. */
  readonly annotatesEdits: boolean;
  /** Takes edits that say which version of a document they are for. */
  readonly takesVersions: boolean;
  readonly canWatch: boolean;
  readonly canConfigure: boolean;
  /** Has folders that come and go. */
  readonly hasFolders: boolean;
}

/** A client before it has said anything of itself. */
export const unknownClient: Client = {
  wantsStatus: false,
  canSuggest: false,
  opensRules: false,
  showsRelated: false,
  takesSnippets: false,
  refreshesHints: false,
  resolvesActions: false,
  annotatesEdits: false,
  takesVersions: false,
  canWatch: false,
  canConfigure: false,
  hasFolders: false,
};

/** What every answer is made from. */
export interface Room {
  readonly connection: Connection;
  readonly documents: Documents;
  readonly desk: Desk;
  /** As the client said when it came; nothing is asked before. */
  readonly client: Client;
  readonly settings: Settings;
}

export interface Settings {
  readonly hints: "off" | "totals" | "all";
  /** Records that are not open are checked too. */
  readonly checksWorkspace: boolean;
}

export interface Opened {
  readonly id: string;
  readonly judgement: Judgement;
  readonly converter: Converter;
}

/** An open record as it is now; undefined for every other document. */
export function openedAt({ documents, desk }: Room, uri: string): Opened | undefined {
  const id = idOf(uri);
  const judgement = documents.get(id) && desk.judge(id);
  return judgement && { id, judgement, converter: converterOf(judgement.record) };
}
