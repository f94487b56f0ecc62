import { blob, choice, count, distance, flow, kind, moment, note, number, offset, place, pressure, ref, date, station, temperature, text, uniqueText, words, yesNo } from './field.ts'

/** One item of the check before going in, as one person answered it. The items of a mine come from its own hazards and readings. */
export const check = kind('check', 'Check', 'Checks', ['item', 'answer'], {
  item: text('Item', { required: true }),
  answer: choice('Answer', ['as it should be', 'something found', 'not looked at'], { required: true }),
  taken: moment('Looked at', { required: true }),
  station: station('Station'),
  about: ref('About', '*'),
  picture: blob('Picture'),
  note: note('Note'),
})

/** A limit that the crew holds its readings against: a local rule, or a stricter one of its own. */
export const limit = kind('limit', 'Limit', 'Limits', ['substance', 'value', 'rule'], {
  substance: choice('Of', ['oxygen', 'carbon monoxide', 'carbon dioxide', 'methane', 'hydrogen sulphide', 'nitrogen dioxide', 'radon progeny', 'respirable quartz dust', 'wet bulb'], { required: true }),
  sort: choice('Sort', ['withdraw', 'minimum', 'ceiling', 'act', 'short-term', 'maximum', 'shift average'], { required: true }),
  value: number('Limit', { min: 0 }, { required: true, hint: 'oxygen and methane in %, other gases in ppm, radon progeny in WL, dust in µg/m³, wet bulb in °C' }),
  outside: choice('Outside is', ['below it', 'above it', 'at it and above'], { required: true }),
  rule: text('Rule', { required: true, hint: 'who set it' }),
  section: text('Section'),
  source: text('Where it was read'),
  instead: yesNo('Stands in place of the table\'s own of this sort', { hint: 'explosive, immediately dangerous and disabling values always stay' }),
  note: note('Note'),
})

/** A way for air between the workings and the day. */
export const opening = kind('opening', 'Opening', 'Openings', ['name'], {
  name: uniqueText('Name', { required: true }),
  station: station('Station at it', { required: true }),
  width: distance('Width'),
  height: distance('Height'),
  state: choice('State', ['open', 'part blocked', 'shut'], { required: true }),
  note: note('Note'),
})

/** How warm it is outside in a month of the year, for the outlook of the air. */
export const outside = kind('outside', 'Outside temperature', 'Outside temperatures', ['month'], {
  month: choice('Month', ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'], { required: true }),
  low: temperature('Usual low', { required: true, hint: 'mean of the coldest hour of each day' }),
  high: temperature('Usual high', { required: true, hint: 'mean of the warmest hour of each day' }),
  source: text('Source'),
  note: note('Note'),
})

/** A small fan with its duct. */
export const fan = kind('fan', 'Fan and duct', 'Fans and ducts', ['name'], {
  name: uniqueText('Name', { required: true }),
  freeFlow: flow('Moves, with nothing in its way', { required: true }),
  shutPressure: pressure('Pressure with its outlet shut', { required: true }),
  duct: distance('Duct across', { required: true }),
  length: distance('Duct long', { required: true }),
  piece: distance('Joint every', { hint: 'length of one piece of duct' }),
  leak: choice('Joints', ['tight', 'usual', 'loose']),
  from: station('Fan stands at'),
  to: station('Duct ends at'),
  note: note('Note'),
})

/** What a rock mass classification needs, at one place. */
export const rock = kind('rock', 'Rock quality', 'Rock qualities', ['place', 'taken'], {
  place: place('Place', { required: true }),
  taken: date('Taken', { required: true }),
  rqd: number('RQD', { min: 0, max: 100 }, { hint: 'per cent of a line on the wall in pieces longer than 10 cm' }),
  strength: choice('Strength', ['a nail scratches it', 'a knife scrapes it', 'one hammer blow', 'several blows', 'many blows', 'hammer rings']),
  spacing: offset('Joints apart'),
  condition: choice('Joints are', ['very rough, tight, fresh', 'slightly rough, under 1 mm, slightly weathered', 'slightly rough, under 1 mm, highly weathered', 'slickensided or gouge under 5 mm', 'soft gouge over 5 mm']),
  water: choice('Water', ['dry', 'damp', 'wet', 'dripping', 'flowing']),
  orientation: choice('Joints lie', ['very favourable', 'favourable', 'fair', 'unfavourable', 'very unfavourable'], { hint: 'to the heading: strike across it and dip with the drive is very favourable, strike along it and steep is very unfavourable' }),
  sets: choice('Joint sets', ['none or few', 'one', 'one and random', 'two', 'two and random', 'three', 'three and random', 'four or more', 'crushed']),
  roughness: choice('Joint walls', ['rough and broken', 'smooth and broken', 'slickensided and broken', 'rough and wavy', 'smooth and wavy', 'slickensided and wavy', 'rough and flat', 'smooth and flat', 'slickensided and flat', 'gouge, no contact']),
  alteration: choice('On the joints', ['healed', 'stained only', 'slightly altered', 'silty or sandy coat', 'soft clay coat', 'clay, thick']),
  stress: choice('Stress', ['near the surface, loose', 'medium', 'single crushed zone near the surface', 'many crushed zones']),
  by: words('By'),
  note: note('Note'),
})

/** What was barred down, where, and by whom. */
export const scaling = kind('scaling', 'Scaling', 'Scaling log', ['place', 'taken'], {
  place: place('Place', { required: true }),
  taken: moment('When', { required: true }),
  pieces: count('Pieces that came down'),
  largest: offset('Largest, longest side'),
  left: text('Left up, and why'),
  by: words('By'),
  stoodAt: text('Stood at', { hint: 'from where the bar was used' }),
  note: note('Note'),
})
