//! Fills the `<!-- pack:name -->` places of the page template.

use anyhow::{Context, Result, bail, ensure};

const OPEN: &str = "<!-- pack:";
const CLOSE: &str = " -->";

/// Puts each value in the place of its name, literally. Every name must have exactly one place and every place a value.
pub(crate) fn fill(template: &str, values: &[(&str, &str)]) -> Result<String> {
    let mut filled = String::new();
    let mut unused: Vec<&str> = values.iter().map(|(name, _)| *name).collect();
    let mut rest = template;
    while let Some((before, after)) = rest.split_once(OPEN) {
        let (name, after) = after.split_once(CLOSE).context("the template has a place that is not closed")?;
        let Some((_, value)) = values.iter().find(|(known, _)| *known == name) else {
            bail!("the template has a place for {name}, which the build does not know");
        };
        ensure!(unused.contains(&name), "the template has two places for {name}");
        unused.retain(|left| *left != name);
        filled.extend([before, value]);
        rest = after;
    }
    ensure!(unused.is_empty(), "the template has no place for {}", unused.join(", "));
    filled.push_str(rest);
    Ok(filled)
}

#[cfg(test)]
mod tests {
    use super::fill;

    #[test]
    fn values_go_in_literally() {
        let template = "a<!-- pack:one -->b<!-- pack:two -->c";
        let values = [("two", "$1 $&"), ("one", "<!-- pack:two -->")];
        assert_eq!(fill(template, &values).unwrap(), "a<!-- pack:two -->b$1 $&c");
    }

    #[test]
    fn each_place_is_filled_exactly_once() {
        for template in ["", "<!-- pack:one --><!-- pack:one -->", "<!-- pack:one --><!-- pack:other -->"] {
            assert!(fill(template, &[("one", "1")]).is_err(), "{template}");
        }
    }
}
