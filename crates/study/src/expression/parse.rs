//! Text to expression: operators by how tightly they bind.

use axlebow_model::likely;

use super::{ExpressionError, FUNCTIONS, Function, Operator, Step};

/// Brackets, signs and powers within one another that are accepted.
const DEPTH: usize = 100;
/// How tightly a sign binds: less than a power, more than a product.
const SIGN: u8 = 3;

/// The steps of a whole text that uses names.
pub(super) fn steps(text: &str, names: &[String]) -> Read<Vec<Step>> {
    let mut cursor = Cursor { text, at: 0, depth: 0, names, steps: Vec::new() };
    cursor.skip_spaces();
    if cursor.rest().is_empty() {
        return Err(cursor.fault(0..0, "the expression is empty"));
    }
    cursor.terms(0)?;
    if cursor.rest().is_empty() { Ok(cursor.steps) } else { Err(cursor.unexpected()) }
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
            let message = format!("the expression goes more than {DEPTH} deep");
            return Err(ExpressionError {
                accepted: Some(format!("{DEPTH} brackets, signs and powers within one another")),
                ..self.fault(self.at..self.text.len(), message)
            });
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
            None => {
                Err(self.fault(start..start, "the expression ends where a number, a name or `(` is wanted"))
            }
            Some('-') if self.accept('-') => self.terms(SIGN).map(|()| self.steps.push(Step::Minus)),
            Some('+') if self.accept('+') => self.terms(SIGN),
            Some('(') if self.accept('(') => {
                self.terms(0)?;
                self.close()
            }
            Some(letter) if letter.is_ascii_digit() || letter == '.' => self.number(),
            Some(letter) if letter.is_alphabetic() => self.word(),
            Some(_) => Err(ExpressionError {
                accepted: Some("a number, a name or `(`".to_owned()),
                ..self.unexpected()
            }),
        }
    }

    fn close(&mut self) -> Read<()> {
        match self.rest() {
            "" => Err(self.fault(self.at..self.at, "the expression ends where `)` is wanted")),
            _ if self.accept(')') => Ok(()),
            _ => Err(self.unexpected()),
        }
    }

    fn number(&mut self) -> Read<()> {
        let start = self.at;
        let word = self.take(number_length(self.rest()));
        let number = word.parse().ok().filter(|number: &f64| number.is_finite());
        let fault = || self.fault(start..start + word.len(), format!("`{word}` is not a number"));
        let number = number.ok_or_else(fault)?;
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
        let called = self.rest().starts_with('(');
        let known: Vec<&str> = match called {
            true => FUNCTIONS.iter().map(|(name, _)| *name).collect(),
            false => self.names.iter().map(String::as_str).collect(),
        };
        let thing = if called { "function" } else { "number" };
        let accepted = if known.is_empty() { "numbers only".to_owned() } else { known.join(", ") };
        Err(ExpressionError {
            message: format!("no {thing} is named `{word}`"),
            span,
            accepted: Some(accepted),
            likely: likely(word, known.into_iter()),
        })
    }

    fn call(&mut self, place: usize, span: std::ops::Range<usize>) -> Read<()> {
        let (name, function) = FUNCTIONS[place];
        if !self.accept('(') {
            let next = self.rest().chars().next().map_or(0, char::len_utf8);
            return Err(self.fault(self.at..self.at + next, format!("`{name}` wants `(`")));
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
            let numbers = if wanted == 1 { "number" } else { "numbers" };
            let message = format!("`{name}` takes {wanted} {numbers}, not {arguments}");
            return Err(self.fault(span, message));
        }
        self.steps.push(Step::Call(place));
        Ok(())
    }

    fn unexpected(&self) -> ExpressionError {
        let word = |c: char| c.is_alphanumeric() || c == '_' || c == '.';
        let length = self.rest().find(|c| !word(c)).unwrap_or(self.rest().len());
        let first = self.rest().chars().next().map_or(0, char::len_utf8);
        let found = &self.rest()[..length.max(first)];
        let message = format!("`{}` is not expected here", found.escape_debug());
        ExpressionError {
            accepted: Some(
                "an operator (+ - * / ^), or nothing; all numbers are SI, without units".to_owned(),
            ),
            ..self.fault(self.at..self.at + found.len(), message)
        }
    }

    fn fault(&self, span: std::ops::Range<usize>, message: impl Into<String>) -> ExpressionError {
        ExpressionError { message: message.into(), span, accepted: None, likely: None }
    }
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
