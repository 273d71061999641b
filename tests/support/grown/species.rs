//! The trees of the invented nursery. Days of emergence and of readiness follow the built-in profiles; everything else
//! is invented.

/// How seed of a lot is told.
pub enum Told {
    Seeds,
    /// By weight, with seeds in a kilogram.
    Weight(u32),
    /// By fruits, with seeds in one.
    Fruits(u32),
}

pub struct Tree {
    /// Its key in the catalogue.
    pub key: &'static str,
    /// What codes of its trays and lots begin with.
    pub code: &'static str,
    /// First, half and last day of emergence.
    pub emerges: (f64, f64, f64),
    pub germinates: f64,
    /// Days from sowing to the first plants out.
    pub ready_days: f64,
    /// Sown in a seedbed and pricked out, or where it stays.
    pub seedbed: bool,
    /// Seeds of a sowing, least and most.
    pub seeds: (i32, i32),
    pub container: &'static str,
    pub height_cm: f64,
    pub collar_mm: f64,
    pub leaf_pairs: i32,
    /// Where trays stand, from the pricking out to the last days.
    pub path: [&'static str; 4],
    pub told: Told,
    pub kept: &'static str,
    /// Days after which a lot is sown no more.
    pub store_days: i32,
    /// Days of a germination test.
    pub test_days: i32,
    pub source: &'static str,
    /// Share of the sowings.
    pub weight: f64,
}

const SHADE: [&str; 4] = ["shade house", "bench 1", "bench 3", "line 1"];
const HALF: [&str; 4] = ["bench 2", "bench 3", "line 1", "line 2"];
const SUN: [&str; 4] = ["bench 1", "line 1", "line 2", "open rack"];

pub const COFFEE: usize = 0;
pub const AVOCADO: usize = 1;
pub const GREVILLEA: usize = 2;
pub const CORDIA: usize = 3;
pub const JACKFRUIT: usize = 4;
pub const GLIRICIDIA: usize = 5;

pub const TREES: [Tree; 6] = [
    Tree {
        key: "COA",
        code: "cof",
        emerges: (40.0, 55.0, 90.0),
        germinates: 0.8,
        ready_days: 260.0,
        seedbed: true,
        seeds: (140, 240),
        container: "bag 1 l",
        height_cm: 27.0,
        collar_mm: 4.8,
        leaf_pairs: 7,
        path: SHADE,
        told: Told::Seeds,
        kept: "in_parchment",
        store_days: 90,
        test_days: 66,
        source: "old trees behind the dispensary",
        weight: 0.34,
    },
    Tree {
        key: "AVO",
        code: "avo",
        emerges: (21.0, 38.0, 75.0),
        germinates: 0.85,
        ready_days: 220.0,
        seedbed: false,
        seeds: (20, 45),
        container: "bag 5 l",
        height_cm: 45.0,
        collar_mm: 9.5,
        leaf_pairs: 9,
        path: HALF,
        told: Told::Fruits(1),
        kept: "washed_moist",
        store_days: 18,
        test_days: 50,
        source: "Mama Wema's tree by the bridge",
        weight: 0.2,
    },
    Tree {
        key: "GRE",
        code: "gre",
        emerges: (12.0, 20.0, 40.0),
        germinates: 0.6,
        ready_days: 160.0,
        seedbed: true,
        seeds: (180, 280),
        container: "bag 500",
        height_cm: 30.0,
        collar_mm: 5.0,
        leaf_pairs: 8,
        path: SUN,
        told: Told::Weight(100_000),
        kept: "dry_sealed",
        store_days: 120,
        test_days: 28,
        source: "boundary rows of the upper school",
        weight: 0.16,
    },
    Tree {
        key: "COD",
        code: "cod",
        emerges: (6.0, 15.0, 30.0),
        germinates: 0.6,
        ready_days: 145.0,
        seedbed: true,
        seeds: (120, 200),
        container: "bag 500",
        height_cm: 30.0,
        collar_mm: 6.0,
        leaf_pairs: 6,
        path: HALF,
        told: Told::Weight(40_000),
        kept: "dry_open",
        store_days: 45,
        test_days: 21,
        source: "three trees at the mill",
        weight: 0.14,
    },
    Tree {
        key: "JAC",
        code: "jac",
        emerges: (14.0, 28.0, 56.0),
        germinates: 0.85,
        ready_days: 140.0,
        seedbed: false,
        seeds: (20, 40),
        container: "bag 2 l",
        height_cm: 42.0,
        collar_mm: 7.5,
        leaf_pairs: 6,
        path: SHADE,
        told: Told::Fruits(22),
        kept: "washed_moist",
        store_days: 14,
        test_days: 35,
        source: "two fruits from the market at Mlangoni",
        weight: 0.08,
    },
    Tree {
        key: "GLI",
        code: "gli",
        emerges: (4.0, 8.0, 15.0),
        germinates: 0.85,
        ready_days: 84.0,
        seedbed: false,
        seeds: (40, 80),
        container: "tube 400",
        height_cm: 32.0,
        collar_mm: 7.0,
        leaf_pairs: 6,
        path: SUN,
        told: Told::Seeds,
        kept: "dry_open",
        store_days: 240,
        test_days: 14,
        source: "live fence at the spring",
        weight: 0.08,
    },
];

/// A nurse plant: key, and metres between rows and in the row.
pub const NURSES: [(&str, f64, f64); 3] = [("PIG", 2.0, 1.5), ("CTR", 4.0, 4.0), ("BAN", 5.0, 5.0)];
