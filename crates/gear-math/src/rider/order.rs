//! Sorting short lists. The library's sort is compiled anew for every type, at some kilobytes each in WebAssembly; the
//! lists here have a dozen entries.

/// Sorts `items` by a number, smallest first; equal ones keep their order.
pub(super) fn ascending<T>(items: &mut [T], key: impl Fn(&T) -> f64) {
    for end in 1..items.len() {
        let mut at = end;
        while at > 0 && key(&items[at - 1]) > key(&items[at]) {
            items.swap(at - 1, at);
            at -= 1;
        }
    }
}
