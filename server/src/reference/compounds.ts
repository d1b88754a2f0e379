import { sources } from './sources';
import { specimenTable } from './specimen';

/** Salts, oxides, reference substances and energetic compounds. Temperatures are the low end of what is quoted. */
export const compounds = specimenTable(
  `
calcium oxalate monohydrate; calcium oxalate, whewellite; CaC2O4.H2O, CaC2O4; carbonate, lime; -; water, carbon monoxide, carbon dioxide; 100
copper sulfate pentahydrate; copper sulfate, copper sulphate, blue vitriol, copper sulphate pentahydrate; CuSO4.5H2O, CuSO4; sulfate, copper oxide, reducible oxide; -; water, sulfur oxides; 40
magnesium sulfate heptahydrate; magnesium sulfate, epsom salt, epsomite; MgSO4.7H2O, MgSO4; sulfate; -; water, sulfur oxides; 30
iron sulfate; ferrous sulfate, iron sulfate heptahydrate; FeSO4.7H2O, FeSO4; sulfate, iron oxide, reducible oxide; -; water, sulfur oxides; 50
sodium bicarbonate; sodium hydrogen carbonate, sodium hydrogencarbonate, baking soda; NaHCO3; alkali carbonate, carbonate; 851; water, carbon dioxide; 80
potassium bicarbonate; potassium hydrogen carbonate, potassium hydrogencarbonate; KHCO3; alkali carbonate, carbonate; 891; water, carbon dioxide; 100
sodium carbonate; soda, soda ash; Na2CO3; alkali carbonate, carbonate; 851; carbon dioxide; 850
potassium carbonate; potash; K2CO3; alkali carbonate, carbonate; 891; carbon dioxide; 890
lithium carbonate; -; Li2CO3; alkali carbonate, carbonate; 723; carbon dioxide; 720
sodium hydroxide; caustic soda; NaOH; alkali hydroxide; 318; water; 300
potassium hydroxide; caustic potash; KOH; alkali hydroxide; 360; water; 300
lithium hydroxide; -; LiOH, LiOH.H2O; alkali hydroxide; 471; water; 60
sodium peroxide; -; Na2O2; peroxide, oxidiser, alkali hydroxide; 460; oxygen; 400
sodium chloride; rock salt, halite; NaCl; halide; 801; -; -
potassium chloride; sylvite; KCl; halide; 771; -; -
caesium chloride; cesium chloride; CsCl; halide; 646; -; -
barium chloride dihydrate; barium chloride; BaCl2.2H2O, BaCl2; halide; 962; water; 50
calcium chloride; -; CaCl2, CaCl2.2H2O; halide; 772; water, hydrogen chloride; 50
magnesium chloride; magnesium chloride hexahydrate, bischofite; MgCl2, MgCl2.6H2O; halide; 714; water, hydrogen chloride; 100
ammonium chloride; sal ammoniac; NH4Cl; halide; -; ammonia, hydrogen chloride; 150
sodium fluoride; -; NaF; fluoride, halide; 993; hydrogen fluoride; 900
lithium fluoride; -; LiF; fluoride, halide; 848; hydrogen fluoride; 800
potassium nitrate; saltpetre, saltpeter; KNO3; nitrate, oxidiser; 334; nitrogen oxides; 400
sodium nitrate; -; NaNO3; nitrate, oxidiser; 306; nitrogen oxides; 380
solar salt; nitrate salt, nitrate melt; -; nitrate, oxidiser; 220; nitrogen oxides; 400
magnesium nitrate hexahydrate; magnesium nitrate; Mg(NO3)2.6H2O, Mg(NO3)2; nitrate, oxidiser; 89; water, nitrogen oxides; 60
calcium nitrate; -; Ca(NO3)2, Ca(NO3)2.4H2O; nitrate, oxidiser; 42; water, nitrogen oxides; 40
ammonium nitrate; -; NH4NO3; nitrate, oxidiser, energetic; 169; ammonia, nitrogen oxides; 150
silver nitrate; -; AgNO3; nitrate, oxidiser; 210; nitrogen oxides; 250
potassium perchlorate; -; KClO4; oxidiser, energetic, halide; 525; oxygen; 400
ammonium perchlorate; -; NH4ClO4; oxidiser, energetic, halide; -; hydrogen chloride, chlorine, nitrogen oxides; 200
sodium chlorate; potassium chlorate, chlorate; NaClO3, KClO3; oxidiser, energetic, halide; 248; oxygen, chlorine; 250
silver sulfate; -; Ag2SO4; sulfate; 652; sulfur oxides; 650
sodium sulfate; -; Na2SO4; sulfate; 884; sulfur oxides; 900
potassium sulfate; -; K2SO4; sulfate; 1069; sulfur oxides; 1050
potassium chromate; potassium dichromate; K2CrO4, K2Cr2O7; oxidiser; 398; -; -
sodium tartrate dihydrate; sodium tartrate; Na2C4H4O6.2H2O; organic, alkali carbonate; -; water, carbon monoxide; 50
sodium oxalate; -; Na2C2O4; alkali carbonate, carbonate; -; carbon monoxide, carbon dioxide; 250
benzoic acid; -; C7H6O2; organic; 122; organic vapours; 60
biphenyl; -; C12H10; organic; 69; organic vapours; 50
naphthalene; -; C10H8; organic; 80; organic vapours; 30
boric acid; -; H3BO3, B(OH)3; borate, acid; 170; water; 100
borax; sodium tetraborate, boron oxide, borate, borates; Na2B4O7.10H2O, Na2B4O7, B2O3; borate; 60; water; 50
phosphoric acid; phosphorus pentoxide; H3PO4, P2O5; phosphoric acid, phosphate, acid; 42; water, phosphorus oxides; 150
ammonium phosphate; ammonium polyphosphate, monoammonium phosphate; NH4H2PO4, (NH4)2HPO4; phosphate, phosphoric acid; 190; ammonia, water, phosphorus oxides; 150
sodium phosphate; phosphate, phosphates; Na3PO4, Na2HPO4; phosphate; -; water; 40
copper oxide; copper ii oxide, tenorite, cupric oxide; CuO; copper oxide, reducible oxide; -; oxygen; 900
cuprous oxide; copper i oxide, cuprite; Cu2O; copper oxide, reducible oxide; -; -; -
nickel oxide; -; NiO; reducible oxide; -; -; -
cobalt oxide; -; CoO, Co3O4; reducible oxide; -; oxygen; 850
manganese dioxide; manganese oxide, pyrolusite; MnO2, Mn2O3, Mn3O4, MnO; reducible oxide; -; oxygen; 450
zinc oxide; -; ZnO; reducible oxide; -; -; -
tin oxide; tin dioxide; SnO2, SnO; reducible oxide; -; -; -
lead oxide; litharge, minium, red lead; PbO, Pb3O4, PbO2; lead oxide, reducible oxide; 830; oxygen; 300
bismuth oxide; -; Bi2O3; bismuth oxide, reducible oxide; 817; -; -
vanadium oxide; vanadium pentoxide, vanadate; V2O5; vanadate, reducible oxide; 680; -; -
antimony oxide; antimony trioxide; Sb2O3; reducible oxide; 655; -; -
arsenic oxide; arsenic trioxide; As2O3; reducible oxide; 275; arsenic compounds; 100
sodium azide; azide, azides, lead azide; NaN3; energetic; -; -; 250
organic peroxide; organic peroxides, benzoyl peroxide, dibenzoyl peroxide, dicumyl peroxide; -; energetic, organic, peroxide; -; carbon monoxide, organic vapours; 40
nitrocellulose; cellulose nitrate, gun cotton; -; energetic, organic; -; nitrogen oxides, carbon monoxide; 100
nitro compound; nitro compounds, nitroaromatics, tnt, rdx, hmx, petn, picric acid, dinitrotoluene; -; energetic, organic; -; nitrogen oxides, carbon monoxide; 100
azo compound; azodicarbonamide, azobisisobutyronitrile, aibn, diazo compound, blowing agent; -; energetic, organic; -; carbon monoxide, ammonia, hydrogen cyanide; 60
thermite; -; -; energetic, reducible oxide; -; -; -
sodium cyanide; potassium cyanide, cyanide, cyanides; NaCN, KCN; cyanide; 564; hydrogen cyanide; -
sulfur; sulphur; S, S8; sulfide; 115; sulfur oxides, hydrogen sulfide; 150
red phosphorus; phosphorus; P; phosphide; -; phosphorus oxides, phosphine; 200
lithium hydride; metal hydride, sodium borohydride, hydrides; LiH, NaBH4; reactive metal, energetic; -; -; -
`,
  sources.commonPractice,
);
