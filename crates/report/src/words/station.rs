//! What stations are called in pictures.

use super::wrapped;

/// A station's name without the side and with spaces: `left-tube-end` becomes `tube end`, `angle-right-end`
/// becomes `angle end`.
pub(crate) fn station_name(name: &str) -> String {
    let bare = name.strip_prefix("left-").or_else(|| name.strip_prefix("right-")).unwrap_or(name);
    let bare = bare.replace("-left-end", "-end").replace("-right-end", "-end");
    wrapped(&bare.replace('-', " "), 18, 1).concat()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn station_names_lose_their_side() {
        assert_eq!(station_name("left-tube-end"), "tube end");
        assert_eq!(station_name("center"), "center");
        assert_eq!(station_name("top angle-right-end"), "top angle end");
    }
}
