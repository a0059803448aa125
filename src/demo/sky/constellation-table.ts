// Written by scripts/extract-sky-data.ts from d3-celestial (BSD-3-Clause, see NOTICE). Do not edit by hand.

/**
 * Table read by `sky-tables.ts`; positions are J2000, in degrees. Columns:
 * abbreviation | name | genitive | English | Bayer letter of a bright star | centre
 */
export const CONSTELLATION_TABLE = `
And | Andromeda | Andromedae | Andromeda | α | 8,39
Ant | Antlia | Antliae | Air Pump | α | 154,-35
Aps | Apus | Apodis | Bird of Paradise | α | 242,-79
Aql | Aquila | Aquilae | Eagle | α | 295,5
Aqr | Aquarius | Aquarii | Water Bearer | β | 336,-8
Ara | Ara | Arae | Altar | β | 259,-56
Ari | Aries | Arietis | Ram | α | 33,23
Aur | Auriga | Aurigae | Charioteer | α | 81,41
Boo | Boötes | Boötis | Herdsman | α | 217,32
CMa | Canis Major | Canis Majoris | Great Dog | α | 104,-22
CMi | Canis Minor | Canis Minoris | Little Dog | α | 113,7
CVn | Canes Venatici | Canum Venaticorum | Hunting Dogs | β | 191,40
Cae | Caelum | Caeli | Chisel | α | 71,-40
Cam | Camelopardalis | Camelopardalis | Giraffe | β | 72,66
Cap | Capricornus | Capricorni | Sea Goat | δ | 315,-19
Car | Carina | Carinae | Keel | α | 140,-61
Cas | Cassiopeia | Cassiopeiae | Cassiopeia | γ | 15,60
Cen | Centaurus | Centauri | Centaur | β | 201,-50
Cep | Cepheus | Cephei | Cepheus | α | 328,64
Cet | Cetus | Ceti | Whale | β | 31,-2
Cha | Chamaeleon | Chamaeleontis | Chameleon | α | 161,-80
Cir | Circinus | Circini | Drawing Compasses | α | 227,-61
Cnc | Cancer | Cancri | Crab | β | 130,18
Col | Columba | Columbae | Dove | α | 88,-36
Com | Coma Berenices | Comae Berenices | Berenice's Hair | β | 194,25
CrA | Corona Australis | Coronae Australis | Southern Crown | β | 285,-40
CrB | Corona Borealis | Coronae Borealis | Northern Crown | α | 236,28
Crt | Crater | Crateris | Cup | δ | 172,-17
Cru | Crux | Crucis | Southern Cross | β | 188,-60
Crv | Corvus | Corvi | Crow | γ | 185,-21
Cyg | Cygnus | Cygni | Swan | α | 302,41
Del | Delphinus | Delphini | Dolphin | β | 310,15
Dor | Dorado | Doradus | Dolphinfish | α | 77,-60
Dra | Draco | Draconis | Dragon | γ | 252,66
Equ | Equuleus | Equulei | Little Horse | α | 318,8
Eri | Eridanus | Eridani | River Eridanus | α | 53,-26
For | Fornax | Fornacis | Furnace | α | 40,-30
Gem | Gemini | Geminorum | Twins | β | 106,23
Gru | Grus | Gruis | Crane | α | 336,-45
Her | Hercules | Herculis | Hercules | β | 256,33
Hor | Horologium | Horologii | Clock | α | 46,-54
Hya | Hydra | Hydrae | Sea Serpent | α | 154,-11
Hyi | Hydrus | Hydri | Water Snake | β | 33,-70
Ind | Indus | Indi | Indian | α | 316,-53
LMi | Leo Minor | Leonis Minoris | Little Lion | β | 154,35
Lac | Lacerta | Lacertae | Lizard | α | 336,46
Leo | Leo | Leonis | Lion | α | 158,19
Lep | Lepus | Leporis | Hare | α | 84,-17
Lib | Libra | Librae | Scales | β | 230,-21
Lup | Lupus | Lupi | Wolf | α | 232,-42
Lyn | Lynx | Lyncis | Lynx | α | 125,47
Lyr | Lyra | Lyrae | Lyre | α | 282,37
Men | Mensa | Mensae | Table Mountain | α | 81,-74
Mic | Microscopium | Microscopii | Microscope | γ | 316,-37
Mon | Monoceros | Monocerotis | Unicorn | β | 104,0
Mus | Musca | Muscae | Fly | α | 187,-69
Nor | Norma | Normae | Carpenter's Square | ε | 244,-48
Oct | Octans | Octantis | Octant | ν | 314,-84
Oph | Ophiuchus | Ophiuchi | Serpent Bearer | α | 255,-9
Ori | Orion | Orionis | Orion | β | 81,7
Pav | Pavo | Pavonis | Peacock | α | 292,-66
Peg | Pegasus | Pegasi | Pegasus | ε | 341,21
Per | Perseus | Persei | Perseus | α | 51,45
Phe | Phoenix | Phoenicis | Phoenix | α | 14,-47
Pic | Pictor | Pictoris | Painter's Easel | α | 91,-57
PsA | Piscis Austrinus | Piscis Austrini | Southern Fish | α | 337,-32
Psc | Pisces | Piscium | Fishes | η | 9,10
Pup | Puppis | Puppis | Stern | ζ | 116,-32
Pyx | Pyxis | Pyxidis | Mariner's Compass | α | 129,-34
Ret | Reticulum | Reticuli | Reticle | α | 61,-62
Scl | Sculptor | Sculptoris | Sculptor | α | 359,-32
Sco | Scorpius | Scorpii | Scorpion | α | 252,-34
Sct | Scutum | Scuti | Shield | α | 280,-9
Ser | Serpens | Serpentis | Serpent | α | 252,3
Sex | Sextans | Sextantis | Sextant | α | 154,-3
Sge | Sagitta | Sagittae | Arrow | γ | 297,18
Sgr | Sagittarius | Sagittarii | Archer | ε | 286,-28
Tau | Taurus | Tauri | Bull | α | 65,15
Tel | Telescopium | Telescopii | Telescope | α | 276,-47
TrA | Triangulum Australe | Trianguli Australis | Southern Triangle | α | 240,-67
Tri | Triangulum | Trianguli | Triangle | β | 32,33
Tuc | Tucana | Tucanae | Toucan | α | 352,-63
UMa | Ursa Major | Ursae Majoris | Great Bear | ε | 164,53
UMi | Ursa Minor | Ursae Minoris | Little Bear | α | 236,80
Vel | Vela | Velorum | Sails | δ | 142,-49
Vir | Virgo | Virginis | Maiden | α | 199,0
Vol | Volans | Volantis | Flying Fish | β | 121,-68
Vul | Vulpecula | Vulpeculae | Little Fox | α | 297,25
`;
