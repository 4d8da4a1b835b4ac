//! What a shop and whoever installs a unit would ask, against arithmetic by hand beside each test.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::bases::look;
use common::{OUT, Sheet, demo};
use stillrise_design::performance::shop::Shop;
use stillrise_design::provenance::Origin;
use stillrise_search::Settled;
use stillrise_units::catalog::{DEG_F, FT2, GAL, H, IN, KW, LB, LBF, ONE, PSF, PSI, WATT};
use stillrise_units::{Typed, Unit as Of};

/// Weight of cold water of 50 °F, lb/ft3: 999.70 kg/m3, of the handbook's published table.
const WATER: f64 = 62.409;

fn shop(settled: &Settled) -> &Shop {
    let performance =
        settled.job.design.performance.as_ref().unwrap_or_else(|| panic!("{:?}", settled.job.design.stops));
    performance.shop.as_ref().expect("worked for a unit that is offered")
}

fn with(base: &str, more: &[(&str, &str)]) -> Settled {
    more.iter().fold(Sheet::data(base), |sheet, (key, value)| sheet.with(key, value)).settle(&demo())
}

/// Within what the hand figure's digits allow, relative.
fn close<Q: Typed>(value: Q, expected: f64, in_unit: &'static Of, within: f64) {
    let value = in_unit.from_si(value.si());
    assert!((value - expected).abs() <= within * expected.abs(), "{value} {}, by hand {expected}", in_unit.symbol);
}

/// A tank of 132 x 48 x 68 in, crest at 46 in: 11 x 4 ft of plan, 168.667 ft3 up to the crest and 249.333 to the top. Its hopper
/// runs from 36 x 48 in at the top to 6 in at the bottom, 20 in deep, and is asked of the unit. Empty it weighs 3,200 lb.
#[test]
fn a_stated_weight_carries_water_to_the_crest_and_to_the_top() {
    let settled = with("wash", &[("unit.dimensions.empty_weight", "3200 lb")]);
    let found = shop(&settled).weights.as_ref().expect("weights");
    let unit = &settled.job.design.train.as_ref().expect("a train").unit;
    let hopper = unit.hopper.as_ref().expect("a hopper").volume.q.si() / 0.028_316_847;
    let (water, full) = ((168.667 + hopper) * WATER, (249.333 + hopper) * WATER);
    close(found.water.q, water, &LB, 1e-4);
    close(found.full.q, full, &LB, 1e-4);
    assert!(found.stated);
    close(found.empty.expect("stated").q, 3200.0, &LB, 1e-12);
    close(found.test.expect("known").q, 3200.0 + full, &LB, 1e-4);
    let sludge = found.sludge.map_or(0.0, |over| LB.from_si(over.q.si()));
    assert!(sludge >= 0.0);
    close(found.operating.expect("known").q, 3200.0 + water + sludge, &LB, 1e-4);
    // A hopper under its floor puts it on legs, of which four share the load.
    assert!(found.bearing.is_none());
    close(found.leg.expect("legs").q, (3200.0 + full) / 4.0, &LB, 1e-4);
    // Without its hopper it stands on its floor of 44 ft2.
    let text = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/data/wash.toml")).expect("a file");
    let keys = |line: &&str| !line.starts_with("hopper_");
    let text = text.lines().filter(keys).collect::<Vec<_>>().join("\n");
    let flat =
        Sheet::text("wash without its hopper", &text).with("unit.dimensions.empty_weight", "3200 lb").settle(&demo());
    let stands = shop(&flat).weights.as_ref().expect("weights");
    assert!(stands.leg.is_none());
    close(stands.bearing.expect("a floor").q, (3200.0 + 249.333 * WATER) / 44.0, &PSF, 1e-4);
    // 4 points: 800 lbf each; two legs at 60 degrees carry 1,600 / sin 60 = 1,847.5 lbf, a lug is designed for twice that.
    let lifting = shop(&settled).lifting.as_ref().expect("lifted");
    let pulls = lifting.pulls.as_ref().expect("known");
    close(pulls.each.q, 800.0, &LBF, 1e-9);
    close(pulls.tension.q, 1847.52, &LBF, 1e-5);
    close(pulls.lug.q, 3695.04, &LBF, 1e-5);
    // At 45 degrees 1,600 x 1.41421.
    let flat = with("wash", &[("unit.dimensions.empty_weight", "3200 lb"), ("installation.sling_angle", "45 deg")]);
    let pulls = shop(&flat).lifting.as_ref().and_then(|l| l.pulls.as_ref()).expect("known").tension.q;
    close(pulls, 2262.74, &LBF, 1e-5);
}

