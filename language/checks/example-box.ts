/** The instrument the pages of several rules show: one set of wood, one body, one base recipe. */
export const BOX = `wood spruce-12 is sitka-spruce { density: 421 kg/m³  modulus.along: 10.8 GPa  modulus.across: 0.82 GPa  modulus.twist: 0.7 GPa }
model tarn {
  body {
    length: 495 mm
    lower-bout { width: 390 mm  station: 112 mm }
    waist { width: 243 mm  station: 292 mm }
    upper-bout { width: 286 mm  station: 422 mm }
    depth { tail: 104 mm  neck: 89 mm }
  }
  soundhole { diameter: 100 mm  station: 335 mm }
}
recipe tarn-1 for tarn { top { wood: spruce-12  thickness: 2.85 mm } }
`;
