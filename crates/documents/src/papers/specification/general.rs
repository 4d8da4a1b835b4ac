//! Part 1: scope, references, submittals, quality, what it is designed for and what it shall do.

use super::{TO_BE_STATED, clause, units};
use crate::papers::common::{self, taken};
use crate::report::Report;
use crate::scope::{self, By};
use stillrise_design::basis::{Basis, FLOW_UNITS};
use stillrise_design::train::Train;
use stillrise_units::catalog::{DEG_C, DEG_F, KG_M3, LB_FT3, UM};
use stillrise_units::{System, Typed};

pub(super) fn general(r: &mut Report<'_>, train: &Train) {
    r.out.section("General");
    scope_of_it(r, train);
    references(r, train);
    clause(r, "1.3 Submittals", submittals(train));
    clause(r, "1.4 Quality", vec![
        "The maker shall have units of this kind in service on comparable water, and shall name two with their operators, flow and results, or say that there are none.".to_owned(),
        "A rating on a name plate shall be accepted only with its basis: droplet size, oil, water temperature, influent, state of cleaning.".to_owned(),
        "Results shown as evidence shall be measured by a third party, with method, flow, influent and effluent; computed results shall be called computed.".to_owned(),
        format!("The maker shall warrant materials and workmanship for {TO_BE_STATED} after start-up."),
    ]);
    if let Some(basis) = &r.settled.job.design.basis {
        designed_for(r, basis, train);
    }
    performance(r);
}

fn scope_of_it(r: &mut Report<'_>, train: &Train) {
    let rows = scope::rows(r.settled);
    let of = |by: By| {
        rows.iter().filter(|row| row.by == by).map(|row| row.item.to_lowercase()).collect::<Vec<_>>().join("; ")
    };
    let mut texts = vec![
        format!(
            "This specification is for {} (kind: {}) to separate free oil from water by gravity, complete and ready to be connected.",
            units(train),
            train.unit.arrangement.word()
        ),
        format!("The maker of the unit shall bring: {}.", of(By::Maker)),
        format!("By others, and not part of this specification: {}.", of(By::Others)),
    ];
    let open = of(By::Open);
    if !open.is_empty() {
        texts.push(format!("To be decided in the order [by whom]: {open}."));
    }
    clause(r, "1.1 Scope", texts);
}

fn references(r: &mut Report<'_>, train: &Train) {
    let mut texts = vec!["Local code, the discharge permit and the authority having jurisdiction shall govern wherever they differ from this specification.".to_owned()];
    let limits = common::limits(r.settled);
    let mut methods: Vec<&str> = limits.iter().filter_map(|limit| limit.method).collect();
    methods.dedup();
    texts.push(format!(
        "Analysis shall follow the method that the limit names: {}.",
        if methods.is_empty() { TO_BE_STATED.to_owned() } else { methods.join("; ") }
    ));
    texts.push(match (r.system, train.unit.arrangement.is_built_in()) {
        (System::Us, true) => "Concrete that holds water shall follow ACI 350, or a code that the authority accepts.".to_owned(),
        (System::Si, true) => "Concrete that holds water shall follow EN 1992-3, or a code that the authority accepts.".to_owned(),
        (System::Us, false) => "Welds of steel shall follow AWS D1.1; steel shall be blasted to SSPC-SP 10 before it is coated; or codes that the buyer accepts as equal.".to_owned(),
        (System::Si, false) => "Welds of steel shall follow ISO 5817, level C; steel shall be blasted to Sa 2½ of ISO 8501-1 before it is coated; or codes that the buyer accepts as equal.".to_owned(),
    });
    texts.push("Of each code the edition in force on the day of the order shall hold.".to_owned());
    clause(r, "1.2 References", texts);
}

fn submittals(train: &Train) -> Vec<String> {
    let mut texts = vec![
        "With the bid: completed data sheet; compliance with each clause, exceptions by clause; general arrangement with dimensions, nozzles and levels; weights empty, in service and full.".to_owned(),
        "With the bid: the calculation of what leaves, for the waters of clause 1.5, in the coldest water and at the end of the interval between pump-outs, with its method and its sources.".to_owned(),
        "Before fabrication, for review: shop drawings; calculation of vessel, stiffeners, lifting points and anchorage signed by a licensed engineer; coating system; instruments with their certificates.".to_owned(),
        "With delivery: records of the tests of clause 2.7, certificates of materials, manual of installation, operation and maintenance, list of spare parts.".to_owned(),
    ];
    if train.unit.mesh.is_some() {
        texts.push("Where credit is claimed for a mesh: the share it catches by droplet size, measured on that mesh, and the velocity at which it lets oil go.".to_owned());
    }
    texts
}

fn designed_for(r: &mut Report<'_>, basis: &Basis, train: &Train) {
    let settled = r.settled;
    let mut texts = Vec::new();
    if let Some(flow) = basis.design_flow() {
        texts.push(format!(
            "{} shall pass {} without water over the walls or oil in the outlet.",
            if train.count.q.si() > 1.5 { "The units that run, together," } else { "The unit" },
            r.prose(flow.q, FLOW_UNITS)
        ));
    }
    texts.push(
        "The design shall be for the waters of the table below, each at its flow, alone and as they come together."
            .to_owned(),
    );
    let f = &basis.fluids;
    texts.push(format!(
        "The water shall be taken as between {} and {}; the colder end decides how droplets rise.",
        r.prose(f.cold.temperature.q, (&DEG_F, &DEG_C)),
        r.prose(f.warm.temperature.q, (&DEG_F, &DEG_C))
    ));
    let oils: Vec<String> = f
        .oils
        .iter()
        .map(|oil| format!("{}, {} at {}", oil.name, r.prose(oil.density_15.q, (&LB_FT3, &KG_M3)), common::at_15(r)))
        .collect();
    texts.push(format!(
        "The oils shall be taken as: {}.",
        if oils.is_empty() { TO_BE_STATED.to_owned() } else { oils.join("; ") }
    ));
    let d50 = basis.droplets.d50;
    texts.push(format!(
        "Half of the free oil shall be taken to come in droplets smaller than {}{}.",
        r.prose(d50.q, (&UM, &UM)),
        taken(settled, d50.at)
    ));
    clause(r, "1.5 Designed for", texts);
    let table = common::waters(r, basis);
    r.out.table(&table);
}

fn performance(r: &mut Report<'_>) {
    let limits = common::limits(r.settled);
    let mut texts = Vec::new();
    for limit in &limits {
        texts.push(if limit.is_stated() {
            format!("The effluent shall keep this limit under the conditions of the performance statement: {}.", limit.title)
        } else {
            format!("No performance is specified for this limit ({}): {}. The bidder shall state what the unit does towards it, with evidence; a stage behind it, or a change ahead of it, shall be specified apart {TO_BE_STATED}.", limit.says, limit.title)
        });
    }
    if limits.is_empty() {
        texts.push(format!("Limit on what leaves, its statistic and its method: {TO_BE_STATED}."));
    }
    texts.push(
        "No performance shall be claimed on oil that is emulsified or dissolved, on detergents, solvents or metals."
            .to_owned(),
    );
    clause(r, "1.6 Performance", texts);
}
