// Every name by which an answer says something. Written by
// `cargo run -p outside-checks --bin joint-declarations names`.

/** A coherent SI unit; empty for a plain number, a share and a count. */
export type SiUnit =
  | "m" | "m²" | "N" | "Pa" | "N·m" | "kg" | "rad" | "K" | "N/m" | "m/s²" | "s" | "J" | "";
/** A unit that can be typed. */
export type Unit =
  | "millimetre" | "centimetre" | "metre" | "inch" | "foot" | "square-millimetre" | "square-centimetre"
  | "square-metre" | "square-inch" | "newton" | "kilonewton" | "pound-force" | "kip" | "pascal" | "megapascal"
  | "newton-per-square-millimetre" | "gigapascal" | "psi" | "ksi" | "newton-metre" | "kilonewton-metre"
  | "pound-force-foot" | "pound-force-inch" | "kilogram" | "tonne" | "pound" | "degree" | "turn" | "radian"
  | "celsius" | "fahrenheit" | "kelvin" | "celsius-step" | "fahrenheit-step" | "kilonewton-per-millimetre"
  | "newton-per-millimetre" | "pound-force-per-inch" | "gravity" | "metre-per-second-squared" | "second" | "minute"
  | "hour" | "joule" | "one" | "percent";
/** What a number measures. */
export type Dimension =
  | "length" | "area" | "force" | "stress" | "torque" | "mass" | "angle" | "temperature" | "temperature-step"
  | "stiffness" | "moment" | "acceleration" | "time" | "energy" | "ratio" | "share" | "count";
/** Units that results are shown in. */
export type UnitSystem =
  | "us" | "metric";
/** How a check, or the joint, stands. */
export type Verdict =
  | "holds" | "close" | "not-checked" | "does-not-hold";
/** The question a check answers. */
export type CheckId =
  | "found" | "clamp" | "bolt-tightening" | "grade" | "slip" | "opening" | "bolt-shear" | "wall-bearing"
  | "fitting-bearing" | "bolt-bending" | "bolt-combined" | "tube-tear-out" | "fitting-tear-out" | "block-shear"
  | "net-section" | "pull-through" | "loosening" | "end-distance" | "bolt-service" | "fitting-flange"
  | "fitting-edge" | "spacing" | "hole-size" | "washer-cover" | "sleeve-fit" | "bolt-fatigue" | "washer-seat"
  | "member-edge" | "least-clamp" | "turning" | "load-offset" | "member-flange" | "sleeve-weld" | "face-pull"
  | "sleeve-length" | "hole-place" | "washer-place" | "sleeve-place" | "plate-place" | "wrench-room";
/** What gives way. */
export type Part =
  | "face" | "washer" | "plate" | "corner" | "side-wall" | "sleeve" | "insert" | "stack" | "bolt";
/** What a factor on a demand is. */
export type FactorKey =
  | "factor-none" | "factor-own" | "factor-scatter" | "factor-slip" | "factor-strength" | "factor-yield"
  | "factor-breaking" | "factor-proof" | "factor-load" | "factor-inside";
/** A load case. */
export type CaseName =
  | "braking-over-a-bump" | "pulling-over-a-bump" | "cornering-over-a-bump" | "tow-bar-pulled" | "tow-bar-pushed"
  | "tow-bar-bent-up" | "tow-bar-bent-down" | "tow-bar-bent-aside" | "class-pulled" | "class-pushed"
  | "class-aside" | "class-pressed-up" | "class-pulled-down" | "adr-pulled" | "adr-pushed" | "adr-aside" | "adr-up"
  | "adr-down" | "d-value-pulled" | "d-value-pushed" | "d-test-pulled" | "d-test-pushed" | "d-line-pulled"
  | "d-line-pushed" | "wheel-over-a-bump" | "braking-rear-eye" | "braking-front-eye" | "backing-rear-eye"
  | "backing-front-eye" | "cornering-left" | "cornering-right" | "cornering-unloaded" | "chain-pulls-up"
  | "chain-pulls-down" | "chain-pulls-aside" | "chain-pulls-along" | "chain-pulls-straight-up"
  | "chain-pulls-straight-down" | "free-load" | "hitch-test-pressed" | "hitch-test-pulled" | "hitch-test-pushed"
  | "hitch-test-aside" | "v-value-pressed-up" | "v-value-pulled-down" | "v-test-pressed-up" | "v-test-pulled-down"
  | "v-value-pressed-up-pushed" | "v-value-pulled-down-pushed" | "v-test-pressed-up-pushed"
  | "v-test-pulled-down-pushed" | "braking-after-a-bump" | "pulling-after-a-bump" | "braking-in-a-bend"
  | "braking-in-a-bend-after-a-bump" | "pulling-in-a-bend" | "pulling-in-a-bend-after-a-bump" | "bend-rear-eye"
  | "bend-front-eye" | "axle-hangs" | "none";
