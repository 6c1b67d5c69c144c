// What can be called.

/** A text as it was understood; `value` is in `unit`, `si` in the coherent SI unit. */
export interface Typed { text: string; value: number; unit: string; si: number; note: string | null }
/** Your own rates; what is left out takes its default. With money of your own give its currency and month as well. */
export interface Rates {
  currency?: string; prices_of?: string;
  hour?: number; steel_kg?: number; aluminium_kg?: number; stainless_kg?: number; bolt?: number;
  tapered_washer?: number; minutes_layout?: number; minutes_hole?: number; minutes_cut?: number;
  minutes_file?: number; minutes_machine?: number; minutes_saddle?: number; minutes_weld?: number;
  minutes_bolt?: number; minutes_surface?: number;
}
/** Thrown by every function here. */
export interface CalculationError extends Error {
  name: "CalculationError";
  errors: Array<{ code: string; field: string | null; message: string }>;
}
/** The report of a joint. Throws a CalculationError that names every refused field. */
export function evaluate(input: JointInput): Report;
/** Beside the verdict: a torque that is better, and the answer with the strength usually found. Throws a CalculationError. */
export function outlook(input: JointInput): Outlook;
/** The repairs of a joint. Throws a CalculationError that names every refused field. */
export function repairs(input: JointInput, rates?: Rates): Repairs;
/** What to cut, drill, weld and tighten to get from a joint to a repaired one (the `input` of a repair). */
export function workSheet(before: JointInput, after: JointInput, rates?: Rates): WorkSheet;
/** Every field with its default; fields that are derived when left out are not in it. */
export function defaults(): JointInput;
/** Reads what a person types into a field, such as `2 1/2 in`; a bare number is in the unit of the field's name. */
export function readQuantity(text: string, field: keyof JointNumbers): Typed;