/// Floor 44 ft2 and walls 2 x 15 x 5.6667 ft = 170 ft2: 214 ft2 of 1/4 in steel of 490.06 lb/ft3 are 2,184.9 lb, a fifth more
/// 2,621.8. Along the unit: the vessel at 66 in; the hopper of 36 in by 48 in at its top,
/// 6 in square at its bottom and 20 in deep, with sides of sqrt(20^2 + 15^2) = 25 in and sqrt(20^2 + 21^2) = 29 in, has
/// 54 x 25 + 42 x 29 + 36 = 2,604 in2 in place of the floor's 1,728, 6.0833 ft2 more, at 18 in; inner walls of 22.667 ft2 at the end of the inlet chamber, 12 in, where
/// there is a baffle, and at the downcomer, 118 in.
#[test]
fn a_weight_nobody_stated_is_estimated_from_the_steel() {
    let steel = [("unit.dimensions.wall", "0.25 in"), ("unit.dimensions.material", "carbon steel")];
    let settled = with("wash", &steel);
    let found = shop(&settled).weights.as_ref().expect("weights");
    assert!(!found.stated);
    close(found.empty.expect("estimated").q, 2621.8, &LB, 2e-4);
    let unit = &settled.job.design.train.as_ref().expect("a train").unit;
    let baffle = if unit.baffle.is_some() { 22.6667 } else { 0.0 };
    let (moments, area) =
        (214.0 * 66.0 + 6.0833 * 18.0 + baffle * 12.0 + 22.6667 * 118.0, 214.0 + 6.0833 + baffle + 22.6667);
    let centre = moments / area;
    close(found.centre.expect("a vessel").q, centre, &IN, 1e-4);
    // Without the thickness nothing is estimated, and nothing is made up.
    let silent = with("wash", &[]);
    let found = shop(&silent).weights.as_ref().expect("weights");
    assert!(found.empty.is_none() && found.operating.is_none() && found.test.is_none());
    assert!(shop(&silent).lifting.as_ref().is_some_and(|l| l.pulls.is_none()));
}

/// 68 in of water press with 62.409 x 68 / 1728 = 2.45591 psi at the foot. Panel 60 in wide under a stiff rim, width over
/// height 0.88235: between the rows 0.75 and 1.0 of the table 0.136 + 0.52941 x 0.072 = 0.174118 fixed, and
/// 0.126 + 0.52941 x 0.036 = 0.145059 turning; x p H2/t2 = 2.45591 x 4,624 / 0.0625 = 181,698 psi: 31,637 psi.
/// Stiffeners may stand 0.25 (2 x 21,600 / 2.45591)^0.5 = 33.157 in apart.
#[test]
fn a_wall_full_to_the_rim_bends_by_the_table() {
    let steel = [
        ("unit.dimensions.wall", "0.25 in"),
        ("unit.dimensions.material", "carbon steel"),
        ("unit.dimensions.stiff_rim", "true"),
    ];
    let settled = with("wash", &[&steel[..], &[("unit.dimensions.stiffener_spacing", "60 in")]].concat());
    let walls = shop(&settled).walls.as_ref().expect("a tank of steel");
    close(walls.pressure.q, 2.45591, &PSI, 1e-4);
    close(walls.allowable.q, 21_600.0, &PSI, 1e-9);
    close(walls.stress.expect("in the table").q, 31_637.0, &PSI, 2e-4);
    close(walls.spacing.q, 33.157, &IN, 1e-4);
    assert!(walls.deflection.is_none(), "it yields first");
    // Stiffeners 41 in apart, 0.602941 of the height: 0.084 + 0.411765 x 0.042 = 0.101294 turning, 18,405 psi; it runs through
    // and bulges by 0.0010 + 0.411765 x 0.0027 = 0.0021118, x p H4/(E t3) = 2.45591 x 21,381,376 / (29e6 x 0.015625) = 115.886.
    let closer = with("wash", &[&steel[..], &[("unit.dimensions.stiffener_spacing", "41 in")]].concat());
    let panel = shop(&closer).walls.as_ref().expect("a tank of steel");
    close(panel.stress.expect("in the table").q, 18_405.0, &PSI, 2e-4);
    close(panel.deflection.expect("in the table").q, 0.0021118 * 115.886, &IN, 1e-3);
    // A bar of 3/8 in at 60 in: moment 2.45591 x 60 x 4,624 / 15.58846 = 43,709 lbf in; (6 x 43,709 / 8,100)^0.5 = 5.690 in.
    close(walls.bar_depth.q, 5.690, &IN, 2e-4);
    // The rim of 132 in: 2.45591 x 68 x 132 / 6 = 3,674.0 lbf; (6 x 3,674.0 x 132 / 8 / 10,800)^0.5 = 5.803 in of 1/2 in.
    close(walls.rim_push.q, 3674.0, &LBF, 2e-4);
    close(walls.rim_depth.q, 5.803, &IN, 3e-4);
    // With nothing said of stiffeners and rim: 132 in wide, a free rim; 1.94118 between the rows 1.5 and 2.0: 0.88235 of the
    // way, 0.363 + 0.137647 = 0.500647 fixed.
    let bare = with("wash", &steel[..2]);
    let walls = shop(&bare).walls.as_ref().expect("a tank of steel");
    close(walls.stress.expect("in the table").q, 0.500647 * 181_698.0, &PSI, 2e-4);
    assert_eq!(look(&bare, "wall-overstressed").word(), "cannot judge");
    // A lining is no steel: half of the wall bends to four times the stress.
    let lined = with("wash", &[&steel[..2], &[("unit.dimensions.steel", "0.125 in")]].concat());
    let stress = shop(&lined).walls.as_ref().and_then(|w| w.stress).expect("in the table");
    close(stress.q, 4.0 * 0.500647 * 181_698.0, &PSI, 2e-4);
}

