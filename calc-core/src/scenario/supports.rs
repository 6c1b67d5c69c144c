//! What each kind of support is made of: the questions that inputs, layout, checks and sheets ask of it. A new kind
//! answers them here, once; its mechanics stand in `support`.

use super::choices::{MemberKind, SupportKind};

impl SupportKind {
    /// No hollow between head and nut.
    #[must_use]
    pub const fn is_solid(self) -> bool {
        matches!(self, Self::Solid)
    }

    /// Plates lie on the faces.
    #[must_use]
    pub const fn has_plates(self) -> bool {
        matches!(self, Self::Spreader)
    }

    /// A sleeve round the bolt, whichever way it ends.
    #[must_use]
    pub const fn has_sleeve(self) -> bool {
        self.ends_inside() || self.passes_walls()
    }

    /// A sleeve between the walls: they bear on its ends.
    #[must_use]
    pub const fn ends_inside(self) -> bool {
        matches!(self, Self::LooseSleeve)
    }

    /// A sleeve through holes in both walls, its ends flush outside.
    #[must_use]
    pub const fn passes_walls(self) -> bool {
        matches!(self, Self::ThroughSleeve)
    }

    /// A block or plug between the walls.
    #[must_use]
    pub const fn has_block(self) -> bool {
        matches!(self, Self::SolidInsert)
    }

    /// Something stands between the walls and may be cut short of them.
    #[must_use]
    pub const fn may_be_short(self) -> bool {
        self.ends_inside() || self.has_block()
    }

    /// Whether a member has room for it: an open section has no hollow, a bar is solid whatever is chosen.
    #[must_use]
    pub const fn fits_in(self, member: MemberKind) -> bool {
        match member {
            MemberKind::Channel | MemberKind::Angle => {
                !self.may_be_short() && !self.passes_walls() && !self.is_solid()
            }
            MemberKind::SolidBar => self.is_solid(),
            MemberKind::RectangularTube | MemberKind::RoundTube => true,
        }
    }

    /// Whether anything is known of it in a round tube: plates and sleeves between the walls lean on a curved wall,
    /// for which there is no formula.
    #[must_use]
    pub const fn is_known_in_round(self) -> bool {
        !self.has_plates() && !self.ends_inside() && !self.is_solid()
    }
}
