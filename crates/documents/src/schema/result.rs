//! The schema of `result.json`.

use serde_json::{Value, json};

/// The schema of the result.
#[must_use]
pub fn result_schema() -> Value {
    let value = json!({ "$ref": "#/$defs/value" });
    let values = json!({ "type": "object", "additionalProperties": value });
    let list = |items: &Value| json!({ "type": "array", "items": items });
    let text = json!({ "type": "string" });
    let object = |properties: Value| json!({ "type": "object", "properties": properties });
    let european = json!({ "type": ["object", "null"], "description": "What EN 858-2 would ask for with these waters, a comparison: factors, nominal size needed and next of the series, sludge trap, oil store by PPG3, whether a named size covers the need; null unless somebody asks by the standard" });
    // Apart, because the macro's recursion has an end.
    let place = json!({ "type": ["integer", "null"], "description": "Its place in the trail" });
    let texts = list(&text);
    let method = object(json!({
        "method": text, "title": text, "sources": texts, "standing": { "type": ["string", "null"], "description": "How far the source was read" },
        "notation": list(&object(json!({ "symbol": text, "meaning": text, "value": text, "origin": text, "entry": place }))),
        "steps": list(&object(json!({ "what": text, "lines": texts, "value": text, "notes": texts, "entry": place }))),
        "result": text,
        "asked": list(&object(json!({ "what": text, "asked": text, "units": text, "holds": { "type": ["boolean", "null"] } }))),
        "remarks": texts, "leaves_out": texts, "ours": texts, "confirm": text
    }));
    let regulation = json!({ "type": ["object", "null"], "description": "Methods that an authority asks for, each worked in its source's notation: symbols, steps, what it asks and what the units have, what it leaves out, our prediction beside it; null unless `regulation.methods` names one", "properties": { "authority": { "type": ["string", "null"] }, "methods": list(&method) } });
    let limit = object(
        json!({ "pollutant": text, "value": value, "range": { "type": "object", "description": "Of pH, in place of a value" }, "statistic": { "type": ["string", "null"] }, "held_against": value, "verdict": { "enum": ["kept", "likely", "not shown", "exceeded", "not by gravity"] }, "expected": value, "mixed": value, "case": text, "scatter": { "anyOf": [values, { "type": "null" }] }, "keeps": { "type": ["object", "null"] }, "because": text, "change": text, "calculated": text, "results_that_keep_it": { "type": ["object", "null"] }, "held_back": { "type": "array", "items": { "type": "object" } } }),
    );
    let part = |description: &str| json!({ "type": ["object", "null"], "description": description });
    let train = json!({ "type": ["object", "null"], "description": "Stages, frame (given or chosen dimensions), layout (what follows), zones, particulars, and what stands around the separator", "properties": {
        "arrangement": text, "count": value, "standby": value,
        "lift": part("Feed pump: static lift, rising main, head at the stated flows (duties), and where the curve meets the main (operating_points), one pump and all together"),
        "screen": part("Screen ahead: why it is asked for, whether it exists, the narrowest passage behind it, its bars and what they lose clean and when cleaned"),
        "polisher": part("Stage behind: the flow it must pass, what reaches it by case, solids, what it must take out to keep each limit, what is to be sampled"),
        "one_shut": part("Flow through each unit while one is shut, and by how much it is above its share"),
        "oil_tank": part("Oil holding tank: room, days to full, routine draw-offs it takes, room less the spill"),
        "bypass": part("What a bypass in place of holding back would let past, and what bars it")
    } });
    let alternatives = json!({ "type": ["array", "null"], "items": object(json!({ "change": text, "unit": text, "one_pump_at_a_time": { "type": "boolean" }, "design_flow": { "type": ["object", "null"] }, "held_back": { "type": ["object", "null"] }, "total_oil_out": { "type": ["object", "null"] }, "words": list(&text), "price_of_one": { "type": ["object", "null"] } })) });
    let trail = list(&object(
        json!({ "no": { "type": "integer", "description": "Its number in the report and in trail.txt; `entry` elsewhere counts from 0" }, "section": text, "label": text, "value": { "type": "number" }, "unit": text, "si": { "type": "number" }, "word": text, "series_si": { "type": "array" }, "origin": { "type": "object" }, "worked": list(&text), "notes": list(&text) }),
    ));
    let verdicts = list(&object(
        json!({ "rule": text, "title": text, "verdict": { "enum": ["not applicable", "passes", "cannot judge", "warns", "fails"] }, "says": text, "remedy": text, "source": text, "asks": list(&object(json!({ "question": text, "key": { "type": ["string", "null"] } }))), "decision": { "type": ["object", "null"] } }),
    ));
    json!({
        "$schema": super::DIALECT,
        "title": "A settled job",
        "type": "object",
        "additionalProperties": false,
        "required": ["tool", "edition", "enquiry", "settings", "caution", "headline", "triage", "answers", "stops", "cases", "containment", "european", "regulation", "train", "performance", "limits", "verdicts", "candidates", "questions", "trail"],
        "properties": {
            "tool": object(json!({ "name": text, "version": text })),
            "edition": { "enum": ["client", "regulator", "us"] },
            "enquiry": { "type": "object", "description": "Who asked, and what had to be interpreted while reading" },
            "settings": part("What comes from the company's settings: each key with its value, the key of the enquiry that stands above it, and what that says instead; null where there are no settings"),
            "caution": text,
            "headline": list(&text),
            "triage": list(&object(json!({ "subject": text, "weight": text, "says": text, "could": text, "source": { "type": ["string", "null"] } }))),
            "answers": { "type": "array", "description": "What somebody named or asked beforehand, each answered", "items": text },
            "stops": { "type": "array", "description": "Branches of the chain that could not go on", "items": text },
            "cases": list(&object(json!({ "name": text, "parts": list(&text), "inflow": value, "to_unit": value, "pumps": { "type": ["string", "null"] }, "cycle": { "anyOf": [values, { "type": "null" }] }, "own_water": { "anyOf": [list(&values), { "type": "null" }] }, "own_water_arrives": { "anyOf": [list(&values), { "type": "null" }] }, "droplets": list(&object(json!({ "median": value, "share": { "anyOf": [value, { "type": "null" }] } }))), "content": { "anyOf": [values, { "type": "null" }] }, "governs": list(&text) }))),
            "containment": { "type": ["object", "null"], "description": "What stands ahead of the separator: design rain, fire water, each containment, each spill against what holds it; null when nothing does" },
            "european": european,
            "regulation": regulation,
            "train": train,
            "risk": { "type": ["object", "null"], "description": "How sure the prediction is: bands, chance to keep each limit, shares of the inputs; null unless studied" },
            "rating": { "type": ["object", "null"], "description": "What explains what was observed at a unit that stands; null unless asked for" },
            "performance": { "type": ["object", "null"], "description": "Site levels and how the unit stands, the room it needs, `shop` (weights, lifting, walls, frost, vent, protection, areas; null of a unit that stands), hydraulic profiles, velocities, oil levels, removals by case, season and state, ladder of prediction, zones, solids by size, storage" },
            "limits": list(&limit),
            "evidence": { "type": "array", "description": "Laboratory results: each set with its results, what they say (law, bounds, polar share), what is made of its mean for the influent, and the prediction beside it", "items": { "type": "object" } },
            "verdicts": verdicts,
            "alternatives": alternatives,
            "candidates": list(&object(json!({ "unit": text, "taken": { "type": "boolean" }, "total_oil_out": { "type": ["object", "null"] }, "barred": { "type": ["object", "null"] } }))),
            "questions": list(&object(json!({ "key": text, "question": text, "now": text, "low": text, "high": text, "source": text, "share": { "type": ["number", "null"] }, "weight": { "type": "number" }, "matters": { "type": "boolean" }, "outcomes": { "type": "array" } }))),
            "trail": trail,
        },
        "$defs": {
            "value": {
                "description": "A value: number and unit of print, number in SI, and its place in the trail; or a word",
                "type": ["object", "null"],
                "properties": { "value": { "type": "number" }, "unit": text, "si": { "type": "number" }, "word": text, "entry": { "type": ["integer", "null"] } }
            }
        }
    })
}
