//! Reading the points of a recorded or drawn course from GPX 1.1 (and 1.0, which has the same elements).
//!
//! Only `trkpt` and `rtept` with `lat`, `lon`, `ele` and `time` are read; everything else is skipped. A document
//! type declaration is refused and entities are never expanded, so nested entities cannot grow.

use crate::course::track::recorded_point::RecordedPoint;
use crate::typed::decimal;
use core::fmt;
use quick_xml::Reader;
use quick_xml::events::{BytesStart, Event};

impl GpxError {
    /// Largest text taken, in bytes: a lap recorded every second is well below one megabyte. Our estimate of what
    /// any lap needs.
    pub const LARGEST_BYTES: usize = 32 << 20;
}

/// Most points taken: a day recorded every second.
const MOST_POINTS: usize = 100_000;

/// The tracks and routes of a file.
#[derive(Debug, Default)]
pub(in crate::course) struct RawFile {
    /// Each track as its segments of points.
    pub(in crate::course) tracks: Vec<Vec<Vec<RecordedPoint>>>,
    /// Each route as its points.
    pub(in crate::course) routes: Vec<Vec<RecordedPoint>>,
    /// Points whose place is missing or not on the globe.
    pub(in crate::course) unusable: usize,
}

/// Why a text does not give a course.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum GpxError {
    /// The text is larger than 32 MB.
    TooLarge,
    /// The text does not begin as a GPX file does.
    NotGpx,
    /// The file declares a document type, which GPX does not have.
    DocumentType,
    /// The file breaks off or is damaged at this line.
    Damaged {
        /// Line, counted from 1.
        line: usize,
    },
    /// There are more than 100,000 points.
    TooManyPoints,
    /// There is no track or route with two different points.
    TooFewPoints,
    /// So few points are left because the others lie off the globe.
    OffTheGlobe {
        /// How many lie off the globe.
        points: usize,
    },
    /// Nothing of the track lies between the places asked for.
    NoPart,
    /// The course is longer than a course may be.
    TooLong,
    /// No usable elevation: gradients cannot be told.
    NoElevation,
}

impl fmt::Display for GpxError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooLarge => write!(f, "the file is larger than {} MB; keep one lap of it", Self::LARGEST_BYTES >> 20),
            Self::NotGpx => f.write_str("this is not a GPX file; export the course as GPX and choose that"),
            Self::DocumentType => {
                f.write_str("the file declares a document type, which GPX does not have; export it again as GPX")
            }
            Self::Damaged { line } => write!(f, "the file is damaged at line {line}; export it again"),
            Self::TooManyPoints => f.write_str("the file has more than 100,000 points; keep one lap of it"),
            Self::TooFewPoints => f.write_str("the file has no track of two different points or more"),
            Self::OffTheGlobe { points } => write!(
                f,
                "{points} {} of the file {} an impossible position (latitude beyond 90° or longitude beyond 180°); export it again",
                if *points == 1 { "point" } else { "points" },
                if *points == 1 { "has" } else { "have" }
            ),
            Self::NoPart => f.write_str("nothing of the track lies between these places; type others, or none"),
            Self::TooLong => f.write_str("the track is longer than 50 km; say from where to where to use it"),
            Self::NoElevation => f.write_str(
                "the track has no elevations, so gradients are unknown; sketch the course in the table instead",
            ),
        }
    }
}

impl core::error::Error for GpxError {}

/// Reads every track and route of `text`.
pub(in crate::course) fn read(text: &str) -> Result<RawFile, GpxError> {
    if text.len() > GpxError::LARGEST_BYTES {
        return Err(GpxError::TooLarge);
    }
    let mut file = Filing::default();
    let mut reader = Reader::from_str(text);
    loop {
        let event = reader.read_event();
        match event {
            Ok(Event::Eof) if file.depth > 0 => return Err(damaged(text, u64::MAX)),
            Ok(Event::Eof) => break,
            Ok(event) => file.take(&event)?,
            Err(_) if !file.is_gpx => return Err(GpxError::NotGpx),
            Err(_) => return Err(damaged(text, reader.error_position())),
        }
    }
    file.finish()
}

fn damaged(text: &str, position: u64) -> GpxError {
    let bytes = text.as_bytes();
    let end = usize::try_from(position).unwrap_or(usize::MAX).min(bytes.len());
    GpxError::Damaged { line: 1 + bytes[..end].iter().filter(|&&byte| byte == b'\n').count() }
}

