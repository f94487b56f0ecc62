import { anyAngle, azimuth, blob, choice, choices, concentration, date, dip, dipOfPlane, distance, height, inclination, kind, moment, note, number, offset, percent, place, places, pressure, radon, rake, ref, speed, station, stations, temperature, text, uniqueText, words, year, yesNo } from './field.ts'

const north = choice('Azimuths are from', ['magnetic', 'true', 'grid'], { hint: 'north that the compass or the drawing used; magnetic unless said' })

/** The mine itself: one entry, mended as the crew learns more. */
export const mine = kind('mine', 'Mine', 'Mine', ['name'], {
  name: text('Name', { required: true }),
  district: text('District'),
  latitude: number('Latitude', { min: -90, max: 90 }, { hint: 'degrees, north positive, WGS 84' }),
  longitude: number('Longitude', { min: -180, max: 180 }, { hint: 'degrees, east positive, WGS 84' }),
  elevation: height('Elevation of the portal'),
  datum: text('Elevations are from', { hint: 'what zero elevation is, in words' }),
  declination: anyAngle('Magnetic declination', { hint: 'degrees, east positive; leave out to have it worked out from place and date' }),
  rotation: anyAngle('Grid north is from true north by', { hint: 'degrees, clockwise positive' }),
  currency: text('Currency', { hint: 'three letters, such as USD' }),
  people: words('Crew'),
  rules: choice('Air limits of', ['all in the table', 'United States metal mines', 'California', 'Arizona'], { hint: 'which published limits readings are held against; health values always stay. Local law decides' }),
  units: choice('Speaks', ['metres and g/t', 'feet and oz/ton'], { hint: 'how answers are put; metres and g/t unless said' }),
  note: note('Note'),
})

export const instrument = kind('instrument', 'Instrument', 'Instruments', ['name'], {
  name: uniqueText('Name', { required: true }),
  sort: choice('Sort', ['compass', 'clinometer', 'compass and clinometer', 'tape', 'distance meter', 'detector', 'gas meter', 'scale', 'other'], { required: true }),
  correction: anyAngle('Index correction of the compass', { hint: 'degrees, added to every azimuth' }),
  inclinationCorrection: anyAngle('Index correction of the clinometer', { hint: 'degrees, added to every inclination' }),
  lengthCorrection: height('Zero correction of the tape', { hint: 'added to every length, such as a missing end' }),
  lengthFactor: number('One unit on the tape is truly', { min: 0.9, max: 1.1 }, { hint: '1.002 for a tape stretched by 0.2 %' }),
  anglePrecision: anyAngle('One azimuth is good to', { hint: 'degrees, one standard deviation' }),
  inclinationPrecision: anyAngle('One inclination is good to', { hint: 'degrees, one standard deviation' }),
  lengthPrecision: offset('One length is good to', { hint: 'one standard deviation at a usual length' }),
  serial: text('Serial number'),
  calibrated: date('Calibrated'),
  note: note('Note'),
})

const leavings = ['nothing', 'azimuth', 'backsight', 'whole shot', 'distance', 'inclination', 'back inclination', 'both azimuths', 'both inclinations'] as const

