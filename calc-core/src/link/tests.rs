//! What is written is read back, whatever text comes in; damaged links are told from whole ones.

use super::*;
use crate::Scenario;
use crate::scenario::{Input, options};
use proptest::prelude::*;

fn intact(text: &str) -> Reading {
    match decode(text) {
        Decoded::Intact(reading) => reading,
        other => panic!("{text}: {other:?}"),
    }
}

fn damaged(text: &str) -> Reading {
    match decode(text) {
        Decoded::Damaged(reading) => reading,
        other => panic!("{text}: {other:?}"),
    }
}

/// A link with a fitting check.
fn sealed(body: &str) -> String {
    format!("{body}/k-{}", check::check(body))
}

fn example() -> Sheet {
    let mut sheet = Sheet::default();
    sheet.set(Field::TubeWidth, 2.5, Unit::Inch).unwrap();
    sheet.set(Field::TubeWall, 0.125, Unit::Inch).unwrap();
    sheet
        .set(Field::BallBelow, -20.0, Unit::Millimetre)
        .unwrap();
    sheet.set(Field::TongueShare, 12.5, Unit::Percent).unwrap();
    sheet
        .set(Field::Torque, 90.0, Unit::PoundForceFoot)
        .unwrap();
    sheet.choose(Field::Grade, "sae-8").unwrap();
    sheet
}

#[test]
fn written_as_typed() {
    let text = encode(&example());
    let body = "v1/coupler/u-us/b-2.5in/t-0.125in/ts-12.5pc/bb-m20mm/tq-90lbfft/cl-sae-8";
    assert_eq!(text, sealed(body));
    let reading = intact(&text);
    assert_eq!(reading.sheet, example());
    assert_eq!(reading.notices, []);
    let input = reading.sheet.input();
    assert_eq!((input.tube_width_mm, input.tube_wall_mm), (63.5, 3.175));
    assert_eq!((input.ball_below_mm, input.tongue_share), (-20.0, 0.125));
}

#[test]
fn the_default_in_another_unit_is_kept_as_typed() {
    let mut sheet = Sheet::default();
    sheet.set(Field::TubeWidth, 2.0, Unit::Inch).unwrap();
    assert_eq!(sheet.input(), Input::default());
    assert_eq!(encode(&sheet), sealed("v1/coupler/u-us/b-2in"));
    sheet.set(Field::TubeWidth, 50.8, Unit::Millimetre).unwrap();
    assert_eq!(sheet, Sheet::default());
}

#[test]
fn a_repair_changes_only_what_it_changes() {
    let mut sheet = example();
    let mut input = sheet.input();
    input.torque_nm = None;
    input.support = String::from("through-sleeve");
    assert_eq!(sheet.update(&input), []);
    assert_eq!(sheet.input(), input);
    assert_eq!(sheet.entry(Field::TubeWidth).unwrap().unit, Unit::Inch);
    input.tube_wall_mm = f64::NAN;
    let refused = sheet.update(&input);
    assert_eq!(
        refused.first().map(SheetError::field),
        Some(Field::TubeWall)
    );
}

#[test]
fn other_ways_to_arrive() {
    let text = encode(&example());
    let escaped = text.replace('/', "%2F");
    let doubly = escaped.replace('%', "%25");
    for arrived in [
        format!("#{text}"),
        format!("?s={text}"),
        format!("?s={escaped}&from=mail"),
        format!("?x=1&s={text}#top"),
        format!("https://host.invalid/page/#{text}"),
        format!("https://host.invalid/page/?s={text}"),
        format!("#{escaped}"),
        format!("#{}", escaped.to_lowercase()),
        format!("#{doubly}"),
        format!("  #{text}\n"),
        text.to_uppercase(),
    ] {
        assert_eq!(intact(&arrived).sheet, example(), "{arrived}");
    }
    for junk in [
        ".",
        ")",
        "/",
        " and so on",
        "](x)",
        "…",
        "\u{0}",
        "%20",
        ">",
        ").",
        "--",
    ] {
        let reading = intact(&format!("#{text}{junk}"));
        assert_eq!(reading.sheet, example(), "{junk}");
        assert_eq!(reading.notices, [Notice::Cut], "{junk}");
    }
}

