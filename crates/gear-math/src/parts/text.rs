//! A box of parts as people type or paste it.

use crate::chain::{ChainLinks, ChainLinksError, PulleyCentres};
use crate::gears::{
    Cassette, CassetteError, CassetteName, CassetteNameError, Chainring, Chainset, ChainsetError,
    RingDifference, Sprocket, TotalCapacity,
};
use crate::parts::box_tyre::BoxTyre;
use crate::parts::cranks::{Cranks, told};
use crate::parts::front_derailleur::FrontDerailleur;
use crate::parts::parts_box::PartsBox;
use crate::parts::rear_derailleur::RearDerailleur;
use crate::quantity::OutOfLimits;
use crate::typed::decimal_in;
use crate::wheel::{Construction, TyreSizeError};
use core::fmt::{self, Write};

/// Kinds of parts, in the order in which a line of text has them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum PartKind {
    /// Cranks with their rings.
    Chainset,
    /// Cassettes.
    Cassette,
    /// Rear derailleurs.
    Derailleur,
    /// Chains.
    Chain,
    /// Front derailleurs.
    Front,
    /// Tyres.
    Tyre,
}

/// A box as it was read, and what was not understood.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ReadBox {
    /// What was understood.
    pub parts: PartsBox,
    /// Every piece that was not.
    pub not_understood: Vec<NotUnderstood>,
    /// How many single rings there are.
    pub single_rings: usize,
    /// How many pairs were made of them.
    pub pairs: usize,
}

/// A piece of text that is no part.
#[derive(Debug, Clone, PartialEq)]
pub struct NotUnderstood {
    /// The piece, as typed.
    pub piece: String,
    /// What it was taken for.
    pub kind: PartKind,
    /// What is wrong with it.
    pub why: PartFault,
}

/// Why a piece of text is no part.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum PartFault {
    /// Its rings are none.
    Chainset(ChainsetError),
    /// Its sprockets are none.
    Cassette(CassetteError),
    /// No usual cassette has that name.
    Name(CassetteNameError),
    /// Its links are no chain.
    Chain(ChainLinksError),
    /// Its size is none.
    Tyre(TyreSizeError),
    /// A figure is outside its limits.
    Figure(OutOfLimits),
    /// It is not written as such a part is.
    NotRead,
}

/// What stands for a figure that is not known.
const UNKNOWN: &str = "?";
/// What stands for a kind of which there is none.
const NONE: &str = "-";
/// Cassettes begin with a sprocket that is smaller than any ring, bar the odd one: what begins below this is one. Estimate.
const FIRST_OF_RINGS: u16 = 20;

impl PartKind {
    const ALL: [Self; 6] =
        [Self::Chainset, Self::Cassette, Self::Derailleur, Self::Chain, Self::Front, Self::Tyre];

    /// What a group of parts may be headed by, in small letters and by how it begins.
    const HEADS: [(&str, Self); 10] = [
        ("ring", Self::Chainset),
        ("chainring", Self::Chainset),
        ("chainset", Self::Chainset),
        ("crank", Self::Chainset),
        ("cassette", Self::Cassette),
        ("front", Self::Front),
        ("derailleur", Self::Derailleur),
        ("rear", Self::Derailleur),
        ("chain", Self::Chain),
        ("tyre", Self::Tyre),
    ];

    fn headed(word: &str) -> Option<Self> {
        let word = word.to_ascii_lowercase();
        Self::HEADS.into_iter().find(|(head, _)| word.starts_with(head)).map(|it| it.1)
    }

    /// Whether spaces part its pieces.
    const fn is_of_one_word(self) -> bool {
        matches!(self, Self::Chainset | Self::Chain)
    }
}

impl ReadBox {
    /// Adds the pairs that single rings make, but for those that were typed.
    fn pair(&mut self, cranks: &Cranks) {
        let chainsets = &mut self.parts.chainsets;
        let made = cranks.pairs().into_iter().filter(|it| !chainsets.contains(it)).collect::<Vec<_>>();
        (self.single_rings, self.pairs) = (cranks.rings(), made.len());
        chainsets.extend(made);
    }
}

