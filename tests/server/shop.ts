/** A small shop in three files: a model with its wood, a line of three recipes, a build. */
export const MODEL_URI = 'file:///shop/corrie.bookmatch';
export const LINE_URI = 'file:///shop/line.bookmatch';
export const BUILD_URI = 'file:///shop/builds.bookmatch';

export const MODEL = `shop wick { title: "Wick Lane"  vary at most 1 }
wood spruce-1 is sitka-spruce { use: top  density: 421 kg/m³  modulus { along: 10.8 GPa  across: 0.82 GPa } }
wood spruce-2 is norway-spruce { use: top  density: 402 kg/m³  modulus { along: 12.6 GPa  across: 0.88 GPa } }
model corrie {
  scale: 645 mm
  body {
    length: 489 mm
    lower-bout { width: 381 mm  station: 112 mm }
    waist { width: 241 mm  station: 290 mm }
    upper-bout { width: 286 mm  station: 415 mm }
    depth { tail: 105 mm  neck: 86 mm }
  }
  soundhole { diameter: 101 mm  station: 335 mm }
  bridge { mass: 27 g }
}
`;

export const LINE = `recipe corrie-1 for corrie {
  because "Where the line begins."
  top { wood: spruce-1  thickness: 2.80 mm }
}

recipe corrie-2 from corrie-1 {
  because "Another spruce at the same stiffness."
  change top.wood: spruce-1 -> spruce-2
  hold top.stiffness.along by top.thickness
}

recipe corrie-3 from corrie-2 {
  because "A lighter bridge."
  change bridge.mass: 27 g -> 22 g
}
`;

export const BUILD = `build no-1 of corrie-1 {
  finished: 2024-03-02
  top { thickness: 110 thou  mass: 160 g }
}
`;

export const SHOP = { [MODEL_URI]: MODEL, [LINE_URI]: LINE, [BUILD_URI]: BUILD };