export const shot = kind('shot', 'Survey shot', 'Survey shots', ['from', 'to'], {
  from: station('From', { required: true, headings: ['from station', 'at', 'instrument station'] }),
  to: station('To', { required: true, headings: ['to station', 'foresight station'] }),
  distance: distance('Slope distance', { required: true, headings: ['distance', 'length', 'tape', 'slope distance', 'sd'] }),
  azimuth: azimuth('Azimuth', { required: true, headings: ['azimuth', 'bearing', 'compass', 'az', 'brg'] }),
  inclination: inclination('Inclination', { headings: ['inclination', 'clino', 'vertical angle', 'incl', 'va'] }),
  backAzimuth: azimuth('Backsight azimuth', { hint: 'as read looking back from To', headings: ['backsight', 'back bearing', 'bs azimuth'] }),
  backInclination: inclination('Backsight inclination', { headings: ['back inclination', 'bs inclination', 'back clino'] }),
  north,
  left: offset('To left rib', { hint: 'from the From station, looking to To', headings: ['left', 'left rib'] }),
  right: offset('To right rib', { headings: ['right', 'right rib'] }),
  up: offset('To back', { headings: ['up', 'back', 'roof'] }),
  down: offset('To sill', { headings: ['down', 'sill', 'floor'] }),
  survey: text('Survey', { hint: 'the name of the survey it belongs to, when there are several' }),
  compass: text('Compass'),
  clinometer: text('Clinometer', { hint: 'when it is not the compass' }),
  tape: text('Tape'),
  surveyors: words('Surveyors'),
  taken: date('Taken', { headings: ['date', 'taken'] }),
  leaveOut: choice('Left out of the adjustment', leavings, { hint: 'the crew\'s decision after a check; the reading stays' }),
  leaveOutWhy: text('Left out because'),
  note: note('Note'),
})

export const tie = kind('tie', 'Tie', 'Ties', ['station'], {
  station: station('Station', { required: true }),
  place: place('Where it is', { required: true, hint: 'grid or GPS' }),
  accuracy: offset('Good to', { hint: 'one standard deviation; for a GPS fix what the receiver says' }),
  level: height('Level above the zero', { hint: 'the zero that the mine names; leave out when the place gives it' }),
  levelAccuracy: offset('Level good to', { hint: 'one standard deviation' }),
  taken: date('Taken'),
  source: text('Source', { hint: 'GPS, claim corner, old plan…' }),
  leaveOut: choice('Left out of the adjustment', ['nothing', 'whole tie'], { hint: 'the crew\'s decision after a check; the fix stays' }),
  leaveOutWhy: text('Left out because'),
  note: note('Note'),
})

/** A survey of its own time and quality. Shots name it; what it says holds for them where no instrument says better. */
export const survey = kind('survey', 'Survey', 'Surveys', ['name'], {
  name: uniqueText('Name', { required: true, hint: 'such as our survey 2026, or old plan 1931' }),
  year: year('Year', { hint: 'for shots that carry no date' }),
  use: choice('In the adjustment', ['with the rest', 'left out'], { hint: 'left out: its readings are still compared with the rest' }),
  compassPrecision: anyAngle('Azimuths good to', { hint: 'degrees, one standard deviation' }),
  clinometerPrecision: anyAngle('Inclinations good to', { hint: 'degrees, one standard deviation' }),
  tapePrecision: offset('Lengths good to', { hint: 'one standard deviation at a usual length' }),
  northDoubt: anyAngle('Its north may be out by', { hint: 'degrees, one standard deviation: turns all its azimuths together' }),
  declination: anyAngle('Magnetic declination it used', { hint: 'degrees, east positive; when its azimuths are magnetic and this is known' }),
  lengthDoubt: number('Its tape may be out by, %', { min: 0, max: 10 }, { hint: 'one standard deviation: stretches all its lengths together' }),
  surveyors: words('Surveyors'),
  source: text('Source', { hint: 'whose notes, which plan' }),
  note: note('Note'),
})

/** A sight from a station to the rock: it gives the opening its shape and places no station. */
export const wallShot = kind('wall-shot', 'Wall shot', 'Wall shots', ['from', 'on'], {
  from: station('From', { required: true }),
  distance: distance('Slope distance', { required: true }),
  azimuth: azimuth('Azimuth', { hint: 'leave out when straight up or down' }),
  inclination: inclination('Inclination', { hint: 'level when left out' }),
  north,
  on: choice('Hit', ['left rib', 'right rib', 'back', 'sill', 'face', 'not said']),
  compass: text('Compass'),
  tape: text('Tape'),
  taken: date('Taken'),
  note: note('Note'),
})