impl PartsBox {
    /// Reads what lies in a box, for a shifter of so many sprockets where that is known.
    ///
    /// A line holds chainsets, cassettes, rear derailleurs, chains, front derailleurs and tyres in this order, with a stroke between
    /// spaces from kind to kind and commas within, or one kind alone that is told by a word before it or by its look. A rear
    /// derailleur is written as its total capacity over its largest sprocket, and what else is known of it behind that by its
    /// word; a front derailleur as its largest ring over the difference it spans; `?` is what is not known. Cassettes go by their
    /// everyday names or by their sprockets.
    ///
    /// Single rings go on one crank, each alone and every two together, behind the rings typed together; behind `crank`, a label
    /// and a colon they go on another one, up to the end of the group or the next label.
    ///
    /// # Example
    /// ```
    /// use gear_math::parts::PartsBox;
    /// let read = PartsBox::read("34 36 44/31 / 11-30 11s, 11-34, 11-99 / 33/30, 39/36 smallest 11 / 110", None);
    /// let chainsets: Vec<String> = read.parts.chainsets.iter().map(ToString::to_string).collect();
    /// assert_eq!(chainsets, ["34", "36", "44/31", "36/34"]);
    /// assert_eq!(read.parts.cassettes[1].sprockets().len(), 11);
    /// assert_eq!(read.parts.derailleurs[1].figures.smallest_sprocket.map(|it| it.teeth()), Some(11));
    /// assert_eq!(read.not_understood[0].piece, "11-99");
    /// let printed = read.parts.to_string();
    /// assert_eq!(printed, "34 36 44/31 / 11-30 11s, 11-34 11s / 33/30, 39/36 smallest 11 / 110");
    /// assert_eq!(PartsBox::read(&printed, None).parts, read.parts);
    /// let two_cranks = PartsBox::read("crank 1: 34 50 crank 2: 42 46", None);
    /// assert_eq!((two_cranks.single_rings, two_cranks.pairs), (4, 2));
    /// ```
    #[must_use]
    pub fn read(text: &str, sprockets: Option<usize>) -> ReadBox {
        let groups: Vec<(PartKind, String)> = text.split(['\n', ';']).flat_map(groups).collect();
        let cassettes = groups.iter().filter(|it| it.0 == PartKind::Cassette);
        let said = || cassettes.flat_map(|it| pieces(&it.1, it.0)).find_map(|it| said_count(&it));
        let count = sprockets.or_else(said);
        let (mut read, mut cranks) = (ReadBox::default(), Cranks::default());
        for (kind, group) in groups {
            let mut label = String::new();
            for piece in pieces(&group, kind) {
                if let Some(next) = Cranks::label(&piece).filter(|_| kind == PartKind::Chainset) {
                    next.clone_into(&mut label);
                } else if let Err(why) = read.parts.take(kind, &piece, count) {
                    read.not_understood.push(NotUnderstood { piece, kind, why });
                } else if let (PartKind::Chainset, Some([ring])) = (kind, read.parts.last_rings()) {
                    cranks.take(&label, *ring);
                }
            }
        }
        read.pair(&cranks);
        read
    }

    /// The rings that were taken last.
    fn last_rings(&self) -> Option<&[Chainring]> {
        self.chainsets.last().map(Chainset::rings)
    }

    fn take(&mut self, kind: PartKind, piece: &str, count: Option<usize>) -> Result<(), PartFault> {
        match kind {
            PartKind::Chainset => self.chainsets.push(piece.parse().map_err(PartFault::Chainset)?),
            PartKind::Cassette => self.cassettes.push(cassette(piece, count)?),
            PartKind::Derailleur => self.derailleurs.push(rear(piece)?),
            PartKind::Chain => {
                let links = number(piece)?.ok_or(PartFault::NotRead)?;
                self.chains.push(ChainLinks::new(links).map_err(PartFault::Chain)?);
            }
            PartKind::Front => self.front_derailleurs.push(front(piece)?),
            PartKind::Tyre => self.tyres.push(tyre(piece)?),
        }
        Ok(())
    }
}

/// The groups of a line, each of one kind.
fn groups(line: &str) -> Vec<(PartKind, String)> {
    let words: Vec<&str> = line.split_whitespace().collect();
    let parted: Vec<&[&str]> = words.split(|word| *word == "/").collect();
    let is_alone = parted.len() == 1;
    let group = |(place, words): (usize, &[&str])| {
        let headed = words.first().and_then(|word| PartKind::headed(word));
        let is_head = |word: &&&str| PartKind::headed(word).is_some() || **word == ":";
        let heads = if Cranks::is_labelled(words) { 0 } else { words.iter().take_while(is_head).count() };
        let group = words[heads..].join(" ");
        let by_look = || if is_alone { Some(looks(&group)) } else { None };
        let kind = headed.or_else(by_look).or_else(|| PartKind::ALL.get(place).copied());
        (kind.unwrap_or(PartKind::Front), group)
    };
    parted.into_iter().enumerate().map(group).filter(|it| !it.1.is_empty() && it.1 != NONE).collect()
}

