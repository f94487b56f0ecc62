import type { Standing } from './gas-limits.ts'

export interface FrictionFactor {
  readonly airway: string
  /** Atkinson k at 1.2 kg/m3. */
  readonly k: number
  readonly low?: number
  readonly high?: number
  readonly source: string
  readonly status: Standing
}

const measured = 'Prosser and Wallace, Practical values of friction factors, 8th US Mine Ventilation Symposium, 1999'
const handbook = 'McPherson, Subsurface Ventilation Engineering, table 5.1 (from memory)'

/** Friction factors of airways. Measured ones are of modern, larger headings; a small hand-driven adit belongs at the rough end. */
export const frictionFactors: readonly FrictionFactor[] = [
  { airway: 'level drift, measured', k: 0.00879, low: 0.00468, high: 0.01284, source: measured, status: 'V' },
  { airway: 'ramp, measured', k: 0.01158, low: 0.00698, high: 0.01739, source: measured, status: 'V' },
  { airway: 'raise climbed and shot, measured', k: 0.01126, low: 0.00874, high: 0.01579, source: measured, status: 'V' },
  { airway: 'bored raise, measured', k: 0.00466, low: 0.0023, high: 0.00698, source: measured, status: 'V' },
  { airway: 'belt heading, measured', k: 0.01399, low: 0.01228, high: 0.01664, source: measured, status: 'V' },
  { airway: 'bored drift, measured', k: 0.0044, low: 0.00341, high: 0.0056, source: measured, status: 'V' },
  { airway: 'smooth concrete', k: 0.004, source: handbook, status: 'M' },
  { airway: 'sprayed concrete', k: 0.0055, source: handbook, status: 'M' },
  { airway: 'unlined, minor irregularities', k: 0.009, source: handbook, status: 'M' },
  { airway: 'unlined, typical', k: 0.012, source: handbook, status: 'M' },
  { airway: 'irregular sides', k: 0.014, source: handbook, status: 'M' },
  { airway: 'rough', k: 0.016, source: handbook, status: 'M' },
  { airway: 'timber sets', k: 0.019, source: handbook, status: 'M' },
  { airway: 'rough sides and stepped floor', k: 0.04, source: handbook, status: 'M' },
]

/** Shock factors X of the pressure head rho v2/2 (from memory). */
export const shockFactors = { 'sharp entry': 0.5, exit: 1 } as const
