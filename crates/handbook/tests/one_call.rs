//! Pages whose printed equation is one call: "what is printed is what ran" would compare the call with itself. Here each is
//! worked again by what the page prints of that call, written apart from it, at every check of the page.

#![allow(clippy::expect_used, clippy::panic, reason = "a test fails by panicking")]

use stillrise_handbook::equation::{Tree, parse_lines};
use stillrise_handbook::evidence;
use stillrise_handbook::page::{Arg, Argument, Body, Page};
use stillrise_handbook::pages;
use stillrise_handbook::read;
use stillrise_handbook::separation::catch::{Catch, Catches};
use stillrise_handbook::separation::remaining_oil::{DropletLaw, Droplets, Liquids, RiseLaw};
use stillrise_handbook::separation::remaining_solids::Grains;
use stillrise_handbook::separation::{
    drag_rise, grit_settling, mesh_curve, mesh_removal, plate_removal, stokes_rise, tank_removal,
};
use stillrise_units::catalog::{L_S, YR};
use stillrise_units::math::{exp, ln, normal_cdf, pow, sqrt};
use stillrise_units::{Density, KinematicViscosity, Length, Typed, Velocity};

/// The page again, SI; for a page that maps a series the last column in order.
type Again = fn(&Page, &[Arg]) -> Vec<f64>;

/// Every page of one call, how it is worked again, and how far the two may lie apart.
const PAGES: &[(&str, Again, f64)] = &[
    ("dobbins-camp", dobbins, 4e-4),
    ("en858-standard-size", standard_size, 1e-12),
    ("frequency-factor", frequency_factor, 1e-12),
    ("measured-median", median, 1e-9),
    ("mesh-curve", curve, 1e-12),
    ("remaining-oil", oil, 3e-5),
    ("remaining-solids", solids, 3e-5),
    ("saline-density", saline, 0.06),
    ("storage-outflow", store, 1e-12),
    ("travel-time", travel, 1e-9),
    ("volume-finer", by_volume, 1e-12),
];

#[test]
fn what_one_call_prints_is_what_it_does() {
    for (id, again, apart) in PAGES {
        let page = pages().find(|page| page.id == *id).expect("a page of that id");
        let cases = cases(page);
        assert!(cases.len() > 1, "{id}");
        for args in cases {
            let Ok(result) = (page.call)(&args) else { continue };
            let ran = match result {
                Arg::Number(si) => vec![si],
                Arg::Series(rows) => rows.into_iter().map(|(_, y)| y).collect(),
                other => panic!("{id} gives {other:?}"),
            };
            let worked = again(page, &args);
            assert_eq!(ran.len(), worked.len(), "{id}");
            for (ran, worked) in ran.iter().zip(&worked) {
                assert!((ran - worked).abs() <= *apart, "{id} {args:?}: {ran} ran, {worked} by what is printed");
            }
        }
    }
}

#[test]
fn every_page_of_one_call_is_worked_again() {
    let mut bare = Vec::new();
    for page in pages() {
        let (Body::Typed(text) | Body::Reduced(text) | Body::Maps(text)) = &page.body else { continue };
        let lines = parse_lines(text).expect("a body that parses");
        let [line] = &lines[..] else { continue };
        let Tree::Call(name, _) = &line.tree else { continue };
        let own = page.helpers.iter().any(|helper| helper.name == name);
        if own && !PAGES.iter().any(|(id, ..)| *id == page.id) {
            bare.push(page.id);
        }
    }
    assert!(bare.is_empty(), "print one call of their own: {bare:?}");
}

fn cases(page: &'static Page) -> Vec<Vec<Arg>> {
    let mut texts: Vec<String> = page.checks.iter().map(|c| c.given.to_owned()).collect();
    let rows = evidence::tables().filter(|t| t.page == page).flat_map(evidence::rows);
    // A table has rows by the hundred; each is worked in ten thousand steps.
    texts.extend(rows.map(|o| o.given).step_by(7));
    texts.iter().filter_map(|t| read::arguments(page, &read::split(t)).ok()).collect()
}

fn number(arg: &Arg) -> f64 {
    if let Arg::Number(si) = arg { *si } else { f64::NAN }
}

fn rows(arg: &Arg) -> &[(f64, f64)] {
    if let Arg::Series(rows) = arg { rows } else { &[] }
}

/// The numbers in the words that a page prints of its call.
fn printed(page: &Page) -> Vec<f64> {
    let words = page.helpers[0].meaning.split(|c: char| !(c.is_ascii_digit() || c == '.'));
    words.filter_map(|word| word.trim_end_matches('.').parse().ok()).collect()
}

