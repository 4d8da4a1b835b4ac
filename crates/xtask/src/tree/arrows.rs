//! Arrows between the rooms: what stands left may be used by what stands right, never back.

use super::{Fault, File, Look, Rule, room};

/// The rule.
pub const RULE: Rule = Rule {
    name: "arrows",
    holds: "units -> handbook -> design -> flowfield -> edit -> mail -> checks -> search -> documents -> desk -> web -> cli, and nobody uses xtask",
    look: Look::Tree(look),
};

/// The rooms, left to right. A new room gets its place here.
const ORDER: &[&str] = &[
    "units",
    "handbook",
    "design",
    "flowfield",
    "edit",
    "mail",
    "checks",
    "search",
    "documents",
    "desk",
    "web",
    "cli",
    "xtask",
];

/// Faults in every `crates/*/Cargo.toml`.
#[must_use]
pub fn look(files: &[File]) -> Vec<Fault> {
    let manifests = files.iter().filter(|f| room(&f.path).is_some_and(|r| f.path == format!("crates/{r}/Cargo.toml")));
    manifests.flat_map(|f| manifest(&f.path, &f.text)).collect()
}

/// Faults in one manifest. Development dependencies count: a test that needs a room further
/// right belongs there.
#[must_use]
pub fn manifest(path: &str, text: &str) -> Vec<Fault> {
    let here = room(path).unwrap_or_default();
    let Some(place) = ORDER.iter().position(|r| *r == here) else {
        return vec![Fault::new(path, 0, format!("room `{here}` has no place in the order ({})", ORDER.join(" -> ")))];
    };
    let table: toml::Table = match text.parse() {
        Ok(table) => table,
        Err(error) => return vec![Fault::new(path, 0, format!("cannot be read: {error}"))],
    };
    let mut used = Vec::new();
    collect(&table, &mut used);
    used.into_iter()
        .filter_map(|name| {
            let other = room_of(&name)?;
            let line = text.lines().position(|l| l.trim_start().starts_with(name.as_str())).map_or(0, |n| n + 1);
            let allowed = other != "xtask" && ORDER.iter().position(|r| *r == other).is_some_and(|p| p < place);
            (!allowed).then(|| Fault::new(path, line, format!("`{here}` may not use `{other}`: {}", RULE.holds)))
        })
        .collect()
}

/// Names under every table of dependencies, those of `[target.*]` included.
fn collect(table: &toml::Table, used: &mut Vec<String>) {
    for (key, value) in table {
        let Some(inner) = value.as_table() else { continue };
        if key.ends_with("dependencies") {
            for (name, detail) in inner {
                let package = detail.get("package").and_then(|p| p.as_str()).unwrap_or(name);
                used.push(package.to_owned());
            }
        } else {
            collect(inner, used);
        }
    }
}

/// Our room behind a package name; `None` for packages from outside.
fn room_of(package: &str) -> Option<&str> {
    match package {
        "stillrise" => Some("cli"),
        "xtask" => Some("xtask"),
        other => other.strip_prefix("stillrise-"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_reverse_arrow_is_found() {
        let faults =
            manifest("crates/handbook/Cargo.toml", "[dependencies]\ncsv = \"1\"\nstillrise-design.workspace = true\n");
        assert_eq!(faults.len(), 1, "{faults:?}");
        assert_eq!(faults[0].line, 3);
    }

    #[test]
    fn hidden_arrows_are_found_too() {
        let renamed = "[dev-dependencies]\nx = { package = \"stillrise\", path = \"../cli\" }\n";
        assert_eq!(manifest("crates/search/Cargo.toml", renamed).len(), 1);
        let target = "[target.'cfg(unix)'.build-dependencies]\nxtask = { path = \"../xtask\" }\n";
        assert_eq!(manifest("crates/cli/Cargo.toml", target).len(), 1);
        assert_eq!(manifest("crates/cellar/Cargo.toml", "").len(), 1, "a room without a place");
    }

    #[test]
    fn arrows_to_the_left_pass() {
        let text =
            "[dependencies]\nstillrise-units.workspace = true\nstillrise-handbook.workspace = true\ntoml = \"1\"\n";
        assert_eq!(manifest("crates/design/Cargo.toml", text), []);
    }
}
