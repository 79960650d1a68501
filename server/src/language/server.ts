import {
  type Connection,
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  type InitializeResult,
  type Range,
  TextDocumentSyncKind,
  TextDocuments,
} from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import { version } from "../../../package.json";
import type { CheckOptions } from "../core/check";
import { nodeOf } from "../core/findings/finding";
import { nodeAt } from "../core/reading";
import { recordKindOf } from "../core/records/schema";
import type { Place } from "../core/records/written";
import { hoverOn } from "../core/views/hover";
import { outlineOf } from "../core/views/symbols";
import { actionKinds, CodeActions } from "./code-actions";
import { type CompareRequest, compareWithRevision } from "./compare";
import { converterOf, countFindings, toDiagnostic, toDocumentSymbol, toHover } from "./convert";
import { Desk } from "./desk";
import { Documents, idOf } from "./documents";
import { Schedule } from "./schedule";

/** Options that a client may send; every one may be left out. */
interface ClientOptions {
  readonly severity?: unknown;
  /** Send `tailcone/status` after each check. */
  readonly status?: boolean;
}

/** Serves one client over a connection until it says goodbye. */
export function serve(connection: Connection): void {
  const documents = new Documents();
  const desk = new Desk(documents);
  const texts = new TextDocuments(TextDocument);
  const actions = new CodeActions(documents, desk);
  let wantsStatus = false;
  let showsRelated = false;
  let canWatch = false;
  let canConfigure = false;

  const publish = (id: string): void => {
    const started = performance.now();
    const document = documents.get(id);
    const judgement = document && desk.judge(id);
    if (!document || !judgement) return;
    const converter = converterOf(judgement.record);
    const locate = showsRelated ? (place: Place) => locationOf(place, documents, desk) : undefined;
    const diagnostics = judgement.findings.map((finding) => toDiagnostic(finding, converter, locate));
    void connection.sendDiagnostics({ uri: document.uri, version: document.version, diagnostics });
    if (wantsStatus) {
      void connection.sendNotification("tailcone/status", {
        uri: document.uri,
        counts: countFindings(judgement),
        linked: judgement.project?.files.slice(1).map((file) => documents.uriOf(file.file)) ?? [],
        milliseconds: performance.now() - started,
      });
    }
  };
  const schedule = new Schedule((id) => {
    try {
      publish(id);
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
      desk.setOptions(severitiesOf(options.severity));
      wantsStatus = options.status === true;
      showsRelated = capabilities.textDocument?.publishDiagnostics?.relatedInformation === true;
      actions.setClient(capabilities);
      canWatch = capabilities.workspace?.didChangeWatchedFiles?.dynamicRegistration === true;
      canConfigure = capabilities.workspace?.configuration === true;
      return {
        serverInfo: { name: "tailcone", version },
        capabilities: {
          textDocumentSync: TextDocumentSyncKind.Incremental,
          hoverProvider: true,
          documentSymbolProvider: true,
          codeActionProvider: { codeActionKinds: [...actionKinds], resolveProvider: true },
          workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
        },
      };
    },
  );

  connection.onInitialized(async () => {
    if (canWatch) {
      await connection.client.register(DidChangeWatchedFilesNotification.type, {
        watchers: [{ globPattern: "**/*.{airframe,kit,install}.{yaml,yml}" }],
      });
    }
    if (canConfigure) {
      await connection.client.register(DidChangeConfigurationNotification.type, { section: "tailcone" });
      await readConfiguration();
    }
    connection.workspace.onDidChangeWorkspaceFolders(async () => {
      const folders = await connection.workspace.getWorkspaceFolders();
      documents.setFolders(folders?.map((folder) => folder.uri) ?? []);
      checkAll();
    });
  });

  const readConfiguration = async (): Promise<void> => {
    const settings = (await connection.workspace.getConfiguration("tailcone")) as ClientOptions | null;
    desk.setOptions(severitiesOf(settings?.severity));
    checkAll();
  };

  connection.onDidChangeConfiguration(async ({ settings }) => {
    if (canConfigure) return readConfiguration();
    desk.setOptions(severitiesOf((settings as { tailcone?: ClientOptions } | undefined)?.tailcone?.severity));
    checkAll();
  });

  const checkAll = (): void => {
    for (const id of documents.openIds()) schedule.add(id);
  };

  const changed = (id: string): void => {
    schedule.add(id);
    for (const dependent of desk.dependentsOf(id)) schedule.add(dependent);
  };

  texts.onDidChangeContent(({ document }) => {
    if (recordKindOf(idOf(document.uri))) changed(documents.opened(document));
  });

  texts.onDidClose(({ document }) => {
    const id = documents.closed(document);
    desk.forget(id);
    void connection.sendDiagnostics({ uri: document.uri, diagnostics: [] });
    for (const dependent of desk.dependentsOf(id)) schedule.add(dependent);
  });

  connection.onDidChangeWatchedFiles(({ changes }) => {
    for (const { uri } of changes) changed(idOf(uri));
  });

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

  connection.onDocumentSymbol(({ textDocument }) => {
    const record = desk.shelf.load(idOf(textDocument.uri));
    if (!record) return [];
    const converter = converterOf(record);
    return outlineOf(record.reading).map((symbol) => toDocumentSymbol(symbol, converter));
  });

  connection.onCodeAction(({ textDocument, range, context }) => {
    const id = idOf(textDocument.uri);
    const document = documents.get(id);
    const judgement = document && desk.judge(id);
    if (!document || !judgement) return [];
    const converter = converterOf(judgement.record);
    const there = judgement.findings.filter((finding) => touches(converter.squiggle(finding), range));
    return actions.offer({ document, judgement, there, only: context.only });
  });

  connection.onCodeActionResolve((action) => actions.resolve(action));

  connection.onRequest("tailcone/compare", ({ uri, revision }: CompareRequest) =>
    compareWithRevision(idOf(uri), revision, desk, documents, (request) =>
      connection.sendRequest<string | null>("tailcone/revisionText", request),
    ),
  );

  texts.listen(connection);
  connection.listen();
}

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

function touches(a: Range, b: Range): boolean {
  const isBefore = (x: Range, y: Range) =>
    x.end.line < y.start.line || (x.end.line === y.start.line && x.end.character < y.start.character);
  return !isBefore(a, b) && !isBefore(b, a);
}
