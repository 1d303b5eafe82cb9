//! What may have printed cups, ranked.

/// How far a frequency may be off and still have printed the cups: tires run at no one speed (a judgment, no source).
const NEAR: f64 = 0.25;

/// What a suspect is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SuspectKind {
    /// A natural mode of the axle.
    Mode,
    /// Something of the road that comes back.
    Road,
    /// The wheel itself, so many times a turn.
    WheelTurn,
}

/// Something with a frequency that may print cups.
#[derive(Debug, Clone, PartialEq)]
pub struct Suspect {
    /// What it is.
    pub kind: SuspectKind,
    /// What it is called.
    pub name: String,
    /// Its frequency at the speed of the cups, Hz.
    pub frequency: f64,
    /// How much of it moves load or camber of the tire, 0 to 1.
    pub weight: f64,
    /// Why it has that weight.
    pub why: String,
}

/// A suspect held against the cups.
#[derive(Debug, Clone, PartialEq)]
pub struct Explanation {
    /// The suspect.
    pub suspect: Suspect,
    /// Its frequency over that of the cups, less one.
    pub off_by: f64,
    /// Cups per turn that it would print.
    pub cups: f64,
    /// Nearness (1 at the same frequency, 0 a quarter off or a misread cup away) by weight.
    pub score: f64,
    /// Growth of the wave of the whole count that it would print, where it is known, 1/m of mean tread worn.
    pub growth: Option<f64>,
}

impl Explanation {
    /// Whole number of cups round the tire that it would print.
    pub fn count(&self) -> u16 {
        self.cups.round().clamp(1.0, f64::from(u16::MAX)) as u16
    }

    /// Whether the tires level what it prints.
    pub fn is_leveled(&self) -> bool {
        self.growth.is_some_and(|growth| growth <= 0.0)
    }
}

/// The suspects within a quarter of a frequency, or within a misread of one cup where that is more, the likeliest first.
///
/// - `frequency`: of the cups, Hz, above 0
/// - `turns`: turns of the wheel for each second, above 0
pub fn explanations(frequency: f64, turns: f64, suspects: Vec<Suspect>) -> Vec<Explanation> {
    let reach = NEAR.max((turns / frequency).min(1.0) * 0.75);
    let mut found: Vec<Explanation> = suspects
        .into_iter()
        .map(|suspect| {
            let off_by = suspect.frequency / frequency - 1.0;
            let score = (1.0 - off_by.abs() / reach).max(0.0) * suspect.weight;
            Explanation { cups: suspect.frequency / turns, off_by, score, growth: None, suspect }
        })
        .filter(|explanation| explanation.off_by.abs() <= reach)
        .collect();
    let nearer = |a: &Explanation, b: &Explanation| a.off_by.abs().total_cmp(&b.off_by.abs());
    found.sort_by(|a, b| b.score.total_cmp(&a.score).then_with(|| nearer(a, b)));
    found
}

impl Suspect {
    /// The wheel itself, `count` times a turn at so many turns a second (Hz). Weights are a judgment, no source: what
    /// comes round once or twice has usual causes, what comes round more often has few.
    pub fn wheel_turn(count: u16, turns: f64) -> Suspect {
        let (weight, why) = match count {
            1 => (0.9, "once a turn: imbalance, runout, a mount off center"),
            2 => (0.6, "twice a turn: an oval tire, rim or drum"),
            3 => (0.3, "three times a turn: a tire that is out of shape; has few usual causes"),
            _ => (0.1, "so many times a turn has no usual cause in the wheel itself"),
        };
        Suspect::of_wheel(count, turns, (weight, why))
    }

    /// The same for a wheel that is round, as those of a ride are: it sets where round the tire a wave stands, and makes none.
    pub fn round_wheel(count: u16, turns: f64) -> Suspect {
        let why = "the wheel of this ride is round; look at it where cups show without this road";
        Suspect::of_wheel(count, turns, (0.05, why))
    }

    fn of_wheel(count: u16, turns: f64, (weight, why): (f64, &str)) -> Suspect {
        let name = format!("wheel turn, order {count}");
        let frequency = f64::from(count) * turns;
        Suspect { kind: SuspectKind::WheelTurn, name, frequency, weight, why: why.to_owned() }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mode(frequency: f64, weight: f64) -> Suspect {
        let why = String::new();
        Suspect { kind: SuspectKind::Mode, name: frequency.to_string(), frequency, weight, why }
    }

    #[test]
    fn the_nearest_of_equal_weight_comes_first_and_far_ones_are_left_out() {
        let found =
            explanations(10.0, 2.0, vec![mode(12.0, 1.0), mode(9.8, 1.0), mode(16.0, 1.0), mode(10.0, 0.1)]);
        let names: Vec<&str> = found.iter().map(|explanation| explanation.suspect.name.as_str()).collect();
        assert_eq!(names, ["9.8", "12", "10"]);
        assert!((found[0].off_by + 0.02).abs() < 1e-12 && (found[0].cups - 4.9).abs() < 1e-12);
    }

    #[test]
    fn an_imbalance_explains_one_cup_better_than_seven() {
        assert!(Suspect::wheel_turn(1, 8.0).weight > Suspect::wheel_turn(7, 8.0).weight);
        assert_eq!(Suspect::wheel_turn(2, 8.0).frequency, 16.0);
    }
}