/// A cylinder of 72 in: 62.409 x 72 / 1728 = 2.60038 psi at its lowest line, hoop 2.60038 x 36 / 0.25 = 374.45 psi. It holds
/// pi/4 x 72^2 x 208 in3 and two heads of pi/24 x 72^3: 4,089 gal, for which Chicago, Floral Park and Rye print 1/4 in alike.
/// A flat head under 1.30019 psi: 1.2375 x 1.30019 x (36/0.25)^2 = 33,364 psi.
#[test]
fn a_cylinder_is_held_against_codes_and_its_flat_heads() {
    let settled = with("buried", &[]);
    let found = shop(&settled).cylinder.as_ref().expect("a cylinder of steel");
    close(found.capacity.q, (4071.504 * 208.0 + 2.0 * 48_858.05) / 231.0, &GAL, 1e-5);
    close(found.hoop.q, 374.45, &PSI, 1e-4);
    assert!(found.head.is_none());
    for printed in found.printed.as_ref().expect("in the tables") {
        close(printed.thickness.q, 0.25, &IN, 1e-12);
    }
    let flat = with("buried", &[("unit.dimensions.heads", "flat")]);
    close(shop(&flat).cylinder.as_ref().and_then(|c| c.head).expect("flat").q, 33_364.0, &PSI, 2e-4);
    assert!(shop(&settled).walls.is_none() && shop(&settled).frost.is_none());
}

/// Before it lies in the ground the cylinder rests on two saddles, half a radius, 18 in, from its seams, 172 in apart: a fifth of
/// the shell would be 41.6 in. Its heads are 18 in deep: 1 + 4 x 18 / 624 = 1.115385. Midway W/2 x 52 x ((1 + 2 (1,296 - 324) /
/// 43,264) / 1.115385 - 72 / 208) = W/2 x 30.71548 in over pi x 1,296 x 0.25 = 1,017.876 in3: 0.0150880 W psi. Over a saddle
/// W/2 x 18 x (1 - (1 - 18/208 + 972/7,488) / 1.115385) = W/2 x 1.163793 in: 0.000571675 W psi. Water in it weighs 546.637 ft3 x
/// 62.409 = 34,115 lb; empty it weighs 5,400 lb.
#[test]
fn a_cylinder_rests_on_two_saddles_before_it_is_let_into_the_ground() {
    let settled = with("buried", &[]);
    let (found, weights) = (shop(&settled).saddles.as_ref().expect("steel"), shop(&settled).weights.as_ref());
    close(found.place.q, 18.0, &IN, 1e-9);
    close(found.span.q, 172.0, &IN, 1e-9);
    let full = 5400.0 + 34_115.0;
    close(found.midway.q, 0.015_088_0 * full, &PSI, 1e-4);
    close(found.over.q, 0.000_571_675 * full, &PSI, 1e-4);
    // The empty weight by its lever arms, from the tip of a head: the first saddle stands at 18 + 18 in. Water shares evenly.
    let centre = IN.from_si(weights.and_then(|w| w.centre).expect("a vessel").q.si()) - 36.0;
    let heavier = 5400.0 * centre.max(172.0 - centre) / 172.0;
    close(found.load.q, heavier + 34_115.0 / 2.0, &LBF, 1e-4);
    assert!(shop(&with("wash", &[("unit.dimensions.wall", "0.25 in")])).saddles.is_none());
}

