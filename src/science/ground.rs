//! Metres on the ground as degrees of longitude and latitude, near a point.
//!
//! Radii of curvature of the WGS 84 ellipsoid (NIMA TR8350.2, 2000: a = 6,378,137 m, 1/f = 298.257223563); over the length
//! of a bed the ground is taken as flat.

/// Half the great axis, m.
const A_M: f64 = 6_378_137.0;
/// Flattening.
const F: f64 = 1.0 / 298.257_223_563;
/// Nearer to a pole than this a metre to the east is no angle any more, degrees. Ours.
const FARTHEST_DEG: f64 = 89.0;

/// Longitude and latitude, degrees, of a spot so many metres east and north of a point of latitude and longitude; none next
/// to the poles.
pub(crate) fn degrees_of([east_m, north_m]: [f64; 2], (lat_deg, lon_deg): (f64, f64)) -> Option<[f64; 2]> {
    let [across_m, along_m] = per_radian(lat_deg)?;
    Some([lon_deg + (east_m / across_m).to_degrees(), lat_deg + (north_m / along_m).to_degrees()])
}

/// How many metres east and north of a point of latitude and longitude another lies that is no more than some kilometres off;
/// none next to the poles.
pub(crate) fn metres_of((lat_deg, lon_deg): (f64, f64), from: (f64, f64)) -> Option<[f64; 2]> {
    let [across_m, along_m] = per_radian(from.0)?;
    let east_deg = (lon_deg - from.1 + 180.0).rem_euclid(360.0) - 180.0;
    Some([east_deg.to_radians() * across_m, (lat_deg - from.0).to_radians() * along_m])
}

/// Metres of a radian to the east and to the north.
fn per_radian(lat_deg: f64) -> Option<[f64; 2]> {
    if lat_deg.is_nan() || lat_deg.abs() > FARTHEST_DEG {
        return None;
    }
    let eccentric2 = F * (2.0 - F);
    let (sin, cos) = lat_deg.to_radians().sin_cos();
    let across_m = A_M / (1.0 - eccentric2 * sin * sin).sqrt();
    let along_m = A_M * (1.0 - eccentric2) / (1.0 - eccentric2 * sin * sin).powf(1.5);
    Some([across_m * cos, along_m])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_degree_is_as_long_as_tables_have_it() {
        // From memory, of WGS 84: 110,574 and 111,320 m at the equator, 111,132 and 78,847 m at 45 degrees.
        for (lat, north_m, east_m) in [(0.0, 110_574.0, 111_320.0), (45.0, 111_132.0, 78_847.0)] {
            let [lon, north] = degrees_of([east_m, north_m], (lat, 10.0)).unwrap();
            assert!((lon - 11.0).abs() < 1e-5 && (north - lat - 1.0).abs() < 1e-5, "{lat}: {lon} {north}");
        }
        assert_eq!(degrees_of([1.0, 1.0], (90.0, 0.0)), None);
        assert_eq!(degrees_of([0.0, 0.0], (-1.2, 36.1)), Some([36.1, -1.2]));
    }

    #[test]
    fn metres_and_degrees_are_each_others_way_back() {
        for from in [(-3.2, 36.7), (12.0, 179.9999), (47.0, -0.0001)] {
            let [lon, lat] = degrees_of([120.0, -35.0], from).unwrap();
            let [east, north] = metres_of((lat, lon), from).unwrap();
            assert!((east - 120.0).abs() < 1e-5 && (north + 35.0).abs() < 1e-5, "{east} {north}");
        }
        assert_eq!(metres_of((89.9, 0.0), (89.9, 0.0)), None);
    }
}
