//! Published constants of seed viability, by scientific name.
//!
//! From the compilation of 164 records in an open data set of an R package for seed viability, which names the original
//! papers: SEEN there, the papers themselves not read. Species that are not here have no constants: do not borrow those of a
//! relative, use the days their seed is known to last.

use super::viability::ViabilityConstants;

/// One record.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct ViabilityRecord {
    /// Scientific name.
    pub species: &'static str,
    /// Its constants.
    pub constants: ViabilityConstants,
    /// The paper they come from.
    pub source: &'static str,
}

const fn record(species: &'static str, constants: [f64; 4], source: &'static str) -> ViabilityRecord {
    let [ke, cw, ch, cq] = constants;
    ViabilityRecord { species, constants: ViabilityConstants { ke, cw, ch, cq }, source }
}

/// The records of trees and of crops that nurse them, as far as they are known here.
pub(crate) const VIABILITY_RECORDS: [ViabilityRecord; 14] = [
    record("Arachis hypogaea", [6.718, 4.089, 0.0329, 0.000478], "record of the data set, paper not noted here"),
    record("Araucaria cunninghamii", [7.49, 3.73, 0.033, 0.000478], "Tompsett 1992"),
    record("Cedrela odorata", [6.9, 3.8, 0.0291, 0.000468], "Lima et al. 2005"),
    record("Dalbergia nigra", [5.199, 4.524, 0.08175, 0.001641], "Chaves & Usberti 2004"),
    record("Glycine max", [7.525, 4.086, 0.0329, 0.000478], "Ellis et al. 1982; Dickie et al. 1990"),
    record("Hordeum vulgare", [9.144, 5.342, 0.0329, 0.000478], "Ellis & Roberts 1980; Dickie et al. 1990"),
    record("Khaya senegalensis", [4.76, 2.15, 0.033, 0.000478], "Tompsett 1992"),
    record("Oryza sativa", [8.242, 4.345, 0.0307, 0.000501], "Ellis et al. 2007"),
    record("Swietenia humilis", [5.393, 2.391, 0.0329, 0.000478], "Dickie et al. 1990"),
    record("Tabebuia alba", [6.1, 3.46, 0.0291, 0.000468], "Lima et al. 2005"),
    record("Terminalia brassii", [5.016, 2.161, 0.0329, 0.000478], "Tompsett 1986, 1992"),
    record("Vigna radiata", [10.858, 6.27, 0.0329, 0.000478], "Ellis et al. 1989"),
    record("Vigna unguiculata", [9.401, 5.118, 0.0329, 0.000478], "Ellis et al. 1982; Dickie et al. 1990"),
    record("Zea mays", [8.579, 4.91, 0.0329, 0.000478], "Hong et al. 1996"),
];

/// The record of a scientific name, letters large or small.
pub fn viability_record(species: &str) -> Option<&'static ViabilityRecord> {
    let asked = species.trim();
    VIABILITY_RECORDS.iter().find(|record| record.species.eq_ignore_ascii_case(asked))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_is_found_however_it_is_written_and_no_relative_is_borrowed() {
        assert_eq!(viability_record(" cedrela ODORATA ").map(|record| record.source), Some("Lima et al. 2005"));
        assert_eq!(viability_record("Cedrela fissilis"), None);
        assert_eq!(viability_record("Coffea arabica"), None);
    }

    #[test]
    fn names_stand_in_order_and_once() {
        assert!(VIABILITY_RECORDS.windows(2).all(|pair| pair[0].species < pair[1].species));
    }
}
