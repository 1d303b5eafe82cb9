//! The grammar of unit expressions.

use std::ops::Range;

use crate::error::Fault;
use crate::unit::{Factor, Unit};
use crate::{Dimension, UnitSystem};

/// Brackets within brackets that are accepted; no unit needs more.
const DEPTH: u32 = 4;

/// What a unit expression amounts to.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Expression {
    pub factor: Factor,
    pub dimension: Dimension,
    pub system: Option<UnitSystem>,
}

impl Expression {
    pub const ONE: Self = Self { factor: Factor::ONE, dimension: Dimension::NONE, system: None };

    fn times(self, other: Self, power: i32) -> Self {
        Self {
            factor: self.factor.times(other.factor, power),
            dimension: self.dimension.times(other.dimension, power),
            system: self.system.or(other.system),
        }
    }
}

/// A fault and the bytes that it covers.
pub(crate) type Found<T> = Result<T, (Fault, Range<usize>)>;

/// Reads a whole unit expression; ranges count from the start of `text`.
pub(crate) fn unit_expression(text: &str) -> Found<Expression> {
    let mut cursor = Cursor { text, at: 0, depth: 0 };
    let expression = cursor.product()?;
    if cursor.at < text.len() { Err(cursor.unexpected()) } else { Ok(expression) }
}

struct Cursor<'t> {
    text: &'t str,
    at: usize,
    depth: u32,
}

impl<'t> Cursor<'t> {
    fn rest(&self) -> &'t str {
        &self.text[self.at..]
    }

    fn peek(&self) -> Option<char> {
        self.rest().chars().next()
    }

    fn skip_spaces(&mut self) {
        self.at = self.text.len() - self.rest().trim_start().len();
    }

    fn take(&mut self, matches: impl Fn(char) -> bool) -> &'t str {
        let rest = self.rest();
        let end = rest.find(|c| !matches(c)).unwrap_or(rest.len());
        self.at += end;
        &rest[..end]
    }

    /// Consumes one of the given characters.
    fn accept(&mut self, wanted: &[char]) -> bool {
        let found = self.peek().filter(|c| wanted.contains(c));
        self.at += found.map_or(0, char::len_utf8);
        found.is_some()
    }

    /// `factor { (" " | "*" | "·" | "/") factor }`, up to a bracket or the end.
    fn product(&mut self) -> Found<Expression> {
        let mut product = self.factor()?;
        let mut divided = false;
        loop {
            self.skip_spaces();
            if matches!(self.peek(), None | Some(')')) {
                return Ok(product);
            }
            let divides = self.accept(&['/']);
            let multiplies = !divides && self.accept(&['*', '·', '⋅']);
            self.skip_spaces();
            let start = self.at;
            if !divides && !multiplies && !self.starts_factor() {
                return Err(self.unexpected());
            }
            let factor = self.factor()?;
            if divided && !divides {
                let word = self.text[start..self.at].to_owned();
                return Err((Fault::Ambiguous { word }, start..self.at));
            }
            divided |= divides;
            product = product.times(factor, if divides { -1 } else { 1 });
        }
    }

    fn starts_factor(&self) -> bool {
        self.peek().is_some_and(|c| c == '(' || is_symbol(c))
    }

    /// `(symbol | "(" product ")") [power]`.
    fn factor(&mut self) -> Found<Expression> {
        self.skip_spaces();
        let base = if self.peek() == Some('(') { self.brackets()? } else { self.symbol()? };
        let power = self.power()?;
        Ok(Expression::ONE.times(base, power))
    }

    fn brackets(&mut self) -> Found<Expression> {
        if self.depth == DEPTH {
            return Err(self.unexpected());
        }
        self.depth += 1;
        self.at += 1;
        let inner = self.product()?;
        self.depth -= 1;
        if self.accept(&[')']) { Ok(inner) } else { Err(self.unexpected()) }
    }

    fn symbol(&mut self) -> Found<Expression> {
        let start = self.at;
        let symbol = self.take(is_symbol);
        if symbol.is_empty() {
            return Err(self.unexpected());
        }
        // U+03BC is the Greek letter that some keyboards give for the micro sign U+00B5.
        let unit = Unit::named(symbol).or_else(|| Unit::named(&symbol.replace('\u{3bc}', "\u{b5}")));
        let unknown = || (Fault::UnknownUnit { word: symbol.to_owned() }, start..self.at);
        unit.map(|u| Expression { factor: u.factor, dimension: u.dimension, system: u.system })
            .ok_or_else(unknown)
    }

    /// `2`, `^2`, `^-2`, `²`, `³` or `⁴`, one digit; 1 if there is none.
    fn power(&mut self) -> Found<i32> {
        for (sign, power) in [('²', 2), ('³', 3), ('⁴', 4)] {
            if self.accept(&[sign]) {
                return Ok(power);
            }
        }
        let raised = self.accept(&['^']);
        let sign = if raised && self.accept(&['-', '−']) { -1 } else { 1 };
        match self.peek().and_then(|c| c.to_digit(10)) {
            Some(digit @ 1..=9) => {
                self.at += 1;
                Ok(sign * digit as i32)
            }
            None if !raised => Ok(1),
            _ => Err(self.unexpected()),
        }
    }

    fn unexpected(&self) -> (Fault, Range<usize>) {
        let end = self.at + self.peek().map_or(0, char::len_utf8);
        let found =
            self.peek().map_or("the end of the unit".to_owned(), |c| format!("`{}`", c.escape_debug()));
        let fault = if self.peek() == Some(',') { Fault::Comma } else { Fault::Unexpected { found } };
        (fault, self.at..end)
    }
}

fn is_symbol(c: char) -> bool {
    c.is_alphabetic() || c == '%' || c == '°'
}
