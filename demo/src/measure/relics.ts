import type { Making } from '../making.ts'
import { timeOn } from '../write/clock.ts'
import { ives } from '../write/crew.ts'

type Row = readonly [item: string, place: string, from: number, to: number, material: string, lay: string, count?: number, note?: string]

/**
 * What two visits left: one about 1895 and one in the 1930s. The spans of years are those in common use for such things (machine-cut nails
 * to about 1890, hole-in-cap cans to about 1914, sanitary cans from 1904, amethyst glass to about 1920, evaporated-milk cans by height).
 */
const rows: readonly Row[] = [
  ['square cut nails', 'L4, sill', 1835, 1895, 'iron', 'in timber', 14],
  ['hole-in-cap can', 'L9, sill', 1870, 1914, 'tinned iron', 'on the sill', 3],
  ['candle holder, hand-forged spike', 'B2, left rib', 1860, 1915, 'iron', 'in timber', 1],
  ['candle stub', 'B3, sill', 1860, 1915, 'tallow', 'on the sill', 4],
  ['amethyst-tinted bottle, tooled lip', 'words: foot of the dump', 1890, 1920, 'glass', 'on the surface', 1],
  ['single-jack hammer head', 'L12, sill', 1870, 1940, 'steel', 'in waste', 1],
  ['boot, pegged sole', 'G2, sill', 1860, 1905, 'leather', 'in waste', 1],
  ['powder box board', 'G1, sill', 1880, 1910, 'pine', 'in waste', 2, 'No maker\'s mark. Empty.'],
  ['newspaper scrap dated 1896', 'G3, sill', 1896, 1896, 'paper', 'sealed under a fall', 1, 'Under the fallen slab at the end of the stope.'],
  ['carbide lamp, cap size', 'R3, sill', 1900, 1940, 'brass', 'on the sill', 1],
  ['carbide residue heap', 'R5, sill', 1900, 1945, 'lime', 'on the sill', 2],
  ['sanitary can', 'R6, sill', 1904, 1950, 'tinned iron', 'on the sill', 5],
  ['evaporated-milk can, 3 15/16 in', 'R8, sill', 1930, 1975, 'tinned iron', 'on the sill', 2],
  ['wire nails', 'A8, sill', 1890, 1950, 'steel', 'in timber', 30],
  ['light rail, bent', 'A12, sill', 1890, 1950, 'steel', 'on the sill', 2],
  ['drill steel, chisel bit', 'R11, sill', 1870, 1945, 'steel', 'on the sill', 3],
  ['crown-cap bottle, machine-made', 'words: flat below the portal', 1912, 1950, 'glass', 'on the surface', 1],
  ['dry-cell battery, carbon rod', 'X1, sill', 1925, 1950, 'zinc, carbon', 'on the sill', 1],
]

/** Everything is photographed and left where it lies. */
export function relics({ diary }: Making): void {
  rows.forEach(([item, place, from, to, material, lay, count, note], i) => diary.write(ives, timeOn('2026-05-28', 9, 20 * i), 'relic', {
    item, place, from: `${from}`, to: `${to}`, material, layer: lay, count: count === undefined ? undefined : `${count}`, left: 'yes', found: '2026-05-28', note: note ?? 'Left where it lay.',
  }))
}
