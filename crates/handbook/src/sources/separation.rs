//! Sources on rise, settling, removal and permits.

sources! {
    STOKES "Stokes' law of the creeping sphere; textbook hydrodynamics" "1851" Read;
    NZ_PETROLEUM "Ministry for the Environment (New Zealand), Environmental Guidelines for Water Discharges from Petroleum Industry Sites, Appendix 6.1" "1998" Read;
    RISE_TIME_TABLE "A secondary table of rise times over 3 inches of oil of specific gravity 0.85, from trade literature" "" Read;
    API_421 "American Petroleum Institute, Publication 421, Design and Operation of Oil-Water Separators, 1st ed." "1990" SecondHand;
}
