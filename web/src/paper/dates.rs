//! Dates of the looks that follow a repair.

/// A day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Day {
    year: i32,
    month: u32,
    day: u32,
}

const fn days_in(year: i32, month: u32) -> u32 {
    match month {
        4 | 6 | 9 | 11 => 30,
        2 if year % 4 == 0 && (year % 100 != 0 || year % 400 == 0) => 29,
        2 => 28,
        _ => 31,
    }
}

impl Day {
    /// Reads `2026-03-31`, as a date field writes it.
    pub(super) fn read(text: &str) -> Option<Self> {
        let mut parts = text.split('-');
        let (year, month, day) = (parts.next()?, parts.next()?, parts.next()?);
        let (year, month, day) = (year.parse().ok()?, month.parse().ok()?, day.parse().ok()?);
        let sound = parts.next().is_none()
            && (1..=12).contains(&month)
            && (1..=days_in(year, month)).contains(&day)
            && (1900..=9999).contains(&year);
        sound.then_some(Self { year, month, day })
    }

    /// The same day some months later; the last of a month that is too short for it.
    pub(super) fn months_later(self, months: u32) -> Self {
        let months = self.month - 1 + months;
        let year = self.year + i32::try_from(months / 12).unwrap_or(0);
        let month = months % 12 + 1;
        Self {
            year,
            month,
            day: self.day.min(days_in(year, month)),
        }
    }

    pub(super) fn written(self) -> String {
        format!("{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test(unsupported = test)]
    fn months_end_where_they_end() {
        let later = |text: &str, months| Day::read(text).unwrap().months_later(months).written();
        assert_eq!(later("2026-11-30", 1), "2026-12-30");
        assert_eq!(later("2026-11-30", 3), "2027-02-28");
        assert_eq!(later("2027-11-30", 3), "2028-02-29");
        assert_eq!(later("2026-01-31", 12), "2027-01-31");
        assert_eq!(Day::read("2026-02-29"), None);
        assert_eq!(Day::read("30.11.2026"), None);
    }
}
