//! Whether every part has room where it lies.

use crate::cite::{Cite, Flag, Source};
use crate::evaluate::analysis::Analysis;
use crate::layout::{self, Fit, SOCKET};
use crate::quantity::{Length, Ratio};
use crate::report::working::{Line, Working};
use crate::report::{Check, CheckId, Sentence, Verdict, say, substituted};

impl Analysis<'_> {
    /// A check for each kind of part that there is, on the tightest of its places.
    pub(super) fn places(&self) -> impl Iterator<Item = Check> {
        let s = self.s;
        [
            layout::holes(s).map(|fit| self.place(CheckId::HolePlace, &fit, say::HoleInFlat)),
            layout::washers(s)
                .map(|fit| self.place(CheckId::WasherPlace, &fit, say::WasherLiesFlat)),
            layout::sleeves(s)
                .map(|fit| self.place(CheckId::SleevePlace, &fit, say::SleeveHasRoom)),
            layout::plates(s).map(|fit| self.plate_place(&fit)),
            layout::wrench(s).map(|fit| self.place(CheckId::WrenchRoom, &fit, say::SocketGoesOn)),
        ]
        .into_iter()
        .flatten()
    }

    /// A plate that may lie on a fillet is not known to lie flat.
    fn plate_place(&self, fit: &Fit) -> Check {
        match layout::plate_on_fillet(self.s).filter(|_| fit.fits()) {
            None => self.place(CheckId::PlatePlace, fit, say::PlateLiesOn),
            Some(on) => Check::of(
                CheckId::PlatePlace,
                on.needed,
                on.there.max(Length::default()),
            )
            .stands(Verdict::NotChecked)
            .without_share()
            .says_of_both(on.clash)
            .working(self.explained(|w| self.place_lines(w, CheckId::PlatePlace, &on))),
        }
    }

    /// A part has its room or not: nothing between, and where it has, strength comes before it.
    fn place(&self, id: CheckId, fit: &Fit, enough: Sentence<2>) -> Check {
        let (needed, there) = (fit.needed, fit.there.max(Length::default()));
        let judged = Check::of(id, needed, there);
        let (judged, code) = if fit.fits() {
            let judged = judged.stands(Verdict::Holds).without_share();
            (judged, enough)
        } else {
            (judged.stands(Verdict::DoesNotHold), fit.clash)
        };
        judged
            .says_of_both(code)
            .working(self.explained(|w| self.place_lines(w, id, fit)))
    }

    fn place_lines(&self, w: &mut Working, id: CheckId, fit: &Fit) {
        let s = self.s;
        let b = &s.bolting;
        let geometry = Cite::new(Source::Elementary, "geometry", Flag::Computed);
        if id == CheckId::WrenchRoom {
            let flats = layout::across_flats(s);
            w.line(
                &Line {
                    symbol: "r_s",
                    what: "radius of a socket",
                    formula: "k·s/2",
                },
                substituted![("s", flats), ("k", Ratio(SOCKET))],
                flats * (0.5 * SOCKET),
                Cite::new(Source::OwnAssumption, "wall of a socket", Flag::Assumption),
            );
        }
        w.line(
            &Line {
                symbol: "a",
                what: "room that the part takes",
                formula: "radius, or radius and radius",
            },
            substituted![("d_w", b.washer.outer), ("d_0", b.hole)],
            fit.needed,
            geometry,
        );
        let there = Line {
            symbol: "a_0",
            what: "room that there is",
            formula: "to the next bolt, to where the flat ends, or to the end",
        };
        let (width, end) = (s.tube.width, s.tube.end_distance);
        match self.closest_spacing() {
            Some(next) => w.line(
                &there,
                substituted![("b", width), ("e", end), ("p", next)],
                fit.there,
                geometry,
            ),
            // Beside no other bolt there is no distance.
            None => w.line(
                &there,
                substituted![("b", width), ("e", end)],
                fit.there,
                geometry,
            ),
        }
    }
}
