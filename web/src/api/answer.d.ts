// What comes out; the words for its keys stand in content/messages.toml.

/** A number with its SI unit. */
export interface Amount { value: number; unit: string }
export type Verdict = "holds" | "close" | "not-checked" | "does-not-hold";
export interface Said { code: string; amounts: Amount[] }
/** How a value is held. */
export type Flag = "read" | "read-second-hand" | "computed" | "memory" | "practice" | "assumption";
export interface Sourced { source: string; place: string; flag: Flag }
/** One line of working. */
export type Step = Sourced & {
  symbol: string; what: string; formula: string; inputs: Array<{ symbol: string } & Amount>; result: Amount;
};
/** The question a check answers. */
export type CheckId =
  | "clamp" | "bolt-tightening" | "grade" | "slip" | "opening" | "bolt-shear" | "wall-bearing" | "fitting-bearing"
  | "bolt-bending" | "bolt-combined" | "tube-tear-out" | "fitting-tear-out" | "block-shear" | "net-section"
  | "pull-through" | "loosening" | "end-distance" | "bolt-service" | "fitting-flange" | "fitting-edge" | "spacing"
  | "hole-size" | "washer-cover" | "sleeve-fit" | "bolt-fatigue" | "washer-seat" | "member-edge" | "member-flange"
  | "least-clamp" | "turning" | "load-offset" | "sleeve-weld" | "face-pull" | "sleeve-length"
  | "hole-place" | "washer-place" | "sleeve-place" | "plate-place" | "wrench-room";
export interface Check {
  id: CheckId; verdict: Verdict; demand: Amount; capacity: Amount; factor: number; factor_is: string;
  /** factor × demand / capacity; null where not checked. */
  utilisation: number | null;
  /** The load case that decides; null where no load enters. */
  case: GoverningCase | null;
  reason: Said; steps: Step[];
}
/** What a load asks for: again and again, once without lasting harm, once without breaking. */
export type LoadKind = "service" | "proof" | "ultimate";
export interface GoverningCase { case: string; kind: LoadKind }
export type Part = "face" | "washer" | "plate" | "corner" | "side-wall" | "sleeve" | "insert" | "stack" | "bolt";
/** A ratio outside the range where a formula was checked. */
export interface OutOfRange { ratio: "b/t" | "h/b" | "d_w/b" | "d_w/flat" | "f_y/E" | "d_w/D"; value: number; min: number; max: number }
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
  unknown?: string;
  faces: Face[]; least: SupportNumbers; likely: SupportNumbers;
  approach_at_wanted_clamp_mm: number | null; dent_at_wanted_clamp_mm: number | null;
  dent_left_mm: number | null; clicks_up_to_nm: number | null;
}
export interface Losses { relaxation_n: number; embedding_n: number; temperature_n: number; left_min_n: number }
export interface BoltShare {
  along_mm: number; across_mm: number; force_along_n: number; force_across_n: number; pull_n: number;
}
export type LoadCase = Sourced & {
  case: string; kind: LoadKind; longitudinal_n: number; vertical_n: number; transverse_n: number;
  point_ahead_mm: number; point_below_mm: number; other_reading_n: number | null;
  twist_nm: number; pitch_nm: number; roll_nm: number; bolts: BoltShare[];
};
export interface Loads {
  case: string; longitudinal_n: number; vertical_n: number; transverse_n: number; bolts: BoltShare[];
  joint: JointChoices["joint"]; rule: JointChoices["load_rule"]; cases: LoadCase[];
}
export type FatigueDetail =
  | "bolt" | "open-hole" | "clamped-hole" | "friction-lap" | "welded-attachment" | "plain";