/// What is being read while events come in.
#[derive(Default)]
struct Filing {
    file: RawFile,
    is_gpx: bool,
    /// Elements that are open.
    depth: usize,
    points: usize,
    point: Option<RecordedPoint>,
    /// Elements that are open around what belongs to the point; extensions hold elements of the same names farther in.
    point_depth: usize,
    field: Option<Field>,
    text: String,
}

#[derive(Clone, Copy, PartialEq)]
enum Field {
    Elevation,
    Time,
}

impl Filing {
    fn take(&mut self, event: &Event<'_>) -> Result<(), GpxError> {
        match event {
            Event::DocType(_) => return Err(GpxError::DocumentType),
            Event::Start(element) => self.open(element)?,
            Event::Empty(element) => {
                self.open(element)?;
                self.close(element.local_name().as_ref())?;
            }
            Event::End(element) => self.close(element.local_name().as_ref())?,
            Event::Text(text) if self.field.is_some() => self.text.push_str(text),
            Event::CData(text) if self.field.is_some() => self.text.push_str(text),
            Event::GeneralRef(reference) if self.field.is_some() => self.text.push(referred(reference)),
            _ => {}
        }
        Ok(())
    }

    fn open(&mut self, element: &BytesStart<'_>) -> Result<(), GpxError> {
        let name = element.local_name();
        self.depth += 1;
        if !self.is_gpx {
            self.is_gpx = name.as_ref() == "gpx";
            return if self.is_gpx { Ok(()) } else { Err(GpxError::NotGpx) };
        }
        match name.as_ref() {
            "trk" => self.file.tracks.push(Vec::new()),
            "trkseg" => self.open_segment(),
            "rte" => self.file.routes.push(Vec::new()),
            "trkpt" | "rtept" => self.open_point(element),
            "ele" if self.is_in_point() => self.field = Some(Field::Elevation),
            "time" if self.is_in_point() => self.field = Some(Field::Time),
            _ => {}
        }
        Ok(())
    }

    fn open_segment(&mut self) {
        if let Some(track) = self.file.tracks.last_mut() {
            track.push(Vec::new());
        }
    }

    fn open_point(&mut self, element: &BytesStart<'_>) {
        self.point = place(element);
        self.point_depth = self.depth;
        self.file.unusable += usize::from(self.point.is_none());
    }

    /// Whether the element just opened stands in a point itself, not in something within it.
    fn is_in_point(&self) -> bool {
        self.point.is_some() && self.depth == self.point_depth + 1
    }

    fn close(&mut self, name: &str) -> Result<(), GpxError> {
        self.depth -= 1;
        match (name, self.field) {
            ("ele", Some(Field::Elevation)) | ("time", Some(Field::Time)) => self.close_field(),
            ("trkpt", _) => self.close_point(true)?,
            ("rtept", _) => self.close_point(false)?,
            _ => {}
        }
        Ok(())
    }

    fn close_field(&mut self) {
        let text = core::mem::take(&mut self.text);
        let field = self.field.take();
        let Some(point) = &mut self.point else { return };
        match field {
            Some(Field::Elevation) => point.elevation = number(&text.replace(',', ".")),
            Some(Field::Time) => point.seconds = seconds(text.trim()),
            None => {}
        }
    }

    fn close_point(&mut self, on_track: bool) -> Result<(), GpxError> {
        self.field = None;
        let Some(point) = self.point.take() else { return Ok(()) };
        self.points += 1;
        if self.points > MOST_POINTS {
            return Err(GpxError::TooManyPoints);
        }
        let list = if on_track {
            self.file.tracks.last_mut().and_then(|track| track.last_mut())
        } else {
            self.file.routes.last_mut()
        };
        if let Some(list) = list {
            list.push(point);
        }
        Ok(())
    }

    fn finish(self) -> Result<RawFile, GpxError> {
        if self.is_gpx { Ok(self.file) } else { Err(GpxError::NotGpx) }
    }
}

/// The character that a reference names by its number, as `#49` or `#x31`; of an entity one that no number has.
fn referred(reference: &str) -> char {
    let code = match reference.strip_prefix("#x") {
        Some(digits) => u32::from_str_radix(digits, 16).ok(),
        None => reference.strip_prefix('#').and_then(|digits| digits.parse().ok()),
    };
    code.and_then(char::from_u32).unwrap_or(char::REPLACEMENT_CHARACTER)
}

