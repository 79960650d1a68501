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

export declare const airframe: Validator;
export declare const kit: Validator;
export declare const install: Validator;
