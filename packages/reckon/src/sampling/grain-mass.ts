import { positive } from '../core/index.ts'
import { usualGold } from './sampling-error.ts'

/** Volume over the cube of the size: a ball, and flakes as thick as this makes them. */
export const grainShape = { ball: Math.PI / 6, flake: 0.2, thinFlake: 0.1 } as const

/** Mass of one grain, mg: density x shape x size³. Size in mm, density in g/cm³ (which is mg/mm³). */
export const grainMass = (sizeMm: number, shape: number = grainShape.ball, density: number = usualGold.density): number =>
  positive(density, 'density') * positive(shape, 'shape') * positive(sizeMm, 'size_mm') ** 3

/** Size in mm of a grain of so many mg: its diameter if it were a ball. Flakes pass a larger screen than this. */
export const grainSize = (massMg: number, shape: number = grainShape.ball, density: number = usualGold.density): number =>
  Math.cbrt(positive(massMg, 'mass_mg') / (positive(density, 'density') * positive(shape, 'shape')))