/// An attribute with what it refers to.
fn resolved(value: &str) -> String {
    let mut parts = value.split('&');
    let mut text = parts.next().unwrap_or_default().to_owned();
    for part in parts {
        let (reference, rest) = part.split_once(';').unwrap_or((part, ""));
        text.push(referred(reference));
        text.push_str(rest);
    }
    text
}

fn number(text: &str) -> Option<f64> {
    decimal(text.trim()).filter(|value| value.is_finite())
}

fn place(element: &BytesStart<'_>) -> Option<RecordedPoint> {
    let degrees = |name, most: f64| {
        let attribute = element.try_get_attribute(name).ok()??;
        number(&resolved(&attribute.value)).filter(|value| value.abs() <= most)
    };
    Some(RecordedPoint {
        latitude: degrees("lat", 90.0)?,
        longitude: degrees("lon", 180.0)?,
        elevation: None,
        seconds: None,
    })
}

/// Seconds since the year 0 of a date and time such as `2026-01-18T10:30:05.2Z`.
///
/// The zone is ignored: only differences within one file are used, and a file keeps to one zone.
fn seconds(text: &str) -> Option<f64> {
    let (date, clock) = text.split_once('T')?;
    let mut date = date.splitn(3, '-').map(|part| part.parse::<i64>().ok());
    let (year, month, day) = (date.next()??, date.next()??, date.next()??);
    let clock = clock.get(..8).map(|whole| (whole, clock.get(8..).unwrap_or_default()))?;
    let mut parts = clock.0.splitn(3, ':').map(number);
    let (hour, minute, second) = (parts.next()??, parts.next()??, parts.next()??);
    let fraction = clock.1.trim_end_matches(|c: char| c != '.' && !c.is_ascii_digit());
    let fraction = if fraction.starts_with('.') { number(fraction).unwrap_or(0.0) } else { 0.0 };
    let days = days_since_year_0(year, month, day)?;
    Some(days * 86_400.0 + hour * 3600.0 + minute * 60.0 + second + fraction)
}