#[test]
fn not_links() {
    for text in [
        "",
        "#",
        "#why-clamp",
        "why-clamp",
        "https://host.invalid/page/#why-clamp",
    ] {
        assert_eq!(decode(text), Decoded::NotALink, "{text}");
    }
    for (text, kind) in [
        ("#v2/coupler/b-2in/k-abcd", "v2/coupler"),
        ("#v1x/coupler", "v1x/coupler"),
        (&sealed("v1/hanger/b-2in"), "v1/hanger"),
    ] {
        let kind = String::from(kind);
        assert_eq!(decode(text), Decoded::Foreign { kind }, "{text}");
    }
    assert_eq!(decode(&"a/".repeat(LONGEST / 2 + 1)), Decoded::TooLong);
}

#[test]
fn damage_shows_what_was_read() {
    let text = encode(&example());
    for end in "v1/c".len()..text.len() {
        damaged(text.get(..end).unwrap());
    }
    let reading = damaged(&text.replace("2.5in", "3.5in"));
    assert_eq!(reading.sheet.entry(Field::TubeWidth).unwrap().number, 3.5);
    assert_eq!(reading.notices, []);
    assert_eq!(reading.sheet.chosen(Field::Grade), Some("sae-8"));
}

#[test]
fn each_notice() {
    for (settings, code, field) in [
        ("zz-5", "unknown-key", None),
        ("zz", "unknown-key", None),
        ("u-xx", "unknown-units", None),
        ("b-2in/b-3in", "repeated", Some(Field::TubeWidth)),
        ("cl-sae-9", "unknown-choice", Some(Field::Grade)),
        ("b-two", "not-a-number", Some(Field::TubeWidth)),
        ("b-1.2.3mm", "not-a-number", Some(Field::TubeWidth)),
        ("b-", "not-a-number", Some(Field::TubeWidth)),
        ("b-5kg", "wrong-unit", Some(Field::TubeWidth)),
        ("b-5", "wrong-unit", Some(Field::TubeWidth)),
        ("b-5000mm", "out-of-range", Some(Field::TubeWidth)),
        ("bb-m600mm", "out-of-range", Some(Field::BallBelow)),
    ] {
        let reading = intact(&sealed(&format!("v1/coupler/u-us/{settings}")));
        let found: Vec<_> = reading
            .notices
            .iter()
            .map(|n| (n.code(), n.field()))
            .collect();
        assert_eq!(found, [(code, field)], "{settings}");
        assert!(!reading.notices[0].to_string().is_empty());
        let kept = code == "out-of-range";
        assert_eq!(
            Scenario::new(&reading.sheet.input()).is_err(),
            kept,
            "{settings}"
        );
    }
}

#[test]
fn a_number_without_unit_can_be_set_in_every_field() {
    for &field in Field::ALL {
        if let Kind::Number {
            dimension, unit, ..
        } = field.kind()
        {
            assert!(unit.fits(dimension), "{field:?}");
        }
    }
}

#[test]
fn keys_and_names_stay_within_the_alphabet() {
    let mut keys = vec![UNITS_KEY, CHECK_KEY];
    for &field in Field::ALL {
        assert!(field.key().len() <= 4);
        assert!(field.key().bytes().all(|b| b.is_ascii_lowercase()));
        keys.push(field.key());
        for name in options(field) {
            assert_eq!(within_alphabet(name), (name, false), "{name}");
        }
    }
    let count = keys.len();
    keys.sort_unstable();
    keys.dedup();
    assert_eq!(keys.len(), count);
}

