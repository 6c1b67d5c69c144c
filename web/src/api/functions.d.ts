// What can be called.

/** A text as it was understood; `value` is in `unit`, `si` in the coherent SI unit. */
export interface Typed { text: string; value: number; unit: Unit; si: number; note: "pound-as-force" | null }
/** Your own rates; what is left out takes its default. With money of your own give its currency and month as well. */
export interface Rates {
  /** A code of three capital letters, such as `"EUR"`; empty: not named. */
  currency?: string;
  /** Year and month, such as `"2026-11"`; empty: not named. */
  prices_of?: string;
  hour?: number; steel_kg?: number; aluminium_kg?: number; stainless_kg?: number; bolt?: number;
  tapered_washer?: number; bracket?: number; minutes_layout?: number; minutes_hole?: number; minutes_cut?: number;
  minutes_file?: number; minutes_machine?: number; minutes_saddle?: number; minutes_weld?: number;
  minutes_bolt?: number; minutes_surface?: number;
}
/** How many joints are drawn (1 to 1,000,000; 10,000 when left out), and from which seed (1 when left out). */
export interface SampleSettings { joints?: number; seed?: number }
/** One thing that was refused, or that a link says: `field` is the name that was given. */
export interface Reason { code: string; field: string | null; message: string }
/** Thrown by every function here. */
export class CalculationError extends Error {
  constructor(errors: Reason[]);
  name: "CalculationError";
  errors: Reason[];
}
/** What a link says. A damaged one was cut off or mistyped: show what was read, do not judge it unasked. */
export type DecodedLink =
  | { kind: "not-a-link" | "too-long" }
  /** Of another version or another calculation. */
  | { kind: "foreign"; of: string }
  | { kind: "damaged" | "intact"; units: UnitSystem; input: JointInput; notices: Reason[] };

/**
 * Loads the calculation, once however often it is called; wait for it before any other call. It finds its file; where
 * addresses cannot be fetched, as in Node, hand over the bytes of `api-….wasm` that lies beside this module.
 */
export function init(file?: URL | string | ArrayBuffer | Uint8Array | WebAssembly.Module): Promise<void>;
/** The report of a joint. Throws a CalculationError that names every refused field. */
export function evaluate(input: JointInput): Report;
/** Beside the verdict: a torque that is better, and the answer with the strength usually found. Throws a CalculationError. */
export function outlook(input: JointInput): Outlook;
/** Torque against turn of the nut, with the strength usually found. Throws a CalculationError. */
export function torqueTurn(input: JointInput): TorqueTurn;
/**
 * Many joints drawn from how far each input may be off: the same for one seed. Says what is seen on many such
 * trailers; the verdict is that of `evaluate`. Throws a CalculationError.
 */
export function sample(input: JointInput, settings?: SampleSettings): Sample;
/** The repairs of a joint. Throws a CalculationError that names every refused field. */
export function repairs(input: JointInput, rates?: Rates): Repairs;
/** What to cut, drill, weld and tighten to get from a joint to a repaired one (the `input` of a repair). */
export function workSheet(before: JointInput, after: JointInput, rates?: Rates): WorkSheet;
/** Every field with its default; fields that are derived when left out are not in it. */
export function defaults(): JointInput;
/** Reads what a person types into a field, such as `2 1/2 in`; a bare number is in the unit of the field's name. */
export function readQuantity(text: string, field: keyof JointNumbers): Typed;
/** The text of a joint's link, to be put behind `joint.html#`; results are shown in `units`, US ones when left out. */
export function encodeLink(input: JointInput, units?: UnitSystem): string;
/** What a link says: its text, with `#` or without, or a whole address. */
export function decodeLink(text: string): DecodedLink;
