import {
  type ClientCapabilities,
  type Connection,
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  FileChangeType,
  type InitializeResult,
  type Range,
  TextDocumentSyncKind,
  TextDocuments,
} from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import { version } from "../../../package.json";
import type { CheckOptions } from "../core/check";
import { recordKindOf } from "../core/records/schema";
import type { Place } from "../core/records/written";
import { CleanUp } from "./clean-up";
import { type CompareRequest, compareWithRevision } from "./compare";
import { converterOf, countFindings, toDiagnostic } from "./convert";
import { Desk } from "./desk";
import { Documents, idOf } from "./documents";
import { answerCalls } from "./requests/calls";
import { actionKinds, answerCodeActions } from "./requests/code-actions";
import { answerCommands, commands } from "./requests/commands";
import { answerCompletion, completionTriggers } from "./requests/completion";
import { answerFleet } from "./requests/fleet";
import { answerHints } from "./requests/hints";
import { answerHover } from "./requests/hover";
import { answerNavigation } from "./requests/navigation";
import { answerRules } from "./requests/rules";
import { answerStructure } from "./requests/structure";
import { type Client, type Room, type Settings, unknownClient } from "./room";
import { Schedule } from "./schedule";

/** Options that a client may send; every one may be left out. */
interface ClientOptions extends UserSettings {
  /** Send `tailcone/status` after each check, and `tailcone/fleetChanged` when an install's results may be others. */
  readonly status?: boolean;
  /** The client has a command that opens the list of completions. */
  readonly suggest?: boolean;
  /** The client opens `tailcone-rule:` documents. */
  readonly rules?: boolean;
}

/** What a user sets under `tailcone`. */
interface UserSettings {
  readonly severity?: unknown;
  readonly hints?: unknown;
  readonly checkWorkspace?: unknown;
}