#[test]
fn the_longest_link_can_be_read() {
    let mut sheet = Sheet::default();
    for &field in Field::ALL {
        if let Kind::Number { dimension, .. } = field.kind() {
            let unit = Unit::of(dimension).max_by_key(|u| u.token().len()).unwrap();
            let number = -1.234_567_890_123_456_7e-8;
            // In a small unit it may have too many zeros in the unit of the name.
            let filled = sheet.set(field, number, unit);
            let filled = filled.or_else(|_| sheet.set(field, number, field.unit()));
            filled.unwrap();
        } else {
            let longest = options(field).into_iter().max_by_key(|name| name.len());
            sheet.choose(field, longest.unwrap()).unwrap();
        }
    }
    let slack = Field::ALL.len() * (sheet::LONGEST_NUMBER - "m0.000000012345678901234567".len());
    let text = encode(&sheet);
    assert!(text.len() + slack <= LONGEST, "{}", text.len());
    assert_eq!(intact(&text).sheet, sheet);
    for number in [1e-30, 1e30, f64::NAN, f64::INFINITY] {
        assert!(sheet.set(Field::TubeWidth, number, Unit::Inch).is_err());
    }
    assert!(sheet.set(Field::Grade, 1.0, Unit::One).is_err());
    assert!(sheet.choose(Field::TubeWidth, "wide").is_err());
}

/// Every single wrong character, of the alphabet and beyond, in several links.
#[test]
fn slips_of_one_character_are_caught() {
    let alphabet = "abcdefghijklmnopqrstuvwxyz0123456789./- _%#?&ABZ:é";
    let mut metric = Sheet::new(UnitSystem::Metric);
    metric.set(Field::Torque, 122.0, Unit::NewtonMetre).unwrap();
    let (mut tried, mut missed) = (0, Vec::new());
    for sheet in [Sheet::default(), example(), metric] {
        let text = encode(&sheet);
        for (at, was) in text.char_indices() {
            for c in alphabet.chars().filter(|c| c.to_ascii_lowercase() != was) {
                let mut slip = text.clone();
                slip.replace_range(at..=at, c.encode_utf8(&mut [0; 4]));
                tried += 1;
                if matches!(decode(&slip), Decoded::Intact(_)) {
                    missed.push(slip);
                }
            }
        }
        for at in 1..text.len() {
            let mut swapped = text.clone().into_bytes();
            swapped.swap(at - 1, at);
            let swapped = String::from_utf8(swapped).unwrap();
            if swapped != text {
                tried += 1;
                if matches!(decode(&swapped), Decoded::Intact(_)) {
                    missed.push(swapped);
                }
            }
        }
    }
    assert!(tried > 6500, "{tried}");
    assert!(missed.is_empty(), "{} of {tried}: {missed:?}", missed.len());
}

#[test]
fn in_words() {
    let shown = |system| {
        let pieces = describe(&example(), system);
        pieces
            .into_iter()
            .map(|(_, value)| value.replace('\u{a0}', " "))
            .collect::<Vec<_>>()
    };
    assert_eq!(
        shown(UnitSystem::Us),
        [
            "2.5 in",
            "0.125 in",
            "12.5 %",
            "−20 mm (−0.787 in)",
            "90 lb-ft",
            "SAE Grade 8"
        ]
    );
    assert_eq!(
        shown(UnitSystem::Metric).last(),
        shown(UnitSystem::Us).last()
    );
    assert_eq!(shown(UnitSystem::Metric)[4], "90 lb-ft (122 N·m)");
}

#[test]
fn copied() {
    let forms = copy_forms("https://host.invalid/#v1/x", " Tube [2 in],\n 90 lb-ft ");
    assert_eq!(
        forms.plain,
        "Tube [2 in], 90 lb-ft\nhttps://host.invalid/#v1/x"
    );
    assert_eq!(
        forms.markdown,
        "[Tube \\[2 in\\], 90 lb-ft](https://host.invalid/#v1/x)"
    );
    assert_eq!(
        forms.bbcode,
        "[url=https://host.invalid/#v1/x]Tube (2 in), 90 lb-ft[/url]"
    );
    let odd = copy_forms("https://host.invalid/a (b)]", "x");
    assert_eq!(odd.markdown, "[x](https://host.invalid/a%20%28b%29%5D)");
}

