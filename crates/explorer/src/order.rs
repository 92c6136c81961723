//! Sorting short lists. The library's sort is compiled anew for every type, at some kilobytes each; a page's lists are short.

/// Sorts `items` by a number, smallest first; equal ones keep their order. For lists of up to a few hundred.
pub(crate) fn ascending<T>(items: &mut [T], key: impl Fn(&T) -> f64) {
    for end in 1..items.len() {
        let mut at = end;
        while at > 0 && key(&items[at - 1]) > key(&items[at]) {
            items.swap(at - 1, at);
            at -= 1;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn equal_keys_keep_their_order() {
        let mut items = [(2.0, 'a'), (1.0, 'b'), (2.0, 'c'), (0.5, 'd'), (1.0, 'e')];
        ascending(&mut items, |item| item.0);
        assert_eq!(items.map(|item| item.1), ['d', 'b', 'e', 'a', 'c']);
    }
}
