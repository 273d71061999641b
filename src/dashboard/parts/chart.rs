//! A chart of points, curves and a band, drawn in whole cells: any terminal and any font shows it.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;
use ratatui::style::Style;

use crate::base::columns::width_of;
use crate::dashboard::look::Ink;

/// Points to draw with one mark, in the order they are laid over each other.
#[derive(Clone, Debug)]
pub(crate) struct Curve {
    /// The points, x and y.
    pub(crate) points: Vec<(f64, f64)>,
    /// The mark.
    pub(crate) mark: &'static str,
    /// Its ink.
    pub(crate) ink: Ink,
    /// Whether the points are joined.
    pub(crate) joined: bool,
}

/// A chart with its axes named at their ends.
#[derive(Clone, Debug)]
pub(crate) struct Chart {
    /// Least and most of x, with the words for both.
    pub(crate) x: (f64, f64),
    /// Words under both ends of x.
    pub(crate) x_ends: (String, String),
    /// Least and most of y.
    pub(crate) y: (f64, f64),
    /// Words beside both ends of y, the least first.
    pub(crate) y_ends: (String, String),
    /// A band of y to be shown behind, where there is one.
    pub(crate) band: Option<(f64, f64)>,
    /// What is drawn.
    pub(crate) curves: Vec<Curve>,
}

impl Chart {
    /// Draws it; too small an area is left empty.
    pub(crate) fn draw(&self, area: Rect, buffer: &mut Buffer) {
        let label = width_of(&self.y_ends.0).max(width_of(&self.y_ends.1)) as u16;
        if area.height < 4 || area.width < label + 8 {
            return;
        }
        let plot = Rect { x: area.x + label + 1, y: area.y, width: area.width - label - 1, height: area.height - 1 };
        let right = |text: &str, y: u16, buffer: &mut Buffer| {
            let indent = label - width_of(text) as u16;
            buffer.set_string(area.x + indent, y, text, Style::new());
        };
        right(&self.y_ends.1, plot.y, buffer);
        right(&self.y_ends.0, plot.bottom() - 1, buffer);
        buffer.set_stringn(plot.x, plot.bottom(), &self.x_ends.0, usize::from(plot.width), Style::new());
        let end = width_of(&self.x_ends.1) as u16;
        if end + width_of(&self.x_ends.0) as u16 + 1 < plot.width {
            buffer.set_string(plot.right() - end, plot.bottom(), &self.x_ends.1, Style::new());
        }
        self.draw_band(plot, buffer);
        for curve in &self.curves {
            self.draw_curve(curve, plot, buffer);
        }
    }

    fn draw_band(&self, plot: Rect, buffer: &mut Buffer) {
        let Some((low, high)) = self.band else { return };
        for y in plot.y..plot.bottom() {
            let value = self.value_of(y, plot);
            if value >= low && value <= high {
                for x in (plot.x..plot.right()).step_by(2) {
                    buffer.set_string(x, y, "·", Style::new());
                }
            }
        }
    }

    fn draw_curve(&self, curve: &Curve, plot: Rect, buffer: &mut Buffer) {
        if curve.joined {
            for pair in curve.points.windows(2) {
                let steps = i32::from(plot.width);
                for step in 0..=steps {
                    let share = f64::from(step) / f64::from(steps);
                    let x = pair[0].0 + (pair[1].0 - pair[0].0) * share;
                    let y = pair[0].1 + (pair[1].1 - pair[0].1) * share;
                    self.draw_point((x, y), curve, plot, buffer);
                }
            }
        }
        for point in &curve.points {
            self.draw_point(*point, curve, plot, buffer);
        }
    }

    fn draw_point(&self, (x, y): (f64, f64), curve: &Curve, plot: Rect, buffer: &mut Buffer) {
        let (Some(across), Some(up)) = (share_of(x, self.x), share_of(y, self.y)) else { return };
        let column = plot.x + (across * f64::from(plot.width - 1)).round() as u16;
        let row = plot.bottom() - 1 - (up * f64::from(plot.height - 1)).round() as u16;
        buffer.set_string(column, row, curve.mark, curve.ink.style());
    }

    fn value_of(&self, row: u16, plot: Rect) -> f64 {
        let up = f64::from(plot.bottom() - 1 - row) / f64::from((plot.height - 1).max(1));
        self.y.0 + (self.y.1 - self.y.0) * up
    }
}

/// Where a value lies between two ends; none outside them.
fn share_of(value: f64, (low, high): (f64, f64)) -> Option<f64> {
    let share = if high > low { (value - low) / (high - low) } else { 0.5 };
    (share.is_finite() && (-1e-9..=1.0 + 1e-9).contains(&share)).then(|| share.clamp(0.0, 1.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn points_land_at_the_ends_and_nothing_outside() {
        let area = Rect::new(0, 0, 20, 6);
        let mut buffer = Buffer::empty(area);
        let points = vec![(0.0, 0.0), (10.0, 50.0), (20.0, 9.0), (f64::NAN, 1.0)];
        let curve = Curve { points, mark: "o", ink: Ink::Plain, joined: false };
        let ends = |low: &str, high: &str| (low.to_string(), high.to_string());
        let chart = Chart {
            x: (0.0, 10.0),
            x_ends: ends("day 0", "day 10"),
            y: (0.0, 50.0),
            y_ends: ends("0", "50"),
            band: Some((20.0, 30.0)),
            curves: vec![curve],
        };
        chart.draw(area, &mut buffer);
        assert_eq!(buffer.cell((3, 4)).unwrap().symbol(), "o");
        assert_eq!(buffer.cell((19, 0)).unwrap().symbol(), "o");
        let drawn = buffer.content.iter().filter(|cell| cell.symbol() == "o").count();
        assert_eq!(drawn, 2);
    }
}
