/** Every rule's examples as workspaces: a folder for each, deep enough that a path out of it leaves the whole. */
import { rules } from "../../server/src/core/rules";

export interface ExampleFolder {
  /** Name of its folder: the rule and a number. */
  readonly folder: string;
  readonly rule: string;
  readonly title: string;
  /** Name of the record that shows the rule. */
  readonly record: string;
  /** How many findings of its rule it has. */
  readonly finds: number;
  /** Texts by file name, that record's among them. */
  readonly files: Readonly<Record<string, string>>;
}

export const exampleFolders: readonly ExampleFolder[] = rules.flatMap((rule) =>
  rule.examples().map(({ title, text, file, others, finds }, index) => {
    const record = file ?? "example.install.yaml";
    return {
      folder: `${rule.id}-${index + 1}`,
      rule: rule.id,
      title,
      record,
      finds: finds.length,
      files: { ...others, [record]: text },
    };
  }),
);

/** All of them as the files of one workspace. */
export function exampleFiles(): Record<string, string> {
  return Object.fromEntries(
    exampleFolders.flatMap(({ folder, files }) =>
      Object.entries(files).map(([name, text]) => [`${folder}/${name}`, text]),
    ),
  );
}
