//! The ways from the front page to the others, each with a drawing of what is behind it.

use crate::register::escape;

/// A door: its drawing and its words. What follows in the text says what is behind it.
#[must_use]
pub(crate) fn door(page: &str, words: &str) -> String {
    format!(
        "<a class=\"door\" href=\"{}\">{}<b>{}</b></a>\n",
        escape(page),
        drawing_of(page),
        escape(words)
    )
}

/// In the lines of the working drawings; what it shows is said beside it.
fn drawing_of(page: &str) -> String {
    let lines = match page {
        // A hollow tube in section with a bolt through it, measured.
        "joint.html" => {
            "<path class=\"edge part\" fill-rule=\"evenodd\" d=\"M34 30h52v44H34z M40 36v32h40V36z\"/>\
             <path class=\"edge tool\" d=\"M50 22h20v8H50z M52 74h16v8H52z\"/>\
             <path class=\"thin\" d=\"M56 30v44 M64 30v44 M34 24V10 M86 24V10 M34 14h52 M38 12l-4 2 4 2 M82 12l4 2-4 2\"/>\
             <path class=\"centre\" d=\"M60 6v82\"/>"
        }
        // Torque against turn: the curve that never gets there and the one that does.
        "lessons/index.html" => {
            "<path class=\"axis\" d=\"M26 10v68h78\"/><path class=\"wanted\" d=\"M26 24h74\"/>\
             <path class=\"curve\" d=\"M26 78C40 60 44 56 58 54S88 52 98 50\"/>\
             <path class=\"curve beside\" d=\"M26 78L46 24\"/><circle class=\"here\" cx=\"58\" cy=\"54\" r=\"5\"/>"
        }
        // A drawing on the wall, and who looks at it.
        _ => {
            "<path class=\"edge part\" d=\"M30 10h60v42H30z\"/><path class=\"thin\" d=\"M40 24h40v14H40z M56 18v26 M64 18v26\"/>\
             <path class=\"turned\" d=\"M24 86c0-14 18-14 18 0 M51 86c0-14 18-14 18 0 M78 86c0-14 18-14 18 0\"/>\
             <circle class=\"turned\" cx=\"33\" cy=\"66\" r=\"5.5\"/><circle class=\"turned\" cx=\"60\" cy=\"66\" r=\"5.5\"/><circle class=\"turned\" cx=\"87\" cy=\"66\" r=\"5.5\"/>"
        }
    };
    format!("<svg class=\"drawing\" viewBox=\"0 0 120 92\" aria-hidden=\"true\">{lines}</svg>")
}
