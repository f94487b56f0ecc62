import { area, azimuth, blob, choice, choices, colours, count, date, density, distance, grade, inclination, kind, mass, massOrNil, note, number, offset, percent, place, temperature, text, uniqueText, volume, words, year, yesNo } from './field.ts'

export const target = kind('target', 'Detector target', 'Detector targets', ['mark', 'place'], {
  mark: text('Mark', { hint: 'number on the flag or in the paint' }),
  place: place('Place', { required: true }),
  instrument: text('Detector'),
  coil: text('Coil'),
  setting: text('Setting'),
  strength: number('Strength', { min: 0, max: 10 }, { hint: '0 to 10, the crew\'s own scale' }),
  character: choice('Character', ['sharp', 'broad', 'double', 'broken', 'iron-like', 'faint']),
  depth: offset('Depth'),
  outcome: choice('Turned out to be', ['open', 'still in the wall', 'gold', 'scrap iron', 'other metal', 'hot rock', 'relic', 'gone']),
  goldMass: massOrNil('Gold weighed'),
  bag: text('Bag', { hint: 'the sample it became' }),
  materials: words('Materials'),
  by: text('Heard by'),
  found: date('Found'),
  note: note('Note'),
})

/** What laboratories and crews print over the bag's number. */
const bagHeadings = ['bag', 'bag no', 'bag number', 'bag id', 'sample', 'sample id', 'sample no', 'sample number', 'sample name', 'id', 'client id', 'client sample id']

const method = choice('Method', ['channel', 'chip', 'panel', 'grab', 'muck', 'bulk', 'dump', 'gob', 'pulp', 'piece'], { required: true, hint: 'a piece is one that the detector rang on' })

export const sample = kind('sample', 'Sample', 'Samples', ['bag'], {
  bag: uniqueText('Bag', { required: true, headings: [...bagHeadings, 'number'] }),
  role: choice('Role', ['ordinary', 'duplicate', 'blank', 'standard'], { hint: 'ordinary unless it checks the others' }),
  method,
  duplicateOf: text('Duplicate of bag'),
  standard: text('Which blank or standard'),
  place: place('Place', { headings: ['place', 'station'] }),
  vein: text('Vein'),
  width: distance('Width sampled', { hint: 'across the vein', headings: ['width', 'true width', 'sample width'] }),
  direction: choice('Width measured', ['square to the vein', 'level across the heading', 'upright', 'along a line', 'down the dip']),
  trend: azimuth('Trend of the tape'),
  plunge: inclination('Plunge of the tape', { hint: 'down positive' }),
  cut: offset('Depth of cut'),
  length: distance('Length of cut', { hint: 'along the wall, of a channel or a row of chips' }),
  area: area('Area of panel'),
  materials: words('Materials'),
  massWet: mass('Mass wet'),
  mass: mass('Mass dry'),
  coarsest: offset('Coarsest piece'),
  visibleGold: choice('Gold seen', ['none', 'one speck', 'a few specks', 'much']),
  largestGold: offset('Largest gold grain seen'),
  seen: choices('Seen in it', ['iron stain', 'clay', 'crystals', 'sulphides', 'manganese', 'open space']),
  target: text('Target', { hint: 'the mark it came from, of a piece that rang' }),
  seal: text('Seal'),
  collector: text('Taken by'),
  taken: date('Taken', { headings: ['date', 'taken'] }),
  note: note('Note', { headings: ['note', 'remarks', 'comment', 'description'] }),
})

export const split = kind('split', 'Sample split', 'Sample splits', ['bag'], {
  bag: uniqueText('New bag', { required: true }),
  of: text('Split of bag', { required: true }),
  method: choice('Method', ['cone and quarter', 'riffle', 'scoop', 'screen plus', 'screen minus'], { required: true }),
  mass: mass('Mass dry'),
  mesh: offset('Crushed to'),
  purpose: choice('For', ['pan', 'assay', 'keep', 'duplicate']),
  made: date('Made'),
  note: note('Note'),
})

export const pan = kind('pan', 'Pan', 'Pans', ['bag'], {
  bag: text('Bag', { required: true }),
  mass: mass('Dry mass panned', { required: true }),
  portion: choice('What was panned', ['the bag', 'its tails'], { hint: 'gold found in the tails is added to the bag\'s first pan; the bag unless said' }),
  mesh: offset('Crushed to'),
  stages: count('Crushing stages'),
  crushed: choice('Crushed', ['wet', 'dry'], { hint: 'wet keeps the dust down' }),
  colours: colours('Colours'),
  goldMass: massOrNil('Gold weighed'),
  seeded: count('Grains seeded'),
  found: count('Seeded grains found'),
  tails: choice('Tails', ['kept', 're-panned', 'thrown']),
  magnetics: massOrNil('Magnetics'),
  sulphides: choice('Sulphides', ['none', 'few', 'many']),
  panner: text('Panned by'),
  panned: date('Panned'),
  note: note('Note'),
})

