//! A bicycle's drivetrain with all that decides how its chain lies.

use crate::cage::CageClass;
use crate::chain::cage::Cage;
use crate::chain::chainline::ChainlineMeasures;
use crate::chain::fit::{ChainFit, ChainWindow};
use crate::chain::frame::FrameMeasures;
use crate::chain::gear_state::{GearFit, Swing};
use crate::chain::measures::{ChainLinks, PulleyCentres};
use crate::chain::path::{ChainPath, GearPath};
use crate::chain::path_error::PathError;
use crate::chain::two_sprocket::TwoSprocketDrive;
use crate::gears::{ChainAngle, Drivetrain, Gear};

/// Rings, sprockets, frame, cage and chainline of one bicycle.
///
/// # Example
/// ```
/// use gear_math::{ChainLinks, ChainSetup, Drivetrain};
/// use gear_math::chain::{Cage, ChainDefaults};
/// let drivetrain = Drivetrain { chainset: "44/31".parse()?, cassette: "11-13-15-18-21-24-28-32".parse()? };
/// let setup = ChainSetup {
///     chainline: ChainDefaults::chainline(&drivetrain),
///     drivetrain,
///     frame: ChainDefaults::FRAME,
///     cage: Cage::new(ChainDefaults::CAGE)?,
/// };
/// let fit = setup.fit(None)?;
/// assert_eq!(fit.links, fit.recommended);
/// assert_eq!(fit.recommended.count(), 108);
/// assert!(fit.gears.iter().all(|gear| gear.state.is_usable()));
/// assert!(setup.fit(Some(ChainLinks::new(104)?))?.gears.iter().any(|gear| gear.links_over < 0.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ChainSetup {
    /// Rings and sprockets.
    pub drivetrain: Drivetrain,
    /// The frame.
    pub frame: FrameMeasures,
    /// The rear derailleur's cage.
    pub cage: Cage,
    /// Where rings and sprockets stand sideways.
    pub chainline: ChainlineMeasures,
}

impl ChainSetup {
    /// Solves every gear for a chain of `links`, or for the [recommended](ChainFit::recommended) one.
    ///
    /// # Errors
    /// [`PathError::WheelsOverlap`] when the swinging tension pulley could run into a chainring.
    pub fn fit(&self, links: Option<ChainLinks>) -> Result<ChainFit, PathError> {
        let window = self.window()?;
        let big_big_plus_two = self.big_big().plus_two();
        let recommended = window.shortest.max(big_big_plus_two);
        let links = links.unwrap_or(recommended);
        let simple_sum = self.drivetrain.needed_capacity();
        Ok(ChainFit {
            window,
            big_big_plus_two,
            recommended,
            capacity_teeth: f64::from(simple_sum) + 2.0 * window.spare_links(),
            simple_sum_teeth: simple_sum,
            links,
            gears: self.gears(links)?,
        })
    }

    /// The chains that every gear accepts: set by big ring with largest sprocket, and small with smallest.
    ///
    /// # Errors
    /// As [`fit`](Self::fit).
    pub fn window(&self) -> Result<ChainWindow, PathError> {
        let shortest_exact = self.swing(self.longest_path())?.fewest_links();
        let longest_exact = self.swing(self.shortest_path())?.most_links();
        Ok(ChainWindow::new(shortest_exact, longest_exact))
    }

    /// The path to draw for `gear` with a chain of `links`: see [`GearFit::drawn_angle`].
    ///
    /// # Errors
    /// As [`fit`](Self::fit).
    pub fn path(&self, gear: Gear, links: ChainLinks) -> Result<ChainPath, PathError> {
        let path = GearPath::new(gear, &self.frame, &self.cage)?;
        Ok(path.trace(Swing::new(path, &self.cage).pose(links).drawn_angle))
    }

    /// The same set-up with the rest position moved so that the geometric capacity equals the one its maker states;
    /// `None` when no stop does that. The level of our capacity is fitted to cages in general; this fits it to
    /// the one at hand.
    ///
    /// # Errors
    /// As [`fit`](Self::fit).
    pub fn with_stated_capacity(&self, teeth: u16) -> Result<Option<Self>, PathError> {
        let spare_teeth = f64::from(teeth) - f64::from(self.drivetrain.needed_capacity());
        let longest = self.window()?.shortest_exact + spare_teeth / 2.0;
        let path = GearPath::new(self.shortest_path(), &self.frame, &self.cage)?;
        let rear_stop = path.rear_stop_for(longest);
        Ok(rear_stop.map(|stop| Self { cage: self.cage.with_rear_stop(stop), ..*self }))
    }

    /// The same with the longest cage that is [made](crate::cage::CageClass::ALL).
    ///
    /// # Errors
    /// [`PathError::WheelsOverlap`] when its pulleys could run into each other.
    pub fn with_longest_cage(&self) -> Result<Self, PathError> {
        const LONGEST: PulleyCentres = PulleyCentres::known(CageClass::LONGEST_MM);
        let cage = self.cage.with_pulley_centres(LONGEST)?;
        Ok(Self { cage, ..*self })
    }

    /// Big ring with largest sprocket: the gear that asks for most chain.
    pub(super) fn longest_path(&self) -> Gear {
        Gear { ring: self.drivetrain.chainset.largest(), sprocket: self.drivetrain.cassette.largest() }
    }

    /// Small ring with smallest sprocket: the gear that leaves most chain over.
    pub(super) fn shortest_path(&self) -> Gear {
        Gear { ring: self.drivetrain.chainset.smallest(), sprocket: self.drivetrain.cassette.smallest() }
    }

    fn big_big(&self) -> TwoSprocketDrive {
        TwoSprocketDrive::of_bicycle(self.longest_path(), self.frame.chainstay)
    }

    fn gears(&self, links: ChainLinks) -> Result<Vec<GearFit>, PathError> {
        let sideways = self.chainline.sideways(&self.drivetrain, self.frame.chainstay);
        self.drivetrain.gears().zip(sideways).map(|(gear, angle)| self.gear_fit(gear, angle, links)).collect()
    }

    fn gear_fit(&self, gear: Gear, chain_angle: ChainAngle, links: ChainLinks) -> Result<GearFit, PathError> {
        let swing = self.swing(gear)?;
        let pose = swing.pose(links);
        let count = f64::from(links.count());
        Ok(GearFit {
            gear,
            cage_angle: pose.cage_angle,
            links_over: pose.links_over,
            to_fore_stop: count - swing.fewest_links(),
            to_rear_stop: swing.most_links() - count,
            state: pose.state,
            drawn_angle: pose.drawn_angle,
            chain_angle,
        })
    }

    fn swing(&self, gear: Gear) -> Result<Swing, PathError> {
        GearPath::new(gear, &self.frame, &self.cage).map(|path| Swing::new(path, &self.cage))
    }
}
