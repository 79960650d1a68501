/** The built programs, as users run them. */
import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";

export const root = fileURLToPath(new URL("../../", import.meta.url));

export const demoFolder = fileURLToPath(new URL("../../client/demo/", import.meta.url));

export const programs = {
  get commandLine() {
    return built("tailcone.js");
  },
  get server() {
    return built("server.js");
  },
};

/** What a child process gets of this one's environment: nothing that could make two machines differ. */
export const environment: NodeJS.ProcessEnv = {
  PATH: process.env.PATH,
  HOME: process.env.HOME,
  LANG: "C.UTF-8",
};

function built(name: string): string {
  const path = fileURLToPath(new URL(`../../dist/${name}`, import.meta.url));
  if (!existsSync(path)) throw new Error(`dist/${name} is not built: run 'npm run build'.`);
  return path;
}
