import type { Enu } from '@lodebook/reckon'
import type { Path } from './path.ts'

export type WorkingSort = 'adit' | 'drift' | 'crosscut' | 'raise' | 'winze' | 'surface'

export interface Station {
  readonly name: string
  readonly point: Enu
  /** Distances to the ribs, the back and the sill, looking onward along its working; none on the surface. */
  readonly offsets?: Offsets
}
export interface Offsets { readonly left: number, readonly right: number, readonly up: number, readonly down: number }

export interface Working {
  readonly name: string
  readonly sort: WorkingSort
  readonly path: Path
  /** Stations in order; the first or the last may belong to another working. */
  readonly stations: readonly string[]
  readonly onVein: boolean
  /** Usual width and height, metres; stations have their own. */
  readonly width: number
  readonly height: number
  /** Where each station is along the path, metres. */
  readonly chainage: readonly number[]
}

export interface Leg { readonly from: string, readonly to: string, readonly working: string, readonly splay: boolean }
