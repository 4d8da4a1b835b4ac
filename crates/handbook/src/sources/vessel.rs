//! Sources on vessels, levels and operation.

sources! {
    HYDROSTATICS "Hydrostatic balance of liquids at rest; follows from equal pressures, needs no authority" "" Read;
    TANK_VOLUMES "Dan Jones, Computing fluid tank volumes, as quoted by the documentation of the Python library fluids" "" SecondHand;
    SHEET_GAUGE "Manufacturers' Standard Gauge for sheet steel, a sheet-metal chart" "" Read;
    GAUGE_46_CFR "46 CFR 58.50-10, Diesel fuel tanks, gauges of plate" "" Read;
    PLATE_MEMORY "Thickness of rolled plate and sheet, trade tables" "" Memory;
    DENSITY_MEMORY "Densities of construction materials, engineering tables" "" Memory;
    EN_858_2_UPKEEP "EN 858-2, Separator systems for light liquids, part 2, section 6: operation, inspection and maintenance" "2003" SecondHand;
    PPG3_ALARM "Pollution Prevention Guidelines 3 (UK, withdrawn), level of the oil alarm" "2006" Memory;
    MIL_HDBK_1138 "US Department of Defense, MIL-HDBK-1138, Wastewater Treatment System Operations and Maintenance Augmenting Handbook, section 5" "1997" Read;
    THURSTON_COUNTY "Thurston County, Washington, leaflet on the maintenance of stormwater facilities: oil/water separators" "" Read;
    CHARLOTTE_NC "City of Charlotte, North Carolina, Oil/Water Separator Inspection and Maintenance Guidance Procedures" "2009" Read;
    DALLAS_TRAPS "City code of Dallas, Texas, food-service grease traps, the 25 per cent rule" "" Read;
    MOUNT_VERNON_TRAPS "City code of Mount Vernon, Illinois, grease traps" "" Read;
    UFGS_46_25_14 "UFGS 46 25 14 (formerly 11311, 44 42 53), Coalescing [or Vertical Tube] Oil-Water Separators, part 3, field quality control" "2011" Read;
    OSHA_1910_146 "29 CFR 1910.146, Permit-required confined spaces" "" Read;
    OSHA_1910_252 "29 CFR 1910.252, Welding, cutting and brazing: general requirements" "" Memory;
    OSHA_SUBPART_D "29 CFR 1910 subpart D, Walking-working surfaces, as revised" "2017" Read;
    ZONE_TEXTBOOK "A textbook of hazardous areas: the inside of a separator for oils is Zone 0" "" Read;
    LIFTING_MEMORY "ASME BTH-1, Design of below-the-hook lifting devices" "" Memory;
    MEASURING_AID "A training aid on measuring oil and sludge in separators (title not kept)" "" Read;
    PART_279_261 "40 CFR 279.10 and 261.24, used oil and hazardous waste" "" Read;
    CFR_112_8 "40 CFR 112.8(c), secondary containment of bulk storage containers and the drainage of rain from it" "" Read;
    ALLOWANCE_110 "Common practice: containment for 110 % of the largest container; no federal rule says so" "" Practice;
    EPA_FREEBOARD "US EPA on 40 CFR 112.8(c)(2): the 24-hour rain of 25 years is the proper freeboard, not made a rule" "" Read;
}