/** A ratio that a formula was checked for. */
export type CheckedRatio =
  | "b/t" | "h/b" | "d_w/b" | "d_w/flat" | "f_y/E" | "d_w/D";
/** A published view of what a bolt endures. */
export type EnduranceView =
  | "aisc-g" | "vdi" | "goodman";
/** Whose strength decides. */
export type Metal =
  | "member" | "softened-member" | "added-part" | "softened-part" | "fitting";
/** What a repair changes. */
export type RepairKind =
  | "tightening" | "thick-washer" | "spreader" | "loose-sleeve" | "through-sleeve" | "welded-sleeve"
  | "solid-insert";
/** What a repair needs that not everybody has: to filter by. */
export type Need =
  | "lathe" | "mill" | "drill-press" | "long-drill" | "open-end" | "steel-welder" | "aluminum-welder" | "blaster"
  | "longer-fitting" | "new-bracket" | "saddles" | "large-wrench";
/** How a piece is brought to its length. */
export type Fit =
  | "sawn" | "filed" | "faced" | "flush" | "milled" | "turned";
/** An input that scatters. */
export type Variable =
  | "finish" | "tightening" | "slip-friction" | "wall" | "yield" | "load" | "bolt" | "put-in" | "fit";
/** A filler metal. */
export type FillerId =
  | "4043" | "5356" | "er70s-6" | "309l" | "308l";
/** A source, as the page of sources lists it. */
export type SourceId =
  | "ac-43-13-1b" | "adm-2020" | "adr-62-02" | "aisc-360-22" | "aisc-manual" | "aisi-s100" | "anodic-index"
  | "asme-b1-1" | "asme-b18-2-1" | "asme-b18-2-2" | "asme-b18-2-8" | "asme-b18-21-1" | "asme-b36-10m"
  | "asme-b94-11m" | "astm-a240" | "astm-a307" | "astm-a36" | "astm-a500" | "astm-a513" | "astm-a53" | "astm-b221"
  | "astm-f3125" | "astm-f593" | "aws-a5-9" | "bolt-handbook" | "bs-328" | "cfr-49-393" | "comar-11-13-08-10"
  | "elementary" | "en-1090-2" | "en-1990" | "en-1993-1-1" | "en-1993-1-8" | "en-1999-1-1" | "fastener-maker-page"
  | "fe-tube-face" | "filler-guide" | "friction-tables" | "galvanic-series" | "handbook-recalled" | "iiw-fitnet"
  | "iso-235" | "iso-273" | "iso-3506-1" | "iso-4014" | "iso-4032" | "iso-4042" | "iso-7089" | "iso-7093"
  | "iso-898-1" | "junker" | "machinery-31e" | "mil-std-889" | "mmpds-01" | "nasa-std-5020b" | "own-assumption"
  | "own-derivation" | "rcsc" | "sae-j429" | "shigley-9e" | "trade-practice" | "un-r55" | "vdi-2230";
