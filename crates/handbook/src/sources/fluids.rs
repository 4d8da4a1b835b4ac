//! Sources on water and oils.

sources! {
    TANAKA_2001 "Tanaka et al., Recommended table for the density of water between 0 °C and 40 °C, Metrologia 38, 301-309" "2001" SecondHand;
    IAPWS_95 "IAPWS R6-95, Thermodynamic properties of ordinary water substance" "2018" SecondHand;
    IAPWS_SR6 "IAPWS SR6-08, Properties of liquid water at 0.1 MPa" "2011" SecondHand;
    TEOS_10 "IOC, SCOR and IAPSO, The international thermodynamic equation of seawater" "2010" SecondHand;
    SHARQAWY_2010 "Sharqawy, Lienhard and Zubair, Thermophysical properties of seawater, Desalination and Water Treatment 16, 354-380, equation 22" "2010" SecondHand;
    MILLERO_1974 "Millero, viscosity of seawater, as coded in public oceanographic software" "1974" SecondHand;
    ASTM_D1250_1980 "ASTM D1250 and API MPMS 11.1, Petroleum measurement tables 54A, 54B, 54D" "1980" SecondHand;
    REFUTAS "Refutas' viscosity blending number, as quoted after Maples 2000 by public pages and by Oil and Gas Science and Technology, article 210047, table 6" "2000" SecondHand;
    ASTM_D7152 "ASTM D7152, Calculating the viscosity of a blend of petroleum products" "" Memory;
    BLENDING_RULES "Blending by the logarithm (Arrhenius 1887) and by the cube root (Kendall and Monroe 1917) of viscosity; textbook rules" "" Memory;
    API_MPMS_2004 "API MPMS 11.1, Temperature and pressure volume correction factors" "2004" SecondHand;
    ASTM_D341 "ASTM D341, Viscosity-temperature charts for liquid petroleum products" "2009" SecondHand;
    ASTM_D2161 "ASTM D2161, Conversion of kinematic viscosity to Saybolt universal viscosity" "2017" SecondHand;
    SAYBOLT_FACTOR "ASTM D2161, factor 0.000061 for temperatures other than 100 °F" "" Memory;
    NOAA_OIL_DATA "NOAA Office of Response and Restoration, open oil data, commit ca22bdb" "2023" Read;
    TEXTBOOK_OILS "Textbook and trade values of oil products" "" Memory;
    GRADE_CHART "Trade chart of ISO viscosity grades and Saybolt seconds" "" SecondHand;
    EN_228 "EN 228, Unleaded petrol, limits as copied on one page" "2012" SecondHand;
    EN_590 "EN 590, Diesel, limits as copied by an encyclopaedia" "" SecondHand;
    EN_14214 "EN 14214, Fatty acid methyl esters" "" SecondHand;
    ASTM_D1655 "ASTM D1655, Aviation turbine fuels" "" SecondHand;
    ASTM_D975 "ASTM D975, Diesel fuel, as adopted by Maryland, COMAR 03.03.05.02" "" SecondHand;
    ASTM_D6751 "ASTM D6751, Biodiesel blend stock B100" "" SecondHand;
    ASTM_D396 "ASTM D396, Fuel oils" "1986" SecondHand;
    ASTM_D6871 "ASTM D6871, Natural ester fluids used in electrical apparatus" "" Memory;
    CFR_1065 "40 CFR 1065.703, Distillate diesel fuel for engine tests" "" Read;
    SAE_J300 "SAE J300, Engine oil viscosity classification" "" SecondHand;
    SAE_J306 "SAE J306, Gear lubricant viscosity classification" "" SecondHand;
    ISO_3448 "ISO 3448, Industrial liquid lubricants, viscosity classification" "" SecondHand;
    IEC_60296 "IEC 60296, Mineral insulating oils, 4th ed." "2012" SecondHand;
    ESTER_FIRE "IEEE Industry Applications Magazine, January 2009, fire points of less-flammable fluids" "2009" SecondHand;
    PLANT_OIL_TENSION "Interfacial tension of commercial vegetable oils and water by pendant drop, a journal abstract" "" SecondHand;
    GASOLINE_IN_WATER "Saeed and Al-Mutairi, Water-soluble fraction of leaded gasolines in seawater, Environment International 25, 117-129, abstract" "1999" Read;
    CLINE_1991 "Cline, Delfino and Rao, Partitioning of aromatic constituents into water from gasoline, Environ. Sci. Technol. 25, 914-920, abstract" "1991" Read;
    API_4531 "API Publication 4531, Solubility of BTEX from gasoline-oxygenate mixtures, summary" "1991" Read;
    STORMWATER_OIL "Oil and grease in urban stormwater, Richmond, California, J. Environmental Engineering 110, 58 (authors recalled: Stenstrom and others)" "1984" SecondHand;
    STORMWATER_RAW "National Stormwater Quality Database (Pitt, Maestre and Clary), raw results of 1990 to 2008 as a public repository has them, BSD 3-clause; percentiles by land use worked for this handbook, suspect results of Texas 1999 to 2001 set aside" "2018" Read;
    FUEL_STORAGE_DROPS "California storm-water handbook, product storage runoff: 80 % of the oil above 90 µm, 30 % above 150 µm, one site" "1993" Memory;
    BILGE_GUIDE "IMO MEPC.1/Circ.677, Annex 3, emulsions and separation" "" Read;
    SEPARATOR_FAILURES "US Army and Air Force guidance on why separators fail: detergents, dirt, solvents, no maintenance" "" SecondHand;
    PRETREATMENT_NOTE "City pretreatment note: antifreeze, degreaser and brake fluid pass or release trapped oil" "" SecondHand;
    HEXANE_EXTRACT "EPA method 1664, n-hexane extractable material, revision A, as summarised by the contract laboratory programme" "2000" SecondHand;
    BENZENE_WASTE "40 CFR 261.24, toxicity characteristic, table 1" "" Read;
    SEPARATOR_SCOPE "EN 858-1, Separator systems for light liquids: scope and classes" "2002" SecondHand;
    TEXTBOOK_CHEMISTRY "Textbook chemistry of waste water" "" Memory;
}