/** A station's other name. Everything in the book that says the one means the other from then on. */
export const rename = kind('rename', 'Station renamed', 'Stations renamed', ['was', 'now'], {
  was: station('Was', { required: true, hint: 'the name to be given up' }),
  now: station('Is now', { required: true, hint: 'the name on the rock' }),
  why: text('Why'),
  note: note('Note'),
})

/** A leg that was stepped and not surveyed: a rough outline where no survey exists, until one does. */
export const paced = kind('paced', 'Paced leg', 'Paced legs', ['from', 'to'], {
  from: station('From', { required: true }),
  to: station('To', { required: true, hint: 'a new name, or a station that is there' }),
  paces: number('Paces', { min: 0.5, max: 1000 }),
  distance: distance('Or a length by eye'),
  azimuth: azimuth('Azimuth', { required: true, hint: 'by compass or by eye' }),
  north,
  inclination: inclination('Inclination'),
  width: distance('Width of the opening', { hint: 'by eye' }),
  height: distance('Height of the opening', { hint: 'by eye' }),
  heading: text('Heading'),
  taken: date('Taken'),
  note: note('Note'),
})

export const heading = kind('heading', 'Heading', 'Headings', ['name'], {
  name: uniqueText('Name', { required: true }),
  sort: choice('Sort', ['adit', 'drift', 'crosscut', 'raise', 'winze', 'stope', 'shaft', 'surface'], { required: true }),
  stations: stations('Stations in order', { required: true }),
  vein: text('Follows vein'),
  drivenBy: choice('Driven by', ['old workers', 'us', 'not known']),
  note: note('Note'),
})

export const workedOut = kind('worked-out', 'Worked-out ground', 'Worked-out ground', ['name'], {
  name: uniqueText('Name', { required: true }),
  vein: text('Vein', { required: true }),
  corners: places('Corners in order', { required: true, hint: 'three or more places round the edge, on the vein' }),
  by: choice('Taken by', ['old workers', 'us', 'not known']),
  note: note('Note'),
})

/** Ground that the crew speaks of as one block, drawn on the vein. */
export const panel = kind('panel', 'Panel drawn', 'Panels drawn', ['name'], {
  name: uniqueText('Name', { required: true, hint: 'what the crew calls it: the pocket behind A7' }),
  vein: text('Vein'),
  corners: places('Corners in order', { required: true, hint: 'three or more places round the edge, on the vein' }),
  note: note('Note'),
})

export const structure = kind('structure', 'Structure reading', 'Structure readings', ['feature', 'name'], {
  feature: choice('Feature', ['vein', 'stringer', 'fault', 'joint', 'contact', 'foliation', 'striae', 'piercing point'],
    { required: true, hint: 'a piercing point is where one line, such as the meeting of two veins, comes to the fault: read it on both sides under one name' }),
  name: text('Name', { hint: 'which vein or fault' }),
  place: place('Place', { required: true }),
  strike: azimuth('Strike', { hint: 'right-hand rule: dip is to the right' }),
  dip: dipOfPlane('Dip', { hint: 'from level; the side it goes down to may follow, as in 62 SE' }),
  dipDirection: azimuth('Dip direction', { hint: 'instead of strike', headings: ['dip direction', 'dip azimuth'] }),
  trend: azimuth('Trend', { hint: 'of a line such as striae' }),
  plunge: dip('Plunge'),
  rake: rake('Rake', { hint: 'in the plane, from the strike direction' }),
  north,
  sense: choice('Sense of slip', ['normal', 'reverse', 'left', 'right', 'not known']),
  slip: distance('Moved by', { hint: 'how far the fault moved along its grooves, where that was matched on both sides', headings: ['slip', 'net slip'] }),
  slipGoodTo: offset('Moved by, good to', { hint: 'one standard deviation' }),
  side: choice('Side of the fault', ['this side', 'far side'], { hint: 'for what was read at the fault itself; this side is the portal’s' }),
  spacing: offset('Spacing'),
  roughness: choice('Roughness', ['rough', 'smooth', 'slickensided']),
  infill: words('Infill'),
  quality: choice('How good', ['good', 'fair', 'poor']),
  taken: date('Taken'),
  note: note('Note'),
})

