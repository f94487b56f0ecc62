import { anyAngle, azimuth, blob, choice, choices, concentration, date, dip, dipOfPlane, distance, height, inclination, kind, moment, note, number, offset, percent, place, places, pressure, radon, rake, ref, speed, station, stations, temperature, text, uniqueText, words, yesNo } from './field.ts'

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
  correction: anyAngle('Index correction', { hint: 'added to every reading' }),
  anglePrecision: anyAngle('One reading is good to (angle)', { hint: 'one standard deviation' }),
  lengthPrecision: offset('One reading is good to (length)', { hint: 'one standard deviation at a usual length' }),
  serial: text('Serial number'),
  calibrated: date('Calibrated'),
  note: note('Note'),
})

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
  compass: text('Compass'),
  tape: text('Tape'),
  surveyors: words('Surveyors'),
  taken: date('Taken', { headings: ['date', 'taken'] }),
  leaveOut: choice('Left out of the adjustment', ['nothing', 'azimuth', 'backsight', 'whole shot'], { hint: 'the crew\'s decision after a check; the reading stays' }),
  leaveOutWhy: text('Left out because'),
  note: note('Note'),
})

export const tie = kind('tie', 'Tie', 'Ties', ['station'], {
  station: station('Station', { required: true }),
  place: place('Where it is', { required: true, hint: 'grid or GPS' }),
  accuracy: offset('Good to', { hint: 'one standard deviation; for a GPS fix what the receiver says' }),
  taken: date('Taken'),
  source: text('Source', { hint: 'GPS, claim corner, old plan…' }),
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
