//! For each topic a line that answers, said where a topic is called with nothing.

use super::args::Topic;

/// What is typed behind `outplant calc`.
pub(super) fn of(topic: &Topic) -> &'static str {
    match topic {
        Topic::Germination(_) => "germination --times 20,25,30 --counts 12,30,8 --seeds 60",
        Topic::Emergence(_) => "emergence --edges 15,20,25,30 --counts 4,20,18,6 --seeds 60",
        Topic::Sowing(_) => "sowing --wanted 100 --germination 70",
        Topic::Interval(_) => "interval --x 38 --n 50",
        Topic::Replicates(_) => "replicates --replicates 41,38,44,40 --n-each 50",
        Topic::Viability(_) => "viability --species \"Cedrela odorata\" --initial 95 --moisture 8 --temp 20 --days 365",
        Topic::Quality(_) => "quality --height 25 --collar 4",
        Topic::SampleSize(_) => "sample_size --kind detection --prevalence 5",
        Topic::Growth(_) => "growth --t 30,60,90,120,150 --y 4,9,16,22,26 --target 20",
        Topic::Matching(_) => "matching < instance.json",
        Topic::Sun(_) => "sun --lat 10.4 --lon -84 --utc 2026-03-15T18:00:00Z",
        Topic::Radiation(_) => "radiation --lat 10.4 --doy 74",
        Topic::Et0(_) => "et0 --lat 10.4 --elev 1200 --doy 74 --tmin 16 --tmax 27",
        Topic::Water(_) => "water --taw 60 --p 0.5 --dr0 10 --rain 0,12,0,0 --et0 4,3,4,4 --kc 1,1,1,1",
        Topic::Rains(_) => "rains --first 2026-04-01 --rain 0,25,10,0,0,12,30,0",
        Topic::Leaves(_) => "leaves --height 2.5 --girth 0.6 --leaves 9 --ground 9",
        Topic::Light(_) => {
            "light --lat 10.4 --lon -84 --date 2026-03-15 --diffuse 50 --rows 8 --plants 10 --row 3 --plant 3 --top 3 --foot 0.8 --width 2.6 --lad 1.2 --k 0.7"
        }
    }
}
