import {
  area, choice, choiceAlso, choices, count, date, distance, futureMoment, hours, kind, mass, moment,
  money, note, number, place, text, uniqueText, volume, words,
} from './field.ts'

/** Who went in, and when they are due out. */
export const goingIn = kind('going-in', 'Going in', 'Goings in', ['people', 'in'], {
  people: words('Who', { required: true }),
  in: moment('In', { required: true }),
  due: futureMoment('Due out', { required: true }),
  out: moment('Out'),
  outside: text('Outside person'),
  reach: text('How to reach them'),
  going: text('Where to'),
  callAfter: hours('Call for help when overdue by', { hint: 'half an hour unless written' }),
  call: text('Whom to call', { hint: 'name and number' }),
  heard: moment('Alarm heard'),
  heardBy: text('Heard by'),
  called: moment('Help called'),
  note: note('Note'),
})

export const work = kind('work', 'Work log', 'Work logs', ['task', 'worked'], {
  worked: date('Day', { required: true, headings: ['date', 'day', 'worked'] }),
  task: choice('Task', ['break', 'muck', 'tram', 'crush', 'wash', 'clean up', 'drive', 'clear', 'timber', 'survey', 'sample', 'detect', 'travel', 'other'], { required: true }),
  people: words('Who', { required: true }),
  hours: hours('Hours each', { required: true }),
  heading: text('Heading'),
  loads: count('Loads'),
  loadVolume: volume('One load holds'),
  mass: mass('Rock moved or treated'),
  advance: distance('Advance'),
  goldMass: mass('Gold won'),
  equipment: words('With'),
  note: note('Note'),
})

export const cost = kind('cost', 'Cost', 'Costs', ['item'], {
  item: text('Item', { required: true }),
  amount: money('Amount', { required: true }),
  per: choice('Each', ['once', 'day', 'person-day', 'week', 'month', 'tonne', 'assay', 'load'], { required: true }),
  sort: choice('Sort', ['consumables', 'equipment', 'travel', 'permits and bond', 'assays', 'treatment', 'royalty', 'other']),
  option: text('Only for option', { hint: 'name of the one option it goes with; all of them when left out' }),
  paid: date('Paid'),
  payee: text('Paid to'),
  note: note('Note'),
})

/** How prices of fine metal are mostly quoted. */
const troyWords: Readonly<Record<string, string>> = {
  oz: 'troy ounce fine', ozt: 'troy ounce fine', ounce: 'troy ounce fine', 'troy ounce': 'troy ounce fine', 'troy oz': 'troy ounce fine',
  'oz fine': 'troy ounce fine', 'fine oz': 'troy ounce fine', 'fine ounce': 'troy ounce fine',
  g: 'gram fine', gram: 'gram fine', gramme: 'gram fine', 'g fine': 'gram fine', 'fine gram': 'gram fine',
}

export const price = kind('price', 'Price', 'Prices', ['of', 'on'], {
  of: choice('Of', ['gold', 'silver'], { required: true }),
  amount: money('Amount', { required: true }),
  per: choiceAlso('For', ['troy ounce fine', 'gram fine'], troyWords, { required: true, headings: ['per', 'for', 'unit'] }),
  on: date('On', { required: true }),
  spread: number('May move by, % a year', { min: 0, max: 500 }, { hint: 'one standard deviation' }),
  payable: number('Refiner pays, %', { min: 0, max: 100 }),
  treatment: money('Treatment, an ounce sent'),
  minimum: money('Least charge a lot'),
  lots: count('Lots sent', { hint: 'parcels over one piece of work; one unless said' }),
  fineness: number('Fineness of what is sent', { min: 1, max: 1000 }, { hint: 'parts of gold in a thousand; 850 unless said' }),
  source: text('Source'),
  note: note('Note'),
})

/**
 * A piece of work that the crew might do instead of walking away: panels, a heap, a heading to drive, or several of them together. Its ground
 * is named by panels as they stand on the long section now, or, which outlasts a new lattice, by a place and how far round it.
 */
export const option = kind('option', 'Option of work', 'Options of work', ['name'], {
  name: uniqueText('Name', { required: true, hint: 'what the crew calls it: the pocket behind A7' }),
  near: place('Vein round this place'),
  within: distance('Within', { hint: 'panels whose middle is no further; 3 m unless said' }),
  panels: words('Panels', { hint: 'as named on the long section: K10, L10' }),
  heap: choice('Heap', ['gob', 'dump', 'muck'], { hint: 'its samples say what it holds' }),
  rock: mass('Rock in the heap'),
  metres: distance('To drive', { hint: 'length of heading' }),
  towards: choice('Driven for', ['the lost part', 'room to work']),
  area: area('Vein worked if it is met', { hint: 'past the fault; 20 m2 unless said' }),
  steps: choices('Steps', ['drive', 'timber', 'break', 'muck', 'tram', 'crush', 'wash', 'clean up'], { hint: 'what its ground asks for unless said' }),
  people: count('People', { hint: 'the whole crew unless said' }),
  hours: hours('Hours a shift'),
  shifts: number('Shifts a week', { min: 0.1, max: 21 }),
  weeks: number('Weeks in the season', { min: 0.1, max: 520 }),
  once: money('Costs of its own, once', { hint: 'equipment, permits, bond' }),
  eachDay: money('Costs of its own, a person-day', { hint: 'supplies' }),
  assays: count('Assays to pay'),
  note: note('Note'),
})

/** A figure that the crew or a method takes as given, with its doubt and its reason. */
export const assumption = kind('assumption', 'Assumption', 'Assumptions', ['name'], {
  name: uniqueText('Name', { required: true }),
  value: number('Value', {}, { required: true }),
  unit: text('Unit'),
  low: number('Low', {}, { hint: 'one in ten below' }),
  high: number('High', {}, { hint: 'one in ten above' }),
  why: text('Why'),
  source: text('Source'),
  note: note('Note'),
})
