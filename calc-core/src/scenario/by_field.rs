//! A value for some of the fields.

use super::fields::Field;

/// Values of fields in list order. A plain sorted list: there are never more than a hundred, and the
/// standard library's trees would be 25 kB of the program.
#[derive(Clone, Debug, PartialEq)]
pub struct ByField<T>(Vec<(Field, T)>);

impl<T> Default for ByField<T> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

impl<T> ByField<T> {
    /// Where a field stands, or would stand.
    fn place(&self, field: Field) -> Result<usize, usize> {
        let before = self.0.iter().take_while(|(f, _)| *f < field).count();
        match self.0.get(before) {
            Some((found, _)) if *found == field => Ok(before),
            _ => Err(before),
        }
    }

    /// The value of a field.
    #[must_use]
    pub fn get(&self, field: Field) -> Option<&T> {
        self.0.iter().find(|(f, _)| *f == field).map(|(_, v)| v)
    }

    /// Gives a field a value in place of the one it had.
    pub fn insert(&mut self, field: Field, value: T) {
        match self.place(field) {
            Ok(place) => {
                if let Some((_, old)) = self.0.get_mut(place) {
                    *old = value;
                }
            }
            Err(place) => self.0.insert(place, (field, value)),
        }
    }

    /// Takes a field's value away.
    pub fn remove(&mut self, field: Field) {
        if let Ok(place) = self.place(field) {
            self.0.remove(place);
        }
    }

    /// Takes all values away.
    pub fn clear(&mut self) {
        self.0.clear();
    }

    /// Whether no field has a value.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// All fields that have a value.
    pub fn iter(&self) -> impl Iterator<Item = (Field, &T)> {
        self.0.iter().map(|(field, value)| (*field, value))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_order_of_filling_does_not_matter() {
        let (mut a, mut b) = (ByField::default(), ByField::default());
        for field in Field::ALL {
            a.insert(*field, field.name());
        }
        for field in Field::ALL.iter().rev() {
            b.insert(*field, "before");
            b.insert(*field, field.name());
        }
        assert_eq!(a, b);
        assert!(
            a.iter()
                .map(|(field, _)| field)
                .eq(Field::ALL.iter().copied())
        );
        for field in Field::ALL {
            assert_eq!(a.get(*field), Some(&field.name()));
            a.remove(*field);
            assert_eq!(a.get(*field), None);
        }
        assert!(a.is_empty() && !b.is_empty());
        b.clear();
        assert!(b.is_empty());
    }
}
