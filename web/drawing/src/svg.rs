//! A scene as SVG text, for the pictures that stand in the page before any script runs.

use crate::pen::coordinate as c;
use crate::scene::{Anchor, Hatch, Mark, Scene};
use std::fmt::Write as _;

/// Text with the five characters that XML reserves written out.
#[must_use]
pub fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            // XML 1.0 has no way to write these.
            l if l.is_control() && !matches!(l, '\n' | '\t') => {}
            l => out.push(l),
        }
    }
    out
}

impl Scene {
    /// The figure as an SVG element for use inside an HTML page that has the style sheet.
    #[must_use]
    pub fn to_svg(&self) -> String {
        let mut out = String::new();
        let (id, title) = (escaped(&self.id), escaped(&self.title));
        // Writing to a string cannot fail; hence the ignored results here and below.
        let _ = write!(
            out,
            "<svg class=\"drawing\" viewBox=\"{}\" role=\"img\" aria-labelledby=\"{id}-title {id}-desc\">\
             <title id=\"{id}-title\">{title}</title><desc id=\"{id}-desc\">{}</desc>",
            self.view_box(),
            escaped(&self.description),
        );
        let hatches = self.hatches();
        if !hatches.is_empty() {
            out.push_str("<defs>");
            for hatch in hatches {
                let tile = c(hatch.tile());
                let _ = write!(
                    out,
                    "<pattern id=\"{}\" width=\"{tile}\" height=\"{tile}\" patternUnits=\"userSpaceOnUse\" \
                     patternTransform=\"rotate({})\"><rect class=\"part\" width=\"{tile}\" height=\"{tile}\"/>\
                     <path class=\"hatching\" d=\"{}\"/></pattern>",
                    escaped(&self.hatch_id(hatch)),
                    c(hatch.turn()),
                    hatch.lines(),
                );
            }
            out.push_str("</defs>");
        }
        self.write(&self.marks, &mut out);
        out.push_str("</svg>");
        out
    }

    fn fill(&self, hatch: Option<Hatch>) -> String {
        hatch.map_or_else(String::new, |h| {
            format!(" fill=\"url(#{})\"", escaped(&self.hatch_id(h)))
        })
    }

    fn write(&self, marks: &[Mark], out: &mut String) {
        for mark in marks {
            let _ = match mark {
                Mark::Path { d, class, hatch } => {
                    write!(
                        out,
                        "<path class=\"{class}\"{} d=\"{d}\"/>",
                        self.fill(*hatch)
                    )
                }
                Mark::Line { from, to, class } => write!(
                    out,
                    "<line class=\"{class}\" x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\"/>",
                    c(from.0),
                    c(from.1),
                    c(to.0),
                    c(to.1)
                ),
                Mark::Rect {
                    x,
                    y,
                    width,
                    height,
                    class,
                    hatch,
                } => write!(
                    out,
                    "<rect class=\"{class}\"{} x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"/>",
                    self.fill(*hatch),
                    c(*x),
                    c(*y),
                    c(*width),
                    c(*height)
                ),
                Mark::Circle { centre, r, class } => write!(
                    out,
                    "<circle class=\"{class}\" cx=\"{}\" cy=\"{}\" r=\"{}\"/>",
                    c(centre.0),
                    c(centre.1),
                    c(*r)
                ),
                Mark::Text {
                    at,
                    text,
                    class,
                    anchor,
                    turn,
                } => {
                    let anchor = match anchor {
                        Anchor::Start => "",
                        Anchor::Middle => " text-anchor=\"middle\"",
                        Anchor::End => " text-anchor=\"end\"",
                    };
                    let (x, y) = (c(at.0), c(at.1));
                    let turn = if *turn == 0.0 {
                        String::new()
                    } else {
                        format!(" transform=\"rotate({} {x} {y})\"", c(*turn))
                    };
                    write!(
                        out,
                        "<text class=\"{class}\"{anchor}{turn} x=\"{x}\" y=\"{y}\">{}</text>",
                        escaped(text)
                    )
                }
                Mark::Group {
                    placed,
                    class,
                    marks,
                } => {
                    let _ = match placed.attribute() {
                        moved if moved.is_empty() => write!(out, "<g class=\"{class}\">"),
                        moved => write!(out, "<g class=\"{class}\" transform=\"{moved}\">"),
                    };
                    self.write(marks, out);
                    write!(out, "</g>")
                }
            };
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::{CutMetal, Lean, Placed};

    fn scene(marks: Vec<Mark>) -> Scene {
        Scene {
            id: "f1".into(),
            width: 100.0,
            height: 50.0,
            title: "a < b & \"c\"".into(),
            description: "it's so".into(),
            marks,
        }
    }

    #[test]
    fn reserved_characters_never_reach_the_markup() {
        let svg = scene(vec![Mark::text(
            (1.0, 2.0),
            "<script>\u{1}",
            "t",
            Anchor::Start,
        )])
        .to_svg();
        assert!(svg.contains("a &lt; b &amp; &quot;c&quot;"));
        assert!(svg.contains("it&#39;s so"));
        assert!(svg.contains(">&lt;script&gt;</text>"));
    }

    #[test]
    fn a_hatching_in_a_group_is_declared_once_under_the_figure_s_prefix() {
        let hatch = Hatch::new(CutMetal::Steel, Lean::Left);
        let part = Mark::rect((0.0, 0.0), (5.0, 5.0), "edge", Some(hatch));
        let svg = scene(vec![
            part.clone(),
            Mark::group(Placed::at(1.0, 1.0), "", vec![part]),
        ])
        .to_svg();
        assert_eq!(svg.matches("<pattern id=\"f1-steel-l\"").count(), 1);
        assert_eq!(svg.matches("fill=\"url(#f1-steel-l)\"").count(), 2);
        assert!(!svg.contains("style="));
    }

    #[test]
    fn a_turned_and_shifted_point_lands_where_svg_puts_it() {
        let (x, y) = Placed {
            x: 10.0,
            y: 20.0,
            degrees: 90.0,
        }
        .apply((3.0, 0.0));
        assert!((x - 10.0).abs() < 1e-12 && (y - 23.0).abs() < 1e-12);
    }
}
