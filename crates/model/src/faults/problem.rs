//! What is wrong with a file, and where.

use std::fmt;
use std::ops::Range;
use std::sync::Arc;

use annotate_snippets::{Annotation, AnnotationKind, Group, Level, Origin, Renderer, Snippet};

use super::error::ModelError;

/// Bytes of the file text.
pub type Span = Range<usize>;

/// Problems that are kept; a file that has more is not a model file with slips but something else.
const MOST: usize = 50;

/// Bytes of source that are shown with a problem, at most.
const LONGEST: usize = 2000;

/// Something wrong with a file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Problem {
    /// Bytes that are underlined.
    pub span: Span,
    /// Line, from 1.
    pub line: usize,
    /// Character within the line, from 1.
    pub column: usize,
    /// What is wrong.
    pub message: String,
    /// What is accepted instead, if not plain from the message.
    pub accepted: Option<String>,
    /// What was likely meant, if that can be told.
    pub likely: Option<String>,
}

/// Everything that is wrong with a file, in file order.
#[derive(Debug, Clone)]
pub struct Problems {
    file_name: String,
    source: Arc<str>,
    items: Vec<Problem>,
    more: bool,
}

impl Problems {
    /// No problems yet, in a file of the given name and text.
    pub fn new(file_name: &str, source: Arc<str>) -> Self {
        let file_name = file_name.replace(char::is_control, "\u{fffd}");
        Self { file_name, source, items: Vec::new(), more: false }
    }

    /// Adds a problem.
    ///
    /// Arguments: `span`, the bytes to underline, such as [`Table::span_of`](crate::Table::span_of) gives;
    /// `message`, what is wrong; `accepted`, what would be right.
    pub fn push(&mut self, span: Span, message: impl Into<String>, accepted: Option<String>) {
        self.push_likely(span, message, (accepted, None));
    }

    /// Adds the refusal of a path or of what was to stand there.
    pub fn push_refusal(&mut self, span: Span, refusal: &ModelError) {
        let (message, hints) = match refusal {
            ModelError::UnknownKey { path, name, key, accepted, likely } => {
                let message = format!("`{path}` leads nowhere: {name} has no key `{key}`");
                (message, (Some(accepted.clone()), likely.clone()))
            }
            ModelError::Refused { message, accepted, likely, .. } => {
                (message.clone(), (accepted.clone(), likely.clone()))
            }
            other => (other.to_string(), (None, None)),
        };
        self.push_likely(span, message.replace(char::is_control, "\u{fffd}"), hints);
    }

    /// Adds a problem with what is accepted and what was likely meant.
    pub fn push_likely(
        &mut self,
        span: Span,
        message: impl Into<String>,
        hints: (Option<String>, Option<String>),
    ) {
        if self.is_full() {
            self.more = true;
            return;
        }
        let span = self.within(span);
        let before = &self.source[..span.start];
        let line_start = before.rfind('\n').map_or(0, |at| at + 1);
        let problem = Problem {
            line: before.matches('\n').count() + 1,
            column: before[line_start..].chars().count() + 1,
            span,
            message: message.into(),
            accepted: hints.0,
            likely: hints.1,
        };
        let at = self.items.partition_point(|other| other.span.start <= problem.span.start);
        self.items.insert(at, problem);
    }

    /// The span cut to whole characters of the source.
    fn within(&self, span: Span) -> Span {
        let whole =
            |at: usize| (0..=at.min(self.source.len())).rev().find(|at| self.source.is_char_boundary(*at));
        let start = whole(span.start).unwrap_or(0);
        start..whole(span.end).unwrap_or(0).max(start)
    }

    /// Name of the file.
    pub fn file_name(&self) -> &str {
        &self.file_name
    }

    /// The problems in file order.
    pub fn iter(&self) -> impl Iterator<Item = &Problem> {
        self.items.iter()
    }

    /// The text of the file.
    pub(crate) fn source(&self) -> &str {
        &self.source
    }

    /// Whether there are none.
    pub fn is_empty(&self) -> bool {
        self.items.is_empty()
    }

    /// Whether as many are kept as will be.
    pub(crate) fn is_full(&self) -> bool {
        self.items.len() == MOST
    }