fn standard_size(page: &Page, args: &[Arg]) -> Vec<f64> {
    let need = L_S.from_si(number(&args[0]));
    let sizes = printed(page).into_iter().filter(|size| *size >= need - 1e-9 * need);
    vec![L_S.to_si(sizes.fold(f64::INFINITY, f64::min))]
}

fn frequency_factor(page: &Page, args: &[Arg]) -> Vec<f64> {
    let table: Vec<(f64, f64)> = printed(page).chunks(2).map(|pair| (pair[1], pair[0])).collect();
    vec![straight(&table, YR.from_si(number(&args[0])))]
}

/// Straight between rows, the nearest row beyond the ends.
fn straight(table: &[(f64, f64)], x: f64) -> f64 {
    let (first, last) = (table[0], table[table.len() - 1]);
    if x <= first.0 {
        return first.1;
    }
    if x >= last.0 {
        return last.1;
    }
    let pair = table.windows(2).find(|pair| x <= pair[1].0).expect("a row above");
    pair[0].1 + (pair[1].1 - pair[0].1) * (x - pair[0].0) / (pair[1].0 - pair[0].0)
}

/// The size where the table passes one half, by halving over the logarithm of size.
fn median(_: &Page, args: &[Arg]) -> Vec<f64> {
    let table: Vec<(f64, f64)> = rows(&args[0]).iter().map(|(d, f)| (ln(*d), *f)).collect();
    let (mut low, mut high) = (table[0].0, table[table.len() - 1].0);
    for _ in 0..200 {
        let middle = 0.5 * (low + high);
        if straight(&table, middle) >= 0.5 { high = middle } else { low = middle }
    }
    vec![exp(high)]
}

/// UNESCO's equation of state of sea water at one atmosphere (Millero and Poisson 1981), from memory: another fit than the
/// one that runs.
fn saline(page: &Page, args: &[Arg]) -> Vec<f64> {
    let at = |name: &str| page.args.iter().position(|a| a.name == name).map_or(f64::NAN, |k| number(&args[k]));
    // Practical salinity is less than what is dissolved, by 1.004715 (TEOS-10).
    let (t, s) = (at("t") - 273.15, 1000.0 * at("salinity") / 1.004_715);
    let poly = |terms: &[f64]| terms.iter().rev().fold(0.0, |sum, term| sum * t + term);
    let pure = poly(&[999.842_594, 6.793_952e-2, -9.095_29e-3, 1.001_685e-4, -1.120_083e-6, 6.536_332e-9]);
    let a = poly(&[8.244_93e-1, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9]);
    let b = poly(&[-5.724_66e-3, 1.0227e-4, -1.6546e-6]);
    vec![pure + a * s + b * s * sqrt(s) + 4.8314e-4 * s * s]
}

fn store(_: &Page, args: &[Arg]) -> Vec<f64> {
    vec![straight(rows(&args[0]), number(&args[1]))]
}

fn travel(_: &Page, args: &[Arg]) -> Vec<f64> {
    vec![rows(&args[0]).iter().map(|(length, v)| length / v).sum()]
}

/// The sum of modes as printed, where doubles carry it; with less mixing the droplets' balance over the depth in thin
/// layers: they drift up at a speed of one over a depth of one, mixed by 1/P, none through the far end, and all that
/// drift over the near end caught.
fn dobbins(_: &Page, args: &[Arg]) -> Vec<f64> {
    let [v, v_0, p] = [0, 1, 2].map(|k| number(&args[k]));
    let x = (v / v_0).max(0.0);
    vec![match p {
        p if p < 1e-3 => 1.0 - exp(-x),
        p if p <= 24.0 => 1.0 - (0..60).map(|k| mode(k, x, p)).sum::<f64>(),
        p if p > 1e5 => x.min(1.0),
        p => layers(x, p),
    }]
}

fn mode(k: u32, x: f64, p: f64) -> f64 {
    let h = 0.5 * p;
    let low = core::f64::consts::PI * f64::from(k);
    // b tan(b/2) = h in the first, third, .. interval of pi, b cot(b/2) = -h in the others.
    let beyond = |b: f64| if k.is_multiple_of(2) { b * (0.5 * b).tan() > h } else { b / (0.5 * b).tan() < -h };
    let (mut below, mut above) = (low, low + core::f64::consts::PI);
    for _ in 0..200 {
        let middle = 0.5 * (below + above);
        if beyond(middle) { above = middle } else { below = middle }
    }
    let (b, whole) = (below, h * h + below * below);
    exp(h - whole * x / p) * b.sin() * 4.0 * h * b / (whole * (2.0 * h + whole))
}

