//! The reader against lines of the trade and lines of our own.

mod any_text;
mod cases;
mod kinds;

use super::*;

/// The small nursery that the lines speak of.
struct World;

const SPECIES: &[(&str, &[&str])] = &[
    ("Coffea arabica", &["coffee", "arabica coffee", "café", "cafe", "cafeto", "coffea arabica"]),
    ("Swietenia macrophylla", &["mahogany", "caoba", "big-leaf mahogany"]),
    ("Gliricidia sepium", &["gliricidia", "madero negro", "mata ratón", "madreado"]),
    ("Persea americana", &["avocado", "aguacate", "palto", "palta"]),
    ("Manihot esculenta", &["cassava", "yuca", "manioc"]),
    ("Musa AAB", &["plantain", "plátano", "platano"]),
    ("Musa AAA", &["banana", "guineo", "banano"]),
    ("Cajanus cajan", &["pigeon pea", "gandul"]),
    ("Zea mays", &["maize", "maíz", "maiz", "corn"]),
    ("Theobroma cacao", &["cacao", "cocoa"]),
];

impl Names for World {
    fn all(&self) -> Vec<(NameOf, String)> {
        let named = [
            (NameOf::Place, &["Bench 1", "Bench 2", "Frame B", "Line", "Mesa 4", "Vivero chico"][..]),
            (NameOf::Container, &["1 l bag", "2 l bag", "bolsa 1 l", "flat"]),
            (NameOf::Bed, &["Upper", "Ridge 2", "B3", "Parcela Alta"]),
            (NameOf::Lot, &["K1", "K2"]),
            (NameOf::Tray, &["k1", "k2", "ca-7", "g1", "s1", "ag3"]),
        ];
        named.iter().flat_map(|(of, names)| names.iter().map(|name| (*of, name.to_string()))).collect()
    }
    fn species_called(&self, name: &str) -> Vec<String> {
        SPECIES.iter().filter(|(_, names)| names.contains(&name)).map(|(key, _)| key.to_string()).collect()
    }
    fn species_near(&self, _: &str) -> Vec<String> {
        Vec::new()
    }
    fn species_like(&self, _: &str) -> Vec<String> {
        Vec::new()
    }
    fn species_of(&self, name_of: NameOf, name: &str) -> Option<String> {
        let key = match (name_of, name) {
            (NameOf::Tray, "k1" | "k2" | "s1") | (NameOf::Lot, "K1") => "Coffea arabica",
            (NameOf::Tray, "ca-7") | (NameOf::Lot, "K2") => "Swietenia macrophylla",
            (NameOf::Tray, "g1") => "Gliricidia sepium",
            (NameOf::Tray, "ag3") => "Persea americana",
            _ => return None,
        };
        Some(key.to_string())
    }
    fn standing(&self, tray: &str) -> Option<u32> {
        let all = [("k1", 52), ("k2", 38), ("ca-7", 30), ("g1", 64), ("s1", 120), ("ag3", 25)];
        all.iter().find(|(name, _)| *name == tray).map(|(_, standing)| *standing)
    }
    fn seeds(&self, lot: &str) -> Option<u32> {
        [("K1", 900), ("K2", 400)].iter().find(|(name, _)| *name == lot).map(|(_, seeds)| *seeds)
    }
    fn nurses_in(&self, _: &str) -> Vec<String> {
        ["Musa AAB", "Musa AAA", "Manihot esculenta", "Cajanus cajan", "Gliricidia sepium"].map(str::to_string).to_vec()
    }
    fn plants_in(&self, _: &str) -> Vec<String> {
        ["Coffea arabica", "Swietenia macrophylla", "Persea americana"].map(str::to_string).to_vec()
    }
    fn places_in(&self, _: &str) -> Option<u32> {
        None
    }
    fn is_planted(&self, _: &str) -> bool {
        true
    }
    fn is_seedbed(&self, tray: &str) -> bool {
        tray == "s1"
    }
}

fn today() -> Day {
    Day::from_ymd(2026, 6, 17).unwrap()
}

/// Another small nursery: that of the review's examples.
struct Other;

impl Names for Other {
    fn all(&self) -> Vec<(NameOf, String)> {
        let named = [
            (NameOf::Place, &["Bench 1", "Bench 3", "Bench 4", "Mesa 3"][..]),
            (NameOf::Container, &["c60", "c70", "2 l bag"]),
            (NameOf::Bed, &["A1", "B1", "Ridge 1", "La Loma", "El Naranjo"]),
            (NameOf::Lot, &["cac-L1"]),
            (NameOf::Tray, &["c1", "c2", "c3", "c6", "av1", "b1"]),
        ];
        named.iter().flat_map(|(of, names)| names.iter().map(|name| (*of, name.to_string()))).collect()
    }
    fn species_called(&self, name: &str) -> Vec<String> {
        World.species_called(name)
    }
    fn species_near(&self, _: &str) -> Vec<String> {
        Vec::new()
    }
    fn species_like(&self, _: &str) -> Vec<String> {
        Vec::new()
    }
    fn species_of(&self, name_of: NameOf, name: &str) -> Option<String> {
        let key = match (name_of, name) {
            (NameOf::Tray, "av1") => "Persea americana",
            _ => "Theobroma cacao",
        };
        Some(key.to_string())
    }
    fn standing(&self, _: &str) -> Option<u32> {
        Some(46)
    }
    fn seeds(&self, _: &str) -> Option<u32> {
        Some(500)
    }
    fn nurses_in(&self, bed: &str) -> Vec<String> {
        World.nurses_in(bed)
    }
    fn plants_in(&self, bed: &str) -> Vec<String> {
        World.plants_in(bed)
    }
    fn places_in(&self, _: &str) -> Option<u32> {
        Some(33)
    }
    fn is_planted(&self, bed: &str) -> bool {
        bed == "B1"
    }
    fn is_seedbed(&self, _: &str) -> bool {
        false
    }
}

fn shown(reading: &Reading) -> String {
    match reading {
        Reading::Clear(drafts) => drafts
            .iter()
            .map(|d| format!("{} {} {:?}", d.kind, Value::from(d.fields.clone()), d.happened.map(written)))
            .collect::<Vec<_>>()
            .join(" + "),
        Reading::Asks { why, offers } => {
            format!("asks {why:?} {:?}", offers.iter().flatten().map(|one| (one.kind, &one.fields)).collect::<Vec<_>>())
        }
        Reading::Refused { why, offers } => {
            format!(
                "refused {why:?} {:?}",
                offers.iter().flatten().map(|one| (one.kind, &one.fields)).collect::<Vec<_>>()
            )
        }
    }
}
