/**
 * Words of other shops and of German makers for parts and properties, beside the synonyms that stand with each entry: they
 * are understood, and offered as the catalogue's word. Sources: common practice.
 */
import type { Part, Property } from './property.js';

/** For parts, by their whole path. */
const PART_WORDS: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries({
    body: ['korpus'],
    'body.lower-bout': ['unterbug'],
    'body.waist': ['taille'],
    'body.upper-bout': ['oberbug'],
    'body.depth': ['zargenhöhe', 'zargenhoehe', 'tiefe'],
    top: ['belly', 'soundtable', 'top-plate', 'deckenplatte'],
    back: ['rückseite'],
    bracing: ['leisten', 'balken', 'verbalkung', 'beleistung-decke'],
    'back-bracing': ['bodenleisten', 'bodenbalken', 'bodenbeleistung'],
    sides: ['zarge', 'seiten'],
    soundhole: ['schallöffnung', 'rose-hole'],
    cutaway: ['ausschnitt'],
    port: ['schallport', 'seitenschallloch'],
    'arm-bevel': ['armauflage', 'armphase'],
    lining: ['reifchen', 'bereifung'],
    'back-lining': ['bodenreifchen'],
    'neck-block': ['oberklotz', 'halsblock', 'halsklotz'],
    'tail-block': ['unterklotz', 'endklotz'],
    'end-graft': ['endspan', 'endkeil'],
    'bridge.plate': ['stegplatte', 'stegfutter'],
    'bridge.pins': ['stegstecker', 'stegpins'],
    saddle: ['stegsattel', 'steg-einlage'],
    'neck.heel': ['halsfuß', 'halsfuss'],
    'truss-rod': ['halsstab', 'halsspannstab', 'stahlstab'],
    headstock: ['kopfplatte', 'head-stock', 'peg-head'],
    headplate: ['kopffurnier', 'kopfplattenfurnier'],
    'heel-cap': ['halsfußplättchen', 'halsfussplättchen'],
    fingerboard: ['finger-board', 'fret-board'],
    frets: ['bünde', 'bundstäbchen', 'bund'],
    nut: ['sattel', 'obersattel'],
    setup: ['einstellung'],
    'setup.action': ['saitenlage'],
    finish: ['lackierung', 'lack', 'oberfläche'],
    electronics: ['elektronik'],
    'electronics.pickup': ['tonabnehmer'],
    binding: ['randeinlage', 'einfassung'],
    purfling: ['aderspan', 'adern', 'ader'],
    'back-strip': ['bodenfugenstreifen', 'bodenspan'],
    tuners: ['stimmmechaniken', 'wirbel', 'pegs', 'machine-head'],
    pickguard: ['schlagbrett', 'pick-guard'],
    case: ['koffer'],
    climate: ['klima'],
    tolerance: ['toleranz', 'toleranzen'],
    tap: ['klopftöne', 'klopfton'],
    modulus: ['e-modul', 'elastizität'],
    deflection: ['durchbiegung'],
    resonance: ['resonanz', 'resonanzen'],
    heard: ['gehört', 'klang'],
  }),
);

/** For properties and the parts of the same name, by the last word of the path, wherever it stands. */
const LAST_WORDS: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries({
    thickness: ['dicke', 'stärke', 'staerke'],
    'edge-thickness': ['randdicke', 'randstärke'],
    width: ['breite'],
    height: ['höhe', 'hoehe'],
    length: ['länge', 'laenge'],
    diameter: ['durchmesser'],
    mass: ['gewicht', 'masse', 'weight'],
    density: ['dichte'],
    wood: ['holz', 'holzart'],
    species: ['holzart'],
    angle: ['winkel'],
    humidity: ['luftfeuchte', 'luftfeuchtigkeit', 'feuchte', 'rf'],
    temperature: ['temperatur'],
    moisture: ['holzfeuchte'],
    scale: ['mensur'],
    strings: ['saiten'],
    rosette: ['schalllochverzierung', 'schallochverzierung'],
    label: ['zettel', 'etikett'],
    kind: ['art'],
    profile: ['profil'],
    pattern: ['muster'],
    count: ['anzahl'],
    title: ['titel'],
    maker: ['hersteller'],
    supplier: ['lieferant', 'händler'],
    use: ['verwendung'],
    blank: ['rohmaß', 'rohmass'],
    span: ['stützweite', 'auflagerabstand'],
    load: ['last'],
    tuning: ['stimmung'],
    material: ['werkstoff'],
    finished: ['fertig'],
    agreed: ['vereinbart'],
    promised: ['zugesagt', 'liefertermin'],
    price: ['preis'],
  }),
);

/** The other words for a part or property, those that stand with its entry first. */
export function otherWords({ path, synonyms }: Pick<Part | Property, 'path' | 'synonyms'>): readonly string[] {
  const last = path.slice(path.lastIndexOf('.') + 1);
  const more = [...(PART_WORDS.get(path) ?? []), ...(LAST_WORDS.get(last) ?? [])];
  return [...new Set([...synonyms, ...more])].filter((word) => word !== last);
}
