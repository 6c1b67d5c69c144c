// What goes in: every field may be left out and then takes its default. Written by
// `cargo run -p outside-checks --bin joint-declarations`.

/** Numbers, each in the unit that its name says. */
export interface JointNumbers {
  /** 15 to 400; 50.8 when left out. */
  tube_width_mm: number;
  /** 5 to 400; 76.2 when left out. */
  tube_depth_mm: number;
  /** 0.8 to 25; 3.175 when left out. */
  tube_wall_mm: number;
  /** 0 to 40; 5 when left out. */
  fitting_thickness_mm: number;
  /** 1 to 6; 2 when left out. */
  bolts_along: number;
  /** 1 to 3; 1 when left out. */
  bolt_rows: number;
  /** 10 to 600; 90 when left out. */
  spacing_along_mm: number;
  /** 10 to 400; 40 when left out. */
  spacing_across_mm: number;
  /** 0.05 to 1; 0.75 when left out. */
  preload_share: number;
  /** 1 to 40; 6.35 when left out. */
  spreader_thickness_mm: number;
  /** 10 to 600; 76.2 when left out. */
  spreader_length_mm: number;
  /** -3 to 10; 0.25 when left out. */
  sleeve_short_mm: number;
  /** 50 to 4500; 750 when left out. */
  trailer_mass_kg: number;
  /** 0 to 0.5; 0.125 when left out. */
  tongue_share: number;
  /** 1 to 6; 3 when left out. */
  vertical_factor: number;
  /** 0 to 2; 0.5 when left out. */
  braking_g: number;
  /** 0 to 2; 0.3 when left out. */
  side_g: number;
  /** 0 to 1500; 130 when left out. */
  ball_ahead_mm: number;
  /** -500 to 500; 30 when left out. */
  ball_below_mm: number;
  /** 0 to 100; 35 when left out. */
  temperature_swing_k: number;
  /** 500 to 40000; 2000 when left out. */
  towing_mass_kg: number;
  /** 1 to 3; 1 when left out. */
  axles: number;
  /** 100 to 700; 330 when left out. */
  tyre_radius_mm: number;
  /** 0 to 600; 100 when left out. */
  hanger_height_mm: number;
  /** -400 to 400; 0 when left out. */
  hanger_offset_mm: number;
  /** 0.2 to 1.5; 0.5 when left out. */
  hanger_share: number;
  /** 300 to 1500; 650 when left out. */
  spring_length_mm: number;
  /** 0 to 90; 30 when left out. */
  chain_angle_deg: number;
  /** 0.5 to 1; 1 when left out. */
  chain_share: number;
  /** -500000 to 500000; 0 when left out. */
  free_along_n: number;
  /** -500000 to 500000; 0 when left out. */
  free_up_n: number;
  /** -500000 to 500000; 0 when left out. */
  free_side_n: number;
  /** -50000 to 50000; 0 when left out. */
  free_about_along_nm: number;
  /** -50000 to 50000; 0 when left out. */
  free_about_side_nm: number;
  /** -50000 to 50000; 0 when left out. */
  free_about_up_nm: number;
  /** 3 to 500; 25 when left out. */
  fitting_edge_mm: number;
  /** 5 to 5000; 60 when left out. */
  end_distance_mm: number;
  /** 0 to 1000; 0.01 when left out. */
  road_full_per_mile: number;
  /** 0 to 1000; 0.3 when left out. */
  road_hard_per_mile: number;
  /** 0 to 1; 0.7 when left out. */
  road_hard_share: number;
  /** 0 to 10000; 10 when left out. */
  road_middle_per_mile: number;
  /** 0 to 1; 0.4 when left out. */
  road_middle_share: number;
  /** 0 to 10000; 100 when left out. */
  road_light_per_mile: number;
  /** 0 to 1; 0.2 when left out. */
  road_light_share: number;
  /** 100 to 2000000; 50000 when left out. */
  road_miles: number;
  /** 0 to 60; derived when left out. */
  tube_corner_radius_mm: number;
  /** 20 to 1200; derived when left out. */
  tube_yield_mpa: number;
  /** 40 to 1500; derived when left out. */
  tube_ultimate_mpa: number;
  /** 40 to 230; derived when left out. */
  tube_modulus_gpa: number;
  /** 0.2 to 0.4; derived when left out. */
  tube_poisson: number;
  /** 5 to 80; derived when left out. */
  hole_mm: number;
  /** 8 to 200; derived when left out. */
  washer_outer_mm: number;
  /** 0.5 to 30; derived when left out. */
  washer_thickness_mm: number;
  /** 0.5 to 3000; derived when left out. */
  torque_nm: number;
  /** 0.05 to 0.6; derived when left out. */
  nut_factor: number;
  /** 0 to 0.6; derived when left out. */
  scatter_share: number;
  /** 0.02 to 0.8; derived when left out. */
  faying_friction: number;
  /** 10 to 400; derived when left out. */
  spreader_width_mm: number;
  /** 6 to 120; derived when left out. */
  sleeve_outer_mm: number;
  /** 0.5 to 40; derived when left out. */
  sleeve_wall_mm: number;
  /** 3 to 200; derived when left out. */
  flange_arm_mm: number;
  /** 0 to 500; derived when left out. */
  load_offset_mm: number;
  /** 5 to 80; derived when left out. */
  fitting_hole_mm: number;
  /** 0 to 100; derived when left out. */
  fitting_gap_mm: number;
  /** 500 to 15000; derived when left out. */
  bed_length_mm: number;
  /** 500 to 15000; derived when left out. */
  ball_to_axle_mm: number;
  /** 4 to 400; derived when left out. */
  bolt_gauge_mm: number;
  /** 0.8 to 40; derived when left out. */
  upright_wall_mm: number;
  /** 0 to 0.25; derived when left out. */
  flange_slope: number;
}
/** Choices by name. */
export interface JointChoices {
  /** "through-sides" when left out. */
  mount:
    | "through-sides" | "from-top";
  /** "6061-t6" when left out. */
  tube_material:
    | "6061-t6" | "6063-t5" | "6063-t6" | "6005a-t6" | "5052-h32" | "5083-h116" | "a36" | "a500-b" | "a500-c"
    | "a53-b" | "a513-1020" | "s235" | "s355" | "stainless-304" | "unknown-aluminum" | "unknown-steel" | "unknown";
  /** "measured" when left out. */
  wall_basis:
    | "measured" | "nominal" | "unknown";
  /** "no" when left out. */
  weld_near:
    | "no" | "yes";
  /** "open" when left out. */
  tube_end:
    | "open" | "capped";
  /** "a36" when left out. */
  fitting_material:
    | "6061-t6" | "6063-t5" | "6063-t6" | "6005a-t6" | "5052-h32" | "5083-h116" | "a36" | "a500-b" | "a500-c"
    | "a53-b" | "a513-1020" | "s235" | "s355" | "stainless-304" | "unknown-aluminum" | "unknown-steel" | "unknown";
  /** "no" when left out. */
  fitting_spreads:
    | "no" | "yes";
  /** "air" when left out. */
  gap_filling:
    | "air" | "packing";
  /** "unc-1.2" when left out. */
  bolt:
    | "unc-1.4" | "unc-5.16" | "unc-3.8" | "unc-7.16" | "unc-1.2" | "unc-9.16" | "unc-5.8" | "unc-3.4" | "unc-7.8"
    | "unc-1" | "unf-1.4" | "unf-5.16" | "unf-3.8" | "unf-7.16" | "unf-1.2" | "unf-9.16" | "unf-5.8" | "unf-3.4"
    | "unf-7.8" | "unf-1" | "uns-1" | "m6" | "m8" | "m10" | "m12" | "m14" | "m16" | "m18" | "m20" | "m22" | "m24";
  /** "sae-5" when left out. */
  bolt_grade:
    | "sae-2" | "sae-5" | "sae-8" | "a307" | "a325" | "a490" | "iso-4.6" | "iso-4.8" | "iso-5.6" | "iso-5.8"
    | "iso-6.8" | "iso-8.8" | "iso-9.8" | "iso-10.9" | "iso-12.9" | "a2-70" | "a2-80" | "a4-70" | "a4-80"
    | "f593-cw" | "unknown";
  /** "narrow" when left out. */
  washer:
    | "narrow" | "wide";
  /** "zinc" when left out. */
  lubrication:
    | "dry" | "oiled" | "zinc" | "waxed-zinc" | "moly" | "anti-seize" | "cadmium" | "black" | "stainless-dry"
    | "unknown";
  /** "wrench" when left out. */
  tightening:
    | "feel" | "wrench" | "turn" | "indicating-washer" | "elongation" | "nasa-dry" | "nasa-oiled";
  /** "bare-clean" when left out. */
  faying_surface:
    | "bare-clean" | "painted" | "steel-mill-scale" | "steel-blasted" | "en-a" | "en-b" | "en-c" | "en-d"
    | "al-blasted-12" | "al-blasted-18" | "al-blasted-24" | "al-blasted-30" | "unknown";
  /** "bare" when left out. */
  support:
    | "bare" | "spreader" | "loose-sleeve" | "through-sleeve" | "solid-insert" | "solid";
  /** "a36" when left out. */
  spreader_material:
    | "6061-t6" | "6063-t5" | "6063-t6" | "6005a-t6" | "5052-h32" | "5083-h116" | "a36" | "a500-b" | "a500-c"
    | "a53-b" | "a513-1020" | "s235" | "s355" | "stainless-304";
  /** "rt-0.750x0.120" when left out. */
  sleeve:
    | "nps-1.4-40" | "nps-1.4-80" | "nps-3.8-40" | "nps-3.8-80" | "nps-1.2-40" | "nps-1.2-80" | "nps-3.4-40"
    | "nps-3.4-80" | "nps-1-40" | "nps-1-80" | "nps-1-1.4-40" | "nps-1-1.4-80" | "rt-0.500x0.065"
    | "rt-0.625x0.058" | "rt-0.625x0.065" | "rt-0.625x0.095" | "rt-0.625x0.120" | "rt-0.750x0.065"
    | "rt-0.750x0.083" | "rt-0.750x0.095" | "rt-0.750x0.120" | "rt-0.750x0.125" | "rt-0.750x0.134"
    | "rt-0.750x0.156" | "rt-0.875x0.065" | "rt-0.875x0.095" | "rt-0.875x0.120" | "rt-0.875x0.125"
    | "rt-0.875x0.156" | "rt-0.875x0.188" | "rt-1.000x0.065" | "rt-1.000x0.095" | "rt-1.000x0.120"
    | "rt-1.000x0.125" | "rt-1.000x0.156" | "rt-1.000x0.188" | "rt-1.000x0.219" | "rt-1.000x0.250"
    | "rt-1.250x0.120" | "rt-1.250x0.125" | "rt-1.250x0.188" | "rt-1.250x0.250" | "rt-1.250x0.375"
    | "rt-1.500x0.375" | "rb-1.000x0.406" | "rb-1.000x0.531" | "rb-1.250x0.531" | "rb-1.500x0.531"
    | "rb-1.250x0.656" | "rb-1.500x0.656" | "rb-1.500x0.781" | "rb-1.750x0.781";
  /** "a513-1020" when left out. */
  sleeve_material:
    | "6061-t6" | "6063-t5" | "6063-t6" | "6005a-t6" | "5052-h32" | "5083-h116" | "a36" | "a500-b" | "a500-c"
    | "a53-b" | "a513-1020" | "s235" | "s355" | "stainless-304";
  /** "no" when left out. */
  sleeve_welded:
    | "no" | "yes";
  /** "6061-t6" when left out. */
  insert_material:
    | "6061-t6" | "6063-t5" | "6063-t6" | "6005a-t6" | "5052-h32" | "5083-h116" | "a36" | "a500-b" | "a500-c"
    | "a53-b" | "a513-1020" | "s235" | "s355" | "stainless-304";
  /** "coupler" when left out. */
  joint:
    | "coupler" | "spring-hanger" | "chain-bracket" | "free";
  /** "road-service" when left out. */
  load_rule:
    | "road-service" | "us-tow-bar" | "coupler-classes" | "hitch-test" | "adr-62" | "un-r55";
  /** "service" when left out. */
  free_kind:
    | "service" | "proof" | "ultimate";
  /** "zinc" when left out. */
  bolt_finish:
    | "zinc" | "plain" | "stainless";
  /** "road-salt" when left out. */
  exposure:
    | "dry" | "wet" | "road-salt";
  /** "steel" when left out. */
  tow_springs:
    | "steel" | "air";
  /** "rectangular-tube" when left out. */
  member:
    | "rectangular-tube" | "round-tube" | "channel" | "angle" | "solid-bar";
  /** "no" when left out. */
  shaped_washer:
    | "no" | "yes";
  /** "both" when left out. */
  fitting_sides:
    | "both" | "one";
  /** "not-looked" when left out. */
  found_crack:
    | "not-looked" | "no" | "yes";
  /** "not-looked" when left out. */
  found_oval:
    | "not-looked" | "no" | "yes";
  /** "not-looked" when left out. */
  found_spin:
    | "not-looked" | "no" | "yes";
  /** "not-looked" when left out. */
  found_trails:
    | "not-looked" | "no" | "yes";
  /** "not-looked" when left out. */
  found_hollow:
    | "not-looked" | "no" | "yes";
}
/** What a joint is made of. */
export type JointInput = { version?: number } & Partial<JointNumbers> & Partial<JointChoices>;