export const width = kind('width', 'Vein width', 'Vein widths', ['vein', 'place'], {
  vein: text('Vein', { required: true }),
  place: place('Place', { required: true }),
  measured: distance('Measured width', { required: true, headings: ['width', 'measured width', 'thickness'] }),
  direction: choice('Measured', ['square to the vein', 'level across the heading', 'upright', 'along a line', 'down the dip'],
    { hint: 'which way the tape lay' }),
  trend: azimuth('Trend of the tape', { hint: 'when along a line' }),
  plunge: inclination('Plunge of the tape', { hint: 'down positive' }),
  materials: words('Materials', { hint: 'quartz, iron-stained, gouge, manganese…' }),
  gouge: offset('Of which clay gouge'),
  hangingWall: text('Hanging wall rock'),
  footwall: text('Footwall rock'),
  taken: date('Taken'),
  note: note('Note'),
})

export const photo = kind('photo', 'Photo', 'Photos', ['caption'], {
  file: blob('Picture', { required: true }),
  caption: text('Caption'),
  of: ref('Shows', '*'),
  markX: number('Mark across', { min: 0, max: 1 }, { hint: 'of the spot on the picture, from its left edge, as a share of its width' }),
  markY: number('Mark down', { min: 0, max: 1 }, { hint: 'from its top edge, as a share of its height' }),
  place: place('Place'),
  taken: moment('Taken'),
  note: note('Note'),
})

export const air = kind('air', 'Air reading', 'Air readings', ['place', 'taken'], {
  place: place('Place', { required: true }),
  taken: moment('Taken', { required: true }),
  oxygen: percent('Oxygen'),
  carbonMonoxide: concentration('Carbon monoxide'),
  carbonDioxide: concentration('Carbon dioxide'),
  methane: percent('Methane'),
  hydrogenSulphide: concentration('Hydrogen sulphide'),
  nitrogenDioxide: concentration('Nitrogen dioxide'),
  radon: radon('Radon'),
  quartzDust: number('Respirable quartz dust', { min: 0 }, { hint: 'micrograms a cubic metre, from a pump and a laboratory' }),
  smell: choice('Smell', ['none', 'rotten eggs', 'powder smoke', 'burning', 'musty', 'other']),
  airSpeed: speed('Air speed'),
  airDirection: choice('Air moves', ['in', 'out', 'still', 'both']),
  dryBulb: temperature('Dry bulb'),
  wetBulb: temperature('Wet bulb'),
  barometer: pressure('Barometer'),
  meter: text('Meter'),
  bumpTested: date('Bump-tested'),
  heldAt: choice('Held at', ['sill', 'waist', 'head', 'back']),
  note: note('Note'),
})

export const groundNote = kind('ground', 'Ground note', 'Ground notes', ['place', 'taken'], {
  place: place('Place', { required: true }),
  taken: date('Taken'),
  found: choices('Found', ['drummy', 'fresh fall', 'open joint', 'loose slab', 'dripping', 'running water', 'sound timber', 'rotten timber', 'crushed timber', 'no timber', 'nothing new'], { required: true }),
  scaled: yesNo('Scaled'),
  action: text('Done or to do'),
  inspectedBy: words('Looked at by'),
  note: note('Note'),
})

export const hazard = kind('hazard', 'Hazard', 'Hazards', ['sort', 'place'], {
  sort: choice('Sort', ['bad ground', 'bad air', 'water', 'winze or shaft', 'rotten timber', 'old explosives', 'animals', 'mercury or lead', 'other', 'bats', 'droppings', 'heat or cold', 'wires or machines'], { required: true }),
  place: place('Place', { required: true }),
  state: choice('State', ['open', 'marked off', 'dealt with'], { required: true }),
  seen: date('Seen'),
  action: text('Done or to do'),
  note: note('Note'),
})
