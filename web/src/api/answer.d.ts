// What comes out; the words for its keys stand in content/messages.toml.

/** A number with its SI unit. */
export interface Amount { value: number; unit: SiUnit }
/** A sentence by key; its words stand in content/messages.toml. */
export interface Said { code: MessageKey; amounts: Amount[] }
/** How a value is held. */
export type Flag = "read" | "read-second-hand" | "computed" | "memory" | "practice" | "assumption";
export interface Sourced { source: SourceId; place: string; flag: Flag }
/** One line of working; `what` is said in a few English words. */
export type Step = Sourced & {
  symbol: string; what: string; formula: string; inputs: Array<{ symbol: string } & Amount>; result: Amount;
};
export interface Check {
  id: CheckId; verdict: Verdict; demand: Amount; capacity: Amount; factor: number; factor_is: FactorKey;
  /** factor × demand / capacity; null where not checked. */
  utilisation: number | null;
  /** The load case that decides; null where no load enters. */
  case: GoverningCase | null;
  reason: Said; steps: Step[];
}
/** What a load asks for: again and again, once without lasting harm, once without breaking. */
export type LoadKind = "service" | "proof" | "ultimate";
export interface GoverningCase { case: CaseName; kind: LoadKind }
/** A ratio outside the range where a formula was checked. */
export interface OutOfRange { ratio: CheckedRatio; value: number; min: number; max: number }
export interface Tightening {
  torque_nm: number; nut_factor: number; scatter_share: number;
  clamp_min_n: number; clamp_nominal_n: number; clamp_max_n: number;
  stress_area_mm2: number; proof_load_n: number; yield_load_n: number; implied_friction: number;
  share_stretch: number; share_thread_friction: number; share_face_friction: number;
  combined_stress_nominal_mpa: number; combined_stress_max_mpa: number;
}
/** One face of the tube at one strength. */
export interface FaceNumbers {
  stiffness_n_per_mm: number; load_at_1pct_of_width_n: number; load_at_3pct_of_width_n: number;
  load_at_6pct_of_width_n: number; lasting_dent_from_n: number; gives_way: Part;
}
export interface Face {
  side: "head" | "nut"; bears_by: "washer" | "fitting" | "spreader"; washer_outer_mm: number; end_factor: number;
  /** What one bolt of the group has of the face, beside the others and near an open end. */
  group_factor: number;
  least: FaceNumbers; likely: FaceNumbers;
  yield_line_circular_patch_n: number; yield_line_square_patch_n: number; out_of_range: OutOfRange[];
}
/** The whole support at one strength. */
export interface SupportNumbers {
  lasting_dent_from_n: number; load_at_1pct_of_width_n: number; load_at_3pct_of_width_n: number;
  limit_n: number; gives_way: Part; stiffness_n_per_mm: number; clamp_reached_n: number;
}
export interface Support {
  kind: JointChoices["support"];
  /** Why nobody can say how much clamp is reached; the numbers here then mean nothing. */
  unknown?: MessageKey;
  faces: Face[]; least: SupportNumbers; likely: SupportNumbers;
  approach_at_wanted_clamp_mm: number | null; dent_at_wanted_clamp_mm: number | null;
  dent_left_mm: number | null; clicks_up_to_nm: number | null;
}
export interface Losses { relaxation_n: number; embedding_n: number; temperature_n: number; left_min_n: number }
export interface BoltShare {
  along_mm: number; across_mm: number; force_along_n: number; force_across_n: number; pull_n: number;
}
export type LoadCase = Sourced & {
  case: CaseName; kind: LoadKind; longitudinal_n: number; vertical_n: number; transverse_n: number;
  point_ahead_mm: number; point_below_mm: number; other_reading_n: number | null;
  twist_nm: number; pitch_nm: number; roll_nm: number; bolts: BoltShare[];
};
export interface Loads {
  case: CaseName; longitudinal_n: number; vertical_n: number; transverse_n: number; bolts: BoltShare[];
  joint: JointChoices["joint"]; rule: JointChoices["load_rule"]; cases: LoadCase[];
}
export type FatigueDetail =
  | "bolt" | "open-hole" | "clamped-hole" | "friction-lap" | "welded-attachment" | "plain";