export const assay = kind('assay', 'Assay', 'Assays', ['bag', 'laboratory'], {
  bag: text('Bag', { required: true, headings: bagHeadings }),
  gold: grade('Gold', { required: true, unless: 'result', headings: ['gold', 'au', 'au grade'] }),
  result: choice('No result because', ['not enough sample', 'not received', 'lost'], { hint: 'only where the laboratory gives no grade' }),
  silver: grade('Silver', { headings: ['silver', 'ag'] }),
  method: choice('Method', ['fire assay', 'screen fire assay', 'acid digestion', 'not stated']),
  charge: mass('Charge', { headings: ['charge', 'weight', 'sample weight', 'wt'] }),
  plusMass: mass('Screen plus, mass', { hint: 'of a metallic screen assay: what stayed on the screen' }),
  plusGold: grade('Screen plus, gold'),
  minusMass: mass('Screen minus, mass', { hint: 'what passed the screen' }),
  minusGold: grade('Screen minus, gold'),
  minusAgain: grade('Screen minus, gold of a second charge'),
  repeat: count('Repeat number', { hint: '0 for the first' }),
  sequence: count('Place in the batch', { hint: 'order in which the laboratory ran it', headings: ['sequence', 'seq', 'run order', 'place'] }),
  laboratory: text('Laboratory', { headings: ['laboratory', 'lab', 'assayer', 'assayed by'] }),
  certificate: text('Certificate', { headings: ['certificate', 'certificate no', 'cert', 'report', 'report no', 'job', 'job no', 'batch'] }),
  reported: date('Reported', { headings: ['date', 'reported'] }),
  note: note('Note', { headings: ['note', 'remarks', 'comment'] }),
})

export const standard = kind('standard', 'Blank or standard', 'Blanks and standards', ['name'], {
  name: uniqueText('Name', { required: true }),
  sort: choice('Sort', ['blank', 'standard'], { required: true }),
  gold: grade('Certified gold'),
  deviation: grade('Standard deviation', { hint: 'one, as certified' }),
  source: text('Source'),
  note: note('Note'),
})

/** A laboratory's certificate, whole, as it came. Assays name it by its number. */
export const certificate = kind('certificate', 'Assay certificate', 'Assay certificates', ['name'], {
  name: uniqueText('Number', { required: true, hint: 'as the assays name it' }),
  file: blob('The file as it came', { hint: 'kept whole, under the hash of its bytes' }),
  laboratory: text('Laboratory'),
  received: date('Received'),
  reported: date('Reported'),
  note: note('Note'),
})

/** A size class of gold as the crew counts it in the pan, with what one grain of it weighs. */
export const colourClass = kind('colour-class', 'Size of colours', 'Sizes of colours', ['name'], {
  name: uniqueText('Name', { required: true, hint: 'as it is said at the pan: coarse, fine, flour' }),
  each: mass('One grain weighs', { required: true }),
  weighed: count('Grains weighed to tell', { hint: 'together on the scale; more tell better' }),
  size: offset('About as large as'),
  source: text('Source', { hint: 'how it is known' }),
  note: note('Note'),
})

export const densityTest = kind('density', 'Density test', 'Density tests', ['bag', 'material'], {
  material: text('Material', { required: true }),
  bag: text('Bag'),
  place: place('Place'),
  dry: mass('Mass dry'),
  inWater: mass('Mass in water'),
  temperature: temperature('Water temperature'),
  bulkMass: mass('Bulk mass'),
  bulkVolume: volume('Bulk volume'),
  density: density('Density', { hint: 'when it is known and not measured here' }),
  sulphides: percent('Sulphides, by mass'),
  sealed: yesNo('Sealed', { hint: 'waxed or wrapped, so that pores count' }),
  taken: date('Taken'),
  note: note('Note'),
})

/** Broken rock that lies about: what it holds is its volume, its loose density and what its samples ran. */
export const heap = kind('heap', 'Heap of broken rock', 'Heaps of broken rock', ['name'], {
  name: uniqueText('Name', { required: true }),
  sort: choice('Sort', ['gob', 'dump', 'muck', 'tailings'], { required: true }),
  place: place('Place'),
  length: offset('Length'),
  breadth: offset('Breadth'),
  height: offset('Mean height', { hint: 'of rock, the mean over its whole ground' }),
  volume: volume('Volume', { hint: 'when it was worked out already; otherwise from length, breadth and height' }),
  volumeGood: number('Volume is good to, %', { min: 1, max: 200 }, { hint: 'one standard deviation' }),
  density: density('Loose density'),
  bags: words('Bags that sample it', { hint: 'all samples of its sort when left out' }),
  measured: date('Measured'),
  note: note('Note'),
})

export const relic = kind('relic', 'Relic', 'Relics', ['item'], {
  item: text('Item', { required: true }),
  place: place('Place', { required: true }),
  count: count('How many'),
  from: year('Made not before'),
  to: year('Made not after'),
  material: text('Material'),
  maker: text('Mark or maker'),
  layer: choice('Lay', ['on the sill', 'in waste', 'in timber', 'on the surface', 'sealed under a fall']),
  left: yesNo('Left where it was'),
  found: date('Found'),
  note: note('Note'),
})

export const crushing = kind('crushing', 'Old crushing', 'Old crushings', ['mine'], {
  mine: text('Mine', { required: true, headings: ['mine', 'company', 'claim'] }),
  crushed: mass('Quartz crushed', { required: true, headings: ['crushed', 'long tons', 'tons', 'quartz'] }),
  gold: massOrNil('Gold won', { headings: ['gold', 'gold won', 'yield'] }),
  yieldPrinted: text('Yield as printed', { headings: ['yield as printed', 'grade as printed'] }),
  from: year('From'),
  to: year('To'),
  value: text('Value as printed', { headings: ['value as printed', 'value'] }),
  source: text('Source'),
  note: note('Note'),
})
