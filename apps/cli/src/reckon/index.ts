import type { Reckoning } from './define.ts'
import { geostatistics } from './geostatistics.ts'
import { sampling } from './sampling.ts'
import { statistics } from './statistics.ts'
import { structure } from './structure.ts'
import { air } from './air.ts'
import { assay } from './assay.ts'
import { dating } from './dating.ts'
import { earthwork } from './earthwork.ts'
import { estimate } from './estimate.ts'
import { pay } from './pay.ts'
import { survey } from './survey.ts'
import { units } from './units.ts'

/** Every reckoning at the prompt, by area. */
export const reckonings: readonly Reckoning[] = [
  ...units,
  ...pay,
  ...dating,
  ...earthwork,
  ...air,
  ...geostatistics,
  ...structure,
  ...survey,
  ...statistics,
  ...sampling,
  ...assay,
  ...estimate,
]
