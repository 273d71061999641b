//! How a tray grows, for people.

use crate::cli::why_text::WhyPage;
use crate::reckon::growth::{Coming, TrayGrowth};
use crate::wording::Wording;
use crate::wording::page::GrowthOf;

/// The lines of growth; nothing where nothing is asked of the plants and nobody measured.
pub(in crate::cli) fn growth_lines(page: &mut WhyPage<'_>, growth: &TrayGrowth, wording: &Wording) {
    let of = [(GrowthOf::Height, growth.height), (GrowthOf::Collar, growth.collar)];
    let of: Vec<_> = of.into_iter().filter_map(|(of, grows)| Some((of, grows?))).collect();
    if of.is_empty() && growth.sample.is_none() {
        return;
    }
    page.sheet.heading(&wording.growth_heading());
    for (of, grows) in &of {
        let label = match of {
            GrowthOf::Height => wording.growth_label_height(),
            GrowthOf::Collar => wording.growth_label_collar(),
        };
        page.labelled(&label, &wording.growth_coming(*of, grows, growth));
    }
    if let Some(lanky) = &growth.lanky {
        page.labelled(&wording.growth_label_lanky(), &wording.growth_lanky(lanky));
    }
    if let Some(known) = &growth.sample {
        page.labelled(&wording.growth_label_sample(), &wording.growth_sample_known(known));
    }
    let curve = of.iter().find_map(|(of, grows)| match grows.coming {
        Coming::Expected(reach) => Some(wording.growth_curve(*of, &reach.curve)),
        Coming::There { .. } | Coming::Unknown(_) => None,
    });
    if let Some(curve) = curve {
        page.labelled(&wording.growth_label_formula(), &wording.growth_formula(curve));
    }
    if growth.samples > 0 {
        page.labelled(&wording.label_source(), &wording.growth_source());
    }
}
