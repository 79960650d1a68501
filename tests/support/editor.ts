/** An editor for tests: it talks to the built server over stdio, as a real one does. */
import { type ChildProcessByStdio, spawn } from "node:child_process";
import { once } from "node:events";
import type { Readable, Writable } from "node:stream";
import {
  createMessageConnection,
  type MessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-jsonrpc/node";
import type {
  ClientCapabilities,
  CodeAction,
  Diagnostic,
  DocumentSymbol,
  FileChangeType,
  Hover,
  InitializeResult,
  Position,
  PublishDiagnosticsParams,
  Range,
  Registration,
  TextEdit,
  WorkspaceEdit,
  WorkspaceFolder,
} from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import { environment, programs, root } from "./programs";

export interface EditorOptions {
  /** URIs of the workspace's folders. */
  readonly folders?: readonly string[];
  /** What the user has set under `tailcone`. Left out: an editor that can't be asked for settings. */
  readonly settings?: unknown;
  readonly initializationOptions?: unknown;
  /** Serves all tests of a file; any other ends with the test that started it. */
  readonly isShared?: boolean;
  /** An editor that lets the server finish code actions later, and shows edits before it makes them. */
  readonly takesActionsLater?: boolean;
  /** An editor that says of itself that it can do nothing. */
  readonly isBare?: boolean;
}

/** A text to be put in the place of another that stands in the document once. */
export type Change = readonly [old: string, now: string];

/** Ends what hangs, and nothing that is only slow. */
const timeLimit = 90_000;

const running = new Set<Editor>();

/** After a test. Left alone, each would go on checking its workspace beside the next one. */
export async function endEditorsOfTest(hasFailed: boolean): Promise<void> {
  if (hasFailed) {
    for (const editor of running) if (editor.serverLog !== "") console.error(`Server:\n${editor.serverLog}`);
  }
  await Promise.all([...running].filter(({ isShared }) => !isShared).map((editor) => editor.kill()));
}

export async function endEditors(): Promise<void> {
  await Promise.all([...running].map((editor) => editor.kill()));
}

export class Editor {
  /** Every publication of diagnostics, in the order in which they came. */
  readonly published: PublishDiagnosticsParams[] = [];
  readonly registrations: Registration[] = [];
  readonly isShared: boolean;
  /** What the server said of itself. */
  initialized!: InitializeResult;
  private readonly server: ChildProcessByStdio<Writable, Readable, Readable>;
  private readonly connection: MessageConnection;
  private readonly documents = new Map<string, TextDocument>();
  private readonly listeners = new Set<() => void>();
  private readonly exited: Promise<number | null>;
  private readonly notifications: { readonly method: string; readonly params: unknown }[] = [];
  private folders: readonly string[] = [];
  private settings: unknown;
  private log = "";
  private applying: ((edit: WorkspaceEdit) => void) | undefined;
  private isKilled = false;

  private constructor({ settings, isShared = false }: EditorOptions) {
    this.settings = settings;
    this.isShared = isShared;
    this.server = spawn(process.execPath, [programs.server, "--stdio"], {
      cwd: root,
      env: environment,
      stdio: ["pipe", "pipe", "pipe"],
    });
    running.add(this);
    this.server.stderr.on("data", (chunk: Buffer) => {
      this.log += chunk.toString();
    });
    this.exited = once(this.server, "close").then(([code]) => {
      running.delete(this);
      for (const listener of this.listeners) listener();
      return code as number | null;
    });
    this.connection = createMessageConnection(
      new StreamMessageReader(this.server.stdout),
      new StreamMessageWriter(this.server.stdin),
    );
    this.listen();
  }

  /** Starts a server and says nothing to it. */
  static startSilent(): Editor {
    return new Editor({});
  }

  /** Starts a server and greets it. */
  static async start(options: EditorOptions = {}): Promise<Editor> {
    const editor = new Editor(options);
    editor.folders = options.folders ?? [];
    const folders = options.folders ? editor.workspaceFolders() : null;
    const capabilities: ClientCapabilities = {
      workspace: {
        configuration: options.settings !== undefined,
        didChangeConfiguration: { dynamicRegistration: true },
        didChangeWatchedFiles: { dynamicRegistration: true },
        workspaceFolders: true,
        workspaceEdit: {
          documentChanges: true,
          ...(options.takesActionsLater && { changeAnnotationSupport: {} }),
        },
      },
      textDocument: {
        publishDiagnostics: { versionSupport: true, relatedInformation: true },
        hover: { contentFormat: ["markdown"] },
        documentSymbol: { hierarchicalDocumentSymbolSupport: true },
        codeAction: {
          codeActionLiteralSupport: { codeActionKind: { valueSet: ["quickfix", "source.fixAll"] } },
          ...(options.takesActionsLater && {
            dataSupport: true,
            resolveSupport: { properties: ["edit"] },
          }),
        },
      },
    };
    editor.initialized = await editor.request("initialize", {
      processId: process.pid,
      rootUri: folders?.[0]?.uri ?? null,
      workspaceFolders: folders,
      capabilities: options.isBare ? {} : capabilities,
      ...(options.initializationOptions !== undefined && {
        initializationOptions: options.initializationOptions,
      }),
    });
    editor.notify("initialized", {});
    return editor;
  }

  /** Everything that the server wrote to its error stream. */
  get serverLog(): string {
    return this.log;
  }

  open(uri: string, text: string): void {
    const document = TextDocument.create(uri, "yaml", 1, text);
    this.documents.set(uri, document);
    this.notify("textDocument/didOpen", { textDocument: { uri, languageId: "yaml", version: 1, text } });
  }

  /** Sends the changes as one edit of many, each a range of the text that the ones before it left. */
  change(uri: string, ...changes: readonly Change[]): void {
    const document = this.documentOf(uri);
    const version = document.version + 1;
    const contentChanges = changes.map(([old, now]) => {
      const change = { range: rangeOf(document, old), text: now };
      TextDocument.update(document, [change], version);
      return change;
    });
    this.notify("textDocument/didChange", { textDocument: { uri, version }, contentChanges });
  }

  /** Makes the edits that a code action consists of. */
  apply(uri: string, edits: readonly TextEdit[]): void {
    const document = this.documentOf(uri);
    const version = document.version + 1;
    // All of them count in the text before; from the end backwards none moves another.
    const contentChanges = edits.map(({ range, newText }) => ({ range, text: newText })).toReversed();
    TextDocument.update(document, contentChanges, version);
    this.notify("textDocument/didChange", { textDocument: { uri, version }, contentChanges });
  }

  close(uri: string): void {
    this.documents.delete(uri);
    this.notify("textDocument/didClose", { textDocument: { uri } });
  }

  /** Tells of files that another program has written. */
  changedOnDisk(type: FileChangeType, ...uris: readonly string[]): void {
    this.notify("workspace/didChangeWatchedFiles", { changes: uris.map((uri) => ({ uri, type })) });
  }

  /** Changes what the user has set under `tailcone`. */
  configure(settings: unknown): void {
    const canBeAsked = this.settings !== undefined;
    if (canBeAsked) this.settings = settings;
    this.notify("workspace/didChangeConfiguration", { settings: canBeAsked ? null : { tailcone: settings } });
  }

  /** Opens other folders in place of those of now. */
  setFolders(...uris: readonly string[]): void {
    const removed = this.workspaceFolders();
    this.folders = uris;
    const event = { added: this.workspaceFolders(), removed };
    this.notify("workspace/didChangeWorkspaceFolders", { event });
  }

  /** Takes the edits that the server asks for; without this they are refused. */
  onApplyEdit(take: (edit: WorkspaceEdit) => void): void {
    this.applying = take;
  }

  /** What came under a method of the server's own. */
  received(method: string): readonly unknown[] {
    return this.notifications.filter((one) => one.method === method).map(({ params }) => params);
  }

  textOf(uri: string): string {
    return this.documentOf(uri).getText();
  }

  versionOf(uri: string): number {
    return this.documentOf(uri).version;
  }

  /** Range of a text that stands in the document once. */
  rangeOf(uri: string, text: string): Range {
    return rangeOf(this.documentOf(uri), text);
  }

  /** The place one character into a text that stands in the document once. */
  placeOf(uri: string, text: string): Position {
    const { line, character } = this.rangeOf(uri, text).start;
    return { line, character: character + 1 };
  }

  /** The last publication for a document, if any has come. */
  lastOf(uri: string): PublishDiagnosticsParams | undefined {
    return this.published.findLast((one) => one.uri === uri);
  }

  /** Diagnostics of the document's version of now, as soon as they have come. */
  async diagnostics(uri: string): Promise<readonly Diagnostic[]> {
    const version = this.versionOf(uri);
    return this.diagnosticsWhen(uri, (one) => one.version === version, `version ${version}`);
  }

  /** Diagnostics of the first publication that `holds` is true of; the last one of now counts too. */
  async diagnosticsWhen(
    uri: string,
    holds: (publication: PublishDiagnosticsParams) => boolean,
    wanted = "what was waited for",
  ): Promise<readonly Diagnostic[]> {
    let found: PublishDiagnosticsParams | undefined;
    await this.until(
      () => {
        const last = this.lastOf(uri);
        if (last && holds(last)) found = last;
        return found !== undefined;
      },
      `${wanted} of ${uri}; the last publication is ${JSON.stringify(this.lastOf(uri))}`,
    );
    return found!.diagnostics;
  }

  /** Waits until the server has published nothing for a while; for what must not come. */
  async quiet(milliseconds = 250): Promise<void> {
    for (let count = -1; count !== this.published.length; ) {
      count = this.published.length;
      await new Promise((resolve) => setTimeout(resolve, milliseconds));
    }
  }

  hover(uri: string, position: Position): Promise<Hover | null> {
    return this.request("textDocument/hover", { textDocument: { uri }, position });
  }

  symbols(uri: string): Promise<DocumentSymbol[] | null> {
    return this.request("textDocument/documentSymbol", { textDocument: { uri } });
  }

  actions(uri: string, range: Range, only?: readonly string[]): Promise<CodeAction[] | null> {
    const diagnostics = this.lastOf(uri)?.diagnostics ?? [];
    return this.request("textDocument/codeAction", {
      textDocument: { uri },
      range,
      context: { diagnostics, ...(only && { only }) },
    });
  }

  resolveAction(action: CodeAction): Promise<CodeAction> {
    return this.request("codeAction/resolve", action);
  }

  /** Says goodbye as the protocol asks; the server's exit code. */
  async stop(): Promise<number | null> {
    await this.request("shutdown");
    this.notify("exit");
    return this.ended();
  }

  /** Closes the server's input without a word, as an editor does that dies; the server's exit code. */
  hangUp(): Promise<number | null> {
    this.server.stdin.end();
    return this.ended();
  }

  /** Ends the server that this editor started, if it still runs. */
  async kill(): Promise<void> {
    this.isKilled = true;
    this.connection.dispose();
    if (this.server.exitCode === null && this.server.signalCode === null) this.server.kill("SIGKILL");
    await this.exited;
  }

  /** Answers a request of the server. */
  answer<P>(method: string, handler: (params: P) => string | null): void {
    this.connection.onRequest(method, handler);
  }

  request<R>(method: string, ...params: readonly object[]): Promise<R> {
    return within(this.connection.sendRequest<R>(method, ...params), () => `no answer to ${method}`, this);
  }

  notify(method: string, ...params: readonly object[]): void {
    void this.connection.sendNotification(method, ...params).catch((error) => {
      // Nobody waits for what was still on its way to a server that its test has done with.
      if (!this.isKilled) throw error;
    });
  }

  private ended(): Promise<number | null> {
    return within(this.exited, () => "the server did not end", this);
  }

  private listen(): void {
    this.connection.onNotification("textDocument/publishDiagnostics", (params: PublishDiagnosticsParams) => {
      this.published.push(params);
      for (const listener of this.listeners) listener();
    });
    this.connection.onNotification((method, params) => {
      this.notifications.push({ method, params });
    });
    this.connection.onRequest("workspace/workspaceFolders", () => this.workspaceFolders());
    this.connection.onRequest("workspace/configuration", ({ items }: { items: readonly unknown[] }) =>
      items.map(() => this.settings ?? null),
    );
    this.connection.onRequest("client/registerCapability", (params: { registrations: Registration[] }) => {
      this.registrations.push(...params.registrations);
      return null;
    });
    this.connection.onRequest("workspace/applyEdit", ({ edit }: { edit: WorkspaceEdit }) => {
      this.applying?.(edit);
      return { applied: this.applying !== undefined };
    });
    this.connection.onNotification("window/logMessage", ({ message }: { message: string }) => {
      this.log += `${message}\n`;
    });
    this.connection.listen();
  }

  private workspaceFolders(): WorkspaceFolder[] {
    return this.folders.map((uri) => ({ uri, name: uri.split("/").at(-1) ?? "" }));
  }

  private async until(holds: () => boolean, wanted: string): Promise<void> {
    if (holds()) return;
    let listener = (): void => {};
    const reached = new Promise<void>((resolve, reject) => {
      listener = () => {
        if (holds()) resolve();
        else if (!running.has(this)) reject(new Error(`the server ended before ${wanted}`));
      };
      this.listeners.add(listener);
    });
    try {
      await within(reached, () => `never came: ${wanted}`, this);
    } finally {
      this.listeners.delete(listener);
    }
  }

  private documentOf(uri: string): TextDocument {
    const document = this.documents.get(uri);
    if (!document) throw new Error(`${uri} is not open`);
    return document;
  }
}

function rangeOf(document: TextDocument, text: string): Range {
  const all = document.getText();
  const start = all.indexOf(text);
  if (start === -1 || all.indexOf(text, start + 1) !== -1) {
    throw new Error(`'${text}' does not stand once in ${document.uri}`);
  }
  return { start: document.positionAt(start), end: document.positionAt(start + text.length) };
}

async function within<T>(promise: Promise<T>, failure: () => string, editor: Editor): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(`${failure()}\n${editor.serverLog}`)), timeLimit);
  });
  try {
    return await Promise.race([promise, late]);
  } finally {
    clearTimeout(timer);
  }
}
