//! Sorting by a number. The library's sort is compiled anew for every type, at some kilobytes each, which a page has to
//! load; these two are small.

/// Sorts `items` by a number, smallest first; equal ones keep their order. For lists of up to a few hundred.
///
/// # Example
/// ```
/// use gear_math::order::ascending;
/// let mut teeth = [28.0, 11.0, 17.0];
/// ascending(&mut teeth, |&teeth| teeth);
/// assert_eq!(teeth, [11.0, 17.0, 28.0]);
/// ```
pub fn ascending<T>(items: &mut [T], key: impl Fn(&T) -> f64) {
    for end in 1..items.len() {
        let mut at = end;
        while at > 0 && key(&items[at - 1]) > key(&items[at]) {
            items.swap(at - 1, at);
            at -= 1;
        }
    }
}

/// Places of `keys` from the smallest key to the largest; equal ones keep their order. For lists of any length.
pub(crate) fn places(keys: &[f64]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..keys.len()).collect();
    let mut width = 1;
    while width < order.len() {
        order = order.chunks(2 * width).flat_map(|run| merged(run, width, keys)).collect();
        width *= 2;
    }
    order
}

/// Both halves of a run, each in order, as one.
fn merged(run: &[usize], width: usize, keys: &[f64]) -> Vec<usize> {
    let (mut left, mut right) = run.split_at(width.min(run.len()));
    let mut merged = Vec::with_capacity(run.len());
    while let (Some((&a, rest_left)), Some((&b, rest_right))) = (left.split_first(), right.split_first()) {
        if keys[b] < keys[a] {
            merged.push(b);
            right = rest_right;
        } else {
            merged.push(a);
            left = rest_left;
        }
    }
    merged.extend(left);
    merged.extend(right);
    merged
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

    #[test]
    fn both_sort_as_the_library_does() {
        for count in [0, 1, 2, 3, 7, 64, 1000] {
            let keys: Vec<f64> = (0..count).map(|i| f64::from((i * 7919) % 101)).collect();
            let mut sorted: Vec<(usize, f64)> = keys.iter().copied().enumerate().collect();
            let mut short = sorted.clone();
            sorted.sort_by(|a, b| a.1.total_cmp(&b.1));
            ascending(&mut short, |item| item.1);
            assert_eq!(short, sorted);
            assert_eq!(places(&keys), sorted.iter().map(|item| item.0).collect::<Vec<_>>());
        }
    }
}