fn layers(x: f64, p: f64) -> f64 {
    const LAYERS: usize = 500;
    const TIMES: i32 = 500;
    let (thick, step) = (1.0 / 500.0, x / f64::from(TIMES));
    let (drift, mix) = (0.5 * step / (2.0 * thick), 0.5 * step / (p * thick * thick));
    let mut c = vec![1.0_f64; LAYERS];
    for _ in 0..TIMES {
        // Net gain of a layer in half a step, as known now; the same is then solved for what comes.
        let flow = |c: &[f64], k: usize| {
            let into = if k == 0 { 0.0 } else { drift * (c[k - 1] + c[k]) - mix * (c[k] - c[k - 1]) };
            let out =
                if k + 1 == LAYERS { 2.0 * drift * c[k] } else { drift * (c[k] + c[k + 1]) - mix * (c[k + 1] - c[k]) };
            into - out
        };
        let known: Vec<f64> = (0..LAYERS).map(|k| c[k] + flow(&c, k)).collect();
        // Thomas's algorithm for the three diagonals.
        let diagonal = |k: usize| {
            let up = if k + 1 == LAYERS { 2.0 * drift } else { drift + mix };
            1.0 + up + if k == 0 { 0.0 } else { mix - drift }
        };
        let (lower, upper) = (-(drift + mix), drift - mix);
        let (mut a, mut b) = (vec![0.0; LAYERS], vec![0.0; LAYERS]);
        for k in 0..LAYERS {
            let over = if k == 0 { diagonal(0) } else { diagonal(k) - lower * a[k - 1] };
            a[k] = upper / over;
            b[k] = (known[k] - if k == 0 { 0.0 } else { lower * b[k - 1] }) / over;
        }
        for k in (0..LAYERS).rev() {
            c[k] = b[k] - if k + 1 == LAYERS { 0.0 } else { a[k] * c[k + 1] };
        }
    }
    1.0 - c.iter().sum::<f64>() * thick
}

fn curve(_: &Page, args: &[Arg]) -> Vec<f64> {
    let table: Vec<(f64, f64)> = rows(&args[1]).iter().map(|(d, e)| (ln(*d), *e)).collect();
    vec![straight(&table, ln(number(&args[0])))]
}

/// Number times the cube of size, each step of the table at the geometric mean of its ends.
fn by_volume(_: &Page, args: &[Arg]) -> Vec<f64> {
    let table = rows(&args[0]);
    let part = |k: usize| {
        let (d, before) = (table[k].0, if k == 0 { table[0] } else { table[k - 1] });
        let share = table[k].1 - if k == 0 { 0.0 } else { before.1 };
        share * pow(sqrt(d * before.0), 3.0)
    };
    let whole: f64 = (0..table.len()).map(part).sum();
    (0..table.len()).map(|k| (0..=k).map(part).sum::<f64>() / whole).collect()
}

/// Share of the volume in droplets finer than d.
fn finer(droplets: &Droplets, d: f64) -> f64 {
    let Droplets { law, d50, shape, largest, table } = droplets;
    let (d50, shape, largest) = (d50.si(), shape.si(), largest.si());
    match law {
        DropletLaw::LogNormal => normal_cdf(ln(d / d50) / ln(shape)),
        DropletLaw::RosinRammler => 1.0 - exp(-core::f64::consts::LN_2 * pow(d / d50, shape)),
        // Mugele and Evans: the logarithm of d over what is left to the largest is normal.
        DropletLaw::UpperLimit if d >= largest => 1.0,
        DropletLaw::UpperLimit => {
            let a = (largest - d50) / d50;
            normal_cdf(core::f64::consts::SQRT_2 * shape * ln(a * d / (largest - d)))
        }
        DropletLaw::Measured => by_rows(&table.0, d),
    }
}

/// A table over the logarithm of size: what is finer than its finest row lies below it, at no stated size.
fn by_rows(table: &[(f64, f64)], d: f64) -> f64 {
    let over_ln: Vec<(f64, f64)> = table.iter().map(|(d, f)| (ln(*d), *f)).collect();
    if d >= table[table.len() - 1].0 { 1.0 } else { straight(&over_ln, ln(d)) }
}

/// Steps over the logarithm of size.
const STEPS: i32 = 20_000;