/** A thing in a list; its words stand in content/messages.toml. */
export type LabelKey =
  | "spread-finish-own" | "spread-finish-range" | "spread-tightening" | "spread-slip-friction"
  | "spread-wall-measured" | "spread-wall-nominal" | "spread-wall-none" | "spread-yield-own" | "spread-yield-rows"
  | "spread-bolt" | "spread-put-in" | "spread-put-in-nothing" | "spread-load" | "spread-softened" | "spread-fit"
  | "spread-fit-none" | "piece-sleeve" | "piece-plate" | "piece-washer" | "piece-block" | "piece-bolt"
  | "piece-bolt-nut" | "place-tube-wall" | "place-fitting" | "place-plate" | "place-washer" | "place-block"
  | "place-sleeve-bore" | "drill-twist" | "drill-step" | "drill-hole-cutter" | "drill-annular" | "drill-in-press"
  | "drill-reamer" | "distance-end" | "distance-next" | "distance-edge" | "distance-corner" | "weld-bevel-groove"
  | "tighten-snug" | "tighten-round" | "tighten-until-still" | "work-holes" | "work-cuts" | "work-welds"
  | "work-surfaces" | "work-bolts" | "work-new-bolts" | "work-remove-sleeves" | "work-flatten" | "work-fretted"
  | "work-ream" | "work-layout" | "work-machine" | "work-saddles" | "work-deep-holes" | "work-fit" | "piece-saddle"
  | "piece-tapered" | "piece-bracket" | "place-saddle" | "weld-round-groove" | "place-one-ply" | "place-bar"
  | "distance-free-edge" | "find-out-metal" | "find-out-alloy" | "find-out-steel" | "find-out-wall"
  | "find-out-marks" | "find-out-faces" | "find-out-threads";
