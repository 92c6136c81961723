//! Every section of the page. A further one is a room of its own and one line here.

use crate::bench::field::Field;
use crate::chain::section::ChainSection;
use crate::drawing::drawing::Drawing;
use crate::drawing::palette::Palette;
use crate::drawing::pen::{Mark, Pen, Size};
use crate::drawing::spot::Spot;
use crate::lap::section::LapSection;
use crate::layout::decision::Decision;
use crate::layout::figure::shows_id;
use crate::layout::folded::Folded;
use crate::layout::line::Line;
use crate::layout::question::{Fragment, Question};
use crate::layout::sheet_block::Block;
use crate::page::report::Report;
use crate::parts::section::BoxSection;
use crate::position::section::PositionSection;
use crate::rack::section::BikesSection;
use crate::ride::section::RideSection;
use crate::rings::section::RingsSection;
use crate::tyre::section::TyreSection;
use crate::{chain, lap, parts, position, rack, ride, rings, tyre};
use maud::{Markup, html};

static RINGS: Question<RingsSection> = rings::question::QUESTION.asked();
static CHAIN: Question<ChainSection> = chain::question::QUESTION.asked();
static RIDE: Question<RideSection> = ride::question::QUESTION.asked();
static LAP: Question<LapSection> = lap::question::QUESTION.asked();
static BOX: Question<BoxSection> = parts::question::QUESTION.asked();
static BIKES: Question<BikesSection> = rack::question::QUESTION.asked();
static TYRE: Question<TyreSection> = tyre::question::QUESTION.asked();
static POSITION: Question<PositionSection> = position::question::QUESTION.asked();

/// The sections in the order of the page.
static ALL: &[&dyn Asked] = &[
    &Room { of: Report::rings_section, question: &RINGS },
    &Room { of: Report::chain_section, question: &CHAIN },
    &Room { of: Report::ride_section, question: &RIDE },
    &Room { of: Report::lap_section, question: &LAP },
    &Room { of: Report::box_section, question: &BOX },
    &Room { of: Report::bikes_section, question: &BIKES },
    &Room { of: Report::tyre_section, question: &TYRE },
    &Room { of: Report::position_section, question: &POSITION },
];

/// The section of all bikes side by side.
pub(crate) fn bikes() -> &'static dyn Asked {
    const { &Room { of: Report::bikes_section, question: &BIKES } }
}

/// The section of the box of parts.
pub(crate) fn of_box() -> &'static dyn Asked {
    const { &Room { of: Report::box_section, question: &BOX } }
}

/// The sections in the order of the page.
pub(crate) fn all() -> impl Iterator<Item = &'static dyn Asked> {
    ALL.iter().copied()
}

/// Whether the answer of the section with this id rests on a field.
#[must_use]
pub fn rests_on(id: &str, field: Field) -> bool {
    all().any(|question| question.id() == id && question.rests_on(field))
}

impl dyn Asked + '_ {
    /// Whether the answer rests on the demo's values; then nothing in it is green.
    pub(crate) fn is_demos(&self, report: &Report) -> bool {
        report.owners.rests_on_demo(|field| self.rests_on(field))
    }
}

/// Where a text of a section stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Place {
    /// The answer.
    Answer,
    /// What is behind it.
    Why,
    /// Anywhere else.
    Elsewhere,
}

/// A text that changes.
#[derive(Debug)]
pub(crate) struct Text {
    /// Where it stands.
    pub(crate) place: Place,
    /// The id of the element that holds it.
    pub(crate) id: &'static str,
    /// The text.
    pub(crate) html: Markup,
}

/// A question, whatever it is answered from.
pub(crate) trait Asked: Sync {
    /// The id of its section.
    fn id(&self) -> &'static str;
    /// Its name among the sections.
    fn name(&self) -> &'static str;
    /// Whether the answer rests on a field.
    fn rests_on(&self, field: Field) -> bool;
    /// Whether the answer is put in doubt by a field that could not be understood.
    fn asks(&self, field: Field) -> bool;
    /// The few fields that move the answer most.
    fn decided_by(&self) -> &'static [Field];
    /// Whether the answer marks by itself what rests on the demo's values.
    fn marks_itself(&self) -> bool;
    /// What of it is nobody's though the rider chose it.
    fn nobodys(&self, report: &Report) -> Option<Line>;
    /// The answer in a few words for each bike; none where there is nothing to decide.
    fn decision(&self, report: &Report) -> Option<Decision>;
    /// The text that changes, by the ids of the elements that hold it, without that of folds that are not `wanted`; the answer
    /// first.
    fn fragments(&self, report: &Report, wanted: &dyn Fn(Folded) -> bool) -> Vec<Text>;
    /// What its pictures say, by the ids of the elements that hold it, without those of folds that are not `wanted`; nothing of
    /// one that shows nothing.
    fn said(&self, report: &Report, wanted: &dyn Fn(Folded) -> bool) -> Vec<(String, Markup)>;
    /// What it gives to the workshop sheet.
    fn block(&self, report: &Report) -> Option<Block>;
    /// Whether it has a row on the board.
    #[cfg(not(target_arch = "wasm32"))]
    fn decides(&self) -> bool;
    /// Its section with nothing worked out yet.
    #[cfg(not(target_arch = "wasm32"))]
    fn skeleton(&self) -> Markup;
    /// Its form of this name.
    fn form(&self, name: &str) -> Option<Markup>;
    /// What unfolds in it.
    #[cfg(test)]
    fn folds(&self) -> Vec<Folded>;
    /// All of its forms.
    #[cfg(test)]
    fn all_forms(&self) -> Vec<Markup>;
    /// The names of its pictures.
    fn pictures(&self) -> Vec<&'static str>;
    /// One of its pictures.
    fn picture(&self, report: &Report, place: usize) -> Box<dyn Shown>;
}

