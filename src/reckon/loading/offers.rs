//! The trays as they stand before the beds: those that fit one, and for each other one the bed it misses least.

use std::collections::BTreeSet;
use std::sync::Arc;

use crate::base::{Day, TrayCode};
use crate::reckon::picture::{Pair, Picture, TrayPicture};

/// A tray and where it could go.
#[derive(Clone, Debug)]
pub(crate) enum Offer {
    /// It fits a bed today.
    Fits(Arc<TrayPicture>, Pair),
    /// It fits none; the bed it misses least.
    Misses(Arc<TrayPicture>, Pair),
    /// No bed plans its species.
    NoBed(Arc<TrayPicture>),
}

impl Offer {
    /// The tray.
    pub(crate) fn tray(&self) -> &Arc<TrayPicture> {
        match self {
            Offer::Fits(tray, _) | Offer::Misses(tray, _) | Offer::NoBed(tray) => tray,
        }
    }

    /// The pair, where a bed plans the species.
    pub(crate) fn pair(&self) -> Option<&Pair> {
        match self {
            Offer::Fits(_, pair) | Offer::Misses(_, pair) => Some(pair),
            Offer::NoBed(_) => None,
        }
    }
}

/// Every tray with living plants: first each pair that fits, the tray that can wait least first; then the others, those
/// that miss least first.
pub(crate) fn offers(picture: &Picture) -> Vec<Offer> {
    let mut fits: Vec<(Arc<TrayPicture>, Pair)> = Vec::new();
    for pair in picture.pairs.iter().filter(|pair| pair.fits && pair.plants > 0) {
        if let Some(tray) = picture.trays.get(pair.tray()) {
            fits.push((tray.clone(), pair.clone()));
        }
    }
    // What has a pest never goes before what is healthy.
    let can_wait = |tray: &TrayPicture| (tray.has_pest(), tray.best_before.unwrap_or(Day::from_number(i32::MAX)));
    fits.sort_by(|(a, _), (b, _)| (can_wait(a), &a.code).cmp(&(can_wait(b), &b.code)));
    let fitting: BTreeSet<&TrayCode> = fits.iter().map(|(tray, _)| &tray.code).collect();
    let others = picture.trays.values().filter(|tray| tray.standing > 0 && !fitting.contains(&tray.code));
    let mut rest: Vec<Offer> = others
        .map(|tray| match picture.pairs.nearest(&tray.code) {
            Some(pair) => Offer::Misses(tray.clone(), pair.clone()),
            None => Offer::NoBed(tray.clone()),
        })
        .collect();
    let last = |offer: &Offer| offer.pair().is_none();
    rest.sort_by_key(|offer| (last(offer), offer.pair().map(Pair::missed), offer.tray().code.clone()));
    fits.into_iter().map(|(tray, pair)| Offer::Fits(tray, pair)).chain(rest).collect()
}
