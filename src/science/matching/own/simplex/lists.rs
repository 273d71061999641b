//! Many short lists of numbers in one array: the columns of a program, its rows, its factors.

/// Lists of places, each with how many times.
#[derive(Clone, Debug)]
pub(in super::super) struct Lists {
    starts: Vec<usize>,
    places: Vec<u32>,
    times: Vec<f64>,
}

impl Default for Lists {
    fn default() -> Lists {
        Lists { starts: vec![0], places: Vec::new(), times: Vec::new() }
    }
}

impl Lists {
    /// How many lists.
    pub(in super::super) fn len(&self) -> usize {
        self.starts.len() - 1
    }

    /// How many entries in all of them.
    pub(in super::super) fn entries(&self) -> usize {
        self.places.len()
    }

    /// Adds an entry to the list that is being written.
    pub(in super::super) fn put(&mut self, place: usize, times: f64) {
        self.places.push(place as u32);
        self.times.push(times);
    }

    /// Ends the list that is being written.
    pub(in super::super) fn close(&mut self) {
        self.starts.push(self.places.len());
    }

    /// How long a list is.
    pub(in super::super) fn length(&self, list: usize) -> usize {
        self.starts[list + 1] - self.starts[list]
    }

    /// The places of a list.
    pub(in super::super) fn places(&self, list: usize) -> &[u32] {
        &self.places[self.starts[list]..self.starts[list + 1]]
    }

    /// The entries of a list.
    pub(in super::super) fn of(&self, list: usize) -> impl Iterator<Item = (usize, f64)> + '_ {
        let range = self.starts[list]..self.starts[list + 1];
        self.places[range.clone()].iter().zip(&self.times[range]).map(|(place, times)| (*place as usize, *times))
    }

    /// The sum of a list's entries, each times what stands at its place.
    pub(in super::super) fn dot(&self, list: usize, values: &[f64]) -> f64 {
        self.of(list).map(|(place, times)| times * values[place]).sum()
    }

    /// Takes a list away from values, each entry so many times.
    pub(in super::super) fn take_from(&self, list: usize, times: f64, values: &mut [f64]) {
        for (place, each) in self.of(list) {
            values[place] -= each * times;
        }
    }

    /// The same entries by place: the list of a place holds the lists it stands in, under the names given; lists without a name
    /// are left out.
    pub(in super::super) fn turned(&self, places: usize, name: impl Fn(usize) -> Option<u32>) -> Lists {
        let mut starts = vec![0; places + 1];
        for list in (0..self.len()).filter(|list| name(*list).is_some()) {
            for place in self.places(list) {
                starts[*place as usize + 1] += 1;
            }
        }
        for place in 0..places {
            starts[place + 1] += starts[place];
        }
        let mut next = starts.clone();
        let (mut names, mut times) = (vec![0; starts[places]], vec![0.0; starts[places]]);
        for (list, named) in (0..self.len()).filter_map(|list| name(list).map(|named| (list, named))) {
            for (place, each) in self.of(list) {
                names[next[place]] = named;
                times[next[place]] = each;
                next[place] += 1;
            }
        }
        Lists { starts, places: names, times }
    }
}
