import { area, choice, count, date, distance, groundLine, height, inclination, kind, mass, moment, note, number, offset, place, text, uniqueText, volume, words } from './field.ts'

/** The materials whose swell is known; a crew writes its own swell where it has measured one. */
const materials = ['broken rock, already loose', 'breccia or old fill in rock', 'granite', 'basalt or andesite', 'limestone', 'sandstone', 'blasted rock',
  'slope wash: rock, gravel and clay', 'dry gravel', 'sandy gravel', 'sand', 'loam', 'damp clay', 'dry clay'] as const

/** A piece of digging to be done to get in and out: what is moved, with what, and where it goes. */
export const digging = kind('digging', 'Digging job', 'Digging jobs', ['name'], {
  name: uniqueText('Name', { required: true, hint: 'sections, spot heights and loads name it' }),
  sort: choice('Sort', ['clear', 'cut', 'ramp', 'wash-out'], { required: true, hint: 'ground that came down, ground in place, fill built up, a gully to fill' }),
  state: choice('State', ['to do', 'at it', 'done'], { hint: 'to do unless said' }),
  order: number('Order', {}, { hint: '1 is done first' }),
  material: choice('Material', materials),
  swell: number('Swell measured, %', { min: 0, max: 200 }, { hint: 'instead of the table\'s' }),
  bank: volume('Volume in place, judged by eye', { hint: 'until sections or spot heights are taken' }),
  carrier: choice('Carried in', ['barrow', 'bucket', 'sled']),
  loadVolume: volume('One load holds', { hint: 'loose, as it is heaped' }),
  carrierMass: mass('Carrier weighs, empty'),
  haul: distance('Way to the heap', { hint: 'one way' }),
  haulGrade: inclination('Grade of that way, loaded', { hint: 'up positive' }),
  people: count('People at it'),
  spoil: place('Where it goes'),
  spoilLength: distance('Room there, length'),
  spoilWidth: distance('Room there, width'),
  spoilHeight: distance('Heap at most so high'),
  rise: distance('Ramp: rise', { hint: 'height it gains' }),
  width: distance('Ramp or gully: width'),
  grade: inclination('Ramp: grade', { hint: 'of the finished way' }),
  groundGrade: inclination('Ramp: grade of the ground under it'),
  crown: offset('Ramp: crown', { hint: 'middle above the edges' }),
  length: distance('Gully: length'),
  depth: distance('Gully: depth'),
  shape: choice('Gully: shape', ['V', 'round', 'flat']),
  note: note('Note'),
})

export const section = kind('section', 'Cross section', 'Cross sections', ['job', 'at'], {
  job: text('Digging job', { required: true }),
  at: offset('Distance along the line', { required: true, hint: 'from the first section' }),
  found: groundLine('Ground as found', { hint: 'points across as distance / height' }),
  wanted: groundLine('Ground as wanted', { hint: 'on the same two tapes' }),
  cutArea: area('Cut area, when measured'),
  fillArea: area('Fill area, when measured'),
  taken: date('Taken'),
  note: note('Note'),
})

export const spot = kind('spot', 'Spot height', 'Spot heights', ['job', 'surface', 'place'], {
  job: text('Digging job', { required: true }),
  surface: choice('Surface', ['as found', 'as wanted'], { required: true }),
  place: place('Place', { required: true }),
  up: height('Height', { hint: 'in the book\'s grid, when the place does not say it' }),
  taken: date('Taken'),
  note: note('Note'),
})

export const load = kind('load', 'Load', 'Loads', ['job', 'at'], {
  job: text('Digging job', { required: true }),
  at: moment('Tipped', { required: true }),
  count: count('How many', { hint: 'one unless said' }),
  people: words('Who'),
  note: note('Note'),
})
