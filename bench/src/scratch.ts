import { FieldGround, fieldOutcomes, logFieldPosterior } from '@lodebook/reckon/estimate'
import { madeUpGround, prior } from '../../packages/reckon/test/estimate/made-up-ground.ts'
export async function run() {
for (const [m, n, N] of [[220, 80, 1000], [2000, 300, 500], [2000, 300, 500], [20000, 3000, 250]] as const) {
  const g = madeUpGround(m, n)
  const t0 = process.cpuUsage().user / 1000
  const ground = new FieldGround(g.sites, g.blocks)
  const t1 = process.cpuUsage().user / 1000
  const post = logFieldPosterior(g.data, prior)
  const t2 = process.cpuUsage().user / 1000
  fieldOutcomes(ground, post, g.data.map((_, i) => i), { count: N, seed: 1 })
  const t3 = process.cpuUsage().user / 1000
  fieldOutcomes(ground, post, g.data.map((_, i) => i), { count: N, seed: 1 })
  const t4 = process.cpuUsage().user / 1000
  console.log(m, n, N, 'geometry', (t1 - t0).toFixed(0), 'posterior', (t2 - t1).toFixed(0), 'nodes', post.nodes.length, 'outcomes first', (t3 - t2).toFixed(0), 'again', (t4 - t3).toFixed(0))
}
}