/// All round the tank lie 2 x 44 + 170 = 258 ft2, 23.9690 m2. Bare walls of 0.0299 m2 K/W: from 50 °F to -5 °F, 30.556 K,
/// they lose 23.9690 x 30.556 / 0.0299 = 24,495 W. The water, m kg, cools to 32 °F in 4186.8 m x 30.556 / 24,495 x ln(55/37).
/// Held at 41 °F, 25.5556 K over the air, behind 2 in of 0.0433 W/(m K): 0.0508 / 0.0433 + 0.0299 = 1.20311; 509.13 W, a quarter
/// more 0.63642 kW; bare 20,487 W, 25.608 kW.
#[test]
fn standing_water_freezes_and_a_heater_holds_it() {
    let settled = with("wash", &[("site.coldest_air", "-5 °F")]);
    let frost = shop(&settled).frost.as_ref().expect("outdoors, in frost");
    close(frost.area.q, 258.0, &FT2, 1e-6);
    close(frost.loss.q, 24_495.0, &WATT, 1e-4);
    let mass = shop(&settled).weights.as_ref().expect("weights").water.q.si();
    let hours = 4186.8 * mass * 30.5556 / 24_495.0 * (55.0_f64 / 37.0).ln() / 3600.0;
    close(frost.freezes_in.expect("warmer than ice").q, hours, &H, 1e-3);
    close(frost.kept.q, 41.0, &DEG_F, 1e-9);
    close(frost.heater.q, 0.63642, &KW, 2e-4);
    close(frost.heater_bare.q, 25.608, &KW, 2e-4);
    let says = look(&settled, "frost-outdoors").says().to_owned();
    assert!(says.contains("begins to freeze after") && says.contains("0.636 kW"), "{says}");
    // Indoors, in the ground, and where the air stays above freezing, none of it.
    for quiet in [
        with("wash", &[("site.coldest_air", "-5 °F"), ("site.indoors", "true")]),
        with("buried", &[("site.coldest_air", "-5 °F")]),
        with("wash", &[]),
        with("wash", &[("site.coldest_air", OUT)]),
    ] {
        assert!(shop(&quiet).frost.is_none());
    }
    // Insulation that is stated holds it longer, as the resistances are.
    let clad = with("wash", &[("site.coldest_air", "-5 °F"), ("installation.insulation", "2 in")]);
    let longer = shop(&clad).frost.as_ref().and_then(|f| f.freezes_in).expect("warmer than ice");
    close(longer.q, hours * 1.203_11 / 0.0299, &H, 1e-3);
}

/// A suction truck of 200 gpm, 12.618 L/s, against at most 0.25 kPa: (2 x 250 / (3 x 1.2))^0.5 = 11.785 m/s through
/// 1,070.7 mm2, a bore of 36.92 mm; the handbook's least is 2 in, the next pipe 2 in.
#[test]
fn a_closed_unit_is_vented_by_the_larger_of_filling_and_emptying() {
    let settled = with("buried", &[]);
    let vent = shop(&settled).vent.as_ref().expect("closed");
    close(vent.bore.q, 36.92 / 25.4, &IN, 2e-4);
    close(vent.least.q, 2.0, &IN, 1e-12);
    assert_eq!(vent.size.map(|size| size.word), Some("2 in"));
    assert!(shop(&with("wash", &[])).vent.is_none());
    // 1,600 gpm: eight times the air, 8^0.5 times the bore, 104.43 mm: the next pipe is 5 in.
    let fast = with("buried", &[("installation.emptied_at", "1600 gpm")]);
    let vent = shop(&fast).vent.as_ref().expect("closed");
    close(vent.bore.q, 104.43 / 25.4, &IN, 2e-4);
    assert_eq!(vent.size.map(|size| size.word), Some("5 in"));
}

