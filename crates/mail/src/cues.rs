//! Which words beside a number point to which key: the wording of enquiries, by common usage (long because it is one list).

/// Words that point to a key, and how strongly: two for a word that hardly means anything else there.
pub struct Cue {
    /// The path of the key.
    pub path: &'static str,
    /// Words in small letters that point to it.
    pub strong: &'static [&'static str],
    /// Words that may.
    pub weak: &'static [&'static str],
    /// Words beside which it is not meant.
    pub not: &'static [&'static str],
}

const fn cue(
    path: &'static str,
    strong: &'static [&'static str],
    weak: &'static [&'static str],
    not: &'static [&'static str],
) -> Cue {
    Cue { path, strong, weak, not }
}

/// All of them. A key without one is never offered first, and only where nothing else fits.
pub static CUES: &[Cue] = &[
    // Areas.
    cue("surface.area", &["yard", "pad", "apron", "roof", "canopy", "paved", "forecourt", "slab", "catchment", "hof", "fläche", "dach"], &["area", "concrete", "asphalt", "surface", "drains", "open"], &["containment", "bund", "pit", "sump"]),
    cue("containment.area", &["bund", "containment", "pit", "dike", "berm", "auffangwanne"], &["area", "floor"], &[]),
    cue("inlet.sump_area", &["sump", "pump pit", "wet well"], &["area"], &[]),
    // Rain.
    cue("rain.intensity", &["rain", "rainfall", "storm", "intensity", "downpour", "regen", "regenspende", "regenintensität", "monsoon"], &["design", "year", "peak"], &[]),
    cue("rain.duration", &["minute storm", "storm lasts", "duration", "regendauer"], &["storm", "rain"], &["wash", "a day", "pump"]),
    cue("rain.concentration_time", &["time of concentration", "concentration time"], &[], &[]),
    cue("rain.return_period", &["return period", "year storm", "-year", "year return", "jährlichkeit"], &["storm", "event"], &[]),
    cue("rain.annual", &["annual rain", "rain a year", "annual precipitation", "per year", "rainfall is", "jahresniederschlag"], &["annual", "rain"], &["intensity", "hour", "storm"]),
    cue("rain.event_depth", &["24-hour", "24 hour", "24 h", "event depth", "rain event", "in a day"], &["storm", "rain"], &["per hour"]),
    // Waters.
    cue("stream.flow", &["wash", "rinse", "hose", "condensate", "process", "drain water", "blowdown", "washdown", "waschwasser", "spülwasser"], &["flow", "water", "runs", "gives", "peak", "use"], &["pump", "unit for", "separator for", "limit", "sewer takes", "cap"]),
    cue("stream.hose_flow", &["each hose", "per hose", "hose gives", "nozzle", "pressure washer", "lance"], &["each", "hose"], &["pump"]),
    cue("stream.volume_per_day", &["a day", "per day", "daily", "each day", "am tag", "täglich", "metered"], &["water", "wash", "use", "litres", "gallons"], &["spill", "tank", "capacity"]),
    cue("stream.hours_per_day", &["hours a day", "h a day", "hours per day", "h/d", "hours daily", "stunden am tag", "hours each day", "hrs per day", "hrs a day"], &["a day", "shift", "per day", "wash", "daily"], &["storm", "rain"]),
    cue("stream.days_per_week", &["days a week", "days per week", "d/week", "days/week", "tage pro woche"], &["a week", "per week", "weekly"], &[]),
    cue("stream.temperature", &["hot water", "hot wash", "heated", "warm water", "heiß", "arrives at", "comes at"], &["hot", "wash", "condensate", "temperature"], &["winter", "coldest", "air", "ambient", "groundwater"]),
    cue("water.coldest", &["coldest", "winter", "cold", "minimum water", "lowest", "im winter"], &["water", "temperature", "down to"], &["air", "outside", "ambient", "hot"]),
    cue("water.warmest", &["warmest", "summer", "im sommer", "highest water"], &["water", "temperature", "up to"], &["air", "ambient"]),
    cue("site.coldest_air", &["air", "ambient", "outside", "frost", "outdoor", "lufttemperatur", "gets down to"], &["winter", "coldest", "below"], &["water"]),
    cue("stream.oil.mean", &["oil in the", "oil content", "influent", "inlet oil", "oil and grease in", "carries", "contains", "sample of", "raw water", "lab result", "grab"], &["oil", "grease", "hydrocarbons", "inlet", "washdown", "average", "öl"], &["limit", "permit", "not exceed", "allowed", "discharge", "outlet", "effluent", "guarantee", "consent"]),
    cue("stream.solids", &["solids in", "tss in", "grit in", "influent"], &["solids", "tss", "sediment", "mud"], &["limit", "permit", "not exceed", "allowed", "consent"]),
    cue("stream.oil.emulsified", &["emulsified", "emulsion", "emulgiert"], &["share", "of the oil"], &[]),
    cue("limit.value", &["limit", "permit", "not exceed", "consent", "allowed", "allows", "maximum of", "must be below", "must keep", "compliance", "grenzwert", "einleitgrenzwert", "may not", "discharge standard", "prohibits", "below"], &["discharge", "sewer", "effluent", "outlet", "monthly", "daily", "river", "total", "tss", "btex", "benzene", "hydrocarbon", "grease"], &["influent", "inlet", "sample showed", "raw"]),
    cue("asked.promise", &["guarantee", "promise", "guaranteed", "you state", "brochure", "competitor", "garantieren"], &["achieve", "effluent", "outlet"], &["permit"]),
    cue("samples.results", &["sample", "samples", "result", "results", "lab", "laboratory", "analysis", "measured", "probe"], &["grab", "showed"], &["limit", "permit"]),
    // Pumps and levels.
    cue("inlet.rate", &["pump", "pumps", "pumpe", "pumpen", "pump rate", "lifts", "pumped at"], &["each", "feed", "sump", "deliver", "duty"], &["spill", "fire", "limit"]),
    cue("inlet.pump_head", &["head", "tdh", "förderhöhe"], &["pump", "pumps", "lift"], &[]),
    cue("inlet.pump_power", &["motor", "hp", "kw", "horsepower", "motorleistung"], &["pump", "power"], &[]),
    cue("inlet.pump_speed", &["rpm", "speed", "drehzahl"], &["pump", "motor"], &[]),
    cue("inlet.sump_volume", &["sump", "wet well", "pump pit", "pumpensumpf"], &["volume", "holds", "between start and stop"], &["spill"]),
    cue("inlet.invert", &["invert", "inlet invert", "incoming", "pipe comes in", "inlet pipe", "incoming pipe", "zulauf", "comes in", "discharge is about"], &["inlet", "below grade", "under the ground", "level", "elevation"], &["outlet", "outfall", "groundwater", "water table"]),
    cue("outlet.invert", &["outlet invert", "outfall", "leaves at", "sewer invert", "ablauf", "connection at"], &["invert", "sewer", "outlet", "level", "elevation"], &["inlet", "groundwater"]),
    cue("outlet.tailwater", &["flood", "tailwater", "high water", "river level", "hochwasser", "tide", "backs up to"], &["river", "level", "harbour"], &["groundwater"]),
    cue("outlet.flow_cap", &["flow cap", "no more than", "restricted to", "sewer takes", "allowable discharge", "max discharge", "throttle", "drossel", "may not exceed", "peak discharge", "limited to"], &["sewer", "discharge", "at most", "max"], &["mg/l", "oil"]),
    cue("site.ground", &["ground level", "ground is at", "grade at", "finished grade", "ground elevation", "geländeoberkante", "gok"], &["ground", "grade", "elevation"], &["groundwater", "below"]),
    cue("site.groundwater", &["groundwater", "water table", "ground water", "grundwasser"], &["spring", "below ground"], &[]),
    cue("site.frost_depth", &["frost depth", "frost line", "frost to", "frost down to", "frosttiefe"], &["frost", "deep"], &[]),
    cue("site.cover", &["cover over", "cover of", "überdeckung"], &["cover"], &[]),
    cue("site.max_length", &["room for", "space", "spot of", "plot", "available", "fits", "platz"], &["long", "length", "footprint"], &["yard", "pad", "apron"]),
    cue("site.max_width", &["room for", "space", "spot of", "plot", "available", "platz"], &["wide", "width", "footprint"], &["yard", "pad", "apron"]),
    cue("site.headroom", &["headroom", "clear height", "ceiling", "under the roof", "lichte höhe"], &["height", "clear", "high"], &[]),
    cue("site.lifting", &["crane", "fork lift", "forklift", "lifting", "hoist"], &["capacity", "lift"], &[]),
    cue("site.max_depth", &["dig", "excavation", "rock at"], &["deep", "depth"], &["frost"]),
    // Spill.
    cue("spill.volume", &["spill", "rupture", "compartment", "tanker", "largest tank", "one tank", "hold the loss", "leak", "leckage", "havarie", "transformer holds"], &["hold", "retain", "tank", "oil"], &["a day", "wash"]),
    cue("spill.rate", &["spill", "hose rupture", "loading arm", "delivery hose", "leak"], &["rate", "at", "flow"], &["pump", "wash", "fire"]),
    cue("spill.fire_flow", &["fire", "deluge", "hydrant", "sprinkler", "löschwasser"], &["flow", "water"], &[]),
    cue("containment.volume", &["bund", "containment", "pit", "dike", "catch basin", "auffangwanne"], &["holds", "volume", "capacity"], &[]),
    cue("containment.depth", &["bund", "containment", "pit", "kerb", "curb", "wall"], &["deep", "depth", "high"], &[]),
    cue("oil_tank.volume", &["oil tank", "waste oil tank", "oil holding tank"], &["collected oil"], &[]),
    cue("oil.density", &["density", "specific gravity", "sg", "api", "dichte"], &["oil", "fuel", "gravity"], &[]),
    cue("droplets.d50", &["droplet", "droplets", "median"], &["size", "micron"], &["remove", "removal", "capture", "and larger"]),
    cue("asked.droplet", &["remove", "removal of", "capture", "and larger", "and bigger", "down to"], &["droplet", "droplets", "micron"], &[]),
    cue("asked.flow", &["unit for", "separator for", "sized for", "size it for", "rated", "quote for", "capacity of", "separator of", "need a", "your unit"], &["separator", "unit", "capacity", "designed for"], &["pump", "wash", "spill", "hose"]),
    cue("asked.interval", &["empty it", "pump-out", "pumped out", "pump it out", "service interval", "emptied", "entleerung"], &["every", "once", "interval"], &[]),
    cue("asked.tank_ahead", &["tank ahead", "buffer tank", "existing tank", "holding tank", "settling tank"], &["tank", "ahead", "keep"], &["spill", "oil tank"]),
    cue("stated.flow", &["design flow", "total flow", "peak flow", "max flow", "maximum flow", "flow rate", "flowrate", "durchfluss"], &["flow", "peak"], &["pump", "hose", "limit"]),
    cue("dump.volume", &["dumped", "bath", "vat", "drained once", "batch"], &["tank", "emptied"], &["spill"]),
    cue("dump.per_week", &["times a week", "per week", "once a week"], &["dumped", "bath"], &[]),
    cue("lift.static_lift", &["static lift", "lift of", "geodetic"], &["lift"], &["crane"]),
    cue("outlet.length", &["outlet pipe", "to the manhole", "to the river", "away"], &["pipe", "long"], &["room", "space"]),
    cue("outlet.pipe", &["dn", "outlet pipe", "sewer pipe", "inch pipe", "in pipe", "pipe of"], &["pipe", "line", "diameter"], &["deep", "depth", "frost"]),
    cue("stream.hoses", &["hoses", "taps", "wash points", "lances"], &[], &[]),
    cue("rain.slope", &["slope", "gradient", "gefälle", "falls at"], &["yard", "%"], &["outlet"]),
    cue("outlet.slope", &["pipe slope", "outlet slope", "sewer slope"], &["slope"], &["yard"]),
];
