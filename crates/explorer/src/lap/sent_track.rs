//! What a worker has read of a track, as numbers: its points, or why there are none.

use gear_math::course::{GpxError, TrackPoints};

/// What a text holds; fewer numbers than any track has say why it is none.
#[must_use]
pub fn read(text: &str) -> Vec<f64> {
    match TrackPoints::from_gpx(text) {
        Ok(points) => points.numbers().to_vec(),
        Err(GpxError::Damaged { line }) => vec![line as f64],
        Err(error) => {
            let place = PLAIN.iter().position(|it| *it == error).unwrap_or_default();
            vec![place as f64, 0.0]
        }
    }
}

/// What [`read`] has read.
///
/// # Errors
/// Why it holds no track.
pub fn understood(numbers: Vec<f64>) -> Result<TrackPoints, GpxError> {
    match numbers[..] {
        [line] => Err(GpxError::Damaged { line: line as usize }),
        [place, _] => Err(PLAIN.get(place as usize).copied().unwrap_or(PLAIN[0])),
        _ => TrackPoints::from_numbers(numbers).ok_or(PLAIN[0]),
    }
}

/// What reading may find wrong and nothing more is said of.
const PLAIN: [GpxError; 4] =
    [GpxError::NotGpx, GpxError::TooLarge, GpxError::DocumentType, GpxError::TooManyPoints];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_read_arrives_as_it_was() {
        let point = "<trkpt lat='1' lon='2'/>";
        let file = |points: &str| format!("<gpx>\n<trk><trkseg>{points}</trkseg></trk></gpx>");
        let many = file(&point.repeat(100_001));
        for text in ["", "<gpx/>", "<!DOCTYPE gpx><gpx/>", "<gpx>\n<trk", &file(""), &file(point), &many] {
            assert_eq!(understood(read(text)), TrackPoints::from_gpx(text));
        }
        assert_eq!(understood(Vec::new()), Err(GpxError::NotGpx));
    }
}
