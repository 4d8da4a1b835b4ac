//! How a document looks: drawings, sheets, tables and pages. Never what it says.
//!
//! - [`scene`]: a drawing in millimetres on paper, with [`mark`]s (dimensions, balloons, levels),
//!   [`pen`]s and [`hatch`]es; [`scale`] maps a model to paper.
//! - [`svg`]: a scene as SVG, its letters as text or as outlines ([`glyphs`]). [`sheet`]: frame, [`title_block`], notes column, [`schedule`]s.
//! - [`dxf`]: a scene at true size for drafting programs.
//! - [`pdf`]: typst markup and files, or whole drawing sheets, as tagged PDF.
//! - [`glb`]: a model of closed surfaces ([`solid`]) as glTF.
//! - [`xlsx`]: tables as sheets of a workbook.
//! - [`text`]: tables, headings and paragraphs for the terminal and for mails.

pub mod chart;
pub mod clip;
pub mod dimension;
pub mod dxf;
pub mod geometry;
pub mod glb;
pub mod glyphs;
pub mod hatch;
pub mod item;
pub mod lettering;
mod letters;
pub mod level;
pub mod mark;
pub mod pdf;
pub mod pen;
pub mod scale;
pub mod scene;
pub mod schedule;
pub mod sheet;
pub mod solid;
pub mod svg;
pub mod text;
pub mod title_block;
pub mod xlsx;