/// Any sheet: fractions, any fitting unit, in range or not.
fn sheets() -> impl Strategy<Value = Sheet> {
    let number = prop_oneof![
        (-400_i32..4000, 1_i32..65).prop_map(|(n, d)| f64::from(n) / f64::from(d)),
        -1e4..1e4_f64,
        (-100_i32..5000).prop_map(f64::from),
        Just(-0.0),
    ];
    let fill = (0..Field::ALL.len(), number, any::<prop::sample::Index>());
    (any::<bool>(), prop::collection::vec(fill, 0..60)).prop_map(|(us, fills)| {
        let units = if us {
            UnitSystem::Us
        } else {
            UnitSystem::Metric
        };
        let mut sheet = Sheet::new(units);
        for (at, number, pick) in fills {
            let field = Field::ALL[at];
            match field.kind() {
                Kind::Number { dimension, .. } => {
                    let fitting: Vec<Unit> = Unit::of(dimension).collect();
                    let unit = *pick.get(&fitting);
                    // Written longer than a link takes: refused, and the field stays as it was.
                    let _ = sheet.set(field, number, unit);
                }
                Kind::Choice { .. } => {
                    let names = options(field);
                    let name: &&str = pick.get(&names);
                    sheet.choose(field, name).unwrap();
                }
            }
        }
        sheet
    })
}

/// -0.0000042 psi is -0.000000000029 GPa, with more zeros than a link takes: refused as typed, or it would be lost
/// where a sheet is made from the input.
#[test]
fn what_has_too_many_zeros_in_the_fields_unit_is_not_taken() {
    let mut sheet = Sheet::default();
    let tiny = -4.3e-6 / 1.023;
    assert!(crate::quantity::link_number(tiny).len() <= sheet::LONGEST_NUMBER);
    let refused = sheet.set(Field::TubeModulus, tiny, Unit::Psi);
    assert!(
        matches!(refused, Err(SheetError::NotANumber { .. })),
        "{refused:?}"
    );
    let (again, errors) = Sheet::from_input(&sheet.input(), sheet.units);
    assert_eq!((again.input(), errors.len()), (sheet.input(), 0));
}

proptest! {
    #[test]
    fn read_back_exactly(sheet in sheets()) {
        let text = encode(&sheet);
        prop_assert_eq!(within_alphabet(&text), (text.as_str(), false));
        let Decoded::Intact(reading) = decode(&text) else {
            return Err(TestCaseError::fail(text));
        };
        prop_assert_eq!(&reading.sheet, &sheet);
        prop_assert_eq!(encode(&reading.sheet), text);
        let (before, after) = (sheet.input(), reading.sheet.input());
        for &field in Field::ALL {
            prop_assert_eq!(before.number(field).map(f64::to_bits), after.number(field).map(f64::to_bits));
            prop_assert_eq!(before.choice(field), after.choice(field));
        }
        let (again, refused) = Sheet::from_input(&before, sheet.units);
        prop_assert_eq!(again.input(), before);
        prop_assert_eq!(refused, []);
    }

    #[test]
    fn any_text_is_taken(text in prop_oneof![
        ".{0,3000}",
        "[#?]?v1/coupler(/[a-z]{1,4}-[a-z0-9.m%-]{0,12}){0,20}(/k-[a-z0-9]{4})?",
        "[a-z0-9./#%?=&-]{0,3000}",
    ]) {
        if let Decoded::Intact(reading) | Decoded::Damaged(reading) = decode(&text) {
            let again = encode(&reading.sheet);
            prop_assert_eq!(intact(&again).sheet, reading.sheet);
        }
    }

    #[test]
    fn a_changed_link_is_not_taken_for_whole(
        sheet in sheets(),
        at in any::<prop::sample::Index>(),
        insert in "[a-z0-9./-]{0,3}",
        gone in 0..4_usize,
    ) {
        let text = encode(&sheet);
        let start = at.index(text.len());
        let end = (start + gone).min(text.len());
        let mut changed = text.clone();
        changed.replace_range(start..end, &insert);
        let whole = matches!(decode(&changed), Decoded::Intact(_));
        let same = within_alphabet(&changed).0 == text;
        prop_assert!(!whole || same, "{text} → {changed}");
    }
}
