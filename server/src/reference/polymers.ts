import { sources } from './sources';
import { specimenTable } from './specimen';

/** Polymers, rubbers, natural products and carbons. Temperatures are the low end of what is quoted. */
export const polymers = specimenTable(
  `
polyethylene; pe, hdpe, ldpe, lldpe, pe hd, pe ld, pe x, xlpe, black polyethylene; -; organic; 105; carbon monoxide, organic vapours; 300
polypropylene; pp, ipp, isotactic polypropylene; -; organic; 150; carbon monoxide, organic vapours; 280
polybutene; polybutene 1, pb 1; -; organic; 100; carbon monoxide, organic vapours; 280
polyethylene terephthalate; pet, poly(ethylene terephthalate), pet preform, petp, polyester; -; organic; 240; carbon monoxide, aldehydes, organic vapours; 330
polybutylene terephthalate; pbt; -; organic; 215; carbon monoxide, organic vapours; 320
polycarbonate; pc; -; organic; -; carbon monoxide, aromatic vapours; 380
polystyrene; ps, eps, hips; -; organic; -; carbon monoxide, aromatic vapours; 280
abs; acrylonitrile butadiene styrene, san, asa; -; organic; -; carbon monoxide, aromatic vapours, hydrogen cyanide; 280
pmma; polymethyl methacrylate, poly(methyl methacrylate), acrylic glass, acrylic, polymethylmethacrylate; -; organic; -; carbon monoxide, organic vapours; 200
polyamide; pa, nylon, pa 6, pa6, pa 66, pa66, pa 11, pa11, pa 12, pa12, polyamide 6, polyamide 66, polyamide 11, polyamide 12; -; organic; 170; carbon monoxide, ammonia, hydrogen cyanide, organic vapours; 300
polyoxymethylene; pom, acetal, polyacetal; -; organic; 160; carbon monoxide, aldehydes; 220
polyether ether ketone; peek, polyetheretherketone; -; organic; 330; carbon monoxide, aromatic vapours; 500
polyphenylene sulfide; pps; -; organic; 275; carbon monoxide, sulfur oxides, hydrogen sulfide; 400
polysulfone; psu, pes, polyethersulfone; -; organic; -; carbon monoxide, sulfur oxides; 450
polyimide; pi; -; organic; -; carbon monoxide, hydrogen cyanide; 450
polyvinyl chloride; pvc, poly(vinyl chloride), vinyl, cable pvc, polyvinylchloride; -; organic, halide; -; hydrogen chloride, carbon monoxide, aromatic vapours; 180
polyvinylidene chloride; pvdc; -; organic, halide; -; hydrogen chloride, carbon monoxide; 150
polyvinylidene fluoride; pvdf; -; organic, fluoride; 160; hydrogen fluoride, carbon monoxide; 350
polytetrafluoroethylene; ptfe; -; organic, fluoride; 320; hydrogen fluoride, carbon monoxide; 400
fluoropolymer; fluoropolymers, fep, pfa, etfe, fluoroelastomer, fkm; -; organic, fluoride; -; hydrogen fluoride, carbon monoxide; 300
polyurethane; pu, pur, tpu, polyurethane foam; -; organic; -; isocyanates, hydrogen cyanide, carbon monoxide; 180
polyacrylonitrile; pan; -; organic; -; hydrogen cyanide, ammonia, carbon monoxide; 200
nitrile rubber; nbr, hnbr; -; organic; -; hydrogen cyanide, carbon monoxide, sulfur oxides; 250
natural rubber; nr, isoprene rubber, rubber; -; organic; -; carbon monoxide, organic vapours, sulfur oxides; 200
styrene butadiene rubber; sbr, br, butadiene rubber, tyre rubber, tire rubber; -; organic; -; carbon monoxide, aromatic vapours, sulfur oxides; 250
epdm; epm, butyl rubber, iir; -; organic; -; carbon monoxide, organic vapours, sulfur oxides; 300
chloroprene rubber; cr rubber, polychloroprene, chlorinated rubber, chlorinated polyethylene; -; organic, halide; -; hydrogen chloride, carbon monoxide; 200
silicone; silicone rubber, pdms, polydimethylsiloxane; -; organic; -; organic vapours, aldehydes; 200
ethylene vinyl acetate; eva, polyvinyl acetate, pvac; -; organic; 60; acetic acid, carbon monoxide; 280
polyvinyl alcohol; pva, pvoh; -; organic; 180; carbon monoxide, aldehydes; 200
polyvinyl butyral; pvb; -; organic; -; carbon monoxide, aldehydes; 200
polylactide; pla, plla, polylactic acid; -; organic; 140; carbon monoxide, aldehydes; 230
polycaprolactone; pcl; -; organic; 55; carbon monoxide, organic vapours; 250
polyethylene oxide; peo, peg, polyethylene glycol, polyethyleneglycol; -; organic; 30; carbon monoxide, aldehydes; 180
epoxy; epoxy resin, epoxide resin; -; organic; -; carbon monoxide, aromatic vapours; 200
phenolic resin; phenolic, phenol formaldehyde; -; organic; -; carbon monoxide, aldehydes, aromatic vapours; 150
melamine resin; urea resin, melamine formaldehyde, urea formaldehyde; -; organic; -; ammonia, hydrogen cyanide, aldehydes, carbon monoxide; 150
unsaturated polyester; polyester resin, vinyl ester; -; organic; -; carbon monoxide, aromatic vapours; 200
flame retarded polymer; brominated polymer, flame retardant, brominated flame retardant; -; organic, halide; -; hydrogen bromide, carbon monoxide; 200
cellulose; cotton, paper, pulp, microcrystalline cellulose, cellulose acetate, ethyl cellulose; C6H10O5; organic; -; carbon monoxide, acetic acid, aldehydes; 200
wood; lignin, hemicellulose, biomass, straw, starch, sawdust; -; organic; -; carbon monoxide, acetic acid, aldehydes; 150
protein; wool, leather, gelatin, silk, collagen; -; organic; -; ammonia, hydrogen cyanide, hydrogen sulfide, carbon monoxide; 180
coal; lignite, anthracite, bituminous coal, peat; -; organic, carbon; -; carbon monoxide, sulfur oxides, hydrogen sulfide, aromatic vapours; 100
bitumen; asphalt, pitch, tar; -; organic, carbon; -; carbon monoxide, hydrogen sulfide, aromatic vapours; 150
carbon black; char, coke, activated carbon, charcoal, soot; -; carbon; -; carbon monoxide; 350
graphite; carbon, carbon fibre, carbon fiber, graphene, carbon nanotubes; C; carbon; -; carbon monoxide; 500
binder; organic binder, wax, paraffin, oil, lubricant, stearic acid, stearate, plasticiser, plasticizer; -; organic; -; carbon monoxide, organic vapours; 150
`,
  sources.commonPractice,
);

