/** What a crew may have to move, with how it swells, packs and lies. */
export interface GroundMaterial {
  readonly name: string
  /** Growth when it is dug or broken, per cent of the volume in place: usual, low and high. */
  readonly swellPct: number
  readonly swellLowPct: number
  readonly swellHighPct: number
  /** Volume once packed, of the volume in place. */
  readonly packed: number
  /** Steepest slope at which a loose heap of it stands, degrees. */
  readonly repose: number
  /** In place, t/m3. */
  readonly density: number
  readonly source: string
  /** V: read in the source; M: from memory; none: common practice. */
  readonly status: 'V' | 'M' | 'none'
}

const compiled = 'compiled list naming Alaska DOT 1983 and FHWA 2007 (spikevm.com)'
const field = 'US Army FM 5-434, 2000, table 1-1, from memory'
const newman = 'repose: Newman, Earthwork Slips, p. 28'

/**
 * Swell, packing and repose of what is met at an old portal. Figures read in a source are marked V; the rest say so.
 * Source: each row's own; gathered in checks/physical.md section 5.2.
 */
export const groundMaterials: readonly GroundMaterial[] = [
  { name: 'broken rock, already loose', swellPct: 0, swellLowPct: 0, swellHighPct: 10, packed: 0.9, repose: 38, density: 1.6, status: 'none', source: 'fallen muck moved again hardly swells; common practice, no source' },
  { name: 'breccia or old fill in rock', swellPct: 71, swellLowPct: 55, swellHighPct: 80, packed: 1.3, repose: 38, density: 2.47, status: 'V', source: `154 lb/cu ft in place, 90 as muck, measured underground (Compressed Air magazine); ${newman}` },
  { name: 'granite', swellPct: 72, swellLowPct: 60, swellHighPct: 80, packed: 1.3, repose: 38, density: 2.65, status: 'V', source: `${compiled}; packing: ${field}` },
  { name: 'basalt or andesite', swellPct: 66, swellLowPct: 60, swellHighPct: 72, packed: 1.4, repose: 38, density: 2.8, status: 'V', source: compiled },
  { name: 'limestone', swellPct: 63, swellLowPct: 55, swellHighPct: 70, packed: 1.3, repose: 38, density: 2.5, status: 'V', source: `${compiled}; packing: ${field}` },
  { name: 'sandstone', swellPct: 61, swellLowPct: 50, swellHighPct: 68, packed: 1.3, repose: 38, density: 2.4, status: 'V', source: `${compiled}; packing: ${field}` },
  { name: 'blasted rock', swellPct: 50, swellLowPct: 40, swellHighPct: 70, packed: 1.3, repose: 38, density: 2.65, status: 'M', source: field },
  { name: 'slope wash: rock, gravel and clay', swellPct: 25, swellLowPct: 15, swellHighPct: 40, packed: 0.95, repose: 35, density: 1.9, status: 'none', source: `between gravel and clay; common practice, no source; ${newman}: 1.25 to 1.5 to 1` },
  { name: 'dry gravel', swellPct: 15, swellLowPct: 10, swellHighPct: 20, packed: 0.95, repose: 42, density: 1.8, status: 'V', source: `${compiled}; ${newman}: about 1 to 1` },
  { name: 'sandy gravel', swellPct: 5, swellLowPct: 3, swellHighPct: 12, packed: 0.95, repose: 36, density: 1.9, status: 'V', source: `${compiled}; ${newman}: 1.25 to 1.5 to 1` },
  { name: 'sand', swellPct: 11, swellLowPct: 5, swellHighPct: 15, packed: 0.95, repose: 34, density: 1.7, status: 'M', source: `${field}; ${newman}: loose sand 1.25 to 1.5 to 1` },
  { name: 'loam', swellPct: 25, swellLowPct: 15, swellHighPct: 35, packed: 0.9, repose: 36, density: 1.6, status: 'M', source: field },
  { name: 'damp clay', swellPct: 40, swellLowPct: 30, swellHighPct: 50, packed: 0.9, repose: 34, density: 1.9, status: 'V', source: `${compiled}; packing: ${field}` },
  { name: 'dry clay', swellPct: 43, swellLowPct: 35, swellHighPct: 50, packed: 0.9, repose: 36, density: 1.7, status: 'V', source: `${compiled} (35 to 50); packing: ${field}` },
]

/** The material of that name; undefined when the table has none. */
export const groundMaterial = (name: string): GroundMaterial | undefined => groundMaterials.find(m => m.name === name)
