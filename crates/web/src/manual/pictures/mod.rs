//! Pictures for whoever adds something: which files are touched in which order, what proves it, where it shows up. `list` says it,
//! a picture each; `draw` lays it out; `figures` draws what explains more than boxes, from the same code as the program's own
//! drawings. Committed under `docs/pictures/`, renewed by `cargo xtask bless pictures`.

mod draw;
mod figures;
mod list;
mod outlines;
mod slim;
mod words;

pub use list::LIST;

use std::sync::LazyLock;
use stillrise_documents::render::scene::Scene;
use stillrise_documents::render::svg::{Options, svg};

/// A file that is touched, and what for.
pub struct Step {
    /// Its path in the tree; of a new file that of the one to look at.
    pub path: &'static str,
    /// What is done there.
    pub what: &'static str,
}

/// What proves it.
pub struct Proof {
    /// As it is typed.
    pub command: &'static str,
    /// The tests.
    pub paths: &'static [&'static str],
}

/// One picture.
pub struct Picture {
    /// Its file's name without the ending.
    pub id: &'static str,
    /// What is done, as the heading in `CONTRIBUTING.md` says it.
    pub title: &'static str,
    /// Files in the order in which they are touched.
    pub steps: &'static [Step],
    /// What proves it.
    pub proof: Proof,
    /// Where the user sees it.
    pub seen: &'static [&'static str],
    /// What explains more than boxes; its title stands over it.
    pub figure: fn() -> Scene,
}

/// A picture that was made.
pub struct Made {
    /// Its file's name without the ending.
    pub id: &'static str,
    /// What is done.
    pub title: &'static str,
    /// The drawing.
    pub scene: Scene,
    /// The same as a file.
    pub svg: String,
}

/// Designs take more of a stack than a thread has by itself.
const STACK: usize = 16 << 20;

static ALL: LazyLock<Vec<Made>> = LazyLock::new(|| {
    std::thread::scope(|scope| {
        let begun = std::thread::Builder::new().stack_size(STACK).spawn_scoped(scope, make);
        begun.ok().and_then(|thread| thread.join().ok()).unwrap_or_default()
    })
});

fn make() -> Vec<Made> {
    let one = |picture: &'static Picture| {
        let scene = draw::scene(picture);
        let options = Options { id: format!("picture-{}", picture.id), ..Options::default() };
        let svg = slim::slim(&svg(&scene, &options));
        Made { id: picture.id, title: picture.title, scene, svg }
    };
    LIST.iter().map(one).collect()
}

/// All pictures, made once; none where the machine gives no thread for it.
#[must_use]
pub fn all() -> &'static [Made] {
    &ALL
}

/// A picture by its id.
#[must_use]
pub fn made(id: &str) -> Option<&'static Made> {
    ALL.iter().find(|made| made.id == id)
}