/** Words that say only what class a specimen belongs to. */
export const specimenClasses = specimenTable(
  `
organic; organics, organic matter, organic material, organic compound, volatile organics, residual solvent, solvent; -; organic; -; carbon monoxide, organic vapours; 100
polymer; polymers, plastic, plastics, thermoplastic, thermoset, elastomer, resin, copolymer; -; organic; -; carbon monoxide, organic vapours; 200
halogenated; halogenated polymer, halogenated organics, chlorinated organics; -; organic, halide; -; hydrogen chloride, carbon monoxide; 100
fluorinated; fluorinated organics; -; organic, fluoride; -; hydrogen fluoride, carbon monoxide; 100
pharmaceutical; drug substance, api, excipient, pharmaceuticals; -; organic; -; carbon monoxide, organic vapours; 100
food; fat, sugar, foodstuff, flour; -; organic; -; carbon monoxide, aldehydes; 100
energetic; energetic material, explosive, explosives, propellant, pyrotechnic, self reactive; -; energetic, organic, oxidiser; -; nitrogen oxides, carbon monoxide; -
oxidiser; oxidizer, oxidising agent; -; oxidiser; -; -; -
metal; metals, alloy, alloys, metal powder; -; vague; -; -; -
glass; glasses, enamel, frit, glaze; -; vague, silicate; -; -; -
ceramic; ceramics, refractory; -; vague; -; -; -
mineral; minerals, rock, soil, sediment, ore; -; vague; -; -; -
salt; salts, molten salt; -; vague; -; -; -
carbonates; -; -; vague, carbonate; -; carbon dioxide; 150
hydrate; hydrates; -; vague; -; water; -
oxide; oxides; -; vague; -; -; -
sulfide; sulfides, sulphide, sulphides; -; vague, sulfide; -; sulfur oxides; 200
water; moisture, adsorbed water; H2O; -; 0; water; -
inorganic filler; filler, fillers, pigment; -; vague; -; -; -
glass fibre; glass fiber, glass fibres; -; silicate, alkali glass, borate; -; -; -
`,
  sources.commonPractice,
);