/// Days from 1 March of the year 0, by the usual count with the year begun in March so that the leap day is last.
fn days_since_year_0(year: i64, month: i64, day: i64) -> Option<f64> {
    if !((0..=9999).contains(&year) && (1..=12).contains(&month) && (1..=31).contains(&day)) {
        return None;
    }
    let (year, month) = if month < 3 { (year - 1, month + 9) } else { (year, month - 3) };
    let days = 365 * year + year.div_euclid(4) - year.div_euclid(100) + year.div_euclid(400);
    let days = days + (153 * month + 2) / 5 + day - 1;
    i32::try_from(days).ok().map(f64::from)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn time_differences_cross_a_leap_day() {
        let before = seconds("2024-02-28T23:59:59Z").unwrap();
        let after = seconds("2024-03-01T00:00:00.500Z").unwrap();
        assert!((after - before - 86_401.5).abs() < 1e-3);
    }

    #[test]
    fn a_broken_time_is_no_time() {
        for text in
            ["", "T", "2024", "2024-02-28", "2024-13-01T00:00:00Z", "2024-02-28Té0:00:00Z", "a-b-cTd:e:f"]
        {
            assert_eq!(seconds(text), None, "{text}");
        }
    }

    #[test]
    fn damage_is_told_by_its_line() {
        let text = "<gpx>\n<trk>\n<trkseg></trk>";
        assert_eq!(read(text).err(), Some(GpxError::Damaged { line: 3 }));
    }

    #[test]
    fn a_file_that_breaks_off_is_damaged_wherever_it_does() {
        let whole = "<gpx><trk><trkseg>\n<trkpt lat='1' lon='1'/>\n<trkpt lat='1' lon='2'></trkpt>\n</trkseg></trk></gpx>\n";
        assert!(read(whole).is_ok());
        let ends: Vec<usize> = whole.match_indices('>').map(|(at, _)| at + 1).collect();
        for end in &ends[..ends.len() - 1] {
            let cut = &whole[..*end];
            let line = 1 + cut.matches('\n').count();
            assert_eq!(read(cut).err(), Some(GpxError::Damaged { line }), "{cut}");
        }
    }

    #[test]
    fn only_what_belongs_to_the_point_itself_is_read() {
        let sensor = "<extensions><s:a xmlns:s='x'><ele>999</ele><s:time>2001-01-01T00:00:00Z</s:time></s:a></extensions>";
        let own = "<ele>31.5</ele><time>2026-01-18T10:30:05Z</time>";
        let alone = point(own);
        assert_eq!(alone.elevation, Some(31.5));
        assert_eq!([point(&format!("{own}{sensor}")), point(&format!("{sensor}{own}"))], [alone; 2]);
    }

    #[test]
    fn an_elevation_may_be_wrapped_or_have_a_decimal_comma() {
        for (text, metres) in [("<![CDATA[10]]>", 10.0), ("10,5", 10.5), (" -3.25 ", -3.25)] {
            assert_eq!(point(&format!("<ele>{text}</ele>")).elevation, Some(metres), "{text}");
        }
    }

    #[test]
    fn characters_may_be_written_by_their_numbers() {
        for text in ["&#49;00", "1&#x30;0", "10&#48;"] {
            assert_eq!(point(&format!("<ele>{text}</ele>")).elevation, Some(100.0), "{text}");
        }
        for text in ["&lt;100", "1&amp;00", "&unknown;100", "&#0;100", "&#xd800;100"] {
            assert_eq!(point(&format!("<ele>{text}</ele>")).elevation, None, "{text}");
        }
        let file = |latitude: &str| {
            read(&format!(
                "<gpx><trk><trkseg><trkpt lat='{latitude}' lon='&#x31;&#46;5'/></trkseg></trk></gpx>"
            ))
        };
        let at = file("&#53;0").unwrap().tracks[0][0][0];
        assert!((at.latitude - 50.0).abs() + (at.longitude - 1.5).abs() < 1e-12, "{at:?}");
        assert_eq!(file("5&unknown;0").unwrap().unusable, 1);
    }

    #[test]
    fn what_else_a_point_says_is_no_part_of_its_elevation() {
        for name in ["12", "<![CDATA[12]]>", "<![CDATA[x]]>"] {
            assert_eq!(point(&format!("<name>{name}</name><ele>10</ele>")).elevation, Some(10.0), "{name}");
        }
    }

    fn point(inside: &str) -> RecordedPoint {
        let text = format!("<gpx><trk><trkseg><trkpt lat='1' lon='1'>{inside}</trkpt></trkseg></trk></gpx>");
        read(&text).unwrap().tracks[0][0][0]
    }

    /// Day numbers as astronomers count them: JD 2 299 160.5, 2 400 000.5, 2 440 587.5 and 2 451 544.5.
    #[test]
    fn days_are_counted_as_julian_days_are() {
        let days = |date: &str| seconds(&format!("{date}T00:00:00Z")).unwrap() / 86_400.0;
        let first = days("1582-10-15");
        for (date, julian) in
            [("1858-11-17", 2_400_000.5), ("1970-01-01", 2_440_587.5), ("2000-01-01", 2_451_544.5)]
        {
            assert!((days(date) - first - (julian - 2_299_160.5)).abs() < 1e-6, "{date}");
        }
        let lengths = [31.0, 28.0, 31.0, 30.0, 31.0, 30.0, 31.0, 31.0, 30.0, 31.0, 30.0, 31.0];
        for (month, length) in (1..).zip(lengths) {
            let next =
                if month == 12 { days("2024-01-01") } else { days(&format!("2023-{:02}-01", month + 1)) };
            assert!((next - days(&format!("2023-{month:02}-01")) - length).abs() < 1e-6, "{month}");
        }
    }

    #[test]
    fn as_many_points_as_are_allowed_are_read() {
        let file = |count: usize| {
            let points = "<trkpt lat='1' lon='1'/>".repeat(count);
            read(&format!("<gpx><trk><trkseg>{points}</trkseg></trk></gpx>"))
                .map(|file| file.tracks[0][0].len())
        };
        assert_eq!(file(MOST_POINTS), Ok(MOST_POINTS));
        assert_eq!(file(MOST_POINTS + 1), Err(GpxError::TooManyPoints));
    }

    #[test]
    fn what_breaks_before_it_is_gpx_is_none() {
        for text in ["<", "<<gpx>", "</gpx>", "text <a"] {
            assert_eq!(read(text).err(), Some(GpxError::NotGpx), "{text}");
        }
    }
}
