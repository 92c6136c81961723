//! What is said beside the fields.

use crate::tyre::report::TyreReport;
use crate::tyre::words::said::no_fit;
use crate::tyre::words::width::mm;

/// Beside the measured width; `help` where there is nothing else to say.
pub(crate) fn width(tyre: &TyreReport, help: &str) -> String {
    let Some((measured, fit)) = tyre.inputs.measured.zip(tyre.fit.as_ref().ok()) else {
        return help.to_owned();
    };
    let computed = mm(fit.width.mounted.mm());
    if !fit.is_measured {
        format!("No tyre is narrower than its rim: left aside. Computed: {computed}")
    } else if !fit.width.explains(measured) {
        format!("Far from the {computed} that label and rim lead to: check all three")
    } else {
        help.to_owned()
    }
}

/// Beside the rim; `help` where there is nothing else to say.
pub(crate) fn rim(tyre: &TyreReport, help: &str) -> String {
    match &tyre.fit {
        Err(error) => no_fit(error),
        Ok(_) => help.to_owned(),
    }
}
