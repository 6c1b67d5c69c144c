//! A link as a square code that a phone's camera reads, for paper.

use qrcodegen::{QrCode, QrCodeEcc};

use crate::el::{El, classed};

/// White modules round the code: ISO/IEC 18004 asks for four.
const QUIET: i32 = 4;

/// The code as an SVG picture, with its size in modules; `None` where a text is too long for one.
pub(super) fn svg(text: &str) -> Option<(String, i32)> {
    let code = QrCode::encode_text(text, QrCodeEcc::Medium).ok()?;
    let size = code.size() + 2 * QUIET;
    let mut dark = String::new();
    for y in 0..code.size() {
        for x in (0..code.size()).filter(|x| code.get_module(*x, y)) {
            dark.push_str(&format!("M{},{}h1v1h-1z", x + QUIET, y + QUIET));
        }
    }
    let svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {size} {size}\" shape-rendering=\"crispEdges\">\
         <rect width=\"{size}\" height=\"{size}\" fill=\"#fff\"/><path fill=\"#000\" d=\"{dark}\"/></svg>"
    );
    Some((svg, size))
}

/// The code as an image of the page.
pub(super) fn image(text: &str, named: &str) -> Option<El> {
    let (svg, _) = svg(text)?;
    let source = format!("data:image/svg+xml,{}", js_sys::encode_uri_component(&svg));
    Some(
        classed("img", "code")
            .attr("src", &source)
            .attr("alt", named)
            .attr("width", "160")
            .attr("height", "160"),
    )
}
