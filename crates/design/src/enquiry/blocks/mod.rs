//! The one list of keys of an enquiry, a file a block. The reader, the schema, `new` and the docs follow from it.

macro_rules! names {
    ($($name:ident = $list:expr;)*) => { $(fn $name() -> Vec<String> { $list.iter().map(|row| row.word.to_owned()).collect() })* };
}

mod asked;
mod cases;
mod change;
mod containment;
mod decision;
mod droplets;
mod dumps;
mod european;
mod head;
mod inlet;
mod installation;
mod lift;
mod limits;
mod method;
mod observed;
mod oil_tank;
mod outlet;
mod rain;
mod regulation;
mod samples;
mod screen;
mod site;
mod solids;
mod spill;
mod unit;
mod waters;

pub use asked::*;
pub use cases::*;
pub use change::*;
pub use containment::*;
pub use decision::*;
pub use droplets::*;
pub use dumps::*;
pub use european::*;
pub use head::*;
pub use inlet::*;
pub use installation::*;
pub use lift::*;
pub use limits::*;
pub use method::*;
pub use observed::*;
pub use oil_tank::*;
pub use outlet::*;
pub use rain::*;
pub use regulation::*;
pub use samples::*;
pub use screen::*;
pub use site::*;
pub use solids::*;
pub use spill::*;
pub use unit::*;
pub use waters::*;
