//! The work sheet of a repair: what to cut, drill, weld and tighten, as plain tables.

use calc_core::catalog;
use calc_core::quantity::{Dimension, UnitSystem};
use calc_core::repair::sheet::{
    Cut, Distance, Hole, MaterialLine, TighteningPlan, WeldPlan, WorkSheet,
};
use calc_core::report::{Amount, Label, Message, Said};
use calc_core::scenario::Field;
use drawing::words::key;

use crate::el::{El, classed, el};
use crate::trailer::verdict_word;
use crate::trailer::words::{self, Words, message};

/// The tables and sentences of a work sheet.
pub(super) fn tables(sheet: &WorkSheet, units: UnitSystem) -> Vec<El> {
    let mut all = Vec::new();
    // Before anything is loosened: those that keep the trailer, or the spring, from coming down.
    let first = sheet.cautions.iter().take_while(|said| {
        matches!(
            said.code,
            Message::CautionSupportTrailer | Message::CautionSpringLoad
        )
    });
    let (first, further) = sheet.cautions.split_at(first.count());
    all.push(notes(&[first], units));
    all.extend(words::needs(sheet.needs).map(|text| el("p").text(text)));
    if !sheet.effects.is_empty() {
        all.push(el("h3").text(message(key::SHEET_WHAT_CHANGES_WITH_IT)));
        all.push(notes(&[&sheet.effects], units));
    }
    if !sheet.cuts.is_empty() {
        all.push(cuts(&sheet.cuts, units));
        all.push(notes(
            &sheet.cuts.iter().map(|c| &c.notes[..]).collect::<Vec<_>>(),
            units,
        ));
    }
    if !sheet.holes.is_empty() {
        all.push(holes(&sheet.holes, units));
        all.extend(distances(&sheet.holes, units));
        all.push(notes(
            &sheet.holes.iter().map(|h| &h.notes[..]).collect::<Vec<_>>(),
            units,
        ));
    }
    if let Some(weld) = &sheet.weld {
        all.extend(welds(weld, units));
    }
    let faces = |what: Label| sheet.operations.iter().any(|step| step.what == what);
    if faces(Label::WorkSurfaces) {
        let surface =
            catalog::slip_surface(&sheet.input.faying_surface).map_or("", |row| row.label());
        all.push(el("p").text(message(key::SHEET_FACES).with(&[surface])));
    }
    all.extend(tightening(&sheet.tightening, units));
    all.push(materials(sheet, units));
    all.push(el("p").text(counted_in(sheet)));
    all.push(el("h3").text(message(key::SHEET_TAKE_CARE)));
    all.push(notes(&[further], units));
    all
}

