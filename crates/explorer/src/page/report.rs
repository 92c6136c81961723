//! What the scenario comes to: plain data, worked out by gear-math, room by room.

use crate::bench::owners::Owners;
use crate::chain::report::ChainsReport;
use crate::chain::section::ChainSection;
use crate::lap::inputs::LapInputs;
use crate::lap::room::LapRoom;
use crate::lap::section::LapSection;
use crate::page::scenario::Scenario;
use crate::parts::asked;
use crate::parts::found::BoxFound;
use crate::parts::inputs::BoxText;
use crate::parts::section::BoxSection;
use crate::position::report::PositionReport;
use crate::position::section::PositionSection;
use crate::rack::compared::Compared;
use crate::rack::section::BikesSection;
use crate::ride::report::RideReport;
use crate::ride::section::RideSection;
use crate::rings::report::RingsReport;
use crate::rings::section::RingsSection;
use crate::side::Side;
use crate::tyre::report::TyreReport;
use crate::tyre::section::TyreSection;
use crate::units::Units;
use gear_math::parts::PartsBox;
use std::rc::Rc;

/// Everything the page says, before it is put in words.
#[derive(Debug, Clone)]
pub struct Report {
    /// Gears.
    pub rings: Rc<RingsReport>,
    /// Derailleur and chains.
    pub chain: Rc<ChainsReport>,
    /// The road position on the cross bike.
    pub position: Rc<PositionReport>,
    /// Tyre, rim and pressure.
    pub tyre: Rc<TyreReport>,
    /// The same of B where anything of it is not as on A.
    pub tyre_of_b: Option<Rc<TyreReport>>,
    /// Riding against going on foot.
    pub ride: Rc<RideReport>,
    /// How the lap is to be ridden.
    pub lap_inputs: Rc<LapInputs>,
    /// The lap itself, which is worked out apart from the rest because it takes longer.
    pub lap: LapRoom,
    /// What lies in the box, the parts of A and B among it.
    pub parts: Rc<PartsBox>,
    /// Whether nothing else lies in it.
    pub is_box_of_bench: bool,
    /// What its text came to.
    pub box_text: BoxText,
    /// For how many sprockets the shifter is made, where that is to be kept.
    pub box_sprockets: Option<usize>,
    /// What was found of the box, once that was asked.
    pub box_found: Option<Rc<BoxFound>>,
    /// All bikes side by side, which is worked out apart from the rest too.
    pub bikes: Option<Rc<Compared>>,
    /// What everything is told in.
    pub units: Units,
    /// The set-ups that the workshop sheet is for.
    pub sheet_for: Option<Side>,
    /// Whose value every field holds.
    pub owners: Rc<Owners>,
}

impl Default for Report {
    fn default() -> Self {
        Self::of(&Scenario::default())
    }
}

impl Report {
    /// Works a scenario out.
    #[must_use]
    pub fn of(scenario: &Scenario) -> Self {
        let ride = RideReport::of(&scenario.ride, scenario.cages.lowest());
        let chain = ChainsReport::of(&scenario.chain, &scenario.cages);
        Self::around(scenario, Rc::new(ride), Rc::new(chain))
    }

    /// The same as [`of`](Self::of), with what takes longest from `before` where it was worked out from the same.
    #[must_use]
    pub fn after(scenario: &Scenario, before: &Self) -> Self {
        let (bikes, box_found) = (before.bikes.clone(), before.box_found.clone());
        let (ride, chain) = (Self::ride_after(scenario, before), Self::chain_after(scenario, before));
        Self { bikes, box_found, ..Self::around(scenario, ride, chain) }
    }

    fn chain_after(scenario: &Scenario, before: &Self) -> Rc<ChainsReport> {
        if before.chain.inputs == scenario.chain {
            return Rc::clone(&before.chain);
        }
        Rc::new(ChainsReport::of(&scenario.chain, &scenario.cages))
    }

    fn ride_after(scenario: &Scenario, before: &Self) -> Rc<RideReport> {
        if before.ride.inputs == scenario.ride {
            return Rc::clone(&before.ride);
        }
        Rc::new(before.ride.after(&scenario.ride, scenario.cages.lowest()))
    }

    fn around(scenario: &Scenario, ride: Rc<RideReport>, chains: Rc<ChainsReport>) -> Self {
        let _in_force = scenario.units.enter();
        let Scenario { rings, chain, cages, position, tyres, lap, parts, owners, .. } = scenario;
        let sizes = rings.wheels.map(|wheel| wheel.tyre);
        let tyre = |side: usize| Rc::new(TyreReport::new(tyres[side], sizes[side], rings.drivetrains()));
        let are_alike = tyres[0] == tyres[1] && sizes[0] == sizes[1];
        let bracket_drop = chain.frame().bottom_bracket_drop;
        let answers = Side::BOTH.map(|side| cages.answer(side));
        Self {
            rings: Rc::new(RingsReport::of(rings, answers, &chain.derailleurs)),
            chain: chains,
            position: Rc::new(PositionReport::new(*position, bracket_drop, sizes, owners)),
            tyre: tyre(0),
            tyre_of_b: (!are_alike).then(|| tyre(1)),
            ride,
            lap_inputs: Rc::new(lap.clone()),
            lap: LapRoom::default(),
            parts: Rc::new(asked::whole(&scenario.basis(), parts)),
            is_box_of_bench: parts.typed == PartsBox::default(),
            box_text: parts.read,
            box_sprockets: parts.sprockets,
            box_found: None,
            bikes: None,
            units: scenario.units,
            sheet_for: scenario.sheet_for,
            owners: Rc::clone(owners),
        }
    }

