//! A value for each wheel.

/// A value for the front wheel and one for the rear.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Wheels<T> {
    /// For the front wheel.
    pub front: T,
    /// For the rear wheel.
    pub rear: T,
}

impl<T> Wheels<T> {
    /// The same question asked of both wheels.
    pub fn map<U>(self, mut ask: impl FnMut(T) -> U) -> Wheels<U> {
        Wheels { front: ask(self.front), rear: ask(self.rear) }
    }
}