/// What parts look like that nothing heads.
fn looks(group: &str) -> PartKind {
    if group.split(',').next().is_some_and(|first| tyre(first.trim()).is_ok()) {
        return PartKind::Tyre;
    }
    let digits = group.split(|letter: char| !letter.is_ascii_digit()).find(|it| !it.is_empty());
    match digits.and_then(|it| it.parse::<u16>().ok()) {
        Some(first) if first < FIRST_OF_RINGS => PartKind::Cassette,
        Some(first) if f64::from(first) > Chainring::LIMITS.max => PartKind::Chain,
        _ => PartKind::Chainset,
    }
}

fn pieces(group: &str, kind: PartKind) -> Vec<String> {
    let parts_at = |letter: char| letter == ',' || kind.is_of_one_word() && letter.is_whitespace();
    let pieces = group.split(parts_at).map(str::trim).filter(|it| !it.is_empty());
    // “110 links”, “44 teeth”, “crank 2:”
    pieces
        .filter(|it| !kind.is_of_one_word() || !matches!(*it, "links" | "teeth") && !Cranks::is_crank(it))
        .map(str::to_owned)
        .collect()
}

/// For how many sprockets a piece speaks.
fn said_count(piece: &str) -> Option<usize> {
    match CassetteName::read(piece) {
        Some(name) => name.count(),
        None => piece.parse::<Cassette>().ok().map(|it| it.sprockets().len()).filter(|count| *count > 2),
    }
}

/// By its name or its sprockets; of one or two sprockets the name says so, since their ends are all there is.
fn cassette(piece: &str, count: Option<usize>) -> Result<Cassette, PartFault> {
    if let Some(single) = piece.strip_suffix(" 1s") {
        return single.parse().map_err(PartFault::Cassette);
    }
    if let Some(ends) = piece.strip_suffix(" 2s") {
        return ends.parse().map_err(PartFault::Cassette);
    }
    if let Some(name) = CassetteName::read(piece) {
        return name.beside(count).ok_or(PartFault::Name(CassetteNameError::NoneSuch(name)));
    }
    let cassette: Cassette = piece.parse().map_err(PartFault::Cassette)?;
    if cassette.sprockets().len() > 1 { Ok(cassette) } else { Err(PartFault::NotRead) }
}

fn rear(piece: &str) -> Result<RearDerailleur, PartFault> {
    let mut rear = RearDerailleur::default();
    let figures = &mut rear.figures;
    let mut words = piece.split_whitespace();
    let [capacity, largest] = pair(words.next().ok_or(PartFault::NotRead)?)?;
    figures.total_capacity = within(capacity, TotalCapacity::new)?;
    figures.largest_sprocket = within(largest, Sprocket::new)?;
    while let Some(word) = words.next() {
        let value = words.next().ok_or(PartFault::NotRead)?;
        match word {
            "smallest" => figures.smallest_sprocket = within(number(value)?, Sprocket::new)?,
            "difference" => figures.ring_difference = within(number(value)?, RingDifference::new)?,
            "centres" => {
                let mm = decimal_in(value, "mm").ok_or(PartFault::NotRead)?;
                rear.pulley_centres = Some(PulleyCentres::new(mm).map_err(PartFault::Figure)?);
            }
            _ => return Err(PartFault::NotRead),
        }
    }
    Ok(rear)
}

fn front(piece: &str) -> Result<FrontDerailleur, PartFault> {
    let [largest, difference] = pair(piece)?;
    Ok(FrontDerailleur {
        largest_ring: within(largest, Chainring::new)?,
        difference: within(difference, RingDifference::new)?,
    })
}

/// Kinds of tyres by their words.
const KINDS: [(&str, Construction); 3] = [
    ("tubular", Construction::Tubular),
    ("clincher", Construction::Clincher),
    ("tubeless", Construction::Tubeless),
];

fn tyre(piece: &str) -> Result<BoxTyre, PartFault> {
    let (size, kind) = piece.rsplit_once(' ').unwrap_or((piece, ""));
    let construction = KINDS.into_iter().find(|it| it.0 == kind).map(|it| it.1);
    let size = if construction.is_some() { size } else { piece };
    Ok(BoxTyre { size: size.parse().map_err(PartFault::Tyre)?, construction })
}

