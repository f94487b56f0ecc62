import type { Entry } from '@lodebook/book'
import { plural } from '../words.ts'

/** What can hurt somebody at the bench. Always said; the first where it is written that rock was crushed dry. */
export function benchCautions(pans: readonly Entry[]): readonly string[] {
  const dry = pans.filter(p => p.fields['crushed'] === 'dry').length
  return [
    ...(dry > 0 ? [`${plural(dry, 'bag was', 'bags were')} crushed dry.`] : []),
    'Crushed quartz makes silica dust that scars the lungs for good: crush wet, outdoors, with a respirator rated for silica, and never sweep it dry.',
    'Old tins, solder and paint hold lead; old plates, sluices and tailings of a mill hold mercury. Gloves, no bare hands to the mouth, and none of it taken home.',
    'Never heat, retort or roast amalgam, concentrates or ore yourself: mercury and arsenic fumes kill. Acids are for those trained and equipped for them.',
    'Old explosives in a bag, a tin or the muck: do not touch, leave, mark, report to the authority.',
  ]
}
