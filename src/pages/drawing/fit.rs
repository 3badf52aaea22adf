//! How a drawing is fitted into its frame: the scale, and where on the page it lies.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    reason = "places on a page are in points"
)]

use crate::pages::drawing::view::{OnSite, Scale, Turned, View, scales, smallest};
use crate::pages::page::Point;
use crate::units::length::Length;

/// The rectangle a drawing may use.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Frame {
    pub(crate) left_top: Point,
    pub(crate) width_pt: f64,
    pub(crate) height_pt: f64,
    /// The largest scale allowed, in points per foot; infinite if the largest one that fits is wanted.
    pub(crate) most_pt_per_ft: f64,
    /// Whether the scale is one of a metric ruler.
    pub(crate) in_meters: bool,
    /// Whether the street and the scale stand below the drawing, and not below several together.
    pub(crate) has_strip: bool,
}

impl Frame {
    pub(crate) const fn new(left_top: Point, width_pt: f64, height_pt: f64) -> Frame {
        let most_pt_per_ft = f64::INFINITY;
        Frame { left_top, width_pt, height_pt, most_pt_per_ft, in_meters: false, has_strip: true }
    }

    /// The same rectangle for a drawing at a scale of a metric ruler, or of an architect's.
    pub(crate) const fn in_meters(self, in_meters: bool) -> Frame {
        Frame { in_meters, ..self }
    }
}

/// The margin for labels around the outline, in points.
pub(crate) const MARGIN_PT: f64 = 27.0;
/// How much smaller the margin above and below may be if that allows a larger scale.
const TIGHTER_PT: f64 = 7.0;
/// The height below for the street, the scale bar and the scale.
pub(crate) const STRIP_PT: f64 = 32.0;

/// The range of a drawing in nanometers, to the right and up.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Reach {
    low: OnSite,
    high: OnSite,
}

impl Reach {
    pub(crate) fn of(points: impl IntoIterator<Item = OnSite>, turned: Turned) -> Reach {
        let empty = Reach { low: (i64::MAX, i64::MAX), high: (i64::MIN, i64::MIN) };
        let reach =
            points.into_iter().map(|point| turned.of(point)).fold(empty, |reach, point| Reach {
                low: (reach.low.0.min(point.0), reach.low.1.min(point.1)),
                high: (reach.high.0.max(point.0), reach.high.1.max(point.1)),
            });
        if reach.low.0 > reach.high.0 { Reach { low: (0, 0), high: (0, 0) } } else { reach }
    }

    pub(crate) fn size_pt(&self, scale: Scale) -> (f64, f64) {
        let points =
            |low: i64, high: i64| (high - low) as f64 / Length::FOOT.nm() as f64 * scale.pt_per_ft;
        (points(self.low.0, self.high.0), points(self.low.1, self.high.1))
    }
}

/// The view of a range in a frame, at a scale that fits, skipping the `fitting.skip` largest; and its height.
pub(crate) fn fitted(
    reach: &Reach,
    turned: Turned,
    frame: &Frame,
    margin_pt: f64,
    fitting: Fitting,
) -> (View, f64) {
    let fits = |scale: &&Scale| fits(reach, frame, **scale, margin_pt);
    let last = smallest(frame.in_meters);
    let all = scales(frame.in_meters).iter();
    let scale = all.filter(fits).nth(fitting.skip).copied().unwrap_or(last);
    placed(reach, turned, frame, scale, margin_pt, fitting)
}

fn fits(reach: &Reach, frame: &Frame, scale: Scale, margin_pt: f64) -> bool {
    let (width, height) = reach.size_pt(scale);
    scale.pt_per_ft <= frame.most_pt_per_ft
        && width + 2.0 * margin_pt <= frame.width_pt
        && height + 2.0 * (margin_pt - TIGHTER_PT) + STRIP_PT <= frame.height_pt
}

/// Whether a range with its labels fits a frame at a scale.
pub(crate) fn fits_at(reach: &Reach, frame: &Frame, scale: Scale) -> bool {
    fits(reach, frame, scale, MARGIN_PT)
}

/// The view of a range in a frame at a given scale, and its height.
pub(crate) fn fitted_at(
    reach: &Reach,
    turned: Turned,
    frame: &Frame,
    scale: Scale,
    fitting: Fitting,
) -> (View, f64) {
    placed(reach, turned, frame, scale, MARGIN_PT, fitting)
}

fn placed(
    reach: &Reach,
    turned: Turned,
    frame: &Frame,
    scale: Scale,
    margin_pt: f64,
    fitting: Fitting,
) -> (View, f64) {
    let (width, height) = reach.size_pt(scale);
    // More space above and below if available, but no more than labels can use.
    let spare = (frame.height_pt - STRIP_PT - height) / 2.0;
    let above = spare.clamp(margin_pt.min(spare), fitting.airy * margin_pt);
    let left = frame.left_top.x_pt + (frame.width_pt - width) / 2.0;
    let mut view = View { turned, scale, origin: Point::default() };
    let (low_right, high_up) = (view.points(reach.low.0), view.points(reach.high.1));
    view.origin = Point::new(left - low_right, frame.left_top.y_pt + above + high_up);
    (view, height + 2.0 * above)
}

/// How a drawing is fitted into its frame.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Fitting {
    /// How many of the largest scales to skip.
    pub(crate) skip: usize,
    /// The most space above and below the drawing, as a multiple of the margin.
    pub(crate) airy: f64,
    /// Names that do not fit inside are placed after the dimensions.
    pub(crate) names_last: bool,
    /// Each length takes the least room.
    pub(crate) is_crowded: bool,
}

impl Default for Fitting {
    fn default() -> Fitting {
        Fitting { skip: 0, airy: 1.5, names_last: true, is_crowded: false }
    }
}
