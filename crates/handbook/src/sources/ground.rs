//! Sources on what is buried: uplift, soil, cover, anchors, electrical areas.

sources! {
    FEMA_259 "FEMA P-259, Engineering Principles and Practices for Retrofitting Flood-Prone Residential Structures, appendix C, example C7" "" Read;
    BUOYANCY_PERMIT "Buoyancy and restraint of a 2,000 gal underground tank, calculation in a county's permit file, California" "1999" Read;
    TANK_ANCHOR_CHART "Chart for the anchoring of underground tanks, empty and with water to grade, in a county's permit file, California" "" Read;
    SEPTIC_ANCHOR_SHEET "Burnett County, Wisconsin, worksheet on the anchoring of tanks in saturated ground" "" Read;
    MANHOLE_FLOTATION "American Concrete Pipe Association, Design Data 41, Manhole flotation, an example of it worked on a sheet" "1996" SecondHand;
    HEAD_WEDGE "Soil that a buried tank lifts along planes at 30 degrees from its widest line, sheet in a county's permit file, California" "" Read;
    TANK_ANCHOR_MANUAL "Installation manual of plastic tanks in a county's permit file, California: sizes of deadmen and slabs" "" Read;
    SUBMERGED_MEMORY "Recommended practice for underground tanks: submerged weights of 60 lb/ft3 for backfill and 90 lb/ft3 for concrete" "" Memory;
    SOIL_MECHANICS "Weight and lateral pressure of soil above and below groundwater, soil mechanics texts" "" Memory;
    CCR_5597 "8 CCR 5597, Installation of underground tanks (California)" "" Read;
    REDWOOD_CITY "City fire code of Redwood City, California, depth and cover of underground tanks" "" Read;
    KELLOGG_CODE "City code of Kellogg, Idaho, underground tanks" "1961" Read;
    AASHTO_WHEELS "AASHTO, Standard Specifications for Highway Bridges, 17th edition, H-20 truck and the spread of wheel loads through earth, section 6.4" "2002" SecondHand;
    AASHTO_OVERLAP "AASHTO, Standard Specifications for Highway Bridges, 17th edition: areas of wheels that overlap carry the whole axle; impact by depth of cover" "2002" Memory;
    IBC_1806 "International Building Code, table 1806.2, presumptive load-bearing values, as printed in a civil handbook" "2012" SecondHand;
    CCR_AREAS "8 CCR, table of electrical areas before section 5531: drainage ditches, separators, impounding basins (California)" "" Read;
    AREA_DIVISION_MEMORY "NFPA 30 and NEC table 515.3: those areas are Class I, Division 2" "" Memory;
    WAC_PITS "WAC 296-24-33015, electrical areas of service stations: pits below grade (Washington)" "" Read;
    LIQUID_CLASSES "NFPA 30, classes of flammable and combustible liquids by flash and boiling point, as quoted by several public texts" "" SecondHand;
}
