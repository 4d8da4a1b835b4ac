//! Sources on rise, settling, removal and permits.

sources! {
    STOKES "Stokes' law of the creeping sphere; textbook hydrodynamics" "1851" Read;
    NZ_PETROLEUM "Ministry for the Environment (New Zealand), Environmental Guidelines for Water Discharges from Petroleum Industry Sites, Appendix 6.1" "1998" Read;
    RISE_TIME_TABLE "A secondary table of rise times over 3 inches of oil of specific gravity 0.85, from trade literature" "" Read;
    API_421 "American Petroleum Institute, Publication 421, Design and Operation of Oil-Water Separators, 1st ed." "1990" SecondHand;
    API_421_FACTOR "American Petroleum Institute, Publication 421, table of the turbulence factor" "1990" Memory;
    API_EXAMPLE "An engineering text's worked example of a basin sized to API 421 (title not kept)" "" SecondHand;
    SWMMWW "Washington State Department of Ecology, Stormwater Management Manual for Western Washington, Vol. V, BMP T11.10 and T11.11" "" Memory;
    DIESEL_EXAMPLE "A worked example of a diesel site sized by residence time, after API 1990 and a city manual" "" Read;
    SCHILLER_NAUMANN "Schiller and Naumann, drag of a sphere, with a floor of 0.44; as used by many public codes" "1933" SecondHand;
    FERGUSON_CHURCH "Ferguson and Church, settling velocity of grains, Journal of Sedimentary Research 74:933-937" "2004" SecondHand;
    HAZEN_CAMP "Hazen 1904 and Camp 1946, the ideal settling basin: removal is rise velocity over surface loading" "" Memory;
    VETTER "Vetter, removal in a channel mixed over its depth" "1940" Memory;
    EPA_DETENTION "US EPA, Methodology for Analysis of Detention Basins, EPA 440/5-87-001: Hazen's basins in series" "1986" Memory;
    YAO "Yao, theory of settling between inclined plates and in tubes" "1970" Memory;
    SURFACE_LOADING "Continuity: in laminar flow the captured flux is concentration times rise velocity times projected area" "" Read;
    HINZE "Hinze, AIChE Journal 1:289, largest stable droplet in turbulence; constant and exponents as two public texts quote them" "1955" SecondHand;
    EPA_TSD "US EPA, Technical Support Document for Water Quality-based Toxics Control, EPA/505/2-90-001" "1991" SecondHand;
    NR_106 "Wisconsin Administrative Code, chapter NR 106" "" Read;
    EN_858_NOMINAL "EN 858-2, Separator systems for light liquids, part 2, clause 4: nominal size" "2003" SecondHand;
    PPG3 "Environment agencies of the United Kingdom, Pollution Prevention Guidelines 3 (withdrawn)" "2006" SecondHand;
    UFGS_PLATES "Unified Facilities Guide Specifications, coalescing oil-water separators (11311, 44 42 53, 46 25 14)" "" Read;
    MIL_1005_9A "US Department of Defense, MIL-HDBK-1005/9A, Industrial and Oily Wastewater Control" "1997" Read;
    MIL_1005_16 "US Department of Defense, MIL-HDBK-1005/16, Wastewater Treatment System Design" "1997" Read;
    PUMP_RANKING "Published rankings of pumps by shear: IMO MEPC.1/Circ.677, Annex 3, and the SPE's encyclopaedia; no figures" "" Read;
    PUMP_JUDGEMENT "Engineering judgement on the turbulence in pumps; no measured droplet sizes were found" "" Practice;
    HINZE_95 "Hinze, AIChE Journal 1:289, the largest droplet as the size below which 95 % of the volume lies" "1955" Memory;
    KUWABARA "Kuwabara, forces on parallel cylinders at low Reynolds number, J. Phys. Soc. Japan 14:527-532; factor as in Lee and Liu, Aerosol Science and Technology 1:147-161 (1982), stream function as two public filtration codes write it" "1959" SecondHand;
    HAPPEL "Happel, viscous flow relative to arrays of cylinders, AIChE Journal 5:174-177" "1959" Memory;
    SINGLE_FIBRE "Filter law of single fibres, as two public filtration codes write it, one of them after Balazy" "" SecondHand;
    FIBRE_DIFFUSION "Boundary-layer theory of diffusion to fibres in Kuwabara's flow, coefficient 2.6; the fitted 1.6 as a public filtration code has it" "" Memory;
    STOKES_EINSTEIN "Stokes and Einstein's diffusion of a sphere; textbook physics" "1905" Read;
    SHAH_LONDON "Shah and London, Laminar Flow Forced Convection in Ducts: entrance length on the hydraulic diameter" "1978" Memory;
    DURST "Durst and others, The development lengths of laminar pipe and channel flows, Journal of Fluids Engineering 127:1154-1160" "2005" Memory;
    FALLING_FILM "Laminar film draining under gravity with a free surface, Nusselt; textbook hydrodynamics" "1916" Read;
    BENJAMIN "Benjamin, Gravity currents and related phenomena, Journal of Fluid Mechanics 31:209-248" "1968" Memory;
    DOBBINS_CAMP "Dobbins, Effect of turbulence on sedimentation, Transactions ASCE 109; Camp, Transactions ASCE 111" "1944, 1946" Memory;
    CAMP_EDDY "Camp, Sedimentation and the design of settling tanks, Transactions ASCE 111: eddy diffusivity of wall friction" "1946" Memory;
    WEHNER_WILHELM "Wehner and Wilhelm, Boundary conditions of flow reactor, Chemical Engineering Science 6" "1956" Memory;
    HATCH_CHOATE "Hatch and Choate, Statistical description of the size properties of non-uniform particulate substances" "1929" Memory;
    CAMP_SCOUR "Camp, Sedimentation and the design of settling tanks, Transactions ASCE 111: scouring velocity" "1946" Memory;
    TAYLOR_BATCHELOR "Taylor and Batchelor, The effect of wire gauze on small disturbances in a uniform stream, Quarterly Journal of Mechanics and Applied Mathematics 2:1-29" "1949" Memory;
    JET_LENGTH "Length over which the jet behind a valve spends its energy, two to five bores" "" Memory;
    CAMP_STEIN "Camp and Stein, velocity gradients and internal work in fluid motion: the root of power over viscosity" "1943" Memory;
    KOLMOGOROV "Kolmogorov's scale of the smallest eddies; textbook turbulence" "1941" Read;
    VISCOUS_DROPS "Factor (1 + B Vi)^0.6 with Vi on the largest droplet, as a public text writes it after Calabrese and others, AIChE Journal 32:657" "1986" SecondHand;
}
