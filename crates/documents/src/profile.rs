//! Stub until the drawing is merged.
#![allow(missing_docs)]
use crate::render::scene::Scene;
use stillrise_checks::{Judged, Part};
use stillrise_search::Settled;
pub struct Profile { pub scene: Scene, pub stations: Vec<Station> }
pub struct Station { pub id: String, pub title: String, pub says: Vec<String>, pub blocks: Vec<String> }
pub struct Paper { pub width: f64, pub height: f64 }
pub struct Group<'a> { pub part: Part, pub mark: String, pub findings: Vec<&'a Judged> }
pub fn findings(settled: &Settled) -> Vec<Group<'_>> {
    let mut groups: Vec<Group> = Vec::new();
    for judged in settled.verdicts.iter().filter(|j| j.verdict.is_finding()) {
        match groups.iter_mut().find(|g| g.part == judged.rule.part) {
            Some(group) => group.findings.push(judged),
            None => groups.push(Group { part: judged.rule.part, mark: String::new(), findings: vec![judged] }),
        }
    }
    groups.sort_by_key(|g| g.part);
    for (k, group) in groups.iter_mut().enumerate() { group.mark = format!("F{}", k + 1); }
    groups
}
pub fn profile(settled: &Settled, _paper: Paper) -> Profile {
    let drawing = crate::section::section(settled, crate::Edition::Us);
    let scene = drawing.map_or_else(|| Scene::new("", "", 100.0, 50.0), |d| d.scene);
    Profile { scene, stations: vec![Station { id: "inlet-station".into(), title: "Inlet".into(), says: vec![], blocks: vec!["inlet".into(), "water".into()] }] }
}
