import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { simulate } from '@lodebook/reckon/geostatistics'
import type { Point2, VariogramModel } from '@lodebook/reckon/geostatistics'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64'

export const checksDirectory = join(import.meta.dirname, '../../../../checks/reference')
const directory = join(import.meta.dirname, '../bench-data')

/** The field behind the made data, as in checks/reference/synth1000.csv. */
export const syntheticModel: VariogramModel = { nugget: 0.15, structures: [{ type: 'exponential', partialSill: 0.85, range: 60 }] }

/**
 * Writes the data sets of the benchmarks into one directory, always the same (seed 20261125), and returns that directory:
 * meuse and synth1000 from checks/; meuse_fine100k.csv, 100,000 nodes that fill the cells of the meuse grid evenly;
 * synth5000.csv, 5,000 random places on 1,000 x 1,000 with g Gaussian (nugget 0.15, exponential 0.85, range 60) and z = exp(1 + 0.9 g);
 * synth_nodes50k.csv, 250 x 200 nodes over the same square.
 */
export function benchData(): string {
  mkdirSync(directory, { recursive: true })
  for (const file of ['meuse.csv', 'meuse_grid.csv', 'synth1000.csv']) copyFileSync(join(checksDirectory, file), join(directory, file))
  write('meuse_fine100k.csv', 'x,y', fineNodes().map(([x, y]) => [x.toFixed(3), y.toFixed(3)]))
  const random = xoroshiro128plus(20261125)
  const places = Array.from({ length: 5000 }, (): Point2 => [round3(1000 * uniformFloat64(random)), round3(1000 * uniformFloat64(random))])
  const field = simulate([], places, syntheticModel, { realisations: 1, seed: 20261125, neighbours: 40 }).realisations[0]!
  write('synth5000.csv', 'x,y,z,g', places.map(([x, y], i) => [x, y, Math.exp(1 + 0.9 * field[i]!).toFixed(6), field[i]!.toFixed(8)]))
  write('synth_nodes50k.csv', 'x,y', Array.from({ length: 50_000 }, (_, k) => [2 + 4 * (k % 250), 2.5 + 5 * Math.floor(k / 250)]))
  return directory
}

/** Each 40 m cell of the meuse grid as 6 x 6 nodes, thinned evenly to 100,000. */
function fineNodes(): Point2[] {
  const column = readColumns(join(directory, 'meuse_grid.csv'))
  const ys = column('y')
  const nodes = column('x').flatMap((x, i) => Array.from({ length: 36 }, (_, k): Point2 => [x + (k % 6 - 2.5) * 20 / 3, ys[i]! + (Math.floor(k / 6) - 2.5) * 20 / 3]))
  return Array.from({ length: 100_000 }, (_, k) => nodes[Math.floor(k * nodes.length / 100_000)]!)
}

const round3 = (value: number) => Math.round(1000 * value) / 1000

function write(file: string, head: string, rows: readonly (readonly (string | number)[])[]): void {
  writeFileSync(join(directory, file), [head, ...rows.map(row => row.join(',')), ''].join('\n'))
}

/** A CSV file as columns of numbers, by header. */
export function readColumns(path: string): (name: string) => number[] {
  const [head, ...lines] = readFileSync(path, 'utf8').trim().split(/\r?\n/)
  const names = head!.split(',').map(name => name.replaceAll('"', ''))
  const rows = lines.map(line => line.split(','))
  return name => rows.map(row => Number(row[names.indexOf(name)]))
}
