/** A number that a record gives, as a value of its own: what is judged as it is written. */
import type { Quantity, UnitSymbol } from "../quantities";
import type { Written } from "../records/written";
import type { QuantityName } from "./quantity-names";
import { derive, type Operand, type Subject, type Value, written } from "./value";

/** A plain number or count of a record. */
export function counted(name: string, count: Written<number> | undefined): Operand {
  return count && { name, value: count.value, unit: "1", places: [count.place], notes: [] };
}

/** A quantity as it stands in the record; undefined where it does not. */
export function asRecorded(
  subject: Subject,
  quantity: QuantityName,
  name: string,
  recorded: Written<Quantity> | undefined,
  unit: UnitSymbol,
): Value | undefined {
  return derive({
    subject,
    quantity,
    unit,
    formula: "recorded",
    operands: { recorded: written(name, recorded, unit) },
    compute: (numbers) => numbers.recorded,
  });
}

/** A count as it stands in the record; undefined where it does not. */
export function countAsRecorded(
  subject: Subject,
  quantity: QuantityName,
  name: string,
  recorded: Written<number> | undefined,
): Value | undefined {
  return derive({
    subject,
    quantity,
    unit: "1",
    formula: "recorded",
    operands: { recorded: counted(name, recorded) },
    compute: (numbers) => numbers.recorded,
  });
}