    /// Those of the problems that another report of the same file has too, word for word.
    pub(crate) fn also_in(mut self, other: &Self) -> Self {
        self.items.retain(|own| other.items.contains(own));
        self
    }

    /// Adds another report's problems, but for those on a line that already has one.
    ///
    /// What stands on a line with a syntax error was recovered by a guess and need not be what was written.
    pub fn absorb(&mut self, other: &Self) {
        let lines: Vec<_> = self.items.iter().map(|problem| problem.line).collect();
        for problem in other.items.iter().filter(|problem| !lines.contains(&problem.line)) {
            let hints = (problem.accepted.clone(), problem.likely.clone());
            self.push_likely(problem.span.clone(), problem.message.as_str(), hints);
        }
        self.more |= other.more;
    }

    /// The whole report as plain text.
    pub fn render(&self) -> String {
        self.rendered(&Renderer::plain())
    }

    /// The whole report with terminal colors.
    pub fn render_colored(&self) -> String {
        self.rendered(&Renderer::styled())
    }

    fn rendered(&self, renderer: &Renderer) -> String {
        let groups: Vec<_> = self.items.iter().map(|problem| self.group(problem)).collect();
        let reports: Vec<_> = groups.into_iter().map(|group| renderer.render(&[group])).collect();
        let mut text = reports.join("\n\n");
        if self.more {
            text += &format!("\n\nand more; the first {MOST} are shown");
        }
        text
    }

    fn group<'a>(&'a self, problem: &'a Problem) -> Group<'a> {
        let mut group = Group::with_title(Level::ERROR.primary_title(&problem.message));
        group = match self.snippet(problem) {
            Some(snippet) => group.element(snippet),
            None => group.element(self.origin(problem)),
        };
        if let Some(accepted) = &problem.accepted {
            group = group.element(Level::HELP.message(format!("accepted: {accepted}")));
        }
        if let Some(likely) = &problem.likely {
            group = group.element(Level::HELP.message(format!("did you mean `{likely}`?")));
        }
        group
    }

    /// The place of the problem without its text.
    fn origin(&self, problem: &Problem) -> Origin<'_> {
        Origin::path(self.file_name.as_str()).line(problem.line).char_column(problem.column)
    }

    /// The lines of the problem, if there are any and they are not too long to show.
    fn snippet(&self, problem: &Problem) -> Option<Snippet<'_, Annotation<'_>>> {
        let Span { start, end } = problem.span;
        let line_start = self.source[..start].rfind('\n').map_or(0, |at| at + 1);
        let line_end = self.source[end..].find('\n').map_or(self.source.len(), |at| end + at);
        let lines = &self.source[line_start..line_end];
        let underline = AnnotationKind::Primary.span(start - line_start..end - line_start);
        let snippet = || Snippet::source(lines).line_start(problem.line).path(self.file_name.as_str());
        let shown = !self.source.trim().is_empty() && lines.len() <= LONGEST;
        shown.then(|| snippet().annotation(underline))
    }
}

impl fmt::Display for Problems {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.render())
    }
}

impl std::error::Error for Problems {}

/// The candidate that a misspelt word is nearest to, if it is near.
///
/// Damerau–Levenshtein distance without regard to case, at most a third of the word's length and at least 1.
pub fn likely<'a>(word: &str, candidates: impl Iterator<Item = &'a str>) -> Option<String> {
    let length = word.chars().take(41).count();
    let lower = word.to_lowercase();
    let distance = |candidate: &str| strsim::damerau_levenshtein(&lower, &candidate.to_lowercase());
    let near = candidates.filter(|_| length <= 40).map(|candidate| (distance(candidate), candidate));
    near.filter(|(edits, _)| *edits <= (length / 3).max(1))
        .min_by_key(|(edits, _)| *edits)
        .map(|(_, c)| c.to_owned())
}

/// A word of the file between backquotes, cut short and with control characters escaped.
pub(crate) fn quoted(word: &str) -> String {
    let more = if word.chars().nth(40).is_some() { "…" } else { "" };
    let shown: String = word.chars().take(40).flat_map(char::escape_debug).collect();
    format!("`{shown}{more}`")
}
