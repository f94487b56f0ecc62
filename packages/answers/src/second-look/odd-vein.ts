import type { VeinFound } from '../vein/vein.ts'
import { figure, plural } from '../words.ts'
import type { SecondLook } from './second-look.ts'

/** A vein that swings more than this, one standard deviation in degrees, is hardly one vein read well. Common practice, no source. */
const mostSwing = 12

/** Vein readings that can hardly be of one plane, and entries that name another vein and so are left aside. */
export function oddVein(found: VeinFound): readonly SecondLook[] {
  const { plane, readings, ofOthers, at } = found
  const worst = readings.map((entry, i) => ({ entry, angle: plane.readingAngles[i]! })).sort((a, b) => b.angle - a.angle)
  return [
    ...(plane.swing > mostSwing ? [{
      sort: 'vein' as const, entries: worst.slice(0, 3).map(w => w.entry), times: plane.swing / mostSwing,
      sentence: `The readings of ${at.name} disagree: they lie ±${figure(plane.swing, 2)}° about the plane through them, the worst ${figure(worst[0]!.angle, 2)}° off.`,
      todo: 'Read strike and dip again where they part, or give the other vein a name of its own.',
    }] : []),
    ...(ofOthers.length > 0 ? [{
      sort: 'vein' as const, entries: ofOthers, times: 1,
      sentence: `${plural(ofOthers.length, 'entry names', 'entries name')} another vein and ${ofOthers.length === 1 ? 'is' : 'are'} left aside: the reckoning follows ${at.name}.`,
      todo: 'If it is the same vein, give it the same name.',
    }] : []),
  ]
}
