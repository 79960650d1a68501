/** What every file of tests leaves behind is cleared up, although the files share one load of what they import. */
import { afterAll, afterEach } from "vitest";
import { endEditors, endEditorsOfTest } from "./editor";
import { removeWorkspaces } from "./workspace";

afterEach(({ task }) => endEditorsOfTest(task.result?.state === "fail"));

afterAll(async () => {
  await endEditors();
  removeWorkspaces();
});