struct Room<S: 'static> {
    of: fn(&Report) -> S,
    question: &'static Question<S>,
}

impl<S> Asked for Room<S> {
    fn id(&self) -> &'static str {
        self.question.id
    }

    fn name(&self) -> &'static str {
        self.question.name
    }

    fn rests_on(&self, field: Field) -> bool {
        (self.question.rests_on)(field.as_on_a().unwrap_or(field))
    }

    fn asks(&self, field: Field) -> bool {
        (self.question.asks)(field.as_on_a().unwrap_or(field))
    }

    fn decided_by(&self) -> &'static [Field] {
        self.question.decided_by
    }

    fn marks_itself(&self) -> bool {
        self.question.marks_itself
    }

    fn nobodys(&self, report: &Report) -> Option<Line> {
        (self.question.nobodys)(&(self.of)(report))
    }

    fn decision(&self, report: &Report) -> Option<Decision> {
        (self.question.decision)(&(self.of)(report))
    }

    fn fragments(&self, report: &Report, wanted: &dyn Fn(Folded) -> bool) -> Vec<Text> {
        let section = (self.of)(report);
        let Question { answer, fragments, folds, .. } = self.question;
        let text = |place, &(id, written): &Fragment<S>| Text { place, id, html: written(&section) };
        let mut all = vec![text(Place::Answer, answer)];
        all.extend(fragments.iter().map(|fragment| text(Place::Elsewhere, fragment)));
        for (fold, fragments) in folds.iter().filter(|(fold, _)| wanted(*fold)) {
            let place = if *fold == Folded::Why { Place::Why } else { Place::Elsewhere };
            all.extend(fragments.iter().map(|fragment| text(place, fragment)));
        }
        all
    }

    fn said(&self, report: &Report, wanted: &dyn Fn(Folded) -> bool) -> Vec<(String, Markup)> {
        let section = (self.of)(report);
        let leads = self.question.leads;
        let is_shown = |drawing: &&Drawing<S>| {
            leads == drawing.name || wanted(Folded::Pictures) || wanted(Folded::Search)
        };
        let said = |drawing: &Drawing<S>| {
            let says = html! { @if drawing.shows(&section) { (Line::from((drawing.says)(&section))) } };
            (shows_id(drawing.name), says)
        };
        self.question.pictures.iter().filter(is_shown).map(said).collect()
    }

    fn block(&self, report: &Report) -> Option<Block> {
        (self.question.block)(&(self.of)(report), report.sheet_for)
    }

    #[cfg(not(target_arch = "wasm32"))]
    fn decides(&self) -> bool {
        self.decision(&Report::default()).is_some()
    }

    #[cfg(not(target_arch = "wasm32"))]
    fn skeleton(&self) -> Markup {
        self.question.skeleton()
    }

    fn form(&self, name: &str) -> Option<Markup> {
        self.question.forms.iter().find(|(known, _)| *known == name).map(|(_, form)| form())
    }

    #[cfg(test)]
    fn folds(&self) -> Vec<Folded> {
        self.question.folds.iter().map(|(fold, _)| *fold).collect()
    }

    #[cfg(test)]
    fn all_forms(&self) -> Vec<Markup> {
        self.question.forms.iter().map(|(_, form)| form()).collect()
    }

    fn pictures(&self) -> Vec<&'static str> {
        self.question.pictures.iter().map(|drawing| drawing.name).collect()
    }

    fn picture(&self, report: &Report, place: usize) -> Box<dyn Shown> {
        Box::new(Hung { section: (self.of)(report), drawing: &self.question.pictures[place] })
    }
}

/// A picture with what it is drawn from.
pub(crate) trait Shown {
    /// Whether there is something to show.
    fn shows(&self) -> bool;
    /// Height at a width, CSS pixels; none, and nothing drawn, where it has nothing to show.
    fn height(&self, width: f64) -> f64;
    /// What it is drawn with.
    fn marks(&self, look: &Palette, size: Size) -> Vec<Mark>;
    /// What can be looked at.
    fn spots(&self, size: Size) -> Vec<Spot>;
    /// One sentence that says what it shows.
    fn label(&self) -> String;
    /// What a spot says.
    fn words(&self, spot: &Spot, index: usize) -> String;
}

struct Hung<S: 'static> {
    section: S,
    drawing: &'static Drawing<S>,
}

impl<S> Shown for Hung<S> {
    fn shows(&self) -> bool {
        self.drawing.shows(&self.section)
    }

    fn height(&self, width: f64) -> f64 {
        (self.drawing.height)(&self.section, width)
    }

    fn marks(&self, look: &Palette, size: Size) -> Vec<Mark> {
        let mut pen = Pen::default();
        if !self.shows() {
            return pen.marks;
        }
        pen.fill((0.0, 0.0), size, look.paper);
        (self.drawing.draw)(&mut pen, look, &self.section, size);
        pen.marks
    }

    fn spots(&self, size: Size) -> Vec<Spot> {
        if self.shows() { (self.drawing.spots)(&self.section, size) } else { Vec::new() }
    }

    fn label(&self) -> String {
        (self.drawing.label)(&self.section)
    }

    fn words(&self, spot: &Spot, index: usize) -> String {
        (self.drawing.words)(&self.section, spot, index)
    }
}
