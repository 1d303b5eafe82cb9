//! Plain expressions of named numbers, such as `2 * wall + 0.1`.

mod error;
mod parse;

pub use error::{ExpressionError, ExpressionFault};

/// Functions that an expression may call, with the count of their arguments.
const FUNCTIONS: [(&str, Function); 10] = [
    ("abs", Function::One(f64::abs)),
    ("sqrt", Function::One(f64::sqrt)),
    ("exp", Function::One(f64::exp)),
    ("ln", Function::One(f64::ln)),
    ("log10", Function::One(f64::log10)),
    ("sin", Function::One(f64::sin)),
    ("cos", Function::One(f64::cos)),
    ("tan", Function::One(f64::tan)),
    ("min", Function::Two(f64::min)),
    ("max", Function::Two(f64::max)),
];

/// A plain expression of named numbers.
///
/// Numbers, names, `pi`, `+ - * /`, `^` (before a sign and from right to left, as in print: `-2^2` is −4), brackets and the
/// functions `abs sqrt exp ln log10 sin cos tan min max`. Angles are rad.
#[derive(Debug, Clone, PartialEq)]
pub struct Expression {
    /// The text that it was read from.
    text: String,
    steps: Vec<Step>,
}

#[derive(Debug, Clone, Copy)]
enum Function {
    One(fn(f64) -> f64),
    Two(fn(f64, f64) -> f64),
}

/// A step of working an expression out, upon what the steps before it have left. They are a list and no tree, so that
/// an expression of any length is read, worked out and dropped without a deep stack.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Step {
    Number(f64),
    /// Place of a name.
    Name(usize),
    Minus,
    Pair(Operator),
    /// Place in [`FUNCTIONS`].
    Call(usize),
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Operator {
    Plus,
    Less,
    Times,
    Over,
    Power,
}

impl Expression {
    /// Reads an expression.
    ///
    /// Arguments: `text`; `names` that it may use, letters, digits, `_` and `.`, beginning with a letter.
    ///
    /// # Errors
    /// The first thing that is not accepted, with its place.
    pub fn read(text: &str, names: &[String]) -> Result<Expression, ExpressionError> {
        Ok(Expression { text: text.to_owned(), steps: parse::steps(text, names)? })
    }

    /// Its value for values of the names, in the order in which they were given; not finite where it has none.
    pub fn value(&self, values: &[f64]) -> f64 {
        let mut left = Left(Vec::new());
        for step in &self.steps {
            let value = match *step {
                Step::Number(number) => number,
                Step::Name(place) => values[place],
                Step::Minus => -left.take(),
                Step::Pair(operator) => left.take_two(|one, other| operator.of(one, other)),
                Step::Call(place) => match FUNCTIONS[place].1 {
                    Function::One(function) => function(left.take()),
                    Function::Two(function) => left.take_two(function),
                },
            };
            left.0.push(value);
        }
        left.take()
    }

    /// Places of the names that it uses, in order, each once.
    pub fn uses(&self) -> Vec<usize> {
        let name = |step: &Step| if let Step::Name(place) = step { Some(*place) } else { None };
        let mut found: Vec<usize> = self.steps.iter().filter_map(name).collect();
        found.sort_unstable();
        found.dedup();
        found
    }

    /// The text that it was read from.
    pub fn text(&self) -> &str {
        &self.text
    }
}

/// Values that steps have left for those after them.
struct Left(Vec<f64>);

impl Left {
    /// The last one; a list of steps that was read leaves one to each that takes one.
    fn take(&mut self) -> f64 {
        self.0.pop().unwrap_or(f64::NAN)
    }

    fn take_two(&mut self, function: impl Fn(f64, f64) -> f64) -> f64 {
        let other = self.take();
        function(self.take(), other)
    }
}

impl Operator {
    fn of(self, one: f64, other: f64) -> f64 {
        match self {
            Self::Plus => one + other,
            Self::Less => one - other,
            Self::Times => one * other,
            Self::Over => one / other,
            Self::Power => one.powf(other),
        }
    }
}

/// A name as expressions write it: `_` in place of every letter that a name cannot have.
pub fn plain_name(text: &str) -> String {
    let plain = |c: char| if c.is_ascii_alphanumeric() { c } else { '_' };
    let name: String = text.chars().map(plain).collect();
    if name.starts_with(|c: char| c.is_ascii_alphabetic()) { name } else { format!("a_{name}") }
}

/// Whether an expression can use a text as a name.
pub fn is_name(text: &str) -> bool {
    let plain = |c: char| c.is_ascii_alphanumeric() || c == '_';
    let known = text == "pi" || FUNCTIONS.iter().any(|(name, _)| *name == text);
    text.starts_with(|c: char| c.is_ascii_alphabetic()) && text.chars().all(plain) && !known
}