/// A table that falls into blocks on a phone. Rows as they come, so that all tables share one code.
fn table(caption: &str, heads: &[&'static str], rows: Vec<Vec<String>>) -> El {
    let mut body = el("tbody");
    for cells in rows {
        let mut row = el("tr");
        for (cell, name) in cells.into_iter().zip(heads) {
            row = row.child(if Some(name) == heads.first() {
                el("th").attr("scope", "row").text(cell)
            } else {
                el("td").attr("data-name", name).text(cell)
            });
        }
        body = body.child(row);
    }
    let mut head = el("tr");
    for name in heads {
        head = head.child(el("th").attr("scope", "col").text(*name));
    }
    classed("table", "restack")
        .child(el("caption").text(caption))
        .child(el("thead").child(head))
        .child(body)
}

/// Sentences, each once.
fn notes(lists: &[&[Said]], units: UnitSystem) -> El {
    let mut told: Vec<String> = Vec::new();
    let mut list = el("ul");
    for said in lists.iter().copied().flatten() {
        let text = words::said(said, units);
        if !told.contains(&text) {
            list = list.child(el("li").text(text.as_str()));
            told.push(text);
        }
    }
    list
}

fn shown(amount: Amount, units: UnitSystem) -> String {
    words::amount(amount.si, amount.dimension, units)
}

fn or_none(amount: Option<Amount>, units: UnitSystem) -> String {
    amount.map_or_else(|| String::from("–"), |a| shown(a, units))
}

/// Stock and material by their names.
fn made_of(stock: &str, material: &str) -> String {
    let material = catalog::material(material).map_or("", |m| m.label());
    match catalog::sleeve(stock) {
        Some(row) => "{0}, {1}".with(&[row.label(), material]),
        None => String::from(material),
    }
}

fn cuts(cuts: &[Cut], units: UnitSystem) -> El {
    let rows = cuts.iter().map(|cut| {
        let section: Vec<String> = [cut.width, cut.thickness]
            .into_iter()
            .flatten()
            .map(|a| shown(a, units))
            .collect();
        let section = if section.is_empty() {
            "{0} / {1}".with(&[&or_none(cut.outer, units), &or_none(cut.inner, units)])
        } else {
            section.join(" × ")
        };
        [
            "{0} × {1}".with(&[&cut.count.to_string(), words::label(cut.what)]),
            made_of(cut.stock, cut.material),
            "{0} (+{1}, −{2})".with(&[
                &shown(cut.length, units),
                &shown(cut.plus, units),
                &shown(cut.minus, units),
            ]),
            section,
            shown(cut.rough, units),
            shown(cut.stock_length, units),
        ]
        .into()
    });
    table(
        message(key::SHEET_TO_CUT),
        &[
            message(key::SHEET_PIECE),
            message(key::SHEET_FROM),
            message(key::SHEET_LENGTH),
            message(key::SHEET_SECTION),
            message(key::SHEET_STOCK_FOR_ONE),
            message(key::SHEET_USES_UP_WITH_SAW_CUTS),
        ],
        rows.collect(),
    )
}

fn holes(holes: &[Hole], units: UnitSystem) -> El {
    let rows = holes.iter().map(|hole| {
        let from = hole.from.map_or_else(
            || String::from(message(key::SHEET_NEW)),
            |from| message(key::SHEET_OPEN_FROM).with(&[&shown(from, units)]),
        );
        // Both lists whatever the reader's units: the drill in the box decides.
        let drills: Vec<String> = [
            (hole.drill_inch, UnitSystem::Us),
            (hole.drill_metric, UnitSystem::Metric),
        ]
        .into_iter()
        .filter_map(|(drill, system)| drill.map(|d| drill_size(d.diameter.si, system)))
        .collect();
        let class = hole.class.map_or_else(String::new, |class| {
            "{0}, {1} ({2})".with(&[
                words::label(class.fit),
                class.cite.place,
                class.cite.flag.words(),
            ])
        });
        let mut with = String::from(words::label(hole.tool));
        if let Some(pilot) = hole.pilot {
            with = message(key::SHEET_BEGIN_WITH).with(&[&with, &shown(pilot, units)]);
        }
        [
            message(key::SHEET_IN).with(&[&hole.count.to_string(), words::label(hole.place)]),
            from,
            hole.deep.map_or_else(
                || shown(hole.to, units),
                |deep| {
                    message(key::SHEET_DEEP).with(&[&shown(hole.to, units), &shown(deep, units)])
                },
            ),
            drills.join(message(key::SHEET_OR)),
            with,
            class,
        ]
        .into()
    });
    table(
        message(key::SHEET_HOLES),
        &[
            message(key::SHEET_WHERE),
            message(key::SHEET_FROM),
            message(key::SHEET_TO),
            message(key::SHEET_DRILL),
            message(key::SHEET_WITH),
            message(key::SHEET_WHAT_IT_IS),
        ],
        rows.collect(),
    )
}

/// A drill as it is marked: a fraction of an inch, or millimetres.
fn drill_size(si: f64, units: UnitSystem) -> String {
    let fraction = match units {
        UnitSystem::Us => calc_core::quantity::as_fraction_inches(si),
        UnitSystem::Metric => None,
    };
    fraction.unwrap_or_else(|| words::amount(si, Dimension::Length, units))
}

fn distances(holes: &[Hole], units: UnitSystem) -> Option<El> {
    let mut seen: Vec<Distance> = Vec::new();
    for distance in holes.iter().flat_map(|h| &h.distances) {
        if !seen.contains(distance) {
            seen.push(*distance);
        }
    }
    (!seen.is_empty()).then(|| {
        el("ul").children(seen.into_iter().map(|d| {
            el("li")
                .text(message(key::SHEET_NEEDS_HAS).with(&[
                    words::label(d.what),
                    &shown(d.needed, units),
                    &shown(d.given, units),
                ]))
                .child(verdict_word(d.verdict))
        }))
    })
}

fn welds(weld: &WeldPlan, units: UnitSystem) -> Vec<El> {
    let filler = |f: &calc_core::repair::sheet::FillerLine| {
        message(key::SHEET_IN_SHEAR).with(&[
            f.label,
            &shown(f.shear_strength, units),
            f.cite.flag.words(),
        ])
    };
    let mut fillers = filler(&weld.filler);
    if let Some(other) = &weld.other_filler {
        fillers = message(key::SHEET_OR_2).with(&[&fillers, &filler(other)]);
    }
    let amount = |a: Amount| shown(a, units);
    let rows = [
        [message(key::SHEET_JOINT), words::label(weld.joint)],
        [
            message(key::SHEET_BEVEL),
            &message(key::SHEET_AGAINST_THE_SLEEVE_DEEP_ROOT_FACE).with(&[
                &amount(weld.groove_angle),
                &amount(weld.depth),
                &amount(weld.root_face),
            ]),
        ],
        [message(key::SHEET_LENGTH_OF_EACH), &amount(weld.length)],
        [
            message(key::SHEET_THROAT),
            &message(key::SHEET_THE_TABLE_ASKS_FOR_THE_LOAD).with(&[
                &amount(weld.throat),
                &amount(weld.least_throat),
                &amount(weld.throat_needed),
            ]),
        ],
        [message(key::SHEET_FILLER), &fillers],
        [
            message(key::SHEET_STRENGTH_OF_EACH),
            &message(key::SHEET_CARRIES_CAN_TAKE_FACTOR_USED).with(&[
                &amount(weld.demand),
                &amount(weld.capacity),
                &((weld.factor * 100.0).round() / 100.0).to_string(),
                &words::share(Some(weld.utilisation)).unwrap_or_default(),
            ]),
        ],
    ]
    .map(|row| row.map(str::to_owned).to_vec());
    let caption = format!("{} welds", weld.count);
    let fillet = weld.fillet.as_ref().map_or(&[][..], |f| &f.notes);
    vec![
        table(
            &caption,
            &[message(key::SHEET_WHAT), message(key::SHEET_FIGURE)],
            rows.to_vec(),
        ),
        notes(&[&weld.notes, fillet], units),
    ]
}

fn tightening(plan: &TighteningPlan, units: UnitSystem) -> Vec<El> {
    let order: Vec<String> = plan.order.iter().map(usize::to_string).collect();
    let rows = plan.passes.iter().enumerate().map(|(i, pass)| {
        [
            (i + 1).to_string(),
            String::from(words::label(pass.what)),
            or_none(pass.torque, units),
            String::from(pass.cite.flag.words()),
        ]
        .into()
    });
    let state = words::choice(Field::Lubrication, &plan.lubrication);
    let told = message(key::SHEET_TORQUE_BY_FOR_ORDER_OF_THE).with(&[
        &shown(plan.torque, units),
        &words::choice(Field::Method, &plan.method),
        &state,
        &order.join(", "),
        &shown(plan.bolt_length, units),
        &shown(plan.bolt_stock, units),
    ]);
    let loss = message(key::SHEET_ABOUT_OF_THE_CLAMP_LOAD_GOES).with(&[
        &shown(plan.first_loss, units),
        &shown(plan.first_loss_share, units),
    ]);
    vec![
        table(
            message(key::SHEET_ROUNDS_OF_THE_WRENCH),
            &[
                message(key::SHEET_ROUND),
                message(key::SHEET_WHAT),
                message(key::SHEET_TORQUE),
                message(key::SHEET_CITED),
            ],
            rows.collect(),
        ),
        el("p").text(told),
        notes(&[&plan.notes], units),
        el("p").text(loss),
        notes(&[&plan.look_again], units),
    ]
}

/// A line of material: how many of what, from which stock.
pub(super) fn piece(line: &MaterialLine) -> String {
    let bolt = catalog::thread(line.stock).zip(catalog::bolt_grade(line.material));
    let from = bolt.map_or_else(
        || made_of(line.stock, line.material),
        |(thread, grade)| "{0}, {1}".with(&[thread.label(), grade.label()]),
    );
    "{0} × {1}, {2}".with(&[&line.count.to_string(), words::label(line.what), &from])
}

/// What costs are in, and how old the prices are.
fn counted_in(sheet: &WorkSheet) -> String {
    let money = [&*sheet.money.currency, &*sheet.money.prices_of];
    if sheet.money.currency.is_empty() {
        String::from(message(key::SHEET_OWN_MONEY))
    } else {
        message(key::REPAIR_MONEY).with(&money)
    }
}

fn materials(sheet: &WorkSheet, units: UnitSystem) -> El {
    let money = |cost: f64| format!("{cost:.0}");
    let parts = sheet.materials.iter().map(|m| {
        let mass = (m.mass.si > 0.0).then(|| shown(m.mass, units));
        let size = [m.length.map(|length| shown(length, units)), mass];
        let size: Vec<String> = size.into_iter().flatten().collect();
        [piece(m), size.join(", "), money(m.cost)]
    });
    let work = sheet.operations.iter().map(|o| {
        [
            "{0} × {1}".with(&[&o.count.to_string(), words::label(o.what)]),
            format!("{:.0}\u{a0}min", o.minutes),
            money(o.cost),
        ]
    });
    let sum = [
        String::from(message(key::SHEET_TOGETHER)),
        message(key::SHEET_MIN).with(&[
            &words::amount(sheet.work.mass_kg, Dimension::Mass, units),
            &format!("{:.0}", sheet.work.minutes),
        ]),
        money(sheet.work.cost),
    ];
    table(
        message(key::SHEET_MATERIAL_AND_TIME_BY_YOUR_RATES),
        &[
            message(key::SHEET_WHAT),
            message(key::SHEET_LENGTH_MASS_OR_TIME),
            message(key::SHEET_COST),
        ],
        parts.chain(work).chain([sum]).map(Vec::from).collect(),
    )
}
