//! What A and B each have, or B leaves to A.

use crate::bench::field::Field;
use crate::bench::of_b::OfB;
use crate::bench::reader::Reader;
use crate::bench::words::complaints as words;
use gear_math::gears::RingDifference;
use gear_math::{Derailleur, Measured, Sprocket, TotalCapacity, TyreSize, Wheel};

impl Reader<'_> {
    /// What A and B have in a field of A's and its twin.
    pub(crate) fn each<T: Copy>(&mut self, of_a: Field, read: impl Fn(&mut Self, Field) -> T) -> [T; 2] {
        let a = read(self, of_a);
        [a, if self.of_b(of_a.twin()) == OfB::AsOnA { a } else { read(self, of_a.twin()) }]
    }

    /// The same of what need not be known.
    pub(crate) fn each_or_none<T: Copy>(
        &mut self,
        of_a: Field,
        read: impl Fn(&mut Self, Field) -> Option<T>,
    ) -> [Option<T>; 2] {
        self.each(of_a, |reader, field| {
            let is_unknown = field.as_on_a().is_some() && reader.of_b(field) == OfB::NotKnown;
            if is_unknown { None } else { read(reader, field) }
        })
    }

    /// A measured quantity of each, where it was measured.
    pub(crate) fn measures<T: Measured + Copy>(&mut self, of_a: Field) -> [Option<T>; 2] {
        self.each_or_none(of_a, Reader::quantity_or_none)
    }

    /// The wheels of A and B.
    pub(crate) fn wheels(&mut self, good: [Wheel; 2]) -> [Wheel; 2] {
        let tyres: [TyreSize; 2] = self.each(Field::Tyre, |reader, field| {
            let good = good[usize::from(field == Field::TyreB)].tyre;
            reader.parsed(field, good, words::tyre_size)
        });
        let [a, b] = self.measures(Field::RollOut);
        [Wheel::by_size(tyres[0], a), Wheel::by_size(tyres[1], b)]
    }

    /// The rear derailleurs of A and B.
    pub(crate) fn derailleurs(&mut self) -> [Derailleur; 2] {
        let capacities = self.each_or_none(Field::Capacity, |it, field| it.teeth(field, TotalCapacity::new));
        let largest = self.each_or_none(Field::LargestSprocket, |it, field| it.teeth(field, Sprocket::new));
        let smallest = self.each_or_none(Field::SmallestSprocket, |it, field| it.teeth(field, Sprocket::new));
        let differences =
            self.each_or_none(Field::RingDifference, |it, field| it.teeth(field, RingDifference::new));
        [0, 1].map(|side| Derailleur {
            total_capacity: capacities[side],
            largest_sprocket: largest[side],
            smallest_sprocket: smallest[side],
            ring_difference: differences[side],
        })
    }
}
