import { metalTable } from './specimen';

/**
 * Metals, half-metals and alloys with the temperature at which melting begins (°C). Al, Zn, Sn, In, Ga, Ag, Au, Cu, Hg:
 * ITS-90 (Preston-Thomas, Metrologia 27 (1990) 3), mercury its triple point; Pb, Bi, Sb: secondary points, Bedford et
 * al., Metrologia 33 (1996) 133; the others and all alloys: handbook values, from memory, rounded down for alloys.
 */
export const metals = metalTable(
  `
aluminium; aluminum; Al; -; -; 660.3
zinc; -; Zn; -; -; 419.5
tin; -; Sn; -; -; 231.9
indium; -; In; -; -; 156.6
gallium; -; Ga; -; -; 29.8
silver; -; Ag; -; -; 961.8
gold; -; Au; -; -; 1064.2
copper; -; Cu; -; -; 1084.6
mercury; -; Hg; -; -; -38.8
lead; -; Pb; -; -; 327.5
bismuth; -; Bi; -; -; 271.4
antimony; -; Sb; -; -; 630.6
cadmium; -; Cd; -; -; 321
magnesium; -; Mg; reactive metal; -; 650
calcium; -; Ca; reactive metal; -; 842
lithium; -; Li; alkali metal, reactive metal; -; 180
sodium; -; Na; alkali metal, reactive metal; -; 97
potassium; -; K; alkali metal, reactive metal; -; 63
rubidium; -; Rb; alkali metal, reactive metal; -; 39
caesium; cesium; Cs; alkali metal, reactive metal; -; 28
strontium; -; Sr; reactive metal; -; 777
barium; -; Ba; reactive metal; -; 727
titanium; -; Ti; reactive metal; -; 1668
zirconium; -; Zr; reactive metal; -; 1855
hafnium; -; Hf; reactive metal; -; 2233
rare earth metal; rare earths, lanthanum, cerium, neodymium, yttrium, mischmetal; La, Ce, Nd, Y; reactive metal; rare earth metal; 795
iron; -; Fe; -; -; 1538
nickel; -; Ni; -; -; 1455
cobalt; -; Co; -; -; 1495
manganese; -; Mn; -; -; 1246
chromium; -; Cr; -; -; 1907
vanadium; -; V; -; -; 1910
tungsten; -; W; -; -; 3414
molybdenum; -; Mo; -; -; 2622
tantalum; -; Ta; -; -; 3017
platinum; -; Pt; -; -; 1768
palladium; -; Pd; -; -; 1554
silicon; -; Si; -; -; 1414
germanium; -; Ge; -; -; 938
boron; -; B; -; -; 2076
arsenic; -; As; -; -; 615
selenium; -; Se; -; -; 221
tellurium; -; Te; -; -; 450
thallium; -; Tl; -; -; 304
aluminium alloy; aluminum alloy, casting alloy, al si alloy, aluminium casting alloy; -; -; aluminium, silicon; 500
magnesium alloy; -; -; reactive metal; magnesium, aluminium, zinc; 430
titanium alloy; titanium aluminide, tial; TiAl, Ti6Al4V; reactive metal; titanium; 1400
steel; stainless steel, cast iron, iron alloy; -; -; iron; 1130
nickel alloy; superalloy, nickel superalloy; -; -; nickel; 1200
nickel titanium; shape memory alloy, nitinol; NiTi; reactive metal; nickel, titanium; 1110
copper alloy; bronze, tin bronze; -; -; copper, tin; 790
brass; -; -; -; copper, zinc; 880
solder; tin lead solder, soft solder; -; -; tin, lead; 183
lead free solder; sac solder; -; -; tin, silver, copper; 217
silver solder; brazing alloy, hard solder; -; -; silver, copper, zinc; 600
amalgam; dental amalgam; -; -; mercury, silver, tin; 40
pewter; babbitt, white metal; -; -; tin, antimony, copper; 230
low melting alloy; fusible alloy; -; -; bismuth, lead, tin, cadmium; 47
`,
  'melting: ITS-90, Bedford et al. 1996, or handbook values from memory',
);
