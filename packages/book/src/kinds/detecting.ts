import { choice, choices, kind, mass, massOrNil, moment, note, place, text, words } from './field.ts'

/** A stretch that was gone over with the detector: where nothing rang is knowledge too. */
export const sweep = kind('sweep', 'Detector sweep', 'Detector sweeps', ['from', 'to'], {
  from: place('From', { required: true }),
  to: place('To', { required: true, hint: 'the far end; the sweep follows the heading between the two' }),
  sides: choices('Swept', ['left rib', 'right rib', 'back', 'sill', 'face'], { required: true, hint: 'as seen going from the one end to the other' }),
  result: choice('Heard', ['silent', 'marks found', 'noise only'], { required: true }),
  marks: words('Marks', { hint: 'the targets it found' }),
  instrument: text('Detector'),
  coil: text('Coil'),
  setting: text('Setting'),
  by: text('Swept by'),
  swept: moment('When'),
  note: note('Note'),
})

/** One look at a target while it is being narrowed down: rock is broken off and each part is passed under the coil. */
export const targetCheck = kind('target-check', 'Target check', 'Target checks', ['mark', 'found'], {
  mark: text('Mark', { required: true, hint: 'the target, as on the flag' }),
  found: choice('The signal is', ['still in the wall', 'in this piece', 'gone'], { required: true }),
  became: choice('It turned out to be', ['scrap iron', 'other metal', 'hot rock', 'relic', 'piece for the mortar'], { hint: 'once it is isolated' }),
  piece: mass('Mass of the piece'),
  bag: text('Bag', { hint: 'the bag that a piece for the mortar went into' }),
  goldMass: massOrNil('Gold weighed', { hint: 'when it was picked out whole' }),
  place: place('Place', { hint: 'when it is known better now than on the target' }),
  by: text('By'),
  checked: moment('When'),
  note: note('Note'),
})
