//! What is worth buying.

use crate::lap::words::found::set_up;
use crate::number::seconds_in;
use crate::parts::offer::Offer;
use crate::parts::words::named::{on_derailleur, rear};
use crate::words::listed;
use gear_math::parts::{PartsBox, Purchase, UsualPart};

/// Which parts to buy and what they go together with: “a 42 ring, for 42 with 11-34, 11 sprockets, on the 39/36 derailleur”.
pub(crate) fn said(purchase: &Purchase, parts: &PartsBox) -> String {
    let bought: Vec<String> = purchase.parts.iter().map(part).collect();
    let gears = set_up(&purchase.fit.drivetrain);
    let own = purchase.own_derailleur.map(|place| on_derailleur(&gears, &parts.derailleurs[place]));
    format!("{}, for {}", listed(&bought), own.unwrap_or(gears))
}

fn part(part: &UsualPart) -> String {
    match part {
        UsualPart::Chainset { ring: Some(ring), .. } => format!("a ring of {ring}\u{a0}teeth"),
        UsualPart::Chainset { chainset, .. } => format!("a crank with {chainset}"),
        UsualPart::Cassette(cassette) => {
            let name = cassette.everyday_name().unwrap_or_else(|| cassette.to_string());
            format!("a cassette {name}")
        }
        UsualPart::Derailleur(derailleur) => {
            format!("a rear derailleur that takes at least {}", rear(derailleur))
        }
    }
}

/// Which part is worth buying, or which of so many together, and the next two.
pub(crate) fn worth(offers: &[Offer], budget: usize) -> String {
    let what = match budget {
        0 | 1 => "The one part worth buying".to_owned(),
        _ => format!("Worth buying, up to {budget} parts together"),
    };
    let worth: Vec<&Offer> = offers.iter().filter(|it| it.is_worth_it()).collect();
    match worth.as_slice() {
        [] if offers.is_empty() => "No usual part that could be bought is quicker.".to_owned(),
        [] => {
            format!("None is worth more than the doubt; the most would come of {}.", with_gain(&offers[0]))
        }
        [one] => format!("{what}: {}.", with_gain(one)),
        [one, next @ ..] => {
            let next: Vec<String> = next.iter().map(|it| with_gain(it)).collect();
            format!("{what}: {}. Next best: {}.", with_gain(one), next.join("; or "))
        }
    }
}

fn with_gain(offer: &Offer) -> String {
    let Some(gained) = offer.gained else { return offer.said.clone() };
    let [low, best, high] =
        [gained.low_s, gained.time_s, gained.high_s].map(|s| seconds_in(s, gained.precision()));
    format!("{}, which gains {best}\u{a0}s (likely {low} to {high})", offer.said)
}

#[cfg(test)]
mod tests {
    use super::*;
    use gear_math::course::TimeBand;

    fn offer(said: &str, low_s: f64) -> Offer {
        let gained = TimeBand { low_s, time_s: 2.0, high_s: 3.0 };
        Offer { said: said.to_owned(), time_s: 600.0, gained: Some(gained), lowest_m: 2.0 }
    }

    #[test]
    fn only_what_gains_more_than_the_doubt_is_worth_buying() {
        let said = worth(&[offer("a ring", 1.0), offer("a cassette", 0.9)], 1);
        assert!(
            said.starts_with("The one part worth buying: a ring, which gains 2")
                && said.contains("Next best: a cassette"),
            "{said}"
        );
        let said = worth(&[offer("a ring and a cassette", 1.0)], 2);
        assert!(
            said.starts_with("Worth buying, up to 2 parts together: a ring and a cassette, which"),
            "{said}"
        );
        let said = worth(&[offer("a ring", -1.0)], 1);
        assert!(
            said.starts_with("None is worth more than the doubt; the most would come of a ring"),
            "{said}"
        );
        assert_eq!(worth(&[], 3), "No usual part that could be bought is quicker.");
    }

    #[test]
    fn an_offer_goes_from_worker_to_page() {
        let there = offer("a ring", 1.0);
        assert_eq!(Offer::from_parts(there.said.clone(), &there.numbers()), Some(there));
        assert_eq!(Offer::from_parts(String::new(), &[1.0]), None);
    }
}
