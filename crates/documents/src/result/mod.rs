//! `result.json`: everything a program could want, with the whole trail and without a clock.

mod alternatives;
mod around;
mod containment;
mod european;
mod evidence;
mod ladder;
mod shop;
mod stands;

use crate::edition::Edition;
use crate::summary::{headline, that_matter};
use crate::trail;
use serde_json::{Map, Value, json};
use stillrise_design::performance::limit::{By, HeldBack, Word};
use stillrise_design::provenance::{Entry, Ledger, Node, Origin};
use stillrise_handbook::page::Arg;
use stillrise_search::Settled;
use stillrise_search::offered::Offered;
use stillrise_units::catalog::MG_L;
use stillrise_units::{System, Typed, Unit};

/// The result as a JSON value; its shape is described by [`crate::schema::result_schema`].
#[must_use]
pub fn result(settled: &Settled, edition: Edition) -> Value {
    let job = &settled.job;
    let head = &job.enquiry.head;
    let ledger = &job.ledger;
    let system = job.enquiry.system();
    json!({
        "tool": { "name": "stillrise", "version": env!("CARGO_PKG_VERSION") },
        "edition": edition.word(),
        "enquiry": {
            "title": head.title.0, "client": head.client.0, "project": head.project.0, "revision": head.revision.0, "date": head.date.0,
            "status": head.status.0.map_or("preliminary", |s| s.word()),
            "print": match system { System::Us => "us", System::Si => "si" },
            "notes": job.enquiry.notes.iter().map(|(place, note)| json!({ "place": place, "note": note })).collect::<Vec<_>>(),
        },
        "settings": crate::settings::json(&job.enquiry, edition),
        "caution": crate::summary::CAUTION,
        "headline": headline(settled),
        "triage": job.design.triage.iter().map(|l| json!({
            "subject": l.subject, "weight": l.weight.text(), "says": l.says, "could": l.could(|_| true), "source": l.source.map(ToString::to_string),
        })).collect::<Vec<_>>(),
        "answers": crate::reply::answered(settled),
        "stops": job.design.stops.iter().map(ToString::to_string).collect::<Vec<_>>(),
        "cases": cases(settled),
        "containment": containment::containment(settled),
        "european": european::european(settled),
        "regulation": crate::regulation::regulation_json(settled),
        "train": train(settled, edition),
        "performance": performance(settled),
        "limits": limits(settled),
        "evidence": evidence::evidence(settled),
        "rating": settled.diagnosis.as_ref().map(|d| crate::rating::rating_json(settled, d)),
        "risk": settled.risk.as_ref().map(|risk| crate::risk::risk_json(settled, risk)),
        "verdicts": verdicts(settled, edition),
        "candidates": settled.candidates.iter().map(|c| json!({
            "unit": c.unit.name(), "taken": c.taken, "total_oil_out": c.effluent.map(|e| plain(e.si(), &MG_L)),
            "barred": c.barred.as_ref().map(|(bar, says)| json!({ "rule": bar.title(), "says": says })),
        })).collect::<Vec<_>>(),
        "alternatives": alternatives::alternatives(settled, edition),
        "questions": questions(settled),
        "trail": ledger.entries.iter().enumerate().map(|(k, e)| entry(ledger, k + 1, e, system)).collect::<Vec<_>>(),
    })
}

/// A value of the trail: number and unit of print, number in SI, and its place in the trail.
fn val(ledger: &Ledger, at: Node, system: System) -> Value {
    match ledger.entry(at) {
        Some(e) => {
            let mut value = value(&e.value, e.units, system);
            value.insert("entry".to_owned(), json!(at.index()));
            Value::Object(value)
        }
        None => Value::Null,
    }
}

fn value(arg: &Arg, units: Option<stillrise_design::provenance::Pair>, system: System) -> Map<String, Value> {
    let mut map = Map::new();
    match (arg, units) {
        (Arg::Number(si), Some(pair)) => {
            let unit = system.pick(pair);
            map.insert("value".to_owned(), json!(unit.from_si(*si)));
            map.insert("unit".to_owned(), json!(unit.symbol));
            map.insert("si".to_owned(), json!(si));
        }
        (Arg::Number(si), None) => {
            map.insert("value".to_owned(), json!(si));
        }
        (Arg::Choice(word), _) => {
            map.insert("word".to_owned(), json!(word));
        }
        (Arg::Series(pairs), _) => {
            map.insert("series_si".to_owned(), json!(pairs));
        }
        (group @ (Arg::Group(..) | Arg::Groups(_)), _) => {
            map.insert("group_si".to_owned(), self::arg(group));
        }
    }
    map
}