/** A sentence; its words stand in content/messages.toml. */
export type MessageKey =
  | "limit-face-1pct" | "limit-washer-dishes" | "limit-plate-1pct" | "limit-plate-bends" | "limit-corner-folds"
  | "limit-wall-yields" | "limit-wall-cripples" | "limit-wall-buckles" | "limit-sleeve-1pct" | "limit-sleeve-end"
  | "limit-sleeve-bites" | "limit-over-bore" | "limit-sleeve-squashes" | "limit-insert-1pct"
  | "limit-insert-pressed" | "limit-washer-bridges" | "limit-stack-pressed" | "limit-round-wall" | "range-b-t"
  | "range-h-b" | "range-dw-b" | "range-dw-flat" | "range-fy-e" | "clamp-on-an-edge" | "clamp-on-a-line"
  | "clamp-round-wall" | "bolt-below-proof" | "bolt-stretched-once" | "bolt-over-proof" | "bolt-over-yield"
  | "found-crack" | "found-oval" | "found-spin" | "found-hollow" | "found-trails" | "grade-not-for-clamping"
  | "grade-never-zinc" | "grade-zinc-baked" | "bolt-service-below-proof" | "bolt-service-over-proof"
  | "bolt-service-over-yield" | "bolt-fatigue-below" | "bolt-fatigue-road" | "bolt-fatigue-over"
  | "bolt-fatigue-no-road" | "bolt-fatigue-clamp-lost" | "bolt-fatigue-clamp-unknown" | "slip-grips"
  | "slip-slides" | "slip-no-lever" | "slip-clamp-unknown" | "slip-level-road" | "slip-few-bumps"
  | "slip-hardly-brakes" | "slip-hardly-turns" | "slip-no-load" | "slip-sleeve-not-welded" | "slip-sleeve-too-long"
  | "opening-shut" | "opening-parts" | "loosening-slides" | "loosening-stays" | "loosening-clamp-unknown"
  | "opening-clamp-unknown" | "shear-threads" | "shear-shank" | "bearing-fine" | "bearing-oval" | "bending-bends"
  | "bending-stays-straight" | "combined-too-much" | "combined-fine" | "sleeve-weld-tears" | "sleeve-weld-holds"
  | "sleeve-weld-unknown" | "cheek-push-gives" | "cheek-push-holds" | "face-pull-gives" | "face-pull-holds"
  | "face-pressed-gives" | "face-pressed-holds" | "face-pull-nothing-holds" | "face-pull-round-wall"
  | "face-pull-outside" | "offset-unknown" | "least-clamp-loose" | "least-clamp-tight" | "least-clamp-unknown"
  | "turning-turns" | "turning-by-friction" | "turning-swings" | "turning-may-swing" | "turning-free"
  | "flange-holds" | "flange-bends" | "flange-stiff" | "flange-arm-missing" | "fitting-is-sheet"
  | "fitting-too-thin" | "fitting-bearing-oval" | "fitting-bearing-fine" | "tear-out-tears" | "tear-out-fine"
  | "fitting-tear-out-tears" | "fitting-tear-out-fine" | "block-tears" | "block-fine" | "pull-through-pulls"
  | "pull-through-fine" | "edge-by-tear-out" | "bolt-twisted-over-yield" | "fitting-edge-too-near"
  | "fitting-edge-far-enough" | "member-edge-too-near" | "member-edge-far-enough" | "member-flange-bends"
  | "member-flange-holds" | "member-tear-out-tears" | "member-tear-out-fine" | "section-too-weak" | "section-fine"
  | "section-used-up" | "section-twists-alone" | "rail-too-weak" | "rail-fine-so-far" | "end-far-enough"
  | "end-too-near" | "spacing-too-close" | "spacing-far-enough" | "hole-normal" | "hole-oversize"
  | "hole-too-large" | "washer-covers-too-little" | "washer-covers" | "washer-too-thin" | "sleeve-fit-tight"
  | "sleeve-fit-good" | "sleeve-fit-loose" | "sleeve-fit-tips" | "sleeve-length-too-long" | "sleeve-length-fits"
  | "sleeve-length-too-short" | "sleeve-length-short" | "seat-slopes" | "seat-round" | "seat-line"
  | "seat-made-to-fit" | "seat-flat" | "seat-no-room" | "seat-room" | "seat-fillet" | "hole-cuts-corner"
  | "hole-in-flat" | "washers-overlap" | "washer-in-corner" | "washer-past-edge" | "washer-past-end"
  | "washer-at-fitting-upright" | "washer-lies-flat" | "sleeves-overlap" | "sleeve-in-corner" | "sleeve-past-end"
  | "sleeve-has-room" | "plate-past-end" | "plate-too-wide" | "plate-on-fillet" | "washer-off-plate"
  | "plate-lies-on" | "socket-hits-next-head" | "socket-hits-upright" | "socket-goes-on" | "note-sleeve-hole"
  | "note-sleeve-short" | "note-sleeve-long" | "note-end-distance-assumed" | "note-bolt-may-set"
  | "note-paint-in-joint" | "note-rule-not-for-this-joint" | "note-too-heavy-for-rule"
  | "note-tube-bending-not-asked" | "note-chain-own-bolts" | "note-weld-near" | "note-chain-bears-only-then"
  | "note-slip-travel" | "slip-air-gap" | "loosening-air-gap" | "note-protrusion" | "note-own-yield-softened"
  | "note-stainless-threads" | "note-threads-unknown" | "note-nut-factor-outside" | "note-threads-not-zinc"
  | "note-torque-sets-clamp" | "note-long-stainless" | "note-scatter-least" | "note-long-bolt-weaker"
  | "note-matching-nut" | "note-hard-bolt-zinc" | "note-packing-faces" | "note-not-known"
  | "note-friction-of-aluminum" | "note-friction-other" | "note-own-strength" | "note-light-road"
  | "note-heat-on-seat" | "note-light-tongue" | "note-friction-typed" | "note-modulus-typed" | "note-corner-typed"
  | "note-friction-of-stainless" | "note-galvanic-zinc-spares-aluminium" | "note-galvanic-zinc-spares-steel"
  | "note-galvanic-zinc-by-stainless" | "note-galvanic-steel-eats-aluminium"
  | "note-galvanic-stainless-eats-aluminium" | "note-galvanic-stainless-eats-steel" | "note-galvanic-isolate"
  | "note-galvanic-drain" | "note-open-section-twist" | "note-cheeks-not-asked" | "note-one-sided-fitting"
  | "note-load-in-line" | "note-end-distance-taken" | "note-flange-slope-assumed" | "note-gauge-assumed"
  | "fatigue-no-life" | "fatigue-nothing-repeats" | "fatigue-tube-bending-unknown" | "fatigue-road-assumed"
  | "fatigue-aluminium-by-practice" | "fatigue-nominal-only" | "life-below-a-hundred-miles"
  | "life-hundreds-of-miles" | "life-thousands-of-miles" | "life-tens-of-thousands-of-miles"
  | "life-hundreds-of-thousands-of-miles" | "life-a-million-miles-or-more" | "fatigue-clamp-unknown"
  | "caliper-no-face" | "caliper-dent-below" | "caliper-dent-clamp" | "caliper-dent-beyond"
  | "caliper-outside-checked" | "caliper-more-than-bolt" | "oval-round" | "oval-slipped" | "oval-worn-round"
  | "oval-smaller-than-bolt" | "oval-edge-left" | "oval-edge-too-near" | "stop-not-before-click"
  | "stop-weaker-than-computed" | "stop-stronger-than-computed" | "stop-bolt-yields" | "stop-bolt-may-yield"
  | "stop-support-gives" | "stop-implies-nut-factor" | "caliper-round-wall" | "stop-support-unknown"
  | "chance-reaches" | "chance-dents" | "chance-slips" | "chance-owner" | "chance-owner-hardly"
  | "chance-owner-nearly-all" | "chance-owner-not" | "chance-outside-checked" | "chance-not-known" | "cut-flush"
  | "cut-deburr" | "cut-measure-inside" | "cut-in-by-end" | "cut-seam" | "cut-end-closed" | "cut-plate-joined"
  | "cut-edges" | "cut-plate-overhang" | "cut-plate-fillet" | "cut-washer" | "cut-block-fit" | "cut-block-corners"
  | "cut-block-round" | "cut-saddle" | "torque-that-holds" | "torque-comes-close" | "torque-too-narrow"
  | "torque-new-bolts" | "torque-none" | "torque-no-other" | "usual-softened" | "usual-holds" | "usual-close"
  | "decides-member" | "decides-softened-member" | "decides-added-part" | "decides-softened-part"
  | "decides-fitting" | "decides-together" | "fit-numbered" | "fit-filed" | "cut-bored" | "fit-faced" | "fit-flush"
  | "fit-milled" | "fit-turned" | "fit-inside" | "hole-round" | "hole-deep" | "hole-long-drill" | "hole-sleeve-fit"
  | "hole-welded-sleeve" | "hole-in-line" | "hole-open-guided" | "hole-open-thick" | "hole-oval" | "hole-deburr"
  | "hole-through-tube" | "hole-ream-if-tight" | "weld-why-groove" | "weld-bevel-hole" | "weld-bevel-corner"
  | "weld-assumption" | "weld-thin-wall" | "weld-clean-steel" | "weld-clean-aluminium" | "weld-heat-softens"
  | "weld-stainless-to-carbon" | "weld-sequence" | "weld-grind-flush" | "weld-ream-after" | "weld-fillet-proud"
  | "weld-round" | "weld-round-bevel" | "weld-round-dress" | "tighten-clean" | "tighten-smooth" | "tighten-eased"
  | "tighten-measure-faces" | "tighten-nut" | "tighten-mark" | "tighten-look-only" | "tighten-first-look"
  | "tighten-each-season" | "tighten-found-loose" | "effect-ball-ahead" | "effect-hanger-offset"
  | "effect-new-bolts" | "effect-spun-bolts" | "effect-stretched-bolts" | "effect-worn-bolts"
  | "effect-known-threads" | "effect-fitting-hole-taken" | "effect-plate-under-nut" | "effect-sleeves-out"
  | "effect-face-flat" | "effect-fretted" | "effect-fitting-hole" | "effect-cheeks-apart" | "effect-fitting-out"
  | "effect-hanger-packing" | "effect-saddles-out" | "caution-support-trailer" | "caution-spring-load"
  | "caution-qualified-welder" | "caution-zinc-fumes" | "caution-fire" | "caution-battery"
  | "caution-aluminium-weld" | "caution-bare-faces" | "caution-blasting" | "caution-dust" | "caution-bolt-marks"
  | "caution-fitting-reaches" | "caution-fitting-wide" | "caution-two-metals" | "caution-steel-on-aluminum"
  | "caution-paint-again" | "caution-hanger-line" | "caution-hanger-face" | "caution-drain" | "caution-eyes"
  | "caution-cracks" | "caution-local-codes" | "caution-fitted-washer" | "caution-not-known";
