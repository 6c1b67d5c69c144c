//! What is wrong in the content is found, and named with its file and line.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may fail by a panic, and so may what it calls"
)]

use calc_core::Scenario;
use calc_core::link::{Decoded, decode};
use prepare::lesson::{self, Lesson};
use prepare::links::Places;
use prepare::page::{Assets, Page};
use prepare::problem::Problem;
use prepare::register::Register;
use prepare::{gate, site};

fn register() -> Register {
    toml::from_str(
        "[[source]]\nid = \"a-1\"\ntitle = \"A <table>\"\nkind = \"book\"\nheld = \"Seen.\"\n\n\
         [[term]]\nterm = \"clamp load\"\nmeaning = \"What holds.\"\n",
    )
    .unwrap()
}

fn read(body: &str) -> Result<Lesson, Vec<Problem>> {
    let text = format!("---\ntitle: A title\n---\n{body}");
    lesson::read("content/20-spring.md", &text, &register())
}

/// Line and words of the only fault.
fn fault(result: Result<Lesson, Vec<Problem>>) -> (usize, String) {
    let mut problems = result.expect_err("a fault");
    assert_eq!(problems.len(), 1, "{problems:?}");
    let problem = problems.remove(0);
    assert_eq!(problem.file, "content/20-spring.md");
    (problem.line, problem.what)
}

#[test]
fn a_section_takes_name_and_order_from_the_file_name() {
    let lesson = read("Text.\n").unwrap();
    assert_eq!(
        (lesson.id.as_str(), lesson.order, lesson.nav.as_str()),
        ("spring", 20, "A title")
    );
    assert!(
        lesson
            .html
            .contains("<h1 id=\"spring-heading\">A title</h1>")
    );
}

#[test]
fn headings_stand_below_the_section_and_get_ids() {
    let lesson = read("## Why `it` holds\n\nText.\n").unwrap();
    assert!(
        lesson
            .html
            .contains("<h2 id=\"spring-why-it-holds\">Why <code>it</code> holds</h2>"),
        "{}",
        lesson.html
    );
}

#[test]
fn sources_and_terms_become_links() {
    let lesson = read("By [a-1], the [clamp load] and the [Clamp load].\n").unwrap();
    assert!(
        lesson
            .html
            .contains("<a href=\"#source-a-1\" title=\"A &lt;table&gt;\">[1]</a>")
    );
    assert_eq!(lesson.html.matches("href=\"#term-clamp-load\"").count(), 2);
    assert!(register().sources_html().contains("A &lt;table&gt;"));
}

#[test]
fn an_unknown_source_is_named_with_its_line() {
    let (line, what) = fault(read("Text.\n\nMore [S99].\n"));
    assert_eq!(line, 6);
    assert!(what.contains("S99"), "{what}");
}

#[test]
fn an_unknown_source_in_a_caption_is_named_with_its_line() {
    let (line, what) = fault(read("::figure opening A tube [S98].\n"));
    assert_eq!(line, 4);
    assert!(what.contains("S98"), "{what}");
}

#[test]
fn an_unknown_figure_is_named_with_its_line() {
    let (line, what) = fault(read("Text.\n\n::figure nothing A caption.\n"));
    assert_eq!(line, 6);
    assert!(what.contains("unknown figure `nothing`"), "{what}");
}

#[test]
fn every_still_drawing_may_stand_on_the_page() {
    let body: String = (1..=5)
        .map(|n| format!("::figure measure-{n} A caption.\n"))
        .collect();
    let html = read(&body).unwrap().html;
    assert_eq!(html.matches("<svg").count(), 5);
    assert_eq!(gate::page("x", &html), []);
    let parsed = scraper::Html::parse_fragment(&html);
    assert!(parsed.errors.is_empty(), "{:?}", parsed.errors);
}

#[test]
fn a_figure_needs_a_caption() {
    let (line, what) = fault(read("::figure opening\n"));
    assert_eq!(line, 4);
    assert!(what.contains("no words"), "{what}");
}

#[test]
fn a_title_is_needed() {
    let result = lesson::read(
        "content/20-spring.md",
        "---\norder: 3\n---\nText.\n",
        &register(),
    );
    assert_eq!(
        fault(result),
        (1, String::from("front matter has no title"))
    );
}

#[test]
fn front_matter_with_an_unknown_key_is_refused() {
    let text = "---\ntitle: A title\ncolour: blue\n---\n";
    let (line, what) = fault(lesson::read("content/20-spring.md", text, &register()));
    assert_eq!(line, 3);
    assert!(what.contains("colour"), "{what}");
}

#[test]
fn the_title_of_the_section_is_not_repeated_in_the_text() {
    assert_eq!(fault(read("Text.\n\n# Again\n")).0, 6);
}

#[test]
fn what_the_content_policy_refuses_is_refused() {
    for html in [
        "<p style=\"color:red\">x</p>",
        "<p onclick=\"x()\">x</p>",
        "<b><span class=\"a\" style=\"x\">x</span></b>",
        "<script>x</script>",
        "<style>p{}</style>",
    ] {
        assert_eq!(fault(read(&format!("Text.\n\n{html}\n"))).0, 6, "{html}");
    }
    read("<p class=\"style onclick\">x = \"on\"</p>\n").unwrap();
}

#[test]
fn directives_in_code_are_text() {
    let lesson = read("```\n::figure nothing at all\n```\n").unwrap();
    assert!(lesson.html.contains("::figure nothing at all"));
}

#[test]
fn ids_are_given_once() {
    let problems = gate::page(
        "x",
        "<p id=\"a\"></p>\n<p class=\"b\" id=\"a\"></p>\n{{rest}}\n",
    );
    let lines: Vec<usize> = problems.iter().map(|problem| problem.line).collect();
    assert_eq!(lines, [2, 3]);
}

