//! What of the section never changes.

use gear_math::rider::Climb;

/// Its name among the sections.
pub(crate) const NAME: &str = "Ride or run";
/// The question.
pub(crate) const TITLE: &str = "Ride or run?";
/// The label of its form.
pub(crate) const FORM: &str = "Rider, bike and climb";
/// What the numbers are.
pub(crate) const ESTIMATES: &str = "These are estimates from published averages, not promises; real ground and real legs differ, and the grey band is the honest answer. Where it is too close to call, choose by grip, by balance and by what comes next.";
/// What may harm.
pub(crate) const CAUTIONS: [&str; 3] = [
    "Do not ride or run beyond what you control: on steep, wet ground the front wheel can lift and throw you back, the rear one slip and throw you sideways.",
    "Running with a bike loads ankles, knees and back, and on the shoulder only one side of you. Build it up slowly; practise getting off and on at walking pace first, on flat grass.",
    "This is not medical advice. Hard efforts uphill strain the heart. If your heart, lungs or joints are not sound, if hard exercise is new to you, or if you feel chest pain, dizziness or unusual breathlessness: stop, and ask a doctor before you try again.",
];

/// Whom the numbers are about.
pub(crate) fn studied() -> String {
    format!(
        "The studies behind this measured small groups of mostly young, trained adults. Children, downhill and slopes beyond {} {} were not part of them, so nothing here is about those; what the lap assumes downhill it says itself.",
        Climb::LIMITS.max,
        Climb::LIMITS.unit
    )
}