/// Shell pi x 6 x 17.3333 ft = 326.73 ft2, two 2:1 heads of 1.380173 x 28.2743 = 39.023 ft2: 404.77 ft2. A fifth bare at 2 mA
/// for each square foot: 0.161910 A. Over 30 years 30 x 8.8 x 0.161910 / 0.5 = 85.49 lb, six anodes of 17 lb; one gives
/// 120,000 / 5,000 = 24 mA, which asks for seven.
#[test]
fn buried_steel_asks_for_anodes() {
    let settled = with("buried", &[]);
    let found = shop(&settled).protection.as_ref().expect("carbon steel in the ground");
    close(found.area.q, 404.77, &FT2, 1e-4);
    close(found.current.q, 0.161_910, &ONE, 1e-4);
    close(found.mass.q, 85.49, &LB, 1e-4);
    close(found.one.q, 0.024, &ONE, 1e-9);
    close(found.anodes.q, 7.0, &ONE, 1e-12);
    // At 2 % bare a tenth of it: one anode's mass, and one's current.
    let shop_coat = with("buried", &[("installation.bare", "2 %")]);
    close(shop(&shop_coat).protection.as_ref().expect("steel").anodes.q, 1.0, &ONE, 1e-12);
    let stainless = with("buried", &[("unit.dimensions.material", "stainless steel")]);
    assert!(shop(&stainless).protection.is_none());
}

/// Diesel flashes above 100 °F: class II, nothing drawn. Gasoline is of class I.
#[test]
fn oils_are_classed_by_their_flash_point() {
    let diesel = with("wash", &[]);
    let areas = &shop(&diesel).areas;
    assert!(!areas.volatile && areas.oils.iter().all(|oil| oil.class.word.starts_with("II")), "{areas:?}");
    let gasoline = with("wash", &[("stream.oil.kind", "gasoline")]);
    assert!(shop(&gasoline).areas.volatile);
    assert!(shop(&gasoline).areas.oils[0].class.word.starts_with('I'));
}

/// Whatever the shop takes for granted has a key that answers it, a question and a range that holds it; it is asked among the
/// others, moves nothing, and is no input of a study.
#[test]
fn what_the_shop_assumes_is_asked_for_and_moves_nothing() {
    let mut keys = Vec::new();
    for settled in [with("wash", &[("site.coldest_air", "-5 °F")]), with("buried", &[])] {
        let ledger = &settled.job.ledger;
        for entry in ledger.entries.iter().filter(|e| e.section.starts_with("shop")) {
            let Origin::Assumed(a) = &entry.origin else { continue };
            assert!(a.key.starts_with("installation.") && a.question.ends_with('?'), "{a:?}");
            let question = settled.questions().iter().find(|q| q.key == a.key).unwrap_or_else(|| panic!("{}", a.key));
            assert!(question.weight < 1e-9 && question.share.is_none(), "{}: {}", a.key, question.weight);
            keys.push(a.key.clone());
        }
        assert!(stillrise_search::risk::inputs::inputs(ledger).iter().all(|i| !i.key.starts_with("installation.")));
    }
    keys.sort();
    keys.dedup();
    assert_eq!(keys.len(), 9, "{keys:?}");
    // Answered, it is assumed no more.
    let said = with("buried", &[("installation.soil_resistivity", "3000"), ("installation.lifting_points", "2")]);
    assert!(
        said.questions()
            .iter()
            .all(|q| !["installation.soil_resistivity", "installation.lifting_points"].contains(&&*q.key))
    );
}

/// A row weighs its unit without options: with a sand compartment of a fifth of the length a fifth of the rest comes on top.
#[test]
fn options_add_to_the_weight_that_a_row_states() {
    let job = common::worked().into_iter().find(|j| j.name == "market-wash").expect("the market is a worked job");
    let settled = job.settle(&demo());
    let found = shop(&settled).weights.as_ref().expect("weights");
    let unit = &settled.job.design.train.as_ref().expect("a train").unit;
    let row = unit.particulars.empty_weight.expect("the row weighs it").q.si();
    let options = unit.sand_trap.iter().map(|s| s.length.q.si()).chain(unit.pump_out.iter().map(|p| p.length.q.si()));
    let (all, options) = (unit.body.length().q.si(), options.sum::<f64>());
    assert!(found.options_added && options > 0.0);
    close(found.empty.expect("stated").q, row * all / (all - options) / 0.453_592_37, &LB, 1e-9);
}
