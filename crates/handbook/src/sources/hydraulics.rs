//! Sources on pipes, weirs and losses.

sources! {
    COLEBROOK "Colebrook and White, Turbulent flow in pipes" "1939" SecondHand;
    R_HYDRAULICS "Vignette of the R package hydraulics, pipe example" "" Read;
    DARCY "Darcy and Weisbach's friction loss, Hagen and Poiseuille's laminar flow; textbook hydraulics" "" Read;
    MANNING "Manning's formula, in FHWA Hydraulic Design Series 2, Highway Hydrology, 2nd ed., eq. 2.8" "2002" Read;
    HDS_2_OUTLETS "Federal Highway Administration, Hydraulic Design Series 2, Highway Hydrology, 2nd ed., chapter 8 on orifices and weirs" "2002" Read;
    CRITICAL_FLOW "Critical flow of an open section, Q2 T = g A3; textbook hydraulics" "" Read;
    KINDSVATER_CARTER_ISO "Kindsvater and Carter's rectangular thin-plate weir, coefficients of ISO 1438, recalled; the suppressed weir with k_b -0.9 mm" "2008" Memory;
    KINDSVATER_CARTER_BLEVINS "Kindsvater and Carter's suppressed weir with k_b -1 mm, after Blevins, as carried by fluids 1.3.1" "1984" SecondHand;
    ERGUN "Ergun, Fluid flow through packed columns, as carried by fluids 1.3.1" "1952" SecondHand;
    CARMAN "Carman, Fluid flow through granular beds, as carried by fluids 1.3.1" "1937" SecondHand;
    ERDIM "Erdim, Akgiray and Demir, A revisit of pressure drop-flow rate correlations for packed beds of spheres, as carried by fluids 1.3.1" "2015" SecondHand;
    KTA "KTA 3102.3, Loss of pressure through friction in pebble bed cores, as carried by fluids 1.3.1" "1981" SecondHand;
    ISO_5167 "ISO 5167-2, Orifice plates, Reader-Harris and Gallagher's coefficient, as carried by fluids 1.3.1" "2003" SecondHand;
    HEC_22_ORIFICE "Federal Highway Administration, Hydraulic Engineering Circular 22, Urban Drainage Design Manual, on orifices of detention outlets; read in a drainage manual that prints the passage, its origin recalled" "" SecondHand;
    HDS_2_ROUTING "Federal Highway Administration, Hydraulic Design Series 2, Highway Hydrology, 2nd ed., section 8.5, storage-indication routing" "2002" Read;
    NEH_15 "NRCS National Engineering Handbook, Part 630, chapter 15, Time of concentration" "2010" Read;
    WATER_MEASUREMENT "US Bureau of Reclamation, Water Measurement Manual, table of Kindsvater-Carter coefficients as reprinted in a federal hydraulics reference manual" "2001" SecondHand;
    KINDSVATER_SHEN "Kindsvater and Shen's thin-plate V-notch, curve fits as printed in two public codes and a public worksheet" "" SecondHand;
    VILLEMONTE "Villemonte, Submerged-weir discharge studies, Engineering News-Record" "1947" SecondHand;
    IDELCHIK_PLATE "Loss of a sharp-edged perforated plate in a straight passage, Idelchik's form" "" Memory;
    PLANE_POISEUILLE "Laminar flow between parallel plates; textbook hydrodynamics" "" Read;
    DAVIES "Davies' pressure loss of a fibrous bed, as quoted by a public engineering note on filters" "1952" SecondHand;
    B36_10M "ASME B36.10M, Welded and seamless wrought steel pipe; inch sizes recalled, compared with the metric sizes of fluids 1.3.1" "" Memory;
    ROUGHNESS "Equivalent sand roughness of commercial pipes; textbook tables, compared with fluids 1.3.1" "" Memory;
    MANNING_N "Manning's n of closed conduits, the tables of fluids 1.3.1 (after Chow) and of public drainage codes" "" Read;
    CRANE "Crane, Technical Paper 410, as carried by fluids 1.3.1" "2009" SecondHand;
    RENNELS "Rennels and Hudson, Pipe Flow, as carried by fluids 1.3.1" "2012" SecondHand;
    FITTING_TABLES "Loss coefficients of fittings; textbook tables" "" Memory;
    UFC_3_240_04A "UFC 3-240-04A (EI 11C201), wastewater collection and pumping, paragraph on wet wells and table 7-1" "1997" Read;
    KIRSCHMER "Kirschmer, Untersuchungen über den Gefällsverlust an Rechen, loss of bar screens and its coefficients, as textbooks of wastewater print them, recalled" "1926" Memory;
    PUMP_HEAD_ARTICLE "An article on sewage lift stations: static head and friction of a worked system" "2013" Read;
}
