//! “Which tyre, how hard?”: width and pressures of each bike by its own tyre, rim and mass.

use crate::facts::Facts;
use crate::has;
use crate::page::{Page, text};
use gear_math::wheel::WheelPressure;

pub(crate) fn check(facts: &Facts, page: &Page) {
    let html = page.html("tyre-answer");
    let of_each: Vec<String> = html.split("<h3>").map(text).collect();
    let told = match of_each.as_slice() {
        [_, a, b] => [a, b],
        [both] => [both, both],
        _ => panic!("{of_each:?}"),
    };
    for (case, told) in facts.pressures.iter().zip(told) {
        if told.contains("cannot go on this rim") || told.contains("No pressure is given") {
            continue;
        }
        has(told, &format!("{:.1} mm", case.width.mm()));
        let Ok(start) = case.advice().start else {
            assert!(!told.contains("psi) in front"), "{told}");
            continue;
        };
        for wheel in [&start.front, &start.rear] {
            has(told, &bar(wheel));
        }
    }
}

fn bar(wheel: &WheelPressure) -> String {
    format!(" {:.2} bar (", wheel.reading(wheel.start).bar)
}