/** Serves one client over a connection until it says goodbye. */
export function serve(connection: Connection): void {
  const documents = new Documents();
  const desk = new Desk(documents);
  const texts = new TextDocuments(TextDocument);
  const client = { ...unknownClient };
  const settings: { -readonly [K in keyof Settings]: Settings[K] } = { hints: "all", checksWorkspace: true };
  const room: Room = { connection, documents, desk, client, settings };
  /** Versions of open records, and closed ones, of which something was published last. */
  const published = new Map<string, number | "closed">();

  const publish = (id: string): void => {
    const started = performance.now();
    const document = documents.get(id);
    const judgement = document || settings.checksWorkspace ? desk.judge(id) : undefined;
    if (!judgement) {
      withdraw(id);
      return;
    }
    const converter = converterOf(judgement.record);
    const locate = client.showsRelated ? (place: Place) => locationOf(place, documents, desk) : undefined;
    const diagnostics = judgement.findings.map((finding) =>
      toDiagnostic(finding, converter, locate, client.opensRules),
    );
    const before = published.get(id);
    if (!document && diagnostics.length === 0) withdraw(id);
    else {
      published.set(id, document?.version ?? "closed");
      void connection.sendDiagnostics({
        uri: documents.uriOf(id),
        ...(document && { version: document.version }),
        diagnostics,
      });
    }
    // Its own text is as it was: the editor can't know that what it shows of it is old.
    if (document && before === document.version && client.refreshesHints)
      connection.languages.inlayHint.refresh();
    if (client.wantsStatus) void connection.sendNotification("tailcone/fleetChanged");
    if (document && client.wantsStatus) {
      void connection.sendNotification("tailcone/status", {
        uri: document.uri,
        counts: countFindings(judgement),
        linked: judgement.project?.files.slice(1).map((file) => documents.uriOf(file.file)) ?? [],
        milliseconds: performance.now() - started,
      });
    }
  };
  const withdraw = (id: string): void => {
    if (published.delete(id)) void connection.sendDiagnostics({ uri: documents.uriOf(id), diagnostics: [] });
  };
  const cleanUp = new CleanUp(globalThis.gc);
  const schedule = new Schedule((id) => {
    try {
      publish(id);
      cleanUp.soon();
    } catch (error) {
      connection.console.error(
        `A fault of Tailcone, not of ${id}: ${error instanceof Error ? error.stack : error}`,
      );
    }
  });

  connection.onInitialize(
    ({ capabilities, workspaceFolders, rootUri, initializationOptions }): InitializeResult => {
      const options = (initializationOptions ?? {}) as ClientOptions;
      documents.setFolders(workspaceFolders?.map((folder) => folder.uri) ?? (rootUri ? [rootUri] : []));
      Object.assign(client, clientOf(capabilities, options));
      take(options);
      return {
        serverInfo: { name: "tailcone", version },
        capabilities: {
          textDocumentSync: TextDocumentSyncKind.Incremental,
          hoverProvider: true,
          documentSymbolProvider: true,
          codeActionProvider: { codeActionKinds: [...actionKinds], resolveProvider: true },
          completionProvider: { triggerCharacters: completionTriggers, resolveProvider: true },
          inlayHintProvider: true,
          definitionProvider: true,
          referencesProvider: true,
          renameProvider: { prepareProvider: true },
          documentLinkProvider: {},
          workspaceSymbolProvider: true,
          foldingRangeProvider: true,
          selectionRangeProvider: true,
          callHierarchyProvider: true,
          executeCommandProvider: { commands: [...commands] },
          workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
        },
      };
    },
  );

  connection.onInitialized(async () => {
    if (client.canWatch) {
      await connection.client.register(DidChangeWatchedFilesNotification.type, {
        watchers: [{ globPattern: "**/*.{airframe,kit,install}.{yaml,yml}" }],
      });
    }
    if (client.canConfigure) {
      await connection.client.register(DidChangeConfigurationNotification.type, { section: "tailcone" });
      await readConfiguration();
    } else {
      checkRest();
    }
    if (!client.hasFolders) return;
    connection.workspace.onDidChangeWorkspaceFolders(async () => {
      const folders = await connection.workspace.getWorkspaceFolders();
      documents.setFolders(folders?.map((folder) => folder.uri) ?? []);
      checkAll();
    });
  });

  const readConfiguration = async (): Promise<void> => {
    take((await connection.workspace.getConfiguration("tailcone")) as UserSettings | null);
    checkAll();
  };

  const take = (wanted: UserSettings | null | undefined): void => {
    desk.setOptions(severitiesOf(wanted?.severity));
    settings.hints = hintLevels.find((level) => level === wanted?.hints) ?? "all";
    settings.checksWorkspace = wanted?.checkWorkspace !== false;
    if (client.refreshesHints && published.size > 0) connection.languages.inlayHint.refresh();
  };

  connection.onDidChangeConfiguration(async ({ settings: sent }) => {
    if (client.canConfigure) return readConfiguration();
    take((sent as { tailcone?: UserSettings } | undefined)?.tailcone);
    checkAll();
  });

  const checkAll = (): void => {
    for (const id of documents.openIds()) schedule.add(id);
    checkRest();
  };

  /** Records that are not open. */
  const checkRest = (): void => {
    const rest = settings.checksWorkspace ? documents.records() : [...published.keys()];
    for (const id of rest) if (!documents.get(id)) schedule.addLater(id);
  };

  const changed = (id: string): void => {
    if (documents.get(id)) schedule.add(id);
    else schedule.addLater(id);
    for (const dependent of desk.allDependentsOf(id)) {
      if (documents.get(dependent)) schedule.add(dependent);
      else schedule.addLater(dependent);
    }
  };

  texts.onDidChangeContent(({ document }) => {
    if (recordKindOf(idOf(document.uri))) changed(documents.opened(document));
  });

  texts.onDidClose(({ document }) => {
    const id = documents.closed(document);
    desk.forget(id);
    withdraw(id);
    changed(id);
  });

  connection.onDidChangeWatchedFiles(({ changes }) => {
    if (changes.some(({ type }) => type !== FileChangeType.Changed)) documents.filesChanged();
    for (const { uri } of changes) changed(idOf(uri));
  });

  connection.onRequest("tailcone/compare", ({ uri, revision }: CompareRequest) =>
    compareWithRevision(idOf(uri), revision, desk, documents, (request) =>
      connection.sendRequest<string | null>("tailcone/revisionText", request),
    ),
  );
  answerHover(room);
  answerCodeActions(room);
  answerCompletion(room);
  answerHints(room);
  answerNavigation(room);
  answerStructure(room);
  answerCalls(room);
  answerCommands(room);
  answerFleet(room);
  answerRules(room);

  texts.listen(connection);
  connection.listen();
}

function clientOf({ textDocument, workspace }: ClientCapabilities, options: ClientOptions): Client {
  const { codeAction } = textDocument ?? {};
  return {
    wantsStatus: options.status === true,
    canSuggest: options.suggest === true,
    opensRules: options.rules === true,
    showsRelated: textDocument?.publishDiagnostics?.relatedInformation === true,
    takesSnippets: textDocument?.completion?.completionItem?.snippetSupport === true,
    refreshesHints: workspace?.inlayHint?.refreshSupport === true,
    resolvesActions:
      codeAction?.dataSupport === true && codeAction.resolveSupport?.properties.includes("edit") === true,
    annotatesEdits: workspace?.workspaceEdit?.changeAnnotationSupport !== undefined,
    takesVersions: workspace?.workspaceEdit?.documentChanges === true,
    canWatch: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
    canConfigure: workspace?.configuration === true,
    hasFolders: workspace?.workspaceFolders === true,
  };
}

const hintLevels = ["off", "totals", "all"] as const;

/** Settings come from anybody's hand: only known levels count. */
function severitiesOf(wanted: unknown): CheckOptions {
  const levels: readonly unknown[] = ["error", "warning", "information", "off"];
  const known = Object.entries(wanted && typeof wanted === "object" ? wanted : {}).filter(([, level]) =>
    levels.includes(level),
  );
  return { severities: Object.fromEntries(known) };
}

function locationOf(
  { file, node }: Place,
  documents: Documents,
  desk: Desk,
): { uri: string; range: Range } | undefined {
  const record = desk.shelf.load(file);
  return (
    record && { uri: documents.uriOf(file), range: converterOf(record).range(record.reading.spanOf(node)) }
  );
}