#[test]
fn a_worked_example_may_stay_at_a_state_of_its_own() {
    let worked = |head: &str| read(&format!("::worked {head}\nIt turns by {{turn}}.\n::end\n"));
    let held = worked("turn=20 | One turn").unwrap().html;
    assert!(
        held.contains("data-state=\"turn=20\"") && held.contains(">20°<"),
        "{held}"
    );
    assert!(held.contains("<h2>One turn</h2>"), "{held}");
    let follows = worked("One turn").unwrap().html;
    assert!(
        !follows.contains("data-state") && follows.contains(">0°<"),
        "{follows}"
    );
    assert!(
        fault(worked("turn=2000 | One turn"))
            .1
            .contains("out of range")
    );
}

/// The pages of this repository.
fn files() -> Vec<(String, String)> {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    site::files(&root, &Assets::unbuilt()).unwrap()
}

fn every(css: &str) -> scraper::Selector {
    scraper::Selector::parse(css).unwrap()
}

/// A joint in a link: the calculator must take it as it stands.
fn is_joint(target: &str) {
    let Decoded::Intact(reading) = decode(target) else {
        panic!("{target} is no joint");
    };
    assert_eq!(reading.notices, [], "{target}");
    let joint = Scenario::new(&reading.sheet.input());
    assert!(joint.is_ok(), "{target}: {joint:?}");
}

#[test]
fn the_real_pages_parse_without_a_fault_and_their_links_lead_somewhere() {
    let files = files();
    assert_eq!(
        files.len(),
        35,
        "the front page, ten lessons, fourteen others, ten figures alone and what leads to them"
    );
    let parsed: Vec<(&str, scraper::Html)> = files
        .iter()
        .map(|(path, html)| (path.as_str(), scraper::Html::parse_document(html)))
        .collect();
    let has = |path: &str, id: &str| {
        let page = parsed.iter().find(|(known, _)| *known == path);
        page.is_some_and(|(_, html)| {
            id.is_empty()
                || html
                    .select(&every("[id]"))
                    .any(|element| element.attr("id") == Some(id))
        })
    };
    let mut links = 0;
    for (path, html) in &parsed {
        assert!(html.errors.is_empty(), "{path}: {:?}", html.errors);
        assert_eq!(html.select(&every("h1")).count(), 1, "{path}");
        let folder = path.rsplit_once('/').map_or("", |(folder, _)| folder);
        for link in html.select(&every("a[href]")) {
            let href = link.attr("href").unwrap();
            let (page, target) = href.split_once('#').unwrap_or((href, ""));
            let there = match (page.strip_prefix("../"), folder) {
                (_, _) if page.is_empty() => (*path).to_owned(),
                (Some(up), "lessons" | "embed") => up.to_owned(),
                (None, "") => page.to_owned(),
                _ => panic!("{path}: {href} is not from the folder of the front page"),
            };
            match target {
                "present" => assert!(there.starts_with("lessons/"), "{path}: {href}"),
                joint if joint.contains('/') => {
                    assert_eq!(there, "joint.html", "{path}: {href}");
                    is_joint(joint);
                }
                id => assert!(has(&there, id), "{path}: {href} leads nowhere"),
            }
            links += 1;
        }
    }
    assert!(links > 300, "{links} links");
}

/// Where links of the first versions led, on their one page. They are given out and lead somewhere for ever.
#[test]
fn every_place_of_the_first_versions_is_on_a_page() {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let places = Places::of(&site::pages(&root).unwrap());
    let list = std::fs::read_to_string(root.join("tests/links/anchors.txt")).unwrap();
    let anchors: Vec<&str> = list.lines().filter(|line| !line.starts_with('#')).collect();
    assert!(anchors.len() > 200, "{}", anchors.len());
    for anchor in anchors {
        assert!(places.page_of(anchor).is_some(), "no page has #{anchor}");
    }
}

#[test]
fn a_link_to_no_place_is_named() {
    let page = Page {
        path: "care.html".into(),
        kind: "care",
        title: String::new(),
        description: String::new(),
        under: "care.html",
        program: None,
        script: None,
        main: "<p id=\"here\"><a href=\"#here\">a</a><a href=\"#nowhere\">b</a></p>".into(),
    };
    let places = Places::of(std::slice::from_ref(&page));
    let problems = places.resolve(&page).unwrap_err();
    assert_eq!(problems.len(), 1);
    assert!(problems[0].what.contains("#nowhere"), "{problems:?}");
}

#[test]
fn the_page_of_comparisons_has_every_cell() {
    let files = files();
    let method = &files
        .iter()
        .find(|(path, _)| path == "method.html")
        .unwrap()
        .1;
    assert!(method.contains("href=\"checks.html\""));
    let html = &files
        .iter()
        .find(|(path, _)| path == "checks.html")
        .unwrap()
        .1;
    let parsed = scraper::Html::parse_document(html);
    // Values beside values, and joints that were judged by hand.
    for (rows, columns) in [(".compared tbody tr", 5), (".judged tbody tr", 4)] {
        let row = every(rows);
        assert!(parsed.select(&row).count() > 100, "{rows}");
        for row in parsed.select(&row) {
            let cells: Vec<String> = row.child_elements().map(|c| c.text().collect()).collect();
            assert_eq!(cells.len(), columns, "{cells:?}");
            assert!(
                cells.iter().all(|cell| !cell.trim().is_empty()),
                "{cells:?}"
            );
        }
    }
}

#[test]
fn only_known_comparisons_are_shown() {
    let (line, what) = fault(read("::checks everything What it says.\n"));
    assert_eq!(line, 4);
    assert!(what.contains("not understood"), "{what}");
}
