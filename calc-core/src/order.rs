//! Sorting through one routine.
//!
//! The standard library's sort is compiled anew for every type and comparison, some 6 kB of WebAssembly
//! each. The lists that are sorted here are short or sorted once, so their places are sorted instead,
//! by one copy of it.

use std::cmp::Ordering;

/// The items in order; equal ones stay as they were.
pub(crate) fn sorted<T>(items: Vec<T>, order: &dyn Fn(&T, &T) -> Ordering) -> Vec<T> {
    let mut places: Vec<usize> = (0..items.len()).collect();
    sort_places(&mut places, &|a, b| match (items.get(a), items.get(b)) {
        (Some(a), Some(b)) => order(a, b),
        _ => Ordering::Equal,
    });
    let mut items: Vec<Option<T>> = items.into_iter().map(Some).collect();
    places
        .into_iter()
        .filter_map(|place| items.get_mut(place)?.take())
        .collect()
}

#[inline(never)]
fn sort_places(places: &mut [usize], order: &dyn Fn(usize, usize) -> Ordering) {
    places.sort_by(|a, b| order(*a, *b));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sorts_as_the_standard_library_does_and_keeps_equals_in_place() {
        let items: Vec<(u32, u32)> = (0..200).map(|i| (i * 7919 % 23, i)).collect();
        let mut expected = items.clone();
        expected.sort_by_key(|item| item.0);
        assert_eq!(sorted(items, &|a, b| a.0.cmp(&b.0)), expected);
        assert!(sorted(Vec::<u32>::new(), &|a, b| a.cmp(b)).is_empty());
    }
}
