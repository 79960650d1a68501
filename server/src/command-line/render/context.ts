import type { CheckOptions, Judgement } from "../../core/check";
import type { RecordSource } from "../../core/project";

/** What every report is made from. */
export interface RenderContext {
  readonly judgements: readonly Judgement[];
  readonly source: RecordSource;
  readonly options: CheckOptions;
  readonly pathOf: (file: string) => string;
}