fn plain(si: f64, unit: &Unit) -> Value {
    json!({ "value": unit.from_si(si), "unit": unit.symbol, "si": si })
}

fn fields(ledger: &Ledger, fields: &[(&'static str, Node)], system: System) -> Value {
    Value::Object(fields.iter().map(|(name, at)| ((*name).to_owned(), val(ledger, *at, system))).collect())
}

fn cases(settled: &Settled) -> Value {
    let (ledger, system) = (&settled.job.ledger, settled.job.enquiry.system());
    let Some(basis) = &settled.job.design.basis else { return json!([]) };
    let governs = crate::summary::governs(settled);
    json!(basis.cases.iter().enumerate().map(|(k, c)| json!({
        "name": c.name, "parts": c.parts, "inflow": val(ledger, c.inflow.at, system), "to_unit": val(ledger, c.feed.at, system),
        "pumps": c.pumps.map(|p| p.text()),
        "cycle": c.cycle.map(|cycle| json!({ "runs": val(ledger, cycle.runs.at, system), "period": val(ledger, cycle.period.at, system) })),
        "own_water": c.own.as_ref().map(|own| json!(own.water.iter().map(|water| fields(ledger, &water.fields(), system)).collect::<Vec<_>>())),
        "own_water_arrives": c.own.as_ref().map(|own| json!(own.arrives.iter().map(|water| fields(ledger, &water.fields(), system)).collect::<Vec<_>>())),
        "droplets": c.brings.iter().filter_map(|b| Some(json!({
            "median": val(ledger, basis.arrivals.get(b.arrival)?.droplets.d50.at, system),
            "share": b.share.map(|share| val(ledger, share.at, system)),
        }))).collect::<Vec<_>>(),
        "content": c.content.as_ref().map(|content| fields(ledger, &content.fields(), system)),
        "governs": governs.iter().filter(|(_, place)| *place == k).map(|(what, _)| *what).collect::<Vec<_>>(),
    })).collect::<Vec<_>>())
}

fn train(settled: &Settled, edition: Edition) -> Value {
    let (ledger, system) = (&settled.job.ledger, settled.job.enquiry.system());
    let Some(train) = &settled.job.design.train else { return Value::Null };
    let p = &train.unit.particulars;
    let [polisher, shut, oil_tank, bypass] = around::around(settled, train);
    json!({
        "origin": train.origin.to_string(),
        "because": settled.pick.as_ref().map(|p| crate::summary::taken::because(settled, p)),
        "model": p.model,
        "arrangement": train.unit.arrangement.word(),
        "count": val(ledger, train.count.at, system),
        "standby": train.standby.map(|spare| val(ledger, spare.at, system)),
        "lift": around::lift(settled), "screen": around::screen(settled, train), "polisher": polisher,
        "one_shut": shut, "oil_tank": oil_tank, "bypass": bypass,
        "stages": train.stages.iter().map(|s| json!({
            "name": s.name, "why": s.why, "asked_for": s.asked_for,
            "size": s.size.as_ref().map(|(label, arg, units)| { let mut v = value(arg, Some(*units), system); v.insert("label".to_owned(), json!(label)); v }),
        })).collect::<Vec<_>>(),
        "parts": train.unit.dimensions().into_iter().map(|(part, all)| json!({ "part": part, "dimensions": fields(ledger, &all, system) })).collect::<Vec<_>>(),
        "follows": fields(ledger, &train.unit.follows(), system),
        "compartments": train.unit.compartments.iter().map(|c| json!({ "compartment": c.place.word(), "length": val(ledger, c.length.at, system), "volume": val(ledger, c.volume.at, system) })).collect::<Vec<_>>(),
        "nozzles": { "inlet": p.nozzles.0, "outlet": p.nozzles.1 },
        "empty_weight": p.empty_weight.map(|w| val(ledger, w.at, system)),
        "shipping": p.shipping.map(|s| s.map(|v| val(ledger, v.at, system))),
        "price": p.price.as_ref().filter(|_| edition.is_internal()).map(|(price, currency)| json!({ "value": price, "currency": currency })),
        "lead_time": p.lead_time,
    })
}

fn performance(settled: &Settled) -> Value {
    let (ledger, system) = (&settled.job.ledger, settled.job.enquiry.system());
    let Some(p) = &settled.job.design.performance else { return Value::Null };
    let v = |at: Node| val(ledger, at, system);
    let bounded = |b: &stillrise_design::performance::removal::Bounded| json!({ "ideal": b.ideal.map(|x| v(x.at)), "expected": v(b.expected.at), "mixed": b.mixed.map(|x| v(x.at)) });
    let s = &p.storage;
    json!({
        "site": stands::site(p, ledger, system),
        "room": stands::room(p, ledger, system),
        "flotation": stands::flotation(p, ledger, system),
        "shell": p.shell.as_ref().map(|s| fields(ledger, &s.fields(), system)),
        "shop": shop::shop(p, ledger, system),
        "pump_out": stands::pump_out(p, ledger, system),
        "profiles": p.profiles.iter().map(|profile| json!({
            "name": profile.at.name(), "flow": v(profile.flow.at), "drowned": profile.drowned, "outlet_runs_full": profile.runs_full,
            "steps": profile.steps.iter().map(|s| json!({ "name": s.name, "loss": v(s.loss.at), "level": v(s.level.at) })).collect::<Vec<_>>(),
        })).collect::<Vec<_>>(),
        "velocities": fields(ledger, &p.velocities.fields(), system),
        "oil_levels": p.levels.iter().map(|l| json!({
            "oil": l.oil, "governing": l.caps[l.governing].of.word(), "limit": v(l.limit.at),
            "caps": l.caps.iter().map(|c| json!({ "name": c.of.word(), "thickness": v(c.thickness.at) })).collect::<Vec<_>>(),
            "set_points": l.levels.iter().map(|x| json!({
                "name": x.point.word, "action": x.point.action, "layer": v(x.thickness.at), "interface": v(x.interface.at), "surface": v(x.surface.at), "held": v(x.volume.at),
            })).collect::<Vec<_>>(),
            "float_submerged": v(l.float.submerged.at), "alarm_trips_at": l.trip.map(|x| v(x.at)), "draw_leaves": v(l.residue.at),
        })).collect::<Vec<_>>(),
        "removals": p.removals.iter().map(|r| json!({
            "case": r.case, "season": r.season.name(), "state": r.state.name(), "flow": v(r.flow.at), "tank_overflow": r.passage.tank().map(|tank| v(tank.v_0.at)),
            "plate_overflow": r.passage.plates().map(|plates| v(plates.v_0.at)), "gap_reynolds": r.passage.plates().map(|plates| v(plates.reynolds.at)), "residence": v(r.residence.at), "cut": r.cut.map(|x| v(x.at)),
            "free": bounded(&r.free), "total": bounded(&r.total), "in": fields(ledger, &r.content.fields(), system),
        })).collect::<Vec<_>>(),
        "ladder": p.ladder.as_ref().map(|l| ladder::ladder(ledger, l, system)),
        "api_basin_for_comparison": p.basin.as_ref().map(|b| fields(ledger, &b.fields(), system)),
        "solids": p.grains.iter().map(|g| json!({
            "from": v(g.from.at), "to": v(g.to.at), "arrives": v(g.arrives.at), "scoured_above": g.scour.map(|x| v(x.at)),
            "stages": g.stages.iter().map(|stage| json!({ "stage": stage.stage, "left_behind": v(stage.left.at), "settles": v(stage.settles.at) })).collect::<Vec<_>>(),
        })).collect::<Vec<_>>(),
        "zones": crate::summary::zones::rows(settled).iter().map(|row| json!({ "what": row.what, "value": v(row.at), "says": row.says })).collect::<Vec<_>>(),
        "storage": {
            "solids_out": v(s.solids_out.at), "oil_on_solids": s.oil_on_solids.map(|x| v(x.at)), "sludge_rate": v(s.sludge_rate.at), "sludge_trigger": s.sludge_trigger.map(|x| v(x.at)), "sludge_days": s.sludge_days.map(|x| v(x.at)), "sludge_days_behind_trap": s.behind_trap.map(|x| v(x.at)), "sand_days": s.sand_days.map(|x| v(x.at)),
            "trigger": s.trigger.title, "oil_rate": v(s.oil_rate.at), "oil_routine_days": s.oil_routine.map(|x| v(x.at)), "oil_soonest_days": s.oil_soonest.map(|x| v(x.at)), "oil_days": s.oil_days.map(|x| v(x.at)),
            "spill_room": s.spill.as_ref().map(|x| v(x.room.at)), "spill_spare": s.spill.as_ref().map(|x| v(x.spare.at)),
            "spill_pushes_out": s.spill.as_ref().and_then(|x| x.displaced).map(|x| v(x.at)),
        },
    })
}

fn limits(settled: &Settled) -> Value {
    let (ledger, system) = (&settled.job.ledger, settled.job.enquiry.system());
    let (Some(basis), Some(p)) = (&settled.job.design.basis, &settled.job.design.performance) else { return json!([]) };
    let ph = basis.ph_limits.iter().map(|limit| {
        json!({
            "pollutant": limit.pollutant.word, "range": { "low": limit.low.q.value, "high": limit.high.q.value, "text": limit.shown() },
            "statistic": limit.statistic.map(|s| s.q.word()), "method": limit.method, "authority": limit.authority,
            "verdict": Word::NotByGravity.text(), "because": limit.pollutant.explains, "change": limit.pollutant.what_could,
        })
    });
    let amounts = p.limits.iter().map(|l| {
        let limit = &basis.limits[l.limit];
        json!({
            "pollutant": limit.pollutant.word, "value": val(ledger, limit.value.at, system), "statistic": limit.statistic.q.word(),
            "method": limit.method, "authority": limit.authority, "held_against": val(ledger, l.against.at, system), "verdict": l.says(),
            "expected": l.predicted.then(|| val(ledger, l.expected.at, system)), "mixed": l.mixed.filter(|_| l.predicted).map(|mixed| val(ledger, mixed.at, system)), "case": l.case,
            "scatter": limit.scatter.as_ref().map(|s| fields(ledger, &s.fields(), system)),
            "keeps": l.keeps.map(|k| json!({ "mean": val(ledger, k.mean.at, system), "share_of_results": val(ledger, k.share.at, system) })),
            "because": l.reason(), "change": crate::rating::change(settled, l), "calculated": l.calculated.text(),
            "results_that_keep_it": l.chance.map(|c| json!({ "share": val(ledger, c.share.at, system), "sets_of_inputs": c.sets })),
            "held_back": l.held_back.iter().map(held_back).collect::<Vec<_>>(),
        })
    });
    let cone = settled.job.enquiry.limits.iter().filter(|l| l.value.settles.is_some()).map(|l| {
        json!({
            "pollutant": l.pollutant.0, "settles": l.value.settles, "statistic": l.statistic.0.map(|s| s.word()),
            "method": l.method.0, "authority": l.authority.0, "verdict": "cannot judge",
        })
    });
    json!(amounts.chain(ph).chain(cone).collect::<Vec<_>>())
}

fn held_back(held: &HeldBack) -> Value {
    match &held.by {
        By::Assumption { key, label, answer, there, asked, .. } => {
            json!({ "word": held.word.text(), "by": "assumption", "key": key, "what": label, "answer": answer, "there": there.text(), "asked": asked })
        }
        By::Eye => json!({ "word": held.word.text(), "by": "eye" }),
        By::Chance => json!({ "word": held.word.text(), "by": "chance" }),
        By::Measured(m) => json!({
            "word": held.word.text(), "by": "measured", "above": m.above, "of": m.of,
            "mean_mg_l": m.mean.map(|c| MG_L.from_si(c.si())),
            "months_above": m.months.map(|(above, _)| above), "months": m.months.map(|(_, of)| of), "since": m.since.map(|day| day.to_string()),
        }),
    }
}

fn verdicts(settled: &Settled, edition: Edition) -> Value {
    json!(settled.verdicts.iter().map(|j| json!({
        "rule": j.rule.id, "title": j.rule.title, "verdict": j.verdict.word(), "says": j.verdict.says(), "remedy": j.rule.remedy, "source": j.rule.source.to(settled.job.enquiry.system()),
        "asks": j.verdict.asks().iter().map(|ask| json!({ "question": ask.question, "key": ask.key })).collect::<Vec<_>>(),
        "decision": j.decision.as_ref().map(|d| json!({
            "decision": d.decision.0.map(|w| w.word()), "because": d.because.0, "who": d.who.as_ref().filter(|_| edition.is_internal()),
            "date": d.date.0.map(|date| date.to_string()), "by": if j.is_by_company() { "company rule" } else { "engineer" },
        })),
    })).collect::<Vec<_>>())
}

fn questions(settled: &Settled) -> Value {
    let matter = that_matter(settled).len();
    json!(settled.questions().iter().enumerate().map(|(i, q)| json!({
        "key": q.key, "question": q.text, "now": q.now, "low": q.range.0, "high": q.range.1, "source": q.source, "share": q.share, "weight": q.weight, "matters": i < matter,
        "outcomes": q.outcomes.iter().map(|o| json!({
            "answer": o.answer, "total_oil_out": o.effluent.map(|e| plain(e.si(), &MG_L)), "unit": o.unit.as_ref().map(Offered::name), "verdicts": o.words.as_ref().map(|words| words.iter().map(|w| w.text()).collect::<Vec<_>>()),
        })).collect::<Vec<_>>(),
    })).collect::<Vec<_>>())
}

/// One line of the trail.
fn entry(ledger: &Ledger, no: usize, e: &Entry, system: System) -> Value {
    let mut map = Map::new();
    map.insert("no".to_owned(), json!(no));
    map.insert("section".to_owned(), json!(e.section));
    map.insert("label".to_owned(), json!(e.label));
    map.extend(value(&e.value, e.units, system));
    let origin = match &e.origin {
        Origin::Given { source, text } if source.is_settings() => {
            json!({ "kind": "given", "source": source.to_string(), "text": text, "by": "settings" })
        }
        Origin::Given { source, text } => json!({ "kind": "given", "source": source.to_string(), "text": text }),
        Origin::Assumed(a) => {
            json!({ "kind": "assumed", "key": a.key, "question": a.question, "source": a.source, "low": arg(&a.low), "high": arg(&a.high) })
        }
        Origin::Chosen { among, because, inputs, .. } => {
            json!({ "kind": "chosen", "among": among, "because": because, "inputs": indices(inputs) })
        }
        Origin::Gathered { inputs } => json!({ "kind": "gathered", "inputs": indices(inputs) }),
        Origin::Derived { page, inputs } => json!({ "kind": "derived", "formula": page.id, "inputs": indices(inputs) }),
        Origin::Reckoned { text, inputs } => json!({
            "kind": "reckoned", "expression": text, "inputs": inputs.iter().map(|(name, at)| json!({ "name": name, "entry": at.index() })).collect::<Vec<_>>(),
        }),
    };
    map.insert("origin".to_owned(), origin);
    let equations = trail::equations(ledger, e);
    if !equations.is_empty() {
        map.insert("worked".to_owned(), json!(equations));
    }
    if !e.notes.is_empty() {
        map.insert("notes".to_owned(), json!(e.notes));
    }
    Value::Object(map)
}

/// A value as it stands in the trail, numbers in SI; a group under its word.
pub(crate) fn arg(a: &Arg) -> Value {
    match a {
        Arg::Number(si) => json!(si),
        Arg::Choice(word) => json!(word),
        Arg::Series(pairs) => json!(pairs),
        Arg::Group(group, fields) => {
            let fields = group.fields.iter().zip(fields).map(|(field, a)| (field.name.to_owned(), arg(a)));
            json!({ group.word: Value::Object(fields.collect()) })
        }
        Arg::Groups(groups) => Value::Array(groups.iter().map(arg).collect()),
    }
}

fn indices(nodes: &[Node]) -> Vec<Option<usize>> {
    nodes.iter().map(|n| n.index()).collect()
}