/// The sum over thin slices of size of the slice's share and what passes of it.
fn slices(from: f64, to: f64, finer: impl Fn(f64) -> f64, passes: impl Fn(f64) -> f64) -> f64 {
    let (low, high) = (ln(from), ln(to));
    let at = |k: i32| exp(low + (high - low) * f64::from(k) / f64::from(STEPS));
    let slice = |k: i32| {
        let share = finer(at(k + 1)) - finer(at(k));
        if share > 0.0 { share * passes(sqrt(at(k) * at(k + 1))) } else { 0.0 }
    };
    (0..STEPS).map(slice).sum()
}

/// What passes the stages of one size, by the pages of the stages.
fn passes(stages: &Catches, d: Length, v: Velocity, liquids: Option<&Liquids>) -> f64 {
    stages.0.iter().fold(1.0, |left, stage| {
        let caught = match (stage.clone(), liquids) {
            (Catch::Tank(s), _) => tank_removal::removal(v, s.v_0, s.model, s.index),
            (Catch::Plates(s), _) => plate_removal::removal(v, s.v_0, s.spread, s.regime),
            (_, None) => return left,
            (Catch::Mesh(s), Some(w)) => {
                mesh_removal::removal(d, v, w.mu, w.t, s.solidity, s.fibre, s.length, s.u, s.sticking, s.saturation)
            }
            (Catch::MeshCurve(s), Some(_)) => mesh_curve::caught(d, s.curve),
        };
        left * (1.0 - caught.expect("in the domain").si())
    })
}

fn oil(_: &Page, args: &[Arg]) -> Vec<f64> {
    let droplets = Droplets::from_arg(&args[0]).expect("droplets");
    let (from, to) = (number(&args[1]), number(&args[2]));
    let liquids = Liquids::from_arg(&args[3]).expect("liquids");
    let stages = Catches::from_arg(&args[4]).expect("stages");
    let measured = droplets.law == DropletLaw::Measured;
    let (d50, largest) = (droplets.d50.si(), droplets.largest.si());
    // All that lies above the largest is of that size, and coarser than a table as of its coarsest row.
    let end = if measured { droplets.table.0[droplets.table.0.len() - 1].0.min(largest) } else { largest };
    let sinks = liquids.rho_o >= liquids.rho_w;
    let left = |d: f64| {
        if sinks {
            return 1.0;
        }
        let size = Length::from_si(d.min(end).min(9e-3));
        let rise = match liquids.law {
            RiseLaw::Stokes => stokes_rise::rise(size, liquids.rho_w, liquids.rho_o, liquids.mu),
            RiseLaw::Drag => drag_rise::rise(size, liquids.rho_w, liquids.rho_o, liquids.mu),
        };
        passes(&stages, size, rise.expect("in the domain"), Some(&liquids))
    };
    let below = |d: f64| finer(&droplets, d);
    let (low, high) = ((1e-5 * d50).max(2e-9), (1e4 * d50).min(end));
    // Finer than the finest row nothing is caught.
    let (low, fine) = if measured {
        let row = droplets.table.0[0];
        (row.0, if from < row.0 && to >= row.0 { row.1 } else { 0.0 })
    } else {
        (low, 0.0)
    };
    // What the law has above the largest, or a table above its coarsest row, is all of that size.
    let coarse =
        if from <= end && to > end && end < 1e4 * d50 { (1.0 - below(end * (1.0 - 1e-12))) * left(end) } else { 0.0 };
    vec![fine + slices(from.max(low), to.min(high), below, left) + coarse]
}

fn solids(_: &Page, args: &[Arg]) -> Vec<f64> {
    let grains = Grains::from_arg(&args[0]).expect("grains");
    let (from, to) = (number(&args[1]), number(&args[2]));
    let (rho_w, nu) = (Density::from_si(number(&args[3])), KinematicViscosity::from_si(number(&args[4])));
    let stages = Catches::from_arg(&args[5]).expect("stages");
    let (d50, spread) = (grains.d50.si(), ln(grains.sg.si()));
    let table = &grains.table.0;
    let below = |d: f64| if table.is_empty() { normal_cdf(ln(d / d50) / spread) } else { by_rows(table, d) };
    let left = |d: f64| {
        if grains.rho_s <= rho_w {
            return 1.0;
        }
        let size = Length::from_si(d.min(0.1));
        let settling = grit_settling::settling(size, grains.rho_s, rho_w, nu, grains.shape).expect("in the domain");
        passes(&stages, size, settling, None)
    };
    let low = if table.is_empty() { 1e-5 * d50 } else { table[0].0 };
    // What is finer than the finest row counts as of that size.
    let fine = if !table.is_empty() && from < low && to >= low { table[0].1 * left(low) } else { 0.0 };
    vec![fine + slices(from.max(low), to.min(1e4 * d50), below, left)]
}
