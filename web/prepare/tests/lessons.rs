//! What a lesson is made of is written as HTML, and what is wrong in it is found with file and line.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may fail by a panic, and so may what it calls"
)]

use prepare::gate;
use prepare::lesson::{self, Lesson};
use prepare::problem::Problem;
use prepare::readability::{markdown, sentences};
use prepare::register::Register;

const FILE: &str = "content/30-grip.md";

fn read(body: &str) -> Result<Lesson, Vec<Problem>> {
    let text = format!("---\ntitle: Friction carries the load\nnumber: 3\n---\n{body}");
    lesson::read(FILE, &text, &Register::default())
}

/// Line and words of the only fault.
fn fault(body: &str) -> (usize, String) {
    let mut problems = read(body).expect_err("a fault");
    assert_eq!(problems.len(), 1, "{problems:?}");
    let problem = problems.remove(0);
    assert_eq!(problem.file, FILE);
    (problem.line, problem.what)
}

fn parsed(html: &str) -> scraper::Html {
    let parsed = scraper::Html::parse_fragment(html);
    assert!(parsed.errors.is_empty(), "{:?}", parsed.errors);
    assert_eq!(gate::page("x", html), []);
    parsed
}

fn count(html: &scraper::Html, selector: &str) -> usize {
    let selector = scraper::Selector::parse(selector).unwrap();
    html.select(&selector).count()
}

const WHOLE: &str = "A hook.\n\n\
    ::predict What *holds*?\n- The bolt. :: No.\n* Friction. :: Yes.\n::end\n\n\
    ::figure grip Two plates.\n\n\
    ::worked In full\nA share: $R = \\mu F$.\n\n1. So {grips} of {clamp}.\n::end\n\n\
    ::faded clamp=4800lbf,24kN load=600lbf,3kN | One step missing\n1. {clamp} gives {?grips}.\nhint: Multiply by $\\mu$.\nnear: clamp :: That is the clamp.\n::end\n\n\
    ::solo surface=painted | Alone\nHow much? {?grips}\nhint: Multiply.\nanswer: It grips {grips}.\n::end\n\n\
    ::trailer On your trailer too.\n";

#[test]
fn a_whole_lesson_is_sound_html() {
    let lesson = read(WHOLE).unwrap();
    assert_eq!((lesson.id.as_str(), lesson.number), ("grip", Some(3)));
    let html = parsed(&lesson.html);
    assert_eq!(count(&html, "h1 > .no"), 1);
    assert_eq!(count(&html, ".hook[data-step]"), 1);
    assert_eq!(count(&html, ".predict .option"), 2);
    assert_eq!(count(&html, ".predict .option[data-right] .reply"), 1);
    assert_eq!(count(&html, ".live-figure svg"), 2);
    assert_eq!(
        count(&html, "fieldset.controls[disabled] input[type=range]"),
        2
    );
    assert_eq!(count(&html, ".worked math"), 1);
    assert_eq!(count(&html, ".faded input.answer[data-answer=grips]"), 1);
    assert_eq!(count(&html, ".faded [data-near=clamp]"), 1);
    assert_eq!(count(&html, ".solution [data-v=grips]"), 2);
    assert_eq!(count(&html, "a[data-at=joint][href^='#v1/coupler/']"), 1);
    // The program's sentences keep their slots, nothing else does.
    let (before, rest) = lesson
        .html
        .split_once("<template data-at=\"words\">")
        .unwrap();
    let (words, after) = rest.split_once("</template>").unwrap();
    assert!(words.contains("grips = &quot;"), "{words}");
    assert!(
        [before, after]
            .iter()
            .all(|part| !part.contains('{') && !part.contains("::"))
    );
}

#[test]
fn slots_hold_what_the_calculation_gives_for_their_state() {
    // 4800 lbf × 0.20 = 960 lbf; at the start 6000 lbf × 0.10 = 600 lbf.
    let html = read(WHOLE).unwrap().html;
    assert!(html.contains("<span data-v=\"grips\">960\u{a0}lbf</span>"));
    assert!(html.contains("<span data-v=\"grips\">600\u{a0}lbf</span>"));
    assert!(html.contains("data-state=\"clamp=4800lbf,24kN load=600lbf,3kN\""));
}

#[test]
fn a_block_without_its_end_is_named() {
    let (line, what) = fault("Text.\n\n::worked Title\nText.\n");
    assert_eq!(line, 7);
    assert!(what.contains("no `::end`"), "{what}");
}

