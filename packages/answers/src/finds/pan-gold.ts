import type { Entry } from '@lodebook/book'
import { coloursOf, quantityOf } from '../read.ts'

export interface PanGold { readonly mg: number, readonly says: string }

/** What a pan gave, mg, as won and not corrected for what panning loses: the weight when it was weighed, else the colours by what one weighs. */
export function panGold(pan: Entry): PanGold {
  const weighed = quantityOf(pan, 'goldMass'), colours = coloursOf(pan)
  if (weighed?.value != null && weighed.mark !== 'below') return { mg: weighed.value * 1000, says: `${weighed.text} weighed` }
  const count = colours.reduce((sum, c) => sum + c.count, 0), mg = colours.reduce((sum, c) => sum + c.count * c.mgEach, 0)
  return { mg, says: count > 0 ? `${count} colours, by size about ${mg < 10 ? mg.toPrecision(2) : Math.round(mg)} mg` : weighed?.mark === 'trace' ? 'a trace' : 'nothing seen' }
}

/** What was weighed of a target that was picked out whole, mg. */
export function pickedGold(entry: Entry): PanGold | undefined {
  const weighed = quantityOf(entry, 'goldMass')
  return weighed?.value != null ? { mg: weighed.value * 1000, says: `${weighed.text} weighed` } : undefined
}
