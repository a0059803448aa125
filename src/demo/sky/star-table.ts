// Written by scripts/extract-sky-data.ts from d3-celestial (BSD-3-Clause, see NOTICE). Do not edit by hand.

/**
 * Table read by `sky-tables.ts`; positions are J2000, in degrees. Columns:
 * name | Bayer letter | constellation | right ascension,declination | magnitude | * brightest of it
 */
export const STAR_TABLE = `
Sirius | α | CMa | 101.287,-16.716 | -1.44 | *
Canopus | α | Car | 95.988,-52.696 | -0.62 | *
Arcturus | α | Boo | 213.915,19.182 | -0.05 | *
Vega | α | Lyr | 279.235,38.784 | 0.03 | *
Capella | α | Aur | 79.172,45.998 | 0.08 | *
Rigel | β | Ori | 78.635,-8.202 | 0.18 | *
Procyon | α | CMi | 114.826,5.225 | 0.4 | *
Achernar | α | Eri | 24.428,-57.237 | 0.45 | *
Betelgeuse | α | Ori | 88.793,7.407 | 0.45
Hadar | β | Cen | 210.956,-60.373 | 0.61
Altair | α | Aql | 297.696,8.868 | 0.76 | *
Aldebaran | α | Tau | 68.98,16.509 | 0.87 | *
Spica | α | Vir | 201.298,-11.161 | 0.98 | *
Antares | α | Sco | 247.352,-26.432 | 1.06 | *
Pollux | β | Gem | 116.329,28.026 | 1.16 | *
Fomalhaut | α | PsA | 344.413,-29.622 | 1.17 | *
Mimosa | β | Cru | 191.93,-59.689 | 1.25
Deneb | α | Cyg | 310.358,45.28 | 1.25 | *
Regulus | α | Leo | 152.093,11.967 | 1.36 | *
Adhara | ε | CMa | 104.656,-28.972 | 1.5
Castor | α | Gem | 113.649,31.888 | 1.58
Gacrux | γ | Cru | 187.792,-57.113 | 1.59
Shaula | λ | Sco | 263.402,-37.104 | 1.62
Bellatrix | γ | Ori | 81.283,6.35 | 1.64
Elnath | β | Tau | 81.573,28.608 | 1.65
Miaplacidus | β | Car | 138.3,-69.717 | 1.67
Alnilam | ε | Ori | 84.053,-1.202 | 1.69
Alnair | α | Gru | 332.058,-46.961 | 1.73 | *
Alnitak | ζ | Ori | 85.19,-1.943 | 1.74
Alioth | ε | UMa | 193.507,55.96 | 1.76 | *
Mirfak | α | Per | 51.081,49.861 | 1.79 | *
Kaus Australis | ε | Sgr | 276.043,-34.385 | 1.79 | *
Dubhe | α | UMa | 165.932,61.751 | 1.81
Wezen | δ | CMa | 107.098,-26.393 | 1.83
Alkaid | η | UMa | 206.885,49.313 | 1.85
Avior | ε | Car | 125.629,-59.51 | 1.86
Sargas | θ | Sco | 264.33,-42.998 | 1.86
Menkalinan | β | Aur | 89.882,44.947 | 1.9
Atria | α | TrA | 252.166,-69.028 | 1.91 | *
Alhena | γ | Gem | 99.428,16.399 | 1.93
Alsephina | δ | Vel | 131.176,-54.709 | 1.93
Peacock | α | Pav | 306.412,-56.735 | 1.94 | *
Polaris | α | UMi | 37.954,89.264 | 1.97 | *
Mirzam | β | CMa | 95.675,-17.956 | 1.98
Alphard | α | Hya | 141.897,-8.659 | 1.99 | *
Hamal | α | Ari | 31.793,23.462 | 2.01 | *
Diphda | β | Cet | 10.897,-17.987 | 2.04 | *
Nunki | σ | Sgr | 283.816,-26.297 | 2.05
Menkent | θ | Cen | 211.671,-36.37 | 2.06
Alpheratz | α | And | 2.097,29.09 | 2.07 | *
Mirach | β | And | 17.433,35.621 | 2.07
Saiph | κ | Ori | 86.939,-9.67 | 2.07
Kochab | β | UMi | 222.676,74.156 | 2.07
Tiaki | β | Gru | 340.667,-46.885 | 2.07
Rasalhague | α | Oph | 263.734,12.56 | 2.08 | *
Algol | β | Per | 47.042,40.956 | 2.09
Denebola | β | Leo | 177.265,14.572 | 2.14
Navi | γ | Cas | 14.177,60.717 | 2.15 | *
Muhlifain | γ | Cen | 190.379,-48.96 | 2.2
Naos | ζ | Pup | 120.896,-40.003 | 2.21 | *
Aspidiske | ι | Car | 139.273,-59.275 | 2.21
Alphecca | α | CrB | 233.672,26.715 | 2.22 | *
Suhail | λ | Vel | 136.999,-43.433 | 2.23
Mizar | ζ | UMa | 200.981,54.925 | 2.23
Sadr | γ | Cyg | 305.557,40.257 | 2.23
Shedar | α | Cas | 10.127,56.537 | 2.24
Eltanin | γ | Dra | 269.151,51.489 | 2.24 | *
Mintaka | δ | Ori | 83.002,-0.299 | 2.25
Caph | β | Cas | 2.295,59.15 | 2.28
Dschubba | δ | Sco | 240.083,-22.622 | 2.29
Larawag | ε | Sco | 252.541,-34.293 | 2.29
Men | α | Lup | 220.482,-47.388 | 2.3 | *
Merak | β | UMa | 165.46,56.382 | 2.34
Izar | ε | Boo | 221.247,27.074 | 2.35
Enif | ε | Peg | 326.046,9.875 | 2.38 | *
Mula | κ | Sco | 265.622,-39.03 | 2.39
Ankaa | α | Phe | 6.571,-42.306 | 2.4 | *
Phecda | γ | UMa | 178.458,53.695 | 2.41
Sabik | η | Oph | 257.594,-15.725 | 2.43
Scheat | β | Peg | 345.944,28.083 | 2.44
Aludra | η | CMa | 111.024,-29.303 | 2.45
Alderamin | α | Cep | 319.645,62.586 | 2.45 | *
Markeb | κ | Vel | 140.528,-55.011 | 2.47
Aljanah | ε | Cyg | 311.553,33.97 | 2.48
Markab | α | Peg | 346.19,15.205 | 2.49
Menkar | α | Cet | 45.57,4.09 | 2.54
Saik | ζ | Oph | 249.29,-10.567 | 2.54
Alnair | ζ | Cen | 208.885,-47.288 | 2.55
Zosma | δ | Leo | 168.527,20.524 | 2.56
Arneb | α | Lep | 83.183,-17.822 | 2.58 | *
Gienah | γ | Crv | 183.952,-17.542 | 2.58 | *
Ascella | ζ | Sgr | 285.653,-29.88 | 2.6
`;