    /// Tyre, rim and pressure of B.
    #[must_use]
    pub fn tyre_of_b(&self) -> &TyreReport {
        self.tyre_of_b.as_ref().unwrap_or(&self.tyre)
    }

    /// What “Which rings?” is written and drawn from.
    #[must_use]
    pub fn rings_section(&self) -> RingsSection {
        RingsSection {
            rings: Rc::clone(&self.rings),
            asked: self.ride.asked_gears(),
            owners: Rc::clone(&self.owners),
        }
    }

    /// What “Does the cage take it?” is written and drawn from.
    #[must_use]
    pub fn chain_section(&self) -> ChainSection {
        ChainSection {
            rings: Rc::clone(&self.rings),
            chain: Rc::clone(&self.chain),
            owners: Rc::clone(&self.owners),
        }
    }

    /// What the section on the position is written and drawn from.
    #[must_use]
    pub fn position_section(&self) -> PositionSection {
        PositionSection { position: Rc::clone(&self.position), owners: Rc::clone(&self.owners) }
    }

    /// What the section on tyre and pressure is written and drawn from.
    #[must_use]
    pub fn tyre_section(&self) -> TyreSection {
        TyreSection {
            rings: Rc::clone(&self.rings),
            tyre: Rc::clone(&self.tyre),
            of_b: self.tyre_of_b.clone(),
            side: None,
            owners: Rc::clone(&self.owners),
        }
    }

    /// What “What is best of the box?” is written and drawn from.
    #[must_use]
    pub fn box_section(&self) -> BoxSection {
        BoxSection {
            parts: Rc::clone(&self.parts),
            is_bench_only: self.is_box_of_bench,
            sprockets: self.box_sprockets,
            of_a: self.rings.setup(Side::A).drivetrain.cassette.sprockets().len(),
            found: self.box_found.clone(),
        }
    }

    /// What the comparison of all bikes is written and drawn from.
    #[must_use]
    pub fn bikes_section(&self) -> BikesSection {
        BikesSection { compared: self.bikes.clone() }
    }

    /// What “Ride or run?” is written and drawn from.
    #[must_use]
    pub fn ride_section(&self) -> RideSection {
        RideSection {
            rings: Rc::clone(&self.rings),
            ride: Rc::clone(&self.ride),
            owners: Rc::clone(&self.owners),
        }
    }

    /// What “Round the lap” is written and drawn from.
    #[must_use]
    pub fn lap_section(&self) -> LapSection {
        LapSection {
            rings: Rc::clone(&self.rings),
            chain: Rc::clone(&self.chain),
            ride: Rc::clone(&self.ride),
            lap_inputs: Rc::clone(&self.lap_inputs),
            lap: self.lap.clone(),
            owners: Rc::clone(&self.owners),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::bench::Bench;
    use crate::bench::field::{Field, Kind};
    use crate::page::desk::Desk;

    /// Another text that the field understands, as far as one can be made up.
    fn another(field: Field) -> String {
        let start = field.spec().start;
        match field.spec().kind {
            Kind::Choice(choices) => choices[choices.len() - 1].0.to_owned(),
            _ => start.parse::<f64>().map_or("28".to_owned(), |number| (number * 1.05 + 0.01).to_string()),
        }
    }

    #[test]
    fn what_is_kept_is_what_would_be_worked_out() {
        let before = Report::default();
        for &field in Field::ALL {
            let mut bench = Bench::default();
            bench.write(field, &another(field));
            let scenario = Scenario::read(&bench, &Scenario::default()).scenario;
            let (kept, fresh) = (Report::after(&scenario, &before), Report::of(&scenario));
            assert_eq!(format!("{kept:?}"), format!("{fresh:?}"), "{field:?}");
        }
    }

    #[test]
    fn whatever_is_done_to_the_bench_the_report_is_of_what_stands_there() {
        let mut desk = Desk::default();
        desk.open("");
        let mut holds = |doing: &str, act: &mut dyn FnMut(&mut Desk)| {
            act(&mut desk);
            let (kept, fresh) = (&*desk.report, Report::of(&desk.good));
            let told =
                |it: &Report| format!("{:?}", (&it.rings, &it.chain, &it.position, &it.tyre, &it.ride));
            assert_eq!(told(kept), told(&fresh), "{doing}");
        };
        for (field, text) in
            [(Field::CassetteB, "11-28 9s"), (Field::SaddleHeight, "700"), (Field::Capacity, "45")]
        {
            let mut edit =
                |desk: &mut Desk| drop(desk.edit(&[(field.spec().key.to_owned(), text.to_owned())]));
            holds(text, &mut edit);
            for act in ["swap", "undo", "undo", "copy", "undo", "reset", "undo"] {
                holds(act, &mut |desk| drop(desk.act(act)));
            }
        }
        holds("another link", &mut |desk| drop(desk.open("r=3&sh=690")));
        holds("no link", &mut |desk| drop(desk.open("")));
    }
}
