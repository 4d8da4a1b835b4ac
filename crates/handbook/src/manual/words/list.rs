//! The words, in the order of the alphabet.

use super::Word;
use crate::sources::{
    API_421, BENJAMIN, CAMP_SCOUR, EN_858_2_UPKEEP, EN_858_NOMINAL, EPA_TSD, HAZEN_CAMP, HINZE, MIL_1005_9A,
    UFGS_PLATES,
};

macro_rules! from {
    () => {
        None
    };
    ($source:ident) => {
        Some(&$source)
    };
}

macro_rules! words {
    ($($word:literal [$($also:literal),*] $says:literal $($source:ident)?;)*) => {
        /// All of them.
        pub static WORDS: &[Word] = &[$(Word {
            word: $word, also: &[$($also),*], says: $says, source: from!($($source)?),
        }),*];
    };
}

words! {
    "alarm" ["high-oil alarm"] "The set point at which the oil layer has used up most of its room: a light and a horn call the person on duty, who has the oil pumped out." EN_858_2_UPKEEP;
    "annex" [] "A paper that stands beside the calculation report, with what is needed only to check further.";
    "assumed" ["assumption", "assumptions"] "Nobody stated it: a usual value stands in, with the range that is as plausible and where it comes from.";
    "basis" [] "All that the calculation starts from: waters, oils, rain, limits, each stated by somebody or assumed.";
    "bypass" [] "A way round the separator for water above a set flow; what goes round is not treated." EN_858_NOMINAL;
    "case" ["cases"] "One situation in which water comes to the unit, such as a storm or a wash; each is worked by itself, and the worst governs.";
    "chain of results" [] "Basis, train, performance, verdicts: each is worked from the one before, so that where one stops the later ones are not found.";
    "coefficient of variation" [] "Standard deviation over mean: how widely single results scatter." EPA_TSD;
    "credit" [] "Whether what a part does is counted in the prediction; without credit it is there and not counted.";
    "crest" [] "The upper edge of the weir at the outlet; it sets the level of the water without flow.";
    "cut" [] "The smallest droplet that rises out of the water in the time it has: smaller ones are caught in part.";
    "density current" [] "A stream along the top or the floor, because the water that flows in is warmer or colder than the water in the unit." BENJAMIN;
    "design droplet" ["design droplets"] "The droplet that the plates have to catch whole at the design flow; it sizes them, and says nothing by itself of what leaves." API_421;
    "design flow" [] "The largest steady flow that the unit is sized for.";
    "dissolved" ["dissolved oil"] "Oil in true solution in the water: no separator takes it out.";
    "downcomer" [] "The wall at the outlet end under which the water passes; the oil above is held back by it.";
    "drawn layer" ["draw-off"] "The place where oil is drawn off, and the layer that can be drawn there; what lies lower is left behind.";
    "emulsified" ["emulsified oil", "emulsion"] "Oil in droplets so fine, or so held by soap or shear, that they do not rise in the time there is." MIL_1005_9A;
    "equalisation" [] "A tank ahead of the unit that takes a rush of water and lets it go evenly.";
    "expected" [] "The headline of the prediction: the tank by the chosen model, then laminar gaps between the plates, unequally fed.";
    "free oil" [] "Oil in droplets large enough to rise by themselves; the only oil that a gravity separator removes." UFGS_PLATES;
    "freeboard" [] "Height of the walls over the highest liquid.";
    "gap" ["gaps"] "The clear distance between two plates of a pack, through which the water flows.";
    "held against the limit" [] "Compared with the limit: for a limit on single samples what leaves while the influent is at its peak, for an average what leaves in the mean.";
    "hopper" [] "The funnel in the floor in which sludge collects and from which it is drawn.";
    "ideal bound" [] "What would leave if the tank were ideal and all gaps equally fed: the calculation's lower end.";
    "influent" [] "The water that comes to the unit, with what it carries.";
    "interface" [] "The level at which the oil layer ends and the water begins.";
    "interval" ["end of the interval"] "The time from one pump-out to the next; at its end the plates are fouled and oil and sludge have collected, which is the worst state of the unit.";
    "invert" [] "The lowest point of the inside of a pipe.";
    "kept" [] "Of a limit: the calculation keeps it with room, no unconfirmed figure in its plausible range undoes that, and no measured result speaks against it.";
    "ladder of prediction" [] "What would leave under step after step of assumptions, from no separator at all to an ideal one.";
    "laminar" [] "Flowing in layers without eddies, as plate theory asks of the gaps.";
    "likely" [] "Of a limit: the calculation keeps it, but by less than full certainty; something unconfirmed, or the scatter of results, may break it.";
    "maldistribution" ["unequally fed", "unequal flow"] "Some gaps of the pack get more water than others, and catch less; the prediction allows for a stated share." API_421;
    "median droplet" [] "The size at which half of the oil, by volume, is in smaller droplets." HINZE;
    "mesh" [] "A mat of wire or fibre behind the plates on which fine droplets meet and grow; it gets no credit unless asked for.";
    "mixed bound" [] "What would leave if tank and gaps were mixed over their depth and the gaps unequally fed: the calculation's upper end.";
    "nominal size" ["nominal sizes", "ns"] "A number by which a European standard names a separator: the flow in litres per second at which the type was tested." EN_858_NOMINAL;
    "not by gravity" [] "Of a limit: no separator can keep it, because what it limits does not rise or settle.";
    "not shown" [] "Of a limit: the calculation does not show that it is kept; more is to be known, or more to be done.";
    "oil retention" ["retention zone", "oil retention zone"] "The part of the unit in which the oil that has risen is held until it is pumped out." EN_858_NOMINAL;
    "overflow rate" [] "Flow over the plan area in which droplets can rise: a droplet that rises faster is caught whole by an ideal unit." HAZEN_CAMP;
    "peak" [] "Of the influent: the highest oil content of a single sample, as a multiple of the mean.";
    "plausible" ["plausibly"] "Within the range that was stated or that stands with the assumption.";
    "polisher" [] "A stage behind the separator, such as a filter, for what gravity leaves.";
    "preliminary" [] "Not to be built, bought or submitted from: a licensed engineer has not reviewed it yet.";
    "promise" ["promised"] "What we are ready to state of the effluent: never less than the published floor, unless less arrives." UFGS_PLATES;
    "published floor" ["practical floor"] "The least content of oil that plate units are known to leave in practice, 10 mg/L; nothing lower is promised unless less arrives." UFGS_PLATES;
    "pump-out" ["pump-outs"] "Taking oil and sludge out of the unit, usually by a suction truck.";
    "return period" [] "Mean time, in years, between two storms as heavy as the one designed for.";
    "routine pump-out" [] "The set point at which emptying is arranged, with time to spare before the alarm." EN_858_2_UPKEEP;
    "rule of thumb" [] "How large a plain basin would be by an old rule, for comparison; it says nothing of what leaves." API_421;
    "runs of the calculation" [] "One run is one working of the whole calculation, with each uncertain input at a value drawn from its range.";
    "scour" ["scours", "scoured"] "To lift sludge off the floor again, by a stream that is too fast." CAMP_SCOUR;
    "set point" ["set points"] "An oil layer at which something is done: pump-out, alarm, shut-off.";
    "shut-off" [] "The set point at which whatever feeds the unit is stopped, before the oil reaches its limit.";
    "sludge" [] "What settles to the floor: solids with water and oil in them.";
    "spill" [] "Oil that comes at once, as when a hose breaks; the unit has to hold it, not to treat it.";
    "surface loading" [] "Another name of the overflow rate." HAZEN_CAMP;
    "suspended solids" [] "Grains in the water that a filter of the laboratory holds back.";
    "tailwater" [] "The water behind the outlet, whose level may hold the outlet up.";
    "to plan by" [] "The time that nobody should wait longer than: it counts all that could collect, not what the calculation expects.";
    "trail" [] "The list of every value of the calculation, numbered, each with where it comes from.";
    "train" [] "All that the water passes: stages ahead of the unit, the unit, and stages behind it.";
    "triage" [] "The first question of all: whether gravity can do this duty.";
    "uplift" [] "The force with which groundwater lifts an empty unit.";
}