#[test]
fn a_prediction_needs_options_with_replies_and_one_right_one() {
    let (line, what) = fault("::predict What?\n- One. :: No.\n- Two. :: No.\n::end\n");
    assert_eq!(line, 5);
    assert!(what.contains("one right one"), "{what}");
    let (line, what) = fault("::predict What?\n* One. :: Yes.\n- Two. :: No.\n- Three.\n::end\n");
    assert_eq!(line, 8);
    assert!(what.contains("after `::`"), "{what}");
    let (line, what) =
        fault("::predict What?\n* One. :: Yes.\n- Two. :: No.\nThree. :: No.\n::end\n");
    assert_eq!(line, 8);
    assert!(what.contains("begins with"), "{what}");
}

#[test]
fn a_slot_that_names_nothing_is_named_with_its_line() {
    let (line, what) = fault("::worked Title\nText.\n\nThis is {nothing}.\n::end\n");
    assert_eq!(line, 8);
    assert!(what.contains("`nothing`"), "{what}");
}

#[test]
fn an_answer_belongs_into_a_problem_and_only_once() {
    let (_, what) = fault("::worked Title\nIt is {?grips}.\n::end\n");
    assert!(what.contains("no answer"), "{what}");
    let (line, what) =
        fault("::faded clamp=5000lbf,24kN | Title\nIt is {grips}.\nhint: So.\n::end\n");
    assert_eq!(line, 5);
    assert!(what.contains("no answer"), "{what}");
    let (_, what) = fault("::solo | Title\n{?grips} and {?clamp}.\nhint: So.\n::end\n");
    assert!(what.contains("more than one"), "{what}");
}

#[test]
fn a_problem_needs_a_state_that_can_be_and_a_hint() {
    let (line, what) =
        fault("::faded clamp=500000lbf,2400kN | Title\n{?grips}\nhint: So.\n::end\n");
    assert_eq!(line, 5);
    assert!(what.contains("clamp=500000lbf,2400kN"), "{what}");
    let (_, what) = fault("::faded clamp=24 | Title\n{?grips}\nhint: So.\n::end\n");
    assert!(what.contains("either system"), "{what}");
    let (_, what) = fault("::faded turn=3 | Title\n{?grips}\nhint: So.\n::end\n");
    assert!(what.contains("no control is called `turn`"), "{what}");
    let (_, what) = fault("::faded clamp=4000lbf,20kN | Title\n{?grips}\n::end\n");
    assert!(what.contains("no hint"), "{what}");
    let (line, what) = fault(
        "::faded clamp=4000lbf,20kN | Title\n{?grips}\nhint: So.\nnear: nothing :: No.\n::end\n",
    );
    assert_eq!(line, 8);
    assert!(what.contains("`nothing`"), "{what}");
}

#[test]
fn a_formula_that_cannot_be_read_is_named() {
    let (line, what) = fault("Text.\n\n$R = \\nothing{3}$\n");
    assert_eq!(line, 7);
    assert!(what.contains("formula"), "{what}");
}

#[test]
fn blocks_need_a_lesson() {
    let text = "---\ntitle: Other\n---\n::worked Title\nText.\n::end\n";
    let problems = lesson::read("content/85-other.md", text, &Register::default()).unwrap_err();
    assert!(problems[0].what.contains("needs a lesson"), "{problems:?}");
}

/// Every page a reader is sent to reads at grade 8 or below by both formulas, and no sentence takes two breaths.
#[test]
fn the_text_reads_easily() {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let register = Register::read(&root).unwrap();
    let mut lessons = 0;
    for entry in std::fs::read_dir(root.join("content")).unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_none_or(|e| e != "md") {
            continue;
        }
        let mut counts = markdown(&std::fs::read_to_string(&path).unwrap(), &register);
        if let Ok(said) = std::fs::read_to_string(path.with_extension("toml")) {
            counts += sentences(&said, &register);
            lessons += 1;
        }
        let (by_syllables, by_letters) = (
            counts.flesch_kincaid_grade(),
            counts.automated_readability_index(),
        );
        let at = path.display();
        assert!(
            by_syllables <= 8.0 && by_letters <= 8.0,
            "{at}: {by_syllables:.1}, {by_letters:.1}"
        );
        assert!(
            counts.longest <= 45,
            "{at}: a sentence of {}",
            counts.longest
        );
    }
    assert_eq!(lessons, 10);
}

/// When to stop towing stands in the last lesson and in the section on care: one list, word for word.
#[test]
fn the_two_lists_of_when_to_stop_are_one() {
    let list = |name: &str| -> Vec<String> {
        let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../content");
        let text = std::fs::read_to_string(path.join(name)).unwrap();
        let from = text.find("Stop using the trailer").unwrap();
        let items = text[from..]
            .lines()
            .skip_while(|line| !line.starts_with("- "));
        items
            .take_while(|line| line.starts_with("- "))
            .map(str::to_owned)
            .collect()
    };
    let care = list("85-care.md");
    assert!(care.len() >= 6, "{care:?}");
    assert_eq!(list("76-look.md"), care);
}