export interface Fatigue {
  road: Sourced & { blocks: Array<{ share: number; per_mile: number }>; miles: number };
  bolt: Array<Sourced & {
    view: "aisc-g" | "vdi" | "goodman"; bolt_share: number; amplitude: Amount; endured: Amount; endured_two_million: Amount;
    used_at_full_share: number; used_on_the_road_share: number;
  }>;
  hole_range: Amount;
  hole: Array<Sourced & {
    category: string; detail: FatigueDetail; applies: boolean; range_two_million: Amount; threshold: Amount;
    life: string;
  }>;
  /** An order of magnitude; null where the joint slips or opens, and where nothing repeats. */
  life: { likely: string; low: string; high: string; ends_at: FatigueDetail } | null;
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
    how: string;
    found: Array<{ value: Settled; verdict: Verdict }>;
  }>;
}
/** How a joint stands at a torque. */
export interface Setting { torque_nm: number; verdict: Verdict; weakest: CheckId; utilisation: number | null }
/** What the wrench can be set to: nothing where no torque is better than the one that is set. */
export interface WrenchSetting { now: Setting; best: Setting | null; band_nm: [number, number] | null }
export type Metal = "member" | "softened-member" | "added-part" | "softened-part" | "fitting";
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
export type RepairKind =
  | "tightening" | "thick-washer" | "spreader" | "loose-sleeve" | "through-sleeve" | "welded-sleeve" | "solid-insert";
/** What a repair needs that not everybody has: to filter by. */
export type Need =
  | "lathe" | "mill" | "drill-press" | "long-drill" | "open-end" | "steel-welder" | "aluminum-welder" | "blaster"
  | "longer-fitting";
/** A step of the work by key; minutes and cost for all of them, by the rates. */
export interface Operation { what: string; count: number; minutes: number; cost: number; }
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
  };
  money: Money;
}
export interface Cut {
  what: string; stock: string; material: string; count: number;
  length: Amount; plus: Amount; minus: Amount; width: Amount | null; thickness: Amount | null;
  outer: Amount | null; inner: Amount | null;
  /** How it is brought to its length; null where the saw decides. */
  fit: "sawn" | "filed" | "faced" | "flush" | "milled" | "turned" | null;
  /** How far the place that it goes into may be from the drawing, either way. */
  varies: Amount | null;
  /** Length to have of the stock for one, by the drawing. */
  rough: Amount; stock_length: Amount; notes: Said[];
}
export type DrillSize = Sourced & { diameter: Amount };
export interface Hole {
  place: string; count: number; from: Amount | null; to: Amount;
  drill_inch: DrillSize | null; drill_metric: DrillSize | null; tool: string; pilot: Amount | null;
  /** How deep it is, where that is more than a wall or a plate. */
  deep: Amount | null;
  class: (Sourced & { fit: "close" | "normal" | "loose" | "structural" }) | null;
  distances: Array<{ what: string; needed: Amount; given: Amount; verdict: Verdict }>; notes: Said[];
}
export type Filler = Sourced & { id: string; label: string; shear_strength: Amount };
export interface Weld {
  joint: string; count: number; length: Amount; groove_angle: Amount; depth: Amount; root_face: Amount;
  root_gap: Amount; throat: Amount; least_throat: Amount; throat_needed: Amount;
  filler: Filler; other_filler: Filler | null; demand: Amount; capacity: Amount; factor: number;
  utilisation: number; verdict: Verdict; case: GoverningCase | null;
  fillet: { least_leg: Amount; largest_leg: Amount; proud: Amount; throat: Amount; notes: Said[] } | null;
  steps: Step[]; notes: Said[];
}
export type TighteningPlan = Sourced & {
  torque: Amount; clamp: Amount; reached: Amount; method: string; lubrication: string; bolt_length: Amount; bolt_stock: Amount;
  bolts: Array<{ number: number; along: Amount; across: Amount }>; order: number[];
  passes: Array<Sourced & { what: string; torque: Amount | null }>;
  first_loss: Amount; first_loss_share: Amount; look_again: Said[]; notes: Said[];
};
export interface WorkSheet {
  kind: RepairKind; input: JointInput; cuts: Cut[]; holes: Hole[]; weld: Weld | null; tightening: TighteningPlan;
  materials: Array<{
    what: string; stock: string; material: string; count: number; length: Amount | null; mass: Amount; cost: number;
  }>;
  operations: Operation[]; work: Work; money: Money; needs: Need[]; effects: Said[]; cautions: Said[];
}
