//! Sources on what the shop builds: plates, shells, supports, heaters, vents, protection against corrosion.

sources! {
    STRENGTH "Strength of materials: follows from equilibrium and the theory of beams, needs no authority" "" Read;
    PLATE_TABLE "Theory of thin plates under water load: finite elements of 48 x 48 worked apart from this code, Poisson's ratio 0.3" "" Read;
    ROARK_PLATES "Roark's Formulas for Stress and Strain, table 11.4, case 1a" "" Read;
    CIRCULAR_PLATES "Civil Engineering Handbook, 2nd edition, equations 47.72 to 47.76, circular plates" "" Read;
    ROARK_SHORT_TUBE "Roark's Formulas for Stress and Strain, table 35, case 19b, thin tube under lateral pressure, ends held round" "" Memory;
    ROARK_LONG_TUBE "Roark's Formulas for Stress and Strain, table 35, case 19a, very long tube, as worked on a public sheet" "" SecondHand;
    MODEL_BASIN "Windenburg and Trilling, Collapse by instability of thin cylindrical shells under external pressure, Transactions of the ASME 56, as quoted by two engineering texts" "1934" SecondHand;
    SPHERE_COLLAPSE "Collapse of a thin spherical shell under external pressure, 0.365 E (t/R)2, handbooks" "" Memory;
    ZICK "L. P. Zick, Stresses in large horizontal cylindrical pressure vessels on two saddle supports, Welding Journal Research Supplement, formulas as in ASME VIII-2, 4.15.3" "1951" SecondHand;
    CHICAGO_TANKS "Chicago building code, underground tanks: thickness by capacity, vents" "" Read;
    FLORAL_PARK_TANKS "Village code of Floral Park, New York, underground tanks: thickness by capacity" "" Read;
    RYE_TANKS "City code of Rye, New York, section 42-8, underground tanks: thickness by capacity" "" Read;
    NYC_TANKS "New York City Mechanical Code, 1305.14.4, thickness of small oil tanks" "2014" Read;
    SLING_GUIDE "A rigging guide: load factors by the angle of the sling, with examples" "" Read;
    SPHEROID "Surface of a spheroid, geometry" "" Read;
    FREEZE_ASHRAE "ASHRAE Handbook, Fundamentals, time for water in an insulated pipe to cool to freezing, as quoted by an engineer's article" "" SecondHand;
    WAC_SURFACES "WAC 51-11-0526, resistances of inside and outside surfaces (Washington energy code)" "" Read;
    ASHRAE_INSULATION "ASHRAE, rows of insulation at 0.025 Btu/(h ft °F), 0.30 Btu in/(h ft2 °F)" "1989" SecondHand;
    INSULATION_MEMORY "Conductivity of glass fibre and of foamed plastics, engineering tables" "" Memory;
    HEAT_LOSS "Steady heat flow through layers in series; needs no authority" "" Read;
    UFC_3_570_02A "UFC 3-570-02A, Cathodic protection, appendix C, galvanic anodes" "2005" Read;
    MIL_1004_10 "US Department of Defense, MIL-HDBK-1004/10, Electrical engineering, cathodic protection: weight of anodes" "" Read;
    CCR_5598 "8 CCR 5598, Vents of underground tanks (California)" "" Read;
    OAC_165_26 "Oklahoma Administrative Code 165:26-2-6, vents of underground tanks" "" Read;
    VENT_MEMORY "API 2000: displaced air of filling and emptying, doubled on filling with volatile liquids" "" Memory;
    HOME_HEATING "A reference page on home energy: heating 40 and 80 gal of water by 60 °F" "" Read;
    STEEL_MEMORY "Modulus, Poisson's ratio and yield of common steels, engineering tables; 0.6 of the yield as allowable stress" "" Memory;
}
