//! What of the page need not wait for the engine, written into it when it is built: every form, and the first screen as the
//! demo has it.

use crate::page::desk::{Desk, Update};
use crate::page::form;
use crate::page::scenario::Scenario;
use crate::side::Side;
use gear_math::course::Draws;
use maud::{Markup, html};
use std::collections::BTreeMap;

/// What the demo comes to, once its lap is ridden.
pub struct DemoTold {
    /// Element ids with their content.
    html: BTreeMap<String, String>,
    /// Fields that mean something while they are empty, with what.
    empty: Vec<(&'static str, String)>,
}

impl DemoTold {
    /// Opens it and rides its lap with all draws, which takes some seconds.
    #[must_use]
    pub fn ridden() -> Self {
        let mut desk = Desk::default();
        let Update { html, empty, .. } = desk.open("");
        let later = ride(&mut desk).into_iter().flatten().flatten();
        Self { html: html.into_iter().chain(later.flat_map(|update| update.html)).collect(), empty }
    }
}

/// Rides the lap as workers do; none where it is ridden at an even power.
fn ride(desk: &mut Desk) -> Option<[Option<Update>; 2]> {
    let errand = Scenario::of_link("").errand(&desk.lap_order()?)?;
    let [a, b] = Side::BOTH.map(|side| errand.plan(side));
    let draws: Vec<f64> = (0..Draws::COUNT).flat_map(|number| errand.draw(number)).collect();
    Some([desk.take_plans([&a, &b]), desk.take_draws(&draws)])
}

/// Parts of the page with their forms, filled with what the demo comes to.
#[must_use]
pub fn with_demo<const N: usize>(parts: [Markup; N], told: &DemoTold) -> [String; N] {
    parts.map(|part| {
        let mut page = with_forms(part);
        for (id, html) in &told.html {
            put(&mut page, &format!(" id=\"{id}\""), html);
        }
        for (key, meaning) in &told.empty {
            let holder = html! { i placeholder=(meaning) {} }.into_string();
            let attribute = holder.trim_start_matches("<i").trim_end_matches("></i>");
            let field = format!("input id=\"{key}\"");
            page = page.replacen(&field, &format!("{field}{attribute}"), 1);
        }
        page
    })
}

/// A part of the page with its forms.
#[must_use]
pub fn with_forms(part: Markup) -> String {
    const NAMED: &str = "data-form=\"";
    let mut page = part.into_string();
    let names: Vec<String> =
        page.split(NAMED).skip(1).filter_map(|rest| rest.split('"').next()).map(str::to_owned).collect();
    for name in names {
        let form = form::by_name(&name).map_or_else(String::new, maud::PreEscaped::into_string);
        put(&mut page, &format!("{NAMED}{name}\""), &form);
    }
    page
}

/// Puts `content` into the empty element that has this attribute, if the page has one.
fn put(page: &mut String, attribute: &str, content: &str) {
    let Some(at) = page.find(attribute) else { return };
    let Some(inside) = page[at..].find('>').map(|end| at + end + 1) else { return };
    if page[inside..].starts_with("</") {
        page.insert_str(inside, content);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::page::skeleton;

    #[test]
    fn the_first_screen_says_what_the_engine_will_say() {
        let demo = DemoTold::ridden();
        let [head, bench] = with_demo([skeleton::masthead(), skeleton::bench()], &demo);
        let mut told = 0;
        for (id, html) in demo.html.iter().filter(|(id, html)| id.starts_with("decide-") && !html.is_empty())
        {
            assert_eq!(bench.matches(&format!(" id=\"{id}\">{html}</")).count(), 1, "{id}");
            told += 1;
        }
        assert!(told > 5, "{told}");
        assert!(demo.html["board-says"].contains("a lap (likely"), "{}", demo.html["board-says"]);
        assert!(bench.contains("value=\"50/34\"") && bench.contains("placeholder=\"as A"), "{bench}");
        assert!(head.contains("id=\"at-rings\" class=\"marks\"><span"), "{head}");
    }

    #[test]
    fn only_what_is_empty_is_filled() {
        let mut page = "<p id=\"a\" class=\"b\"></p><p id=\"c\">d</p>".to_owned();
        for (id, text) in [("a", "1"), ("c", "2"), ("e", "3")] {
            put(&mut page, &format!(" id=\"{id}\""), text);
        }
        assert_eq!(page, "<p id=\"a\" class=\"b\">1</p><p id=\"c\">d</p>");
    }
}
