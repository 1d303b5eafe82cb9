//! Text to expression: operators by how tightly they bind.

use std::ops::Range;

use super::error::{ExpressionError, ExpressionFault};
use super::{FUNCTIONS, Function, Operator, Step};

/// Brackets, signs and powers within one another that are accepted.
const DEPTH: usize = 100;
/// How tightly a sign binds: less than a power, more than a product.
const SIGN: u8 = 3;
/// What a part begins with.
const PART: &str = "a number, a name or `(`";
/// What stands after a part.
const OPERATOR: &str = "an operator (+ - * / ^), or nothing; all numbers are SI, without units";

/// The steps of a whole text that uses names.
pub(super) fn steps(text: &str, names: &[String]) -> Read<Vec<Step>> {
    let mut cursor = Cursor { text, at: 0, depth: 0, names, steps: Vec::new() };
    cursor.skip_spaces();
    if cursor.rest().is_empty() {
        return Err(fault(0..0, ExpressionFault::Empty));
    }
    cursor.terms(0)?;
    if cursor.rest().is_empty() { Ok(cursor.steps) } else { Err(cursor.unexpected(OPERATOR)) }
}

struct Cursor<'t> {
    text: &'t str,
    at: usize,
    depth: usize,
    names: &'t [String],
    /// Steps of what is read.
    steps: Vec<Step>,
}

type Read<T> = Result<T, ExpressionError>;

impl<'t> Cursor<'t> {
    fn rest(&self) -> &'t str {
        &self.text[self.at..]
    }

    fn skip_spaces(&mut self) {
        self.at = self.text.len() - self.rest().trim_start().len();
    }

    fn accept(&mut self, wanted: char) -> bool {
        let found = self.rest().starts_with(wanted);
        self.at += if found { wanted.len_utf8() } else { 0 };
        self.skip_spaces();
        found
    }

    fn take(&mut self, length: usize) -> &'t str {
        let word = &self.rest()[..length];
        self.at += length;
        self.skip_spaces();
        word
    }

    /// A first part and all operators after it that bind at least so tightly.
    fn terms(&mut self, least: u8) -> Read<()> {
        if self.depth == DEPTH {
            return Err(fault(self.at..self.text.len(), ExpressionFault::TooDeep { most: DEPTH }));
        }
        self.depth += 1;
        self.part()?;
        while let Some((letter, operator, binds)) = self.operator().filter(|(.., binds)| *binds >= least) {
            self.accept(letter);
            // What stands to the right of a power is taken first, of all others last.
            self.terms(if operator == Operator::Power { SIGN } else { binds + 1 })?;
            self.steps.push(Step::Pair(operator));
        }
        self.depth -= 1;
        Ok(())
    }

    fn operator(&self) -> Option<(char, Operator, u8)> {
        let letter = self.rest().chars().next()?;
        let (operator, binds) = match letter {
            '+' => (Operator::Plus, 1),
            '-' => (Operator::Less, 1),
            '*' => (Operator::Times, 2),
            '/' => (Operator::Over, 2),
            '^' => (Operator::Power, 4),
            _ => return None,
        };
        Some((letter, operator, binds))
    }

    /// A number, a name, a call, a sign with what it is of, or brackets.
    fn part(&mut self) -> Read<()> {
        let start = self.at;
        match self.rest().chars().next() {
            None => Err(fault(start..start, ExpressionFault::Ends { wanted: PART })),
            Some('-') if self.accept('-') => self.terms(SIGN).map(|()| self.steps.push(Step::Minus)),
            Some('+') if self.accept('+') => self.terms(SIGN),
            Some('(') if self.accept('(') => {
                self.terms(0)?;
                self.close()
            }
            Some(letter) if letter.is_ascii_digit() || letter == '.' => self.number(),
            Some(letter) if letter.is_alphabetic() => self.word(),
            Some(_) => Err(self.unexpected(PART)),
        }
    }

    fn close(&mut self) -> Read<()> {
        match self.rest() {
            "" => Err(fault(self.at..self.at, ExpressionFault::Ends { wanted: "`)`" })),
            _ if self.accept(')') => Ok(()),
            _ => Err(self.unexpected(OPERATOR)),
        }
    }

    fn number(&mut self) -> Read<()> {
        let start = self.at;
        let word = self.take(number_length(self.rest()));
        let number = word.parse().ok().filter(|number: &f64| number.is_finite());
        let refused =
            || fault(start..start + word.len(), ExpressionFault::NotANumber { word: word.to_owned() });
        let number = number.ok_or_else(refused)?;
        self.steps.push(Step::Number(number));
        Ok(())
    }

    fn word(&mut self) -> Read<()> {
        let start = self.at;
        let plain = |c: char| c.is_alphanumeric() || c == '_' || c == '.';
        let word = self.take(self.rest().find(|c| !plain(c)).unwrap_or(self.rest().len()));
        let span = start..start + word.len();
        if let Some(place) = FUNCTIONS.iter().position(|(name, _)| *name == word) {
            return self.call(place, span);
        }
        let known = self.names.iter().position(|name| name == word).map(Step::Name);
        if let Some(step) = known.or((word == "pi").then_some(Step::Number(std::f64::consts::PI))) {
            self.steps.push(step);
            return Ok(());
        }
        let word = word.to_owned();
        Err(fault(
            span,
            match self.rest().starts_with('(') {
                true => {
                    let known = FUNCTIONS.iter().map(|(name, _)| *name).collect();
                    ExpressionFault::UnknownFunction { word, known }
                }
                false => ExpressionFault::UnknownName { word, known: self.names.to_vec() },
            },
        ))
    }

    fn call(&mut self, place: usize, span: Range<usize>) -> Read<()> {
        let (name, function) = FUNCTIONS[place];
        if !self.accept('(') {
            let next = self.rest().chars().next().map_or(0, char::len_utf8);
            return Err(fault(self.at..self.at + next, ExpressionFault::NoBracket { function: name }));
        }
        self.terms(0)?;
        let mut arguments = 1;
        while self.accept(',') {
            self.terms(0)?;
            arguments += 1;
        }
        self.close()?;
        let wanted = if matches!(function, Function::One(_)) { 1 } else { 2 };
        if arguments != wanted {
            return Err(fault(span, ExpressionFault::Arguments { function: name, wanted, given: arguments }));
        }
        self.steps.push(Step::Call(place));
        Ok(())
    }

    fn unexpected(&self, accepted: &'static str) -> ExpressionError {
        let word = |c: char| c.is_alphanumeric() || c == '_' || c == '.';
        let length = self.rest().find(|c| !word(c)).unwrap_or(self.rest().len());
        let first = self.rest().chars().next().map_or(0, char::len_utf8);
        let found = self.rest()[..length.max(first)].to_owned();
        fault(self.at..self.at + found.len(), ExpressionFault::Unexpected { found, accepted })
    }
}

fn fault(span: Range<usize>, fault: ExpressionFault) -> ExpressionError {
    ExpressionError { fault, span }
}

/// Bytes of the number at the start: digits and points, and an exponent if digits follow it.
fn number_length(text: &str) -> usize {
    let digits = |from: usize| text[from..].find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len() - from);
    let mut end = text.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(text.len());
    if text[end..].starts_with(['e', 'E']) {
        let sign = usize::from(text[end + 1..].starts_with(['+', '-']));
        let power = digits(end + 1 + sign);
        end = if power > 0 { end + 1 + sign + power } else { end };
    }
    end
}
