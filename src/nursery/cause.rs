//! Causes of loss and of throwing out that have a name in both languages: a cause is written in a person's own words, and
//! where these are one of ours it is said in the language of who reads it.

use crate::words;

words! {
    /// Why plants are lost or thrown out. Its words are `cause_...` in `wording`.
    Cause {
        /// Sickness at the foot of the stem of a young seedling.
        DampingOff: "damping_off";
        /// No water.
        Drought: "drought";
        /// Rats and mice.
        Rats: "rats";
        /// Insects, whichever.
        Insects: "insects";
        /// Snails and slugs.
        Snails: "snails";
        /// Broken off.
        Broken: "broken";
        /// The stem was broken.
        StemBroken: "stem_broken";
        /// Found dead at a count.
        FoundDead: "found_dead";
        /// Carried off by water.
        WashedOut: "washed_out";
        /// Ants that cut leaves.
        Ants: "ants";
        /// Grasshoppers.
        Grasshoppers: "grasshoppers";
        /// Cutworm.
        Cutworm: "cutworm";
        /// Weevil.
        Weevil: "weevil";
        /// Birds.
        Birds: "birds";
        /// Goats.
        Goats: "goats";
        /// Cattle.
        Cattle: "cattle";
        /// Wind.
        Wind: "wind";
        /// Flood.
        Flood: "flood";
        /// Wilted.
        Wilted: "wilted";
        /// Dried out.
        DriedOut: "dried_out";
        /// Too small to go on.
        TooSmall: "too_small";
        /// Two stems.
        Forked: "forked";
        /// Bent roots.
        BentRoots: "bent_roots";
        /// Thinned.
        Thinned: "thinned";
    }
}

impl Cause {
    /// Causes of loss to begin with, before the nursery has its own (common practice; FAO 1989 names them for tropical
    /// nurseries, from memory).
    pub(crate) const FIRST_LOSSES: [Cause; 6] =
        [Cause::DampingOff, Cause::Drought, Cause::Rats, Cause::Insects, Cause::Snails, Cause::Broken];
    /// Reasons of throwing out to begin with (common practice).
    pub(crate) const FIRST_CULLS: [Cause; 4] = [Cause::TooSmall, Cause::Forked, Cause::BentRoots, Cause::Thinned];
}