/// Two figures with a stroke between, each of which may not be known.
fn pair(text: &str) -> Result<[Option<u16>; 2], PartFault> {
    let (first, second) = text.split_once('/').ok_or(PartFault::NotRead)?;
    Ok([number(first)?, number(second)?])
}

fn number(text: &str) -> Result<Option<u16>, PartFault> {
    let is_number = !text.is_empty() && text.bytes().all(|it| it.is_ascii_digit());
    match text {
        UNKNOWN => Ok(None),
        _ if is_number => Ok(Some(text.parse().unwrap_or(u16::MAX))),
        _ => Err(PartFault::NotRead),
    }
}

fn within<T>(figure: Option<u16>, new: fn(u16) -> Result<T, OutOfLimits>) -> Result<Option<T>, PartFault> {
    figure.map(new).transpose().map_err(PartFault::Figure)
}

/// As it reads back: what is known of every part, kind by kind, without kinds at the end of which there is none.
impl fmt::Display for PartsBox {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut kinds = [
            told(&self.chainsets),
            joined(&self.cassettes, ", ", write_cassette),
            joined(&self.derailleurs, ", ", write_rear),
            joined(&self.chains, " ", |f, it| write!(f, "{}", it.count())),
            joined(&self.front_derailleurs, ", ", write_front),
            joined(&self.tyres, ", ", write_tyre),
        ]
        .to_vec();
        while kinds.last().is_some_and(String::is_empty) {
            kinds.pop();
        }
        let named = kinds.iter().map(|it| if it.is_empty() { NONE } else { it });
        f.write_str(&named.collect::<Vec<_>>().join(" / "))?;
        // One kind alone would be told by its look.
        if kinds.len() == 1 { f.write_str(" / -") } else { Ok(()) }
    }
}

fn joined<T>(all: &[T], between: &str, write: impl Fn(&mut String, &T) -> fmt::Result) -> String {
    let mut text = String::new();
    for (place, one) in all.iter().enumerate() {
        text.push_str(if place > 0 { between } else { "" });
        // Writing into a text does not fail.
        let _ = write(&mut text, one);
    }
    text
}

fn write_cassette(text: &mut String, cassette: &Cassette) -> fmt::Result {
    match (cassette.everyday_name(), cassette.sprockets()) {
        (Some(name), _) => write!(text, "{name}"),
        (None, [single]) => write!(text, "{single} 1s"),
        (None, [smallest, largest]) => write!(text, "{smallest}-{largest} 2s"),
        (None, _) => write!(text, "{cassette}"),
    }
}

fn write_rear(text: &mut String, RearDerailleur { figures, pulley_centres }: &RearDerailleur) -> fmt::Result {
    let capacity = shown(figures.total_capacity.map(TotalCapacity::teeth));
    write!(text, "{capacity}/{}", shown(figures.largest_sprocket.map(Sprocket::teeth)))?;
    if let Some(smallest) = figures.smallest_sprocket {
        write!(text, " smallest {smallest}")?;
    }
    if let Some(difference) = figures.ring_difference {
        write!(text, " difference {difference}")?;
    }
    pulley_centres.map_or(Ok(()), |centres| write!(text, " centres {}", centres.mm()))
}

fn write_front(text: &mut String, front: &FrontDerailleur) -> fmt::Result {
    let difference = shown(front.difference.map(RingDifference::teeth));
    write!(text, "{}/{difference}", shown(front.largest_ring.map(Chainring::teeth)))
}

fn write_tyre(text: &mut String, tyre: &BoxTyre) -> fmt::Result {
    write!(text, "{}", tyre.size)?;
    let kind = KINDS.into_iter().find(|it| Some(it.1) == tyre.construction);
    kind.map_or(Ok(()), |(word, _)| write!(text, " {word}"))
}

