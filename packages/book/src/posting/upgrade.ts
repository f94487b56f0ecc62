import type { Problem } from '../schema/problem.ts'
import { refuse } from '../schema/problem.ts'
import { checkPosting } from './check-posting.ts'
import type { Posting } from './posting.ts'

export type Opened = { readonly ok: true, readonly posting: Posting } | { readonly ok: false, readonly problem: Problem }

export const currentVersion = 1

/**
 * [P7] The one door through which a posting comes in from outside, whatever version wrote it. An older posting is brought to the present
 * form here and nowhere else; one from a newer version is refused rather than read wrong.
 */
export function upgrade(raw: unknown): Opened {
  const version = typeof raw === 'object' && raw !== null && 'v' in raw ? raw.v : undefined
  if (typeof version === 'number' && version > currentVersion) {
    return { ok: false, problem: { ...refuse('v', 'Posting', version, `version ${currentVersion} or older`),
      message: `Posting: it was written by a newer Lodebook (version ${version}, this one reads up to ${currentVersion}); bring this one up to date.` } }
  }
  const problem = checkPosting(raw)
  return problem ? { ok: false, problem } : { ok: true, posting: raw as Posting }
}