export interface Fatigue {
  road: Sourced & { blocks: Array<{ share: number; per_mile: number }>; miles: number };
  bolt: Array<Sourced & {
    view: EnduranceView; bolt_share: number; amplitude: Amount; endured: Amount; endured_two_million: Amount;
    used_at_full_share: number; used_on_the_road_share: number;
  }>;
  hole_range: Amount;
  hole: Array<Sourced & {
    /** Name of the category in its source. */
    category: string; detail: FatigueDetail; applies: boolean; range_two_million: Amount; threshold: Amount;
    life: MessageKey;
  }>;
  /** An order of magnitude; null where the joint slips or opens, and where nothing repeats. */
  life: { likely: MessageKey; low: MessageKey; high: MessageKey; ends_at: FatigueDetail } | null;
  said: Said[];
}
export interface Report {
  version: number; input: JointInput; verdict: Verdict; weakest: CheckId;
  tightening: Tightening; support: Support; losses: Losses; loads: Loads;
  /** Weakest first. */
  checks: Check[];
  /** Fields that were derived because nothing was given, each with its value in the unit of its name. */
  derived: Array<[keyof JointNumbers, number]>;
  notes: Said[]; fatigue: Fatigue;
  /** What is not known: each check is then the worst of all joints that it may be. Missing where all is known. */
  not_known?: Array<{ field: keyof JointChoices; counted: Settled; stands_for: Settled[] }>;
  /** Which single measurement would change the verdict, most helpful first; missing where none would. */
  would_help?: Array<{
    field: keyof JointChoices;
    /** Key of how it is found out. */
    how: LabelKey;
    found: Array<{ value: Settled; verdict: Verdict }>;
  }>;
}
/** How a joint stands at a torque. */
export interface Setting { torque_nm: number; verdict: Verdict; weakest: CheckId; utilisation: number | null }
/** What the wrench can be set to: nothing where no torque is better than the one that is set. */
export interface WrenchSetting { now: Setting; best: Setting | null; band_nm: [number, number] | null }
/** The answer with the strength that metals usually have; the verdict stays with the least. */
export interface UsualAnswer {
  least: Verdict; usual: Verdict; weakest: CheckId; utilisation: number | null;
  least_limit_n: number; usual_limit_n: number;
  /** Most clamp that a bench would reach had the weld taken nothing away; where there is a weld that softens. */
  unsoftened_reaches_n?: number;
  /** The metal whose usual strength lifts the clamp that the support stands the most. */
  limit_decided_by?: Metal; decided_by: Metal[];
}
export interface Outlook { usual: UsualAnswer; wrench: WrenchSetting; wrench_usual: WrenchSetting; said: Said[] }
/** What is not known, settled: a choice by name, or a wall in millimeters. */
export type Settled = { name: string } | { wall_mm: number };
export interface Work {
  holes: number; cuts: number; welds: number; surfaces: number; minutes: number; mass_kg: number; cost: number;
}
/** A step of the work by key; minutes and cost for all of them, by the rates. */
export interface Operation { what: LabelKey; count: number; minutes: number; cost: number; }
/** Currency as a code of three letters, year and month of the prices; empty where not named. */
export interface Money { currency: string; prices_of: string; }
export interface Repair {
  kind: RepairKind; input: JointInput; changed: Array<keyof JointInput>; verdict: Verdict; weakest: CheckId;
  utilisation: number | null; most_used: number; torque_nm: number; clamp_reached_n: number; work: Work;
  needs: Need[]; steps: Operation[];
}
/** The repairs that no other beats; the three picks are places in `list`. */
export interface Repairs {
  tried: number; held: number; undecided: number; list: Repair[];
  cheapest: number | null; strongest: number | null; without_welding: number | null;
  /** Where none holds: the one that comes nearest, and the check that still stands against it. */
  nearest?: {
    kind: RepairKind; input: JointInput; changed: Array<keyof JointInput>; torque_nm: number; verdict: Verdict;
    check: CheckId; utilisation: number | null; reason: Said;
    /** The value that is not given, where that is all that keeps it from being judged. */
    wants?: keyof JointInput;
  };
  money: Money;
}
export type Stock = JointChoices["sleeve"] | JointChoices["bolt"] | "";
export type StockMaterial = JointChoices["tube_material"] | JointChoices["bolt_grade"];
/** `stock` is the id of a sleeve or of a bolt, empty for plate and bar; `material` that of a metal or of a bolt's grade. */
export interface Cut {
  what: LabelKey; stock: Stock; material: StockMaterial; count: number;
  length: Amount; plus: Amount; minus: Amount; width: Amount | null; thickness: Amount | null;
  outer: Amount | null; inner: Amount | null;
  /** How it is brought to its length; null where the saw decides. */
  fit: Fit | null;
  /** How far the place that it goes into may be from the drawing, either way. */
  varies: Amount | null;
  /** Length to have of the stock for one, by the drawing. */
  rough: Amount; stock_length: Amount; notes: Said[];
}
export type DrillSize = Sourced & { diameter: Amount };
export interface Hole {
  place: LabelKey; count: number; from: Amount | null; to: Amount;
  drill_inch: DrillSize | null; drill_metric: DrillSize | null; tool: LabelKey; pilot: Amount | null;
  /** How deep it is, where that is more than a wall or a plate. */
  deep: Amount | null;
  class: (Sourced & { fit: "close" | "normal" | "loose" | "structural" }) | null;
  distances: Array<{ what: LabelKey; needed: Amount; given: Amount; verdict: Verdict }>; notes: Said[];
}
export type Filler = Sourced & { id: FillerId; label: string; shear_strength: Amount };
export interface Weld {
  joint: LabelKey; count: number; length: Amount; groove_angle: Amount; depth: Amount; root_face: Amount;
  root_gap: Amount; throat: Amount; least_throat: Amount; throat_needed: Amount;
  filler: Filler; other_filler: Filler | null; demand: Amount; capacity: Amount; factor: number;
  utilisation: number; verdict: Verdict; case: GoverningCase | null;
  fillet: { least_leg: Amount; largest_leg: Amount; proud: Amount; throat: Amount; notes: Said[] } | null;
  steps: Step[]; notes: Said[];
}
export type TighteningPlan = Sourced & {
  torque: Amount; clamp: Amount; reached: Amount; method: JointChoices["tightening"]; lubrication: JointChoices["lubrication"]; bolt_length: Amount; bolt_stock: Amount;
  bolts: Array<{ number: number; along: Amount; across: Amount }>; order: number[];
  passes: Array<Sourced & { what: LabelKey; torque: Amount | null }>;
  first_loss: Amount; first_loss_share: Amount; look_again: Said[]; notes: Said[];
};
export interface WorkSheet {
  kind: RepairKind; input: JointInput; cuts: Cut[]; holes: Hole[]; weld: Weld | null; tightening: TighteningPlan;
  materials: Array<{
    what: LabelKey; stock: Stock; material: StockMaterial; count: number; length: Amount | null; mass: Amount; cost: number;
  }>;
  operations: Operation[]; work: Work; money: Money; needs: Need[]; effects: Said[]; cautions: Said[];
}
/** One state on the way of the nut. */
export interface TurnPoint {
  /** From hand-tight. */
  turn_deg: number; torque_nm: number; clamp_n: number;
  /** How far the washers came nearer to each other, by what the clamp stands on. */
  approach_mm: number;
  /** Mean of the two faces, under load and after loosening. */
  dent_mm: number; dent_left_mm: number; stretch_mm: number;
}
/** Torque against turn, with the strength usually found. */
export interface TorqueTurn {
  /** Turn rising. */
  points: TurnPoint[];
  /** Where it bends, and what gives way there. */
  knee: { turn_deg: number; torque_nm: number; part: Part } | null;
  wanted_torque_nm: number;
  /** At the wanted torque; null: the wrench does not click within what was checked. */
  at_wanted: TurnPoint | null;
  /** Why it stops there. */
  ends: "dent-checked" | "bolt-yields" | "support-squashed";
}
/** How one input is spread; numbers in the SI unit of `middle`. */
export type Spread = Sourced & {
  variable: Variable;
  /** Median of a bell curve, likeliest value of a triangle. */
  middle: Amount;
  form:
    | { form: "fixed" }
    /** Bell curves, on the number or its logarithm, are cut at three standard deviations. */
    | { form: "normal" | "log-normal"; sigma: number }
    | { form: "triangular"; low: number; high: number };
  because: LabelKey;
};
/** How a result is spread over the drawn joints; numbers in SI. */
export interface Distribution {
  dimension: Dimension;
  /** What 5, 25, 50, 75 and 95 % of the joints do not exceed. */
  quantiles: [number, number, number, number, number];
  /** Ends of the bars; one joint in 200 at either end lies beyond and counts in the end bar. */
  from: number; to: number;
  /** Joints in each bar; one bar where all are alike. */
  bars: number[];
}
/** What came out of the joints that were drawn; shares from 0 to 1. */
export interface Sample {
  drawn: number; seed: number; spreads: Spread[];
  clamp: Distribution; approach: Distribution; dent: Distribution; dent_left: Distribution;
  clamp_use: Distribution; slip_use: Distribution;
  /** The wrench clicks. */
  reaches: number;
  /** The bolt yields before. */
  bolt_yields: number;
  /** A dent of 0.1 mm or more stays. */
  dents: number;
  /** It slips under its load. */
  slips: number;
  /** What makes the spread, most first. */
  matters_for_clamp: Sensitivity[]; matters_for_dent: Sensitivity[]; matters_for_slip: Sensitivity[];
  /** Why nobody can say how much clamp is reached; the numbers then mean nothing. */
  unknown?: MessageKey;
  /** Not empty: the numbers are only a hint. */
  out_of_range: OutOfRange[];
  said: Said[];
}
export interface Sensitivity { variable: Variable; share: number }
