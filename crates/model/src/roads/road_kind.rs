//! The kinds of road: which keys each takes, and what it is when nothing more is said.

/// A kind of road.
#[derive(Debug)]
pub(crate) struct RoadKind {
    /// The word of the key `kind`.
    pub word: &'static str,
    /// Keys that it cannot do without.
    pub needs: &'static [&'static str],
    /// Keys that it takes besides, apart from those of every road.
    pub takes: &'static [&'static str],
    /// Its sizes where no file gives any, as a road file would; empty if only a file can say them. They are
    /// plain sizes to begin with, no source.
    pub usual: &'static str,
}

/// Keys that every road takes: what it is called and how it is driven.
const EVERY: [&str; 10] = [
    "name",
    "invented",
    "kind",
    "speed",
    "contact_length",
    "run_up",
    "run_out",
    "time_step",
    "scheme",
    "spectral_radius",
];

/// Every kind of road.
pub(crate) static ROAD_KINDS: [RoadKind; 8] = [
    RoadKind {
        word: "half-sine-bump",
        needs: &["height", "length"],
        takes: &["wheels", "lag"],
        usual: "height = \"30 mm\"\nlength = \"0.6 m\"\n",
    },
    RoadKind {
        word: "haversine-bump",
        needs: &["height", "length"],
        takes: &["wheels", "lag"],
        usual: "height = \"40 mm\"\nlength = \"1 m\"\n",
    },
    RoadKind {
        word: "ramp",
        needs: &["height", "length"],
        takes: &["wheels", "lag"],
        usual: "height = \"50 mm\"\nlength = \"1 m\"\n",
    },
    RoadKind { word: "step", needs: &["height"], takes: &["wheels", "lag"], usual: "height = \"20 mm\"\n" },
    RoadKind {
        word: "pothole",
        needs: &["depth", "length"],
        takes: &["edge_slope", "wheels", "lag"],
        usual: "depth = \"50 mm\"\nlength = \"0.8 m\"\nwheels = \"right\"\n",
    },
    RoadKind {
        word: "washboard",
        needs: &["wavelength", "amplitude", "count"],
        takes: &["wheels", "lag"],
        usual: "wavelength = \"1.7 m\"\namplitude = \"5 mm\"\ncount = 20\n",
    },
    RoadKind {
        word: "random-road",
        needs: &["class", "length"],
        takes: &["seed", "spacing", "track_width"],
        usual: "class = \"C\"\nlength = \"200 m\"\n",
    },
    RoadKind {
        word: "measured-profile",
        needs: &["profile"],
        takes: &["widest_gap", "wheels", "lag"],
        usual: "",
    },
];

impl RoadKind {
    /// The kind of a word.
    pub fn of(word: &str) -> Option<&'static Self> {
        ROAD_KINDS.iter().find(|kind| kind.word == word)
    }

    /// Whether the kind has a use for a key.
    pub fn uses(&self, key: &str) -> bool {
        EVERY.contains(&key) || self.own_keys().any(|own| own == key)
    }

    /// The keys of this kind, apart from those of every road.
    pub fn own_keys(&self) -> impl Iterator<Item = &'static str> {
        self.needs.iter().chain(self.takes).copied()
    }
}

/// The words of every kind of road.
pub fn road_kinds() -> impl Iterator<Item = &'static str> {
    ROAD_KINDS.iter().map(|kind| kind.word)
}

/// The events that can be driven over by their name alone.
pub fn road_events() -> impl Iterator<Item = &'static str> {
    ROAD_KINDS.iter().filter(|kind| !kind.usual.is_empty()).map(|kind| kind.word)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::declare::Holds;
    use crate::keys::ROAD;

    #[test]
    fn every_word_of_the_key_is_a_kind() {
        let Holds::Choice(words) = ROAD.key("kind").unwrap().holds else { panic!("a choice") };
        let (words, kinds) = (words.iter().map(|word| word.word), ROAD_KINDS.iter().map(|kind| kind.word));
        assert!(words.eq(kinds));
    }

    #[test]
    fn every_key_is_of_use_to_a_kind_and_no_kind_names_another() {
        for key in ROAD.keys {
            assert!(ROAD_KINDS.iter().any(|kind| kind.uses(key.key)), "{}", key.key);
        }
        for key in ROAD_KINDS.iter().flat_map(RoadKind::own_keys).chain(EVERY) {
            assert!(ROAD.key(key).is_some(), "{key}");
        }
    }
}
