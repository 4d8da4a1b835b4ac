//! The screen ahead: where leaves or rags are likely, or a pump stands ahead, bars no wider apart than the narrowest passage
//! behind them.

use super::super::unit::Unit;
use super::super::{Stage, StageKind};
use crate::basis::Basis;
use crate::basis::pump_shear::has_impeller;
use crate::basis::stated::{stated, stated_or_usual};
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{Stream, WaterKind};
use crate::provenance::{Pair, Stop, Trail, Val, WhatIf, choose, given};
use crate::{by, reckon};
use stillrise_handbook::hydraulics::bar_screen_loss::{self, BarShape};
use stillrise_handbook::page::Arg;
use stillrise_units::catalog::{IN, MM};
use stillrise_units::{Angle, Length, Ratio, Typed, Velocity, ratio};

const SMALL: Pair = (&IN, &MM);

/// A screen that is asked for, or stands.
#[derive(Debug, Clone)]
pub struct Screen {
    /// Why it is asked for, in words; empty where one stands that nothing asks for.
    pub reasons: Vec<&'static str>,
    /// Whether one stands ahead; nothing where nobody said.
    pub exists: Option<bool>,
    /// The narrowest passage behind it, and whose; nothing where none is known.
    pub narrowest: Option<(Val<Length>, &'static str)>,
    /// Clear opening that was stated.
    pub stated: Option<Val<Length>>,
    /// Its bars and what they lose; nothing where no opening is known.
    pub bars: Option<Bars>,
}

crate::record! {
    /// The bars of a screen, and what they lose.
    Bars {
        /// clear opening between two bars
        spacing: Length;
        /// thickness of a bar
        bar: Length;
        /// angle over the horizontal
        angle: Angle;
        /// velocity ahead of it
        velocity: Velocity;
        /// difference of levels, clean
        clean: Length;
        /// share of the openings that is covered when it is cleaned
        covered: Ratio;
        /// difference of levels when it is cleaned
        dirty: Length;
    }
}

/// Whether a stream brings rags and fibres: what is washed with hoses, or is called a wash or a rinse.
fn washes(stream: &Stream) -> bool {
    let name = stream.name.as_deref().unwrap_or("").to_lowercase();
    let other = matches!(stream.water.0, Some(WaterKind::Dewatering | WaterKind::Fire));
    !other && (stream.hoses.is_given() || ["wash", "rins", "clean"].iter().any(|word| name.contains(word)))
}

/// Finds the screen; nothing where none is asked for and none stands.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(in crate::train) fn screen<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    basis: &Basis,
    unit: &Unit,
) -> Result<Option<Screen>, Stop> {
    t.section("screen");
    let yard = basis.storm.is_some() && e.surfaces.iter().any(|s| *s.canopy != Some(true));
    let pump = basis.feed.pumped && has_impeller(basis.feed.class);
    let washed = e.streams.iter().any(washes);
    let all = [
        (yard, "rain brings leaves and litter off the yard"),
        (washed, "washing brings rags, labels and fibres"),
        (pump, "what comes has to pass the pump ahead"),
    ];
    let plates = unit.pack.as_ref().map(|pack| (pack.laid.gap, "gap between the plates"));
    let lift = e.lift.as_ref().filter(|_| basis.feed.pumped);
    let passes = lift.and_then(|lift| stated(t, w, "largest grain that passes the pump", &lift.passage));
    let passes = passes.map(|passage| (passage, "free passage of the pump"));
    // Without plates and pump there is nothing that it would clog.
    let clogs = plates.is_some() || pump || passes.is_some();
    let reasons: Vec<&'static str> = all.into_iter().filter(|(is, _)| *is && clogs).map(|(_, why)| why).collect();
    let exists = *e.screen.exists;
    let said = stated(t, w, "clear opening of the screen", &e.screen.spacing);
    if reasons.is_empty() && exists != Some(true) && said.is_none() {
        return Ok(None);
    }
    let narrowest = plates.into_iter().chain(passes).reduce(|a, b| if b.0.q < a.0.q { b } else { a });
    let spacing = said.or_else(|| {
        let (passage, _) = narrowest?;
        let among = "passages behind the screen";
        let because = "no wider than the narrowest of them: what passes the bars passes it";
        Some(choose(t, "clear opening of the screen", Some(SMALL), passage.q, among, because, &[passage.at]))
    });
    let bars = match spacing {
        Some(spacing) => Some(bars(t, w, e, spacing)?),
        None => None,
    };
    Ok(Some(Screen { reasons, exists, narrowest, stated: said, bars }))
}

/// The bars at their opening; what is not said of them is ours to choose.
fn bars<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, spacing: Val<Length>) -> Result<Bars, Stop> {
    let block = &e.screen;
    let bar = stated_or_usual(t, w, block.bar(), "thickness of the bars");
    let angle = stated_or_usual(t, w, block.angle(), "angle of the bars over the horizontal");
    let velocity = stated_or_usual(t, w, block.velocity(), "velocity ahead of the screen");
    let covered = stated_or_usual(t, w, block.covered(), "share of the openings that is covered when it is cleaned");
    let said = block.shape().source();
    let shape = match block.shape.0 {
        Some(shape) => given(t, "section of the bars", None, shape, &said, shape.word()),
        None => {
            let why = "the section that loses most";
            given(t, "section of the bars", None, BarShape::Rectangular, "our proposal", why)
        }
    };
    let clean = by!(t, "loss of the clean screen", bar_screen_loss::loss(shape, bar, spacing, velocity, angle))?;
    let open = reckon!(t, "opening that is left", [IN, MM], (spacing = spacing, covered = covered) spacing * (ratio(1.0) - covered));
    let wide = reckon!(t, "bar and what covers the opening", [IN, MM], (bar = bar, spacing = spacing, open = open) bar + spacing - open);
    let dirty =
        by!(t, "loss of the screen when it is cleaned", bar_screen_loss::loss(shape, wide, open, velocity, angle))?;
    Ok(Bars { spacing, bar, angle, velocity, clean, covered, dirty })
}

/// The stage.
pub(super) fn stage(screen: &Screen) -> Stage {
    let stands = screen.exists == Some(true);
    let mut why = screen.reasons.join("; ");
    if why.is_empty() {
        why.push_str("stands ahead");
    }
    if let Some((_, of)) = screen.narrowest {
        why.push_str(&format!("; to be no wider than the {of}"));
    } else {
        why.push_str("; how wide it may be hangs on the free passage of the pump");
    }
    let mut stage = Stage::new(StageKind::Screen, "screen", why, !stands);
    stage.size = screen.bars.as_ref().map(|bars| ("clear opening".to_owned(), Arg::Number(bars.spacing.q.si()), SMALL));
    stage
}
