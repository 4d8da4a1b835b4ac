//! Sources on rain and process flows.

sources! {
    HDS_2 "Federal Highway Administration, Hydraulic Design Series 2, Highway Hydrology, 2nd ed., FHWA-NHI-02-001" "2002" Read;
    ASCE_C "American Society of Civil Engineers, table of runoff coefficients, as printed in FHWA Highway Hydrology, table 5.7" "1960" SecondHand;
    HERPICC "HERPICC runoff coefficients, as printed in a county drainage code" "1994" SecondHand;
    GRAVEL_LOT "City drainage manual, runoff coefficients of pavement, roofs and gravel lots" "1979" Read;
    SHEET_N "Roughness of sheet flow, tables of FHWA Highway Hydrology and NRCS TR-55" "2002, 1986" Read;
    TR_55 "NRCS Technical Release 55, Urban Hydrology for Small Watersheds, 2nd ed.; tables as public data sets carry them" "1986" SecondHand;
    NEH_10 "NRCS National Engineering Handbook, Part 630, chapter 10, Estimation of direct runoff" "2004" Read;
    LINEAR_RESERVOIR "Linear reservoir with means over the step; textbook hydrology" "" Memory;
    KIRPICH "Kirpich, Time of concentration of small agricultural watersheds, as quoted by several public drainage manuals" "1940" SecondHand;
    DEPTH_PRACTICE "Common practice: depths between the rows of a depth-duration table are read off a straight line on log-log paper" "" Practice;
    IPC_1106 "International Plumbing Code, section 1106.4, vertical walls" "" SecondHand;
    TM_5_814_9 "Unified Facilities Criteria 4-214-03 (Army TM 5-814-9), Central Vehicle Wash Facilities" "1992" Read;
    NOZZLE_RULE "Nozzle discharge in US units, the orifice equation with 29.84 for fresh water" "" Memory;
    BARE_EARTH "Runoff coefficient of packed bare earth; no row for it in the tables read" "" Memory;
    OPEN_STORE "Rain on open water or an uncovered containment: all of it is kept, by definition" "" Read;
    IEEE_980 "IEEE Std 980, Guide for Containment and Control of Oil Spills in Substations, Annex B" "2013" Read;
    MODIFIED_RATIONAL "Modified rational method; textbook form with base D + tc" "" Memory;
    DOT_FREQUENCY "Oklahoma DOT, Roadway Drainage Manual, ch. 7, and Oregon DOT, Hydraulics Manual, app. F, frequency factors" "2014" SecondHand;
    NFPA_15 "NFPA 15, Water spray fixed systems for fire protection, transformers, as quoted by another text" "" SecondHand;
    NFPA_850 "NFPA 850, Fire protection for electric generating plants: containment for ten minutes of fixed spray and hoses" "" Memory;
    FAA_DRAINAGE "Federal Aviation Administration, Advisory Circular 150/5320-5, Airport Drainage, as several public drainage manuals quote it" "1965" SecondHand;
    NH_1504 "New Hampshire Code of Administrative Rules, Env-Wq 1504.10, water quality volume" "" Read;
    SCHUELER "Claytor and Schueler, Design of Stormwater Filtering Systems, as an appendix of a state manual copies it: water-quality volume and flow" "1996" SecondHand;
    WQ_DEPTH "Depth of the water-quality rain: 1 in, Env-Wq 1504.10; 0.8 to 1.2 in typical, slides of a sizing course" "" Read;
}