fn shown(figure: Option<u16>) -> String {
    figure.map_or_else(|| UNKNOWN.to_owned(), |it| it.to_string())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cage::Derailleur;
    use crate::gears::Chainset;

    fn read(text: &str) -> ReadBox {
        PartsBox::read(text, None)
    }

    #[test]
    fn what_is_pasted_is_understood() {
        let box_of = read("34 36 38 / 11-28 11s, 11-34 11s / 33/30, 39/36");
        assert_eq!(box_of.not_understood, []);
        let PartsBox { chainsets, cassettes, derailleurs, .. } = box_of.parts;
        assert_eq!(names(&chainsets), ["34", "36", "38", "36/34", "38/34", "38/36"]);
        assert_eq!(cassettes, [28, 34].map(|it| Cassette::named(11, it, 11).unwrap()));
        let figures = derailleurs.iter().map(|it| {
            let Derailleur { total_capacity, largest_sprocket, .. } = it.figures;
            [total_capacity.unwrap().teeth(), largest_sprocket.unwrap().teeth()]
        });
        assert_eq!(figures.collect::<Vec<_>>(), [[33, 30], [39, 36]]);
    }

    fn names(chainsets: &[Chainset]) -> Vec<String> {
        chainsets.iter().map(Chainset::to_string).collect()
    }

    #[test]
    fn rings_of_one_crank_make_pairs_and_those_of_two_do_not() {
        let six = read("34 36 38 42 46 50");
        assert_eq!((six.single_rings, six.pairs, six.parts.chainsets.len()), (6, 15, 21));
        for (text, pairs) in [
            ("50/34", vec![]),
            ("50/34 34 50", vec![]),
            ("34 36 34", vec!["36/34"]),
            ("Rings: 34\nrings 36 teeth", vec!["36/34"]),
            ("34 50 crank b: 42, 46", vec!["50/34", "46/42"]),
            ("crank 1: 34 50\nCrank 2: 42\ncrank 1: 36 / 11-34 11s", vec!["50/34", "36/34", "50/36"]),
            ("crank: 34 50", vec!["50/34"]),
        ] {
            let read = read(text);
            let made = read.parts.chainsets.len() - read.pairs;
            assert_eq!(
                (names(&read.parts.chainsets[made..]), read.not_understood),
                (pairs.into_iter().map(str::to_owned).collect(), vec![]),
                "{text}"
            );
        }
    }

    #[test]
    fn lines_say_their_kind_or_show_it() {
        let listed = read(
            "Rings: 44/31, 40\n11-34\ncassettes 12-36 9s\nrear derailleurs: 39/36\n110 links, 116\nfront 44/13\n33-622 tubeless\ntyres 700x40C",
        );
        let in_a_line =
            read("44/31 40 / 11-34 9s, 12-36 9s / 39/36 / 110 116 / 44/13 / 33-622 tubeless, 40-622");
        assert_eq!((listed.parts, listed.not_understood), (in_a_line.parts, Vec::new()));
    }

    #[test]
    fn sprockets_not_counted_are_those_of_the_shifter_or_of_the_others() {
        let counts = |text, sprockets| -> Vec<usize> {
            let cassettes = PartsBox::read(text, sprockets).parts.cassettes;
            cassettes.iter().map(|it| it.sprockets().len()).collect()
        };
        assert_eq!(counts("11-32", None), [11]);
        assert_eq!(counts("11-32, 11-32 9s", None), [9, 9]);
        assert_eq!(counts("11-32, 11-32 9s", Some(10)), [10, 9]);
        assert_eq!(counts("11-32, 11-13-15-18-21-24-28-32", None), [8, 8]);
    }

    #[test]
    fn what_is_not_understood_is_said_piece_by_piece() {
        let faults: Vec<_> =
            read("44/44 61 40 / 11-99, 34 / 39, 39/36 longest 3, 39/99 / 111 x / 44 / 33-99")
                .not_understood
                .into_iter()
                .map(|it| (it.piece, it.kind))
                .collect();
        let expected = [
            ("44/44", PartKind::Chainset),
            ("61", PartKind::Chainset),
            ("11-99", PartKind::Cassette),
            ("34", PartKind::Cassette),
            ("39", PartKind::Derailleur),
            ("39/36 longest 3", PartKind::Derailleur),
            ("39/99", PartKind::Derailleur),
            ("111", PartKind::Chain),
            ("x", PartKind::Chain),
            ("44", PartKind::Front),
            ("33-99", PartKind::Tyre),
        ];
        assert_eq!(faults, expected.map(|(piece, kind)| (piece.to_owned(), kind)));
    }

    #[test]
    fn a_box_of_one_kind_reads_back() {
        for text in [
            "40 / -",
            "- / 16-18 2s, 17 1s",
            "- / - / ?/?",
            "- / - / - / 110",
            "- / - / - / - / - / 33-622 tubular",
            "",
        ] {
            let parts = read(text).parts;
            assert_eq!((parts.to_string().as_str(), read(text).not_understood.len()), (text, 0));
        }
    }
}
