/** Compiled from schemas/*.schema.json by `npm run generate`; not committed. */
export interface SchemaError {
  readonly instancePath: string;
  readonly schemaPath: string;
  readonly keyword: string;
  readonly params: Readonly<Record<string, unknown>>;
}

export interface Validator {
  (data: unknown): boolean;
  errors?: readonly SchemaError[] | null;
}

/** What judges the parts of a record. */
export interface PartValidators {
  /** The record without the entries of its top-level lists. */
  readonly frame: Validator;
  /** An entry of such a list, by the list's key. */
  readonly entries: Readonly<Record<string, Validator>>;
}

export declare const validators: Readonly<Record<"airframe" | "kit" | "install", PartValidators>>;