#[cfg(test)]
mod tests {
    use super::*;

    fn names() -> Vec<String> {
        ["wall", "camber_change", "axle_mass", "bump.camber_rms"].map(str::to_owned).to_vec()
    }

    fn value(text: &str) -> f64 {
        let read = Expression::read(text, &names()).unwrap_or_else(|error| panic!("{text}: {error}"));
        read.value(&[0.01, 0.002, 80.0, 5.0])
    }

    #[test]
    fn values_are_those_of_school() {
        for (text, wanted) in [
            ("1 + 2 * 3", 7.0),
            ("(1 + 2) * 3", 9.0),
            ("10 - 4 - 3", 3.0),
            ("24 / 4 / 2", 3.0),
            ("2 ^ 3 ^ 2", 512.0),
            ("-2 ^ 2", -4.0),
            ("2 ^ -1", 0.5),
            ("- - 3", 3.0),
            ("2 * -3", -6.0),
            ("+4", 4.0),
            ("1.5e3 + .5", 1500.5),
            ("2e-3*1E2", 0.2),
            ("2 * wall + 0.1", 0.12),
            ("camber_change / axle_mass", 2.5e-5),
            ("bump.camber_rms*2", 10.0),
            ("sqrt(abs(-16)) + max(1, min(5, 3))", 7.0),
            ("exp(ln(3)) + log10(100)", 5.0),
            ("sin(pi / 2) + cos(0) + tan(0)", 2.0),
        ] {
            approx::assert_relative_eq!(value(text), wanted, max_relative = 1e-14);
        }
        assert!(!value("1 / (wall - 0.01)").is_finite());
    }

    #[test]
    fn uses_lists_each_name_once() {
        let read = Expression::read("axle_mass + wall * wall - min(wall, 1)", &names()).unwrap();
        assert_eq!(read.uses(), [0, 2]);
        assert_eq!(read.text(), "axle_mass + wall * wall - min(wall, 1)");
    }

    #[test]
    fn errors_say_where_and_what_is_accepted() {
        for (text, part, message, hint) in [
            ("2 * wal", "wal", "no number is named `wal`", "wall"),
            ("2 * cambr_change", "cambr_change", "no number is named `cambr_change`", "camber_change"),
            ("2 +", "", "the expression ends where a number, a name or `(` is wanted", ""),
            ("", "", "the expression is empty", ""),
            ("(1 + 2", "", "the expression ends where `)` is wanted", ""),
            ("1 + 2)", ")", "`)` is not expected here", ""),
            ("1 wall", "wall", "`wall` is not expected here", ""),
            ("8 mm", "mm", "`mm` is not expected here", ""),
            ("wall $ 2", "$", "`$` is not expected here", ""),
            ("sqrt 2", "2", "`sqrt` wants `(`", ""),
            ("min(1)", "min", "`min` takes 2 numbers, not 1", ""),
            ("abs(1, 2)", "abs", "`abs` takes 1 number, not 2", ""),
            ("sqr(4)", "sqr", "no function is named `sqr`", "sqrt"),
            ("2 ** 3", "*", "`*` is not expected here", ""),
            ("1.2.3", "1.2.3", "`1.2.3` is not a number", ""),
            ("1e999", "1e999", "`1e999` is not a number", ""),
        ] {
            let error = Expression::read(text, &names()).expect_err(text);
            assert_eq!((&text[error.span.clone()], error.to_string().as_str()), (part, message), "{text}");
            let (word, known) = error.fault.unknown().unwrap_or_default();
            assert_eq!(
                (word.is_empty(), known.contains(&hint)),
                (hint.is_empty(), !hint.is_empty()),
                "{text}"
            );
        }
    }

    #[test]
    fn an_expression_may_be_long_and_not_deep() {
        let terms = |one: &str, count| vec![one; count].join(" + ");
        assert_eq!(value(&terms("1", 100_000)), 1e5);
        assert_eq!(value(&terms("max(2 ^ 1, axle_mass - 100)", 20_000)), 4e4);
        for (before, after) in [("(", ")"), ("abs(", ")"), ("- ", ""), ("1 ^ ", ""), ("1 ^ -", "")] {
            let nested = |times: usize| format!("{}1{}", before.repeat(times), after.repeat(times));
            assert!(value(&nested(40)).is_finite(), "{before}");
            let error = Expression::read(&nested(100_000), &[]).expect_err(before);
            assert_eq!(error.to_string(), "the expression goes more than 100 deep");
            assert!(error.fault.accepted().is_some());
        }
    }

    #[test]
    fn names_are_made_plain() {
        assert_eq!(plain_name("camber-change"), "camber_change");
        assert_eq!(plain_name("152 bump"), "a_152_bump");
        assert!(is_name("wall") && !is_name("pi") && !is_name("2a") && !is_name("a b") && !is_name("sin"));
    }
}
