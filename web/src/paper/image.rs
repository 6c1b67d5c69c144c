//! The joint as one picture for a post or a note: drawing, verdict, sizes and link. Always in ink on white.

use drawing::words::key;
use leptos::prelude::*;
use leptos::wasm_bindgen::{JsCast, JsValue};
use leptos::web_sys::{CanvasRenderingContext2d, HtmlCanvasElement, HtmlImageElement};
use wasm_bindgen_futures::JsFuture;

use super::file::download;
use super::{Case, code};
use crate::el::{El, classed, el};
use crate::trailer::words::message;

const TOKENS: &str = include_str!("../../style/10-tokens.css");
const SHEET: &str = include_str!("../../style/20-sheet.css");

/// Width of the picture, and of its margins.
const WIDE: f64 = 800.0;
const MARGIN: f64 = 24.0;

/// Letters of a line, and the line's height.
const LETTERS: usize = 84;
const LINE: f64 = 24.0;

/// The part of the style sheet that drawings need: inks of the light page, and no size of its own.
fn style() -> String {
    let inks = TOKENS.split_inclusive('}').next().unwrap_or_default();
    let inks = inks.split_once(":root").map_or("", |(_, inks)| inks);
    let sheet: String = SHEET
        .lines()
        .filter(|line| !line.starts_with(".drawing {"))
        .collect();
    format!(":root{inks}{sheet}")
}

/// Text in lines that fit; a word longer than a line is cut.
fn lines(text: &str) -> Vec<String> {
    let mut all = vec![String::new()];
    for word in text.split_whitespace() {
        let mut rest: Vec<char> = word.chars().collect();
        while !rest.is_empty() {
            let now = all.last().map_or(0, |line| line.chars().count());
            let gap = usize::from(now > 0);
            if now > 0 && now + gap + rest.len() > LETTERS {
                all.push(String::new());
                continue;
            }
            let fits = rest.len().min(LETTERS - gap);
            let piece: String = rest.drain(..fits).collect();
            if let Some(line) = all.last_mut() {
                if gap > 0 {
                    line.push(' ');
                }
                line.push_str(&piece);
            }
        }
    }
    all
}

/// The picture as SVG text, with its height.
fn svg(case: &Case) -> Option<(String, f64)> {
    let judged = &case.after;
    let scene = crate::trailer::picture("picture", &judged.scenario, case.units, false)?;
    let (wide, high) = (scene.width, scene.height);
    let inner = WIDE - 2.0 * MARGIN;
    let drawn = inner * high / wide;
    let mut at = MARGIN;
    let mut text = String::new();
    let mut write = |words: &str, at: &mut f64| {
        for line in lines(words) {
            *at += LINE;
            text.push_str(&format!(
                "<text x=\"{MARGIN}\" y=\"{at}\" font-family=\"sans-serif\" font-size=\"17\" fill=\"#1c1e20\">{}</text>",
                drawing::svg::escaped(&line)
            ));
        }
    };
    let summary = crate::trailer::summary(&judged.scenario.input, &judged.report, case.units);
    write(&summary, &mut at);
    let top = at + MARGIN / 2.0;
    at = top + drawn + MARGIN / 2.0;
    let (squares, modules) = code::svg(&case.link)?;
    let size = 200.0;
    let squares = squares.replacen("<svg ", &format!("<svg x=\"{MARGIN}\" y=\"{at}\" width=\"{size}\" height=\"{size}\" data-modules=\"{modules}\" "), 1);
    at += size;
    write(message(key::PAPER_CAUTION), &mut at);
    write(&case.link, &mut at);
    let high = at + MARGIN;
    let drawing = scene.to_svg().replacen(
        "<svg ",
        &format!("<svg x=\"{MARGIN}\" y=\"{top}\" width=\"{inner}\" height=\"{drawn}\" "),
        1,
    );
    let style = style();
    Some((
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{WIDE}\" height=\"{high}\" viewBox=\"0 0 {WIDE} {high}\">\
             <style>{style}</style><rect width=\"{WIDE}\" height=\"{high}\" fill=\"#fff\"/>{drawing}{squares}{text}</svg>"
        ),
        high,
    ))
}

pub(super) fn page(case: &Case) -> Vec<El> {
    let Some((svg, high)) = svg(case) else {
        return vec![el("p").text(message(key::PAPER_NO_PICTURE))];
    };
    let source = format!("data:image/svg+xml,{}", js_sys::encode_uri_component(&svg));
    let button = |key| el("button").attr("type", "button").text(message(key));
    let drawn = source.clone();
    vec![
        el("h2").text(message(key::PAPER_PICTURE)),
        classed("p", "actions screen-only")
            .child(button(key::PAPER_PNG).on("click", move |_| {
                leptos::task::spawn_local(save_png(drawn.clone(), high));
            }))
            .child(button(key::PAPER_SVG).on("click", move |_| {
                download("joint.svg", "image/svg+xml", &svg)
            })),
        classed("img", "whole").attr("src", &source).attr(
            "alt",
            &crate::trailer::summary(&case.after.scenario.input, &case.after.report, case.units),
        ),
    ]
}

/// Twice as many points as the picture has units: sharp on a phone.
const SHARP: f64 = 2.0;

async fn save_png(source: String, high: f64) {
    if let Err(error) = png(source, high).await {
        leptos::logging::error!("{error:?}");
    }
}

async fn png(source: String, high: f64) -> Result<(), JsValue> {
    let image = HtmlImageElement::new()?;
    image.set_src(&source);
    JsFuture::from(image.decode()).await?;
    let canvas: HtmlCanvasElement = document().create_element("canvas")?.dyn_into()?;
    let [wide, tall] = [WIDE * SHARP, high * SHARP];
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a picture has some thousand points"
    )]
    let points = [wide, tall].map(|side| side.ceil() as u32);
    canvas.set_width(points[0]);
    canvas.set_height(points[1]);
    let context: CanvasRenderingContext2d =
        canvas.get_context("2d")?.ok_or(JsValue::NULL)?.dyn_into()?;
    context.draw_image_with_html_image_element_and_dw_and_dh(&image, 0.0, 0.0, wide, tall)?;
    download("joint.png", "image/png", &canvas.to_data_url()?);
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test(unsupported = test)]
    fn lines_are_no_longer_than_fits_and_nothing_is_lost() {
        let long = "x".repeat(200);
        for text in ["", "two words", &format!("a {long} b"), &"word ".repeat(60)] {
            let all = lines(text);
            assert!(all.iter().all(|line| line.chars().count() <= LETTERS));
            let whole = |text: &str| text.split_whitespace().collect::<String>();
            assert_eq!(whole(&all.concat()), whole(text));
        }
    }
}
