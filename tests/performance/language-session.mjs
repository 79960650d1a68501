/** A client with one document open, in front of a language server in a process of its own. */
import { spawn } from "node:child_process";
import protocol from "vscode-languageserver/node";

/** No answer takes this long unless there will be none. */
const patienceMilliseconds = 60_000;

export class LanguageSession {
  #process;
  #connection;
  #version = 0;
  #uri;
  #waiting;
  /** Never fulfilled; rejected when the process ends. */
  #ended;

  /** @param {readonly string[]} command arguments of Node */
  constructor(command) {
    this.#process = spawn(process.execPath, command, { stdio: ["pipe", "pipe", "inherit"] });
    this.#connection = protocol.createProtocolConnection(
      new protocol.StreamMessageReader(this.#process.stdout),
      new protocol.StreamMessageWriter(this.#process.stdin),
    );
    this.#connection.onNotification("textDocument/publishDiagnostics", ({ version, diagnostics }) => {
      if (version === this.#version) this.#waiting?.(diagnostics);
    });
    this.#connection.onUnhandledNotification(() => {});
    this.#ended = new Promise((_, reject) => {
      this.#process.once("exit", (code) => reject(new Error(`The server ended with code ${code}.`)));
    });
    this.#ended.catch(() => {}); // an error only for whoever waits for an answer
    this.#connection.listen();
  }

  async initialize(folderUri) {
    const initialized = this.#connection.sendRequest("initialize", {
      processId: process.pid,
      rootUri: folderUri,
      workspaceFolders: [{ uri: folderUri, name: "bench" }],
      capabilities: {
        textDocument: { publishDiagnostics: { relatedInformation: true, versionSupport: true } },
      },
    });
    await Promise.race([initialized, this.#ended]);
    await this.#connection.sendNotification("initialized", {});
  }

  /** Opens the document and waits for its diagnostics. */
  open(uri, text) {
    this.#uri = uri;
    return this.#timed("textDocument/didOpen", (version) => ({
      textDocument: { uri, languageId: "yaml", version, text },
    }));
  }

  /** Sends one change and waits for the diagnostics of the version that it makes. */
  change({ range, text }) {
    return this.#timed("textDocument/didChange", (version) => ({
      textDocument: { uri: this.#uri, version },
      contentChanges: [{ range, text }],
    }));
  }

  /** @returns {Promise<{ milliseconds: number, diagnostics: readonly object[] }>} */
  async #timed(method, parameters) {
    const version = ++this.#version;
    const message = parameters(version);
    let impatience;
    const diagnostics = new Promise((resolve, reject) => {
      this.#waiting = resolve;
      const complain = () => reject(new Error(`No diagnostics of version ${version}.`));
      impatience = setTimeout(complain, patienceMilliseconds);
    });
    const started = performance.now();
    try {
      void this.#connection.sendNotification(method, message);
      const answer = await Promise.race([diagnostics, this.#ended]);
      return { milliseconds: performance.now() - started, diagnostics: answer };
    } finally {
      clearTimeout(impatience);
      this.#waiting = undefined;
    }
  }

  /** Never rejects, also when the server has ended before. */
  async close() {
    const hasEnded = () => this.#process.exitCode !== null || this.#process.signalCode !== null;
    if (!hasEnded()) {
      const ended = new Promise((resolve) => this.#process.once("exit", resolve));
      const impatience = setTimeout(() => this.#process.kill(), 5_000);
      this.#connection
        .sendRequest("shutdown")
        .then(() => this.#connection.sendNotification("exit"))
        .catch(() => this.#process.kill());
      await ended;
      clearTimeout(impatience);
    }
    this.#connection.dispose();
  }
}
