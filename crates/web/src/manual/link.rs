//! Where a page of the manual is found: at the program that serves it, or in the folder that was written of it.

use super::Shelf;

/// How the pages of a manual lead to each other.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ways {
    /// By addresses of the program.
    Served,
    /// By files; what leads from the page to the folder of the manual: nothing, or `../`.
    Written(&'static str),
}

impl Ways {
    /// The page of contents.
    #[must_use]
    pub fn home(self) -> String {
        match self {
            Ways::Served => "/manual".to_owned(),
            Ways::Written(up) => format!("{up}index.html"),
        }
    }
    /// A part of the page of contents.
    #[must_use]
    pub fn shelf(self, shelf: Shelf) -> String {
        format!("{}#{}", self.home(), shelf.folder())
    }
    /// A page.
    #[must_use]
    pub fn to(self, shelf: Shelf, id: &str) -> String {
        match self {
            Ways::Served => format!("/manual/{}/{id}", shelf.folder()),
            Ways::Written(up) => format!("{up}{}/{id}.html", shelf.folder()),
        }
    }
    /// A place on a page.
    #[must_use]
    pub fn at(self, shelf: Shelf, id: &str, place: &str) -> String {
        format!("{}#{place}", self.to(shelf, id))
    }
    /// A picture by itself, where there is a file of it.
    #[must_use]
    pub fn picture(self, id: &str) -> Option<String> {
        match self {
            Ways::Served => None,
            Ways::Written(up) => Some(format!("{up}pictures/{id}.svg")),
        }
    }
    /// Whether the program stands behind the page.
    #[must_use]
    pub fn is_served(self) -> bool {
        self == Ways::Served
    }
}
