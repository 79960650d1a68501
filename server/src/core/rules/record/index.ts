import type { Rule } from "../rule";
import { idDuplicate } from "./id-duplicate";
import { idMalformed } from "./id-malformed";
import { keyChoice } from "./key-choice";
import { keyMissing } from "./key-missing";
import { keyOutOfPlace } from "./key-out-of-place";
import { keyUnknown } from "./key-unknown";
import { listTooShort } from "./list-too-short";
import { quantityImpossible } from "./quantity-impossible";
import { quantityNotANumber } from "./quantity-not-a-number";
import { quantityNotUnderstood } from "./quantity-not-understood";
import { quantityToleranceUnused } from "./quantity-tolerance-unused";
import { quantityUnitMissing } from "./quantity-unit-missing";
import { quantityUnitUnknown } from "./quantity-unit-unknown";
import { quantityWrongDimension } from "./quantity-wrong-dimension";
import { recordCircular } from "./record-circular";
import { recordMissing } from "./record-missing";
import { recordOutsideWorkspace } from "./record-outside-workspace";
import { recordWrongKind } from "./record-wrong-kind";
import { referenceAmbiguous } from "./reference-ambiguous";
import { referenceUnknown } from "./reference-unknown";
import { valueMissing } from "./value-missing";
import { valueNotInList } from "./value-not-in-list";
import { valueOutOfRange } from "./value-out-of-range";
import { valueStillBlank } from "./value-still-blank";
import { valueWrongKind } from "./value-wrong-kind";

/** Rules of a record's shape, names and quantities, by id. */
export const recordRules: readonly Rule[] = [
  idDuplicate,
  idMalformed,
  keyChoice,
  keyMissing,
  keyOutOfPlace,
  keyUnknown,
  listTooShort,
  quantityImpossible,
  quantityNotANumber,
  quantityNotUnderstood,
  quantityToleranceUnused,
  quantityUnitMissing,
  quantityUnitUnknown,
  quantityWrongDimension,
  recordCircular,
  recordMissing,
  recordOutsideWorkspace,
  recordWrongKind,
  referenceAmbiguous,
  referenceUnknown,
  valueMissing,
  valueNotInList,
  valueOutOfRange,
  valueStillBlank,
  valueWrongKind,
];
