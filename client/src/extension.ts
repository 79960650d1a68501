import * as vscode from "vscode";
import { LanguageClient, type LanguageClientOptions, TransportKind } from "vscode-languageclient/node";
import { RevisionComparison } from "./compare";
import { type RecordStatus, StatusItem } from "./status";

/** Records are told by the end of their names; their language stays YAML. */
const records = { pattern: "**/*.{airframe,kit,install}.{yaml,yml}" };

/** Registers the commands, and starts the server with the first record that is opened. */
export function activate(context: vscode.ExtensionContext): void {
  const log = vscode.window.createOutputChannel("Tailcone", { log: true });
  const status = new StatusItem([records]);
  const client = createClient(context, log);
  client.onNotification("tailcone/status", (news: RecordStatus) => status.receive(news));
  const comparison = new RevisionComparison(client);

  let isStarted = false;
  const startWith = async (document: vscode.TextDocument): Promise<void> => {
    if (isStarted || vscode.languages.match(records, document) === 0) return;
    isStarted = true;
    await client.start();
  };

  context.subscriptions.push(
    log,
    status,
    comparison,
    { dispose: () => void (isStarted && client.stop()) },
    vscode.workspace.onDidOpenTextDocument(startWith),
    vscode.commands.registerCommand("tailcone.restartServer", async () => {
      status.clear();
      isStarted = true;
      await client.restart();
    }),
    vscode.commands.registerCommand("tailcone.showLog", () => log.show()),
    vscode.commands.registerCommand("tailcone.compareWithLastCommit", () => comparison.show("HEAD")),
    vscode.commands.registerCommand("tailcone.compareWithRevision", () => comparison.ask()),
  );
  for (const document of vscode.workspace.textDocuments) void startWith(document);
}

function createClient(context: vscode.ExtensionContext, log: vscode.LogOutputChannel): LanguageClient {
  const options: LanguageClientOptions = {
    documentSelector: [records],
    outputChannel: log,
    initializationOptions: {
      status: true,
      severity: vscode.workspace.getConfiguration("tailcone").get("severity"),
    },
  };
  const module = context.asAbsolutePath("dist/server.js");
  return new LanguageClient("tailcone", "Tailcone", { module, transport: TransportKind.ipc }, options);
}
