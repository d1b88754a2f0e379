import { sources } from './sources';
import { specimenTable } from './specimen';

/** Minerals, ceramics, building materials and glasses. Temperatures are the low end of what is quoted. */
export const minerals = specimenTable(
  `
calcite; calcium carbonate, limestone, chalk, marble, aragonite, vaterite; CaCO3; carbonate, lime; -; carbon dioxide; 550
dolomite; dolomitic limestone; CaMg(CO3)2; carbonate, lime; -; carbon dioxide; 500
magnesite; magnesium carbonate; MgCO3; carbonate, lime; -; carbon dioxide; 400
hydromagnesite; -; (MgCO3)4.Mg(OH)2.4H2O; carbonate, lime; -; water, carbon dioxide; 200
siderite; iron carbonate, iron ii carbonate; FeCO3; carbonate, reducible oxide, iron oxide; -; carbon dioxide, carbon monoxide; 350
rhodochrosite; manganese carbonate; MnCO3; carbonate, reducible oxide; -; carbon dioxide, carbon monoxide; 350
smithsonite; zinc carbonate; ZnCO3; carbonate, reducible oxide; -; carbon dioxide; 250
hydrozincite; basic zinc carbonate; Zn5(CO3)2(OH)6; carbonate, reducible oxide; -; water, carbon dioxide; 180
cerussite; lead carbonate; PbCO3; carbonate, lead oxide, reducible oxide; -; carbon dioxide; 200
malachite; basic copper carbonate; Cu2CO3(OH)2; carbonate, copper oxide, reducible oxide; -; water, carbon dioxide; 200
strontianite; strontium carbonate; SrCO3; carbonate, lime; -; carbon dioxide; 800
witherite; barium carbonate; BaCO3; carbonate, lime; -; carbon dioxide; 900
quartz; silica, silicon dioxide, cristobalite, sand, silica sand, fumed silica; SiO2; silica; -; -; -
gypsum; calcium sulfate dihydrate, calcium sulphate dihydrate, plaster, gypsum plaster; CaSO4.2H2O; sulfate; -; water; 80
bassanite; hemihydrate, calcium sulfate hemihydrate, stucco; CaSO4.0.5H2O; sulfate; -; water; 80
anhydrite; calcium sulfate, calcium sulphate; CaSO4; sulfate; -; sulfur oxides; 1100
barite; baryte, barium sulfate, barium sulphate; BaSO4; sulfate; -; sulfur oxides; 1300
portlandite; calcium hydroxide, slaked lime, hydrated lime; Ca(OH)2; lime; -; water; 350
brucite; magnesium hydroxide; Mg(OH)2; lime; -; water; 280
lime; quicklime, calcium oxide; CaO; lime; -; -; -
periclase; magnesia, magnesium oxide; MgO; lime; -; -; -
gibbsite; aluminium hydroxide, aluminum hydroxide, alumina trihydrate, ath; Al(OH)3; -; -; water; 180
boehmite; -; AlOOH, AlO(OH); -; -; water; 400
corundum; alumina, aluminium oxide, aluminum oxide, sapphire; Al2O3; -; -; -; -
goethite; -; FeOOH, FeO(OH); iron oxide, reducible oxide; -; water; 200
hematite; haematite, iron oxide, iron iii oxide, rust; Fe2O3; iron oxide, reducible oxide; -; -; -
magnetite; -; Fe3O4; iron oxide, reducible oxide; -; -; -
wustite; iron ii oxide; FeO; iron oxide, reducible oxide; -; -; -
pyrite; marcasite, iron disulfide; FeS2; sulfide; -; sulfur oxides; 350
sphalerite; zinc sulfide; ZnS; sulfide; -; sulfur oxides; 500
galena; lead sulfide; PbS; sulfide, lead oxide; -; sulfur oxides; 500
kaolinite; kaolin, china clay, metakaolin; Al2Si2O5(OH)4; silicate; -; water; 400
clay; brick clay, ball clay, clay minerals, shale; -; silicate; -; water, carbon dioxide, sulfur oxides, hydrogen fluoride; 100
illite; muscovite, mica, biotite, sericite; -; silicate; -; water, hydrogen fluoride; 400
montmorillonite; smectite, bentonite; -; silicate; -; water; 50
chlorite; vermiculite; -; silicate; -; water; 400
talc; soapstone; Mg3Si4O10(OH)2; silicate; -; water; 800
serpentine; chrysotile, lizardite; Mg3Si2O5(OH)4; silicate; -; water; 550
zeolite; zeolites, molecular sieve, clinoptilolite; -; silicate; -; water; 30
feldspar; albite, orthoclase, microcline, anorthite; -; silicate; -; -; -
wollastonite; -; CaSiO3; silicate; -; -; -
mullite; -; Al6Si2O13; silicate; -; -; -
cement; portland cement, hydrated cement, cement paste, mortar, concrete; -; silicate, lime; -; water, carbon dioxide, sulfur oxides; 30
ettringite; -; -; sulfate; -; water; 30
slag; blast furnace slag, fly ash, coal ash, ash; -; slag, silicate; -; -; -
fluorite; fluorspar, calcium fluoride; CaF2; fluoride; 1418; hydrogen fluoride; 900
cryolite; sodium hexafluoroaluminate; Na3AlF6; fluoride, halide; 1009; hydrogen fluoride; 900
fluorapatite; phosphate rock; -; phosphate, fluoride; -; hydrogen fluoride; 600
hydroxyapatite; apatite, calcium phosphate, bone ash; Ca10(PO4)6(OH)2, Ca5(PO4)3OH; phosphate; -; water; 800
soda lime glass; container glass, float glass, window glass; -; silicate, alkali glass; -; -; -
borosilicate glass; -; -; silicate, borate, alkali glass; -; -; -
lead glass; lead crystal, crystal glass, lead oxide glass, lead silicate glass; -; silicate, lead oxide, reducible oxide; -; -; -
bismuth glass; bismuth oxide glass; -; bismuth oxide, reducible oxide; -; -; -
phosphate glass; -; -; phosphate; -; -; -
silicon carbide; -; SiC; carbide, silicide; -; -; -
silicon nitride; -; Si3N4; -; -; -; -
zirconia; zirconium dioxide, baddeleyite; ZrO2; -; -; -; -
titania; titanium dioxide, rutile, anatase; TiO2; -; -; -; -
`,
  sources.commonPractice,
);
