import * as vscode from "vscode";
import { LanguageClient, type LanguageClientOptions, TransportKind } from "vscode-languageclient/node";
import { RevisionComparison } from "./compare";
import { copyDemo, openCopiedRecord } from "./copy-demo";
import { FleetView } from "./fleet-view";
import { newAirframe, newInstall } from "./new-records";
import { RuleDocuments } from "./rule-documents";
import serverFlags from "./server-flags.json";
import { type RecordStatus, StatusItem } from "./status";

/**
 * Records are told by the end of their names; their language stays YAML. What an editor makes of them for a preview
 * or a comparison is no record.
 */
const records = { scheme: "file", pattern: "**/*.{airframe,kit,install}.{yaml,yml}" };

/** Registers the commands, and starts the server where the workspace has a record, or with the first that is opened. */
export function activate(context: vscode.ExtensionContext): void {
  const log = vscode.window.createOutputChannel("Tailcone", { log: true });
  const status = new StatusItem([records]);
  const client = createClient(context, log);
  client.onNotification("tailcone/status", (news: RecordStatus) => status.receive(news));
  const comparison = new RevisionComparison(client);

  const fleet = new FleetView(client);
  client.onNotification("tailcone/fleetChanged", () => fleet.refresh());

  let started: Promise<void> | undefined;
  const start = (): Promise<void> => {
    started ??= client.start();
    return started;
  };
  const startWith = async (document: vscode.TextDocument): Promise<void> => {
    if (vscode.languages.match(records, document) > 0) await start();
  };

  context.subscriptions.push(
    log,
    status,
    comparison,
    fleet,
    { dispose: () => void (started && client.stop()) },
    vscode.workspace.onDidOpenTextDocument(startWith),
    vscode.commands.registerCommand("tailcone.restartServer", async () => {
      status.clear();
      if (!started) return start();
      return client.restart();
    }),
    vscode.commands.registerCommand("tailcone.newInstall", async () => {
      await start();
      await newInstall(client);
    }),
    vscode.commands.registerCommand("tailcone.newAirframe", async () => {
      await start();
      await newAirframe(client);
    }),
    vscode.commands.registerCommand("tailcone.copyDemo", () => copyDemo(context)),
    vscode.commands.registerCommand("tailcone.openWalkthrough", () =>
      vscode.commands.executeCommand(
        "workbench.action.openWalkthrough",
        `${context.extension.id}#tailcone.begin`,
      ),
    ),
    vscode.workspace.registerTextDocumentContentProvider("tailcone-rule", new RuleDocuments(client, start)),
    vscode.commands.registerCommand("tailcone.showLog", () => log.show()),
    vscode.commands.registerCommand("tailcone.compareWithLastCommit", () => comparison.show("HEAD")),
    vscode.commands.registerCommand("tailcone.compareWithRevision", () => comparison.ask()),
  );
  void vscode.workspace.findFiles(records.pattern, "**/node_modules/**", 1).then(([one]) => one && start());
  for (const document of vscode.workspace.textDocuments) void startWith(document);
  void openCopiedRecord(context);
}

function createClient(context: vscode.ExtensionContext, log: vscode.LogOutputChannel): LanguageClient {
  const settings = vscode.workspace.getConfiguration("tailcone");
  const options: LanguageClientOptions = {
    documentSelector: [records],
    outputChannel: log,
    initializationOptions: {
      severity: settings.get("severity"),
      hints: settings.get("hints"),
      checkWorkspace: settings.get("checkWorkspace"),
      status: true,
      suggest: true,
      rules: true,
    },
  };
  const module = context.asAbsolutePath("dist/server.js");
  // Each keystroke makes several megabytes of values: the server collects them in the pauses between keystrokes, and
  // a young generation that holds more of them is not collected in the middle of one.
  const run = { module, transport: TransportKind.ipc, options: { execArgv: serverFlags } };
  return new LanguageClient("tailcone", "Tailcone", run, options);
}
